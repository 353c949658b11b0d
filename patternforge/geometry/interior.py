"""The interior of a closed path, laid out for asking about many points."""

from __future__ import annotations

import math

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

__all__ = ["Interior"]


class Interior:
    """The inside of a closed path that does not cross itself; built once, then asked point by point.

    A point is inside when it is inside the polygon of the chords, turned round once for every arc whose cap (between
    arc and chord) holds it. GeometryError for an open path.

    >>> from patternforge.geometry.path import polygon
    >>> Interior(polygon([Point(0, 0), Point(4, 0), Point(4, 3)])).holds(Point(3, 1))
    True
    """

    __slots__ = ("_arcs", "_bounds", "_chords", "_lines", "_path")

    def __init__(self, path: Path) -> None:
        if not path.closed:
            raise GeometryError("an open path has no inside")
        self._path = path
        bounds = path.bounds
        self._bounds = _boxed(bounds.x0, bounds.y0, bounds.x1, bounds.y1)
        self._chords = [_chord(s) for s in path.segments]
        self._lines = [
            (s.start.x, s.start.y, s.end.y, s.end.x - s.start.x, s.end.y - s.start.y)
            for s in path.segments
            if not s.is_arc
        ]
        self._arcs = [_arc(s) for s in path.segments if s.is_arc]

    def holds(self, p: Point) -> bool:
        """Whether the point lies inside or on the path (within 1e-9 mm)."""
        x, y = p.x, p.y
        low_x, low_y, high_x, high_y = self._bounds
        if not (low_x <= x <= high_x and low_y <= y <= high_y):
            return False
        inside = False
        for (left, low, right, high), x0, y0, y1, dx, dy, width in self._chords:
            if y < low or y > high:
                continue
            if left <= x <= right and -width <= dx * (y - y0) - dy * (x - x0) <= width:
                return self._path.contains(p)  # so near a chord that rounding could decide: judged slowly
            if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * dx / dy:
                inside = not inside
        for cx, cy, inner, outer, x0, y0, dx, dy, left_turn in self._arcs:
            square = (x - cx) * (x - cx) + (y - cy) * (y - cy)
            if square > outer:
                continue
            if square >= inner:
                return self._path.contains(p)
            if (dx * (y - y0) - dy * (x - x0) < 0) is left_turn:
                inside = not inside
        return inside

    def crossings(self, y: float) -> list[float]:
        """x of every place where the level line at ``y`` passes the outline, rising; ``y`` must miss every corner.

        >>> from patternforge.geometry.path import polygon
        >>> Interior(polygon([Point(0, 0), Point(4, 0), Point(4, 4)])).crossings(1.0)
        [1.0, 4.0]
        """
        places = [x0 + (y - y0) * dx / dy for x0, y0, y1, dx, dy in self._lines if (y0 > y) != (y1 > y)]
        for cx, cy, inner, _, x0, y0, dx, dy, left_turn in self._arcs:
            square = inner - (y - cy) * (y - cy)
            if square > 0:
                half = math.sqrt(square)
                places += [x for x in (cx - half, cx + half) if (dx * (y - y0) - dy * (x - x0) < 0) is left_turn]
        places.sort()
        return places


_NEAR = 1e-7

Box = tuple[float, float, float, float]


def _boxed(x0: float, y0: float, x1: float, y1: float) -> Box:
    return min(x0, x1) - _NEAR, min(y0, y1) - _NEAR, max(x0, x1) + _NEAR, max(y0, y1) + _NEAR


def _chord(s: Segment) -> tuple[Box, float, float, float, float, float, float]:
    """Box, start, height of the end, run and rise, and the cross product of a point a hair's breadth off.

    Start and rise do not add up to the end to the last bit, and chords must agree on where one ends and one begins.
    """
    a, b = s.start, s.end
    dx, dy = b.x - a.x, b.y - a.y
    return _boxed(a.x, a.y, b.x, b.y), a.x, a.y, b.y, dx, dy, _NEAR * (abs(dx) + abs(dy))


def _arc(s: Segment) -> tuple[float, float, float, float, float, float, float, float, bool]:
    """Centre, squared radii a hair's breadth inside and outside, chord, and whether it turns left."""
    c, r = s.centre, s.radius
    dx, dy = s.end.x - s.start.x, s.end.y - s.start.y
    return c.x, c.y, (r - _NEAR) ** 2, (r + _NEAR) ** 2, s.start.x, s.start.y, dx, dy, s.bulge > 0
