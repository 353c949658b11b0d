"""Wallets of one piece closed from the DXF file and ``pattern.json`` as written, in space, by ``tests.folded_sheet``.

Nothing is asked of the program but its files. Each check is shown to fail, too, on files made wrong on purpose.
"""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass, replace
from functools import cached_property
from math import pi
from pathlib import Path
from typing import Any

import pytest
import shapely

from patternforge.design.load import load_design
from tests.folded_sheet import Sheet, sheet
from tests.outside.dxf_reading import CutPiece, cut_pieces, cuts
from tests.outside.written import DESIGNS, SEWN, written

FOLDED = [path for path in DESIGNS if path not in SEWN]
MEET = 0.05  # mm
BESIDE, RIM = 15.0, 1.0  # mm beside a fold that what lies there counts, and of its rim that does not
SETTINGS: dict[str, tuple[dict[str, str], ...]] = {
    "one-piece-card-wallet": ({}, {"cards": "1"}, {"main": "2 mm"}, {"pocket": "45 mm", "main.neutral": "0.35"}),
    "one-piece-coin-envelope": ({}, {"coin_layers": "1"}, {"main": "0.8 mm"}, {"lid_slant": "4 mm"}),
}
CASES = [(path, settings) for path in FOLDED for settings in SETTINGS.get(path.stem, ({},))]
EVERY_CASE = pytest.mark.parametrize(
    ("path", "settings"), CASES, ids=lambda value: getattr(value, "stem", str(value))
)
EVERY_FOLDED = pytest.mark.parametrize("path", FOLDED, ids=lambda path: path.stem)


@dataclass(frozen=True)
class Files:
    """``pattern.json`` and the one piece as cut."""

    json: dict[str, Any]
    piece: CutPiece

    @cached_property
    def sheet(self) -> Sheet:
        """The blank as cut, ready to be closed."""
        return sheet(self.json, [(at.real, at.imag) for at in self.piece.outline.flattened(64)])

    def faults(self) -> list[str]:
        """All in which the closed wallet is not what it should be."""
        return [*self.strays(), *self.slacks(), *self.crossings(), *self.misses()]

    def strays(self) -> list[str]:
        """Faces that do not come to lie where they are said to."""
        found = []
        for face in self.json["folded"]["faces"]:
            a, b, c, d, e, f = face["closed"]
            for x, y, _ in face["outline"]:
                at = self.sheet.place(face["name"], x, y)
                off = abs(complex(at[0], at[1]) - complex(a * x + c * y + e, b * x + d * y + f))
                found += [f"{face['name']}: lies {off:.3f} mm off"] * (off > MEET)
        return found

    def slacks(self) -> list[str]:
        """Folds that hold their flap above what lies under it, or press it in."""
        smallest = 2 * self.json["inputs"]["leathers"][0]["min_radius"] * self.sheet.thickness
        found = []
        for fold in self.sheet.folds:
            slack = self.sheet.slack(fold, BESIDE, RIM)
            gap = 2 * fold.length / pi - 2 * self.sheet.neutral * self.sheet.thickness - slack
            if abs(slack - max(0.0, smallest - gap)) > MEET:
                found.append(f"{fold.face}: {slack:.3f} mm of slack")
        return found

    def crossings(self) -> list[str]:
        """Faces that run through each other as a fold is closed."""
        return [
            f"{fold}: {moved} runs through {other}"
            for fold, pairs in self.sheet.blocked().items()
            for moved, other in sorted(pairs)
        ]

    def misses(self) -> list[str]:
        """Tabs whose root does not come to lie in the middle of a slit as cut, or whose slit is not long enough."""
        found = []
        for tab, slit in zip(self.json["folded"]["tabs"], self.slits, strict=True):
            root = [complex(*self.sheet.place(tab["face"], x, y)[:2]) for x, y in tab["root"]]
            ends = [complex(*self.sheet.place(tab["into"], x, y)[:2]) for x, y in _ends(slit)]
            off = abs(sum(root) - sum(ends)) / 2
            over = abs(ends[1] - ends[0]) - abs(root[1] - root[0]) - self.sheet.thickness
            aslant = abs(((ends[1] - ends[0]) / (root[1] - root[0])).imag)
            if max(off, abs(over), aslant) > MEET:
                found.append(f"{tab['name']}: {off:.3f} mm off its slit, {over:.3f} mm too long, {aslant:.3f} aslant")
        return found

    @property
    def slits(self) -> list[shapely.Polygon]:
        """The first openings as cut, on the blank: one for each tab."""
        a, b, c, d, e, f = self.json["pieces"][0]["placement"]["onto_piece"]
        det = a * d - b * c
        back = [d / det, -c / det, -b / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det]
        cut = [each for each in self.piece.cuts if each.layer == "OPENING"]
        outlines = [each.contour.flattened(64) for each in cut[: len(self.json["folded"]["tabs"])]]
        rings = [shapely.Polygon([(at.real, at.imag) for at in outline]) for outline in outlines]
        return [shapely.affinity.affine_transform(ring, back) for ring in rings]


