"""Which outline a body or a layer has when its sides slant or bow or its corners differ."""

from __future__ import annotations

from patternforge.errors import DraftError
from patternforge.wallet.body import Body
from patternforge.wallet.quad import Box, Quad, quad
from patternforge.wallet.spec import Design, Edge, LayerPart

__all__ = ["body_figure", "is_shaped", "layer_figure"]

_CORNERS = ((Edge.BOTTOM, Edge.LEFT), (Edge.BOTTOM, Edge.RIGHT), (Edge.TOP, Edge.RIGHT), (Edge.TOP, Edge.LEFT))


def is_shaped(design: Design, part: LayerPart | None = None) -> bool:
    """Whether anything but plain rectangles with one rounding is asked for."""
    return bool(design.body.shapes or design.body.corners or (part and part.shapes))


def body_figure(design: Design, body: Body, box: Box, first: int, last: int) -> Quad:
    """The outline of panels ``first``..``last`` of the body; sides at a fold are straight and square."""
    outer = _outer(body, first, last)
    shapes = {edge: form for edge, form in design.body.shapes if edge in outer}
    radii = [body.rounding(*corner) if outer.issuperset(corner) else 0.0 for corner in _CORNERS]
    laid = {edge: _along(body, box, edge, outer) for edge in shapes}
    return quad(box, shapes, (radii[0], radii[1], radii[2], radii[3]), {}, laid)


def layer_figure(design: Design, body: Body, part: LayerPart, box: Box) -> Quad:
    """The outline of a layer inside its box: the body's sides where it shares them, its own where it is inset.

    A lowered edge is straight.

    DraftError for a lowered edge that would cut a corner's rounding.
    """
    own = {edge for edge, amount in part.inset if amount > 0}
    outer = _outer(body, part.first, part.last)
    shared = {edge: form for edge, form in design.body.shapes if edge in outer and edge not in own}
    lowered = {part.opening: part.drop} if part.drop > 0 else {}
    shapes = {edge: form for edge, form in {**shared, **dict(part.shapes)}.items() if edge not in lowered}
    radii = [_layer_radius(body, part, corner, own, outer) for corner in _CORNERS]
    laid = {edge: _along(body, box, edge, outer - own) for edge in shared}
    return quad(box, shapes, (radii[0], radii[1], radii[2], radii[3]), lowered, laid)


def _along(body: Body, box: Box, edge: Edge, ends: set[Edge]) -> Box:
    """The box that a side of the body runs along, of which a figure has a part: as far as the figure's own ends."""
    x0, y0, x1, y1 = box
    if edge in (Edge.BOTTOM, Edge.TOP):
        return (x0 if Edge.LEFT in ends else 0.0, y0, x1 if Edge.RIGHT in ends else body.width, y1)
    return (x0, y0 if Edge.BOTTOM in ends else 0.0, x1, y1 if Edge.TOP in ends else body.height)


def _outer(body: Body, first: int, last: int) -> set[Edge]:
    """The sides of panels ``first``..``last`` that are sides of the body."""
    sides = {Edge.BOTTOM, Edge.TOP}
    sides |= {Edge.LEFT} if first == 0 else set()
    return sides | ({Edge.RIGHT} if last == len(body.panels) - 1 else set())


def _layer_radius(body: Body, part: LayerPart, corner: tuple[Edge, Edge], own: set[Edge], outer: set[Edge]) -> float:
    if own & set(corner):
        return part.corner or 0.0
    radius = body.rounding(*corner) if outer.issuperset(corner) else 0.0
    if part.drop > 0 and part.opening in corner:
        if part.drop < radius:
            raise DraftError(
                f"lowered by {part.drop:.2f} mm it would cut the rounding of {radius:.2f} mm: lower it more"
            )
        return 0.0
    return radius
