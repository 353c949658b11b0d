"""The layer: covers whole panels and the folds between; a lowered edge makes a pocket with the layer outside it."""

from __future__ import annotations

import math
from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.blank import Blank, PartBlanks
from patternforge.wallet.body import Body, layer_development, layer_extent
from patternforge.wallet.border import seam_along
from patternforge.wallet.copies import copied_shape, followed_layer
from patternforge.wallet.figure import is_shaped, layer_figure
from patternforge.wallet.outline import Corner, Shape, shape
from patternforge.wallet.parts.kind import PartKind
from patternforge.wallet.parts.layer_cuts import has_mouth, with_layer_cuts
from patternforge.wallet.parts.layer_sizes import floor_term, layer_needs, layer_nominal, layer_plies, whole_layer
from patternforge.wallet.pattern import EdgeRole, Pocket
from patternforge.wallet.quad import sides_of
from patternforge.wallet.spec import Design, Edge, Held, LayerPart
from patternforge.wallet.stacks import held_panels, showing_side, standing
from patternforge.wallet.turned import turned_sides

__all__ = ["LAYER", "layer_blanks"]


def layer_blanks(design: Design, body: Body, part: LayerPart, _spacing: float) -> PartBlanks:
    """The one blank of a layer and the room between it and the layer outside it."""
    showing = showing_side(design, part)
    panels = tuple(part.panels)
    blank = Blank(
        name=part.name,
        leather=part.leather,
        shape=_shape(design, body, part),
        showing=showing,
        panels=panels,
        trims=part.trim,
        development=layer_development(body, part),
        visible=_is_seen(design, part),
        turned=turned_sides(design, part),
    )
    held = tuple(_held(design, body, part, held) for held in part.holds)
    return PartBlanks((blank,), held, ())


def _is_seen(design: Design, part: LayerPart) -> bool:
    """A layer is seen when it is the outermost or the innermost of those on one of its panels."""
    layers = [other for other in design.parts if isinstance(other, LayerPart)]
    on = ([other for other in layers if panel in other.panels] for panel in part.panels)
    return any(part in (here[0], here[-1]) for here in on)


def _shape(design: Design, body: Body, part: LayerPart) -> Shape:
    if part.follows:
        followed = followed_layer(design, part)
        return copied_shape(_shape(design, body, replace(followed, trim=())), part.inside)
    x0, x1 = layer_extent(body, part)
    trim, inset = dict(part.trim), dict(part.inset)
    bounds = {
        Edge.LEFT: x0 - trim.get(Edge.LEFT, 0.0),
        Edge.RIGHT: x1 + trim.get(Edge.RIGHT, 0.0),
        Edge.BOTTOM: inset.get(Edge.BOTTOM, 0.0) - trim.get(Edge.BOTTOM, 0.0),
        Edge.TOP: body.height - inset.get(Edge.TOP, 0.0) + trim.get(Edge.TOP, 0.0),
    }
    if bounds[Edge.LEFT] >= bounds[Edge.RIGHT] or bounds[Edge.BOTTOM] >= bounds[Edge.TOP]:
        raise DraftError("its insets leave nothing of it")
    _check_notch(body, part)
    roles = {edge: _role(design, part, edge) for edge in Edge}
    figured = is_shaped(design, part)
    outline = _figured(design, body, part, bounds) if figured else shape(_corners(body, part, bounds, roles))
    return with_layer_cuts(design, body, part, outline)


def _figured(design: Design, body: Body, part: LayerPart, bounds: dict[Edge, float]) -> Shape:
    box = (bounds[Edge.LEFT], bounds[Edge.BOTTOM], bounds[Edge.RIGHT], bounds[Edge.TOP])
    figure = layer_figure(design, body, part, box)
    path = figure.path
    roles = {edge: _role(design, part, edge) for edge in Edge}
    return Shape(path, tuple(roles[side] if side else EdgeRole.RAW for side in sides_of(path, figure)))


def _check_notch(body: Body, part: LayerPart) -> None:
    lowered = part.drop if part.opening in (Edge.TOP, Edge.BOTTOM) else 0.0
    if 2 * part.notch >= body.height - lowered:
        raise DraftError(f"relief notches {part.notch:.2f} mm deep meet in the middle: make them shallower")
    if part.last > part.first:
        for index in part.panels:
            _check_beside_folds(body, part, index)


def _check_beside_folds(body: Body, part: LayerPart, index: int) -> None:
    """A panel has room for the relief notches that reach into it and for the body's rounding at its outer side."""
    panel = body.panels[index]
    notches = (index > part.first) + (index < part.last)
    outer = {0: Edge.LEFT, len(body.panels) - 1: Edge.RIGHT}.get(index)
    rounding = max(body.rounding(outer, edge) for edge in (Edge.TOP, Edge.BOTTOM)) if outer else 0.0
    if notches * part.notch + rounding < panel.x1 - panel.x0:
        return
    if part.notch:
        raise DraftError(
            f"relief notches of {part.notch:.2f} mm do not fit beside each other on panel '{panel.name}':"
            " make them smaller"
        )
    raise DraftError(f"panel '{panel.name}' is narrower than the corner's rounding: round it less")


