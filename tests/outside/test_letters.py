"""Letters and hidden magnets from the files as written: right reading, in their box, clear; covered.

Nothing of the program is asked but to write: ``pattern.json`` says where the boxes are, the cutting file where the
strokes are. The letter F tells every mirror and turn: its stem stands at the left, its longer bar on top of it.
"""

from __future__ import annotations

from cmath import exp
from math import radians
from pathlib import Path

import pytest
import shapely

from patternforge.design.load import load_design
from patternforge.drafting.purpose import DraftingOptions, Engraving, LaserOptions
from patternforge.drafting.sheets import laser_sheets
from patternforge.export.dxf import DxfOptions, dxf_bytes
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Design
from tests.outside.cut_layers import Json, Layer, cut_layers
from tests.outside.dxf_reading import Contour, CutPiece, cut_pieces, cuts
from tests.outside.written import DESIGNS, pattern_json, ready_design, written

CLEAR = 3.0  # mm from a box to edge, seam, fold and hardware; common practice, no source
LEAST = 3.0  # mm high, below which strokes run together in leather; common practice, no source
LETTERED = [path for path in DESIGNS if ready_design(path).initials]
HIDDEN = [path for path in DESIGNS if any("hidden" in fitting.kind for fitting in ready_design(path).fittings)]
SLEEVE = next(path for path in LETTERED if path.stem == "monogram-card-sleeve").read_text(encoding="utf-8")

Ends = tuple[complex, complex]


def engraved(design: Design) -> tuple[Json, tuple[CutPiece, ...]]:
    """``pattern.json``, and every piece as cut with its letters."""
    pattern = drafted(design)
    options = DraftingOptions(laser=LaserOptions(engraving=Engraving.INITIALS))
    sheet = next(each.sheet for each in laser_sheets(pattern, options) if each.name.endswith("-everything"))
    return pattern_json(pattern), cut_pieces(cuts(dxf_bytes(sheet, DxfOptions()).decode("utf-8")))


def strokes(cut: CutPiece) -> list[Contour]:
    return [each.contour for each in cut.cuts if each.layer == "MARK"]


def as_read(lines: list[Contour], letters: Json) -> list[Ends]:
    """The ends of strokes from the middle of their box, the direction in which they stand upright upwards."""
    turn = exp(-1j * radians(letters["up"] - 90.0))
    middle = complex(letters["x"], letters["y"])
    return [((line.points[0] - middle) * turn, (line.points[-1] - middle) * turn) for line in lines]


def is_an_f(lines: list[Ends]) -> bool:
    stem = max(lines, key=lambda ends: abs((ends[0] - ends[1]).imag))
    bars = sorted((ends for ends in lines if ends is not stem), key=lambda ends: ends[0].imag)
    if len(bars) != 2 or any(abs((a - b).imag) > 1e-6 for a, b in bars):
        return False
    at_stem = all(abs(min(a.real, b.real) - stem[0].real) < 1e-6 for a, b in bars)
    on_top = abs(bars[1][0].imag - max(stem[0].imag, stem[1].imag)) < 1e-6
    return at_stem and on_top and abs(bars[1][0] - bars[1][1]) > abs(bars[0][0] - bars[0][1])


def box_of(letters: Json) -> shapely.Polygon:
    across = exp(1j * radians(letters["up"] - 90.0)) * letters["width"] / 2
    upward = exp(1j * radians(letters["up"])) * letters["height"] / 2
    middle = complex(letters["x"], letters["y"])
    corners = (-across - upward, across - upward, across + upward, -across + upward)
    return shapely.Polygon([((middle + c).real, (middle + c).imag) for c in corners])


def test_there_are_letters_of_both_kinds_and_hidden_magnets() -> None:
    kinds = {bool(each.stamp) for path in LETTERED for each in ready_design(path).initials}
    assert kinds == {False, True}
    assert HIDDEN


@pytest.mark.parametrize("part", ["front pocket", "rear pocket", "middle"])
@pytest.mark.parametrize("turned", ["false", "true"])
@pytest.mark.parametrize("up", ["", "left", "right", "bottom"])
def test_an_f_reads_right_on_every_face_whichever_way_the_row_lies(part: str, turned: str, up: str) -> None:
    """The front pocket and the middle show outside, the rear pocket inside; the first are drawn mirrored."""
    text = SLEEVE.replace("text: AB", f"text: F\n    up: {up}" if up else "text: F")
    text = text.replace("on: front pocket", f"on: {part}").replace(
        "corner: 6 mm", f"corner: 6 mm\n  turned: {turned}"
    )
    json, pieces = engraved(load_design(text, "f.yaml"))
    lettered = [(piece, cut) for piece, cut in zip(json["pieces"], pieces, strict=True) if piece["inscriptions"]]
    ((piece, cut),) = lettered
    (letters,) = piece["inscriptions"]
    lines = strokes(cut)
    assert piece["name"] == part
    assert is_an_f(as_read(lines, letters))
    assert not is_an_f([(-a.conjugate(), -b.conjugate()) for a, b in as_read(lines, letters)])
    # Asked for or not, upright letters stand upright on the piece as drawn, whose own arrow says what is up.
    if not up:
        assert letters["up"] == 90.0


