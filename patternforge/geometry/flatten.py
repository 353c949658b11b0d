"""Arcs as runs of short lines, for what knows no arcs."""

from __future__ import annotations

import math

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

__all__ = ["flattened"]


def flattened(path: Path, tolerance: float) -> tuple[Point, ...]:
    """Points on the path whose straight chords lie no further than ``tolerance`` mm from it, vertices among them.

    A closed path's first point is not given again at the end. GeometryError when the tolerance is not positive.

    >>> from patternforge.geometry.path import from_vertices
    >>> len(flattened(from_vertices([(0, 0, 1), (10, 0, 1)], closed=True), tolerance=0.01))
    50
    """
    if not 0 < tolerance < math.inf:
        raise GeometryError(f"{tolerance:g} mm is not a tolerance")
    points = [p for s in path.segments for p in _points(s, tolerance)]
    return tuple(points) if path.closed else (*points, path.end)


def _points(s: Segment, tolerance: float) -> list[Point]:
    """The points of a segment but for its end."""
    if not s.is_arc:
        return [s.start]
    # A chord of half angle a rises r (1 - cos a) below its arc; written with sines it holds for the flattest arc.
    half = 2 * math.asin(min(math.sqrt(tolerance / (2 * s.radius)), 1.0))
    count = max(math.ceil(abs(s.sweep) / (2 * half)), 1)
    length = s.length
    return [s.start, *(s.point_at(length * i / count) for i in range(1, count))]
