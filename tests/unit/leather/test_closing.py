"""Closing orders with a known result, and orders that are refused."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, nan

import pytest

from patternforge.errors import DraftError
from patternforge.leather.closing import Between, Closing, Placed, Spine, closing


def drawn(closed: Closing) -> str:
    """The stack from the bottom up, ``'`` behind a panel whose inside looks down."""
    return " ".join(f"{placed.panel}'" if placed.turned else f"{placed.panel}" for placed in closed.stack)


def panels_between(closed: Closing) -> list[list[int]]:
    return [[between.panel for between in panels] for panels in closed.between]


@pytest.mark.parametrize(
    ("angles", "order", "stack", "between"),
    [
        pytest.param([], [], "0", [], id="a sleeve has nothing to close"),
        pytest.param([180], [1], "0 1'", [[]], id="two-fold, insides meet"),
        pytest.param([-180], [1], "1' 0", [[]], id="two-fold, outsides meet"),
        pytest.param([180, 180], [1, 2], "2 0 1'", [[], [0]], id="tri-fold, the left panel goes in first"),
        pytest.param([180, 180], [2, 1], "0 2 1'", [[2], []], id="tri-fold, the right panel goes in first"),
        pytest.param([180, -180], [1, 2], "0 1' 2", [[], []], id="accordion of three"),
        pytest.param([180, -180, 180], [2, 3, 1], "0 1' 2 3'", [[], [], []], id="accordion of four, any order"),
        pytest.param(
            [180, 180, 180], [1, 3, 2], "2 3' 0 1'", [[], [0, 3], []], id="gate: both ends in, then in half"
        ),
        pytest.param([180, 180, 180], [2, 1, 3], "0 2 1' 3'", [[2], [], [1]], id="last over a tucked panel"),
        pytest.param([180, 180, 180], [1, 2, 3], "2 0 1' 3'", [[], [0], [0, 1]], id="rolled up from the left"),
    ],
)
def test_closing_gives_the_known_stack(
    angles: Sequence[float], order: Sequence[int], stack: str, between: list[list[int]]
) -> None:
    closed = closing(len(angles) + 1, angles, order)
    assert (drawn(closed), panels_between(closed)) == (stack, between)
    assert (closed.spines, closed.open_groups) == ((), ())


def test_two_right_angles_close_as_one_round_their_spine() -> None:
    closed = closing(3, [90, 90], [2, 1])
    assert drawn(closed) == "0 2'"
    assert closed.spines == (Spine(folds=(1, 2), panels=(1,), between=()),)
    assert closed.between == ((), ())


def test_a_spine_of_right_angles_turned_outwards_puts_outsides_together() -> None:
    assert drawn(closing(3, [-90, -90], [1, 2])) == "2' 0"


def test_three_sixty_degree_folds_close_as_one_round_two_spine_panels() -> None:
    closed = closing(4, [60, 60, 60], [3, 1, 2])
    assert drawn(closed) == "0 3'"
    assert [spine.panels for spine in closed.spines] == [(1, 2)]


def test_a_spine_closes_when_the_last_of_its_folds_does() -> None:
    spine_last = closing(4, [90, 90, 180], [1, 3, 2])
    assert spine_last.spines[0].between == (Between(3),)
    assert drawn(spine_last) == "0 3 2'"
    spine_first = closing(4, [90, 90, 180], [2, 1, 3])
    assert spine_first.spines[0].between == ()
    assert panels_between(spine_first) == [[], [], [0]]


def test_a_square_spine_is_taken_from_the_left_of_three_right_angles() -> None:
    closed = closing(4, [90, 90, 90], [1, 2, 3])
    assert [spine.folds for spine in closed.spines] == [(1, 2)]
    assert drawn(closed) == "0 2'"
    assert closed.open_groups == ((Placed(3, turned=False),),)


def test_a_square_spine_is_found_behind_a_fold_left_ajar() -> None:
    closed = closing(4, [45, 90, 90], [1, 2, 3])
    assert [spine.folds for spine in closed.spines] == [(2, 3)]
    assert drawn(closed) == "0"
    assert closed.open_groups == ((Placed(1, turned=False), Placed(3, turned=True)),)


@pytest.mark.parametrize("angles", [[90, -90], [90, 45], [120, 120], [90, 180]])
def test_partial_folds_that_make_no_half_turn_stay_ajar(angles: list[float]) -> None:
    closed = closing(3, angles, [1, 2])
    assert closed.spines == ()
    assert closed.stack == (Placed(0, turned=False),)
    assert closed.open_groups[0][0].panel == 1


@pytest.mark.parametrize(
    ("count", "angles", "order", "words"),
    [
        (0, [], [], "at least one panel"),
        (1, [], [1], "must be empty"),
        (3, [180], [1], "joined by 2 folds, but 1 are given"),
        (3, [180, 180], [1], "exactly once"),
        (3, [180, 180], [1, 1], "exactly once"),
        (3, [180, 180], [0, 1], "exactly once"),
        (2, [0], [1], "fold 1 turns by 0 degrees"),
        (2, [181], [1], "lawful is -180 to 180"),
        (3, [180, -200], [1, 2], "fold 2 turns by -200 degrees"),
        (2, [nan], [1], "fold 1 turns by nan"),
        (2, [inf], [1], "fold 1 turns by inf"),
    ],
)
def test_a_row_that_cannot_be_closed_is_refused_in_words(
    count: int, angles: list[float], order: list[int], words: str
) -> None:
    with pytest.raises(DraftError, match=words):
        closing(count, angles, order)
