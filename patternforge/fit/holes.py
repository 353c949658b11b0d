"""Whether holes meet and stand far enough from every edge, fold and other hole, measured on the pieces."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from patternforge.fit.findings import Finding, at_least, at_most, reaches, within
from patternforge.fit.layout import LaidHole, Layout
from patternforge.fit.means import keeps_sizes
from patternforge.geometry.nearest import nearest_points
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, intersections
from patternforge.wallet.pattern import DraftedFold, EdgeRole, Hole, Piece, Seam
from patternforge.wallet.spec import Across, HoleShape, HoleSpec

__all__ = ["apart", "crowding", "hole_findings", "rim_reach"]

_MEET = 0.1  # mm that mating holes may miss each other
_REACH = 4.0  # mm beyond which an edge cannot be too near a hole


@dataclass(frozen=True, slots=True)
class _Rim:
    """A hole's rim: its centre, the middle line of a slit, and the distance of the rim from either."""

    centre: Point
    slit: Segment | None
    reach: float


def hole_findings(layout: Layout) -> Iterator[Finding]:
    """Mating, pitch, and distances of all holes."""
    yield from _matings(layout)
    for seam in layout.pattern.seams:
        yield from _pitches(layout, seam)
    for piece in layout.pattern.pieces:
        if piece.holes:
            yield from _clearances(layout, piece)
    yield from _fold_distances(layout)
    yield from _stretches(layout)


def rim_reach(spec: HoleSpec) -> float:
    """Largest distance of a hole's rim from its centre, mm."""
    return {HoleShape.ROUND: spec.diameter / 2, HoleShape.SLIT: spec.length / 2}.get(spec.shape, 0.0)


def _matings(layout: Layout) -> Iterator[Finding]:
    """Every hole of a seam in every piece that stands there, and all of them on one point of the assembly."""
    mates = _mates(layout)
    for seam in layout.pattern.seams:
        by_index = mates[seam.name]
        misses = [h.at.distance_to(p) for h in seam.holes for p in by_index.get(h.index, ())]
        apart = max(misses, default=0.0)
        yield Finding("mating holes miss each other by", seam.name, apart, at_most(_MEET, 0.3))
        missing = sum(1 for hole in seam.holes if hole.index not in by_index)
        if missing:
            yield Finding("holes that no piece carries", seam.name, missing, at_most(0, 0), "shorten the seam", "")


def _mates(layout: Layout) -> dict[str, dict[int, list[Point]]]:
    """Where each hole of each seam comes to lie, piece by piece; a hole in its layer's own stretch is left out."""
    spreads = {seam.name: _spread(layout, seam) for seam in layout.pattern.seams}
    mates: dict[str, dict[int, list[Point]]] = {seam.name: {} for seam in layout.pattern.seams}
    for piece in layout.pattern.pieces:
        folds = [fold for fold in layout.pattern.folds if _crosses(piece, fold)]
        for hole in layout.holes[piece.name]:
            at = mates[hole.seam].setdefault(hole.index, [])
            if not _in_stretch(folds, hole.at, spreads[hole.seam]):
                at.append(hole.at)
    return mates


def _spread(layout: Layout, seam: Seam) -> float:
    spec = next((s for s in layout.pattern.design.seams if s.name == seam.name), None)
    return spec.spread if spec and spec.across is Across.EASED else 0.0


def _in_stretch(folds: Iterable[DraftedFold], point: Point, spread: float) -> bool:
    return any(fold.x0 - spread - 1e-6 < point.x < fold.x1 + spread + 1e-6 for fold in folds)


def _pitches(layout: Layout, seam: Seam) -> Iterator[Finding]:
    """The spacing that strays most from the nominal pitch."""
    if not seam.spacings:
        return
    limits, pitch = layout.pattern.design.limits, seam.stitching.pitch
    stray = max(seam.spacings, key=lambda spacing: abs(spacing / pitch - 1))
    share = abs(stray / pitch - 1)
    means = "change the pitch a little"
    if keeps_sizes(layout.pattern):
        means = f"let sizes move to whole stitches, or {means}"
    remedy = "" if share <= limits.pitch_look else means
    limit = within(pitch * limits.pitch_look, pitch * limits.pitch_no, of=pitch)
    yield Finding("stitch furthest from the pitch", seam.name, stray, limit, remedy)


def _clearances(layout: Layout, piece: Piece) -> Iterator[Finding]:
    """The hole nearest to a mouth or a crossed edge, and the one nearest to any other edge."""
    specs = {seam.name: seam.stitching.hole for seam in layout.pattern.seams}
    headings = {(s.name, h.index): h.heading for s in layout.pattern.seams for h in s.holes}
    edges = [(_reached(s), s, role) for s, role in zip(piece.made.segments, piece.made_edges, strict=True)]
    edges += [(_reached(s), s, EdgeRole.RAW) for opening in piece.openings for s in opening.segments]
    nearest = {True: (_REACH, ""), False: (_REACH, "")}
    for hole in piece.holes:
        x, y = hole.at.x, hole.at.y
        near = [(s, role) for (x0, y0, x1, y1), s, role in edges if x0 <= x <= x1 and y0 <= y <= y1]
        if not near:
            continue
        rim = _rim(hole, specs[hole.seam])
        heading = piece.placement.angle(hole.at, headings[hole.seam, hole.index])
        for edge, role in near:
            gap = _gap(rim, edge)
            if gap >= nearest[True][0] and gap >= nearest[False][0]:
                continue
            crossed = role is EdgeRole.MOUTH or _is_crossed(hole.at, edge, heading)
            if gap < nearest[crossed][0]:
                nearest[crossed] = (gap, f"{piece.name}, {hole.seam} {hole.index}")
    limits = layout.pattern.design.limits
    means = "smaller holes or more margin"
    if keeps_sizes(layout.pattern):
        means = "smaller holes, more margin, or let sizes move to whole stitches"
    for crossed, limit, what in (
        (True, limits.hole_to_mouth, "hole rim to a mouth it straddles"),
        (False, limits.hole_to_edge, "hole rim to edge"),
    ):
        gap, where = nearest[crossed]
        if gap < _REACH:
            remedy = "" if reaches(gap, limit) else means
            yield Finding(what, where, gap, at_least(limit, limit / 2), remedy)


