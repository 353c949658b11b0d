"""Rounded corners: tangent arcs in place of the points where lines and arcs meet.

The centre of a tangent arc lies its radius off both sides, so it is where the two sides, moved in parallel by that
much, meet. Between two straight lines the cut follows from the angle alone, exactly for a right one.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import COINCIDENT, Point
from patternforge.geometry.segment import Segment, intersections

__all__ = ["filleted", "rounded_rectangle"]

Cut = tuple[float, float, float]  # how much a fillet takes off the side before it and the one after (mm), its bulge
Rest = tuple[Point, Point, float]  # what is left of a side between its fillets: both ends, its bulge
_NONE: Cut = (0.0, 0.0, 0.0)


def filleted(path: Path, radii: float | Sequence[float]) -> Path:
    """The closed path with tangent arcs of ``radii`` mm in its corners, starting after its first corner's.

    One number rounds every corner between two straight segments; a sequence gives one radius for each vertex, lines
    or arcs meeting there, 0 to leave it. GeometryError when a radius does not fit, is negative, or is asked where
    nothing turns.

    >>> square = polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)])
    >>> round(filleted(square, 2).area, 6) == round(100 - (4 - math.pi) * 4, 6)
    True
    """
    if not path.closed:
        raise GeometryError("only a closed path is filleted all round")
    cuts = _cuts(path, radii)
    follow = [*cuts[1:], cuts[0]]
    sides = [_rest(s, cut[1], after[0]) for s, cut, after in zip(path.segments, cuts, follow, strict=True)]
    parts: list[Segment] = []
    for (start, end, bulge), (_, _, turn), after in zip(sides, follow, [*sides[1:], sides[0]], strict=True):
        if start.distance_to(end) > COINCIDENT:
            parts.append(Segment(start, end, bulge))
        if turn:
            parts.append(Segment(end, after[0], turn))
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
    straight = [not (a.is_arc or b.is_arc) and _is_corner(a, b) for a, b in zip(before, path.segments, strict=True)]
    return [
        _cut(a, b, radii if rounds else 0.0) for a, b, rounds in zip(before, path.segments, straight, strict=True)
    ]


def _is_corner(a: Segment, b: Segment) -> bool:
    """Whether two sides meet at an angle; a spike that turns right back has no corner to round."""
    return abs(a.tangent_at(a.length).cross(b.tangent_at(0.0))) > COINCIDENT


def _cut(a: Segment, b: Segment, radius: float) -> Cut:
    if not 0 <= radius < math.inf:
        raise GeometryError(f"{radius:g} mm is not a corner radius")
    if radius == 0:
        return _NONE
    if not _is_corner(a, b):
        raise GeometryError(f"there is no corner to round at ({b.start.x:g}, {b.start.y:g})")
    cut = _between_sides(a, b, radius) if a.is_arc or b.is_arc else _between_lines(a, b, radius)
    # A fillet too small to have two ends leaves the corner as it is.
    return cut if min(cut[0], cut[1]) > 2 * COINCIDENT else _NONE


def _between_lines(a: Segment, b: Segment, radius: float) -> Cut:
    u, v = a.tangent_at(a.length), b.tangent_at(0.0)
    half = u.cross(v) / (1 + u.dot(v))  # tangent of half the turn, exactly 1 for a right angle
    cut = radius * abs(half)
    return cut, cut, math.tan(math.atan(half) / 2)


def _between_sides(a: Segment, b: Segment, radius: float) -> Cut:
    """The tangent arc nearest to the corner, on the side the corner turns to."""
    way = math.copysign(1.0, a.tangent_at(a.length).cross(b.tangent_at(0.0)))
    moved = [_moved(side, way * radius) for side in (a, b)]
    centres = intersections(moved[0], moved[1]) if moved[0] and moved[1] else ()
    feet = [(a.length - a.nearest(c), b.nearest(c)) for c in centres]
    if not feet:
        raise GeometryError(
            f"no arc of {radius:g} mm touches both sides of the corner at ({b.start.x:g}, {b.start.y:g});"
            " use a smaller radius"
        )
    off, on = min(feet, key=lambda cuts: cuts[0] + cuts[1])
    u, v = a.tangent_at(a.length - off), b.tangent_at(on)
    turn = math.atan2(u.cross(v), u.dot(v))
    return off, on, math.tan((turn if turn * way > 0 else turn + way * 2 * math.pi) / 4)


def _moved(side: Segment, by: float) -> Segment | None:
    """A side moved to its left by that many mm; None for an arc moved to its centre or beyond."""
    if side.is_arc and side.bulge * by > 0 and abs(by) >= side.radius - COINCIDENT:
        return None
    start, end = (side.tangent_at(d).perpendicular() * by for d in (0.0, side.length))
    return Segment(side.start + start, side.end + end, side.bulge)


def _rest(s: Segment, at_start: float, at_end: float) -> Rest:
    """What two fillets leave of a segment: its ends are one point when the fillets just touch."""
    rest = s.length - at_start - at_end
    if rest < -COINCIDENT:
        raise GeometryError(
            f"corner radii take {at_start + at_end:g} mm from a side of {s.length:g} mm"
            f" at ({s.start.x:g}, {s.start.y:g}); use a smaller radius"
        )
    start = s.point_at(at_start) if at_start else s.start
    end = s.point_at(s.length - at_end) if at_end else s.end
    return start, end, math.tan(s.sweep * (rest / s.length) / 4) if s.is_arc and (at_start or at_end) else s.bulge
