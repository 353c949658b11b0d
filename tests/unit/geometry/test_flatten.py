"""Arcs as short lines."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import from_vertices, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

CIRCLE = from_vertices([(-5, 0, 1), (5, 0, 1)], closed=True)


def test_lines_keep_their_points_only() -> None:
    assert flattened(rounded_rectangle(0, 0, 9, 6, 0), 0.01) == (Point(0, 0), Point(9, 0), Point(9, 6), Point(0, 6))


def test_an_open_path_ends_in_its_end() -> None:
    assert flattened(polyline([Point(0, 0), Point(9, 0)]), 0.01) == (Point(0, 0), Point(9, 0))


def test_no_fewer_points_would_keep_the_tolerance() -> None:
    # A chord that rises 0.01 mm below a radius of 5 mm spans 2 acos(1 - 0.01 / 5).
    assert len(flattened(CIRCLE, 0.01)) == 2 * math.ceil(math.pi / (2 * math.acos(1 - 0.01 / 5)))


def test_a_tolerance_wider_than_the_arc_leaves_its_ends() -> None:
    assert flattened(CIRCLE, 50) == (Point(-5, 0), Point(5, 0))


def test_vertices_stay_exactly_where_they_were() -> None:
    rounded = rounded_rectangle(0, 0, 90, 60, 5)
    assert {s.start for s in rounded.segments} <= set(flattened(rounded, 0.001))


def test_a_flat_arc_is_not_cut_up() -> None:
    flat = from_vertices([(0, 0, 1e-5), (100, 0, 0), (50, 50, 0)], closed=True)
    assert Segment(Point(0, 0), Point(100, 0), 1e-5).radius > 1e6
    assert len(flattened(flat, 0.01)) == 3


@pytest.mark.parametrize("tolerance", [0, -1, math.nan, math.inf])
def test_a_tolerance_must_be_positive(tolerance: float) -> None:
    with pytest.raises(GeometryError, match="not a tolerance"):
        flattened(CIRCLE, tolerance)
