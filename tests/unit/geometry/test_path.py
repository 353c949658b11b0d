"""Runs of segments: measures, parts, inside."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.segment import Segment

SQUARE = polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)])
ANGLE = polyline([Point(0, 0), Point(4, 0), Point(4, 3)])
CIRCLE = from_vertices([(-5, 0, 1), (5, 0, 1)], closed=True)
LENS = from_vertices([(0, 0, -0.5), (10, 0, 1)], closed=True)  # a disc with a bite: its lower side bulges inward


def test_a_broken_path_is_refused_with_the_place() -> None:
    with pytest.raises(GeometryError, match=r"broken by 1 mm at \(4, 0\)"):
        Path((Segment(Point(0, 0), Point(4, 0)), Segment(Point(5, 0), Point(9, 0))), closed=False)


def test_a_closed_path_must_end_where_it_starts() -> None:
    with pytest.raises(GeometryError, match="broken"):
        Path(ANGLE.segments, closed=True)


def test_an_empty_path_is_refused() -> None:
    with pytest.raises(GeometryError, match="needs a segment"):
        polyline([Point(1, 1)])


def test_a_point_given_twice_is_refused() -> None:
    with pytest.raises(GeometryError, match="no lawful length"):
        polygon([Point(0, 0), Point(4, 0), Point(4, 0)])


def test_vertices_rebuild_the_path() -> None:
    for path in (SQUARE, ANGLE, CIRCLE, LENS):
        assert from_vertices(path.vertices, path.closed) == path


def test_a_bulge_on_the_last_vertex_of_an_open_path_is_refused() -> None:
    with pytest.raises(GeometryError, match="starts no segment"):
        from_vertices([(0, 0, 0), (4, 0, 0.5)], closed=False)


def test_area_counts_arcs_exactly_and_direction_by_sign() -> None:
    assert SQUARE.area == 100
    assert SQUARE.reversed().area == -100
    assert CIRCLE.area == pytest.approx(25 * math.pi, abs=1e-12)
    sagitta, radius = 2.5, 6.25
    bite = radius**2 * math.acos((radius - sagitta) / radius) - (radius - sagitta) * 5
    assert LENS.area == pytest.approx(12.5 * math.pi - bite, abs=1e-12)


@pytest.mark.parametrize("bulge", [0.0029, 0.0031])
def test_area_under_a_flat_arc_is_the_same_by_series_and_by_closed_form(bulge: float) -> None:
    path = from_vertices([(0, 0, bulge), (100, 0, 0), (100, 50, 0), (0, 50, 0)], closed=True)
    rise = bulge * 50
    # Area of the circular segment of height h on chord c, as a series: 2/3 c h + 8/15 h^3 / c + O(h^5 / c^3).
    assert path.area == pytest.approx(5000 + 2 / 3 * 100 * rise + 8 / 15 * rise**3 / 100, abs=1e-7)


def test_directions_are_turned_only_when_needed() -> None:
    assert SQUARE.is_ccw
    assert SQUARE.ccw() is SQUARE
    assert SQUARE.cw() == SQUARE.reversed()
    assert SQUARE.cw().cw() == SQUARE.cw()
    assert SQUARE.cw().ccw().area == 100


def test_an_open_path_has_no_area_and_no_inside() -> None:
    with pytest.raises(GeometryError, match="no area"):
        _ = ANGLE.area
    with pytest.raises(GeometryError, match="no inside"):
        ANGLE.contains(Point(1, 1))


def test_bounds_reach_round_arcs() -> None:
    assert CIRCLE.bounds == Bounds(-5, -5, 5, 5)


def test_points_and_tangents_are_found_by_distance() -> None:
    assert ANGLE.point_at(0) == Point(0, 0)
    assert ANGLE.point_at(5.5) == Point(4, 1.5)
    assert ANGLE.point_at(7) == Point(4, 3)
    assert ANGLE.tangent_at(3.9) == Point(1, 0)
    assert ANGLE.tangent_at(4) == Point(0, 1)
    assert ANGLE.tangent_at(7) == Point(0, 1)


@pytest.mark.parametrize("d", [-0.01, 7.01])
def test_no_point_lies_beyond_the_ends(d: float) -> None:
    with pytest.raises(GeometryError, match="is not on a path"):
        ANGLE.point_at(d)


def test_a_part_runs_through_the_vertices_between() -> None:
    assert ANGLE.sub(3, 5).vertices == ((3, 0, 0), (4, 0, 0), (4, 1, 0))


def test_a_part_of_a_closed_path_may_run_through_the_start() -> None:
    assert SQUARE.sub(35, 5).vertices == ((0, 5, 0), (0, 0, 0), (5, 0, 0))
    assert SQUARE.sub(40, 5).vertices == ((0, 0, 0), (5, 0, 0))
    assert SQUARE.sub(35, 0).vertices == ((0, 5, 0), (0, 0, 0))


def test_a_part_from_vertex_to_vertex_leaves_no_crumb() -> None:
    rounded = rounded_rectangle(0, 0, 30, 20, 3)
    side = rounded.segments[0].length
    part = rounded.sub(side + 1e-12, side + rounded.segments[1].length - 1e-12)
    assert part.segments == (rounded.segments[1],)


@pytest.mark.parametrize(("path", "d0", "d1"), [(ANGLE, 5, 3), (ANGLE, 3, 3), (SQUARE, 3, 3), (ANGLE, 3, 8)])
def test_a_part_that_runs_backwards_nowhere_or_off_the_path_is_refused(path: Path, d0: float, d1: float) -> None:
    with pytest.raises(GeometryError, match=r"no part|is not on a path"):
        path.sub(d0, d1)


@pytest.mark.parametrize(
    ("path", "p", "inside"),
    [
        (SQUARE, Point(5, 5), True),
        (SQUARE, Point(0, 5), True),
        (SQUARE, Point(0, 0), True),
        (SQUARE, Point(-0.001, 5), False),
        (SQUARE.reversed(), Point(5, 5), True),
        (CIRCLE, Point(0, -4.999), True),
        (CIRCLE, Point(0, 0), True),
        (CIRCLE, Point(-3, 0), True),
        (CIRCLE, Point(3.6, 3.6), False),
        (LENS, Point(5, 2.4), False),
        (LENS, Point(5, 2.6), True),
        (LENS, Point(5, 0), False),
    ],
)
def test_inside_is_told_exactly_with_arcs(path: Path, p: Point, inside: bool) -> None:
    assert path.contains(p) is inside


def test_the_nearest_point_is_on_the_nearest_segment() -> None:
    assert ANGLE.nearest(Point(6, 2)) == 6
    assert ANGLE.distance_to(Point(6, 2)) == 2
    assert CIRCLE.distance_to(Point(0, 0)) == 5
    assert SQUARE.nearest(Point(5, 12)) == 25


def test_open_paths_join_end_to_start() -> None:
    joined = ANGLE.joined(polyline([Point(4, 3), Point(0, 3)]))
    assert (joined.start, joined.end, joined.length) == (Point(0, 0), Point(0, 3), 11)
    with pytest.raises(GeometryError, match="broken"):
        ANGLE.joined(ANGLE)
    with pytest.raises(GeometryError, match="no end to join"):
        ANGLE.joined(SQUARE)
