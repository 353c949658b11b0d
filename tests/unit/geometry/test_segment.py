"""One line or arc: measures, points on it, parts of it."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.segment import Segment, arc_segment

LINE = Segment(Point(1, 1), Point(4, 5))
HALF = Segment(Point(0, 0), Point(10, 0), 1.0)  # a half circle, counter-clockwise, so below its chord
QUARTER = arc_segment(Point(0, 0), 5, 0, math.pi / 2)
MAJOR = arc_segment(Point(0, 0), 5, 0, 1.5 * math.pi)


def is_at(p: Point, x: float, y: float) -> bool:
    return p.distance_to(Point(x, y)) < 1e-12


def test_a_line_has_length_but_no_centre_and_no_sweep() -> None:
    assert (LINE.length, LINE.sweep, LINE.radius) == (5.0, 0.0, math.inf)
    with pytest.raises(GeometryError, match="no centre"):
        _ = LINE.centre


def test_a_positive_bulge_runs_counter_clockwise_round_its_centre() -> None:
    assert HALF.centre == Point(5, 0)
    assert (HALF.radius, HALF.sweep) == (5.0, math.pi)
    assert HALF.length == pytest.approx(5 * math.pi)
    assert is_at(HALF.point_at(HALF.length / 2), 5, -5)
    assert is_at(HALF.reversed().point_at(HALF.length / 2), 5, -5)


def test_an_arc_of_more_than_half_a_circle_keeps_centre_and_length() -> None:
    assert is_at(MAJOR.centre, 0, 0)
    assert MAJOR.radius == pytest.approx(5, abs=1e-12)
    assert MAJOR.length == pytest.approx(7.5 * math.pi, abs=1e-12)
    assert is_at(MAJOR.point_at(MAJOR.length * 2 / 3), -5, 0)


def test_an_arc_from_a_greater_to_a_lesser_angle_runs_clockwise() -> None:
    assert arc_segment(Point(0, 0), 5, math.pi / 2, 0).bulge == pytest.approx(-QUARTER.bulge)


@pytest.mark.parametrize(("radius", "end"), [(0, 1), (-1, 1), (5, 0), (5, 2 * math.pi), (5, math.nan)])
def test_an_arc_needs_a_radius_and_less_than_a_full_turn(radius: float, end: float) -> None:
    with pytest.raises(GeometryError, match="no arc"):
        arc_segment(Point(0, 0), radius, 0, end)


def test_tangents_turn_with_the_arc() -> None:
    assert is_at(HALF.tangent_at(0), 0, -1)
    assert is_at(HALF.tangent_at(HALF.length / 2), 1, 0)
    assert is_at(HALF.tangent_at(HALF.length), 0, 1)
    assert LINE.tangent_at(2) == Point(0.6, 0.8)


def test_bounds_of_an_arc_reach_its_extremes_only_where_it_passes_them() -> None:
    assert HALF.bounds == Bounds(0, -5, 10, 0)
    assert QUARTER.bounds.x1 == 5
    assert MAJOR.bounds.x0 == pytest.approx(-5, abs=1e-12)
    assert LINE.bounds == Bounds(1, 1, 4, 5)


def test_bounds_reach_an_extreme_that_an_end_has_barely_passed() -> None:
    assert arc_segment(Point(0, 0), 5, -0.02, 1).bounds.x1 == pytest.approx(5, abs=1e-12)
    assert arc_segment(Point(0, 0), 5, 0.02, 1).bounds.x1 == pytest.approx(5 * math.cos(0.02), abs=1e-12)


@pytest.mark.parametrize("segment", [LINE, HALF, QUARTER, MAJOR, MAJOR.reversed()])
def test_a_part_lies_on_its_segment(segment: Segment) -> None:
    part = segment.sub(1, 3)
    assert part.length == pytest.approx(2, abs=1e-12)
    assert part.point_at(0.5).distance_to(segment.point_at(1.5)) < 1e-12


def test_the_whole_part_keeps_its_ends_exactly() -> None:
    whole = MAJOR.sub(0, MAJOR.length)
    assert (whole.start, whole.end) == (MAJOR.start, MAJOR.end)


@pytest.mark.parametrize(("d0", "d1"), [(2, 2), (3, 2), (-1, 2), (2, 6)])
def test_a_part_needs_two_rising_distances_on_the_segment(d0: float, d1: float) -> None:
    with pytest.raises(GeometryError, match=r"no part runs|is not on a segment"):
        LINE.sub(d0, d1)


@pytest.mark.parametrize("d", [-0.1, 5.1, math.nan])
def test_no_point_lies_beyond_the_ends(d: float) -> None:
    with pytest.raises(GeometryError, match="is not on a segment"):
        LINE.point_at(d)


def test_the_nearest_point_is_square_to_the_segment_or_an_end() -> None:
    assert Segment(Point(0, 0), Point(10, 0)).nearest(Point(3, -4)) == 3
    assert Segment(Point(0, 0), Point(10, 0)).nearest(Point(-3, 4)) == 0
    assert HALF.nearest(Point(5, -1)) == pytest.approx(HALF.length / 2)
    assert HALF.nearest(Point(1, 3)) == 0
    assert HALF.nearest(Point(9, 3)) == HALF.length
    assert MAJOR.nearest(Point(-1, 0)) == pytest.approx(MAJOR.length * 2 / 3)
    assert MAJOR.nearest(Point(3, -1)) == 0
    assert MAJOR.nearest(Point(1, -3)) == MAJOR.length


def test_the_distance_to_an_arc_counts_inside_and_outside_its_circle() -> None:
    assert HALF.distance_to(Point(5, -3)) == pytest.approx(2)
    assert HALF.distance_to(Point(5, -8)) == pytest.approx(3)
    assert HALF.distance_to(Point(-3, 4)) == pytest.approx(5)
    assert HALF.distance_to(HALF.centre) == pytest.approx(5)


@pytest.mark.parametrize(
    ("start", "end", "bulge"),
    [
        (Point(1, 1), Point(1, 1), 0.0),
        (Point(1, 1), Point(1, 1 + 1e-10), 0.5),
        (Point(0, 0), Point(math.nan, 0), 0.0),
        (Point(0, 0), Point(math.inf, 0), 0.0),
        (Point(0, 0), Point(1, 0), math.nan),
        (Point(0, 0), Point(1, 0), math.inf),
    ],
)
def test_a_segment_without_length_or_number_is_refused(start: Point, end: Point, bulge: float) -> None:
    with pytest.raises(GeometryError, match=r"no lawful length|not a bulge"):
        Segment(start, end, bulge)


def test_a_very_flat_arc_is_still_measured_along_its_rise() -> None:
    flat = Segment(Point(0, 0), Point(100, 0), 1e-7)
    middle = flat.point_at(flat.length / 2)
    assert middle.x == pytest.approx(50, abs=1e-9)
    assert middle.y == pytest.approx(-5e-6, abs=1e-12)
