"""Strips along lines and arcs, and arcs of a given length."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternforge.errors import GeometryError
from patternforge.geometry.band import arc_of_length, band, half_angle
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment


@given(st.floats(0.1, 50), st.floats(1.001, 20), st.sampled_from([1.0, -1.0]))
def test_an_arc_is_as_long_as_asked_and_ends_where_asked(chord: float, times: float, side: float) -> None:
    arc = arc_of_length(Point(1, 2), Point(1 + chord, 2), chord * times, side)
    assert arc.length == pytest.approx(chord * times, rel=1e-9)
    assert (arc.start, arc.end) == (Point(1, 2), Point(1 + chord, 2))
    assert math.copysign(1, 2 - arc.point_at(arc.length / 2).y) == side


def test_an_arc_no_longer_than_its_chord_is_a_line() -> None:
    assert not arc_of_length(Point(0, 0), Point(5, 0), 5.0, 1.0).is_arc
    assert not arc_of_length(Point(0, 0), Point(5, 0), 4.0, 1.0).is_arc


def test_half_the_angle_of_a_half_circle_is_a_right_angle() -> None:
    assert half_angle(2.0, math.pi) == pytest.approx(math.pi / 2)
    assert half_angle(1.0, 1.0) == pytest.approx(0.0, abs=1e-6)
    with pytest.raises(GeometryError, match="does not reach"):
        half_angle(2.0, 1.9)


@given(st.floats(0.5, 30), st.floats(0.1, 5.0), st.floats(0, 0.4), st.floats(0, 0.4), st.sampled_from([1, -1]))
def test_the_area_of_a_strip_is_that_of_the_ring_it_is_part_of(
    radius: float, turn: float, right: float, left: float, way: int
) -> None:
    if right + left < 0.01:
        return
    arc = Segment(Point(0, 0), Point(2 * radius * math.sin(turn / 2), 0), way * math.tan(turn / 4))
    outer, inner = (radius + right, radius - left) if way > 0 else (radius + left, radius - right)
    assert band(arc, right, left).area == pytest.approx(turn / 2 * (outer**2 - inner**2), rel=1e-6)


def test_a_strip_that_would_turn_inside_out_is_refused() -> None:
    arc = Segment(Point(0, 0), Point(2, 0), 1.0)
    assert band(arc, 3.0, 0.9).is_ccw
    with pytest.raises(GeometryError, match="radius"):
        band(arc, 0.5, 1.0)
    with pytest.raises(GeometryError):
        band(arc, 0.0, 0.0)
