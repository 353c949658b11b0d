"""A straight line or a circular arc between two points, and where two of them meet.

The arc is held as DXF holds it, by its bulge: the tangent of a quarter of the swept angle, positive when the arc runs
counter-clockwise (1 is a half circle). Ends are therefore exact, whatever the arc does between them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternforge.errors import GeometryError
from patternforge.geometry.circle import Circle, circle_meetings
from patternforge.geometry.point import COINCIDENT, Bounds, Point, bounds_of

__all__ = ["Segment", "arc_segment", "intersections"]

STRAIGHT = 1e-9  # a bulge below this rises less than half a millionth of a millimetre over a metre


@dataclass(frozen=True, slots=True)
class Segment:
    """A line, or an arc of ``bulge`` = tan(sweep / 4), from ``start`` to ``end``; mm.

    GeometryError when the ends are one point (nearer than 1e-9 mm) or a number is not finite; a full
    circle takes two.

    >>> Segment(Point(0, 0), Point(10, 0), 1.0).radius
    5.0
    """

    start: Point
    end: Point
    bulge: float = 0.0

    def __post_init__(self) -> None:
        if not COINCIDENT <= self.chord < math.inf:
            raise GeometryError(f"a segment from {_shown(self.start)} to {_shown(self.end)} has no lawful length")
        if not math.isfinite(self.bulge):
            raise GeometryError(f"{self.bulge} is not a bulge")

    @property
    def is_arc(self) -> bool:
        return abs(self.bulge) > STRAIGHT

    @property
    def chord(self) -> float:
        """The distance from start to end, mm."""
        return math.hypot(self.end.x - self.start.x, self.end.y - self.start.y)

    @property
    def sweep(self) -> float:
        """The angle the arc turns through, radians, positive counter-clockwise; 0 for a line."""
        return 4 * math.atan(self.bulge) if self.is_arc else 0.0

    @property
    def radius(self) -> float:
        """The radius in mm; infinite for a line."""
        b = abs(self.bulge)
        return self.chord * (1 + b * b) / (4 * b) if self.is_arc else math.inf

    @property
    def centre(self) -> Point:
        """The centre of the arc; GeometryError for a line."""
        if not self.is_arc:
            raise GeometryError("a line has no centre")
        rise = (1 - self.bulge**2) / (4 * self.bulge)
        s, e = self.start, self.end
        return Point((s.x + e.x) / 2 - (e.y - s.y) * rise, (s.y + e.y) / 2 + (e.x - s.x) * rise)

    @property
    def length(self) -> float:
        """The length along the segment, mm."""
        b = self.bulge
        return self.chord * (1 + b * b) * math.atan(b) / b if self.is_arc else self.chord

    @property
    def bounds(self) -> Bounds:
        """The smallest upright box round the segment."""
        if not self.is_arc:
            return bounds_of((self.start, self.end))
        c, r = self.centre, self.radius
        extremes = (Point(c.x + r, c.y), Point(c.x, c.y + r), Point(c.x - r, c.y), Point(c.x, c.y - r))
        # A point of the circle is on the arc when it lies on the arc's side of the chord. An end that is an extreme
        # stands for itself: the one computed differs from it by rounding, which puts it on neither side.
        along, slack = self.end - self.start, COINCIDENT * self.chord
        side = -math.copysign(1.0, self.bulge)
        passed = (p for p in extremes if side * along.cross(p - self.start) > slack)
        return bounds_of((self.start, self.end, *passed))

    def point_at(self, d: float) -> Point:
        """The point at ``d`` mm from the start, 0 to length; GeometryError beyond either.

        >>> Segment(Point(0, 0), Point(10, 0)).point_at(4)
        Point(x=4.0, y=0.0)
        """
        length = self.length
        d = _lawful(d, length)
        share = d / length
        if not self.is_arc:
            return Point(
                self.start.x + (self.end.x - self.start.x) * share, self.start.y + (self.end.y - self.start.y) * share
            )
        # Along the chord of the part travelled: stays exact for flat arcs, whose centre is far away.
        half = self.sweep * share / 2
        along = (self.end - self.start).rotated(half - self.sweep / 2)
        travelled = d * math.sin(half) / half if half else 0.0
        return self.start + along * (travelled / self.chord)

    def tangent_at(self, d: float) -> Point:
        """The unit vector of travel at ``d`` mm from the start; GeometryError beyond 0 to length.

        >>> Segment(Point(0, 0), Point(0, 7)).tangent_at(7)
        Point(x=0.0, y=1.0)
        """
        length = self.length
        d = _lawful(d, length)
        along = (self.end - self.start) / self.chord
        return along.rotated(self.sweep * (d / length - 0.5)) if self.is_arc else along

    def reversed(self) -> Segment:
        """The same segment travelled the other way."""
        return Segment(self.end, self.start, -self.bulge)

    def sub(self, d0: float, d1: float) -> Segment:
        """The part from ``d0`` to ``d1`` mm from the start; GeometryError unless 0 <= d0 < d1 <= length.

        >>> Segment(Point(0, 0), Point(10, 0)).sub(2, 5)
        Segment(start=Point(x=2.0, y=0.0), end=Point(x=5.0, y=0.0), bulge=0.0)
        """
        length = self.length
        d0, d1 = _lawful(d0, length), _lawful(d1, length)
        start = self.start if d0 == 0 else self.point_at(d0)
        end = self.end if d1 == length else self.point_at(d1)
        if d1 <= d0:
            raise GeometryError(f"no part runs from {d0:g} to {d1:g} mm")
        return Segment(start, end, math.tan(self.sweep * ((d1 - d0) / length) / 4) if self.is_arc else 0.0)

    def nearest(self, p: Point) -> float:
        """How far from the start (mm) the point of the segment nearest to ``p`` lies.

        >>> Segment(Point(0, 0), Point(10, 0)).nearest(Point(3, 5))
        3.0
        """
        if not self.is_arc:
            along = self.end - self.start
            return min(max((p - self.start).dot(along) / self.chord, 0.0), self.chord)
        off, half = _off_middle(self, _circle(self), p), abs(self.sweep) / 2
        if abs(off) > half:
            return 0.0 if p.distance_to(self.start) <= p.distance_to(self.end) else self.length
        return (half + off) / (2 * half) * self.length

    def distance_to(self, p: Point) -> float:
        """The distance from ``p`` to the nearest point of the segment, mm.

        >>> Segment(Point(0, 0), Point(10, 0)).distance_to(Point(13, 4))
        5.0
        """
        if self.is_arc:
            circle = _circle(self)
            if abs(_off_middle(self, circle, p)) <= abs(self.sweep) / 2:
                return circle.distance_to(p)
            return min(p.distance_to(self.start), p.distance_to(self.end))
        dx, dy = self.end.x - self.start.x, self.end.y - self.start.y
        px, py = p.x - self.start.x, p.y - self.start.y
        share = min(max((px * dx + py * dy) / (dx * dx + dy * dy), 0.0), 1.0)
        return math.hypot(px - share * dx, py - share * dy)


def arc_segment(centre: Point, radius: float, start_angle: float, end_angle: float) -> Segment:
    """The arc of ``radius`` mm round ``centre`` from one angle to the other, in radians.

    Counter-clockwise when ``end_angle`` is the greater, clockwise when it is the less; GeometryError when the radius
    is not positive or the turn is not under a full circle.

    >>> round(arc_segment(Point(0, 0), 5, 0, math.pi / 2).bulge, 6)
    0.414214
    """
    sweep = end_angle - start_angle
    if not radius > 0 or not 0 < abs(sweep) < 2 * math.pi:
        raise GeometryError(f"no arc of radius {radius:g} mm turns through {math.degrees(sweep):g} degrees")
    start, end = (centre + Point(math.cos(a), math.sin(a)) * radius for a in (start_angle, end_angle))
    return Segment(start, end, math.tan(sweep / 4))


def intersections(a: Segment, b: Segment) -> tuple[Point, ...]:
    """The points both segments share (within 1e-9 mm), each once; where they run together, the ends of that run.

    >>> intersections(Segment(Point(0, 0), Point(4, 4)), Segment(Point(0, 4), Point(4, 0)))
    (Point(x=2.0, y=2.0),)
    """
    if a.is_arc and b.is_arc:
        found = circle_meetings(_circle(a), _circle(b))
    elif a.is_arc or b.is_arc:
        arc, line = (a, b) if a.is_arc else (b, a)
        along = (line.end - line.start) / line.chord
        found = _circle(arc).line_meetings(line.start, along, slack=2 * COINCIDENT * arc.radius)
    else:
        found = _lines_meet(a, b)
    if found is None:
        return _distinct(
            [p for p in (a.start, a.end) if b.distance_to(p) <= COINCIDENT]
            + [p for p in (b.start, b.end) if a.distance_to(p) <= COINCIDENT]
        )
    return _distinct([p for p in found if _reaches(a, p) and _reaches(b, p)])


def _lines_meet(a: Segment, b: Segment) -> list[Point] | None:
    """The crossing of both lines drawn on; None when one runs along the other's direction as far as it goes."""
    u, v = a.end - a.start, b.end - b.start
    cross = u.cross(v)
    if abs(cross) <= COINCIDENT * max(a.chord, b.chord):
        return None
    return [a.start + u * ((b.start - a.start).cross(v) / cross)]


