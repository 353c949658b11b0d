"""pattern.json: valid under its schema, true to the pattern, enough to fold every piece back onto the wallet."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from itertools import pairwise
from math import hypot, pi
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from patternforge.drafting.description import description
from patternforge.drafting.schema import pattern_schema
from patternforge.export.json import json_bytes
from patternforge.fit.findings import Finding, Limit, Stretch, at_least
from patternforge.geometry.corners import rounded_rectangle
from patternforge.leather.hardware import Setting
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import (
    Across,
    Design,
    Edge,
    HoleShape,
    HoleSpec,
    Initials,
    Lying,
    PocketPart,
    SeamSpec,
    Side,
    Spot,
    Stamp,
    ThumbNotch,
)
from tests.designs_built import RIM, SLITS, STITCHING, leathers, sleeve, three_fold, two_fold, with_holes
from tests.folded_built import dressed_envelope, envelope
from tests.shapes_built import SNAP, strap_case, windowed

EASED = SeamSpec("rim", RIM, margin=3.5, across=Across.EASED, spread=10.0, stitching=STITCHING)
POCKET = PocketPart(
    "front", "inner", 0, "card", 40.0, lying=Lying.LYING, thumb=ThumbNotch(18.0, 9.0), trim=((Edge.BOTTOM, 1.0),)
)
MAGNET = replace(SNAP, holes=(0.0, 0.0), reach=5.0, setting=Setting.COVERED, thickness=1.0)
STROKES = Initials("monogram", "AB", "back", Spot(0, None, (Edge.BOTTOM, 20.0)), 30.0, 9.0)
STAMPED = Initials(
    "owner", "7", "cards", Spot(0, None, (Edge.BOTTOM, 20.0)), 20.0, 10.0, Stamp(6.0, 8.0), up=Edge.LEFT
)
DESIGNS = {
    "letters": sleeve(initials=(STROKES, STAMPED)),
    "magnets": strap_case(fittings=(MAGNET,)),
    "two-fold": two_fold(),
    "sleeve": sleeve(),
    "three-fold": three_fold(),
    "slits": with_holes(two_fold(), SLITS),
    "marks": with_holes(sleeve(), HoleSpec(HoleShape.MARK)),
    "pocket": sleeve(parts=(sleeve().parts[0], POCKET)),
    "eased": two_fold(seams=(EASED,)),
    "strap": strap_case(),
    "window": windowed(),
    "outside": sleeve(parts=(replace(POCKET, facing=Side.OUTSIDE, thumb=None), sleeve().parts[0])),
    "folded": envelope(),
    "folded, with all there is": dressed_envelope(),
}
FINDINGS = (
    Finding("hole to edge", "shell", 3.0, at_least(1.5, 1.0)),
    Finding("stitches stretched by", "rim", 7.0, Limit(Stretch(-5.0, 5.0), Stretch(high=9.0)), "spread them", "%"),
)


once_drafted = cache(drafted)


def read(design: Design, findings: tuple[Finding, ...] = ()) -> dict[str, Any]:
    """What a stranger finds in the file."""
    document = json.loads(json_bytes(description(once_drafted(design), findings)))
    assert isinstance(document, dict)
    return document


@pytest.fixture(scope="module")
def validator() -> Draft202012Validator:
    Draft202012Validator.check_schema(pattern_schema())
    return Draft202012Validator(pattern_schema())


@pytest.mark.parametrize("name", DESIGNS)
def test_every_description_is_valid_under_the_schema(name: str, validator: Draft202012Validator) -> None:
    errors = [f"{list(e.path)}: {e.message}" for e in validator.iter_errors(read(DESIGNS[name], FINDINGS))]
    assert errors == []


BREAKS: dict[str, Callable[[dict[str, Any]], Any]] = {
    "a missing name": lambda d: d.pop("pieces"),
    "an unknown name": lambda d: d.update(colour="red"),
    "a word for a number": lambda d: d["pieces"][0].update(width="95 mm"),
    "a vertex without its bulge": lambda d: d["pieces"][0]["outline"][0].pop(),
    "an unknown edge role": lambda d: d["pieces"][0]["edges"].append("frayed"),
    "a matrix of five": lambda d: d["pieces"][0]["placement"]["onto_piece"].pop(),
    "another version": lambda d: d.update(version=2),
    "a negative area": lambda d: d["pieces"][0].update(area=-1),
    "an unknown verdict": lambda d: d["findings"][0].update(verdict="fine"),
    "hardware of no half": lambda d: d["pieces"][0]["fittings"].append({"fitting": "snap"}),
    "a material unknown": lambda d: d["pieces"][0].update(made_of="paper"),
    "a place without a panel": lambda d: d["inputs"]["fittings"].append({"at": {"from": {}}}),
    "a part of no kind": lambda d: d["inputs"]["parts"][0].update(kind="wing"),
}


@pytest.mark.parametrize("fault", BREAKS)
def test_the_schema_refuses(fault: str, validator: Draft202012Validator) -> None:
    document = read(two_fold(), FINDINGS)
    assert validator.is_valid(document)
    BREAKS[fault](document)
    assert not validator.is_valid(document)


def test_letters_are_told_as_asked_and_as_they_lie_on_their_piece() -> None:
    told = read(DESIGNS["letters"])
    assert told["inputs"]["initials"][1] == {
        "name": "owner",
        "text": "7",
        "part": "cards",
        "width": 20.0,
        "height": 10.0,
        "stamp": {"width": 6.0, "height": 8.0, "spacing": 1.0},
        "clear": 3.0,
        "up": "left",
        "at": {"panel": "back", "from": {"bottom": 20.0}, "fold": None},
    }
    back, *_, cards = told["pieces"]
    common = {"x": back["width"] / 2, "y": 20.0, "clear": 3.0}
    strokes = {"initials": "monogram", "text": "AB", "style": "strokes", "up": 90.0, "width": 30.0, "height": 9.0}
    (found,) = back["inscriptions"]
    assert found == {**common, **strokes, "letter_height": pytest.approx(9.0)}
    (stamped,) = cards["inscriptions"]
    assert (stamped["style"], stamped["up"], stamped["letter_height"]) == ("stamps", 180.0, None)


def test_hidden_places_are_told_as_marks() -> None:
    told = read(DESIGNS["magnets"])
    marks = {piece["name"]: piece["marks"] for piece in told["pieces"]}
    assert [len(each) for each in marks.values()] == [1, 1, 1]
    (mark,) = marks["strap"]
    (half,) = told["pieces"][0]["fittings"]
    assert (mark["name"], mark["closed"], half["diameter"], half["reach"]) == ("closure", True, 0.0, 5.0)
    assert [abs(x - half["x"]) for x, _, _ in mark["path"]] == pytest.approx([5.0, 5.0])


def test_the_finest_of_a_piece_is_told() -> None:
    shell = next(piece for piece in read(strap_case())["pieces"] if piece["name"] == "shell")
    assert shell["finest"]["radius"] == pytest.approx(5.0)
    assert shell["finest"]["slot"] == pytest.approx(3.5)


def test_hardware_is_told_with_its_holes_and_what_they_meet() -> None:
    told = read(strap_case())
    assert told["inputs"]["fittings"] == [
        {
            "name": "closure",
            "kind": "snap-line-20",
            "part": "strap",
            "at": {"panel": "strap", "from": {"left": 14.0}, "fold": None},
            "meets": {"part": "shell", "panel": "front"},
            "holes": [4.5, 3.5],
            "reach": 6.35,
            "setting": "punched",
            "thickness": 0.0,
        }
    ]
    strap, shell, lining = told["pieces"]
    (hole,), (stud,) = strap["fittings"], shell["fittings"]
    assert (hole["half"], hole["diameter"], stud["half"], stud["diameter"]) == (1, 4.5, 2, 3.5)
    (round_hole,) = shell["openings"]
    assert [sum(v[i] for v in round_hole) / len(round_hole) for i in (0, 1)] == pytest.approx([stud["x"], stud["y"]])
    assert lining["fittings"] == []


def test_a_strap_and_its_seam_are_told_as_asked() -> None:
    asked = read(strap_case())["inputs"]
    assert asked["parts"][0]["inset"] == {"bottom": 25.0, "top": 25.0, "right": 70.0}
    assert asked["parts"][0]["corner"] == 10.0
    assert [(seam["over"], seam["of"]) for seam in asked["seams"]] == [
        (["front", "front"], None),
        (["back", "back"], "strap"),
    ]


def test_a_window_is_told_with_its_film_which_has_no_grain_side() -> None:
    told = read(windowed())
    (window,) = told["inputs"]["parts"][1]["openings"]
    assert window["at"] == {"panel": "back", "from": {"bottom": 22.0}, "fold": None}
    assert window["film"] == {"leather": "film", "overlap": 6.0, "margin": 3.0}
    film = next(piece for piece in told["pieces"] if piece["name"] == "window film")
    assert (film["made_of"], film["showing_face"], film["lines"]) == ("film", None, "cards 1")
    assert (told["pieces"][0]["made_of"], told["pieces"][0]["showing_face"]) == ("leather", "grain")
    assert told["pieces"][0]["lines"] is None


def test_every_name_in_the_schema_that_holds_a_bare_number_says_what_it_is_or_is_plain_by_itself() -> None:
    nameless = [path for path, schema in numbers(pattern_schema(), ()) if "description" not in schema]
    plain = {"value", "low", "high", "compensation", "price", "measured", "count", "cards", "notes", "items"}
    plain |= {"number", "index", "hole_count", "slots", "per_slot", "columns", "level", "loose"}
    assert [path for path in nameless if path[-1] not in plain] == []


def numbers(schema: Any, path: tuple[str, ...]) -> list[tuple[tuple[str, ...], dict[str, Any]]]:
    if isinstance(schema, list):
        return [each for one in schema for each in numbers(one, path)]
    if not isinstance(schema, dict):
        return []
    own = [(path, schema)] if schema.get("type") in ("number", "integer") else []
    inner = [each for key in ("items", "oneOf") if key in schema for each in numbers(schema[key], (*path, key))]
    named = [each for key, one in schema.get("properties", {}).items() for each in numbers(one, (*path, key))]
    return own + inner + named


def test_pieces_are_told_with_their_outline_edges_sizes_and_holes() -> None:
    pattern = drafted(two_fold())
    told = read(two_fold())["pieces"]
    assert [one["name"] for one in told] == [piece.name for piece in pattern.pieces]
    for one, piece in zip(told, pattern.pieces, strict=True):
        assert len(one["outline"]) == len(one["edges"]) == len(piece.outline.segments)
        assert [n for v in one["outline"] for n in v] == pytest.approx(
            [n for v in piece.outline.vertices for n in v], abs=1e-9
        )
        assert (one["width"], one["height"], one["area"]) == pytest.approx((piece.width, piece.height, piece.area))
        assert [(h["seam"], h["index"]) for h in one["holes"]] == [(h.seam, h.index) for h in piece.holes]
        assert {h["shape"] for h in one["holes"]} == {"round"}
        assert one["thickness"] == {"outer": 1.2, "inner": 0.8}[one["leather"]]


def test_openings_are_told_and_taken_out_of_the_area() -> None:
    pattern = drafted(sleeve())
    window = rounded_rectangle(20, 20, 60, 40, 3).cw()
    holed = replace(pattern, pieces=(replace(pattern.pieces[0], openings=(window,)), *pattern.pieces[1:]))
    before, after = (description(p)["pieces"][0] for p in (pattern, holed))
    assert len(after["openings"][0]) == 8
    assert before["area"] - after["area"] == pytest.approx(800 - (4 - pi) * 9)


@pytest.mark.parametrize("name", ["two-fold", "sleeve", "three-fold", "slits", "pocket", "eased", "outside"])
def test_the_file_alone_leads_every_hole_of_every_piece_back_to_its_seam(name: str) -> None:
    document = read(DESIGNS[name])
    seams = {seam["name"]: seam for seam in document["seams"]}
    checked = 0
    for piece in document["pieces"]:
        for hole in piece["holes"]:
            seam = seams[hole["seam"]]
            (there,) = [h for h in seam["holes"] if h["index"] == hole["index"]]
            x, y = assembly_point(piece["placement"], seam["spread"], hole["x"], hole["y"])
            assert hypot(x - there["x"], y - there["y"]) < 1e-6
            checked += 1
    assert checked == sum(len(piece["holes"]) for piece in document["pieces"]) > 90


def assembly_point(placement: dict[str, Any], spread: float, x: float, y: float) -> tuple[float, float]:
    """Back through the matrix (an isometry: its inverse is its transpose) and the breaks, widened by the spread."""
    a, b, c, d, e, f = placement["onto_piece"]
    flat, y = a * (x - e) + b * (y - f), c * (x - e) + d * (y - f)
    sides = (-spread, spread)
    breaks = [(s + sides[i % 2], t + sides[i % 2]) for i, (s, t) in enumerate(placement["breaks"])]
    if not breaks:
        return flat, y
    for (s0, t0), (s1, t1) in pairwise(breaks):
        if t0 <= flat <= t1:
            return s0 + (flat - t0) * (s1 - s0) / (t1 - t0), y
    s, t = breaks[0] if flat < breaks[0][1] else breaks[-1]
    return s + flat - t, y


def test_folds_are_told_with_the_gap_radius_and_length_of_every_layer_that_crosses_them() -> None:
    (fold,) = read(two_fold())["folds"]
    assert [layer["part"] for layer in fold["layers"]] == ["shell", "divider"]
    for layer, thickness in zip(fold["layers"], (1.2, 0.8), strict=True):
        assert layer["gap"]["value"] == pytest.approx(sum(term["value"] for term in layer["gap"]["terms"]))
        assert layer["inside_radius"] == pytest.approx(max(layer["gap"]["value"] / 2, thickness / 2))
        assert layer["true_length"] == pytest.approx(pi * (layer["inside_radius"] + thickness / 2))


def test_seams_are_told_with_their_pieces_holes_pitch_length_and_thread() -> None:
    pattern = drafted(two_fold())
    for one, seam in zip(read(two_fold())["seams"], pattern.seams, strict=True):
        assert one["pieces"] == list(seam.pieces)
        assert one["hole_count"] == len(one["holes"]) == len(seam.holes)
        assert one["pitch"] == 3.38
        assert (one["spacing_min"], one["spacing_max"]) == pytest.approx((min(seam.spacings), max(seam.spacings)))
        assert (one["length"], one["thread"]) == pytest.approx((seam.length, seam.thread))
        assert one["spread"] == 0
    assert read(DESIGNS["eased"])["seams"][0]["spread"] == 10


def test_inputs_are_told_resolved_with_panels_by_name_and_without_their_place_in_the_file() -> None:
    inputs = read(two_fold())["inputs"]
    assert inputs["leathers"][0]["drafted_thickness"] == 1.2
    assert [part["kind"] for part in inputs["parts"]] == ["layer", "layer", "bank", "bank"]
    assert (inputs["parts"][0]["first"], inputs["parts"][3]["panel"]) == ("left", "right")
    assert not any("line" in part for part in inputs["parts"])
    assert inputs["contents"][0]["as"] == "card"


def test_findings_are_told_with_the_worst_verdict_and_none_means_not_measured() -> None:
    told = read(sleeve(), FINDINGS)
    assert told["findings"][1] == {
        "what": "stitches stretched by",
        "where": "rim",
        "measured": 7.0,
        "unit": "%",
        "good": {"low": -5.0, "high": 5.0},
        "tolerable": {"low": None, "high": 9.0},
        "verdict": "look",
        "remedy": "spread them",
    }
    assert (told["verdict"], read(sleeve())["verdict"]) == ("look", None)


def test_the_same_design_gives_the_same_bytes_and_a_thicker_leather_others() -> None:
    thin, again, thick = (
        json_bytes(description(drafted(design)))
        for design in (two_fold(), two_fold(), two_fold(leathers=leathers(1.3)))
    )
    assert thin == again != thick


def test_a_folded_wallet_is_told_by_faces_folds_tabs_and_rooms_and_has_no_body() -> None:
    told = read(DESIGNS["folded"])
    assert told["inputs"]["body"] is None
    assert [face["name"] for face in told["inputs"]["folded"]["faces"]] == ["back", "left", "right", "front", "lid"]
    assert told["inputs"]["folded"]["faces"][1]["hinge"]["inset"] == {"bottom": 2.0, "top": 2.0}
    assert [hinge["face"] for hinge in told["folded"]["hinges"]] == ["left", "right", "front", "lid"]
    assert told["folded"]["tabs"][0]["opening"] == 0
    assert told["folded"]["rooms"][0]["between"] == ["back", "front"]
    assert len(told["pieces"][0]["fold_lines"]) == 8
    assert read(DESIGNS["sleeve"])["folded"] is None
