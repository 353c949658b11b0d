"""Convex outlines round points."""

from __future__ import annotations

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.hull import hull
from patternforge.geometry.point import Point


def test_points_inside_and_on_the_sides_are_no_corners() -> None:
    corners = [Point(0, 0), Point(6, 0), Point(6, 4), Point(0, 4)]
    path = hull([*corners, Point(3, 0), Point(3, 2), Point(6, 1)])
    assert {segment.start for segment in path.segments} == set(corners)
    assert path.is_ccw


def test_a_notch_is_filled() -> None:
    assert hull([Point(0, 0), Point(4, 0), Point(4, 4), Point(2, 1), Point(0, 4)]).area == 16


def test_points_on_one_line_are_refused() -> None:
    with pytest.raises(GeometryError, match="no outline round them"):
        hull([Point(0, 0), Point(1, 1), Point(2, 2)])
