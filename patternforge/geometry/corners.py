"""Rounded corners: tangent arcs in place of the points where straight lines meet."""

from __future__ import annotations

import math
from collections.abc import Sequence

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import COINCIDENT, Point
from patternforge.geometry.segment import Segment

__all__ = ["filleted", "rounded_rectangle"]

Cut = tuple[float, float]  # how much a fillet takes off both its sides (mm), and its bulge


def filleted(path: Path, radii: float | Sequence[float]) -> Path:
    """The closed path with tangent arcs of ``radii`` mm in its corners, starting after its first corner's.

    One number rounds every corner between two straight segments; a sequence gives one radius for each vertex, 0 to
    leave it. GeometryError when a radius does not fit, is negative, or is asked where an arc meets or nothing turns.

    >>> square = polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)])
    >>> round(filleted(square, 2).area, 6) == round(100 - (4 - math.pi) * 4, 6)
    True
    """
    if not path.closed:
        raise GeometryError("only a closed path is filleted all round")
    cuts = _cuts(path, radii)
    follow = [*cuts[1:], cuts[0]]
    lines = [_trimmed(s, a[0], b[0]) for s, a, b in zip(path.segments, cuts, follow, strict=True)]
    parts: list[Segment] = []
    for (start, end), s, (_, bulge), after in zip(lines, path.segments, follow, [*lines[1:], lines[0]], strict=True):
        if start.distance_to(end) > COINCIDENT:
            parts.append(Segment(start, end, s.bulge))
        if bulge:
            parts.append(Segment(end, after[0], bulge))
    return Path(tuple(parts), closed=True)


def rounded_rectangle(x0: float, y0: float, x1: float, y1: float, radius: float) -> Path:
    """The counter-clockwise rectangle from its lower left to its upper right corner, corners of ``radius`` mm.

    Four lines and four arcs, the lower line first, going right; no arcs for radius 0, no line where two arcs meet.
    GeometryError when a side is not positive or the radius does not fit.

    >>> len(rounded_rectangle(0, 0, 90, 60, 5).segments)
    8
    """
    if not (x1 - x0 > COINCIDENT and y1 - y0 > COINCIDENT):
        raise GeometryError(f"a rectangle of {x1 - x0:g} x {y1 - y0:g} mm has no inside")
    return filleted(polygon([Point(x0, y0), Point(x1, y0), Point(x1, y1), Point(x0, y1)]), radius)


def _cuts(path: Path, radii: float | Sequence[float]) -> list[Cut]:
    count = len(path.segments)
    before = [path.segments[-1], *path.segments[:-1]]
    if isinstance(radii, Sequence):
        if len(radii) != count:
            raise GeometryError(f"{len(radii)} radii given for {count} corners")
        return [_cut(a, b, r) for a, b, r in zip(before, path.segments, radii, strict=True)]
    return [_cut(a, b, radii if _is_corner(a, b) else 0.0) for a, b in zip(before, path.segments, strict=True)]


def _is_corner(a: Segment, b: Segment) -> bool:
    """Whether two straight lines meet at an angle; a spike that turns right back has no corner to round."""
    if a.is_arc or b.is_arc:
        return False
    return abs(a.tangent_at(a.length).cross(b.tangent_at(0.0))) > COINCIDENT


def _cut(a: Segment, b: Segment, radius: float) -> Cut:
    if not 0 <= radius < math.inf:
        raise GeometryError(f"{radius:g} mm is not a corner radius")
    if radius == 0:
        return 0.0, 0.0
    if not _is_corner(a, b):
        raise GeometryError(f"there is no corner of straight lines to round at ({b.start.x:g}, {b.start.y:g})")
    u, v = a.tangent_at(a.length), b.tangent_at(0.0)
    half = u.cross(v) / (1 + u.dot(v))  # tangent of half the turn, exactly 1 for a right angle
    cut = radius * abs(half)
    # A fillet too small to have two ends leaves the corner as it is.
    return (cut, math.tan(math.atan(half) / 2)) if cut > 2 * COINCIDENT else (0.0, 0.0)


def _trimmed(s: Segment, at_start: float, at_end: float) -> tuple[Point, Point]:
    """What two fillets leave of a segment: both its ends, in one place when the fillets just touch."""
    rest = s.length - at_start - at_end
    if rest < -COINCIDENT:
        raise GeometryError(
            f"corner radii take {at_start + at_end:g} mm from a side of {s.length:g} mm"
            f" at ({s.start.x:g}, {s.start.y:g}); use a smaller radius"
        )
    start = s.point_at(at_start) if at_start else s.start
    return start, s.point_at(s.length - at_end) if at_end else s.end
