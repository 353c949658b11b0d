"""The order of cutting: shorter, never longer, near the shortest there is, and always within the rules."""

from __future__ import annotations

from collections import Counter
from functools import cache
from itertools import pairwise, permutations, product
from random import Random
from statistics import mean

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.drawing.course import Course, in_roles
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Dot, Figure, Ink, Role, Sheet, Stroke
from patternforge.drawing.route import Leg, length, ordered, routed
from patternforge.drawing.shortest import shortest
from patternforge.drawing.travel import travel
from patternforge.export.dxf import CUT_ROLES
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation

Place = complex | None
FEW = settings(max_examples=60, deadline=None)
places = st.builds(complex, st.floats(0, 100), st.floats(0, 100))
fixed = st.one_of(st.none(), places)


@st.composite
def legs(draw: st.DrawFn, most: int = 12) -> list[Leg]:
    """Lines and dots anywhere."""
    ends = draw(
        st.lists(st.one_of(st.tuples(places, places), places.map(lambda at: (at, at))), min_size=1, max_size=most)
    )
    return [Leg(i, start, end) for i, (start, end) in enumerate(ends)]


def exact(some: list[Leg], before: Place, after: Place, may_turn: bool) -> float:
    """The length of the shortest way there is, by dynamic programming over sets (Held and Karp 1962, from memory)."""
    ways = [(leg, leg.back()) if may_turn else (leg,) for leg in some]
    whole = (1 << len(some)) - 1

    @cache
    def rest(done: int, at: Place) -> float:
        if done == whole:
            return length([], at, after)
        return min(
            length([], at, way.start) + rest(done | 1 << i, way.end)
            for i, each in enumerate(ways)
            if not done >> i & 1
            for way in each
        )

    return rest(0, before)


def test_the_exact_solver_agrees_with_trying_every_order() -> None:
    some = [Leg(0, 0j, 1j), Leg(1, 5 + 0j, 5 + 5j), Leg(2, 2 + 2j, 2 + 2j), Leg(3, 9 + 1j, 3 + 1j)]
    every = (
        length(list(order), 0j, None)
        for order in (way for perm in permutations(some) for way in product(*[(leg, leg.back()) for leg in perm]))
    )
    assert exact(some, 0j, None, may_turn=True) == pytest.approx(min(every))


@FEW
@given(legs(), fixed, fixed)
def test_a_way_is_never_longer_than_the_one_given_and_takes_every_line_once(
    some: list[Leg], before: Place, after: Place
) -> None:
    found = routed(some, before, after)
    assert length(found, before, after) <= length(some, before, after) + 1e-9
    assert sorted(leg.index for leg in found) == [leg.index for leg in some]
    for leg in found:
        own = some[leg.index]
        assert (leg.start, leg.end) == ((own.end, own.start) if leg.turned else (own.start, own.end))


@FEW
@given(legs(most=9), fixed, fixed)
def test_an_order_is_never_longer_than_the_one_given_and_turns_no_line(
    some: list[Leg], before: Place, after: Place
) -> None:
    found = ordered(some, before, after)
    assert length(found, before, after) <= length(some, before, after) + 1e-9
    assert sorted(found, key=lambda leg: leg.index) == some


@FEW
@given(legs(most=6), fixed, fixed)
def test_no_way_is_shorter_than_the_shortest_there_is(some: list[Leg], before: Place, after: Place) -> None:
    least = exact(some, before, after, may_turn=True)
    assert length(routed(some, before, after), before, after) >= least - 1e-9
    assert least <= exact(some, before, after, may_turn=False) + 1e-9


def test_ways_through_few_lines_are_nearly_the_shortest_there_are() -> None:
    """60 random sets of 7 dots and lines: on average 1 % over the shortest way, at worst a quarter."""
    random, ratios = Random(5), []
    for _ in range(60):
        ends = [
            (complex(random.random(), random.random()), complex(random.random(), random.random())) for _ in range(7)
        ]
        some = [Leg(i, a, b if i % 2 else a) for i, (a, b) in enumerate(ends)]
        ratios.append(length(routed(some, 0j), 0j) / exact(some, 0j, None, may_turn=True))
    assert mean(ratios) < 1.01
    assert max(ratios) < 1.25


@st.composite
def sheets(draw: st.DrawFn) -> Sheet:
    """Pieces side by side, each with marks, holes, slits and perhaps an opening in any places within it."""
    figures = []
    for i in range(draw(st.integers(1, 4))):
        corner = Point(60.0 * draw(st.permutations(range(5)))[0] + 300 * i, 70.0 * draw(st.integers(0, 3)))
        spots = draw(st.lists(st.tuples(st.floats(5, 45), st.floats(5, 20)), max_size=8, unique=True))
        inks: list[Ink] = [
            Dot(Role.HOLE, Point(x, y), 1.0)
            if draw(st.booleans())
            else Stroke(draw(st.sampled_from((Role.MARK, Role.HOLE))), polyline([Point(x, y), Point(x + 2, y + 1)]))
            for x, y in spots
        ]
        if draw(st.booleans()):
            inks.append(Stroke(Role.OPENING, rounded_rectangle(10, 24, 30, 36, 2).cw()))
        inks.append(Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 50, 40, draw(st.sampled_from((0.0, 4.0))))))
        figures.append(moved(Figure(f"piece {i}", "outer", tuple(inks)), translation(corner.x, corner.y)))
    return Sheet("sheet", 2000, 300, tuple(figures))


