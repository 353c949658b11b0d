"""Where a point of one panel comes to lie on another, and seams sewn after folding; panels of 100 and 60 mm."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.closed import laid_over
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design, Edge, FoldSpec, HoleShape, HoleSpec, SeamSpec
from tests.unit.wallet.built import RIM, STITCHING, body_of, shell, wallet

FLAP = SeamSpec(
    "flap seam",
    (Edge.BOTTOM, Edge.RIGHT, Edge.TOP),
    margin=4.0,
    stop=10.0,
    over=(1, 1),
    onto=0,
    stitching=STITCHING,
    line=9,
)
SLITS = HoleSpec(HoleShape.SLIT, length=2.0, width=0.3, slant=45.0)


def flapped(seam: SeamSpec = FLAP, angle: float = 180.0) -> Design:
    return wallet(shell(2), widths=(100.0, 60.0), folds=(FoldSpec(angle),), seams=(seam,))


def seams(pattern: Pattern) -> dict[str, dict[int, Point]]:
    return {seam.name: {hole.index: hole.at for hole in seam.holes} for seam in pattern.seams}


def test_a_point_lies_over_the_one_as_far_from_the_fold() -> None:
    design = flapped()
    body = body_of(design)
    fold = body.folds[0]
    at = laid_over(design, body, 1, 0, Point(fold.x1 + 12, 30))
    assert (at.x, at.y) == pytest.approx((fold.x0 - 12, 30))
    back = laid_over(design, body, 0, 1, at)
    assert (back.x, back.y) == pytest.approx((fold.x1 + 12, 30))


def test_what_lies_beside_the_panel_or_on_none_is_refused() -> None:
    design = flapped()
    with pytest.raises(DraftError, match=r"it comes to lie 28\.00 mm off panel 'P1'"):
        laid_over(design, body_of(design), 0, 1, Point(12, 30))
    ajar = flapped(angle=90.0)
    with pytest.raises(DraftError, match="never laid on each other"):
        laid_over(ajar, body_of(ajar), 0, 1, Point(80, 30))


def test_a_seam_sewn_after_folding_has_its_holes_on_both_panels_as_far_from_the_fold() -> None:
    pattern = drafted(flapped())
    fold = pattern.folds[0]
    here, there = seams(pattern)["flap seam"], seams(pattern)["flap seam, other side"]
    assert len(here) == len(there) > 20
    for index, at in here.items():
        assert at.x - fold.x1 == pytest.approx(fold.x0 - there[index].x)
        assert at.y == pytest.approx(there[index].y)


def test_it_takes_thread_once_through_both_panels() -> None:
    pattern = drafted(flapped())
    first, second = pattern.seams
    assert (first.meets, second.meets, second.thread) == ("", "flap seam", 0.0)
    # Two threads over the length, through 2 x 1.2 mm at every hole but one of the run's ends, and the tails.
    stitches = len(first.holes) - 1
    assert first.thread == pytest.approx(2 * (first.length + 2.4 * stitches) + 150.0)


def test_slits_of_the_side_turned_over_slant_the_other_way_so_that_both_lie_on_each_other() -> None:
    slit = replace(FLAP, stitching=replace(STITCHING, hole=SLITS))
    first, second = drafted(flapped(slit)).seams
    assert (first.stitching.hole.slant, second.stitching.hole.slant) == (45.0, -45.0)
    for here, there in zip(first.holes, second.holes, strict=True):
        # Axes heading - slant; mirrored in x an axis at a stands at 180 - a.
        axis = there.heading - second.stitching.hole.slant
        assert (180 - (here.heading - first.stitching.hole.slant) - axis) % 180 == pytest.approx(0, abs=1e-9)


def test_a_panel_between_those_it_joins_is_refused() -> None:
    # Of three panels closed left to right the third lies over the first, which lies over the second.
    rows = (FoldSpec(), FoldSpec())
    three = wallet(shell(3), widths=(60.0, 100.0, 90.0), folds=rows, seams=(replace(FLAP, over=(2, 2), onto=1),))
    with pytest.raises(DraftError, match=r"seam 'flap seam' \(line 9\): P0 lies between the panels it joins"):
        drafted(three)
    assert drafted(replace(three, seams=(replace(FLAP, over=(0, 0), onto=1, along=(Edge.BOTTOM,)),)))


def test_a_seam_that_comes_to_lie_beside_the_other_panel_is_refused() -> None:
    wide = wallet(shell(2), widths=(50.0, 100.0), folds=(FoldSpec(),), seams=(FLAP,))
    with pytest.raises(DraftError, match=r"seam 'flap seam' \(line 9\): when closed it comes to lie"):
        drafted(wide)


def test_an_ordinary_seam_has_one_side() -> None:
    pattern = drafted(wallet(shell(2), widths=(100.0, 60.0), folds=(FoldSpec(),), seams=(RIM,)))
    assert [seam.name for seam in pattern.seams] == ["rim"]
    assert pattern.folds[0].layers[0].flat_length == pytest.approx(pi * 1.2)