def _role(design: Design, part: LayerPart, edge: Edge) -> EdgeRole:
    if has_mouth(part) and edge is part.opening:
        return EdgeRole.MOUTH
    if dict(part.trim).get(edge):
        return EdgeRole.TRIMMED
    if dict(part.inset).get(edge):
        return EdgeRole.RAW
    at_fold = (edge is Edge.LEFT and part.first > 0) or (
        edge is Edge.RIGHT and part.last < len(design.body.panels) - 1
    )
    return EdgeRole.SEWN if seam_along(design, edge, part) and not at_fold else EdgeRole.RAW


def _corners(body: Body, part: LayerPart, bounds: dict[Edge, float], roles: dict[Edge, EdgeRole]) -> list[Corner]:
    """Corners counter-clockwise from the lower left, each with the edge that leaves it."""
    left, right, bottom, top = (bounds[e] for e in (Edge.LEFT, Edge.RIGHT, Edge.BOTTOM, Edge.TOP))
    sides = [
        (Edge.BOTTOM, Point(left, bottom), Edge.LEFT),
        (Edge.RIGHT, Point(right, bottom), Edge.BOTTOM),
        (Edge.TOP, Point(right, top), Edge.RIGHT),
        (Edge.LEFT, Point(left, top), Edge.TOP),
    ]
    corners: list[Corner] = []
    for leaving, at, arriving in sides:
        radius = _radius(body, part, {arriving, leaving})
        corners += _lowered_corner(at, radius, arriving, leaving, part, roles)
    return corners


def _radius(body: Body, part: LayerPart, edges: set[Edge]) -> float:
    """The body's rounding at the body's corners, the part's own at corners that an inset gives it."""
    if edges & {edge for edge, amount in part.inset if amount > 0}:
        return part.corner or 0.0
    return _trimmed_radius(part, edges, body.corner) if _at_body_corner(body, part, edges) else 0.0


def _trimmed_radius(part: LayerPart, edges: set[Edge], radius: float) -> float:
    """A corner trimmed alike on both sides keeps its rounding; trimmed on one side only it is cut square."""
    amounts = {dict(part.trim).get(edge, 0.0) for edge in edges}
    if len(amounts) > 1:
        return 0.0
    return radius + amounts.pop() if radius > 0 else 0.0


def _at_body_corner(body: Body, part: LayerPart, edges: set[Edge]) -> bool:
    return part.first == 0 if Edge.LEFT in edges else part.last == len(body.panels) - 1


def _lowered_corner(
    at: Point, radius: float, arriving: Edge, leaving: Edge, part: LayerPart, roles: dict[Edge, EdgeRole]
) -> list[Corner]:
    """One corner of the layer; beside a lowered edge the body's rounding is cut where the edge meets it."""
    opening, drop = part.opening, part.drop
    if drop <= 0 or opening not in (arriving, leaving):
        return [Corner(at, radius, 0.0, roles[leaving])]
    into = _inward(opening) * drop
    if drop >= radius:
        return [Corner(at + into, 0.0, 0.0, roles[leaving])]
    rest = radius - drop
    inset = radius - math.sqrt(radius * radius - rest * rest)
    bulge = math.tan(math.asin(rest / radius) / 4)
    other = leaving if opening is arriving else arriving
    on_opening = at + into + _inward(other) * inset
    on_side = at + _inward(opening) * radius
    if opening is arriving:
        return [Corner(on_opening, 0.0, bulge), Corner(on_side, 0.0, 0.0, roles[leaving])]
    return [Corner(on_side, 0.0, bulge), Corner(on_opening, 0.0, 0.0, roles[leaving])]


def _inward(edge: Edge) -> Point:
    return {
        Edge.LEFT: Point(1.0, 0.0),
        Edge.RIGHT: Point(-1.0, 0.0),
        Edge.BOTTOM: Point(0.0, 1.0),
        Edge.TOP: Point(0.0, -1.0),
    }[edge]


def _held(design: Design, body: Body, part: LayerPart, held: Held) -> Pocket:
    """The room of a held item: pushed home against the side opposite the opening, in the middle along the mouth."""
    across, along = standing(design.item(held.content), part.lying)
    panels = held_panels(part)
    if part.opening in (Edge.LEFT, Edge.RIGHT):
        x0 = _home(design, body, part, along)
        y0 = (body.height - across) / 2
        box = (x0, y0, x0 + along, y0 + across)
    else:
        left, right = layer_extent(body, part)
        x0 = (left + right - across) / 2
        margin = floor_term(design, part).value
        y0 = margin if part.opening is Edge.TOP else body.height - margin - along
        box = (x0, y0, x0 + across, y0 + along)
    return Pocket(
        part=part.name,
        piece=part.name,
        content=held.content,
        count=held.count,
        panel=panels[0],
        opening=part.opening,
        box=box,
        show=0.0,
        ease=0.0,
        panels=panels,
        held=True,
    )


def _home(design: Design, body: Body, part: LayerPart, size: float) -> float:
    """Left end of an item that goes in sideways: it stops at the far seam, or at the relief of the panel's fold."""
    panel, floor = body.panels[held_panels(part)[0]], floor_term(design, part).value
    return panel.x1 - floor - size if part.opening is Edge.LEFT else panel.x0 + floor


LAYER = PartKind(
    word="layer",
    plies=layer_plies,
    needs=layer_needs,
    nominal=layer_nominal,
    whole=whole_layer,
    blanks=layer_blanks,
)
