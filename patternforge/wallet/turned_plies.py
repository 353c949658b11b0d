"""What is turned in along the edges of layers, as thickness standing over the panels it lies on."""

from __future__ import annotations

from patternforge.geometry.point import Bounds
from patternforge.wallet.blank import TurnedSide
from patternforge.wallet.body import Body
from patternforge.wallet.parts.over_edges import highest, standings
from patternforge.wallet.pattern import DraftedPanel, Term
from patternforge.wallet.spec import BankPart, Design, Edge, LayerPart, PocketPart, Side
from patternforge.wallet.stacks import Ply, showing_side
from patternforge.wallet.sums import MEASURED, Sum
from patternforge.wallet.turned import turned_sides

__all__ = ["with_turned_in"]


def with_turned_in(
    design: Design, widths: tuple[float, ...], height: float, plies: tuple[tuple[Ply, ...], ...]
) -> tuple[tuple[Ply, ...], ...]:
    """The plies of every panel with what is turned in there, at the back of the last of the layers it is turned over.

    It reaches further in than the stitches do, so contents may lie over it; where the highest stack of the pockets
    stands beside it, only what it rises above that counts.
    """
    turning = [part for part in design.parts if isinstance(part, LayerPart) and part.turned]
    if not turning:
        return plies
    room = _laid_apart(widths, height)
    found = [list(each) for each in plies]
    for part in turning:
        for panel in part.panels:
            found[panel] = _with(design, room, part, panel, found[panel])
    return tuple(tuple(each) for each in found)


def _laid_apart(widths: tuple[float, ...], height: float) -> Body:
    """Panels each from 0 to their width: where they lie in the row is of no account here."""
    panels = tuple(DraftedPanel("", 0.0, width, Sum("", ())) for width in widths)
    return Body(panels, (), 0.0, height, 0.0)


def _with(design: Design, room: Body, part: LayerPart, panel: int, plies: list[Ply]) -> list[Ply]:
    here = [side for side in turned_sides(design, part) if _touches(part, side.edge, panel)]
    if not here:
        return plies
    pockets = [p for p in design.parts if isinstance(p, BankPart | PocketPart) and p.panel == panel]
    standing = [standings(design, room, pocket) for pocket in pockets]
    whole = Bounds(0.0, 0.0, room.panels[panel].x1, room.height)
    peaks = sum(highest(each, whole) for each in standing)
    over = [box for each in standing for box in each]
    beside = {side.edge: highest(over, _strip(part, side, whole)) for side in here}
    tallest = max(here, key=lambda side: _height(side) + beside[side.edge])
    added = Ply(part.name, False, _risen(part, tallest, beside[tallest.edge] - peaks))
    names = {part.name, *(name for side in here for name in side.spec.over)}
    places = [i for i, ply in enumerate(plies) if ply.leather and ply.part in names]
    at = places[-1] + 1 if showing_side(design, part) is Side.OUTSIDE else places[0]
    return [*plies[:at], added, *plies[at:]] if added.term.value > 0 else plies


def _risen(part: LayerPart, side: TurnedSide, lower: float) -> Term:
    """What is turned in at a side as far as it rises above the highest stack of the pockets."""
    name = f"part {part.name}.turned {side.edge.value}"
    parts = (
        Term("core", side.spec.core, (f"{name}.core",)),
        Term("turned in", side.turn.thickness, (f"{name}.thickness",)),
        Term("as the pockets stand lower there", lower, (MEASURED,)),
    )
    return Term(f"{part.name} turned in", max(_height(side) + lower, 0.0), parts=parts)


def _height(side: TurnedSide) -> float:
    return side.spec.core + side.turn.thickness


def _strip(part: LayerPart, side: TurnedSide, whole: Bounds) -> Bounds:
    """Where on the panel lies what is turned in at a side."""
    inset = dict(part.inset).get(side.edge, 0.0)
    low, high = inset, inset + side.turn.reach + side.spec.overlap
    return {
        Edge.LEFT: Bounds(low, 0.0, high, whole.y1),
        Edge.RIGHT: Bounds(whole.x1 - high, 0.0, whole.x1 - low, whole.y1),
        Edge.BOTTOM: Bounds(0.0, low, whole.x1, high),
        Edge.TOP: Bounds(0.0, whole.y1 - high, whole.x1, whole.y1 - low),
    }[side.edge]


def _touches(part: LayerPart, edge: Edge, panel: int) -> bool:
    """Whether an edge of a layer lies on a panel."""
    return edge in (Edge.BOTTOM, Edge.TOP) or panel == (part.first if edge is Edge.LEFT else part.last)
