"""Near boxes are found through a grid: the same pairs as by comparing each with each."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.geometry.boxes import Box
from patternforge.geometry.nearby import Grid, near_pairs

_place = st.floats(-1000, 1000)
_size = st.sampled_from([0.0, 0.1, 1.0, 30.0, 900.0])
boxes = st.lists(st.builds(lambda x, y, w, h: (x, y, x + w, y + h), _place, _place, _size, _size), max_size=40)


def is_near(a: Box, b: Box, reach: float) -> bool:
    across = a[0] - reach <= b[2] + 1e-9 and b[0] - reach <= a[2] + 1e-9
    return across and a[1] - reach <= b[3] + 1e-9 and b[1] - reach <= a[3] + 1e-9


@settings(max_examples=60, deadline=None)
@given(boxes, st.sampled_from([0.0, 0.5, 40.0]))
def test_the_pairs_are_those_of_comparing_each_with_each(some: list[Box], reach: float) -> None:
    wanted = [(i, j) for i, j in combinations(range(len(some)), 2) if is_near(some[i], some[j], reach)]
    assert sorted(near_pairs(some, reach)) == wanted


def test_no_pair_is_given_twice_though_large_boxes_share_many_cells() -> None:
    found = list(near_pairs([(0, 0, 500, 500), (1, 1, 499, 499), (600, 600, 601, 601)]))
    assert found == [(0, 1)]


def test_one_box_far_away_does_not_put_all_others_in_one_cell() -> None:
    row = [(2.0 * i, 0.0, 2.0 * i + 1, 1.0) for i in range(500)]
    grid = Grid([*row, (1e9, 1e9, 1e9 + 1, 1e9 + 1)])
    assert grid._side < 10


def test_a_box_over_all_the_others_is_near_each() -> None:
    dots = [(float(i), float(j), float(i), float(j)) for i in range(60) for j in range(60)]
    assert len(Grid(dots).near((-1, -1, 61, 61))) == 3600
    assert len(list(near_pairs([*dots, (-1, -1, 61, 61)]))) == 3600


@pytest.mark.parametrize("some", [[], [(1, 2, 3, 4)]])
def test_fewer_than_two_boxes_make_no_pair(some: list[Box]) -> None:
    assert list(near_pairs(some)) == []
