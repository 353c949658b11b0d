"""Shapes of what a file gives as vertices: paths without empty segments, full circles as rings, curves as chords."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, ceil, cos, hypot, isclose, pi, sin, sqrt, tan

from patternforge.audit.affine import Affine
from patternforge.audit.model import Ring, Shape
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import STRAIGHT, Segment

__all__ = ["Drawn", "Vertex", "arc_vertices", "bezier_points", "carried", "carried_ring", "drawn", "ellipse_points"]

_CHORD = 0.005  # mm; how far the chords of a curve stray from it
_EMPTY = 1e-6  # mm; a segment shorter than this has no length
_SAME = 1e-4  # mm; arcs whose centres and radii differ by less lie on one circle
_MOST = 2000  # chords of one curve

Vertex = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Drawn:
    """A shape, None if no segment of it has a length, and the places of those that have none."""

    shape: Shape | None
    empty: tuple[Point, ...] = ()


def drawn(vertices: Sequence[Vertex], closed: bool) -> Drawn:
    """The shape through (x, y, bulge) vertices, mm; a bulge belongs to the segment that starts at its vertex.

    >>> drawn([(0, 0, 0), (4, 0, 0), (4, 0, 0), (4, 3, 0)], closed=True).empty
    (Point(x=4, y=0),)
    >>> drawn([(0, 0, 1), (10, 0, 1)], closed=True).shape
    Ring(centre=Point(x=5.0, y=0.0), radius=5.0)
    """
    ends = [*vertices[1:], vertices[0]] if closed else vertices[1:]
    kept: list[Vertex] = []
    empty: list[Point] = []
    for vertex, after in zip(vertices, ends, strict=False):
        if max(abs(vertex[0] - after[0]), abs(vertex[1] - after[1])) <= _EMPTY:
            empty.append(Point(vertex[0], vertex[1]))
        else:
            kept.append(vertex)
    return Drawn(_shape(kept, vertices, closed), tuple(empty))


def _shape(kept: list[Vertex], vertices: Sequence[Vertex], closed: bool) -> Shape | None:
    if not kept:
        return None
    last = kept[0] if closed and len(kept) > 1 else vertices[-1]
    points = [Point(x, y) for x, y, _ in (*kept, last)]
    segments = tuple(Segment(p, q, v[2]) for p, q, v in zip(points, points[1:], kept, strict=False))
    path = Path(segments, closed and len(segments) > 1)
    return _ring(path) or path


def _ring(path: Path) -> Ring | None:
    """The circle that a closed path of arcs is; None if it is none."""
    if not path.closed or not all(segment.is_arc for segment in path.segments):
        return None
    if not isclose(abs(sum(segment.sweep for segment in path.segments)), 2 * pi, abs_tol=1e-4):
        return None
    first, *others = path.segments
    centre, radius = first.centre, first.radius
    alike = all(s.centre.distance_to(centre) <= _SAME and abs(s.radius - radius) <= _SAME for s in others)
    return Ring(centre, radius) if alike else None


def carried(vertices: Sequence[Vertex], closed: bool, affine: Affine) -> list[Vertex]:
    """The vertices where ``affine`` brings them; an arc that it makes an ellipse becomes chords.

    >>> from patternforge.audit.affine import scaling
    >>> carried([(0, 0, 1.0), (2, 0, 0)], False, scaling(-1, 1))
    [(0.0, 0.0, -1.0), (-2.0, 0.0, 0)]
    """
    if not affine.is_even and any(vertex[2] for vertex in vertices):
        vertices = list(_with_chords(vertices, closed, max(affine.factors)))
    turn = -1 if affine.is_mirror else 1
    a, b, c, d, e, f = affine.a, affine.b, affine.c, affine.d, affine.e, affine.f
    return [(a * x + c * y + e, b * x + d * y + f, turn * bulge if bulge else 0) for x, y, bulge in vertices]


def _with_chords(vertices: Sequence[Vertex], closed: bool, factor: float) -> Iterator[Vertex]:
    following = [*vertices[1:], vertices[0] if closed else None]
    for (x, y, bulge), after in zip(vertices, following, strict=True):
        yield x, y, 0.0
        if after is None or abs(bulge) <= STRAIGHT or hypot(after[0] - x, after[1] - y) <= _EMPTY:
            continue
        arc = Segment(Point(x, y), Point(after[0], after[1]), bulge)
        count = _count(arc.radius * factor, arc.sweep)
        yield from ((p.x, p.y, 0.0) for p in (arc.point_at(arc.length * i / count) for i in range(1, count)))


def carried_ring(centre: Point, radius: float, affine: Affine) -> Shape:
    """A circle where ``affine`` brings it: a ring, or the chords of an ellipse."""
    if affine.is_even:
        return Ring(affine.point(centre), radius * affine.factor)
    across, up = affine.vector(Point(radius, 0.0)), affine.vector(Point(0.0, radius))
    points = ellipse_points(affine.point(centre), across, up, 0.0, 2 * pi)[:-1]
    return Path(tuple(Segment(p, q) for p, q in zip(points, [*points[1:], points[0]], strict=True)), closed=True)


def arc_vertices(centre: Point, radius: float, start: float, sweep: float) -> list[Vertex]:
    """An arc from the angle ``start`` through ``sweep`` (radians, under a full turn) as two vertices.

    >>> [round(number, 6) for vertex in arc_vertices(Point(0, 0), 5, 0, pi) for number in vertex]
    [5.0, 0.0, 1.0, -5.0, 0.0, 0]
    """
    ends = [centre + Point(cos(angle), sin(angle)) * radius for angle in (start, start + sweep)]
    return [(ends[0].x, ends[0].y, tan(sweep / 4)), (ends[1].x, ends[1].y, 0)]


def bezier_points(controls: Sequence[Point], factor: float = 1.0) -> list[Point]:
    """Points along a Bezier curve, its start left out, whose chords stray 0.005 mm at most once it is drawn.

    The count follows from the largest second difference of the control points, which bounds the second derivative
    (G. Farin, Curves and Surfaces for CAGD: distance of a curve from its chord). ``factor``: mm to one unit.
    """
    degree = len(controls) - 1
    bends = [a - 2 * b + c for a, b, c in zip(controls, controls[1:], controls[2:], strict=False)]
    steep = degree * (degree - 1) * max(bend.norm for bend in bends) * factor
    count = min(max(ceil(sqrt(steep / (8 * _CHORD))), 1), _MOST)
    return [*(_bezier_at(controls, i / count) for i in range(1, count)), controls[-1]]


def _bezier_at(controls: Sequence[Point], t: float) -> Point:
    points = list(controls)
    while len(points) > 1:
        points = [p + (q - p) * t for p, q in pairwise(points)]
    return points[0]


def ellipse_points(
    centre: Point, major: Point, minor: Point, start: float, end: float, factor: float = 1.0
) -> list[Point]:
    """Points from parameter ``start`` to ``end`` (radians) of the ellipse with these half axes, ends included."""
    count = max(_count(max(major.norm, minor.norm) * factor, end - start), 4)
    turns = (start + (end - start) * i / count for i in range(count + 1))
    return [centre + major * cos(turn) + minor * sin(turn) for turn in turns]


def _count(radius: float, sweep: float) -> int:
    """How many chords of an arc stray no further than is allowed; a chord of half angle h rises r (1 - cos h)."""
    half = 2 * atan2(sqrt(_CHORD), sqrt(max(2 * radius - _CHORD, _CHORD)))
    return min(max(ceil(abs(sweep) / (2 * half)), 1), _MOST)
