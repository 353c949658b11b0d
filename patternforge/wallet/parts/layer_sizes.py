"""What a layer lays over its panels, asks of the body, and moves to whole stitches."""

from __future__ import annotations

from dataclasses import replace

from patternforge.geometry.point import Point
from patternforge.wallet.body import Body, layer_extent
from patternforge.wallet.border import inner_margin, inner_margin_name, opposite, seam_along
from patternforge.wallet.parts.kind import Need, Runs, Way, mouth_runs
from patternforge.wallet.parts.mid_stitch import mid_stitch_shift
from patternforge.wallet.pattern import Term
from patternforge.wallet.spec import Design, Edge, LayerPart
from patternforge.wallet.stacks import (
    Ply,
    film_plies,
    held_panels,
    held_term,
    standing,
    standing_names,
    taut_terms,
)

__all__ = ["floor_term", "layer_needs", "layer_nominal", "layer_plies", "whole_layer"]


def layer_plies(design: Design, part: LayerPart, panel: int) -> tuple[Ply, ...]:
    """What it holds, the films behind its windows, its leather."""
    own = Term(
        f"{part.name} ({part.leather})", design.leather(part.leather).t, (f"leather {part.leather}.thickness",)
    )
    leather = Ply(part.name, True, own)
    held = part.holds if panel in held_panels(part) else ()
    counts = ((each, (f"part {part.name}.holds {each.content}", "load.notes")) for each in held)
    terms = (held_term(design, each.content, each.count * design.load.notes, of) for each, of in counts)
    return (
        *(Ply(part.name, False, term) for term in terms if term.value > 0),
        *film_plies(design, part, panel),
        leather,
    )


def layer_needs(design: Design, part: LayerPart, way: Way) -> list[Need]:
    """Room for each of the things it holds."""
    return [_held_need(design, part, held.content, way) for held in part.holds]


def layer_nominal(part: LayerPart) -> dict[str, float]:
    """Its drop."""
    return {"drop": part.drop}


def whole_layer(design: Design, body: Body, runs: Runs, part: LayerPart) -> tuple[LayerPart, float]:
    """The layer with its lowered edge midway between two holes of the seam it crosses."""
    sides = (Edge.LEFT, Edge.RIGHT) if part.opening in (Edge.TOP, Edge.BOTTOM) else (Edge.BOTTOM, Edge.TOP)
    seams = [(side, seam_along(design, side, part)) for side in sides]
    sewn = next(((side, seam) for side, seam in seams if seam), None)
    if part.drop <= 0 or "drop" in part.exact or sewn is None:
        return part, design.stitching.pitch
    side, seam = sewn
    at, inward = _drop_point(body, part, side, seam.margin)
    spacing, shift = mid_stitch_shift(runs[seam.name], at, inward)
    return replace(part, drop=part.drop + shift), spacing


def _drop_point(body: Body, part: LayerPart, side: Edge, margin: float) -> tuple[Point, Point]:
    """Where the lowered edge crosses the stitch line on one side, and the direction it is lowered in."""
    x0, x1 = layer_extent(body, part)
    x = {Edge.LEFT: margin, Edge.RIGHT: body.width - margin}
    y = {Edge.BOTTOM: margin, Edge.TOP: body.height - margin}
    places = {
        Edge.TOP: (Point(x.get(side, 0.0), body.height - part.drop), Point(0.0, -1.0)),
        Edge.BOTTOM: (Point(x.get(side, 0.0), part.drop), Point(0.0, 1.0)),
        Edge.LEFT: (Point(x0 + part.drop, y.get(side, 0.0)), Point(1.0, 0.0)),
        Edge.RIGHT: (Point(x1 - part.drop, y.get(side, 0.0)), Point(-1.0, 0.0)),
    }
    return places[part.opening]


def _held_need(design: Design, part: LayerPart, content: str, way: Way) -> Need:
    item = design.item(content)
    head, inner = ("body.headroom",), inner_margin_name(design)
    if mouth_runs(part.opening) is way:
        margins = Term("two margins", 2 * inner_margin(design), (inner,), 2)
        count = next(held.count for held in part.holds if held.content == content)
        taut = taut_terms(design.content(content), part.lying, count)
        return (*taut, Term("ease", design.body.headroom, head), margins)
    along = Term(
        f"{content}: towards the mouth", standing(item, part.lying)[1], standing_names(content, part.lying)[1:]
    )
    return (along, floor_term(design, part), Term("headroom", design.body.headroom, head))


def floor_term(design: Design, part: LayerPart) -> Term:
    """How far from the side opposite the opening a held item stops: at the relief of the fold there, or at a seam."""
    fold = {Edge.LEFT: part.first, Edge.RIGHT: part.last - 1}.get(part.opening)
    if fold is not None and 0 <= fold < len(design.body.folds):
        return Term("relief at the fold", design.body.folds[fold].relief, (f"fold {fold + 1}.relief",))
    seam = seam_along(design, opposite(part.opening), part)
    if seam:
        return Term("margin", seam.margin, (f"seam {seam.name}.margin",))
    return Term("margin", inner_margin(design), (inner_margin_name(design),))
