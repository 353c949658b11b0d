"""The layers that cross a fold: where their fibre comes from and goes to, and how long it is between the tangents.

A layer goes through a fold as high as it comes to it at its highest: where less lies under it, it bridges.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.fit.bulk_map import ply_areas
from patternforge.fit.layout import Layout, Ply
from patternforge.fit.posed.ground import box_between
from patternforge.fit.posed.piles import STRAY, Pile
from patternforge.geometry.regions import Region
from patternforge.wallet.pattern import DraftedFold

__all__ = ["Band", "Crossed", "crossed", "sharpest"]

_OFF = 0.02  # mm beside a tangent that heights are taken at
_MIDDLE = 0.5  # of its thickness, where the fibre of what is no leather lies
_WIDE = 1e4  # mm; wider than any wallet


@dataclass(frozen=True, slots=True)
class Band:
    """A part of a layer in a fold that is equally thick: its area on the assembly, and how far off its outside the
    fibre lies, mm."""

    area: Region
    thickness: float
    raised: float


@dataclass(frozen=True, slots=True)
class Crossed:
    """A layer in a fold: its flat length there and the levels of its outer side at the left and right tangent, mm."""

    ply: Ply
    length: float
    low: float
    high: float
    bands: tuple[Band, ...]

    @property
    def fibre(self) -> tuple[float, float]:
        """The levels of the fibre of its thickest band at both tangents, mm."""
        raised = max(self.bands, key=lambda band: band.thickness).raised
        return self.low + raised, self.high + raised


def crossed(layout: Layout, fold: DraftedFold, left: Pile, right: Pile) -> tuple[Crossed, ...]:
    """The layers that cross a fold between two panels, from the outside in."""
    flanks = {fold.number - 1, fold.number}
    layers = (_layer(layout, fold, ply, left, right) for ply in layout.plies if flanks <= set(ply.panels))
    return tuple(layer for layer in layers if layer.bands)


def _layer(layout: Layout, fold: DraftedFold, ply: Ply, left: Pile, right: Pile) -> Crossed:
    neutral, length = _MIDDLE, fold.x1 - fold.x0
    if ply.of:
        piece = layout.pattern.piece(ply.of)
        flat = piece.placement.development.flat
        neutral, length = layout.leathers[piece.leather].neutral, flat(fold.x1) - flat(fold.x0)
    outwards = 1 - neutral if fold.angle > 0 else neutral
    zone = box_between(fold.x0, fold.x1, -_WIDE, _WIDE)
    parts = ((thickness, part.common(zone)) for thickness, part in ply_areas(ply, STRAY))
    bands = tuple(Band(area, thickness, outwards * thickness) for thickness, area in parts if not area.is_empty)
    return Crossed(ply, length, *_levels(fold, ply, left, right), bands)


def _levels(fold: DraftedFold, ply: Ply, left: Pile, right: Pile) -> tuple[float, float]:
    """How high a ply comes to either tangent; where it ends beside one, as on the other side."""
    sides = ((left, fold.x0 - _OFF), (right, fold.x1 + _OFF))
    levels = [_level(fold, ply, pile, x) for pile, x in sides]
    known = [level for level in levels if level is not None] or [0.0]
    low, high = (known[0] if level is None else level for level in levels)
    return low, high


def _level(fold: DraftedFold, ply: Ply, pile: Pile, x: float) -> float | None:
    beside = box_between(x - _OFF / 2, x + _OFF / 2, -_WIDE, _WIDE)
    levels = [each.level for each in pile.lying if each.ply is ply and not each.area.common(beside).is_empty]
    return (max if fold.angle > 0 else min)(levels, default=None)


def sharpest(layers: Sequence[Crossed], angle: float) -> Crossed:
    """The piece that bends sharpest in a fold: the innermost, or the outermost where the outsides meet."""
    pieces = [layer for layer in layers if layer.ply.name == layer.ply.of]
    return max(pieces, key=lambda layer: sum(layer.fibre) if angle > 0 else -sum(layer.fibre))
