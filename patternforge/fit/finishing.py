"""Skived and turned edges on the pieces: what is left of the leather, how far it is turned in, what meets at corners.

The bend of a turned edge is reckoned here from its fibre: outside face, half a circle, flat overlap.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.fit.findings import Finding, at_least, at_most, reaches
from patternforge.fit.holes import rim_reach
from patternforge.fit.layout import Layout, turned_thickness
from patternforge.geometry.point import Bounds, Point
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import Edge
from patternforge.wallet.worked import CornerTurn, TurnedEdge, TurnIn

__all__ = ["finishing_findings"]

# All common practice, no source; lengths in mm.
_LEAST_LEFT, _SHARE_LEFT = 0.4, 1 / 3  # of leather, whichever is less
_FLAT, _BARELY_FLAT = 5.0, 3.0  # of overlap beyond the bend
_THIN = 1.0  # leather so thin is turned in without skiving
_HELD, _BARELY_HELD = 4.0, 2.0  # of a lining under what is turned in over it
_CROWDED = 0.5  # a lining may reach into the bend
_LAP = 4.0  # thicknesses that mitred edges may lie over each other
_TONGUE, _THIN_TONGUE = 1.0, 0.5  # of leather between two notches
_GATHER, _MUCH_GATHER = 1.0, 3.0  # of leather taken up in a fold


@dataclass(frozen=True, slots=True)
class _Rolled:
    """A turned edge as it comes out of the flat piece: thickness, what it encloses, cut beyond the line; mm."""

    edge: TurnedEdge
    thickness: float
    enclosed: float
    cut: float
    radius: float
    arc: float

    @property
    def reach(self) -> float:
        """Finished edge to the end of the bend."""
        return self.radius + self.thickness

    @property
    def overlap(self) -> float:
        """What lies flat beyond the bend."""
        return self.cut + self.reach - self.arc


def finishing_findings(layout: Layout) -> Iterator[Finding]:
    """What skiving leaves, and every turned edge with its corners, lining and stitches."""
    for piece in layout.pattern.pieces:
        if piece.skives:
            yield _left(layout, piece)
        if piece.turned:
            edges = [_rolled(layout, piece, edge) for edge in piece.turned.turned]
            yield from _edges(layout, piece, edges)
            yield from _bands(piece, edges, layout.thickness(piece))
            yield from _linings(layout, piece, edges)
            yield from _corners(piece, piece.turned, edges)
            yield from _folds(piece, piece.turned)
            yield from _stitches(layout, piece, piece.turned)


def _left(layout: Layout, piece: Piece) -> Finding:
    limit = min(_LEAST_LEFT, _SHARE_LEFT * layout.thickness(piece))
    left = min(skive.left for skive in piece.skives)
    remedy = "" if reaches(left, limit) else "leave more leather, or it tears at the stitches and stretches"
    return Finding("leather left by skiving", piece.name, left, at_least(limit, limit / 2), remedy)


def _rolled(layout: Layout, piece: Piece, edge: TurnedEdge) -> _Rolled:
    leather = layout.leathers[piece.leather]
    t = turned_thickness(piece, edge, leather.t)
    parts = [p for p in layout.pattern.pieces if p.part in edge.over and not p.lines]
    enclosed = edge.core + sum(layout.thickness(p) for p in parts)
    radius = max(enclosed / 2, leather.min_radius * t)
    cut = _beyond(piece.outline.bounds, piece.made.bounds, edge.drawn)
    return _Rolled(edge, t, enclosed, cut, radius, math.pi * (radius + leather.neutral * t))


def _beyond(outer: Bounds, inner: Bounds, edge: Edge) -> float:
    """How far one box reaches beyond another at a side, mm."""
    return {
        Edge.LEFT: inner.x0 - outer.x0,
        Edge.RIGHT: outer.x1 - inner.x1,
        Edge.BOTTOM: inner.y0 - outer.y0,
        Edge.TOP: outer.y1 - inner.y1,
    }[edge]


def _where(piece: Piece, rolled: _Rolled) -> str:
    return f"{rolled.edge.edge.value} edge of {piece.name}"


def _edges(layout: Layout, piece: Piece, edges: list[_Rolled]) -> Iterator[Finding]:
    """The least overlap and the thickest edge."""
    least = min(edges, key=lambda each: each.overlap)
    flat = at_least(_FLAT, _BARELY_FLAT)
    remedy = "" if flat.good.holds(least.overlap) else "a wider overlap, or a thinner edge"
    yield Finding("turned in flat by", _where(piece, least), least.overlap, flat, remedy)
    thick = max(edges, key=lambda each: 2 * each.thickness + each.enclosed)
    edge = 2 * thick.thickness + thick.enclosed
    most = max(layout.thickness(piece), _THIN) + thick.enclosed
    limit = at_most(most, 2 * most)
    remedy = "" if limit.good.holds(edge) else "skive the edge to half its thickness or less"
    yield Finding("thickness of a turned edge", _where(piece, thick), edge, limit, remedy)


def _bands(piece: Piece, edges: list[_Rolled], thickness: float) -> Iterator[Finding]:
    """Whether a skived band reaches from the cut edge over the overlap and the whole bend."""
    skived = [(each, _band(piece, each.edge.drawn)) for each in edges if each.thickness < thickness]
    for each, width in sorted(skived, key=lambda pair: pair[1] - pair[0].overlap - pair[0].arc)[:1]:
        need = each.overlap + each.arc
        remedy = "" if reaches(width, need) else f"skive a band of {need:.1f} mm or more, over the whole bend"
        limit = at_least(need, each.overlap)
        yield Finding("skived band along a turned edge", _where(piece, each), width, limit, remedy)


def _band(piece: Piece, drawn: Edge) -> float:
    """How far the skive at a side reaches in from the cut edge, mm."""
    whole = piece.outline.bounds
    at_edge = [s.box for s in piece.skives if _beyond(whole, s.box, drawn) < 1e-6 and _spans(s.box, whole, drawn)]
    depths = (b.width if drawn in (Edge.LEFT, Edge.RIGHT) else b.height for b in at_edge)
    return max(depths, default=0.0)


def _spans(box: Bounds, whole: Bounds, drawn: Edge) -> bool:
    """Whether a box is as long as the side it lies at."""
    if drawn in (Edge.LEFT, Edge.RIGHT):
        return box.height >= whole.height - 1e-6
    return box.width >= whole.width - 1e-6


def _linings(layout: Layout, piece: Piece, edges: list[_Rolled]) -> Iterator[Finding]:
    """Whether what an edge is turned over ends clear of the bend and is held under the overlap."""
    boxes = {ply.name: ply.bounds for ply in layout.plies}
    pairs = [
        (each, p.name, _beyond(boxes[piece.name], boxes[p.name], each.edge.edge))
        for each in edges
        for p in layout.pattern.pieces
        if p.part in each.edge.over and not p.lines
    ]
    for each, name, inside in sorted(pairs, key=lambda pair: pair[2] - pair[0].reach)[:1]:
        clear = inside - each.reach
        remedy = "" if reaches(clear, 0.0) else f"keep it {each.reach:.2f} mm inside the finished edge or more"
        where = f"{name} at the {_where(piece, each)}"
        yield Finding("lining clear of the bend", where, clear, at_least(0.0, -_CROWDED), remedy)
    for each, name, inside in sorted(pairs, key=lambda pair: pair[0].reach + pair[0].overlap - pair[2])[:1]:
        held = each.reach + each.overlap - inside
        remedy = "" if held >= _HELD else "a larger lining or a wider overlap"
        where = f"{name} at the {_where(piece, each)}"
        yield Finding("lining held under a turned edge", where, held, at_least(_HELD, _BARELY_HELD), remedy)


def _corners(piece: Piece, turned: TurnIn, edges: list[_Rolled]) -> Iterator[Finding]:
    """How far mitred edges lie over each other, what is left at the corner, how thin the tongues of pleats are."""
    mitred = [corner for corner in turned.corners if not corner.notches]
    if mitred:
        thick = max(edges, key=lambda each: each.thickness)
        off = min(_left_at(piece, corner) for corner in mitred)
        remedy = "" if off >= thick.thickness else "a larger 'corner_gap', or the corner shows bare"
        left = at_least(thick.thickness, thick.thickness / 2)
        yield Finding("leather left at a mitred corner", piece.name, off, left, remedy)
        lap = max(_lap(piece, corner, thick) for corner in mitred)
        limit = _LAP * thick.thickness
        remedy = "" if lap <= limit else "a smaller 'corner_gap'"
        yield Finding("mitred edges lap by", piece.name, lap, at_most(limit, 2 * limit), remedy)
    for corner in [corner for corner in turned.corners if corner.notches][:1]:
        tongue = _tongue(corner, edges[0])
        remedy = "" if tongue >= _TONGUE else "a smaller 'corner_overlap' or a rounder corner"
        yield Finding("tongues between notches", piece.name, tongue, at_least(_TONGUE, _THIN_TONGUE), remedy)


def _left_at(piece: Piece, corner: CornerTurn) -> float:
    """Leather left beyond the middle of a finished corner."""
    inwards = (piece.made.bounds.centre - corner.at).unit()
    diagonal = Point(math.copysign(math.sqrt(0.5), inwards.x), math.copysign(math.sqrt(0.5), inwards.y))
    return piece.outline.distance_to(corner.at + diagonal * (math.sqrt(2) - 1) * corner.radius)


def _lap(piece: Piece, corner: CornerTurn, rolled: _Rolled) -> float:
    """Width of the strip along the mitre where both edges lie, measured across it; negative where a gap is left.

    Turned in, a point cut u beyond the line lies u + 2 (r + t) - arc inside it: edges cut along x + y = c, with
    c = arc - 2 (r + t), would just meet.
    """
    meet = (rolled.arc - 2 * rolled.reach) / math.sqrt(2)
    off = piece.outline.distance_to(corner.at)
    return 2 * ((off if piece.outline.contains(corner.at) else -off) - meet)


def _tongue(corner: CornerTurn, rolled: _Rolled) -> float:
    """Width at the cut edge of the leather between two notches."""
    rim = corner.radius + corner.overlap + rolled.arc - rolled.reach
    return rim * math.pi / 2 / corner.notches - corner.notch


def _folds(piece: Piece, turned: TurnIn) -> Iterator[Finding]:
    for fold, excess, notch in turned.gathers:
        gather = excess - notch
        remedy = "" if gather <= _GATHER else "skive the edge thinner, or turn it in after the wallet is folded"
        limit, where = at_most(_GATHER, _MUCH_GATHER), f"{piece.name} at fold {fold}"
        yield Finding("turned edge gathers in the fold", where, gather, limit, remedy)


def _stitches(layout: Layout, piece: Piece, turned: TurnIn) -> Iterator[Finding]:
    """The hole nearest to the raw edge of what is turned in, of those that go through it."""
    rims = {seam.name: rim_reach(seam.stitching.hole) for seam in layout.pattern.seams}
    through = [(hole, edge) for hole in piece.holes if (edge := turned.over(hole.at))]
    if not through:
        return
    gaps = (edge.depth - turned.off(hole.at, edge.drawn) - rims[hole.seam] for hole, edge in through)
    gap, limit = min(gaps), layout.pattern.design.limits.hole_to_edge
    remedy = "" if reaches(gap, limit) else "a wider overlap or a smaller margin"
    yield Finding("hole rim to the edge turned in", piece.name, gap, at_least(limit, limit / 2), remedy)
