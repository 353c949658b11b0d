"""Are round corners arcs, and is no line shorter than a machine can make sense of?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, cos, degrees, radians

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import FileKind, Odd
from patternforge.audit.runs import Run
from patternforge.audit.scene import Scene
from patternforge.fit.findings import Verdict
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.units import mm

__all__ = ["bit_flaws", "tiny_flaws"]

_TINY = 0.05  # mm; finer than any beam or blade
_SMOOTH = cos(radians(1.0))
_FEWEST = 6  # straight bits in a row that turn evenly are an arc
_SHARPEST = radians(31)  # one bit turns less against the next; a twelve-sided outline is meant as drawn
_FLATTEST = radians(0.05)
_UNEVEN = 2.2  # how much more one bit may turn in its length than the next
_TRUE = 0.03  # mm; how far the corners of a broken arc stray from its circle
_DRAWN_FREE = (Odd.SPLINE, Odd.ELLIPSE, Odd.CURVE)


def tiny_flaws(scene: Scene) -> Iterator[Flaw]:
    """Lines and arcs shorter than 0.05 mm, but for those that only lengthen a neighbour.

    Drawing the sides of a corner on to make room for a beam leaves such: they turn by nothing against the side. Plots
    are drawn on a grid, where a chord of two units is nothing odd.
    """
    if scene.file.kind is FileKind.HPGL:
        return
    remedy = "take the bit out and join its neighbours"
    for entity in scene.cuts:
        if isinstance(entity.shape, Path) and not entity.has(*_DRAWN_FREE):
            short = _tiny(entity.shape)
            if short:
                least = f"{mm(min(segment.length for segment in short), 3)} mm"
                what = f"a line of {least}" if len(short) == 1 else f"{len(short)} tiny lines, the least of {least}"
                yield Flaw(Verdict.LOOK, "tiny line", what, remedy, short[0].start, entity.name)


def _tiny(path: Path) -> list[Segment]:
    segments = path.segments
    found = [i for i, segment in enumerate(segments) if segment.chord < _TINY and segment.length < _TINY]
    beside = {i: (segments[i - 1], segments[(i + 1) % len(segments)]) for i in found}
    return [segments[i] for i in found if not _lengthens(segments[i], *beside[i])]


def _lengthens(bit: Segment, before: Segment, after: Segment) -> bool:
    """Whether the bit goes straight on from a longer neighbour, or straight into one."""
    on = before.length >= _TINY and before.end == bit.start and _is_smooth(before, bit)
    return on or (after.length >= _TINY and bit.end == after.start and _is_smooth(bit, after))


def _is_smooth(one: Segment, other: Segment) -> bool:
    return one.tangent_at(one.length).dot(other.tangent_at(0.0)) > _SMOOTH


@dataclass(frozen=True, slots=True)
class _Arc:
    """Corners that lie on one circle."""

    corners: tuple[Point, ...]
    centre: Point
    radius: float


def bit_flaws(scene: Scene) -> Iterator[Flaw]:
    """Arcs that are drawn as many short lines, as they cannot but be in most plots."""
    if scene.file.kind is FileKind.HPGL:
        return
    for run in scene.runs:
        if isinstance(run.shape, Path) and run.closed and not any(each.has(*_DRAWN_FREE) for each in run.members):
            arcs = [arc for bits in _smooth_runs(run) for arc in _arcs(bits)]
            if arcs:
                yield _flaw(run, arcs)


def _flaw(run: Run, arcs: Sequence[_Arc]) -> Flaw:
    first = max(arcs, key=lambda arc: len(arc.corners))
    count = sum(len(arc.corners) - 1 for arc in arcs)
    more = "" if len(arcs) == 1 else f" and {len(arcs) - 1} more, {count} in all"
    what = f"an arc of {mm(first.radius)} mm radius in {len(first.corners) - 1} straight bits{more}"
    remedy = "draw it as an arc, or export with arcs on"
    return Flaw(Verdict.LOOK, "broken arc", what, remedy, first.corners[len(first.corners) // 2], run.name)


def _smooth_runs(run: Run) -> Iterator[list[Segment]]:
    """The longest rows of straight lines that turn evenly, all to one side."""
    assert isinstance(run.shape, Path)
    segments = list(run.shape.segments)
    breaks = [i for i, (a, b) in enumerate(pairwise([segments[-1], *segments])) if not _goes_on_round(a, b)]
    if breaks:
        segments = segments[breaks[0] :] + segments[: breaks[0]]
        cuts = [i - breaks[0] for i in breaks] + [len(segments)]
        rows = [segments[a:b] for a, b in pairwise(cuts)]
    else:
        rows = [segments]
    yield from (row for row in rows if len(row) >= _FEWEST)


def _goes_on_round(a: Segment, b: Segment) -> bool:
    if a.is_arc or b.is_arc:
        return False
    u, v = a.end - a.start, b.end - b.start
    turn = abs(atan2(u.cross(v), u.dot(v)))
    longer, shorter = max(a.chord, b.chord), min(a.chord, b.chord)
    return _FLATTEST < turn < _SHARPEST and longer <= _UNEVEN * shorter


def _arcs(row: Sequence[Segment]) -> Iterator[_Arc]:
    """The circles that a row of bits follows, the row halved as long as it follows none."""
    corners = (*(segment.start for segment in row), row[-1].end)
    circle = _circle(corners)
    if circle is not None:
        yield circle
    elif len(row) >= 2 * _FEWEST:
        yield from _arcs(row[: len(row) // 2])
        yield from _arcs(row[len(row) // 2 :])


def _circle(corners: tuple[Point, ...]) -> _Arc | None:
    """The circle through the first corner, the middle one and one between, if all the others lie on it."""
    last = len(corners) - (2 if corners[0] == corners[-1] else 1)
    a, b, c = corners[0], corners[last // 3], corners[2 * last // 3]
    area = 2 * (b - a).cross(c - a)
    if abs(area) < 1e-9:
        return None
    u, v = b - a, c - a
    centre = a + Point(v.y * u.dot(u) - u.y * v.dot(v), u.x * v.dot(v) - v.x * u.dot(u)) / area
    radius = centre.distance_to(a)
    if any(abs(p.distance_to(centre) - radius) > _TRUE for p in corners):
        return None
    # Corners on a nearly straight row lie on some circle whatever they are meant as.
    swept = sum(_seen(centre, p, q) for p, q in pairwise(corners))
    return _Arc(corners, centre, radius) if abs(swept) > 20 else None


def _seen(centre: Point, p: Point, q: Point) -> float:
    u, v = p - centre, q - centre
    return degrees(atan2(u.cross(v), u.dot(v)))
