"""Laws of rounded corners between lines and arcs."""

from __future__ import annotations

import math
from itertools import pairwise

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternforge.errors import GeometryError
from patternforge.geometry.corners import filleted
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment


@st.composite
def corners(draw: st.DrawFn) -> tuple[Path, float]:
    """A closed path of three sides, the two that meet in its second vertex lines or arcs, and a radius."""
    turn = math.radians(draw(st.floats(15, 165)) * draw(st.sampled_from((1, -1))))
    lengths = draw(st.tuples(st.floats(10, 60), st.floats(10, 60)))
    bulges = draw(st.tuples(*[st.one_of(st.just(0.0), st.floats(-0.35, 0.35))] * 2))
    start, end = Point(-lengths[0], 0.0), Point(math.cos(turn), math.sin(turn)) * lengths[1]
    corner = Point(0.0, 0.0)
    sides = (Segment(start, corner, bulges[0]), Segment(corner, end, bulges[1]))
    between = sides[0].tangent_at(sides[0].length).cross(sides[1].tangent_at(0.0))
    assume(abs(between) > 0.1)
    return Path((*sides, Segment(end, start)), closed=True), draw(st.floats(0.2, 8))


@settings(max_examples=60)
@given(corners())
def test_a_fillet_touches_both_sides_and_has_its_radius(drawn: tuple[Path, float]) -> None:
    path, radius = drawn
    try:
        rounded = filleted(path, [0, radius, 0])
    except GeometryError:
        assume(False)
    fillet = rounded.segments[1]
    assert abs(fillet.radius - radius) < 1e-8
    for side in path.segments[:2]:
        # Tangent: the centre lies its radius off the side, neither nearer nor further.
        assert abs(side.distance_to(fillet.centre) - radius) < 1e-8
    for before, after in pairwise(rounded.segments[:3]):
        assert before.tangent_at(before.length).distance_to(after.tangent_at(0.0)) < 1e-7


@settings(max_examples=60)
@given(corners())
def test_a_fillet_leaves_the_rest_of_both_sides_where_it_was(drawn: tuple[Path, float]) -> None:
    path, radius = drawn
    try:
        rounded = filleted(path, [0, radius, 0])
    except GeometryError:
        assume(False)
    for left, side in zip((rounded.segments[0], rounded.segments[2]), path.segments, strict=False):
        assert left.length < side.length
        assert all(side.distance_to(left.point_at(left.length * share)) < 1e-8 for share in (0.0, 0.3, 0.7, 1.0))


@settings(max_examples=40)
@given(corners())
def test_a_fillet_turned_over_is_the_fillet_of_the_path_turned_over(drawn: tuple[Path, float]) -> None:
    path, radius = drawn
    try:
        there = filleted(path, [0, radius, 0])
    except GeometryError:
        assume(False)
    back = filleted(path.reversed(), [0, 0, radius])
    assert math.isclose(there.area, -back.area, abs_tol=1e-7)