courses = st.sampled_from(Course)


def shape(ink: Ink) -> tuple[object, ...]:
    """What stays the same of a line however it is followed."""
    if isinstance(ink, Dot):
        return ink.role, round(ink.centre.x, 6), round(ink.centre.y, 6), ink.diameter
    assert isinstance(ink, Stroke)
    path: Path = ink.path
    box = path.bounds
    area = round(path.area, 6) if path.closed else 0.0
    return (
        ink.role,
        path.closed,
        round(path.length, 6),
        area,
        *(round(n, 6) for n in (box.x0, box.y0, box.x1, box.y1)),
    )


@FEW
@given(sheets(), courses)
def test_the_travel_of_a_sheet_is_never_longer_than_as_it_was_drawn(sheet: Sheet, course: Course) -> None:
    cut = in_roles(sheet, CUT_ROLES, course)
    assert travel(shortest(cut, course)) <= travel(cut) + 1e-6


@FEW
@given(sheets(), courses)
def test_the_same_lines_are_cut_once_each_and_closed_ones_in_their_direction(sheet: Sheet, course: Course) -> None:
    cut = in_roles(sheet, CUT_ROLES, course)
    before = Counter(shape(ink) for figure in cut.figures for ink in figure.inks)
    after = Counter(shape(ink) for figure in shortest(cut, course).figures for ink in figure.inks)
    assert before == after  # the area has a sign, which is the direction


@FEW
@given(sheets())
def test_piece_by_piece_each_is_finished_before_the_next_and_its_outline_comes_last(sheet: Sheet) -> None:
    found = shortest(in_roles(sheet, CUT_ROLES))
    assert sorted(figure.name for figure in found.figures) == sorted(figure.name for figure in sheet.figures)
    for figure in found.figures:
        roles = [CUT_ROLES.index(ink.role) for ink in figure.inks]
        assert roles == sorted(roles)
        assert [ink.role for ink in figure.inks].count(Role.OUTLINE) == 1


@FEW
@given(sheets())
def test_operation_by_operation_no_outline_is_cut_before_all_that_lies_inside(sheet: Sheet) -> None:
    found = shortest(in_roles(sheet, CUT_ROLES, Course.OPERATIONS), Course.OPERATIONS)
    roles = [CUT_ROLES.index(ink.role) for figure in found.figures for ink in figure.inks]
    assert roles == sorted(roles)


@FEW
@given(sheets(), courses)
def test_the_same_sheet_comes_out_the_same(sheet: Sheet, course: Course) -> None:
    cut = in_roles(sheet, CUT_ROLES, course)
    assert shortest(cut, course) == shortest(cut, course)


def test_small_sheets_come_near_the_shortest_way_within_the_rules() -> None:
    """Three discs of three holes each, every order of pieces and holes tried: on average 2 % over the shortest."""
    random, ratios = Random(3), []
    for _ in range(25):
        sheet = discs(random)
        ratios.append(travel(shortest(sheet)) / shortest_of_all(sheet))
    assert min(ratios) >= 1 - 1e-9
    assert mean(ratios) < 1.02
    assert max(ratios) < 1.2


def discs(random: Random) -> Sheet:
    figures = []
    for i in range(3):
        centre = Point(40.0 * i, 30.0 * random.random())
        holes = [Dot(Role.HOLE, centre + Point(random.uniform(-9, 9), random.uniform(-9, 9)), 1.0) for _ in range(3)]
        figures.append(Figure(f"disc {i}", "outer", (*holes, Dot(Role.OUTLINE, centre, 30.0))))
    random.shuffle(figures)
    return Sheet("sheet", 150, 60, tuple(figures))


def shortest_of_all(sheet: Sheet) -> float:
    """The shortest travel of any order in which each piece is cut whole, its holes first."""
    best = float("inf")
    for order in permutations(sheet.figures):
        inner = [[(*holes, figure.inks[-1]) for holes in permutations(figure.inks[:-1])] for figure in order]
        best = min(best, *(way_of([ink for inks in way for ink in inks]) for way in product(*inner)))
    return best


def way_of(inks: list[Ink]) -> float:
    starts = [ink.centre + Point(ink.diameter / 2, 0) for ink in inks if isinstance(ink, Dot)]
    return sum(a.distance_to(b) for a, b in pairwise(starts))
