"""Laws of closing that hold for every row of panels and every order.

The stack is checked without turning anything over: which of two neighbours lies on top follows from the fold's
sign and from which way the panel faces, and panels once closed together stay together. These two rules leave one
stack only, so they are a second definition of it.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise, permutations

from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.leather.closing import Closing, Placed, closing

rarely = settings(max_examples=100, deadline=None)


@dataclass(frozen=True, slots=True)
class Row:
    angles: tuple[float, ...]
    order: tuple[int, ...]

    @property
    def count(self) -> int:
        return len(self.angles) + 1

    @property
    def closed(self) -> Closing:
        return closing(self.count, self.angles, self.order)


def rows(angles: st.SearchStrategy[float], most: int = 8) -> st.SearchStrategy[Row]:
    def ordered(row: list[float]) -> st.SearchStrategy[Row]:
        return st.permutations(range(1, len(row) + 1)).map(lambda order: Row(tuple(row), tuple(order)))

    return st.lists(angles, max_size=most - 1).flatmap(ordered)


whole = st.sampled_from([180.0, -180.0])
any_angle = st.sampled_from([180.0, -180.0, 90.0, -90.0, 60.0, 120.0, 45.0])


def panels(stack: tuple[Placed, ...]) -> list[int]:
    return [placed.panel for placed in stack]


def turned_over(stack: tuple[Placed, ...]) -> tuple[Placed, ...]:
    return tuple(Placed(placed.panel, not placed.turned) for placed in reversed(stack))


def groups_as_they_close(row: Row) -> list[set[int]]:
    """After each whole fold closed in turn, the panels that are one group from then on."""
    groups = [{panel} for panel in range(row.count)]
    made = []
    for fold in row.order:
        merged = next(g for g in groups if fold - 1 in g) | next(g for g in groups if fold in g)
        groups = [g for g in groups if not g & merged] + [merged]
        made.append(merged)
    return made


def is_unbroken(places: list[int]) -> bool:
    return max(places) - min(places) == len(places) - 1


def obeys_the_two_rules(stack: list[int], row: Row) -> bool:
    place = {panel: at for at, panel in enumerate(stack)}
    faces_up = [panel % 2 == 0 for panel in range(row.count)]
    neighbours = all(
        (place[fold] > place[fold - 1]) == (faces_up[fold - 1] == (angle > 0))
        for fold, angle in enumerate(row.angles, start=1)
    )
    return neighbours and all(is_unbroken([place[panel] for panel in group]) for group in groups_as_they_close(row))


@rarely
@given(rows(any_angle))
def test_every_panel_is_once_in_a_stack_or_a_spine(row: Row) -> None:
    closed = row.closed
    found = panels(closed.stack) + [panel for group in closed.open_groups for panel in panels(group)]
    found += [panel for spine in closed.spines for panel in spine.panels]
    assert sorted(found) == list(range(row.count))


@rarely
@given(rows(any_angle))
def test_the_first_panel_of_every_stack_keeps_its_inside_up(row: Row) -> None:
    closed = row.closed
    assert Placed(0, turned=False) in closed.stack
    for group in closed.open_groups:
        assert Placed(min(panels(group)), turned=False) in group


@rarely
@given(rows(whole))
def test_every_other_panel_is_turned_over(row: Row) -> None:
    assert all(placed.turned == bool(placed.panel % 2) for placed in row.closed.stack)


@rarely
@given(rows(whole, most=5))
def test_the_stack_is_the_only_one_the_folds_and_the_order_allow(row: Row) -> None:
    allowed = [list(stack) for stack in permutations(range(row.count)) if obeys_the_two_rules(list(stack), row)]
    assert allowed == [panels(row.closed.stack)]


@rarely
@given(rows(whole))
def test_panels_between_flanks_are_those_between_them_in_the_final_stack(row: Row) -> None:
    closed = row.closed
    stack = panels(closed.stack)
    for fold, found in enumerate(closed.between, start=1):
        left, right = stack.index(fold - 1), stack.index(fold)
        standing = stack[left + 1 : right] if left < right else stack[right + 1 : left][::-1]
        assert [between.panel for between in found] == standing


@rarely
@given(rows(whole))
def test_what_lies_between_flanks_is_settled_when_their_fold_closes(row: Row) -> None:
    """The folds closed later change nothing: the group closed so far, as a wallet of its own, has the same."""
    for fold, group in zip(row.order, groups_as_they_close(row), strict=True):
        first, last = min(group), max(group)
        alone = Row(row.angles[first:last], tuple(f - first for f in row.order if first < f <= last))
        found = [between.panel + first for between in alone.closed.between[fold - first - 1]]
        assert found == [between.panel for between in row.closed.between[fold - 1]]


@rarely
@given(rows(whole))
def test_a_row_seen_in_a_mirror_gives_the_mirrored_stack(row: Row) -> None:
    """Left and right exchanged: panels and folds are numbered from the other end, the stack is read alike."""
    last = row.count - 1
    mirrored = Row(row.angles[::-1], tuple(row.count - fold for fold in row.order))
    stack = tuple(Placed(last - placed.panel, placed.turned) for placed in mirrored.closed.stack)
    assert row.closed.stack in (stack, turned_over(stack))


@rarely
@given(rows(any_angle))
def test_folding_everything_the_other_way_turns_the_stack_upside_down(row: Row) -> None:
    other = Row(tuple(-angle for angle in row.angles), row.order)
    assert other.closed.stack == tuple(reversed(row.closed.stack))
    assert other.closed.between == row.closed.between


@rarely
@given(st.integers(1, 8).flatmap(lambda folds: st.permutations(range(1, folds + 1))))
def test_an_accordion_stacks_in_its_own_order_however_it_is_closed(order: list[int]) -> None:
    angles = [180.0 if fold % 2 else -180.0 for fold in range(1, len(order) + 1)]
    closed = closing(len(order) + 1, angles, order)
    assert panels(closed.stack) == list(range(len(order) + 1))
    assert not any(closed.between)


@rarely
@given(st.integers(1, 8))
def test_a_row_rolled_up_from_one_end_puts_all_earlier_panels_between(folds: int) -> None:
    closed = closing(folds + 1, [180.0] * folds, list(range(1, folds + 1)))
    assert [{between.panel for between in found} for found in closed.between] == [
        set(range(fold - 1)) for fold in range(1, folds + 1)
    ]


@rarely
@given(rows(whole).filter(lambda row: row.angles), st.data())
def test_a_square_spine_stacks_like_one_fold_in_its_place(row: Row, data: st.DataObject) -> None:
    at = data.draw(st.integers(1, len(row.angles)), label="fold made a spine")
    halves = (row.angles[at - 1] / 2,) * 2
    angles = (*row.angles[: at - 1], *halves, *row.angles[at:])
    order = tuple(new for fold in row.order for new in ((at, at + 1) if fold == at else (fold + (fold > at),)))
    closed = closing(row.count + 1, angles, order)
    number = [panel + (panel >= at) for panel in range(row.count)]
    assert closed.stack == tuple(Placed(number[p.panel], p.turned) for p in row.closed.stack)
    (spine,) = closed.spines
    assert spine.panels == (at,)
    assert [between.panel for between in spine.between] == [number[b.panel] for b in row.closed.between[at - 1]]


@rarely
@given(rows(any_angle))
def test_whole_folds_always_close(row: Row) -> None:
    """Two panels joined by a fold of half a turn are never in different groups."""
    closed = row.closed
    stacks = [set(panels(stack)) for stack in (closed.stack, *closed.open_groups)]
    for (left, right), angle in zip(pairwise(range(row.count)), row.angles, strict=True):
        if abs(angle) == 180:
            assert any({left, right} <= stack for stack in stacks)
