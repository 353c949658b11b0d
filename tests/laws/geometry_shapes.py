"""Figures drawn at random for the laws of geometry; sizes are those of a wallet, in mm."""

from __future__ import annotations

import math

from hypothesis import assume
from hypothesis import strategies as st

from patternforge.geometry.corners import filleted
from patternforge.geometry.path import Path, from_vertices, polygon
from patternforge.geometry.point import Point
from patternforge.geometry.regions import fault_of
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import Transform, flipped_x, identity, rotation, translation

__all__ = ["convex_outlines", "outlines", "points", "segments", "transforms"]


def points() -> st.SearchStrategy[Point]:
    coordinate = st.floats(-200, 200, allow_nan=False)
    return st.builds(Point, coordinate, coordinate)


@st.composite
def segments(draw: st.DrawFn) -> Segment:
    """Lines and arcs of at most 330 degrees, at least 0.1 mm from end to end."""
    start, end = draw(points()), draw(points())
    assume(start.distance_to(end) > 0.1)
    sweep = draw(st.one_of(st.just(0.0), st.floats(0.001, 330), st.floats(-330, -0.001)))
    return Segment(start, end, math.tan(math.radians(sweep) / 4))


@st.composite
def transforms(draw: st.DrawFn) -> Transform:
    turned = rotation(draw(st.floats(-360, 360))).then(
        translation(draw(st.floats(-99, 99)), draw(st.floats(-99, 99)))
    )
    return draw(st.sampled_from((identity(), flipped_x(at=12.0)))).then(turned)


@st.composite
def outlines(draw: st.DrawFn) -> Path:
    """Closed paths of lines and arcs round the origin that do not cross themselves, counter-clockwise."""
    count = draw(st.integers(3, 9))
    reaches = draw(st.lists(st.floats(8, 40), min_size=count, max_size=count))
    bulges = draw(st.lists(st.one_of(st.just(0.0), st.floats(-0.3, 0.3)), min_size=count, max_size=count))
    angles = [2 * math.pi * i / count for i in range(count)]
    vertices = [(r * math.cos(a), r * math.sin(a), b) for r, a, b in zip(reaches, angles, bulges, strict=True)]
    path = from_vertices(vertices, closed=True)
    assume(fault_of(path) is None)
    return path


@st.composite
def convex_outlines(draw: st.DrawFn) -> Path:
    """Convex polygons in a circle of 30 mm, sharp or with their corners rounded, counter-clockwise."""
    count = draw(st.integers(3, 8))
    steps = draw(st.lists(st.floats(1, 2), min_size=count, max_size=count))
    angles = [2 * math.pi * sum(steps[:i]) / sum(steps) for i in range(count)]
    sharp = polygon(Point(30 * math.cos(a), 30 * math.sin(a)) for a in angles)
    return filleted(sharp, draw(st.sampled_from((0.0, 0.5, 2.0))))
