"""Distances between lines and arcs, and narrow places, by hand."""

from __future__ import annotations

from math import hypot, inf, pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.geometry.clearance import clearance, narrowest, segment_gap
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment

LEVEL = Segment(Point(0, 0), Point(10, 0))


@pytest.mark.parametrize(
    ("other", "gap"),
    [
        (Segment(Point(2, 3), Point(8, 3)), 3.0),  # side by side
        (Segment(Point(13, 4), Point(20, 4)), 5.0),  # end to end
        (Segment(Point(5, 2), Point(5, 9)), 2.0),  # an end over the middle
        (Segment(Point(5, -2), Point(5, 9)), 0.0),  # crossing
        (arc_segment(Point(5, 6), 4.0, -pi, 0.0), 2.0),  # the bow of an arc
        (arc_segment(Point(5, 6), 4.0, 0.0, pi), 6.0),  # an arc whose bow points away
        (arc_segment(Point(5, 1), 4.0, 0.1, pi - 0.1), 1 + 4 * 0.09983341664682815),  # ends of an arc about the line
    ],
)
def test_the_gap_between_a_line_and_another_segment(other: Segment, gap: float) -> None:
    assert segment_gap(LEVEL, other) == pytest.approx(gap, abs=1e-9)
    assert segment_gap(other, LEVEL) == pytest.approx(gap, abs=1e-9)


@pytest.mark.parametrize(
    ("one", "other", "gap"),
    [
        # two bows that face each other along the line of their centres
        (arc_segment(Point(0, 0), 3.0, -1.0, 1.0), arc_segment(Point(10, 0), 2.0, 2.0, 4.3), 5.0),
        # one circle inside another: nearest where the line of centres leaves both on the same side
        (arc_segment(Point(0, 0), 10.0, -1.0, 1.0), arc_segment(Point(3, 0), 2.0, -1.0, 1.0), 5.0),
        # about one centre
        (arc_segment(Point(0, 0), 10.0, 0.0, 2.0), arc_segment(Point(0, 0), 7.0, 1.0, 3.0), 3.0),
    ],
)
def test_the_gap_between_two_arcs(one: Segment, other: Segment, gap: float) -> None:
    assert segment_gap(one, other) == pytest.approx(gap, abs=1e-9)


def test_the_clearance_of_two_outlines_is_that_of_their_nearest_sides() -> None:
    a, b = rounded_rectangle(0, 0, 10, 10, 3), rounded_rectangle(13, 12, 30, 30, 2)
    # From corner arc to corner arc along their centres (7, 7) and (15, 14).
    assert clearance(a, b) == pytest.approx(hypot(8, 7) - 5, abs=1e-9)


segment_ends = st.tuples(*[st.floats(-20, 20) for _ in range(4)]).filter(
    lambda n: hypot(n[2] - n[0], n[3] - n[1]) > 0.1
)
segments = st.builds(
    lambda n, bulge: Segment(Point(n[0], n[1]), Point(n[2], n[3]), bulge),
    segment_ends,
    st.one_of(st.just(0.0), st.floats(0.05, 2.0), st.floats(-2.0, -0.05)),
)


@settings(max_examples=60, deadline=None)
@given(segments, segments)
def test_no_two_points_of_two_segments_lie_nearer_than_their_gap(a: Segment, b: Segment) -> None:
    gap = segment_gap(a, b)
    sampled = min(b.distance_to(a.point_at(a.length * i / 200)) for i in range(201))
    assert gap <= sampled + 1e-6
    # Between two samples the distance changes by no more than half a step.
    assert sampled - a.length / 400 <= gap + 1e-6


def slot(width: float, radius: float = 0.0) -> Path:
    """A block of 40 x 20 mm with a notch of that width in its upper edge, its floor round if there is a radius."""
    low = 8 + radius
    floor = [(20 + width / 2, low, -1.0), (20 - width / 2, low, 0)] if radius else []
    square = [(20 + width / 2, 8, 0), (20 - width / 2, 8, 0)]
    run = [(0, 0, 0), (40, 0, 0), (40, 20, 0), (20 + width / 2, 20, 0), *(floor or square), (20 - width / 2, 20, 0)]
    return from_vertices([*run, (0, 20, 0)], closed=True)


@pytest.mark.parametrize("width", [0.3, 2.0, 5.0])
def test_a_notch_is_as_narrow_as_it_is_wide(width: float) -> None:
    assert narrowest(slot(width)) == pytest.approx(width)
    assert narrowest(slot(width, radius=width / 2)) == pytest.approx(width)


def test_a_neck_between_a_notch_and_the_far_edge_is_found() -> None:
    assert narrowest(slot(12.0)) == pytest.approx(8.0)


def test_a_corner_that_points_at_a_side_is_a_narrow_place() -> None:
    # The tip at (10, 2) stands 2 mm over the lower edge, the notch is wider everywhere.
    tip = polygon([Point(*at) for at in ((0, 0), (20, 0), (20, 20), (18, 20), (10, 2), (2, 20), (0, 20))])
    assert narrowest(tip) == pytest.approx(2.0)


def test_a_rounded_corner_is_no_narrow_place_however_small() -> None:
    assert narrowest(rounded_rectangle(0, 0, 30, 20, 0.05)) == pytest.approx(20.0)
    assert narrowest(rounded_rectangle(0, 0, 30, 20, 9.0)) == pytest.approx(20.0)


def test_the_narrowest_place_of_a_triangle_is_none() -> None:
    """Its sides face one another nowhere, and its corners point away: whichever way a point moves, it gets nearer."""
    assert narrowest(polygon([Point(0, 0), Point(10, 0), Point(5, 5 * sqrt(3))])) == inf
    assert narrowest(polygon([Point(0, 0), Point(10, 0), Point(-9, 1)])) == inf


def test_paths_that_touch_have_no_clearance() -> None:
    assert clearance(polyline([Point(0, 0), Point(5, 5)]), polyline([Point(0, 5), Point(5, 0)])) == 0.0


def test_a_block_with_sharp_corners_is_as_narrow_as_its_shorter_side() -> None:
    """At its corners the way across can be made shorter, between them it cannot."""
    assert narrowest(polygon([Point(0, 0), Point(9, 0), Point(9, 4), Point(0, 4)])) == pytest.approx(4.0)


def test_sides_that_are_level_over_a_part_of_their_length_face_each_other_there() -> None:
    step = polygon([Point(*at) for at in ((0, 0), (10, 0), (10, 3), (20, 3), (20, 9), (8, 9), (8, 6), (0, 6))])
    assert narrowest(step) == pytest.approx(sqrt(2 * 2 + 3 * 3))  # between the two corners that point in
    level = polygon([Point(*at) for at in ((0, 0), (10, 0), (10, 3), (20, 3), (20, 8), (4, 8), (4, 6), (0, 6))])
    assert narrowest(level) == pytest.approx(5.0)
