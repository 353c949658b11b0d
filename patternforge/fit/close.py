"""The wallet closed on its loaded stacks: what every layer needs in every fold, measured from pieces, not drafted.

A panel is as thick as the highest stack over any point of it. Closed by 180 degrees, a layer's neutral fibre runs
a half circle between its two flanks: half the distance of the two fibres is its radius. A layer too stiff for the
room inside it keeps a hollow there, and every layer round it goes round the hollow too.
"""

from __future__ import annotations

import math
from bisect import bisect
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.point import COINCIDENT
from patternforge.leather.closing import Closing, closing
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import DraftedFold, Piece
from patternforge.wallet.spec import LayerPart

__all__ = ["Bend", "ClosedWallet", "closed_wallet", "highest_stacks"]

Stack = tuple[tuple[Ply, float], ...]
"""Plies that stand over one place from the outside in, each with its thickness there, mm."""


@dataclass(frozen=True, slots=True)
class Bend:
    """One layer in one closed fold: what it has between the tangents when flat, what it needs, and how sharp it is.

    ``room`` is the inside radius its neighbours leave it, ``smallest`` the one its leather can take.
    """

    piece: str
    fold: int
    has: float
    needs: float
    fibre_radius: float
    room: float
    smallest: float


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
    fields = [_fields(layout, panel) for panel in range(len(body.panels))]
    heights = tuple(_highest(stacks) for stacks in fields)
    bends = tuple(_bends(layout, fold, order, fields, heights) for fold in layout.pattern.folds)
    return ClosedWallet(bends, heights, order)


def highest_stacks(layout: Layout) -> tuple[Stack, ...]:
    """The highest stack over any point of every panel: those of the closed wallet's thickness."""
    panels = range(len(layout.pattern.design.body.panels))
    return tuple(max(_fields(layout, panel), key=_height, default=()) for panel in panels)


def _height(stack: Stack) -> float:
    return sum(thickness for _, thickness in stack)


def _on(plies: Iterable[Ply], panel: int) -> list[Ply]:
    return [ply for ply in plies if panel in ply.panels]


def _fields(layout: Layout, panel: int) -> list[Stack]:
    """Every stack that stands somewhere on a panel: one probe in each field of the grid of all outline corners.

    The edges of skived boxes and of what is turned in part fields too.
    """
    drafted = layout.pattern.panels[panel]
    here = _on(layout.plies, panel)
    xs = _middles([drafted.x0, drafted.x1, *_corners(here, 0)], drafted.x0, drafted.x1)
    ys = _middles([0.0, layout.pattern.height, *_corners(here, 1)], 0.0, layout.pattern.height)
    covered = set()
    for y in ys:
        edges = [ply.edges_at(y) for ply in here]
        covered |= {
            tuple((i, here[i].thickness_at(x, y)) for i, at in enumerate(edges) if bisect(at, x) % 2) for x in xs
        }
    return [tuple((here[i], thickness) for i, thickness in stack) for stack in covered]


def _corners(plies: Sequence[Ply], axis: int) -> list[float]:
    bare = (box for ply in plies if ply.outline is None for box in ply.boxes)
    boxes = (((box.x0, box.x1), (box.y0, box.y1))[axis] for box in bare)
    places = [at for box in boxes for at in box]
    places += [vertex[axis] for ply in plies if ply.outline for vertex in ply.outline.vertices]
    inner = [box for ply in plies for box in (*(box for box, _ in ply.thinned), ply.hollow) if box]
    return places + [at for b in inner for at in ((b.x0, b.x1), (b.y0, b.y1))[axis]]


def _middles(places: Iterable[float], low: float, high: float) -> list[float]:
    inside = sorted({round(place, 3) for place in places if low <= place <= high})
    return [(a + b) / 2 for a, b in pairwise(inside) if b - a > 0.5]


def _highest(stacks: Iterable[Stack]) -> float:
    return max((_height(stack) for stack in stacks), default=0.0)


def _bends(
    layout: Layout, fold: DraftedFold, order: Closing, fields: Sequence[list[Stack]], heights: tuple[float, ...]
) -> tuple[Bend, ...]:
    left, right = fold.number - 1, fold.number
    crossing = [p for p in layout.pattern.pieces if {left, right} <= set(p.placement.panels)]
    if fold.angle > 0:
        crossing.reverse()
    reached = {panel: _reached(layout, fold, panel, fields[panel]) for panel in (left, right)}
    bends: list[Bend] = []
    inner, hollow = 0.0, 0.0
    core = layout.pattern.design.body.folds[fold.number - 1].around
    for piece in crossing:
        leather, t = layout.leathers[piece.leather], layout.bent_thickness(piece, fold)
        if abs(fold.angle) == 180:
            between = sum(heights[placed.panel] for placed in order.between[fold.number - 1])
            flanks = sum(_inside(piece, fold.angle, reached[panel]) for panel in (left, right))
            radius = (flanks + between) / 2
        else:
            radius, inner = inner, inner + t
        radius += core / 2
        bends.append(_bend(piece, fold, leather, t, radius + hollow))
        hollow = max(hollow, leather.min_radius * t - radius)
    return tuple(bends)


def _reached(layout: Layout, fold: DraftedFold, panel: int, stacks: list[Stack]) -> list[Stack]:
    """The stacks on a flank without the layers that the other flank, folded on it, does not reach."""
    left, right = (layout.pattern.panels[number] for number in (fold.number - 1, fold.number))
    low, high = fold.x0 - (right.x1 - right.x0), fold.x1 + (left.x1 - left.x0)
    layers = {part.name for part in layout.pattern.design.parts if isinstance(part, LayerPart)}
    beyond = {
        ply.name
        for ply in _on(layout.plies, panel)
        if ply.of and ply.part in layers and (ply.bounds.x1 <= low + COINCIDENT or ply.bounds.x0 >= high - COINCIDENT)
    }
    return [tuple(each for each in stack if each[0].name not in beyond) for stack in stacks]


def _inside(piece: Piece, angle: float, stacks: Iterable[Stack]) -> float:
    """Highest stack on one flank on the side of the piece that the fold closes."""
    side = 1 if angle > 0 else -1
    return _highest(tuple(each for each in stack if side * (each[0].order - piece.level) > 0) for stack in stacks)


def _bend(piece: Piece, fold: DraftedFold, leather: Leather, t: float, radius: float) -> Bend:
    smallest = leather.min_radius * t
    fibre = max(radius, smallest) + leather.neutral * t
    development = piece.placement.development
    has = development.flat(fold.x1) - development.flat(fold.x0)
    needs = math.radians(abs(fold.angle)) * fibre
    return Bend(piece.name, fold.number, has, needs, fibre, radius, smallest)
