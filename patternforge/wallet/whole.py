"""Whole stitches: nominal sizes that carry a mouth move so that the mouth lies midway between two holes."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from patternforge.geometry.point import Point
from patternforge.geometry.spacing import Span, even_positions
from patternforge.wallet.body import Body
from patternforge.wallet.border import seam_along
from patternforge.wallet.frame import Frame, pocket_frame
from patternforge.wallet.parts.slots import pocket_slots
from patternforge.wallet.pattern import Adjustment
from patternforge.wallet.run import Run
from patternforge.wallet.spec import BankPart, Design, Edge, LayerPart, MouthShape, MouthSpec, PocketPart, SeamSpec

__all__ = ["Fitted", "fitted_to_stitches"]

_OFF_LINE = 0.01


@dataclass(frozen=True, slots=True)
class Fitted:
    """A part with its sizes moved to whole stitches, the spacing its seams follow, and what moved."""

    part: LayerPart | BankPart | PocketPart
    spacing: float
    adjustments: tuple[Adjustment, ...]


def fitted_to_stitches(
    design: Design, body: Body, runs: Mapping[str, tuple[Run, ...]], part: LayerPart | BankPart | PocketPart
) -> Fitted:
    """The part drafted to whole stitches of the seam its mouths meet; sizes named in ``exact`` stay."""
    fitted, spacing = _fitted(design, body, runs, part)
    return Fitted(fitted, spacing, _moved(part, fitted))


def _fitted(
    design: Design, body: Body, runs: Mapping[str, tuple[Run, ...]], part: LayerPart | BankPart | PocketPart
) -> tuple[LayerPart | BankPart | PocketPart, float]:
    if isinstance(part, LayerPart):
        return _layer(design, body, runs, part)
    if isinstance(part, PocketPart):
        return _pocket(design, body, runs, part)
    return _bank(design, body, runs, part)


def _bank(design: Design, body: Body, runs: Mapping[str, tuple[Run, ...]], part: BankPart) -> tuple[BankPart, float]:
    frame = pocket_frame(design, body, part)
    front = pocket_slots(design, frame, part).slots[0]
    spacing, shift = _meeting(design, body, runs, part, frame, front.mouth)
    if "step" not in part.exact and part.slots > 1:
        part = replace(part, step=_whole(part.step, spacing))
    if "overlap" not in part.exact and part.slots > 1:
        part = replace(part, overlap=_whole(part.overlap, _between_mouths(part.step, spacing)))
    if "show" not in part.exact:
        part = replace(part, show=part.show - shift)
    return replace(part, mouth=_mouth(part, spacing)), spacing


def _between_mouths(step: float, spacing: float) -> float:
    """Spacing of the stitches from mouth to mouth: a step that stays exact is shared out evenly."""
    return step / max(round(step / spacing), 1) if step > 0 else spacing


def _pocket(
    design: Design, body: Body, runs: Mapping[str, tuple[Run, ...]], part: PocketPart
) -> tuple[PocketPart, float]:
    frame = pocket_frame(design, body, part)
    spacing, shift = _meeting(design, body, runs, part, frame, frame.floor.stitch + part.depth)
    if "depth" not in part.exact:
        part = replace(part, depth=part.depth + shift)
    return replace(part, mouth=_mouth(part, spacing)), spacing


def _mouth(part: BankPart | PocketPart, spacing: float) -> MouthSpec:
    if part.mouth.shape is MouthShape.SLANTED:
        return replace(part.mouth, depth=_whole(part.mouth.depth, spacing))
    return part.mouth


def _layer(
    design: Design, body: Body, runs: Mapping[str, tuple[Run, ...]], part: LayerPart
) -> tuple[LayerPart, float]:
    sides = (Edge.LEFT, Edge.RIGHT) if part.opening in (Edge.TOP, Edge.BOTTOM) else (Edge.BOTTOM, Edge.TOP)
    seams = [(side, seam_along(design, side, part)) for side in sides]
    sewn = next(((side, seam) for side, seam in seams if seam), None)
    if part.drop <= 0 or "drop" in part.exact or sewn is None:
        return part, design.stitching.pitch
    side, seam = sewn
    at, inward = _drop_point(body, part, side, seam.margin)
    spacing, shift = _shift(runs[seam.name], at, inward)
    return replace(part, drop=part.drop + shift), spacing


def _drop_point(body: Body, part: LayerPart, side: Edge, margin: float) -> tuple[Point, Point]:
    """Where the lowered edge crosses the stitch line on one side, and the direction it is lowered in."""
    x = {Edge.LEFT: margin, Edge.RIGHT: body.width - margin}
    y = {Edge.BOTTOM: margin, Edge.TOP: body.height - margin}
    places = {
        Edge.TOP: (Point(x.get(side, 0.0), body.height - part.drop), Point(0.0, -1.0)),
        Edge.BOTTOM: (Point(x.get(side, 0.0), part.drop), Point(0.0, 1.0)),
        Edge.LEFT: (Point(part.drop, y.get(side, 0.0)), Point(1.0, 0.0)),
        Edge.RIGHT: (Point(body.width - part.drop, y.get(side, 0.0)), Point(-1.0, 0.0)),
    }
    return places[part.opening]


def _neighbouring(design: Design, part: BankPart | PocketPart) -> SeamSpec | None:
    """The seam up the outer edge of another panel: pockets between folds keep level with that panel's."""
    if part.opening in (Edge.LEFT, Edge.RIGHT):
        return None
    return seam_along(design, Edge.LEFT, part) or seam_along(design, Edge.RIGHT, part)


