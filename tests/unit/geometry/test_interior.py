"""The interior of outlines, against the slow exact test and against hand-reckoned crossings."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path, from_vertices, polyline
from patternforge.geometry.point import Point

ROUNDED = rounded_rectangle(0, 0, 40, 20, 5)
NOTCHED = from_vertices([(0, 0, 0), (40, 0, 0), (40, 20, 0), (30, 20, -1), (10, 20, 0), (0, 20, 0)], closed=True)
BULGED = from_vertices([(0, 0, 0), (40, 0, 0.5), (40, 20, 0), (0, 20, 0.5)], closed=True)


@pytest.mark.parametrize("path", [ROUNDED, NOTCHED, BULGED])
def test_a_grid_of_points_is_judged_as_the_exact_winding_judges_it(path: Path) -> None:
    interior = Interior(path)
    points = [Point(x * 0.7 - 12, y * 0.7 - 3) for x in range(95) for y in range(40)]
    wrong = [p for p in points if interior.holds(p) is not path.contains(p)]
    assert wrong == []
    assert 0 < sum(interior.holds(p) for p in points) < len(points)


@pytest.mark.parametrize("path", [ROUNDED, NOTCHED, BULGED])
def test_points_on_the_outline_are_held(path: Path) -> None:
    interior = Interior(path)
    assert all(interior.holds(s.point_at(s.length * k / 7)) for s in path.segments for k in range(8))


def test_points_on_the_chord_of_an_arc_are_judged_by_the_arc() -> None:
    assert Interior(BULGED).holds(Point(40, 10))
    assert not Interior(NOTCHED).holds(Point(20, 20))


def test_a_level_line_crosses_a_corner_arc_where_the_circle_stands() -> None:
    inset = 5 - math.sqrt(5**2 - 3**2)
    assert Interior(ROUNDED).crossings(2.0) == pytest.approx([inset, 40 - inset], abs=1e-6)


def test_a_level_line_through_a_notch_crosses_four_times() -> None:
    half = math.sqrt(10**2 - 5**2)
    assert Interior(NOTCHED).crossings(15.0) == pytest.approx([0, 20 - half, 20 + half, 40], abs=1e-6)


def test_a_point_level_with_a_corner_is_held_where_start_and_rise_miss_the_end_by_a_bit() -> None:
    # The right side rises from 17.1 to 109.2; start and rise add up to one bit less, and so high the point lies.
    level = 17.1 + (109.2 - 17.1)
    assert level < 109.2
    path = rounded_rectangle(10.0, 10.0, 163.639455, 116.3, 7.1)
    assert [s.end.y for s in path.segments].count(109.2) == 2
    assert Interior(path).holds(Point(160.039455, level))


def test_an_open_path_has_no_interior() -> None:
    with pytest.raises(GeometryError, match="no inside"):
        Interior(polyline([Point(0, 0), Point(1, 0)]))


def test_stations_are_the_points_and_headings_found_one_by_one() -> None:
    places = [0.0, 1.0, 12.5, 33.3, 47.0, 60.0]
    found = ROUNDED.stations(places)
    assert [at for at, _ in found] == [ROUNDED.point_at(d) for d in places]
    assert [way for _, way in found] == [ROUNDED.tangent_at(d) for d in places]
