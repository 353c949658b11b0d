"""Mouths between stitch lines at 10 and 90 of a pocket 0 to 100 wide, its mouth at 50."""

from __future__ import annotations

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.parts.mouth import EAR, mouth_corners
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import MouthShape, MouthSpec, ThumbNotch

STRAIGHT = MouthSpec()


def dipped(depth: float) -> MouthSpec:
    return MouthSpec(MouthShape.DIPPED, depth)


def slanted(depth: float) -> MouthSpec:
    return MouthSpec(MouthShape.SLANTED, depth)


def corners(
    mouth: MouthSpec, thumb: ThumbNotch | None = None, lines: tuple[float, ...] = (10.0, 90.0)
) -> list[tuple[float, float, float]]:
    """x, y and bulge of each corner from right to left."""
    found = mouth_corners(100.0, 50.0, lines, mouth, thumb)
    assert {corner.role for corner in found} == {EdgeRole.MOUTH}
    return [(corner.at.x, corner.at.y, corner.bulge) for corner in found]


def test_a_straight_mouth_is_one_edge() -> None:
    assert corners(STRAIGHT) == [(100, 50, 0)]


def test_a_dip_leaves_ears_beyond_the_stitch_lines() -> None:
    # From 88 to 12, chord 76, sagitta 3.8: bulge -2 x 3.8 / 76 = -0.1.
    assert EAR == 2.0
    assert corners(dipped(3.8)) == [(100, 50, 0), (88, 50, pytest.approx(-0.1)), (12, 50, 0)]


def test_every_column_dips_by_itself() -> None:
    # Columns 10..50 and 50..90: chords 48..12 and 88..52, each 36 long.
    found = corners(dipped(3.6), lines=(10.0, 50.0, 90.0))
    assert [(x, bulge) for x, _, bulge in found[1:]] == [
        (88, pytest.approx(-0.2)),
        (52, 0),
        (48, pytest.approx(-0.2)),
        (12, 0),
    ]


def test_a_slant_falls_to_the_right_between_ears() -> None:
    assert corners(slanted(6.0)) == [(100, 44, 0), (88, 44, 0), (12, 50, 0)]


def test_a_thumb_notch_stands_in_the_middle_and_may_be_half_round() -> None:
    assert corners(STRAIGHT, ThumbNotch(20.0, 10.0)) == [(100, 50, 0), (60, 50, -1.0), (40, 50, 0)]
    assert corners(STRAIGHT, ThumbNotch(20.0, 5.0))[1] == (60, 50, -0.5)


def test_every_column_has_its_thumb_notch() -> None:
    found = corners(STRAIGHT, ThumbNotch(10.0, 5.0), lines=(10.0, 50.0, 90.0))
    assert [x for x, _, _ in found] == [100, 75, 65, 35, 25]


@pytest.mark.parametrize(
    ("mouth", "thumb", "words"),
    [
        (dipped(40.0), None, r"a cut 40\.00 mm deep does not fit a mouth of 76\.00 mm: at most half its width"),
        (STRAIGHT, ThumbNotch(20.0, 11.0), r"a cut 11\.00 mm deep does not fit a mouth of 20\.00 mm"),
        (STRAIGHT, ThumbNotch(77.0, 5.0), r"a thumb notch 77\.00 mm wide does not fit between stitches 80\.00 mm"),
    ],
)
def test_a_cut_that_does_not_fit_is_refused(mouth: MouthSpec, thumb: ThumbNotch | None, words: str) -> None:
    with pytest.raises(DraftError, match=words):
        corners(mouth, thumb)


def test_cuts_that_just_fit_are_taken() -> None:
    assert corners(dipped(38.0))[1][2] == -1.0
    assert corners(STRAIGHT, ThumbNotch(76.0, 5.0))[1][0] == 88
