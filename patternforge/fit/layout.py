"""The pieces laid on the assembly again, as fit sees them: from the flat pieces and their placements alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Bounds, Point
from patternforge.leather.contents import Item
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import Loose, Pattern, Piece, Pocket
from patternforge.wallet.spec import Edge, Side

__all__ = ["LaidHole", "Layout", "Ply", "across", "along", "laid_path", "layout"]


@dataclass(frozen=True, slots=True)
class LaidHole:
    """A hole of a piece where it comes to lie on the assembly."""

    seam: str
    index: int
    at: Point


@dataclass(frozen=True, slots=True)
class Ply:
    """One thickness of the wallet: a piece or an item, with the area it covers on the assembly."""

    name: str
    part: str
    order: float
    thickness: float
    panels: tuple[int, ...]
    bounds: Bounds
    outline: Path | None
    interior: Interior | None
    openings: tuple[Path, ...] = ()

    def edges_at(self, y: float) -> list[float]:
        """x of the edges the ply has at that height, rising: covered from the first to the second, and so on."""
        if not self.bounds.y0 < y < self.bounds.y1:
            return []
        return [self.bounds.x0, self.bounds.x1] if self.interior is None else self.interior.crossings(y)


@dataclass(frozen=True, slots=True)
class Layout:
    """A pattern with the leathers and contents it is judged for; plies from the outside in, holes by piece."""

    pattern: Pattern
    leathers: Mapping[str, Leather]
    items: Mapping[str, Item]
    plies: tuple[Ply, ...]
    holes: Mapping[str, tuple[LaidHole, ...]]

    def thickness(self, piece: Piece) -> float:
        """Thickness of a piece's leather, mm."""
        return self.leathers[piece.leather].t


def layout(pattern: Pattern, leathers: Mapping[str, Leather]) -> Layout:
    """The pattern laid on its assembly for these leathers (by role), loaded as its design says."""
    items = {content.name: content.item for content in pattern.design.contents}
    pieces = {piece.name: piece for piece in pattern.pieces}
    plies = [_piece_ply(piece, leathers[piece.leather].t) for piece in pattern.pieces]
    plies += [_item_ply(pattern, pocket, pieces[pocket.piece], items[pocket.content]) for pocket in pattern.pockets]
    plies += [_loose_ply(pattern, loose, items[loose.content]) for loose in pattern.loose]
    holes = {piece.name: tuple(_laid(piece)) for piece in pattern.pieces}
    ordered = tuple(sorted((ply for ply in plies if ply.thickness > 0), key=lambda ply: ply.order))
    return Layout(pattern, leathers, items, ordered, holes)


def along(opening: Edge, point: Point) -> float:
    """How far a point lies towards the opening, mm."""
    return {Edge.TOP: point.y, Edge.BOTTOM: -point.y, Edge.LEFT: -point.x, Edge.RIGHT: point.x}[opening]


def across(opening: Edge, point: Point) -> float:
    """How far a point lies along the mouth of that opening, mm."""
    return {Edge.TOP: point.x, Edge.BOTTOM: -point.x, Edge.LEFT: point.y, Edge.RIGHT: -point.y}[opening]


def _laid(piece: Piece) -> list[LaidHole]:
    points = piece.placement.on_assembly([hole.at for hole in piece.holes])
    return [LaidHole(hole.seam, hole.index, at) for hole, at in zip(piece.holes, points, strict=True)]


def _piece_ply(piece: Piece, thickness: float) -> Ply:
    outline = laid_path(piece, piece.outline)
    return Ply(
        name=piece.name,
        part=piece.part,
        order=float(piece.level),
        thickness=thickness,
        panels=piece.placement.panels,
        bounds=outline.bounds,
        outline=outline,
        interior=Interior(outline),
        openings=tuple(laid_path(piece, opening) for opening in piece.openings),
    )


def laid_path(piece: Piece, path: Path) -> Path:
    """A closed path of a piece laid back on the assembly; arcs keep their bulge, for none lies in a fold zone."""
    sign = -1.0 if piece.placement.onto_piece.is_mirror else 1.0
    vertices = path.vertices
    laid = piece.placement.on_assembly([Point(x, y) for x, y, _ in vertices])
    bulges = (sign * bulge for _, _, bulge in vertices)
    return from_vertices([(p.x, p.y, bulge) for p, bulge in zip(laid, bulges, strict=True)], closed=True)


def _item_ply(pattern: Pattern, pocket: Pocket, piece: Piece, item: Item) -> Ply:
    """Items lie on the outer side of the wall that holds them, or on the inner side of one that faces outwards.

    What lies loose behind a layer may slide along it, so it counts on every panel it can reach.
    """
    load = pattern.design.load
    count = pocket.count * (load.notes if pocket.held else load.cards)
    sheets = [p.level for p in pattern.pieces if p.lines == piece.name]
    if piece.showing is Side.OUTSIDE and not pocket.held:
        order = max((piece.level, *sheets)) + 0.5
    else:
        order = min((piece.level, *sheets)) - 0.5
    x0, y0, x1, y1 = pocket.box
    if len(pocket.panels) > 1:
        x0, x1 = pattern.panels[pocket.panels[0]].x0, pattern.panels[pocket.panels[-1]].x1
    bounds = Bounds(x0, y0, x1, y1)
    return Ply(pocket.content, pocket.part, order, count * item.thickness, pocket.panels, bounds, None, None)


def _loose_ply(pattern: Pattern, loose: Loose, item: Item) -> Ply:
    """What lies in no pocket, where it lies."""
    thickness = loose.count * pattern.design.load.loose * item.thickness
    return Ply(loose.content, loose.part, loose.order, thickness, (loose.panel,), Bounds(*loose.box), None, None)