def _rim(hole: Hole, spec: HoleSpec) -> _Rim:
    if spec.shape is not HoleShape.SLIT:
        return _Rim(hole.at, None, rim_reach(spec))
    angle = math.radians(hole.direction)
    half = Point(math.cos(angle), math.sin(angle)) * (spec.length / 2)
    return _Rim(hole.at, Segment(hole.at - half, hole.at + half), spec.width / 2)


def _reached(edge: Segment) -> tuple[float, float, float, float]:
    """The box round an edge outside which no hole can be near it."""
    b = edge.bounds
    return b.x0 - _REACH, b.y0 - _REACH, b.x1 + _REACH, b.y1 + _REACH


def _gap(rim: _Rim, edge: Segment) -> float:
    """Leather between a hole and an edge, mm; not above 0 where the edge cuts the hole."""
    if rim.slit is None:
        return edge.distance_to(rim.centre) - rim.reach
    return apart(rim.slit, edge) - rim.reach


def apart(a: Segment, b: Segment) -> float:
    """Smallest distance between a straight segment and another segment, mm; 0 where they meet."""
    if b.is_arc:
        p, q = nearest_points(a, b)
        return p.distance_to(q)
    if intersections(a, b):
        return 0.0
    ends = ((a, b.start), (a, b.end), (b, a.start), (b, a.end))
    return min(segment.distance_to(end) for segment, end in ends)


def _is_crossed(at: Point, edge: Segment, heading: float) -> bool:
    """Whether the edge lies ahead on the line of sewing rather than beside it."""
    foot = edge.point_at(edge.nearest(at))
    away = foot - at
    if away.norm < 1e-9:
        return False
    direction = Point(math.cos(math.radians(heading)), math.sin(math.radians(heading)))
    return abs(away.dot(direction)) > away.norm * math.sqrt(0.5)


def _fold_distances(layout: Layout) -> Iterator[Finding]:
    """The hole nearest to a fold tangent; eased seams pass over folds by choice."""
    eased = {s.name for s in layout.pattern.design.seams if s.across is Across.EASED}
    limit = layout.pattern.design.limits.hole_to_fold
    for fold in layout.pattern.folds:
        near = min(_to_fold(layout, fold.x0, fold.x1, eased), default=None)
        if near is not None and near[0] < _REACH + 20:
            gap, where = near
            remedy = "" if reaches(gap, limit) else "stop the seam further from the fold"
            yield Finding("hole rim to fold", where, gap, at_least(limit, limit / 2), remedy)


def _stretches(layout: Layout) -> Iterator[Finding]:
    """How much further apart the holes of an eased seam stand in the layer that runs longest round a fold."""
    limits = layout.pattern.design.limits
    for seam in (s for s in layout.pattern.design.seams if s.across is Across.EASED):
        for fold in layout.pattern.folds:
            lengths = [_zone_length(piece, fold) for piece in layout.pattern.pieces if _crosses(piece, fold)]
            zone = fold.x1 - fold.x0
            base = zone + 2 * seam.spread
            share = (max(lengths) - zone) / base if base > 0 else 0.0
            limit = at_most(100 * limits.pitch_no, 300 * limits.pitch_no)
            remedy = (
                "" if limit.good.holds(100 * share) else "spread the stretch further, or stop the seam at the fold"
            )
            where = f"{seam.name} over fold {fold.number}"
            yield Finding("stitches stretched by", where, 100 * share, limit, remedy, "%")


def _crosses(piece: Piece, fold: DraftedFold) -> bool:
    return {fold.number - 1, fold.number} <= set(piece.placement.panels)


def _zone_length(piece: Piece, fold: DraftedFold) -> float:
    development = piece.placement.development
    return development.flat(fold.x1) - development.flat(fold.x0)


def _to_fold(layout: Layout, x0: float, x1: float, eased: Iterable[str]) -> Iterator[tuple[float, str]]:
    specs = {seam.name: seam.stitching.hole for seam in layout.pattern.seams}
    for seam in layout.pattern.seams:
        if seam.name not in eased:
            reach = rim_reach(specs[seam.name])
            for hole in seam.holes:
                outside = max(x0 - hole.at.x, hole.at.x - x1)
                yield outside - reach, f"{seam.name} {hole.index}"


def crowding(holes: Iterable[LaidHole | Hole], within: float) -> float:
    """Smallest distance between two holes, mm, or ``within`` when all are that far apart; it must be above 0."""
    cells: dict[tuple[int, int], list[Point]] = {}
    best = within
    for hole in holes:
        p = hole.at
        column, row = int(p.x // within), int(p.y // within)
        for i in (column - 1, column, column + 1):
            for j in (row - 1, row, row + 1):
                for q in cells.get((i, j), ()):
                    best = min(best, math.hypot(p.x - q.x, p.y - q.y))
        cells.setdefault((column, row), []).append(p)
    return best
