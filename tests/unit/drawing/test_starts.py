"""Where closed lines are begun."""

from __future__ import annotations

import pytest

from patternforge.drawing.starts import begun_at, starts
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon
from patternforge.geometry.point import Point

ROUNDED = rounded_rectangle(0, 0, 90, 60, 5)
BLOCK = polygon([Point(0, 0), Point(90, 0), Point(90, 60), Point(0, 60)])


def test_a_rounded_rectangle_may_be_begun_in_the_middle_of_each_side() -> None:
    middles = [ROUNDED.point_at(along) for along in starts(ROUNDED)]
    for at, (x, y) in zip(middles, [(45, 0), (90, 30), (45, 60), (0, 30)], strict=True):
        assert (at.x, at.y) == pytest.approx((x, y), abs=1e-9)


def test_runs_too_short_to_be_clear_of_both_corners_are_passed_over() -> None:
    notched = polygon([Point(*at) for at in ((0, 0), (30, 0), (30, 3), (27, 3), (27, 20), (0, 20))])
    assert [round(along, 9) for along in starts(notched)] == [15.0, 44.5, 66.5, 90.0]


def test_where_no_run_is_long_enough_the_longest_is_begun_in_its_middle() -> None:
    tab = polygon([Point(0, 0), Point(3, 0), Point(3, 2), Point(0, 2)])
    assert starts(tab) == (1.5,)


def test_a_circle_is_begun_where_it_was() -> None:
    circle = from_vertices([(5, 0, 1), (-5, 0, 1)], closed=True)
    assert starts(circle) == (0.0,)
    assert begun_at(circle, 0.0) is circle


@pytest.mark.parametrize("path", [ROUNDED, BLOCK, ROUNDED.cw()])
def test_a_path_begun_elsewhere_encloses_the_same_the_same_way_round(path: Path) -> None:
    for along in starts(path):
        moved = begun_at(path, along)
        assert moved.start.distance_to(path.point_at(along)) < 1e-9
        assert moved.area == pytest.approx(path.area, rel=1e-12)
        assert moved.length == pytest.approx(path.length, rel=1e-12)
        assert len(moved.segments) == len(path.segments) + 1
        assert sum(s.is_arc for s in moved.segments) == sum(s.is_arc for s in path.segments)
