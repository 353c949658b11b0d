"""Pitch from the two kinds of numbers."""

from __future__ import annotations

from collections.abc import Callable
from math import inf, nan

import pytest

from patternforge.errors import DraftError
from patternforge.leather.stitching import pitch_of_french_number, pitch_per_inch


@pytest.mark.parametrize("number", [5, 8.5, 14])
def test_the_same_number_is_a_wider_pitch_on_the_french_inch(number: float) -> None:
    assert pitch_of_french_number(number) / pitch_per_inch(number) == pytest.approx(27.07 / 25.4)


@pytest.mark.parametrize("pitch", [pitch_of_french_number, pitch_per_inch])
@pytest.mark.parametrize("number", [0, -8, nan, inf])
def test_a_number_that_is_no_count_is_refused(pitch: Callable[[float], float], number: float) -> None:
    with pytest.raises(DraftError, match="greater than 0"):
        pitch(number)
