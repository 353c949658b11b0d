"""Relief holes: corners that turn into the area, cut out round so that they do not tear."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

__all__ = ["reentrant", "relieved"]

_AT = 1e-7  # mm within which a vertex stands at a place


@dataclass(frozen=True, slots=True)
class _Corner:
    """How much a hole takes of both straight sides of its corner, mm, and the bulge of its rim; no hole: 0."""

    off: float = 0.0
    bulge: float = 0.0


def reentrant(before: Point, after: Point) -> float:
    """The angle of the area at a vertex of a counter-clockwise outline, radians: above pi where it turns in.

    ``before`` and ``after`` are the directions of travel that meet there.

    >>> round(math.degrees(reentrant(Point(1, 0), Point(0, -1))))
    270
    """
    return math.pi - math.atan2(before.cross(after), before.dot(after))


def relieved(path: Path, places: Sequence[Point], radius: float) -> Path:
    """The closed counter-clockwise path with a hole of ``radius`` mm round each of its vertices at ``places``.

    Only what lies inside of the path is cut out: the rim runs from one side of the corner round to the other. For
    radius 0 the path itself. GeometryError when a side is an arc, too short, or a place is no vertex.

    >>> from patternforge.geometry.path import polygon
    >>> step = [Point(0, 0), Point(9, 0), Point(9, 9), Point(4, 9), Point(4, 4), Point(0, 4)]
    >>> round(polygon(step).area - relieved(polygon(step), [Point(4, 4)], 1).area, 6) == round(0.75 * math.pi, 6)
    True
    """
    if radius == 0 or not places:
        return path
    corners = [_Corner()] * len(path.segments)
    for place in places:
        at = next((i for i, s in enumerate(path.segments) if s.start.distance_to(place) <= _AT), None)
        if at is None:
            raise GeometryError(f"no corner stands at ({place.x:.2f}, {place.y:.2f}) to be relieved")
        corners[at] = _hole(path.segments[at - 1], path.segments[at], radius)
    return _cut(path, corners)


def _hole(before: Segment, after: Segment, radius: float) -> _Corner:
    if before.is_arc or after.is_arc:
        raise GeometryError(f"an arc meets the corner at ({after.start.x:.2f}, {after.start.y:.2f})")
    angle = reentrant(before.tangent_at(0.0), after.tangent_at(0.0))
    return _Corner(radius, -math.tan(angle / 4))


def _cut(path: Path, corners: Sequence[_Corner]) -> Path:
    follow = [*corners[1:], corners[0]]
    lines = [_shortened(s, a.off, b.off) for s, a, b in zip(path.segments, corners, follow, strict=True)]
    parts: list[Segment] = []
    for line, corner, after in zip(lines, follow, [*lines[1:], lines[0]], strict=True):
        parts.append(line)
        if corner.off:
            parts.append(Segment(line.end, after.start, corner.bulge))
    return Path(tuple(parts), closed=True)


def _shortened(segment: Segment, at_start: float, at_end: float) -> Segment:
    if not at_start and not at_end:
        return segment
    if at_start + at_end > segment.length - _AT:
        at = segment.start
        raise GeometryError(
            f"relief holes take {at_start + at_end:.2f} mm from a side of {segment.length:.2f} mm"
            f" at ({at.x:.2f}, {at.y:.2f}); use a smaller one"
        )
    return segment.sub(at_start, segment.length - at_end)
