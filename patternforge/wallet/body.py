"""The body: how wide each panel and fold zone is, how long each layer runs through each fold."""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternforge.errors import DraftError
from patternforge.geometry.point import COINCIDENT
from patternforge.leather.closing import Closing, closing
from patternforge.leather.fold import arc_length, eased_length, inside_radius
from patternforge.wallet.pattern import Development, DraftedFold, DraftedPanel, FoldLayer, Sum, Term
from patternforge.wallet.spec import Design, Edge, LayerPart
from patternforge.wallet.stacks import Ply, fold_thickness, inside_of, outside_of

__all__ = ["Body", "drafted_body", "fold_layers", "layer_development", "layer_extent"]


@dataclass(frozen=True, slots=True)
class Body:
    """The row of panels and fold zones on the assembly, ``width`` x ``height`` mm; ``corners`` have a rounding of
    their own, mm, by their two edges.
    """

    panels: tuple[DraftedPanel, ...]
    folds: tuple[DraftedFold, ...]
    width: float
    height: float
    corner: float
    corners: tuple[tuple[tuple[Edge, Edge], float], ...] = ()

    def rounding(self, *edges: Edge) -> float:
        """Radius of the outer corner where two edges of the body meet, mm."""
        return next((radius for corner, radius in self.corners if set(corner) == set(edges)), self.corner)


def drafted_body(design: Design, plies: tuple[tuple[Ply, ...], ...], widths: tuple[Sum, ...], height: float) -> Body:
    """The body whose panels have these plies and widths; a fold zone is as wide as its innermost layer is long.

    DraftError when no layer crosses a fold.
    """
    folds, panels, x = [], [], 0.0
    order = closed(design)
    for index, width in enumerate(widths):
        panels.append(DraftedPanel(design.body.panels[index].name, x, x + width.value, width))
        x += width.value
        if index < len(design.body.folds):
            layers = fold_layers(design, index, _reached(design, index, plies, widths), order)
            zone = min(layers, key=lambda layer: layer.gap.value).flat_length
            spec = design.body.folds[index]
            folds.append(DraftedFold(index + 1, spec.angle, spec.compensation, spec.relief, x, x + zone, layers))
            x += zone
    return Body(tuple(panels), tuple(folds), x, height, design.body.corner, design.body.corners)


def _reached(
    design: Design, fold: int, plies: tuple[tuple[Ply, ...], ...], widths: tuple[Sum, ...]
) -> tuple[tuple[Ply, ...], ...]:
    """The plies of every panel without the layers beside a fold (0-based) that its other panel does not reach."""
    relief = design.body.folds[fold].relief
    found = list(plies)
    for panel, other, edge in ((fold, fold + 1, Edge.RIGHT), (fold + 1, fold, Edge.LEFT)):
        beyond = {
            part.name
            for part in design.parts
            if isinstance(part, LayerPart)
            and not {panel, other} <= set(part.panels)
            and _stops_short(part, edge) + relief >= widths[other].value - COINCIDENT
        }
        found[panel] = tuple(ply for ply in plies[panel] if not (ply.leather and ply.part in beyond))
    return tuple(found)


def _stops_short(part: LayerPart, edge: Edge) -> float:
    """How far short of its relief at a fold a layer ends everywhere, mm; 0 along an edge with a shape or a trim."""
    if edge in dict(part.trim) or edge in dict(part.shapes):
        return 0.0
    return dict(part.inset).get(edge, 0.0) + (part.drop if part.opening is edge else 0.0)


def closed(design: Design) -> Closing:
    """The closing of the design's panels."""
    return closing(len(design.body.panels), [fold.angle for fold in design.body.folds], design.body.closing)


