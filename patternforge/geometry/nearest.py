"""Where two segments come nearest to each other, exactly for lines and arcs."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.geometry.point import COINCIDENT, Point
from patternforge.geometry.segment import Segment, intersections

__all__ = ["nearest_points"]

_PARALLEL = 1e-9  # sine of the angle between lines, or mm between centres, that counts as none


def nearest_points(a: Segment, b: Segment) -> tuple[Point, Point]:
    """The point of ``a`` and the point of ``b`` that lie nearest to each other; the same one twice where they meet.

    Where they run beside each other at one distance, the points lie in the middle of that run.

    >>> nearest_points(Segment(Point(0, 0), Point(10, 0)), Segment(Point(4, 3), Point(20, 3)))
    (Point(x=7.0, y=0.0), Point(x=7.0, y=3.0))
    """
    for p in intersections(a, b):
        return p, p
    pairs = (*_beside(a, b), *_between(a, b), *_at_ends(a, b))
    apart = [p.distance_to(q) for p, q in pairs]
    least = min(apart)
    return next(pair for pair, distance in zip(pairs, apart, strict=True) if distance <= least + COINCIDENT)


def _at_ends(a: Segment, b: Segment) -> Iterator[tuple[Point, Point]]:
    for p in (a.start, a.end):
        yield p, b.point_at(b.nearest(p))
    for q in (b.start, b.end):
        yield a.point_at(a.nearest(q)), q


def _between(a: Segment, b: Segment) -> Iterator[tuple[Point, Point]]:
    """Points of both between their ends where one way leaves either at a right angle: through the centres of arcs."""
    if a.is_arc and b.is_arc:
        way = b.centre - a.centre
        if way.norm > _PARALLEL:
            yield from _along(a, b, way.unit())
    elif a.is_arc or b.is_arc:
        line = b if a.is_arc else a
        yield from _along(a, b, ((line.end - line.start) / line.chord).perpendicular())


def _along(a: Segment, b: Segment, way: Point) -> Iterator[tuple[Point, Point]]:
    for p in _points_on(a, way):
        for q in _points_on(b, way) if b.is_arc else [b.point_at(b.nearest(p))]:
            yield (p, q) if a.is_arc else (a.point_at(a.nearest(q)), q)


def _points_on(segment: Segment, way: Point) -> list[Point]:
    """The points of an arc in either direction from its centre, if they lie on it; the start of a line."""
    if not segment.is_arc:
        return [segment.start]
    ends = [segment.centre + way * (side * segment.radius) for side in (1.0, -1.0)]
    return [segment.point_at(segment.nearest(p)) for p in ends]


def _beside(a: Segment, b: Segment) -> Iterator[tuple[Point, Point]]:
    """The middle of the run of two level lines or two arcs about one centre."""
    if a.is_arc is not b.is_arc:
        return
    if a.is_arc:
        if a.centre.distance_to(b.centre) > _PARALLEL:
            return
    elif abs((a.end - a.start).cross(b.end - b.start)) > _PARALLEL * a.chord * b.chord:
        return
    shared = sorted(a.nearest(p) for p in (b.start, b.end, *(b.point_at(b.nearest(p)) for p in (a.start, a.end))))
    p = a.point_at((shared[0] + shared[-1]) / 2)
    yield p, b.point_at(b.nearest(p))
