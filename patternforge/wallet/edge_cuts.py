"""Cuts in an outline: a stretch of one of its straight edges gives way to a notch, a dip, a relief."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, intersections
from patternforge.wallet.outline import Corner, Shape
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import Edge

__all__ = ["bow", "edge_direction", "edge_place", "relief", "vee", "with_cut"]

_ON_EDGE = 1e-7
_FAR = 1e5  # mm beyond any piece
_QUARTER = math.tan(math.pi / 8)
_SIDEWAYS = (Edge.LEFT, Edge.RIGHT)


def with_cut(shape: Shape, corners: Sequence[Corner]) -> Shape:
    """The shape with the stretch from the first corner to the last replaced by the edges between them.

    Both must lie on one straight edge, in its direction. DraftError when they do not.
    """
    first, last = corners[0].at, corners[-1].at
    at = next((i for i, edge in enumerate(shape.path.segments) if _runs(edge, first, last)), None)
    if at is None:
        raise DraftError("a cut of its edge does not fit there: it meets a corner, a bowed side or another cut")
    edge, role = shape.path.segments[at], shape.edges[at]
    stops = [Corner(edge.start, role=role), *corners[:-1], Corner(last, role=role), Corner(edge.end)]
    new = [(Segment(a.at, b.at, a.bulge), a.role) for a, b in pairwise(stops) if a.at.distance_to(b.at) > _ON_EDGE]
    laid = [segment for segment, _ in new]
    segments = (*shape.path.segments[:at], *laid, *shape.path.segments[at + 1 :])
    return Shape(Path(segments, True), (*shape.edges[:at], *(r for _, r in new), *shape.edges[at + 1 :]))


def edge_place(shape: Shape, edge: Edge, at: float) -> Point:
    """Where the shape's edge on that side stands ``at`` mm along it: x on a level edge, y on an upright one.

    DraftError where the shape has no edge there.
    """
    ends = (Point(-_FAR, at), Point(_FAR, at)) if edge in _SIDEWAYS else (Point(at, -_FAR), Point(at, _FAR))
    ray = Segment(*ends)
    found = [p for side in shape.path.segments for p in intersections(side, ray)]
    if not found:
        raise DraftError(f"a cut of its {edge.value} edge lies beyond it")
    way = {Edge.LEFT: Point(-1, 0), Edge.RIGHT: Point(1, 0), Edge.BOTTOM: Point(0, -1), Edge.TOP: Point(0, 1)}[edge]
    return max(found, key=way.dot)


def edge_direction(shape: Shape, at: Point) -> Point:
    """The unit vector along the straight edge on which a point lies, counter-clockwise.

    DraftError where the point lies on no straight edge.
    """
    for edge in shape.path.segments:
        if not edge.is_arc and edge.distance_to(at) < _ON_EDGE:
            return edge.tangent_at(0.0)
    raise DraftError("a cut is made in a straight edge only, not in a bowed one")


def bow(start: Point, end: Point, depth: float, role: EdgeRole) -> list[Corner]:
    """An arc cut ``depth`` mm deep between two places on an edge, counter-clockwise; bulge = 2 x sagitta / chord.

    DraftError when it would be deeper than a half circle.
    """
    chord = start.distance_to(end)
    if depth > chord / 2 + 1e-9:
        raise DraftError(f"a cut {depth:.2f} mm deep does not fit a mouth of {chord:.2f} mm: at most half its width")
    return [Corner(start, 0.0, -2 * depth / chord, role), Corner(end)]


def vee(start: Point, end: Point, depth: float, role: EdgeRole) -> list[Corner]:
    """Two straight cuts that meet ``depth`` mm inside the edge."""
    point = (start + end) / 2 + (end - start).unit().perpendicular() * depth
    return [Corner(start, role=role), Corner(point, role=role), Corner(end)]


def relief(start: Point, end: Point, depth: float) -> list[Corner]:
    """A quarter circle outside each of two places on an edge, straight across between them ``depth`` mm inside it."""
    way = (end - start).unit()
    into = way.perpendicular() * depth
    return [
        Corner(start - way * depth, 0.0, -_QUARTER),
        Corner(start + into),
        Corner(end + into, 0.0, -_QUARTER),
        Corner(end + way * depth),
    ]


def _runs(edge: Segment, first: Point, last: Point) -> bool:
    if edge.is_arc or (last - first).dot(edge.end - edge.start) <= 0:
        return False
    return edge.distance_to(first) < _ON_EDGE and edge.distance_to(last) < _ON_EDGE
