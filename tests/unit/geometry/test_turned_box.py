"""The smallest turned rectangle, against shapely's and by hand."""

from __future__ import annotations

from math import sqrt
from random import Random

import pytest
import shapely

from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polygon
from patternforge.geometry.point import Point
from patternforge.geometry.transform import rotation
from patternforge.geometry.turned_box import smallest_box


def test_a_rectangle_turned_by_30_degrees_is_turned_back_by_30() -> None:
    box = smallest_box(rotation(30.0).path(rounded_rectangle(0.0, 0.0, 40.0, 10.0, 0.0)))
    assert (box.width, box.height, box.turn) == pytest.approx((40.0, 10.0, -30.0))


def test_a_right_triangle_lies_on_its_legs() -> None:
    """Legs 3 and 4: on a leg the box has 12 mm2, on the hypotenuse of 5 and the height 2.4 it has 12 mm2 too."""
    box = smallest_box(polygon([Point(0, 0), Point(4, 0), Point(0, 3)]))
    assert box.area == pytest.approx(12.0)
    assert box.turn == 0.0


def test_a_diamond_is_half_its_upright_box() -> None:
    box = smallest_box(polygon([Point(10, 0), Point(20, 10), Point(10, 20), Point(0, 10)]))
    assert (box.width, box.height) == pytest.approx((10 * sqrt(2), 10 * sqrt(2)))


def test_arcs_count_with_their_bulge() -> None:
    box = smallest_box(rounded_rectangle(0.0, 0.0, 30.0, 20.0, 9.9))
    assert (box.width, box.height) == pytest.approx((30.0, 20.0), abs=0.02)


@pytest.mark.parametrize("seed", range(12))
def test_no_box_is_smaller_than_shapelys_and_none_larger(seed: int) -> None:
    draw = Random(seed)
    hull = shapely.MultiPoint([(draw.uniform(0, 90), draw.uniform(0, 40)) for _ in range(9)]).convex_hull
    box = smallest_box(polygon([Point(float(x), float(y)) for x, y in shapely.get_coordinates(hull)[:-1]]))
    assert box.area == pytest.approx(shapely.oriented_envelope(hull).area, rel=1e-6)
    assert -45.0 < box.turn <= 45.0
