"""Laws of comparing: nothing differs from itself, and back again is the other way."""

from __future__ import annotations

from math import pi

from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.comparison.sets import compared
from tests.designs_built import two_fold
from tests.unit.comparison.built import made

THICKNESS = st.integers(8, 20).map(lambda tenths: tenths / 10)  # few enough to be drafted once each


@given(THICKNESS, THICKNESS)
@settings(max_examples=8, deadline=None)
def test_the_far_half_of_a_shell_moves_by_half_pi_times_what_its_leather_grows(old: float, new: float) -> None:
    there, back = (compared(made(two_fold(outer=a)), made(two_fold(outer=b))) for a, b in ((old, new), (new, old)))
    for found, grown in ((there, new - old), (back, old - new)):
        moved = [(change.new.name, move.by) for change in found.changes for move in change.moves]
        if abs(grown) < 0.01:
            assert moved == []
            assert len(found.same) == len(found.changes)
        else:
            ((name, by),) = moved
            assert name == "shell"
            assert abs(by - pi / 2 * grown) < 1e-6
    assert [change.outline for change in there.changes] == [change.outline for change in back.changes]
