"""Sections of gussets reckoned by hand."""

from __future__ import annotations

from math import pi

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.parts.profile import bellows, bend_reach, channel, folded_height
from tests.unit.wallet.built import leather

THIN = leather("thin", 0.8, neutral=0.5, min_radius=0.5)  # bends round 0.4 mm, its fibre round 0.8 mm


def test_a_channel_is_as_wide_as_its_flats_and_two_quarter_bends() -> None:
    # A bend reaches 0.4 + 0.8 = 1.2 mm and takes pi / 2 x (0.4 + 0.5 x 0.8) = 1.2566 mm. Flanges 7 - 1.2 = 5.8 and
    # 8 - 1.2 = 6.8, web 20 - 2 x 1.2 = 17.6; in all 30.2 + 2 x 1.2566 = 32.7133 mm.
    profile = channel(THIN, 20.0, (7.0, 8.0))
    assert [round(term.value, 4) for term in profile.width.terms] == [5.8, 1.2566, 17.6, 1.2566, 6.8]
    assert profile.width.value == pytest.approx(30.2 + 0.8 * pi)
    assert [y for fold in profile.folds for y in fold] == pytest.approx([5.8, 7.0566, 24.6566, 25.9133], abs=1e-4)


def test_a_single_pleat_is_two_leaves_and_a_half_turn() -> None:
    # pi x (0.4 + 0.4) = 2.5133 mm between two leaves of 12 mm.
    profile = bellows(THIN, 12.0, 1)
    assert profile.width.value == pytest.approx(24 + 0.8 * pi)
    assert [y for fold in profile.folds for y in fold] == pytest.approx([12.0, 12 + 0.8 * pi])


def test_leaves_that_meet_between_two_pleats_end_where_their_fold_stays_inside_the_edge() -> None:
    # The fold outwards reaches 1.2 mm beyond its tangents, so the leaves beside it are 12 - 1.2 = 10.8 mm long.
    profile = bellows(THIN, 12.0, 2)
    leaves = [term.value for term in profile.width.terms if term.label.startswith("leaf")]
    assert leaves == pytest.approx([12.0, 10.8, 10.8, 12.0])
    assert profile.width.value == pytest.approx(45.6 + 3 * 0.8 * pi)
    assert len(profile.folds) == 3


def test_folded_pleats_stand_two_radii_and_two_thicknesses_high_each() -> None:
    assert folded_height(THIN, 1) == pytest.approx(2.4)
    assert folded_height(THIN, 3) == pytest.approx(7.2)
    assert bend_reach(THIN) == pytest.approx(1.2)


@pytest.mark.parametrize(
    ("depth", "flange", "words"),
    [(2.4, 7.0, "depth of 2.40 mm"), (20.0, 1.2, "flange of 1.20 mm"), (2.0, 1.0, "depth of 2.00 mm")],
)
def test_a_channel_that_is_all_bend_is_refused(depth: float, flange: float, words: str) -> None:
    with pytest.raises(DraftError, match=words):
        channel(THIN, depth, (8.0, flange))


def test_a_leaf_that_is_all_bend_is_refused() -> None:
    with pytest.raises(DraftError, match=r"leaf of 1.20 mm is all bend in this leather: give more than 1.20 mm"):
        bellows(THIN, 1.2, 1)