def _circle(arc: Segment) -> Circle:
    chord, side = arc.chord, math.copysign(1.0, arc.bulge)
    normal = (arc.end - arc.start).perpendicular() * (side / chord)
    return Circle((arc.start + arc.end) / 2, normal, chord * (1 - arc.bulge**2) / (4 * abs(arc.bulge)), chord / 2)


def _faces_arc(arc: Segment, p: Point) -> bool:
    """Whether the ray from the centre through ``p`` meets the arc."""
    return abs(_off_middle(arc, _circle(arc), p)) <= abs(arc.sweep) / 2


def _off_middle(arc: Segment, circle: Circle, p: Point) -> float:
    """The angle at the centre from the middle of the arc to ``p``, radians, positive towards the end."""
    v = p - circle.seat
    return math.atan2(v.dot(arc.end - arc.start) / arc.chord, circle.rise - v.dot(circle.normal))


def _reaches(segment: Segment, p: Point) -> bool:
    """Whether ``p``, known to lie on the line or circle drawn on, lies on the segment itself."""
    s, e = segment.start, segment.end
    if p.distance_to(s) <= COINCIDENT or p.distance_to(e) <= COINCIDENT:
        return True
    if segment.is_arc:
        return _faces_arc(segment, p)
    return 0 <= (p - s).dot(e - s) <= segment.chord**2


def _distinct(points: list[Point]) -> tuple[Point, ...]:
    kept: list[Point] = []
    for p in points:
        if all(p.distance_to(q) > COINCIDENT for q in kept):
            kept.append(p)
    return tuple(kept)


def _lawful(d: float, length: float) -> float:
    """``d`` brought to the ends when rounding alone carried it beyond them."""
    if not -COINCIDENT <= d <= length + COINCIDENT:
        raise GeometryError(f"{d:g} mm is not on a segment of {length:g} mm")
    return min(max(d, 0.0), length)


def _shown(p: Point) -> str:
    return f"({p.x:g}, {p.y:g})"
