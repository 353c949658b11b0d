"""The pieces laid on the assembly again, as fit sees them: from the flat pieces and their placements alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from patternforge.fit.strips import FoldedStrip, bands, folded_strip
from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Bounds, Point, joined_bounds
from patternforge.leather.contents import Item
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import Loose, Pattern, Piece, Pocket
from patternforge.wallet.spec import Edge, Side
from patternforge.wallet.strip import StripPlacement

__all__ = ["LaidHole", "Layout", "Ply", "across", "along", "laid_path", "layout"]


@dataclass(frozen=True, slots=True)
class LaidHole:
    """A hole of a piece where it comes to lie on the assembly."""

    seam: str
    index: int
    at: Point


@dataclass(frozen=True, slots=True)
class Ply:
    """One thickness of the wallet: a piece or an item, with the area it covers on the assembly.

    That area is its outline's, or what its boxes cover together.
    """

    name: str
    part: str
    order: float
    thickness: float
    panels: tuple[int, ...]
    boxes: tuple[Bounds, ...]
    outline: Path | None = None
    interior: Interior | None = None
    openings: tuple[Path, ...] = ()

    @property
    def bounds(self) -> Bounds:
        """The box round all it covers."""
        return joined_bounds(self.boxes)

    def edges_at(self, y: float) -> list[float]:
        """x of the edges the ply has at that height, rising: covered from the first to the second, and so on."""
        if self.interior is None:
            return _merged([(box.x0, box.x1) for box in self.boxes if box.y0 < y < box.y1])
        box = self.boxes[0]
        return self.interior.crossings(y) if box.y0 < y < box.y1 else []

    def ends_at(self, x: float) -> list[float]:
        """y of the ends that its boxes have together on an upright line, rising."""
        return _merged([(box.y0, box.y1) for box in self.boxes if box.x0 < x < box.x1])


def _merged(spans: list[tuple[float, float]]) -> list[float]:
    """The ends of what the spans cover together, rising."""
    edges: list[float] = []
    for low, high in sorted(spans):
        if edges and low <= edges[-1]:
            edges[-1] = max(edges[-1], high)
        else:
            edges += [low, high]
    return edges


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
    plies = []
    for piece in pattern.pieces:
        rooms = [pocket for pocket in pattern.pockets if pocket.piece == piece.name]
        held = [_item_ply(pattern, pocket, piece, items[pocket.content]) for pocket in rooms]
        if isinstance(piece.placement, StripPlacement):
            plies += _strip_plies(piece, piece.placement, folded_strip(piece, leathers[piece.leather]), held)
        else:
            plies += [_piece_ply(piece, leathers[piece.leather].t), *held]
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
        boxes=(outline.bounds,),
        outline=outline,
        interior=Interior(outline),
        openings=tuple(laid_path(piece, opening) for opening in piece.openings),
    )


def _strip_plies(piece: Piece, placement: StripPlacement, folded: FoldedStrip, held: list[Ply]) -> list[Ply]:
    """A gusset where it stands between its walls, and what it holds there.

    A channel keeps its walls apart over all it goes round, whether or not what it holds is as thick; what is thicker
    pushes them further. The leaves of a bellows lie over what reaches under them.
    """
    boxes = bands(placement, max(folded.depths))
    order, panels = float(piece.level), (placement.panel,)
    if folded.pleats:
        return [Ply(piece.name, piece.part, order, folded.height, panels, boxes), *held]
    height = max(folded.height, sum(ply.thickness for ply in held))
    return [
        Ply(
            piece.name,
            piece.part,
            order,
            height,
            panels,
            (joined_bounds([*boxes, *(ply.bounds for ply in held)]),),
        )
    ]


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
    return Ply(pocket.content, pocket.part, order, count * item.thickness, pocket.panels, (bounds,))


def _loose_ply(pattern: Pattern, loose: Loose, item: Item) -> Ply:
    """What lies in no pocket, where it lies."""
    thickness = loose.count * pattern.design.load.loose * item.thickness
    return Ply(loose.content, loose.part, loose.order, thickness, (loose.panel,), (Bounds(*loose.box),))
