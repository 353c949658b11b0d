"""A parameter's ladder has every lawful value at whole steps, and no other."""

from __future__ import annotations

import pytest

from patternforge.pipeline.ladder import Ladder
from patternforge.wallet.spec import Parameter

HEIGHT = Ladder(Parameter("height", 92.0, "mm", 80.0, 110.0))
ODD = Ladder(Parameter("foot", 22.69, "mm", 15.0, 30.05))
EDGE = Ladder(Parameter("edge", 0.4, "mm", 0.35, 0.5))
SLOTS = Ladder(Parameter("slots", 3.0, "", 2.0, 5.0))
BARE = Ladder(Parameter("ease", 10.0, "mm"))


@pytest.mark.parametrize(
    ("ladder", "down", "up", "lowest", "highest"),
    [
        (HEIGHT, "91.9mm", "92.1mm", "80.0mm", "110.0mm"),
        (ODD, "22.6mm", "22.7mm", "15.0mm", "30.0mm"),
        (EDGE, "0.39mm", "0.41mm", "0.35mm", "0.50mm"),
        (SLOTS, "2", "4", "2", "5"),
        (BARE, "9.9mm", "10.1mm", "5.0mm", "15.0mm"),
    ],
)
def test_the_rungs_beside_the_value_and_at_the_ends(
    ladder: Ladder, down: str, up: str, lowest: str, highest: str
) -> None:
    rungs = (-1, 1, ladder.lowest, ladder.highest)
    assert tuple(ladder.text(rung) for rung in rungs) == (down, up, lowest, highest)


def test_at_the_end_of_its_range_a_parameter_has_nothing_beyond() -> None:
    at_top = Ladder(Parameter("step", 18.0, "mm", 8.0, 18.0))
    assert (at_top.highest, at_top.value(at_top.lowest)) == (0, 8.0)
    assert all(rung < 0 for rung in at_top.rungs(1.0))
    assert list(Ladder(Parameter("step", 8.0, "mm", 8.0, 8.0)).rungs(1.0)) == []


@pytest.mark.parametrize("ladder", [HEIGHT, ODD, EDGE, SLOTS, BARE])
@pytest.mark.parametrize("share", [0.0, 1 / 32, 1 / 3, 1.0])
def test_the_farthest_rungs_within_a_share_lie_within_it_and_the_next_ones_do_not(
    ladder: Ladder, share: float
) -> None:
    found = {1 if rung > 0 else -1: rung for rung in ladder.rungs(share)}
    for way, last in ((1, ladder.highest), (-1, ladder.lowest)):
        rung = found.get(way, 0)
        assert ladder.share(rung) <= share + 1e-9
        assert rung == last or ladder.share(rung + way) > share - 1e-9


def test_a_count_is_not_changed_before_its_turn() -> None:
    assert list(SLOTS.rungs(0.3)) == []
    assert sorted(SLOTS.rungs(0.34)) == [-1, 1]
