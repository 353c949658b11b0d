"""The room between two walls that a gusset joins, measured on the pieces, against what it holds."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import chain

from patternforge.fit.findings import FORGIVEN, Finding, at_least, reaches, within
from patternforge.fit.layout import Layout, across, along
from patternforge.fit.strips import FoldedStrip, folded_strip
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Piece, Pocket, SeamHole
from patternforge.wallet.spec import Edge
from patternforge.wallet.strip import StripPlacement

__all__ = ["gusset_room_findings"]

_SNUG = 1.0  # mm to spare along the mouth, at the least
_REST = 0.3  # mm an item may rest off its place

Walls = tuple[frozenset[str], frozenset[str]]


def gusset_room_findings(layout: Layout) -> Iterator[Finding]:
    """Depth, breadth and height of the room between the walls of every gusset that holds something."""
    strips = {piece.name: piece for piece in layout.pattern.pieces if isinstance(piece.placement, StripPlacement)}
    for pocket in layout.pattern.pockets:
        if pocket.piece in strips:
            yield from _room(layout, strips, strips[pocket.piece], pocket)


def _room(layout: Layout, strips: dict[str, Piece], piece: Piece, pocket: Pocket) -> Iterator[Finding]:
    where = f"{pocket.content} in {pocket.part}"
    folded = folded_strip(piece, layout.leathers[piece.leather])
    yield _depth(layout, piece, folded, pocket, where)
    walls = _walls(layout, piece)
    together = [each for each in strips.values() if _walls(layout, each) == walls]
    barrier = [*_direct(layout, walls), *chain.from_iterable(_barrier(layout, each) for each in together)]
    yield _breadth(layout, pocket, barrier, where, bellows=bool(folded.pleats))
    yield from _height(layout, pocket, barrier, where)


def _depth(layout: Layout, piece: Piece, folded: FoldedStrip, pocket: Pocket, where: str) -> Finding:
    """How far the walls stand apart, or can be pulled apart, against what lies between them."""
    needs = pocket.count * layout.pattern.design.load.cards * layout.items[pocket.content].thickness
    if folded.pleats:
        ys = [hole.at.y for hole in piece.holes]
        has = max(ys) - min(ys)  # pulled flat, from stitches to stitches
        remedy = "" if reaches(has, needs) else f"make each leaf {(needs - has) / 2 / folded.pleats:.2f} mm deeper"
        return Finding("gusset opens to", where, has, at_least(needs, needs), remedy)
    has = folded.height
    remedy = "" if reaches(has, needs) else f"make the gusset {needs - has:.2f} mm deeper"
    return Finding("depth between the walls", where, has, at_least(needs, 0.95 * needs), remedy)


def _walls(layout: Layout, piece: Piece) -> Walls:
    """The pieces at the outer and at the inner edge of a strip that lie flat on a panel."""
    flat = {each.name for each in layout.pattern.pieces if each.placement.panels}
    sewn = {seam.name: flat.intersection(seam.pieces) for seam in layout.pattern.seams}
    outer, inner = (frozenset(sewn[row.seam]) for row in _placed(piece).rows)
    return outer, inner


def _placed(piece: Piece) -> StripPlacement:
    if not isinstance(piece.placement, StripPlacement):
        raise TypeError(f"{piece.name} is no strip")
    return piece.placement


def _direct(layout: Layout, walls: Walls) -> list[Point]:
    """Holes of the seams that sew both walls to each other."""
    return [
        hole.at
        for seam in layout.pattern.seams
        if walls[0].intersection(seam.pieces) and walls[1].intersection(seam.pieces)
        for hole in seam.holes
    ]


def _barrier(layout: Layout, piece: Piece) -> list[Point]:
    """Where a strip ends the room: the outside of a channel's web, the stitches of a bellows."""
    folded = folded_strip(piece, layout.leathers[piece.leather])
    rows = _placed(piece).rows
    margins = (rows[0].y, piece.height - rows[1].y)
    return [
        _inside(hole, 0.0 if folded.pleats else depth - margin)
        for row, margin, depth in zip(rows, margins, folded.depths, strict=True)
        for seam in layout.pattern.seams
        if seam.name == row.seam
        for hole in seam.holes
    ]


def _inside(hole: SeamHole, by: float) -> Point:
    """A point so far inside the seam, which runs counter-clockwise."""
    heading = math.radians(hole.heading)
    return hole.at + Point(-math.sin(heading), math.cos(heading)) * by


def _extent(pocket: Pocket) -> tuple[tuple[float, float], tuple[float, float]]:
    """The item's extent along the mouth and towards it."""
    x0, y0, x1, y1 = pocket.box
    corners = (Point(x0, y0), Point(x1, y1))
    low, high = sorted(across(pocket.opening, corner) for corner in corners)
    bottom, top = sorted(along(pocket.opening, corner) for corner in corners)
    return (low, high), (bottom, top)


def _breadth(layout: Layout, pocket: Pocket, barrier: list[Point], where: str, *, bellows: bool) -> Finding:
    """Room along the mouth beside the item, above its own rounded corners.

    A bellows lets its walls close on the item, which then needs the taut path round it.
    """
    (low, high), (bottom, top) = _extent(pocket)
    item = layout.items[pocket.content]
    beside = [at for at in barrier if bottom + 1.0 + item.corner_radius < along(pocket.opening, at) < top]
    places = [across(pocket.opening, at) for at in beside]
    left, right = ([a for a in places if a < (low + high) / 2], [a for a in places if a > (low + high) / 2])
    needs = high - low + (pocket.count * item.thickness if bellows else 0.0)
    what = "clear width between the sides of a gusset"
    if not left or not right:
        return Finding(what, where, 0.0, at_least(needs, needs), "a side of the room is open")
    has = min(right) - max(left)
    short = pocket.ease - (has - needs)
    remedy = f"widen the panel by {short:.2f} mm" if short > FORGIVEN else ""
    return Finding(what, where, has, at_least(needs + min(pocket.ease, _SNUG), needs), remedy)


def _height(layout: Layout, pocket: Pocket, barrier: list[Point], where: str) -> Iterator[Finding]:
    """Whether the item rests on something, and its top stays below the edge it goes in over."""
    (low, high), (bottom, top) = _extent(pocket)
    middle, reach = (low + high) / 2, (high - low) / 4
    under = [
        along(pocket.opening, at)
        for at in barrier
        if abs(across(pocket.opening, at) - middle) < reach and along(pocket.opening, at) < (bottom + top) / 2
    ]
    if not under:
        yield Finding("item rests on stitches", where, 0, at_least(1, 1), "sew the walls together below it", "")
        return
    off = max(under) - bottom
    remedy = "" if abs(off) <= _REST else "move its floor"
    yield Finding("item rests off its place", where, off, within(_REST, 2.0), remedy)
    room = _edge(layout, pocket) - (top + off)
    remedy = "" if room >= 0.5 else "the item would stand out of the room: more height"
    yield Finding("item's top below the edge", where, room, at_least(0.5, 0.0), remedy)


def _edge(layout: Layout, pocket: Pocket) -> float:
    """The edge or fold tangent the room opens to, in its own direction."""
    panel = layout.pattern.panels[pocket.panel]
    edges = {Edge.TOP: layout.pattern.height, Edge.BOTTOM: 0.0, Edge.LEFT: -panel.x0, Edge.RIGHT: panel.x1}
    return edges[pocket.opening]