@pytest.mark.parametrize("path", LETTERED, ids=lambda path: path.stem)
def test_letters_lie_in_their_box_and_the_box_clear_of_all_that_is_cut(path: Path) -> None:
    json, pieces = engraved(ready_design(path))
    for piece, cut in zip(json["pieces"], pieces, strict=True):
        for letters in piece["inscriptions"]:
            box = box_of(letters)
            lines = shapely.MultiLineString([[(p.real, p.imag) for p in line.points] for line in strokes(cut)])
            assert box.buffer(1e-4).covers(lines)
            ground = shapely.Polygon([(p.real, p.imag) for p in cut.outline.flattened()])
            assert ground.contains(box)
            assert box.distance(ground.exterior) >= CLEAR
            rims = [each for each in cut.cuts if each.layer in ("STITCH-HOLE", "OPENING")]
            for rim in rims:
                room = box.distance(shapely.MultiPoint([(p.real, p.imag) for p in rim.contour.points]))
                assert room - rim.radius >= CLEAR
            for line in piece["fold_lines"]:
                assert box.distance(shapely.LineString([(x, y) for x, y, _ in line])) >= CLEAR
            if letters["style"] == "strokes":
                assert letters["letter_height"] >= LEAST


@pytest.mark.parametrize("path", LETTERED, ids=lambda path: path.stem)
def test_nothing_lies_over_letters_and_no_edge_behind_them(path: Path) -> None:
    """Laid open: no piece on the side they show to covers their box, and behind it every piece lies whole or not."""
    json, pieces = engraved(ready_design(path))
    layers = cut_layers(json, bare(pieces))
    for layer in layers:
        for letters in layer.json["inscriptions"]:
            box = laid_box(layer, letters)
            for other in layers:
                inner = other.json["placement"]["level"] > layer.json["placement"]["level"]
                shared = other.ground.intersection(box).area / box.area
                if other is not layer and inner is (layer.json["faces"] == "inside"):
                    assert shared == 0.0
                elif other is not layer:
                    assert shared == pytest.approx(0.0, abs=1e-9) or shared == pytest.approx(1.0)


def bare(pieces: tuple[CutPiece, ...]) -> list[CutPiece]:
    """Without letters, so that all that is left on their layer is pricked."""
    return [CutPiece(tuple(cut for cut in piece.cuts if cut.layer != "MARK")) for piece in pieces]


def laid_box(layer: Layer, letters: Json) -> shapely.Polygon:
    places = [layer.undeveloped(layer.laid_open(complex(x, y))) for x, y in box_of(letters).exterior.coords[:-1]]
    return shapely.Polygon([(at.real, at.imag) for at in places])


@pytest.mark.parametrize("path", HIDDEN, ids=lambda path: path.stem)
def test_a_hidden_half_is_marked_on_two_pieces_and_cut_into_none(path: Path) -> None:
    files = written(ready_design(path))
    layers = cut_layers(files.json, cut_pieces(cuts(files.dxf)))
    hidden = {each["name"]: each for each in files.json["inputs"]["fittings"] if each["setting"] == "covered"}
    for layer in layers:
        for half in layer.json["fittings"]:
            if half["fitting"] in hidden:
                level = layer.json["placement"]["level"]
                behind = -1 if layer.json["faces"] == "inside" else 1
                at = layer.undeveloped(layer.laid_open(complex(half["x"], half["y"])))
                disc = shapely.Point(at.real, at.imag).buffer(half["reach"])
                covers = [
                    other
                    for other in layers
                    if (other.json["placement"]["level"] - level) * behind > 0 and other.ground.contains(disc)
                ]
                marked = [other for other in layers if any(m["name"] == half["fitting"] for m in other.json["marks"])]
                assert layer in marked
                assert any(cover in marked for cover in covers)
                assert not any(cut.layer == "OPENING" for cut in layer.cut.cuts)
    assert all(hidden[name]["thickness"] > 0 for name in hidden)
