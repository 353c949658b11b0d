"""What is turned in along the edges of layers, as thickness standing over the panels it lies on."""

from __future__ import annotations

from patternforge.wallet.pattern import Term
from patternforge.wallet.spec import Design, Edge, LayerPart, Side
from patternforge.wallet.stacks import Ply, edge_thickness, showing_side

__all__ = ["with_turned_in"]


_SIDES = (Edge.LEFT, Edge.RIGHT)


def with_turned_in(design: Design, panel: int, plies: tuple[Ply, ...]) -> tuple[Ply, ...]:
    """The plies of a panel with what is turned in there, at the back of the last of the layers it is turned over.

    It reaches further in than the stitches do, so contents lie over it. On a panel with pockets their highest stack
    lies over what is turned in at the sides, and clear of it at the lower and upper edge.
    """
    found = list(plies)
    pocketed = any(panel in part.panels for part in design.parts if not isinstance(part, LayerPart))
    for part in design.parts:
        if isinstance(part, LayerPart) and part.turned and panel in part.panels:
            counting = tuple(edge for edge in Edge if not pocketed or edge in _SIDES)
            found = _with(design, part, panel, found, counting)
    return tuple(found)


def _with(design: Design, part: LayerPart, panel: int, plies: list[Ply], counting: tuple[Edge, ...]) -> list[Ply]:
    edges = [(spec, edge) for spec in part.turned for edge in spec.edges if edge in counting]
    here = [(spec, edge) for spec, edge in edges if _touches(part, edge, panel)]
    if not here:
        return plies
    spec, edge = max(here, key=lambda each: each[0].core + edge_thickness(design, part, each[1]))
    added = Ply(part.name, False, Term(f"{part.name} turned in", spec.core + edge_thickness(design, part, edge)))
    over = {part.name, *spec.over}
    places = [i for i, ply in enumerate(plies) if ply.leather and ply.part in over]
    at = places[-1] + 1 if showing_side(design, part) is Side.OUTSIDE else places[0]
    return [*plies[:at], added, *plies[at:]]


def _touches(part: LayerPart, edge: Edge, panel: int) -> bool:
    """Whether an edge of a layer lies on a panel."""
    return edge in (Edge.BOTTOM, Edge.TOP) or panel == (part.first if edge is Edge.LEFT else part.last)
