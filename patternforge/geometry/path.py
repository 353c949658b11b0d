"""A run of lines and arcs, open or closed: its measures, its parts, its inside; mm."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import reduce
from itertools import pairwise

from patternforge.errors import GeometryError
from patternforge.geometry.point import COINCIDENT, Bounds, Point
from patternforge.geometry.segment import Segment

__all__ = ["Path", "from_vertices", "polygon", "polyline"]

FLAT = 3e-3  # below this bulge the area under an arc is summed as a series, where the closed form cancels


@dataclass(frozen=True, slots=True)
class Path:
    """Segments end to end; a closed path also ends where it starts.

    GeometryError when there is no segment or two neighbours are more than 1e-9 mm apart.

    >>> polygon([Point(0, 0), Point(4, 0), Point(4, 3)]).length
    12.0
    """

    segments: tuple[Segment, ...]
    closed: bool

    def __post_init__(self) -> None:
        if not self.segments:
            raise GeometryError("a path needs a segment")
        followers = self.segments[1:] + (self.segments[:1] if self.closed else ())
        for one, following in zip(self.segments, followers, strict=False):
            gap = one.end.distance_to(following.start)
            if gap > COINCIDENT:
                raise GeometryError(f"the path is broken by {gap:g} mm at ({one.end.x:g}, {one.end.y:g})")

    @property
    def start(self) -> Point:
        return self.segments[0].start

    @property
    def end(self) -> Point:
        return self.segments[-1].end

    @property
    def vertices(self) -> tuple[tuple[float, float, float], ...]:
        """Every (x, y, bulge of the segment that starts there); an open path's last point has bulge 0."""
        run = tuple((s.start.x, s.start.y, s.bulge) for s in self.segments)
        return run if self.closed else (*run, (self.end.x, self.end.y, 0.0))

    @property
    def length(self) -> float:
        """The length along the path, mm."""
        return math.fsum(s.length for s in self.segments)

    @property
    def area(self) -> float:
        """The enclosed area in mm2, arcs exact; negative when clockwise. GeometryError for an open path."""
        self._refuse_open("area")
        o = self.start
        return math.fsum((s.start - o).cross(s.end - o) / 2 + _bulge_area(s) for s in self.segments)

    @property
    def is_ccw(self) -> bool:
        """Whether a closed path runs counter-clockwise; GeometryError for an open one."""
        return self.area > 0

    @property
    def bounds(self) -> Bounds:
        """The smallest upright box round the path."""
        return reduce(Bounds.joined, (s.bounds for s in self.segments))

    def reversed(self) -> Path:
        """The same path travelled the other way."""
        return Path(tuple(s.reversed() for s in reversed(self.segments)), self.closed)

    def ccw(self) -> Path:
        """The closed path counter-clockwise: itself, or reversed."""
        return self if self.is_ccw else self.reversed()

    def cw(self) -> Path:
        """The closed path clockwise: itself, or reversed."""
        return self.reversed() if self.is_ccw else self

    def point_at(self, d: float) -> Point:
        """The point at ``d`` mm along the path, 0 to length; GeometryError beyond either.

        >>> polyline([Point(0, 0), Point(4, 0), Point(4, 3)]).point_at(5)
        Point(x=4.0, y=1.0)
        """
        index, rest = self._place(d)
        return self.segments[index].point_at(rest)

    def tangent_at(self, d: float) -> Point:
        """The unit vector of travel at ``d`` mm, at a vertex that of the segment that follows.

        >>> polyline([Point(0, 0), Point(4, 0), Point(4, 3)]).tangent_at(4)
        Point(x=0.0, y=1.0)
        """
        index, rest = self._place(d)
        return self.segments[index].tangent_at(rest)

    def stations(self, distances: Iterable[float]) -> list[tuple[Point, Point]]:
        """Point and unit vector of travel at each of the rising ``distances`` in mm; GeometryError beyond the ends.

        The path is walked once: as quick for thousands of places as for one.

        >>> polyline([Point(0, 0), Point(4, 0), Point(4, 3)]).stations([1, 5])
        [(Point(x=1.0, y=0.0), Point(x=1.0, y=0.0)), (Point(x=4.0, y=1.0), Point(x=0.0, y=1.0))]
        """
        lengths = [s.length for s in self.segments]
        found, index, walked = [], 0, 0.0
        for d in distances:
            while index < len(lengths) - 1 and d > walked + lengths[index]:
                walked += lengths[index]
                index += 1
            rest = _on_path(d - walked, lengths[index])
            found.append((self.segments[index].point_at(rest), self.segments[index].tangent_at(rest)))
        return found

    def sub(self, d0: float, d1: float) -> Path:
        """The open part from ``d0`` to ``d1`` mm; on a closed path ``d1`` < ``d0`` runs on through the start.

        GeometryError when a distance is not on the path, when both are the same, or an open path would run backwards.

        >>> polygon([Point(0, 0), Point(4, 0), Point(4, 3)]).sub(10, 2).length
        4.0
        """
        if abs(d1 - d0) <= COINCIDENT or (d1 < d0 and not self.closed):
            raise GeometryError(f"no part of the path runs from {d0:g} to {d1:g} mm")
        if d0 < d1:
            return Path(self._between(d0, d1), closed=False)
        length = self.length
        ahead = self._between(d0, length) if length - d0 > COINCIDENT else ()
        return Path(ahead + (self._between(0.0, d1) if d1 > COINCIDENT else ()), closed=False)

    def contains(self, p: Point) -> bool:
        """Whether ``p`` lies inside the closed path or on it (within 1e-9 mm); exact with arcs.

        >>> polygon([Point(0, 0), Point(4, 0), Point(4, 3)]).contains(Point(3, 1))
        True
        """
        self._refuse_open("inside")
        if self.distance_to(p) <= COINCIDENT:
            return True
        return round(math.fsum(_angle_seen(s, p) for s in self.segments) / (2 * math.pi)) != 0

    def distance_to(self, p: Point) -> float:
        """The distance from ``p`` to the nearest point of the path, mm.

        >>> polyline([Point(0, 0), Point(4, 0)]).distance_to(Point(2, 3))
        3.0
        """
        return min(s.distance_to(p) for s in self.segments)

    def nearest(self, p: Point) -> float:
        """How far along the path (mm) its point nearest to ``p`` lies, the first of several.

        >>> polyline([Point(0, 0), Point(4, 0), Point(4, 3)]).nearest(Point(6, 2))
        6.0
        """
        distances = [s.distance_to(p) for s in self.segments]
        index = distances.index(min(distances))
        return math.fsum(s.length for s in self.segments[:index]) + self.segments[index].nearest(p)

    def joined(self, other: Path) -> Path:
        """This open path and then ``other``; GeometryError when either is closed or they do not meet.

        >>> polyline([Point(0, 0), Point(4, 0)]).joined(polyline([Point(4, 0), Point(4, 3)])).length
        7.0
        """
        if self.closed or other.closed:
            raise GeometryError("a closed path has no end to join on")
        return Path(self.segments + other.segments, closed=False)

    def _place(self, d: float) -> tuple[int, float]:
        """The segment that holds ``d`` and how far along it ``d`` lies."""
        rest = _on_path(d, self.length)
        for index, segment in enumerate(self.segments[:-1]):
            length = segment.length
            if rest < length - COINCIDENT:
                return index, rest
            rest = max(rest - length, 0.0)
        return len(self.segments) - 1, min(rest, self.segments[-1].length)

    def _between(self, d0: float, d1: float) -> tuple[Segment, ...]:
        length = self.length
        d0, d1 = _on_path(d0, length), _on_path(d1, length)
        parts, passed = [], 0.0
        for segment in self.segments:
            own = segment.length
            low, high = max(d0 - passed, 0.0), min(d1 - passed, own)
            low, high = 0.0 if low <= COINCIDENT else low, own if own - high <= COINCIDENT else high
            if high - low > COINCIDENT:
                parts.append(segment if (low, high) == (0.0, own) else segment.sub(low, high))
            passed += own
        return tuple(parts)

    def _refuse_open(self, what: str) -> None:
        if not self.closed:
            raise GeometryError(f"an open path has no {what}")


