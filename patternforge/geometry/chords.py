"""Straight lines drawn across an area: the stretches of them that lie inside it."""

from __future__ import annotations

from itertools import pairwise

from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, intersections

__all__ = ["chords"]

_LEAST = 1e-6  # mm; a line that only touches the rim has no stretch inside


def chords(path: Path, start: Point, end: Point) -> tuple[Segment, ...]:
    """The stretches of the straight line from ``start`` to ``end`` inside a closed path, in order.

    GeometryError for an open path. Stretches that run along the rim are left out.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> [(s.start, s.end) for s in chords(rounded_rectangle(0, 0, 9, 4, 0), Point(2, -1), Point(2, 9))]
    [(Point(x=2.0, y=0.0), Point(x=2.0, y=4.0))]
    """
    line = Segment(start, end)
    inside = Interior(path)
    meets = (line.nearest(p) for segment in path.segments for p in intersections(line, segment))

    def _is_within(middle: Point) -> bool:
        return inside.holds(middle) and path.distance_to(middle) > _LEAST

    places = sorted({0.0, line.length, *meets})
    stretches = [(a, b) for a, b in pairwise(places) if b - a > _LEAST and _is_within(line.point_at((a + b) / 2))]
    return tuple(line.sub(a, b) for a, b in _joined(stretches))


def _joined(stretches: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Stretches that follow one another without a gap as one."""
    whole: list[tuple[float, float]] = []
    for a, b in stretches:
        if whole and a - whole[-1][1] <= _LEAST:
            whole[-1] = (whole[-1][0], b)
        else:
            whole.append((a, b))
    return whole
