"""The section: the wallet cut through across its folds, closed or laid open, every layer with its thickness.

On a panel each layer rests on what lies outside it there. In a fold it runs an arc between its two flanks whose
fibre has the length the closed layer needs; what the flat piece has more or less than that shows at its far edge.
Laid open, a layer longer than the innermost one arches outwards. x runs across the folds, z from the outside in.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from patternforge.fit.close import Bend, ClosedWallet
from patternforge.fit.layout import Layout, Ply
from patternforge.fit.plates import Plate, flat_plate, plates, with_spines
from patternforge.fit.slabs import Slab, slabs_across, slabs_along, stack_height
from patternforge.geometry.band import arc_of_length, band
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import DraftedFold, Piece

__all__ = ["Section", "Strip", "closed_section", "lengthwise_section", "open_section"]

_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Strip:
    """A stretch of one ply as it is cut: its area, and how long its fibre is there, mm.

    ``leather`` is the role a piece is cut from, empty for what the wallet holds.
    """

    ply: str
    leather: str
    path: Path
    length: float


@dataclass(frozen=True, slots=True)
class Section:
    """A cut ``at`` a height of the assembly, or at a place across the closed wallet; mm.

    ``thickness`` is what stands over each other at the thickest.
    """

    name: str
    at: float
    strips: tuple[Strip, ...]
    thickness: float

    def length(self, ply: str) -> float:
        """How long the fibre of a ply is along the cut, mm."""
        return sum(strip.length for strip in self.strips if strip.ply == ply)


def open_section(layout: Layout, y: float) -> Section:
    """The wallet laid open, cut at ``y`` mm."""
    panels = [slabs_across(layout, panel, y) for panel in range(len(layout.pattern.panels))]
    plate = flat_plate(0.0, 0.0, 0.0, 0.0, turned=False)
    strips = [_strip(layout, slab, plate, 0.0, 0.0) for slabs in panels for slab in slabs]
    for fold in layout.pattern.folds:
        for piece, low, high in _crossing(layout, fold, panels):
            strips.append(_arch(layout, fold, piece, plate.point(fold.x0, low), plate.point(fold.x1, high)))
    return Section("laid open", y, tuple(strips), max(map(stack_height, panels)))


def closed_section(layout: Layout, closed: ClosedWallet, y: float) -> Section:
    """The wallet closed on what it holds, cut at ``y`` mm.

    Panels that stay ajar are left out: folds of 180 degrees and square spines are drawn. A spine keeps its flanks as
    far apart as it is wide; its layers are arcs of their own lengths at either corner.
    """
    panels = [slabs_across(layout, panel, y) for panel in range(len(layout.pattern.panels))]
    flat = plates(layout, closed, [stack_height(slabs) for slabs in panels])
    laid = with_spines(layout, closed, flat, _tangent_levels(layout, panels))
    over = _overhangs(layout, closed)
    strips = [
        _strip(layout, slab, plate, *_shift(layout, slab, panel, over))
        for panel, plate in laid.items()
        for slab in panels[panel]
    ]
    for fold, bends in zip(layout.pattern.folds, closed.bends, strict=True):
        if {fold.number - 1, fold.number} <= set(laid):
            strips += _bent(layout, fold, bends, panels, laid)
    return Section("closed", y, tuple(strips), sum(stack_height(panels[panel]) for panel in flat))


def _tangent_levels(layout: Layout, panels: Sequence[Sequence[Slab]]) -> dict[tuple[str, int], float]:
    """The level of each piece at the left tangent of each fold, by number, that it crosses where it is cut."""
    folds = layout.pattern.folds
    return {(piece.name, f.number): low for f in folds for piece, low, _ in _crossing(layout, f, panels)}


def lengthwise_section(layout: Layout, closed: ClosedWallet, share: float = 0.5) -> Section:
    """The closed wallet cut along its folds, at a ``share`` (0 to 1) of the way across its first panel."""
    first = closed.order.stack[0].panel
    at = layout.pattern.panels[first].x0
    at += share * (layout.pattern.panels[first].x1 - at)
    flat = plates(layout, closed, [0.0] * len(layout.pattern.panels))
    across = flat[first].point(at, 0.0).x
    strips: list[Strip] = []
    z = 0.0
    for placed in closed.order.stack:
        plate = flat[placed.panel]
        slabs = slabs_along(layout, placed.panel, plate.left + plate.along.x * (across - plate.origin.x))
        height = stack_height(slabs)
        laid = flat_plate(0.0, 0.0, z, height, placed.turned)
        if placed.turned:
            laid = Plate(0.0, laid.origin, -laid.along, laid.up)
        strips += (_strip(layout, slab, laid, 0.0, 0.0) for slab in slabs)
        z += height
    return Section("closed, along the folds", at, tuple(strips), z)


def _overhangs(layout: Layout, closed: ClosedWallet) -> Mapping[tuple[str, int], float]:
    """How much longer than needed a piece is up to each panel, from the first it covers, mm."""
    over: dict[tuple[str, int], float] = {}
    for fold, bends in zip(layout.pattern.folds, closed.bends, strict=True):
        for bend in bends:
            so_far = over.get((bend.piece, fold.number - 1), 0.0)
            over[bend.piece, fold.number] = so_far + bend.has - bend.needs
    return over


def _shift(layout: Layout, slab: Slab, panel: int, over: Mapping[tuple[str, int], float]) -> tuple[float, float]:
    """How far the two ends of a slab lie off their places on the assembly; an end at a fold stays there."""
    drafted, by = layout.pattern.panels[panel], over.get((slab.ply.name, panel), 0.0)
    at_left = abs(slab.x0 - drafted.x0) < _SAME and panel > 0
    at_right = abs(slab.x1 - drafted.x1) < _SAME and panel < len(layout.pattern.panels) - 1
    return (0.0 if at_left else by), (0.0 if at_right else by)


def _strip(layout: Layout, slab: Slab, plate: Plate, low: float, high: float) -> Strip:
    x0, x1, top = slab.x0 + low, slab.x1 + high, slab.level + slab.thickness
    corners = [plate.point(x, z) for x, z in ((x0, slab.level), (x1, slab.level), (x1, top), (x0, top))]
    return Strip(slab.ply.name, _leather(layout, slab.ply), polygon(corners).ccw(), x1 - x0)


def _leather(layout: Layout, ply: Ply) -> str:
    return layout.pattern.piece(ply.of).leather if ply.of else ""


def _crossing(
    layout: Layout, fold: DraftedFold, panels: Sequence[Sequence[Slab]]
) -> Iterator[tuple[Piece, float, float]]:
    """Each piece that crosses a fold where it is cut, with its levels at the left and the right tangent."""
    for piece in layout.pattern.pieces:
        if {fold.number - 1, fold.number} <= set(piece.placement.panels):
            left = _level(panels[fold.number - 1], piece.name, fold.x0)
            right = _level(panels[fold.number], piece.name, fold.x1)
            if left is not None and right is not None:
                yield piece, left, right


def _level(slabs: Iterable[Slab], ply: str, x: float) -> float | None:
    """The level of a ply where it comes to a fold tangent."""
    ends = (s.level for s in slabs if s.ply.name == ply and min(abs(s.x0 - x), abs(s.x1 - x)) < _SAME)
    return next(ends, None)


def _arch(layout: Layout, fold: DraftedFold, piece: Piece, start: Point, end: Point) -> Strip:
    """A layer in a fold laid open: straight when it is as long as the zone, else an arc that bows outwards."""
    t = layout.bent_thickness(piece, fold)
    flat = piece.placement.development.flat
    length = flat(fold.x1) - flat(fold.x0)
    leather = layout.leathers[piece.leather]
    raised = Point(0.0, (1 - leather.neutral) * t)
    fibre = arc_of_length(start + raised, end + raised, length, 1.0)
    return Strip(piece.name, piece.leather, band(fibre, (1 - leather.neutral) * t, leather.neutral * t), length)


def _bent(
    layout: Layout,
    fold: DraftedFold,
    bends: Sequence[Bend],
    panels: Sequence[Sequence[Slab]],
    laid: Mapping[int, Plate],
) -> Iterator[Strip]:
    """The layers of a closed fold, each an arc between its flanks as long as it needs to be."""
    needs = {bend.piece: bend.needs for bend in bends}
    for piece, low, high in _crossing(layout, fold, panels):
        t, neutral = layout.bent_thickness(piece, fold), layout.leathers[piece.leather].neutral
        inner, outer = neutral * t, (1 - neutral) * t
        raised = outer if fold.angle > 0 else inner
        left, right = laid[fold.number - 1], laid[fold.number]
        start, end = left.point(fold.x0, low + raised), right.point(fold.x1, high + raised)
        side = math.copysign(left.along.cross(left.up), fold.angle)
        fibre = arc_of_length(start, end, needs[piece.name], side)
        thick = (outer, inner) if side > 0 else (inner, outer)
        yield Strip(piece.name, piece.leather, band(fibre, *thick), needs[piece.name])
