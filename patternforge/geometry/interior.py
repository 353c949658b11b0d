"""The interior of a closed path, laid out for asking about many points."""

from __future__ import annotations

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path
from patternforge.geometry.point import COINCIDENT, Point

__all__ = ["Interior"]


class Interior:
    """The inside of a closed path that does not cross itself; built once, then asked point by point.

    A point is inside when it is inside the polygon of the chords, turned round once for every arc whose cap (between
    arc and chord) holds it. GeometryError for an open path.

    >>> from patternforge.geometry.path import polygon
    >>> Interior(polygon([Point(0, 0), Point(4, 0), Point(4, 3)])).holds(Point(3, 1))
    True
    """

    __slots__ = ("_arcs", "_bounds", "_chords", "_path")

    def __init__(self, path: Path) -> None:
        if not path.closed:
            raise GeometryError("an open path has no inside")
        self._path = path
        self._bounds = path.bounds
        self._chords = [(s.start.x, s.start.y, s.end.x, s.end.y) for s in path.segments]
        self._arcs = [
            (s.start.x, s.start.y, s.end.x, s.end.y, s.centre.x, s.centre.y, s.radius, s.bulge > 0)
            for s in path.segments
            if s.is_arc
        ]

    def holds(self, p: Point) -> bool:
        """Whether the point lies inside or on the path (within 1e-9 mm)."""
        b, x, y = self._bounds, p.x, p.y
        if not (b.x0 - COINCIDENT <= x <= b.x1 + COINCIDENT and b.y0 - COINCIDENT <= y <= b.y1 + COINCIDENT):
            return False
        if self._is_by_a_chord(x, y):
            return self._path.contains(p)
        return self._in_chords(x, y) ^ self._in_odd_caps(x, y)

    def _is_by_a_chord(self, x: float, y: float) -> bool:
        """Whether the point lies so near a chord that rounding could decide; such points are judged the slow way."""
        near = 1e-7
        for x0, y0, x1, y1 in self._chords:
            if min(x0, x1) - near <= x <= max(x0, x1) + near and min(y0, y1) - near <= y <= max(y0, y1) + near:
                dx, dy = x1 - x0, y1 - y0
                if abs(dx * (y - y0) - dy * (x - x0)) <= near * (abs(dx) + abs(dy)):
                    return True
        return any(
            abs((x - cx) ** 2 + (y - cy) ** 2 - r * r) <= 2 * near * r for _, _, _, _, cx, cy, r, _ in self._arcs
        )

    def _in_chords(self, x: float, y: float) -> bool:
        inside = False
        for x0, y0, x1, y1 in self._chords:
            if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
                inside = not inside
        return inside

    def _in_odd_caps(self, x: float, y: float) -> bool:
        odd = False
        for x0, y0, x1, y1, cx, cy, r, left_turn in self._arcs:
            if (x - cx) ** 2 + (y - cy) ** 2 < r * r:
                right_of_chord = (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) < 0
                if right_of_chord is left_turn:
                    odd = not odd
        return odd
