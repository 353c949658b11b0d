"""Laws of the thread in a seam."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.leather.thread import thread_length

rarely = settings(max_examples=100, deadline=None)
sizes = st.floats(0.5, 10)
stitches = st.lists(st.tuples(sizes, sizes), min_size=1, max_size=60)
Stitches = list[tuple[float, float]]


def seam(run: Stitches, tails: float = 0.0) -> float:
    return thread_length([spacing for spacing, _ in run], [stack for _, stack in run], tails)


@rarely
@given(stitches, st.data(), st.floats(0.01, 5))
def test_a_thicker_stack_at_any_hole_takes_twice_as_much_more_thread(
    run: Stitches, data: st.DataObject, more: float
) -> None:
    at = data.draw(st.integers(0, len(run) - 1), label="hole")
    thicker = [(spacing, stack + more if hole == at else stack) for hole, (spacing, stack) in enumerate(run)]
    assert seam(thicker) - seam(run) == pytest.approx(2 * more, abs=1e-9)


@rarely
@given(stitches, stitches)
def test_two_runs_sewn_as_one_take_the_thread_of_both(one: Stitches, other: Stitches) -> None:
    assert seam(one + other) == pytest.approx(seam(one) + seam(other))


@rarely
@given(stitches, st.floats(0, 500))
def test_thread_is_more_than_twice_the_seam_and_grows_by_its_tails(run: Stitches, tails: float) -> None:
    assert seam(run) > 2 * sum(spacing for spacing, _ in run)
    assert seam(run, tails) == pytest.approx(seam(run) + tails)


@rarely
@given(st.floats(60, 300), sizes, st.integers(10, 40), st.integers(1, 40))
def test_a_finer_pitch_over_the_same_seam_takes_more_thread(
    length: float, stack: float, count: int, more: int
) -> None:
    coarse, fine = ([(length / n, stack)] * n for n in (count, count + more))
    assert seam(fine) > seam(coarse)
