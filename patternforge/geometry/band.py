"""Strips of a thickness along a line or an arc, and arcs of a given length over a chord."""

from __future__ import annotations

import math

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

__all__ = ["arc_of_length", "band", "half_angle"]

_STRAIGHT = 1e-7  # mm by which an arc must be longer than its chord


def half_angle(chord: float, length: float) -> float:
    """Half the angle v of an arc of ``length`` over a ``chord``, radians, from sin v / v = chord / length.

    The arc must be no shorter than its chord. Found by bisection.

    >>> round(half_angle(2.0, math.pi), 6) == round(math.pi / 2, 6)
    True
    """
    if not 0 <= chord <= length:
        raise GeometryError(f"an arc of {length:g} mm does not reach over a chord of {chord:g} mm")
    low, high = 0.0, math.pi
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if math.sin(middle) * length > middle * chord else (low, middle)
    return low


def arc_of_length(start: Point, end: Point, length: float, side: float) -> Segment:
    """The arc of ``length`` mm between two points; a line where that is no more than their distance.

    It bows to the right of its chord where ``side`` is positive, else to the left.

    >>> round(arc_of_length(Point(0, 0), Point(2, 0), math.pi, 1.0).point_at(math.pi / 2).y, 9)
    -1.0
    """
    chord = start.distance_to(end)
    if length <= chord + _STRAIGHT:
        return Segment(start, end)
    return Segment(start, end, math.copysign(math.tan(half_angle(chord, length) / 2), side))


def band(fibre: Segment, right: float, left: float) -> Path:
    """The area up to ``right`` mm to the right and ``left`` mm to the left of a line or arc; counter-clockwise.

    GeometryError when nothing is left of it, as on the inner side of an arc of too small a radius.

    >>> band(Segment(Point(0, 0), Point(10, 0)), 1.0, 2.0).area
    30.0
    """
    out = [fibre.tangent_at(d).perpendicular() * -1.0 for d in (0.0, fibre.length)]
    inner = min(fibre.radius, math.inf) if fibre.is_arc else math.inf
    if right + left <= 0 or inner <= (left if fibre.bulge > 0 else right):
        raise GeometryError(f"a strip {right + left:g} mm thick cannot follow an arc of {inner:g} mm radius")
    corners = [
        (fibre.start + out[0] * right, fibre.bulge),
        (fibre.end + out[1] * right, 0.0),
        (fibre.end - out[1] * left, -fibre.bulge),
        (fibre.start - out[0] * left, 0.0),
    ]
    return from_vertices([(p.x, p.y, bulge) for p, bulge in corners], closed=True).ccw()
