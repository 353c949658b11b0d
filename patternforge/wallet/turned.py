"""Turned edges laid flat: the outline a piece is cut to so that, its edges turned in, it has its finished size."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.leather.turn import turn_over
from patternforge.wallet.blank import TurnedSide
from patternforge.wallet.border import CCW
from patternforge.wallet.outline import Shape
from patternforge.wallet.spec import Design, Edge, LayerPart
from patternforge.wallet.stacks import edge_thickness
from patternforge.wallet.turned_corner import Meeting, corner_cut
from patternforge.wallet.words import EdgeRole
from patternforge.wallet.worked import CornerTurn

__all__ = ["FoldNotch", "TurnedCut", "turned_cut", "turned_sides"]

_ON_SIDE = 1e-7
_OUTWARD = {
    Edge.BOTTOM: Point(0.0, -1.0),
    Edge.RIGHT: Point(1.0, 0.0),
    Edge.TOP: Point(0.0, 1.0),
    Edge.LEFT: Point(-1.0, 0.0),
}


@dataclass(frozen=True, slots=True)
class FoldNotch:
    """A notch in what is turned in where it crosses a fold: middle of the fold on the flat, width at the edge, mm."""

    x: float
    width: float


@dataclass(frozen=True, slots=True)
class TurnedCut:
    """A finished outline with what is to be turned in added: the outline to cut, its corners, the finished lines."""

    shape: Shape
    corners: tuple[CornerTurn, ...]
    lines: tuple[Path, ...]


def turned_sides(design: Design, part: LayerPart) -> tuple[TurnedSide, ...]:
    """The turned edges of a layer, counter-clockwise, each with its bend round what the edge encloses."""
    leather = design.leather(part.leather)
    asked = {edge: spec for spec in part.turned for edge in spec.edges}
    sides = []
    for edge in CCW:
        if edge in asked:
            spec = asked[edge]
            layers = (p for p in design.parts if isinstance(p, LayerPart) and p.name in spec.over)
            over = (design.leather(p.leather).t for p in layers)
            enclosed = spec.core + sum(over)
            t = edge_thickness(design, part, edge)
            turn = turn_over(enclosed, t, leather.min_radius, leather.neutral)
            sides.append(TurnedSide(edge, spec, turn, leather, enclosed))
    return tuple(sides)


def turned_cut(finished: Shape, sides: Sequence[TurnedSide], notches: Sequence[FoldNotch]) -> TurnedCut:
    """The flat outline that gives a finished one, counter-clockwise, when its sides are turned in.

    Each side is moved out by its allowance; where two meet the corner is mitred or notched, where one ends at an edge
    that is not turned it is cut off square. ``notches`` are cut in the lower and upper sides. DraftError for a side
    that is not straight, a rounding beside an edge that is not turned, or a corner that has no room.
    """
    path = finished.path
    ends = {side.edge: _straight(path, side.edge) for side in sides}
    chains = [_between(finished, ends, a, b) for a, b in _pairs(sides)]
    segments: list[Segment] = []
    roles: list[EdgeRole] = []
    for i, side in enumerate(sides):
        start, stop = chains[i - 1][0][-1].end, chains[i][0][0].start
        if (stop - start).dot(_along(side.edge)) <= 0:
            raise DraftError(
                f"no room is left of what is turned in at the {side.edge.value} edge between its corners"
            )
        outer = _notched(side, start, stop, notches)
        segments += [*outer, *chains[i][0]]
        roles += [EdgeRole.TURNED] * len(outer) + chains[i][1]
    corners = tuple(corner for _, _, corner in chains if corner)
    chained = tuple(Segment(segments[i - 1].end, s.end, s.bulge) for i, s in enumerate(segments))
    return TurnedCut(Shape(Path(chained, True), tuple(roles)), corners, _lines(path, ends))


def _pairs(sides: Sequence[TurnedSide]) -> list[tuple[TurnedSide, TurnedSide]]:
    """Each turned side with the next one counter-clockwise; a single one with itself."""
    return [(side, sides[(i + 1) % len(sides)]) for i, side in enumerate(sides)]


def _along(edge: Edge) -> Point:
    return _OUTWARD[edge].perpendicular()


def _corner(path: Path, leaving: Edge) -> Point:
    """The corner of the bounds where an edge begins, counter-clockwise."""
    b = path.bounds
    return {
        Edge.BOTTOM: Point(b.x0, b.y0),
        Edge.RIGHT: Point(b.x1, b.y0),
        Edge.TOP: Point(b.x1, b.y1),
        Edge.LEFT: Point(b.x0, b.y1),
    }[leaving]


def _straight(path: Path, edge: Edge) -> int:
    """Which segment of a path is its side at that edge; DraftError unless exactly one straight one is."""
    corner, out = _corner(path, edge), _OUTWARD[edge]
    on = [
        i
        for i, s in enumerate(path.segments)
        if not s.is_arc and all(abs((p - corner).dot(out)) < _ON_SIDE for p in (s.start, s.end))
    ]
    if len(on) != 1:
        raise DraftError(f"the {edge.value} edge is not one straight line, so it cannot be turned in")
    return on[0]


def _between(
    finished: Shape, ends: Mapping[Edge, int], a: TurnedSide, b: TurnedSide
) -> tuple[list[Segment], list[EdgeRole], CornerTurn | None]:
    """What leads from the outer line of one turned side to that of the next: a corner, or edges left alone."""
    path = finished.path
    count = len(path.segments)
    gap = (ends[b.edge] - ends[a.edge] - 1) % count
    indices = [(ends[a.edge] + 1 + i) % count for i in range(gap)]
    if CCW[(CCW.index(a.edge) + 1) % 4] is b.edge:
        cut, corner = corner_cut(_meeting(path, a, b, indices))
        return cut, [EdgeRole.TURNED] * len(cut), corner
    segments = [path.segments[i] for i in indices]
    for side, at, end in (
        (a, _corner(path, CCW[(CCW.index(a.edge) + 1) % 4]), segments[0].start),
        (b, _corner(path, b.edge), segments[-1].end),
    ):
        if at.distance_to(end) > _ON_SIDE:
            raise DraftError(
                f"the {side.edge.value} edge is turned in, so the corner beside it must be square, or the edge next"
                " to it turned in too"
            )
    first = Segment(segments[0].start + _OUTWARD[a.edge] * _allowance(a), segments[0].start)
    last = Segment(segments[-1].end, segments[-1].end + _OUTWARD[b.edge] * _allowance(b))
    roles = [EdgeRole.TURNED, *(finished.edges[i] for i in indices), EdgeRole.TURNED]
    return [first, *segments, last], roles, None


def _allowance(side: TurnedSide) -> float:
    return side.turn.allowance(side.spec.overlap)


def _meeting(path: Path, a: TurnedSide, b: TurnedSide, indices: Sequence[int]) -> Meeting:
    at = _corner(path, b.edge)
    between = [path.segments[i] for i in indices]
    quarter = len(between) == 1 and between[0].is_arc and abs(abs(between[0].sweep) - math.pi / 2) < 1e-6
    if between and not quarter:
        raise DraftError(f"between the {a.edge.value} and {b.edge.value} edges, both turned in, lies no plain corner")
    return Meeting(at, between[0].radius if between else 0.0, a, b, _OUTWARD[a.edge], _OUTWARD[b.edge])


def _notched(side: TurnedSide, start: Point, stop: Point, notches: Sequence[FoldNotch]) -> list[Segment]:
    """The outer line of a side, with a V notch in the middle of every fold it crosses."""
    way = _along(side.edge)
    points = [start]
    if side.edge in (Edge.BOTTOM, Edge.TOP):
        deep = side.spec.overlap - side.spec.notch_gap
        if notches and deep <= 0:
            raise DraftError("an overlap no wider than 'notch_gap' leaves no room for notches at folds")
        for notch in sorted(notches, key=lambda n: n.x * way.x):
            middle = Point(notch.x, start.y)
            half = way * (notch.width / 2)
            points += [middle - half, middle - _OUTWARD[side.edge] * deep, middle + half]
    points.append(stop)
    if any((q - p).dot(way) <= 0 for p, q in pairwise(points)):
        raise DraftError(f"a fold notch does not fit in what is turned in at the {side.edge.value} edge")
    return [Segment(p, q) for p, q in pairwise(points)]


def _lines(path: Path, ends: Mapping[Edge, int]) -> tuple[Path, ...]:
    """The finished edges that are turned in, with the roundings between them, as far as they hang together."""
    marked = set(ends.values())
    count = len(path.segments)
    for edge, i in ends.items():
        after = CCW[(CCW.index(edge) + 1) % 4]
        if after in ends and (i + 2) % count == ends[after]:
            marked.add((i + 1) % count)
    if len(marked) == count:
        return (path,)
    starts = [i for i in sorted(marked) if (i - 1) % count not in marked]
    return tuple(Path(tuple(_run(path, marked, i)), False) for i in starts)


def _run(path: Path, marked: set[int], start: int) -> list[Segment]:
    run, i = [], start
    while i in marked:
        run.append(path.segments[i])
        i = (i + 1) % len(path.segments)
    return run
