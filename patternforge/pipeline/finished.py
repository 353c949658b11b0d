"""What a maker asks first: how large the wallet is open and closed, and how much leather it takes."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.fit.findings import Finding
from patternforge.units import MM2_PER
from patternforge.wallet.pattern import DraftedFold, Pattern
from patternforge.wallet.spec import LayerPart

__all__ = ["LeatherNeed", "Size", "closed_size", "closed_thickness", "leather_needs", "open_size"]


@dataclass(frozen=True, slots=True)
class Size:
    """Width and height in mm of the wallet as it is looked at: a turned row of panels runs downwards."""

    width: float
    height: float


@dataclass(frozen=True, slots=True)
class LeatherNeed:
    """What the pieces of one leather take: how many, their net area in mm2, and its price where one is known."""

    role: str
    name: str
    thickness: float
    pieces: int
    area: float
    price: float | None


def open_size(pattern: Pattern) -> Size:
    """The wallet laid flat, along its longest layer: all panels, and every fold at its longest."""
    if pattern.folded:
        return Size(pattern.width, pattern.height)
    folds = sum(max(layer.flat_length for layer in fold.layers) for fold in pattern.folds)
    return _seen(pattern, sum(panel.width.value for panel in pattern.panels) + folds)


def closed_size(pattern: Pattern) -> Size:
    """The wallet closed, from the front: its panels laid back and forth, and the outermost layer round each bend.

    A panel that stands upright between two folds of 90 degrees has no width of its own.
    """
    if pattern.folded:
        return Size(pattern.folded.closed.width, pattern.folded.closed.height)
    x = heading = 0.0
    reached = [0.0]
    for index, panel in enumerate(pattern.panels):
        way = round(math.cos(math.radians(heading)), 12)
        x += way * panel.width.value
        reached.append(x)
        if index < len(pattern.folds):
            fold = pattern.folds[index]
            reached.append(x + math.copysign(_bend(pattern, fold), way) if way else x)
            heading += fold.angle
    return _seen(pattern, max(reached) - min(reached))


def _bend(pattern: Pattern, fold: DraftedFold) -> float:
    """How far the outermost layer reaches beyond the fold's tangent, mm: its outside radius as it closes true."""
    layers = {part.name: part for part in pattern.design.parts if isinstance(part, LayerPart)}
    return max(bent.radius + pattern.design.leather(layers[bent.part].leather).t for bent in fold.layers)


def _seen(pattern: Pattern, across: float) -> Size:
    turned = pattern.design.body.turned
    return Size(pattern.height, across) if turned else Size(across, pattern.height)


def closed_thickness(findings: Sequence[Finding]) -> float:
    """The thickness over the closed panels, mm, as fit measured it for the leathers as drafted."""
    return next(f.measured for f in findings if (f.what, f.where) == ("thickness closed, as loaded", "whole wallet"))


def leather_needs(pattern: Pattern) -> tuple[LeatherNeed, ...]:
    """Net area and price of each leather, without waste, in the order of the design."""
    return tuple(_need(pattern, role) for role in (leather.role for leather in pattern.design.leathers))


def _need(pattern: Pattern, role: str) -> LeatherNeed:
    leather = pattern.design.leather(role)
    own = [piece for piece in pattern.pieces if piece.leather == role]
    area = sum(piece.area * piece.quantity for piece in own)
    price = None if leather.price is None else leather.price * area / MM2_PER[leather.price_area]
    return LeatherNeed(role, leather.name, leather.t, sum(piece.quantity for piece in own), area, price)
