"""Boxes of letters judged on the pieces: a case for each verdict of each measure.

The shell is 100 x 80 mm, seen from the outside, its rim 4 mm off the edge with round holes of 1 mm and thread of
0.55 mm; the box is 20 x 8 mm and wants 3 mm.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from patternforge.fit.findings import Finding, Verdict
from patternforge.geometry.path import from_vertices
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.marked import PlaceMark
from patternforge.wallet.pattern import FittingHole, Pattern
from patternforge.wallet.spec import Edge, FoldSpec, HoleShape, Initials, LayerPart, Opening, Spot
from tests.unit.fit.found import GOOD, LOOK, NO, SHARP, finding, findings, with_stitching
from tests.unit.wallet.built import shell, wallet

BOX = Initials("name", "AB", "shell", Spot(0, (Edge.LEFT, 50.0), (Edge.BOTTOM, 40.0)), 20.0, 8.0)
LINING = LayerPart("lining", "inner", 0, 0)


def lettered(*parts: Any, box: Initials = BOX, **changes: Any) -> Pattern:
    every = parts or (shell(1), LINING)
    return drafted(wallet(*every, **{"seams": (SHARP,), "initials": (box,), **changes}))


def at(x: float, y: float, panel: int = 0, **changes: Any) -> Initials:
    return replace(BOX, spot=Spot(panel, (Edge.LEFT, x), (Edge.BOTTOM, y)), **changes)


def with_piece(pattern: Pattern, name: str, **changes: Any) -> Pattern:
    pieces = tuple(replace(each, **changes) if each.name == name else each for each in pattern.pieces)
    return replace(pattern, pieces=pieces)


def seen(found: Finding) -> tuple[float, Verdict]:
    assert bool(found.remedy) is (found.verdict is not GOOD)
    return round(found.measured, 6), found.verdict


def test_a_box_in_the_middle_is_good_by_every_measure() -> None:
    pattern = lettered()
    assert seen(finding(pattern, "letters clear of the edge")) == (36.0, GOOD)
    assert all(found.verdict is GOOD for found in findings(pattern, "letters hidden, laid open"))
    assert findings(pattern, "letters clear of folds") == []
    assert findings(pattern, "letters clear of hardware") == []
    assert findings(pattern, "letters clear of other letters") == []


@pytest.mark.parametrize(
    ("x", "room", "verdict"), [(13.0, 3.0, GOOD), (12.9, 2.9, LOOK), (10.0, 0.0, NO), (6.0, 0.0, NO)]
)
def test_the_edge(x: float, room: float, verdict: Verdict) -> None:
    pattern = with_piece(lettered(box=at(x, 40.0)), "shell", holes=())
    assert seen(finding(pattern, "letters clear of the edge")) == (room, verdict)


@pytest.mark.parametrize(("clear", "verdict"), [(2.0, GOOD), (2.1, LOOK), (0.0, GOOD)])
def test_a_box_is_as_clear_as_it_asks(clear: float, verdict: Verdict) -> None:
    pattern = with_piece(lettered(box=at(12.0, 40.0, clear=clear)), "shell", holes=())
    found = finding(pattern, "letters clear of the edge")
    assert (found.limit.good.low, found.verdict) == (max(clear, 0.01), verdict)


@pytest.mark.parametrize(
    ("x", "y", "room", "verdict"),
    [
        # The window lies at 46 to 54 across and 58 to 62 along, drawn on the other side of the middle.
        (50.0, 50.0, 4.0, GOOD),
        (50.0, 52.0, 2.0, LOOK),
        (50.0, 58.0, 0.0, NO),
        (50.0, 60.0, 0.0, NO),
    ],
)
def test_an_opening_is_an_edge_too(x: float, y: float, room: float, verdict: Verdict) -> None:
    window = Opening("window", Spot(0, None, (Edge.BOTTOM, 60.0)), 8.0, 4.0)
    pattern = lettered(shell(1, openings=(window,)), LINING, box=at(x, y))
    assert seen(finding(pattern, "letters clear of the edge")) == (room, verdict)


def test_a_box_wholly_in_an_opening_is_off_the_leather() -> None:
    window = Opening("window", Spot(0, None, (Edge.BOTTOM, 50.0)), 40.0, 30.0)
    pattern = lettered(shell(1, openings=(window,)), LINING, box=at(50.0, 50.0))
    assert seen(finding(pattern, "letters clear of the edge")) == (0.0, NO)


@pytest.mark.parametrize(
    ("y", "room", "verdict"),
    # The row of holes lies at y = 4; below a box that begins at y - 4 it leaves y - 8 less the half of a hole.
    [(12.0, 3.5, GOOD), (11.5, 3.0, GOOD), (11.4, 2.9, LOOK), (8.5, 0.0, NO), (4.0, 0.0, NO)],
)
def test_stitches(y: float, room: float, verdict: Verdict) -> None:
    assert seen(finding(lettered(box=at(50.0, y)), "letters clear of stitches")) == (room, verdict)


@pytest.mark.parametrize(
    ("shape", "room"),
    # Slits of 2 x 0.3 mm at 45 degrees reach up by 1 / sqrt(2) + 0.15; marks and bare thread by half the thread.
    [(HoleShape.SLIT, 8.0 - 0.707107 - 0.15), (HoleShape.MARK, 8.0 - 0.275), (HoleShape.NONE, 8.0 - 0.275)],
)
def test_stitches_are_as_near_as_their_holes_and_their_thread(shape: HoleShape, room: float) -> None:
    pattern = lettered(box=at(50.0, 16.0))
    seam = replace(SHARP, stitching=replace(SHARP.stitching, hole=replace(SHARP.stitching.hole, shape=shape)))
    cut = (
        lettered(box=at(50.0, 16.0), seams=(seam,))
        if shape is HoleShape.SLIT
        else with_stitching(pattern, hole=replace(SHARP.stitching.hole, shape=shape))
    )
    assert finding(cut, "letters clear of stitches").measured == pytest.approx(room, abs=1e-5)


def test_between_two_runs_there_is_no_thread() -> None:
    """Both runs of a seam that stops at a fold end 10 mm from it; a box between their ends is clear of either."""
    seam = replace(SHARP, along=(Edge.BOTTOM,), end=None, stop=40.0)
    pattern = lettered(shell(2), widths=(100.0, 100.0), folds=(FoldSpec(),), seams=(seam,), box=at(85.0, 8.0))
    # The last hole of the left run stands 40 mm from the fold, 15 mm from the box and half a millimetre wide.
    assert finding(pattern, "letters clear of stitches").measured == pytest.approx(14.5)


@pytest.mark.parametrize(("x", "room", "verdict"), [(87.0, 3.0, GOOD), (88.0, 2.0, LOOK), (91.0, 0.0, NO)])
def test_folds(x: float, room: float, verdict: Verdict) -> None:
    pattern = lettered(shell(2), widths=(100.0, 100.0), folds=(FoldSpec(),), box=at(x, 40.0))
    assert seen(finding(pattern, "letters clear of folds")) == (room, verdict)


@pytest.mark.parametrize(
    ("y", "room", "verdict"), [(52.0, 3.0, GOOD), (50.0, 1.0, LOOK), (44.0, 0.0, NO), (40.0, 0.0, NO)]
)
def test_hardware(y: float, room: float, verdict: Verdict) -> None:
    cap = FittingHole("snap", 1, Point(50.0, y), 4.0, 5.0)
    pattern = with_piece(lettered(), "shell", fittings=(cap,))
    assert seen(finding(pattern, "letters clear of hardware")) == (room, verdict)


@pytest.mark.parametrize(("y", "room", "verdict"), [(52.0, 3.0, GOOD), (50.0, 1.0, LOOK), (47.0, 0.0, NO)])
def test_a_place_marked_for_what_lies_behind_is_hardware(y: float, room: float, verdict: Verdict) -> None:
    rim = from_vertices([(45.0, y, 1.0), (55.0, y, 1.0)], closed=True)
    pattern = with_piece(lettered(), "shell", marks=(PlaceMark("magnet", rim),))
    assert seen(finding(pattern, "letters clear of hardware")) == (room, verdict)


@pytest.mark.parametrize(
    ("y", "room", "verdict"), [(51.0, 3.0, GOOD), (50.0, 2.0, LOOK), (46.0, 0.0, NO), (40.0, 0.0, NO)]
)
def test_other_letters(y: float, room: float, verdict: Verdict) -> None:
    other = at(50.0, y, name="other")
    pattern = lettered(initials=(BOX, other))
    found = findings(pattern, "letters clear of other letters")
    assert [seen(each) for each in found] == [(room, verdict)] * 2