def fold_layers(
    design: Design, fold: int, plies: tuple[tuple[Ply, ...], ...], order: Closing
) -> tuple[FoldLayer, ...]:
    """Every layer that crosses fold ``fold`` (0-based), from the outside in, with its gap, radius and lengths.

    Flat length: angle x (r + k t), r = max(gap / 2, min_radius x t), t as skived in the fold; eased by the fold's
    compensation. Where a layer is too stiff for its gap it keeps a hollow inside it, and every layer round it goes
    round the hollow too. What a fold goes round lies in the gap of every layer.
    """
    crossing = [
        part for part in design.parts if isinstance(part, LayerPart) and part.first <= fold and part.last >= fold + 1
    ]
    if not crossing:
        raise DraftError(f"{design.file}: fold {fold + 1} is crossed by no layer, so nothing joins its panels")
    gaps = [_layer_gap(design, part, fold, plies, crossing, order) for part in crossing]
    c = design.body.folds[fold].compensation
    angle = math.radians(abs(design.body.folds[fold].angle))
    innermost_first = sorted(zip(crossing, gaps, strict=True), key=lambda pair: pair[1].value)
    bent: dict[str, FoldLayer] = {}
    hollow, base = 0.0, None
    for part, gap in innermost_first:
        leather = design.leather(part.leather)
        t = fold_thickness(design, part, fold)
        radius = inside_radius(gap.value + 2 * hollow, t, leather.min_radius)
        hollow = radius - gap.value / 2
        true = arc_length(angle, radius, t, leather.neutral)
        base = true if base is None else base
        bent[part.name] = FoldLayer(part.name, gap, radius, true, eased_length(true, base, c))
    return tuple(bent[part.name] for part in crossing)


def _layer_gap(
    design: Design,
    part: LayerPart,
    fold: int,
    plies: tuple[tuple[Ply, ...], ...],
    crossing: list[LayerPart],
    order: Closing,
) -> Sum:
    spec = design.body.folds[fold]
    if abs(spec.angle) == 180:
        gap = _gap(part, fold, plies, spec.angle, order)
    else:
        gap = _corner_gap(design, part, fold, crossing)
    core = (
        (Term(f"round {spec.core or 'its core'}", spec.around, (f"fold {fold + 1}.around",)),)
        if spec.around > 0
        else ()
    )
    return Sum(gap.name, (*gap.terms, *core))


def _gap(part: LayerPart, fold: int, plies: tuple[tuple[Ply, ...], ...], angle: float, order: Closing) -> Sum:
    between = inside_of if angle > 0 else outside_of
    name = f"gap of {part.name} at fold {fold + 1}"
    own = (*between(plies[fold], part.name), *between(plies[fold + 1], part.name))
    folded_in = tuple(
        Term(
            f"panel {placed.panel + 1} folded in",
            sum(ply.term.value for ply in plies[placed.panel]),
            parts=tuple(ply.term for ply in plies[placed.panel]),
        )
        for placed in order.between[fold]
    )
    return Sum(name, (*own, *folded_in))


def _corner_gap(design: Design, part: LayerPart, fold: int, crossing: list[LayerPart]) -> Sum:
    """At a corner nothing but the crossing layers stands in the bend, each on both flanks."""
    at = crossing.index(part)
    inner = crossing[at + 1 :] if design.body.folds[fold].angle > 0 else crossing[:at]
    terms = (
        Term(
            f"2 x {p.name}", 2 * fold_thickness(design, p, fold), (f"part {p.name}.thickness in fold {fold + 1}",), 2
        )
        for p in inner
    )
    return Sum(f"gap of {part.name} at a corner", tuple(terms))


def layer_development(body: Body, part: LayerPart) -> Development:
    """The development of a layer: identity on its first panel, its own flat length in every fold zone after."""
    breaks: list[tuple[float, float]] = []
    shift = 0.0
    for fold in body.folds[part.first : part.last]:
        flat = next(layer.flat_length for layer in fold.layers if layer.part == part.name)
        breaks.append((fold.x0, fold.x0 + shift))
        shift += flat - (fold.x1 - fold.x0)
        breaks.append((fold.x1, fold.x1 + shift))
    return Development(tuple(breaks))


def layer_extent(body: Body, part: LayerPart) -> tuple[float, float]:
    """Assembly x of a layer's left and right edges: body edges, or its relief short of a fold it does not cross."""
    x0, x1 = body.panels[part.first].x0, body.panels[part.last].x1
    if part.first > 0:
        x0 += body.folds[part.first - 1].relief
    if part.last < len(body.panels) - 1:
        x1 -= body.folds[part.last].relief
    inset = dict(part.inset)
    return x0 + inset.get(Edge.LEFT, 0.0), x1 - inset.get(Edge.RIGHT, 0.0)