def _meeting(
    design: Design,
    body: Body,
    runs: Mapping[str, tuple[Run, ...]],
    part: BankPart | PocketPart,
    frame: Frame,
    mouth: float,
) -> tuple[float, float]:
    """Spacing of the body seam a mouth meets and how far the mouth must rise; without one, of its own seams."""
    rise = frame.onto.direction(Point(0.0, 1.0))
    for border, a in ((frame.left, frame.stitch_left), (frame.right, frame.stitch_right)):
        if border.seam:
            return _shift(runs[border.seam.name], frame.onto.point(Point(a, mouth)), rise)
    beside = _neighbouring(design, part)
    if beside:
        at = frame.onto.point(Point(frame.stitch_left, mouth))
        x = beside.margin if Edge.LEFT in beside.along else body.width - beside.margin
        return _shift(runs[beside.name], Point(x, at.y), rise)
    pitch = design.stitching.pitch
    height = mouth - frame.floor.stitch
    return pitch, (max(round(height / pitch - 0.5), 0) + 0.5) * pitch - height


def _shift(runs: tuple[Run, ...], at: Point, direction: Point) -> tuple[float, float]:
    """Spacing of the run at that point, and how far the point must move along ``direction`` to lie mid-stitch.

    A mouth that stands more than a stitch off the run meets none of its holes and stays where it is.
    """
    run = min(runs, key=lambda r: r.path.distance_to(at))
    d = run.path.nearest(at)
    spans = even_positions(run.anchors, run.pitch).spans
    span = next((s for s in spans if s.start <= d <= s.end), spans[-1])
    shift = (run.path.point_at(_mid_stitch(span, d)) - at).dot(direction)
    return span.spacing, shift if abs(shift) <= span.spacing else 0.0


def _mid_stitch(span: Span, d: float) -> float:
    """The place midway between two holes of the span that lies nearest to ``d``."""
    last = max(math.floor(span.count - 0.5), 0)
    nearest = round((d - span.start) / span.spacing - 0.5)
    return span.start + (min(max(nearest, 0), last) + 0.5) * span.spacing


def _whole(size: float, spacing: float) -> float:
    """The nearest whole number of stitches, at least one; 0 stays 0."""
    return max(round(size / spacing), 1) * spacing if size > 0 else 0.0


def _moved(
    asked: LayerPart | BankPart | PocketPart, drafted: LayerPart | BankPart | PocketPart
) -> tuple[Adjustment, ...]:
    """What moved, size by size; the fall of a slanted mouth among them."""
    before, after = _sizes(asked), _sizes(drafted)
    return tuple(
        Adjustment(asked.name, size, before[size], after[size], "to whole stitches")
        for size in before
        if abs(before[size] - after[size]) > 1e-9
    )


def _sizes(part: LayerPart | BankPart | PocketPart) -> dict[str, float]:
    if isinstance(part, LayerPart):
        return {"drop": part.drop}
    if isinstance(part, PocketPart):
        return {"depth": part.depth, "mouth": part.mouth.depth}
    return {"step": part.step, "show": part.show, "overlap": part.overlap, "mouth": part.mouth.depth}
