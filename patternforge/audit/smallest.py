"""The smallest sizes in a cutting file: hole, radius, slot, and what is left between two cuts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, combinations

from patternforge.audit.model import Odd, Ring
from patternforge.audit.scene import Scene, Stroke
from patternforge.geometry.nearby import near_pairs
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.together import Nearness, nearness

__all__ = ["Measure", "holes", "necks", "radii", "slots", "smallest_gaps"]

_REACHES = (1.0, 3.0, 9.0, 27.0)  # mm; gaps are looked for in steps, the near ones first
_FACING = -0.7  # cosine between two sides that face each other
_SQUARE = 0.3  # cosine between a side and the way across
_ROUND = 1.4  # way along the edge over the way across, from which on a place is narrow and no corner
_MANY = 400  # lines and arcs; what has more is no outline drawn for cutting
_TOUCHING = 1e-3  # mm; what is nearer touches and is told as that


@dataclass(frozen=True, slots=True)
class Measure:
    """A size in mm, where it is, and on what."""

    value: float
    at: Point
    on: str


def holes(scene: Scene) -> list[Measure]:
    """What every closed contour inside another measures across, the smallest first."""
    inside = (run for run, parent in zip(scene.runs, scene.parents, strict=True) if parent is not None and run.closed)
    found = [Measure(_across(run.shape), run.start, run.name) for run in inside]
    return sorted(found, key=lambda each: each.value)


def _across(shape: Path | Ring) -> float:
    if isinstance(shape, Ring):
        return 2 * shape.radius
    box = shape.bounds
    return min(box.width, box.height)


def radii(scene: Scene) -> list[Measure]:
    """The radius of every arc that is no full circle, the smallest first."""
    found = [
        Measure(line.radius, line.point_at(line.length / 2), scene.cuts[stroke.cut].name)
        for stroke in scene.strokes
        for line in [stroke.line]
        if isinstance(line, Segment) and line.is_arc
    ]
    return sorted(found, key=lambda each: each.value)


def smallest_gaps(scene: Scene, limit: float = 0.0) -> list[Measure]:
    """What is left between neighbouring cuts: all gaps below ``limit`` mm, or else the smallest one there is."""
    strokes = [stroke for stroke in scene.strokes if stroke.run is not None]
    boxes = [stroke.box for stroke in strokes]
    for reach in (limit, *(reach for reach in _REACHES if reach > limit)):
        pairs = ((strokes[i], strokes[j]) for i, j in near_pairs(boxes, reach))
        found = _by_runs(scene, pairs)
        within = sorted((each for each in found if each.value <= reach), key=lambda each: each.value)
        below = [each for each in within if each.value < limit]
        if below or within:
            return below or within[:1]
    return []


def _by_runs(scene: Scene, pairs: Iterable[tuple[Stroke, Stroke]]) -> list[Measure]:
    """The nearest places of each two runs that do not touch."""
    nearest: dict[tuple[int, int], Measure] = {}
    for a, b in pairs:
        if a.run is None or b.run is None or a.run == b.run:
            continue
        found = _nearness(a.line, b.line)
        key = (min(a.run, b.run), max(a.run, b.run))
        if key not in nearest or found.distance < nearest[key].value:
            on = f"{scene.cuts[a.cut].name} and {scene.cuts[b.cut].name}"
            nearest[key] = Measure(found.distance, found.middle, on)
    return [each for each in nearest.values() if each.value > _TOUCHING]


def _nearness(a: Segment | Ring, b: Segment | Ring) -> Nearness:
    if isinstance(a, Segment) and isinstance(b, Segment):
        return nearness(a, b)
    if isinstance(a, Segment):
        a, b = b, a
    assert isinstance(a, Ring)
    if isinstance(b, Ring):
        return _between_rings(a, b)
    places = [b.point_at(b.nearest(a.centre)), b.start, b.end]
    return min((_to_ring(a, p) for p in places), key=lambda each: each.distance)


def _between_rings(a: Ring, b: Ring) -> Nearness:
    apart = a.centre.distance_to(b.centre)
    if apart <= abs(a.radius - b.radius):
        return Nearness(abs(a.radius - b.radius) - apart, a.centre, b.centre)
    towards = (b.centre - a.centre).unit()
    one, other = a.centre + towards * a.radius, b.centre - towards * b.radius
    return Nearness(max(apart - a.radius - b.radius, 0.0), one, other)


def _to_ring(ring: Ring, p: Point) -> Nearness:
    away = p.distance_to(ring.centre)
    on = ring.centre + (p - ring.centre) * (ring.radius / away) if away else ring.centre
    return Nearness(abs(away - ring.radius), p, on)


def slots(scene: Scene) -> list[Measure]:
    """The narrowest place of each opening, and of the notches of each outline, across the void; narrowest first."""
    return _narrowest(scene, {run: parent is not None for run, parent in enumerate(scene.parents)})


def necks(scene: Scene) -> list[Measure]:
    """The narrowest place of each piece across the leather, the narrowest first."""
    return _narrowest(scene, dict.fromkeys(scene.outlines, True))


def _narrowest(scene: Scene, inwards: Mapping[int, bool]) -> list[Measure]:
    """The narrowest place of each of the runs, over its inside or over its outside."""
    found = []
    for number, inside in inwards.items():
        run = scene.runs[number]
        is_drawn_free = any(each.has(Odd.SPLINE, Odd.ELLIPSE, Odd.CURVE) for each in run.members)
        if isinstance(run.shape, Path) and run.closed and not is_drawn_free and len(run.shape.segments) <= _MANY:
            places = _narrow(run.shape.ccw().segments, inside)
            narrow = min(places, key=lambda each: (round(each.distance, 4), -each.beside), default=None)
            found += [Measure(narrow.distance, narrow.middle, run.name)] if narrow else []
    return sorted(found, key=lambda each: each.value)


@dataclass(frozen=True, slots=True)
class _Narrow:
    """A narrow place: the way across, its middle, and the length of the shorter side there."""

    distance: float
    middle: Point
    beside: float


def _narrow(segments: Sequence[Segment], inwards: bool) -> Iterator[_Narrow]:
    """Where two sides face each other, over the inside or over the outside, and are no two sides of a corner."""
    starts = [0.0, *accumulate(segment.length for segment in segments)]
    for (i, a), (j, b) in combinations(enumerate(segments), 2):
        for p, q in _facing_points(a, b):
            across = p.distance_to(q)
            along = abs((starts[j] + b.nearest(q)) - (starts[i] + a.nearest(p)))
            way = min(along, starts[-1] - along)
            if across > _TOUCHING and way > _ROUND * across and _face(a, p, b, q, inwards):
                yield _Narrow(across, (p + q) / 2, min(a.length, b.length))


def _facing_points(a: Segment, b: Segment) -> Iterator[tuple[Point, Point]]:
    for p in (a.point_at(a.length / 2), a.start, a.end):
        yield p, b.point_at(b.nearest(p))
    for q in (b.point_at(b.length / 2), b.start, b.end):
        yield a.point_at(a.nearest(q)), q


def _face(a: Segment, p: Point, b: Segment, q: Point, inwards: bool) -> bool:
    """Whether the sides run against each other there, square to the way across, which leaves ``a`` as asked for."""
    u, v, w = a.tangent_at(a.nearest(p)), b.tangent_at(b.nearest(q)), (q - p).unit()
    against = u.dot(v) < _FACING and abs(u.dot(w)) < _SQUARE and abs(v.dot(w)) < _SQUARE
    return against and (u.cross(w) > 0) is inwards
