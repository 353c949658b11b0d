"""Where two lines or arcs run along one another, and how near they come."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from patternforge.geometry.point import COINCIDENT, Point
from patternforge.geometry.segment import Segment, intersections

__all__ = ["Nearness", "Shared", "nearness", "shared"]

_BETWEEN = (0.0, 0.25, 0.5, 0.75, 1.0)


@dataclass(frozen=True, slots=True)
class Shared:
    """The part of a segment that runs along another: its length in mm, and its middle."""

    length: float
    middle: Point


@dataclass(frozen=True, slots=True)
class Nearness:
    """How far apart two figures are, mm, and the points of both that are."""

    distance: float
    one: Point
    other: Point

    @property
    def middle(self) -> Point:
        """The point half-way."""
        return (self.one + self.other) / 2


def shared(a: Segment, b: Segment, tolerance: float) -> Shared | None:
    """How much of ``a`` lies within ``tolerance`` mm of ``b`` alongside it; None if they only cross or touch.

    >>> a, b = Segment(Point(0, 0), Point(10, 0)), Segment(Point(6, 0.01), Point(20, 0.01))
    >>> shared(a, b, tolerance=0.02)
    Shared(length=4.0, middle=Point(x=8.0, y=0.0))
    """
    length = a.length
    ends = [d for d in (a.nearest(b.start), a.nearest(b.end)) if 0.0 < d < length]
    marks = sorted({0.0, *ends, length})
    spans = ((d0, d1) for d0, d1 in pairwise(marks) if d1 - d0 > COINCIDENT)
    kept = [(d0, d1) for d0, d1 in spans if _along(a, b, d0, d1, tolerance)]
    if not kept:
        return None
    d0, d1 = max(kept, key=lambda span: span[1] - span[0])
    return Shared(sum(high - low for low, high in kept), a.point_at((d0 + d1) / 2))


def _along(a: Segment, b: Segment, d0: float, d1: float, tolerance: float) -> bool:
    if not all(b.distance_to(a.point_at(d0 + (d1 - d0) * share)) <= tolerance for share in _BETWEEN):
        return False
    # Short stretches lie near one another wherever two lines meet: along means that b goes on beside a as well.
    travelled = abs(b.nearest(a.point_at(d1)) - b.nearest(a.point_at(d0)))
    return travelled > 0.8 * (d1 - d0)


def nearness(a: Segment, b: Segment) -> Nearness:
    """How near two segments come, and where.

    >>> nearness(Segment(Point(0, 0), Point(10, 0)), Segment(Point(5, 3), Point(5, 9))).distance
    3.0
    """
    for p in intersections(a, b):
        return Nearness(0.0, p, p)
    return min(_candidates(a, b), key=lambda each: each.distance)


def _candidates(a: Segment, b: Segment) -> Iterator[Nearness]:
    for p in (a.start, a.end):
        yield _between(p, b.point_at(b.nearest(p)))
    for q in (b.start, b.end):
        yield _between(a.point_at(a.nearest(q)), q)
    if a.is_arc:
        yield from _from_centre(a, b)
    if b.is_arc:
        yield from (Nearness(each.distance, each.other, each.one) for each in _from_centre(b, a))


def _from_centre(arc: Segment, other: Segment) -> Iterator[Nearness]:
    """The point of ``other`` nearest to the centre of the arc, and what of the arc lies nearest to that."""
    q = other.point_at(other.nearest(arc.centre))
    yield _between(arc.point_at(arc.nearest(q)), q)


def _between(p: Point, q: Point) -> Nearness:
    return Nearness(p.distance_to(q), p, q)
