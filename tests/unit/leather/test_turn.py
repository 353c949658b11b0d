"""Turned edges: the length of the bend, and where what is turned in comes to lie."""

from __future__ import annotations

from math import pi

import pytest

from patternforge.errors import DraftError
from patternforge.leather.turn import Turn, turn_over


@pytest.mark.parametrize(
    ("gap", "thickness", "min_radius", "radius"),
    [(0.0, 0.4, 0.5, 0.2), (0.3, 0.4, 0.5, 0.2), (0.8, 0.4, 0.5, 0.4), (0.0, 1.2, 0.0, 0.0), (1.0, 0.4, 2.0, 0.8)],
)
def test_the_inside_radius_is_half_of_what_is_enclosed_or_the_least_the_leather_takes(
    gap: float, thickness: float, min_radius: float, radius: float
) -> None:
    assert turn_over(gap, thickness, min_radius, 0.5).radius == pytest.approx(radius)


def test_an_edge_of_0_4_mm_turned_over_0_8_mm_is_cut_its_overlap_and_1_085_mm_larger() -> None:
    turn = turn_over(0.8, 0.4, 0.5, 0.5)
    # Half circle of the fibre: pi x (0.4 + 0.2) = 1.885; the finished edge stands 0.4 + 0.4 outside the tangents.
    assert turn.arc == pytest.approx(pi * 0.6)
    assert turn.reach == pytest.approx(0.8)
    assert turn.bare == pytest.approx(pi * 0.6 - 0.8)
    assert turn.allowance(8.0) == pytest.approx(pi * 0.6 + 8.0 - 0.8)


def test_the_cut_edge_comes_to_lie_the_overlap_beyond_the_bend() -> None:
    turn = Turn(0.4, 0.4, 0.5)
    assert turn.depth(turn.allowance(8.0)) == pytest.approx(turn.reach + 8.0)
    assert turn.depth(turn.bare) == pytest.approx(turn.reach)


def test_unfolding_undoes_folding() -> None:
    turn = Turn(0.3, 0.5, 0.4)
    assert turn.beyond(turn.depth(5.0)) == pytest.approx(5.0)


@pytest.mark.parametrize("thickness", [0.4, 0.8, 1.2])
@pytest.mark.parametrize("lining", [0.0, 0.3, 0.8])
def test_a_roll_of_half_pi_times_lining_and_half_the_thickness_fits_an_edge_skived_to_half_only(
    thickness: float, lining: float
) -> None:
    """A rule of thumb with half the thickness in it is the bend of an edge that was skived to half before."""
    thumb = pi / 2 * (lining + thickness / 2)
    assert turn_over(lining, thickness / 2, 0.0, 0.5).arc == pytest.approx(thumb)
    assert turn_over(lining, thickness, 0.0, 0.5).arc - thumb == pytest.approx(pi / 4 * thickness)


def test_a_gap_below_nothing_is_refused() -> None:
    with pytest.raises(DraftError, match="gap"):
        turn_over(-0.1, 0.4, 0.5, 0.5)
