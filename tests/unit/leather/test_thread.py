"""Thread of a saddle-stitched seam on cases counted by hand."""

from __future__ import annotations

from math import nan

import pytest

from patternforge.errors import DraftError
from patternforge.leather.thread import thread_length


def test_a_closed_seam_lays_each_stitch_and_each_hole_twice() -> None:
    assert thread_length([3.0] * 10, [2.0] * 10, 0.0) == pytest.approx(100.0)


def test_an_open_seam_counts_the_hole_at_its_far_end() -> None:
    assert thread_length([3.0, 3.5], [2.0, 2.0, 4.0], 150.0) == pytest.approx(2 * (6.5 + 8.0) + 150.0)


def test_a_seam_of_no_stitches_takes_its_tails_and_nothing_else() -> None:
    assert thread_length([], [], 150.0) == 150.0


@pytest.mark.parametrize(
    ("spacings", "stacks", "tails", "words"),
    [
        ([3.0, 3.0], [2.0], 0.0, "2 stitches pass 2 holes"),
        ([3.0], [2.0, 2.0, 2.0], 0.0, "not 3"),
        ([0.0], [2.0], 0.0, "greater than 0"),
        ([nan], [2.0], 0.0, "greater than 0"),
        ([3.0], [-2.0], 0.0, "0 mm or more"),
        ([3.0], [2.0], -1.0, "0 mm or more"),
    ],
)
def test_a_seam_that_cannot_be_sewn_is_refused_in_words(
    spacings: list[float], stacks: list[float], tails: float, words: str
) -> None:
    with pytest.raises(DraftError, match=words):
        thread_length(spacings, stacks, tails)
