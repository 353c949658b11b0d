"""Rows of stitches judged: the leather between holes, stitches that join nothing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.findings import Verdict
from patternforge.wallet.spec import Edge, HoleShape, HoleSpec, LayerPart
from tests.unit.fit.found import GOOD, LOOK, NO, SHARP, finding, findings, small, with_stitching
from tests.unit.wallet.built import pocket, shell

WEB = "leather between neighbouring holes"
LONE = "stitches in a row through one layer only"
LINING = LayerPart("lining", "inner", 0, 0)
BOTTOM = replace(SHARP, along=(Edge.BOTTOM,))


def slit(length: float, slant: float) -> HoleSpec:
    return HoleSpec(HoleShape.SLIT, length=length, width=0.2, slant=slant)


@pytest.mark.parametrize(
    ("hole", "left", "verdict"),
    # A hole every 4 mm in one line.
    [
        (HoleSpec(HoleShape.ROUND, diameter=1.0), 3.0, GOOD),
        (HoleSpec(HoleShape.ROUND, diameter=2.9), 1.1, GOOD),
        (HoleSpec(HoleShape.ROUND, diameter=3.2), 0.8, LOOK),
        (HoleSpec(HoleShape.ROUND, diameter=3.6), 0.4, NO),
        (slit(2.0, 0.0), 1.8, GOOD),  # end to end
        (slit(3.0, 0.0), 0.8, LOOK),
        (slit(3.6, 0.0), 0.2, NO),
        (slit(3.6, 90.0), 3.8, GOOD),  # side by side
        # Leaning 30 degrees: 2 to the side of each other, 4 cos 30 = 3.46 along; ends 2 short of half lengths 2 + 2
        # pass each other, so the distance is that of two parallel lines, 4 sin 30 = 2, less the width.
        (slit(4.0, 30.0), 1.8, GOOD),
    ],
)
def test_holes_too_near_each_other_tear_like_a_stamp(hole: HoleSpec, left: float, verdict: Verdict) -> None:
    seam = replace(BOTTOM, stitching=replace(BOTTOM.stitching, hole=hole))
    found = finding(small(shell(1), LINING, seams=(seam,)), WEB)
    assert found.measured == pytest.approx(left)
    assert found.verdict is verdict
    finer = "smaller holes" if hole.shape is HoleShape.ROUND else "shorter slits"
    remedy = "" if verdict is GOOD else f"{finer} or a longer pitch: the row would tear like a stamp"
    assert found.remedy == remedy


def test_holes_that_are_not_cut_leave_the_leather_whole() -> None:
    for shape in (HoleShape.MARK, HoleShape.NONE):
        pattern = with_stitching(small(shell(1), LINING), hole=HoleSpec(shape))
        assert not findings(pattern, WEB)


@pytest.mark.parametrize(
    ("depth", "lone"),
    # Holes on the left at 76, 72 ... 4: those above the mouth, at 4 + depth, go through the shell alone.
    [(70.0, None), (58.0, None), (54.0, 5), (38.0, 9)],
)
def test_stitches_above_a_pocket_join_nothing(depth: float, lone: int | None) -> None:
    found = findings(small(shell(1), pocket(depth=depth), height=80.0), LONE)
    assert [(f.measured, f.verdict) for f in found] == ([] if lone is None else [(lone, LOOK)])


def test_a_lining_joins_them_all() -> None:
    assert not findings(small(shell(1), LINING, pocket(depth=38.0)), LONE)