def polygon(points: Iterable[Point]) -> Path:
    """The closed path of straight lines through the points; GeometryError for fewer than two or two in one place.

    >>> polygon([Point(0, 0), Point(4, 0), Point(4, 3)]).area
    6.0
    """
    known = tuple(points)
    return Path(tuple(Segment(p, q) for p, q in zip(known, known[1:] + known[:1], strict=True)), closed=True)


def polyline(points: Iterable[Point]) -> Path:
    """The open path of straight lines through the points; GeometryError for fewer than two or two in one place.

    >>> polyline([Point(0, 0), Point(4, 0)]).closed
    False
    """
    known = tuple(points)
    return Path(tuple(Segment(p, q) for p, q in pairwise(known)), closed=False)


def from_vertices(vertices: Sequence[tuple[float, float, float]], closed: bool) -> Path:
    """The path through (x, y, bulge) vertices, a bulge belonging to the segment that starts at its vertex.

    GeometryError when the last vertex of an open path has a bulge, which would belong to no segment.

    >>> from_vertices([(0, 0, 1), (10, 0, 1)], closed=True).area == math.pi * 25
    True
    """
    if vertices and not closed and vertices[-1][2] != 0:
        raise GeometryError("the last vertex of an open path starts no segment, so it has no bulge")
    points = [Point(x, y) for x, y, _ in vertices]
    ends = points[1:] + (points[:1] if closed else [])
    bulges = [bulge for _, _, bulge in vertices]
    return Path(tuple(Segment(p, q, b) for p, q, b in zip(points, ends, bulges, strict=False)), closed)


def _bulge_area(s: Segment) -> float:
    """The area between chord and arc, positive to the right of the chord."""
    if not s.is_arc:
        return 0.0
    b = s.bulge
    if abs(b) < FLAT:
        return b * s.chord**2 / 3 * (1 + b * b / 5)
    return s.radius**2 / 2 * (s.sweep - math.sin(s.sweep))


def _angle_seen(s: Segment, p: Point) -> float:
    """The signed angle through which a watcher at ``p`` turns to follow the segment."""
    a, b = s.start - p, s.end - p
    angle = math.atan2(a.cross(b), a.dot(b))
    # Between chord and arc the watcher turns the other way round than the chord alone says.
    if s.is_arc and angle * s.bulge < 0 and p.distance_to(s.centre) < s.radius:
        angle += math.copysign(2 * math.pi, s.bulge)
    return angle


def _on_path(d: float, length: float) -> float:
    """``d`` brought to the ends when rounding alone carried it beyond them."""
    if not -COINCIDENT <= d <= length + COINCIDENT:
        raise GeometryError(f"{d:g} mm is not on a path of {length:g} mm")
    return min(max(d, 0.0), length)
