"""Circles reckoned from a chord, not from their centre, so that the flattest arc keeps its accuracy.

An arc that rises a hair over its chord has its centre metres away; taking one far distance from another would leave
rounding in place of the rise. The power of a point (its squared distance from the centre less the squared radius) can
be had without either.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternforge.geometry.point import COINCIDENT, Point

__all__ = ["Circle", "circle_meetings"]


@dataclass(frozen=True, slots=True)
class Circle:
    """The circle through the ends of a chord: its middle, its unit normal, how far along that the centre lies, mm.

    >>> Circle(seat=Point(0, 0), normal=Point(0, 1), rise=3, half_chord=4).radius
    5.0
    """

    seat: Point
    normal: Point
    rise: float
    half_chord: float

    @property
    def centre(self) -> Point:
        return self.seat + self.normal * self.rise

    @property
    def radius(self) -> float:
        return math.hypot(self.rise, self.half_chord)

    def power(self, p: Point) -> float:
        """The power of a point, mm2: 0 on the circle, negative inside.

        >>> Circle(Point(0, 0), Point(0, 1), 3, 4).power(Point(0, 9))
        11
        """
        v = p - self.seat
        return v.dot(v) - 2 * self.rise * v.dot(self.normal) - self.half_chord**2

    def distance_to(self, p: Point) -> float:
        """The distance from ``p`` to the circle line, mm.

        >>> Circle(Point(0, 0), Point(0, 1), 3, 4).distance_to(Point(0, 9))
        1.0
        """
        return abs(self.power(p)) / (p.distance_to(self.centre) + self.radius)

    def line_meetings(self, base: Point, u: Point, slack: float) -> list[Point]:
        """Where the line through ``base`` along the unit vector ``u`` meets the circle; once where it touches.

        It touches when the squared half chord it cuts off is within ``slack`` mm2 of none.

        >>> Circle(Point(0, 0), Point(0, 1), 3, 4).line_meetings(Point(9, 0), Point(1, 0), slack=1e-9)
        [Point(x=-4.0, y=0.0), Point(x=4.0, y=0.0)]
        """
        half = (base - self.seat).dot(u) - self.rise * self.normal.dot(u)
        power = self.power(base)
        cut = half * half - power
        if abs(cut) <= slack:
            return [base - u * half]
        if cut < 0:
            return []
        # Of two roots the far one is exact; the near one follows from their product, the power.
        far = -half - math.copysign(math.sqrt(cut), half)
        return [base + u * d for d in sorted((far, power / far))]


def circle_meetings(a: Circle, b: Circle) -> list[Point] | None:
    """Where two circles meet, once where they touch (within 1e-9 mm); None when they are one circle.

    >>> circle_meetings(Circle(Point(0, 0), Point(0, 1), 3, 4), Circle(Point(0, 0), Point(0, 1), -3, 4))
    [Point(x=-4.0, y=0.0), Point(x=4.0, y=0.0)]
    """
    small, large = (a, b) if a.radius <= b.radius else (b, a)
    between = large.seat - small.seat + large.normal * large.rise - small.normal * small.rise
    d = between.norm
    if d <= COINCIDENT:
        return None if large.radius - small.radius <= COINCIDENT else []
    # Points of equal power lie on a line square to that of the centres; both circles meet there or nowhere.
    u = between / d
    along = (large.power(small.seat) - small.power(small.seat)) / (2 * d)
    slack = 2 * COINCIDENT * small.radius * large.radius / d
    found = small.line_meetings(small.seat + u * along, u.perpendicular(), slack)
    # That line shifts by far more than the gap between circles that barely touch; the point is on the circle.
    return [small.centre + (p - small.centre).unit() * small.radius for p in found] if len(found) == 1 else found
