"""Laws of the length that goes round a fold."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.leather.fold import arc_length, eased_length, inside_radius, neutral_from_strip

rarely = settings(max_examples=100, deadline=None)
gaps = st.floats(0, 30)
thicknesses = st.floats(0.2, 5)
shares = st.floats(0, 1)
radii = st.floats(0, 3)
angles = st.floats(0.01, pi)


def fold_length(angle: float, gap: float, thickness: float, min_radius: float, neutral: float) -> float:
    return arc_length(angle, inside_radius(gap, thickness, min_radius), thickness, neutral)


@rarely
@given(angles, gaps, st.floats(0, 10), thicknesses, radii, shares)
def test_more_between_the_flanks_never_needs_less_length(
    angle: float, gap: float, more: float, thickness: float, min_radius: float, neutral: float
) -> None:
    thin = fold_length(angle, gap, thickness, min_radius, neutral)
    assert fold_length(angle, gap + more, thickness, min_radius, neutral) >= thin


@rarely
@given(angles, gaps, thicknesses, st.floats(0, 2), radii, shares)
def test_thicker_leather_never_needs_less_length(
    angle: float, gap: float, thickness: float, more: float, min_radius: float, neutral: float
) -> None:
    thin = fold_length(angle, gap, thickness, min_radius, neutral)
    assert fold_length(angle, gap, thickness + more, min_radius, neutral) >= thin


@rarely
@given(gaps, thicknesses, thicknesses, st.floats(0, 5), shares, shares)
def test_two_layers_of_one_half_turn_differ_by_pi_times_the_distance_of_their_neutral_planes(
    gap: float, inner: float, outer: float, filling: float, inner_neutral: float, outer_neutral: float
) -> None:
    """``filling`` lies between the layers on each flank: pockets, cards, another panel. Neither layer is stiff."""
    within = fold_length(pi, gap, inner, 0.0, inner_neutral)
    without = fold_length(pi, gap + 2 * (inner + filling), outer, 0.0, outer_neutral)
    apart = (1 - inner_neutral) * inner + filling + outer_neutral * outer
    assert without - within == pytest.approx(pi * apart, abs=1e-9)


@rarely
@given(gaps, thicknesses, radii, shares, st.floats(0.1, 0.9))
def test_a_half_turn_is_as_long_as_the_two_parts_it_is_made_of(
    radius: float, thickness: float, min_radius: float, neutral: float, share: float
) -> None:
    parts = [fold_length(pi * part, radius, thickness, min_radius, neutral) for part in (share, 1 - share)]
    assert sum(parts) == pytest.approx(fold_length(pi, radius, thickness, min_radius, neutral), abs=1e-9)


@rarely
@given(gaps, thicknesses, radii)
def test_no_layer_bends_more_sharply_than_it_can(gap: float, thickness: float, min_radius: float) -> None:
    radius = inside_radius(gap, thickness, min_radius)
    assert radius >= min_radius * thickness
    assert radius >= gap / 2


lengths = st.floats(0, 100)


@rarely
@given(lengths, lengths)
def test_no_compensation_gives_the_innermost_length_and_full_the_true_one(true: float, innermost: float) -> None:
    assert eased_length(true, innermost, 0) == innermost
    assert eased_length(true, innermost, 1) == pytest.approx(true, abs=1e-12)


@rarely
@given(lengths, st.floats(0, 50), st.floats(0, 1.2), st.floats(0, 1.2))
def test_more_compensation_never_shortens_an_outer_layer(
    innermost: float, longer: float, one: float, other: float
) -> None:
    less, more = sorted((one, other))
    true = innermost + longer
    assert eased_length(true, innermost, less) <= eased_length(true, innermost, more) + 1e-9


# A reading is exact to rounding only, and a fibre found outside of the leather is refused: keep off its two faces.
within_leather = st.floats(1e-6, 1 - 1e-6)


@rarely
@given(thicknesses, within_leather, st.floats(0, 20), st.floats(10, 80), st.floats(10, 80))
def test_a_strip_folded_by_the_rule_gives_its_neutral_fibre_back(
    thickness: float, neutral: float, gauge: float, lower: float, upper: float
) -> None:
    """Both flat legs are chosen, the strip is cut to them, and read from the outside of the bend to each end."""
    length = lower + upper + pi * (gauge / 2 + neutral * thickness)
    reading = sum(leg + gauge / 2 + thickness for leg in (lower, upper))
    assert neutral_from_strip(length, reading, gauge, thickness) == pytest.approx(neutral, abs=1e-6)
