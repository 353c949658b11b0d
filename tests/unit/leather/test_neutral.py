"""Neutral values read from test strips."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternforge.errors import DraftError
from patternforge.leather.neutral import READING, StripFold, neutral_of

FOLD = StripFold(length=100.0, gauge=3.0, thickness=1.2)


def read(fold: StripFold, neutral: float) -> float:
    """Both legs of a strip whose fibre lies there, worked out along the fibre: leg, half circle, leg."""
    fibre_radius = fold.gauge / 2 + neutral * fold.thickness
    straight = (fold.length - pi * fibre_radius) / 2
    return 2 * (straight + fold.gauge / 2 + fold.thickness)


def test_the_mean_of_three_strips_is_told_with_what_each_says() -> None:
    legs = [read(FOLD, k) for k in (0.40, 0.45, 0.50)]
    found = neutral_of(FOLD, legs)
    assert found.each == pytest.approx((0.40, 0.45, 0.50))
    assert found.mean == pytest.approx(0.45)
    assert found.spread == pytest.approx(0.10)


def test_a_tenth_of_a_millimetre_misread_on_either_leg_moves_one_strip_by_what_is_told() -> None:
    legs = read(FOLD, 0.5)
    right, wrong = neutral_of(FOLD, [legs]), neutral_of(FOLD, [legs - 2 * READING])
    assert wrong.mean - right.mean == pytest.approx(right.sure)
    assert right.sure == pytest.approx(0.2 / (pi * 1.2))


def test_four_strips_are_twice_as_sure_as_one() -> None:
    legs = read(FOLD, 0.5)
    assert neutral_of(FOLD, [legs] * 4).sure == pytest.approx(neutral_of(FOLD, [legs]).sure / 2)


@given(
    st.builds(StripFold, st.floats(60, 280), st.floats(0, 10), st.floats(0.4, 4)),
    st.floats(0.01, 0.99),
)
def test_a_strip_folded_on_paper_is_read_back(fold: StripFold, neutral: float) -> None:
    assert neutral_of(fold, [read(fold, neutral)]).mean == pytest.approx(neutral, abs=1e-9)


def test_no_reading_and_an_impossible_one_are_refused() -> None:
    with pytest.raises(DraftError, match="no reading"):
        neutral_of(FOLD, [])
    with pytest.raises(DraftError, match="within the leather"):
        neutral_of(FOLD, [read(FOLD, 0.5), 88.0])
