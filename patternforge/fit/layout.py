"""The pieces laid on the assembly again, as fit sees them: from the flat pieces and their placements alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from patternforge.fit.strips import FoldedStrip, bands, enclosed, folded_strip
from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Bounds, Point, joined_bounds
from patternforge.leather.contents import Item
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import DraftedFold, Loose, Pattern, Piece, Pocket
from patternforge.wallet.spec import Edge, Side
from patternforge.wallet.strip import StripPlacement
from patternforge.wallet.worked import TurnedEdge

__all__ = ["LaidHole", "Layout", "Ply", "across", "along", "laid_path", "layout", "turned_thickness"]

_PROBES = 16  # places along a fold where a piece's thickness is looked at


@dataclass(frozen=True, slots=True)
class LaidHole:
    """A hole of a piece where it comes to lie on the assembly."""

    seam: str
    index: int
    at: Point


@dataclass(frozen=True, slots=True)
class Ply:
    """One thickness of the wallet: a piece, what a piece has turned in, or an item, with its area on the assembly.

    That area is its outline's, or what its boxes cover together; a channel's is all that it goes round. ``thinned``
    are boxes pared down and what is left there, mm; ``hollow`` a box it leaves bare; ``of`` the piece whose leather
    it is, empty for items and rooms.
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
    thinned: tuple[tuple[Bounds, float], ...] = ()
    hollow: Bounds | None = None
    of: str = ""

    def thickness_at(self, x: float, y: float) -> float:
        """Thickness where the ply lies, mm: its own, or what is left where it is skived."""
        return min((self.thickness, *(left for box, left in self.thinned if _within(box, x, y))))

    def holds(self, point: Point) -> bool:
        """Whether the ply lies over a point."""
        bare = self.hollow is not None and _within(self.hollow, point.x, point.y)
        if self.interior is not None:
            return self.interior.holds(point) and not bare
        return any(_within(box, point.x, point.y) for box in self.boxes) and not bare

    @property
    def bounds(self) -> Bounds:
        """The box round all it covers."""
        return joined_bounds(self.boxes)

    def edges_at(self, y: float) -> list[float]:
        """x of the edges the ply has at that height, rising: covered from the first to the second, and so on."""
        if self.interior is None:
            return _merged([(box.x0, box.x1) for box in self.boxes if box.y0 < y < box.y1])
        box = self.boxes[0]
        edges = self.interior.crossings(y) if box.y0 < y < box.y1 else []
        if self.hollow is None or not self.hollow.y0 < y < self.hollow.y1:
            return edges
        return sorted([*edges, self.hollow.x0, self.hollow.x1])

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

    def bent_thickness(self, piece: Piece, fold: DraftedFold) -> float:
        """The most leather a piece has anywhere along the middle of a fold it crosses, mm."""
        box = piece.made.bounds
        low, high = sorted(
            piece.placement.to_assembly(Point(x, y)).y for x, y in ((box.x0, box.y0), (box.x1, box.y1))
        )
        x = (fold.x0 + fold.x1) / 2
        places = (Point(x, low + (high - low) * (i + 0.5) / _PROBES) for i in range(_PROBES))
        t = self.thickness(piece)
        return max(piece.thickness_at(piece.placement.to_piece(at), t) for at in places)


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
            plies += [_turned_ply(pattern, piece, leathers[piece.leather].t)] if piece.turned else []
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
    outline = laid_path(piece, piece.made)
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
        thinned=tuple((_laid_box(piece, skive.box), skive.left) for skive in piece.skives),
        of=piece.name,
    )


def _strip_plies(piece: Piece, placement: StripPlacement, folded: FoldedStrip, held: list[Ply]) -> list[Ply]:
    """A gusset where it stands between its walls, and what it holds there.

    A channel keeps its walls apart over all it goes round, whether or not what it holds is as thick; what is thicker
    pushes them further. The leaves of a bellows lie over what reaches under them.
    """
    order, panels, depth = float(piece.level), (placement.panel,), max(folded.depths)
    if folded.pleats:
        leaves = bands(placement, depth)
        return [Ply(piece.name, piece.part, order, folded.height, panels, leaves, of=piece.name), *held]
    height = max(folded.height, sum(ply.thickness for ply in held))
    outline = enclosed(placement)
    if outline is None:
        return [Ply(piece.name, piece.part, order, height, panels, bands(placement, depth))]
    return [Ply(piece.name, piece.part, order, height, panels, (outline.bounds,), outline, Interior(outline))]


def _turned_ply(pattern: Pattern, piece: Piece, thickness: float) -> Ply:
    """What a piece has turned in: a frame as wide as the overlap and the bend, at the back of what it is turned over.

    Where it differs in thickness from edge to edge, the thickest counts all round.
    """
    edges = piece.turned.turned if piece.turned else ()
    outline = laid_path(piece, piece.made)
    over = [p.level for p in pattern.pieces if p.part in {name for edge in edges for name in edge.over}]
    outwards = piece.showing is Side.OUTSIDE
    order = max((piece.level, *over)) + 0.25 if outwards else min((piece.level, *over)) - 0.25
    return Ply(
        name=f"{piece.name} turned in",
        part=piece.part,
        order=order,
        thickness=max(edge.core + turned_thickness(piece, edge, thickness) for edge in edges),
        panels=piece.placement.panels,
        boxes=(outline.bounds,),
        outline=outline,
        interior=Interior(outline),
        hollow=_hollow(outline.bounds, {edge.edge: edge.depth for edge in edges}),
        of=piece.name,
    )


def turned_thickness(piece: Piece, edge: TurnedEdge, thickness: float) -> float:
    """Thickness of what is turned in at an edge, read off the flat piece in the middle of its overlap, mm."""
    box = piece.made.bounds
    off = edge.allowance - edge.overlap / 2
    middle = {
        Edge.LEFT: Point(box.x0 - off, box.centre.y),
        Edge.RIGHT: Point(box.x1 + off, box.centre.y),
        Edge.BOTTOM: Point(box.centre.x, box.y0 - off),
        Edge.TOP: Point(box.centre.x, box.y1 + off),
    }[edge.drawn]
    return piece.thickness_at(middle, thickness)


def _hollow(box: Bounds, depths: Mapping[Edge, float]) -> Bounds:
    return Bounds(
        box.x0 + depths.get(Edge.LEFT, 0.0),
        box.y0 + depths.get(Edge.BOTTOM, 0.0),
        box.x1 - depths.get(Edge.RIGHT, 0.0),
        box.y1 - depths.get(Edge.TOP, 0.0),
    )


def _laid_box(piece: Piece, box: Bounds) -> Bounds:
    """A box of a piece on the assembly: fold zones and quarter turns keep its sides level and upright."""
    a, b = piece.placement.on_assembly([Point(box.x0, box.y0), Point(box.x1, box.y1)])
    return Bounds(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))


def _within(box: Bounds, x: float, y: float) -> bool:
    return box.x0 <= x <= box.x1 and box.y0 <= y <= box.y1


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
