"""Bend lengths, easing and the test strip on known cases, and what they refuse."""

from __future__ import annotations

from collections.abc import Callable
from math import inf, nan, pi

import pytest

from patternforge.errors import DraftError
from patternforge.leather.fold import arc_length, eased_length, inside_radius, neutral_from_strip


@pytest.mark.parametrize(
    ("gap", "thickness", "min_radius", "radius"),
    [
        (4.0, 1.2, 0.5, 2.0),  # half the gap rules
        (0.4, 1.2, 0.5, 0.6),  # the leather's own stiffness rules
        (1.2, 1.2, 0.5, 0.6),  # both agree
        (0.0, 1.2, 0.0, 0.0),  # folded flat
    ],
)
def test_inside_radius_is_the_larger_of_half_gap_and_smallest_bend(
    gap: float, thickness: float, min_radius: float, radius: float
) -> None:
    assert inside_radius(gap, thickness, min_radius) == pytest.approx(radius, abs=1e-12)


def test_a_fold_turned_outwards_takes_the_same_length() -> None:
    assert arc_length(-pi, 1.0, 1.2, 0.5) == arc_length(pi, 1.0, 1.2, 0.5) == pytest.approx(pi * 1.6)


@pytest.mark.parametrize(("compensation", "length"), [(0.0, 3.0), (0.5, 5.0), (1.0, 7.0), (1.2, 7.8)])
def test_compensation_runs_from_the_innermost_length_to_beyond_the_true_one(
    compensation: float, length: float
) -> None:
    assert eased_length(7.0, 3.0, compensation) == pytest.approx(length)


def test_a_strip_whose_neutral_fibre_is_its_middle_reads_one_half() -> None:
    # 120 mm strip of 1.6 mm over a gauge of 4 mm: the bend takes pi * (2 + 0.8) = 8.796 mm of it, the two legs
    # share the rest and each reading adds 2 mm of radius and 1.6 mm of leather.
    legs = (120 - pi * 2.8) + 2 * (2 + 1.6)
    assert neutral_from_strip(120.0, legs, 4.0, 1.6) == pytest.approx(0.5)


def test_a_longer_reading_puts_the_neutral_fibre_further_inside() -> None:
    readings = [neutral_from_strip(120.0, legs, 4.0, 1.6) for legs in (118.0, 118.4, 118.8)]
    assert readings == sorted(readings, reverse=True)
    assert readings[0] - readings[1] == pytest.approx(0.4 / (pi * 1.6))


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        (lambda: inside_radius(-0.1, 1.2, 0.5), "gap of -0.1"),
        (lambda: inside_radius(0.0, nan, 0.5), "thickness of nan"),
        (lambda: inside_radius(0.0, 1.2, -1), "smallest inside radius of -1"),
        (lambda: arc_length(inf, 1.0, 1.2, 0.5), "angle of inf"),
        (lambda: arc_length(pi, -1.0, 1.2, 0.5), "inside radius of -1"),
        (lambda: arc_length(pi, 1.0, 1.2, 1.01), "lawful is 0 to 1"),
        (lambda: arc_length(pi, 1.0, 1.2, nan), "lawful is 0 to 1"),
        (lambda: eased_length(7.0, 3.0, -0.1), "give 0 to 1.2"),
        (lambda: eased_length(7.0, 3.0, 1.3), "give 0 to 1.2"),
        (lambda: eased_length(7.0, -3.0, 1.0), "innermost length of -3"),
        (lambda: neutral_from_strip(120.0, 118.0, 4.0, 0.0), "greater than 0"),
        (lambda: neutral_from_strip(120.0, 115.0, 4.0, 1.6), "read the strip and its thickness again"),
        (lambda: neutral_from_strip(120.0, 122.0, 4.0, 1.6), "read the strip and its thickness again"),
    ],
)
def test_unlawful_sizes_are_refused_in_words(wrong: Callable[[], float], words: str) -> None:
    with pytest.raises(DraftError, match=words):
        wrong()
