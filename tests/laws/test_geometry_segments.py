"""Laws of single lines and arcs and of where they meet."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, intersections
from tests.laws.geometry_shapes import points, segments

modest = settings(max_examples=100, deadline=None)
shares = st.floats(0, 1)


@modest
@given(segments(), shares)
def test_every_point_of_an_arc_keeps_its_distance_from_the_centre(segment: Segment, share: float) -> None:
    p = segment.point_at(segment.length * share)
    if segment.is_arc:
        assert p.distance_to(segment.centre) == pytest.approx(segment.radius, rel=1e-9)
    assert segment.distance_to(p) < 1e-6


@modest
@given(segments(), shares)
def test_the_reverse_passes_the_same_points(segment: Segment, share: float) -> None:
    d = segment.length * share
    assert segment.reversed().reversed() == segment
    assert segment.reversed().point_at(segment.length - d).distance_to(segment.point_at(d)) < 1e-8


@modest
@given(segments(), points(), shares)
def test_no_point_of_a_segment_is_nearer_than_its_nearest(segment: Segment, p: Point, share: float) -> None:
    nearest = segment.point_at(segment.nearest(p))
    assert nearest.distance_to(p) == pytest.approx(segment.distance_to(p), abs=1e-6)
    assert segment.point_at(segment.length * share).distance_to(p) >= segment.distance_to(p) - 1e-6


@modest
@given(segments(), segments())
def test_meeting_points_lie_on_both_whichever_is_asked_first(a: Segment, b: Segment) -> None:
    found = intersections(a, b)
    assert all(max(a.distance_to(p), b.distance_to(p)) < 1e-6 for p in found)
    assert len(found) == len(intersections(b, a))


@modest
@given(segments(), st.floats(0.05, 0.95), st.floats(0.1, 1.5))
def test_a_line_laid_through_a_point_of_a_segment_meets_it_there(segment: Segment, share: float, turn: float) -> None:
    p = segment.point_at(segment.length * share)
    across = segment.tangent_at(segment.length * share).rotated(turn)
    found = intersections(segment, Segment(p - across * 50, p + across * 50))
    assert min((q.distance_to(p) for q in found), default=99) < 1e-6


@modest
@given(segments(), shares)
def test_bounds_hold_every_point(segment: Segment, share: float) -> None:
    p, box = segment.point_at(segment.length * share), segment.bounds
    assert box.x0 - 1e-6 <= p.x <= box.x1 + 1e-6
    assert box.y0 - 1e-6 <= p.y <= box.y1 + 1e-6
