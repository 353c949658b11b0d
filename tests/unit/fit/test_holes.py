"""Holes judged, every 4 mm along a rim 4 mm off the edge: each finding good, to look at, and refused."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import pi, sqrt

import pytest

from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.holes import apart, crowding, rim_reach
from patternforge.fit.layout import LaidHole
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.pattern import Hole, Pattern, SeamHole
from patternforge.wallet.spec import Across, FoldSpec, HoleShape, HoleSpec, LayerPart
from tests.unit.fit.found import (
    GOOD,
    LOOK,
    NO,
    SHARP,
    finding,
    findings,
    small,
    with_holes,
    with_limits,
    with_stitching,
)
from tests.unit.wallet.built import bank, pocket, shell

TWO = (100.0, 100.0)
FOLD = FoldSpec(relief=5.0)
LINING = LayerPart("lining", "inner", 0, 0)
MEET = "mating holes miss each other by"
PITCH = "stitch furthest from the pitch"
MOUTH = "hole rim to a mouth it straddles"
EDGE = "hole rim to edge"
TANGENT = "hole rim to fold"
STRETCH = "stitches stretched by"
NEAREST = "nearest two holes"


def plain() -> Pattern:
    """A pocket whose mouth at 42 lies midway between holes at 40 and 44."""
    return small(shell(1), pocket(depth=38.0))


def round_hole(diameter: float) -> HoleSpec:
    return HoleSpec(HoleShape.ROUND, diameter=diameter)


@pytest.mark.parametrize(
    ("bulge", "distance"),
    # Under an arc over 8 mm, 5 mm up: a half circle that bows down comes to 1 mm, one that bows up no nearer.
    [(1.0, 1.0), (-1.0, 5.0), (0.0, 5.0)],
)
def test_a_slit_is_as_near_to_an_arc_as_its_bow_comes(bulge: float, distance: float) -> None:
    slit = Segment(Point(-10, 0), Point(10, 0))
    assert apart(slit, Segment(Point(-4, 5), Point(4, 5), bulge)) == pytest.approx(distance)


@pytest.mark.parametrize(("off", "verdict"), [(0.0, GOOD), (0.1, GOOD), (0.2, LOOK), (0.3, LOOK), (0.31, NO)])
def test_a_hole_that_misses_its_mate(off: float, verdict: Verdict) -> None:
    def moved(holes: Sequence[Hole]) -> list[Hole]:
        return [
            replace(hole, at=hole.at + Point(0.6 * off, 0.8 * off)) if hole.index == 20 else hole for hole in holes
        ]

    found = finding(with_holes(plain(), "pocket", moved), MEET)
    assert found.measured == pytest.approx(off, abs=1e-9)
    assert found.verdict is verdict


def test_a_hole_that_no_piece_carries_is_refused() -> None:
    pattern = plain()
    lost = SeamHole(61, 1, 240.0, Point(96.0, 84.0), 90.0)
    seams = tuple(replace(seam, holes=(*seam.holes, lost)) for seam in pattern.seams)
    found = finding(replace(pattern, seams=seams), "holes that no piece carries")
    assert (found.measured, found.verdict, found.where) == (1, NO, "rim")


@pytest.mark.parametrize(
    ("pitch", "verdict"),
    # Stitches of 4 mm under a nominal pitch: off by 5 % at 3.81 or 4.21, by 15 % at 3.48 or 4.71.
    [(4.0, GOOD), (4.2, GOOD), (3.82, GOOD), (4.3, LOOK), (3.5, LOOK), (4.7, LOOK), (4.72, NO), (3.4, NO)],
)
def test_stitches_off_their_pitch(pitch: float, verdict: Verdict) -> None:
    found = finding(with_stitching(plain(), pitch=pitch), PITCH)
    assert (found.measured, *found.limit.good.ends) == pytest.approx((4.0, 0.95 * pitch, 1.05 * pitch))
    assert found.verdict is verdict


def test_the_stitch_furthest_off_is_named_even_where_others_are_right() -> None:
    # An exact mouth at 43: the 33 mm above it are 8.5 stitches of 3.88, the 39 below it 9.5 of 4.11.
    found = finding(small(shell(1), pocket(depth=39.0)), PITCH)
    assert found.measured == pytest.approx(33 / 8.5)


def test_sizes_are_to_move_only_where_some_are_kept() -> None:
    tight = {"pitch_look": 1e-4}
    kept = finding(with_limits(small(shell(1), pocket(depth=39.0)), **tight), PITCH)
    assert kept.remedy == "let sizes move to whole stitches, or change the pitch a little"
    free = finding(with_limits(small(shell(1), height=81.0), **tight), PITCH)
    assert free.remedy == "change the pitch a little"


def test_a_hole_near_an_edge_is_told_of_sizes_only_where_some_are_kept() -> None:
    kept = finding(with_limits(small(shell(1), pocket(depth=39.0)), hole_to_edge=9.0), EDGE, "shell")
    assert kept.remedy == "smaller holes, more margin, or let sizes move to whole stitches"
    free = finding(with_limits(small(shell(1)), hole_to_edge=9.0), EDGE, "shell")
    assert free.remedy == "smaller holes or more margin"


@pytest.mark.parametrize(
    ("hole", "gap", "verdict"),
    # The mouth is 2 mm from the holes on either side.
    [
        (round_hole(1.0), 1.5, GOOD),
        (round_hole(2.8), 0.6, GOOD),
        (round_hole(3.0), 0.5, LOOK),
        (round_hole(3.4), 0.3, LOOK),
        (round_hole(3.6), 0.2, NO),
        (round_hole(4.4), -0.2, NO),
        (HoleSpec(HoleShape.SLIT, length=2.0, width=0.2, slant=45.0), 2 - sqrt(0.5) - 0.1, GOOD),
        (HoleSpec(HoleShape.SLIT, length=2.0, width=0.2, slant=0.0), 0.9, GOOD),
        (HoleSpec(HoleShape.SLIT, length=2.0, width=0.2, slant=90.0), 1.9, GOOD),
        (HoleSpec(HoleShape.MARK), 2.0, GOOD),
    ],
)
def test_a_hole_beside_a_mouth(hole: HoleSpec, gap: float, verdict: Verdict) -> None:
    # The slits' own directions are drafted with them, so the wallet is drafted with them.
    seam = replace(SHARP, stitching=replace(SHARP.stitching, hole=hole))
    found = finding(small(shell(1), pocket(depth=38.0), seams=(seam,)), MOUTH, "pocket")
    assert found.measured == pytest.approx(gap)
    assert found.verdict is verdict
    assert bool(found.remedy) == (verdict is not GOOD)


@pytest.mark.parametrize(
    ("diameter", "gap", "verdict"),
    [(1.0, 3.5, GOOD), (5.0, 1.5, GOOD), (5.4, 1.3, LOOK), (6.5, 0.75, LOOK), (6.8, 0.6, NO)],
)
def test_a_hole_beside_an_edge(diameter: float, gap: float, verdict: Verdict) -> None:
    pattern = with_stitching(small(shell(1), LINING), hole=round_hole(diameter))
    found = findings(pattern, EDGE)
    assert [f.measured for f in found] == pytest.approx([gap, gap])
    assert {f.verdict for f in found} == {verdict}


@pytest.mark.parametrize(
    ("stop", "gap", "verdict"),
    [(9.0, 8.5, GOOD), (1.5, 1.0, GOOD), (1.2, 0.7, LOOK), (1.0, 0.5, LOOK), (0.8, 0.3, NO)],
)
def test_a_hole_beside_a_fold(stop: float, gap: float, verdict: Verdict) -> None:
    lining = replace(LINING, last=1)
    pattern = small(shell(2), lining, widths=TWO, folds=(FOLD,), seams=(replace(SHARP, stop=stop),))
    found = finding(pattern, TANGENT)
    assert found.measured == pytest.approx(gap)
    assert found.verdict is verdict


def eased(spread: float) -> Pattern:
    seam = replace(SHARP, across=Across.EASED, spread=spread)
    return small(shell(2), replace(LINING, last=1), widths=TWO, folds=(FOLD,), seams=(seam,))


@pytest.mark.parametrize(("spread", "verdict"), [(10.0, GOOD), (9.3, GOOD), (9.0, LOOK), (2.3, LOOK), (2.0, NO)])
def test_an_eased_seam_stretches_by_what_the_shell_is_longer(spread: float, verdict: Verdict) -> None:
    # Shell 1.8 pi, lining 0.8 pi: pi more over 0.8 pi and twice the spread; 15 % are 9.2 mm, 45 % are 2.23.
    found = finding(eased(spread), STRETCH)
    assert (found.measured, found.limit.good.high) == pytest.approx((100 * pi / (0.8 * pi + 2 * spread), 15.0))
    assert found.unit == "%"
    assert found.verdict is verdict


def test_the_mates_of_an_eased_seam_are_compared_beyond_its_spread_only() -> None:
    assert finding(eased(10.0), MEET).measured == pytest.approx(0.0, abs=1e-9)
    # Judged as if it had no spread, holes within 10 mm of the fold lie apart by what the shell is stretched.
    pattern = eased(10.0)
    tight = tuple(replace(seam, spread=0.0) for seam in pattern.design.seams)
    assert finding(replace(pattern, design=replace(pattern.design, seams=tight)), MEET).verdict is NO


def test_an_edge_the_seam_passes_over_is_no_edge_beside_it() -> None:
    # Steps and overlaps of whole stitches: the shoulders of the tabs, at 46 and 34, lie midway between holes 4 mm
    # apart: 1 mm from the rim of a hole of 2 mm, which an edge beside the seam may not be.
    pattern = with_stitching(small(shell(1), bank(step=12.0, show=12.0)), hole=round_hole(2.0))
    for tab in ("bank 2", "bank 3"):
        assert finding(pattern, MOUTH, f"{tab}, rim").measured == pytest.approx(1.0)
        # Beside it begins the rounding where the tab becomes the stem: 2 mm inside of the hole and 2 mm below it.
        found = finding(pattern, EDGE, tab)
        assert found.measured == pytest.approx(2 * sqrt(2) - 1)
        assert found.verdict is GOOD


def test_an_eased_seam_is_not_asked_how_near_it_comes_to_the_fold() -> None:
    assert not findings(eased(10.0), TANGENT)
    assert not findings(plain(), STRETCH)


@pytest.mark.parametrize(("apart", "verdicts"), [(2.5, []), (2.4, []), (2.3, [LOOK]), (1.4, [LOOK]), (1.3, [NO])])
def test_holes_of_two_seams_that_crowd_each_other(apart: float, verdicts: list[Verdict]) -> None:
    # Under a pitch of 4 mm: 0.6 of it are 2.4, 0.35 are 1.4.
    def crowded(holes: Sequence[Hole]) -> list[Hole]:
        (first, *_) = holes
        return [*holes, replace(first, seam="other", index=1, at=first.at + Point(-apart, 0.0))]

    pattern = plain()
    other = replace(pattern.seams[0], name="other", holes=pattern.seams[0].holes[:1], spacings=())
    found: list[Finding] = findings(
        with_holes(replace(pattern, seams=(*pattern.seams, other)), "shell", crowded), NEAREST
    )
    assert [f.verdict for f in found] == verdicts
    assert [f.measured for f in found] == pytest.approx([apart] * len(verdicts))


def laid(*places: tuple[float, float]) -> list[LaidHole]:
    return [LaidHole("rim", i, Point(x, y)) for i, (x, y) in enumerate(places)]


def test_crowding_is_the_smallest_distance_or_the_reach_it_is_looked_for_in() -> None:
    assert crowding(laid((0, 0), (3, 4), (100, 100)), within=8.0) == pytest.approx(5.0)
    assert crowding(laid((0, 0), (3, 4)), within=4.0) == 4.0
    assert crowding(laid((-0.5, 0), (0.5, 0)), within=8.0) == pytest.approx(1.0)
    assert crowding(laid((0, 0)), within=8.0) == 8.0
    assert crowding((), within=8.0) == 8.0


@pytest.mark.parametrize(
    ("spec", "reach"),
    [
        (round_hole(1.2), 0.6),
        (HoleSpec(HoleShape.SLIT, length=2.0), 1.0),
        (HoleSpec(HoleShape.MARK), 0.0),
        (HoleSpec(HoleShape.NONE), 0.0),
    ],
)
def test_a_rim_reaches_as_far_as_its_hole_is_large(spec: HoleSpec, reach: float) -> None:
    assert rim_reach(spec) == reach
