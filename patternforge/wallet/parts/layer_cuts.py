"""What is cut into the edges of a layer: relief at folds, its mouth, thumb notches, notches in free edges."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.body import Body, layer_extent
from patternforge.wallet.border import inner_margin, seam_along
from patternforge.wallet.edge_cuts import bow, edge_direction, edge_place, relief, vee, with_cut
from patternforge.wallet.outline import Shape
from patternforge.wallet.parts.mouth import EAR
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import Design, Edge, EdgeNotch, LayerPart, MouthShape, NotchShape
from patternforge.wallet.spots import spot_point

__all__ = ["has_mouth", "with_layer_cuts"]

_LEVEL = (Edge.BOTTOM, Edge.TOP)
_CLOCKWISE = (Edge.TOP, Edge.LEFT)  # edges that counter-clockwise run towards lesser x or y

Span = tuple[int, float, float]  # the panel, and from where to where along the edge, mm


def has_mouth(part: LayerPart) -> bool:
    """Whether its opening edge is one that things go in over."""
    return part.drop > 0 or part.thumb is not None or part.mouth.shape is not MouthShape.STRAIGHT


def with_layer_cuts(design: Design, body: Body, part: LayerPart, shape: Shape) -> Shape:
    """The shape with all that is cut into its edges.

    DraftError when a cut does not fit its edge, or a seam runs along a mouth.
    """
    for edge in _LEVEL if part.notch > 0 else ():
        for fold in body.folds[part.first : part.last]:
            start, end = _stretch(shape, edge, fold.x0, fold.x1)
            shape = with_cut(shape, relief(start, end, part.notch))
    if has_mouth(part):
        shape = _with_mouth(design, body, part, shape)
    for notch in part.notches:
        shape = _notched(body, part, notch, shape)
    return shape


def _stretch(shape: Shape, edge: Edge, low: float, high: float) -> tuple[Point, Point]:
    """Both ends of a stretch of an edge, counter-clockwise."""
    start, end = (high, low) if edge in _CLOCKWISE else (low, high)
    return edge_place(shape, edge, start), edge_place(shape, edge, end)


def _with_mouth(design: Design, body: Body, part: LayerPart, shape: Shape) -> Shape:
    edge = part.opening
    if part.drop <= 0 and seam_along(design, edge, part):
        raise DraftError(f"a seam runs along its {edge.value} edge and would sew its mouth shut")
    if part.mouth.shape is MouthShape.DIPPED:
        for _, low, high in _spans(design, body, part):
            start, end = _stretch(shape, edge, low, high)
            shape = with_cut(shape, bow(start, end, part.mouth.depth, EdgeRole.MOUTH))
    if part.thumb:
        wanted = part.panels if part.thumb.panel is None else (part.thumb.panel,)
        for panel, low, high in _spans(design, body, part):
            if panel in wanted or edge not in _LEVEL:
                shape = _thumbed(part, shape, (low + high) / 2, high - low)
    return shape


def _thumbed(part: LayerPart, shape: Shape, middle: float, room: float) -> Shape:
    thumb = part.thumb
    if thumb is None:
        return shape
    if thumb.width > room:
        raise DraftError(f"a thumb notch {thumb.width:.2f} mm wide does not fit a mouth of {room:.2f} mm")
    at = edge_place(shape, part.opening, middle)
    half = edge_direction(shape, at) * (thumb.width / 2)
    return with_cut(shape, bow(at - half, at + half, thumb.depth, EdgeRole.MOUTH))


def _notched(body: Body, part: LayerPart, notch: EdgeNotch, shape: Shape) -> Shape:
    spot = spot_point(body, notch.spot)
    at = edge_place(shape, notch.edge, spot.x if notch.edge in _LEVEL else spot.y)
    half = edge_direction(shape, at) * (notch.width / 2)
    cut = {NotchShape.ROUND: bow, NotchShape.VEE: vee}[notch.shape]
    try:
        return with_cut(shape, cut(at - half, at + half, notch.depth, EdgeRole.RAW))
    except DraftError as fault:
        raise DraftError(f"notch '{notch.name}': {fault}") from fault


def _spans(design: Design, body: Body, part: LayerPart) -> Iterator[Span]:
    """Where a mouth may be cut: between the stitch lines, on each panel for itself so that no arc lies in a fold."""
    if part.opening not in _LEVEL:
        inset = dict(part.inset)
        low = inset.get(Edge.BOTTOM, 0.0) + _ear(design, part, Edge.BOTTOM)
        yield part.first, low, body.height - inset.get(Edge.TOP, 0.0) - _ear(design, part, Edge.TOP)
        return
    left, right = layer_extent(body, part)
    for panel in part.panels:
        first, last = panel == part.first, panel == part.last
        low = left + _ear(design, part, Edge.LEFT) if first else body.panels[panel].x0 + body.folds[panel - 1].relief
        high = right - _ear(design, part, Edge.RIGHT) if last else body.panels[panel].x1 - body.folds[panel].relief
        yield panel, low, high


def _ear(design: Design, part: LayerPart, edge: Edge) -> float:
    """How far a mouth stays whole beside an edge: past its stitch line, so that the holes meet it at full height."""
    seam = seam_along(design, edge, part)
    return (seam.margin if seam else inner_margin(design)) + EAR