def _ends(slit: shapely.Polygon) -> list[tuple[float, float]]:
    """The middles of the short sides of the smallest box round a slit."""
    corners = shapely.get_coordinates(shapely.minimum_rotated_rectangle(slit))[:4].tolist()
    sides = [(a, b) for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)]
    short = sorted(sides, key=lambda side: shapely.LineString(side).length)[:2]
    return [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in short]


def files(path: Path, settings: dict[str, str]) -> Files:
    both = written(load_design(path.read_text(encoding="utf-8"), path.name, settings))
    (piece,) = cut_pieces(cuts(both.dxf))
    return Files(both.json, piece)


def test_there_are_wallets_of_one_piece() -> None:
    assert len(FOLDED) >= 2
    assert {path.stem for path in FOLDED} >= set(SETTINGS)


@EVERY_CASE
def test_a_wallet_of_one_piece_closes_flat_and_its_tabs_meet_their_slits(
    path: Path, settings: dict[str, str]
) -> None:
    assert files(path, settings).faults() == []


@EVERY_FOLDED
def test_at_least_four_folds_are_not_all_parallel_and_a_tab_holds_them(path: Path) -> None:
    own = files(path, {})
    ways = {round(abs(float(fold.along @ own.sheet.folds[0].along)), 3) for fold in own.sheet.folds}
    assert len(own.sheet.folds) >= 4
    assert len(ways) > 1
    assert own.json["folded"]["tabs"]
    assert own.json["seams"] == own.json["pieces"][0]["holes"] == []


def changed(own: Files, change: Callable[[dict[str, Any]], None]) -> Files:
    json = deepcopy(own.json)
    change(json)
    return Files(json, own.piece)


@EVERY_FOLDED
@pytest.mark.parametrize("by", [0.2, -0.2])
def test_a_fold_a_fifth_of_a_millimetre_too_long_or_short_is_found(path: Path, by: float) -> None:
    """The tangent of the flap drawn that much further off, as it is cut along the same outline."""
    own = files(path, {})
    for number, fold in enumerate(own.sheet.folds):
        out = own.json["pieces"][0]["placement"]["onto_piece"]
        way = (out[0] * fold.out[0] + out[2] * fold.out[1], out[1] * fold.out[0] + out[3] * fold.out[1])

        def longer(json: dict[str, Any], number: int = number, way: tuple[float, float] = way) -> None:
            for vertex in json["pieces"][0]["fold_lines"][2 * number + 1]:
                vertex[0] += by * way[0]
                vertex[1] += by * way[1]

        found = changed(own, longer).faults()
        assert any(fault.startswith(f"{fold.face}: lies 0.2") for fault in found)
        # The flap stands higher by the diameter of what its fibre has more.
        assert any(f"{fold.face}: {2 * by / pi:.3f} mm of slack" in fault for fault in found)


@EVERY_FOLDED
def test_a_slit_a_tenth_of_a_millimetre_off_is_found(path: Path) -> None:
    own = files(path, {})
    for slit in [each for each in own.piece.cuts if each.layer == "OPENING"][: len(own.json["folded"]["tabs"])]:
        points = tuple(at + 0.1j for at in slit.contour.points)
        moved = replace(slit, contour=replace(slit.contour, points=points))
        piece = CutPiece(tuple(moved if each is slit else each for each in own.piece.cuts))
        (fault,) = Files(own.json, piece).misses()
        assert "0.100 mm off its slit" in fault


@EVERY_FOLDED
def test_a_slit_shorter_than_tab_and_thickness_is_found(path: Path) -> None:
    def wider(json: dict[str, Any]) -> None:
        json["pieces"][0]["thickness"] += 0.1

    assert all("-0.100 mm too long" in fault for fault in changed(files(path, {}), wider).misses())
    assert changed(files(path, {}), wider).misses()


def test_a_lid_closed_before_what_it_is_to_cover_is_found() -> None:
    own = files(next(path for path in FOLDED if path.stem == "one-piece-coin-envelope"), {})

    def lid_behind(json: dict[str, Any]) -> None:
        json["folded"]["hinges"][3]["angle"] = -180

    def lid_first(json: dict[str, Any]) -> None:
        order = [3, 0, 1, 2]
        lines = json["pieces"][0]["fold_lines"]
        json["pieces"][0]["fold_lines"] = [line for i in order for line in (lines[2 * i], lines[2 * i + 1])]
        json["folded"]["hinges"] = [json["folded"]["hinges"][i] for i in order]

    assert any("lid" in fault for fault in changed(own, lid_behind).slacks())
    assert any("mm of slack" in fault for fault in changed(own, lid_first).slacks())
