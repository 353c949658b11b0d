"""How near two lines come to each other, and how narrow a closed one becomes; exact for straight lines and arcs."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.segment import Segment, intersections

__all__ = ["box_gap", "clearance", "narrowest", "segment_gap"]

_ON = 1e-7  # mm within which a point lies on a segment
_INSIDE = 1e-3  # mm from the end of a segment
_LEVEL = 1e-6  # cosine within which a direction is square to another


def clearance(a: Path, b: Path) -> float:
    """The smallest distance between two paths, mm; 0 where they touch.

    >>> from patternforge.geometry.path import polyline
    >>> clearance(polyline([Point(0, 0), Point(9, 0)]), polyline([Point(3, 2), Point(4, 7)]))
    2.0
    """
    best = inf
    for one in a.segments:
        for other in b.segments:
            if box_gap(one.bounds, other.bounds) < best:
                best = min(best, segment_gap(one, other))
    return best


def segment_gap(a: Segment, b: Segment) -> float:
    """The smallest distance between two segments, mm; 0 where they touch.

    >>> segment_gap(Segment(Point(0, 0), Point(9, 0)), Segment(Point(0, 5), Point(8, 5), 0.5))
    3.0
    """
    if intersections(a, b):
        return 0.0
    return min(p.distance_to(q) for p, q in _nearest_pairs(a, b))


def box_gap(a: Bounds, b: Bounds) -> float:
    """A distance, mm, that what lies in two boxes keeps at least; 0 for boxes that overlap.

    >>> box_gap(Bounds(0, 0, 1, 1), Bounds(4, 0, 5, 9))
    3
    """
    return max(a.x0 - b.x1, b.x0 - a.x1, a.y0 - b.y1, b.y0 - a.y1, 0)


def narrowest(path: Path) -> float:
    """The width of the narrowest place of a closed path, mm: a neck it leaves or a notch it cuts; infinite if none.

    A place is narrow where the way straight across cannot be made shorter by moving either of its ends along the
    path: two sides that face each other, or a corner that points at a side.

    >>> from patternforge.geometry.path import polygon
    >>> slotted = [(0, 0), (20, 0), (20, 9), (12, 9), (12, 4), (9, 4), (9, 9), (0, 9)]
    >>> narrowest(polygon([Point(x, y) for x, y in slotted]))
    3.0
    """
    segments = path.segments
    best = inf
    for i, a in enumerate(segments):
        for j in range(i + 1, len(segments)):
            if box_gap(a.bounds, segments[j].bounds) >= best:
                continue
            for p, q in (*_nearest_pairs(a, segments[j]), *_beside_ends(a, segments[j])):
                apart = p.distance_to(q)
                if _ON < apart < best and _stays(path, i, p, q) and _stays(path, j, q, p):
                    best = apart
    return best


def _nearest_pairs(a: Segment, b: Segment) -> Iterator[tuple[Point, Point]]:
    """Pairs of points on both segments among which the nearest pair of all is, if they do not meet."""
    for p in (a.start, a.end):
        yield p, b.point_at(b.nearest(p))
    for q in (b.start, b.end):
        yield a.point_at(a.nearest(q)), q
    for p in _facing(a, b):
        yield p, b.point_at(b.nearest(p))
    for q in _facing(b, a):
        yield a.point_at(a.nearest(q)), q


def _beside_ends(a: Segment, b: Segment) -> Iterator[tuple[Point, Point]]:
    """Points a little inside each end with the nearest of the other segment.

    Where two sides run level over a stretch, these are pairs within it, whatever happens at its ends.
    """
    for one, other in ((a, b), (b, a)):
        inside = min(_INSIDE, one.length / 3)
        for along in (inside, one.length - inside):
            p = one.point_at(along)
            q = other.point_at(other.nearest(p))
            yield (p, q) if one is a else (q, p)


def _facing(a: Segment, b: Segment) -> Iterator[Point]:
    """The points of an arc whose radius leads on square to another segment."""
    if not a.is_arc:
        return
    centre = a.centre
    ways = [b.centre - centre] if b.is_arc else [(b.end - b.start).perpendicular()]
    for way in ways:
        if way.norm > _ON:
            for side in (a.radius, -a.radius):
                p = centre + way.unit() * side
                if a.distance_to(p) < _ON:
                    yield p


def _stays(path: Path, index: int, p: Point, towards: Point) -> bool:
    """Whether moving ``p``, a point of that segment, along the path either way brings it no nearer to ``towards``."""
    segments = path.segments
    here = segments[index]
    way = (towards - p).unit()
    before, after = here, here
    if p.distance_to(here.start) < _ON:
        before = segments[index - 1]
    elif p.distance_to(here.end) < _ON:
        after = segments[(index + 1) % len(segments)]
    back, on = _direction(before, p), _direction(after, p)
    return way.dot(on) <= _LEVEL and way.dot(back) >= -_LEVEL


def _direction(segment: Segment, p: Point) -> Point:
    return segment.tangent_at(segment.nearest(p))
