"""The wallet closed on its loaded stacks: what every layer needs in every fold, measured from pieces, not drafted.

A panel is as thick as the highest stack over any point of it. Closed by 180 degrees, a layer's neutral fibre runs
a half circle between its two flanks: half the distance of the two fibres is its radius. A layer too stiff for the
room inside it keeps a hollow there, and every layer round it goes round the hollow too.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise

from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.point import Point
from patternforge.leather.closing import Closing, closing
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import DraftedFold, Piece

__all__ = ["Bend", "ClosedWallet", "closed_wallet", "stack_height"]


@dataclass(frozen=True, slots=True)
class Bend:
    """One layer in one closed fold: what it has between the tangents when flat, what it needs, and how sharp it is.

    ``pinched`` is true when the stack would bend the leather tighter than its smallest radius.
    """

    piece: str
    fold: int
    has: float
    needs: float
    fibre_radius: float
    pinched: bool


@dataclass(frozen=True, slots=True)
class ClosedWallet:
    """A closed wallet: bends by fold from the innermost layer out, height of each panel's stack, order of panels."""

    bends: tuple[tuple[Bend, ...], ...]
    heights: tuple[float, ...]
    order: Closing

    @property
    def thickness(self) -> float:
        """Thickness over the panels that lie on each other, mm."""
        return sum(self.heights[placed.panel] for placed in self.order.stack)


def closed_wallet(layout: Layout) -> ClosedWallet:
    """The wallet closed in the design's order."""
    body = layout.pattern.design.body
    order = closing(len(body.panels), [fold.angle for fold in body.folds], body.closing)
    probes = {panel: _probes(layout, panel) for panel in range(len(body.panels))}
    heights = tuple(_highest(_on(layout.plies, panel), probes[panel]) for panel in probes)
    bends = tuple(_bends(layout, fold, order, probes, heights) for fold in layout.pattern.folds)
    return ClosedWallet(bends, heights, order)


def stack_height(plies: Iterable[Ply], point: Point) -> float:
    """Sum of all thicknesses over a point of the assembly, mm."""
    return sum(ply.thickness for ply in plies if ply.covers(point))


def _on(plies: Iterable[Ply], panel: int) -> list[Ply]:
    return [ply for ply in plies if panel in ply.panels]


def _probes(layout: Layout, panel: int) -> list[Point]:
    """Points between all the corners of the outlines on a panel: one in every field of their grid."""
    drafted = layout.pattern.panels[panel]
    here = _on(layout.plies, panel)
    xs = _middles([drafted.x0, drafted.x1, *_corners(here, 0)], drafted.x0, drafted.x1)
    ys = _middles([0.0, layout.pattern.height, *_corners(here, 1)], 0.0, layout.pattern.height)
    return [Point(x, y) for x in xs for y in ys]


def _corners(plies: Iterable[Ply], axis: int) -> list[float]:
    boxes = (((p.bounds.x0, p.bounds.x1), (p.bounds.y0, p.bounds.y1))[axis] for p in plies if p.outline is None)
    places = [at for box in boxes for at in box]
    places += [vertex[axis] for ply in plies if ply.outline for vertex in ply.outline.vertices]
    return places


def _middles(places: Iterable[float], low: float, high: float) -> list[float]:
    inside = sorted({round(place, 3) for place in places if low <= place <= high})
    return [(a + b) / 2 for a, b in pairwise(inside) if b - a > 0.5]


def _highest(plies: list[Ply], probes: Iterable[Point]) -> float:
    return max((stack_height(plies, probe) for probe in probes), default=0.0)


def _bends(
    layout: Layout, fold: DraftedFold, order: Closing, probes: Mapping[int, list[Point]], heights: tuple[float, ...]
) -> tuple[Bend, ...]:
    left, right = fold.number - 1, fold.number
    crossing = [p for p in layout.pattern.pieces if {left, right} <= set(p.placement.panels)]
    if fold.angle > 0:
        crossing.reverse()
    bends: list[Bend] = []
    inner, hollow = 0.0, 0.0
    for piece in crossing:
        leather = layout.leathers[piece.leather]
        if abs(fold.angle) == 180:
            between = sum(heights[placed.panel] for placed in order.between[fold.number - 1])
            flanks = sum(_inside(layout, piece, panel, fold.angle, probes[panel]) for panel in (left, right))
            radius = (flanks + between) / 2
        else:
            radius, inner = inner, inner + leather.t
        bends.append(_bend(piece, fold, leather, radius + hollow))
        hollow = max(hollow, leather.min_radius * leather.t - radius)
    return tuple(bends)


def _inside(layout: Layout, piece: Piece, panel: int, angle: float, probes: Iterable[Point]) -> float:
    """Highest stack on one flank on the side of the piece that the fold closes."""
    here = _on(layout.plies, panel)
    inner = [ply for ply in here if (ply.order > piece.level if angle > 0 else ply.order < piece.level)]
    return _highest(inner, probes)


def _bend(piece: Piece, fold: DraftedFold, leather: Leather, radius: float) -> Bend:
    smallest = leather.min_radius * leather.t
    fibre = max(radius, smallest) + leather.neutral * leather.t
    development = piece.placement.development
    has = development.flat(fold.x1) - development.flat(fold.x0)
    return Bend(piece.name, fold.number, has, math.radians(abs(fold.angle)) * fibre, fibre, radius < smallest - 1e-9)
