"""Points, vectors and the boxes round them."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.point import Bounds, Point, bounds_of


def test_arithmetic_works_on_both_coordinates() -> None:
    assert Point(1, 2) + Point(3, 5) == Point(4, 7)
    assert Point(1, 2) - Point(3, 5) == Point(-2, -3)
    assert -Point(1, -2) == Point(-1, 2)
    assert Point(1, 2) * 3 == 3 * Point(1, 2) == Point(3, 6)
    assert Point(3, 6) / 3 == Point(1, 2)


def test_cross_is_positive_counter_clockwise_and_dot_is_zero_at_right_angles() -> None:
    assert Point(2, 0).cross(Point(0, 3)) == 6
    assert Point(0, 3).cross(Point(2, 0)) == -6
    assert Point(2, 0).dot(Point(0, 3)) == 0


def test_perpendicular_is_a_quarter_turn_counter_clockwise() -> None:
    assert Point(2, 1).perpendicular() == Point(-1, 2)
    turned = Point(2, 1).rotated(math.pi / 2)
    assert turned.distance_to(Point(-1, 2)) < 1e-15


@pytest.mark.parametrize("vector", [Point(0, 0), Point(1e-12, 0), Point(math.nan, 0), Point(math.inf, 0)])
def test_a_vector_without_direction_has_no_unit(vector: Point) -> None:
    with pytest.raises(GeometryError, match="has no direction"):
        vector.unit()


def test_bounds_hold_every_point_and_no_more() -> None:
    box = bounds_of([Point(1, 5), Point(-3, 2), Point(0, 7)])
    assert box == Bounds(-3, 2, 1, 7)
    assert (box.width, box.height, box.centre) == (4, 5, Point(-1, 4.5))


def test_no_points_have_no_bounds() -> None:
    with pytest.raises(GeometryError, match="no points"):
        bounds_of([])
