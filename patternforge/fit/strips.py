"""A gusset's strip folded for a leather, from its flat piece alone: how high it stands and how deep it reaches.

Each bend is taken where its two tangents are drawn, at their middle, and goes round the leather that is at hand: an
arc of its neutral fibre as sharp as it can bend. Two bends make a channel of 90 degrees each, any odd number of them
a bellows of 180 degrees each.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from patternforge.geometry.offset import Join, offset_one
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Bounds
from patternforge.geometry.segment import Segment
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import Piece
from patternforge.wallet.strip import StripPlacement

__all__ = ["FoldedStrip", "bands", "enclosed", "folded_strip", "seam_radius"]

_ARC_STEPS = 6  # boxes that a corner's band is made of
_SHARP = 1e-3  # radians between two stretches of a line that meet at a corner


@dataclass(frozen=True, slots=True)
class FoldedStrip:
    """A strip as it stands between its walls, mm.

    ``height``: what it keeps the walls apart; ``depths``: from either edge to the outside of its first and last bend,
    the outer wall's first; ``pleats``: its folds inwards, 0 for a channel.
    """

    height: float
    depths: tuple[float, float]
    pleats: int


def folded_strip(piece: Piece, leather: Leather) -> FoldedStrip:
    """The strip folded at its fold lines in that leather."""
    ys = sorted(line.start.y for line in piece.fold_lines)
    bends = [(low + high) / 2 for low, high in zip(ys[::2], ys[1::2], strict=True)]
    channel = len(bends) == 2
    crown = leather.min_radius * leather.t + leather.t
    fibre = (leather.min_radius + leather.neutral) * leather.t
    arc = fibre * (math.pi / 2 if channel else math.pi)
    depths = (bends[0] - arc / 2 + crown, piece.height - bends[-1] - arc / 2 + crown)
    if channel:
        return FoldedStrip(bends[1] - bends[0] - arc + 2 * crown, depths, 0)
    pleats = (len(bends) + 1) // 2
    return FoldedStrip(pleats * 2 * crown, depths, pleats)


def bands(placement: StripPlacement, depth: float) -> tuple[Bounds, ...]:
    """What a strip covers on the assembly: boxes along its outer seam, from the wall's edge ``depth`` inwards."""
    row = placement.rows[0]
    return tuple(_band(part, -row.y, depth - row.y) for segment in row.line.segments for part in _parts(segment))


def enclosed(placement: StripPlacement) -> Path | None:
    """The outline on the assembly of all that a strip goes round, to its walls' edges; None for a straight seam."""
    row = placement.rows[0]
    if len(row.line.segments) == 1:
        return None
    return offset_one(from_vertices(row.line.vertices, closed=True), row.y, Join.SHARP)


def _parts(segment: Segment) -> tuple[Segment, ...]:
    if not segment.is_arc:
        return (segment,)
    step = segment.length / _ARC_STEPS
    return tuple(segment.sub(i * step, (i + 1) * step) for i in range(_ARC_STEPS))


def _band(part: Segment, low: float, high: float) -> Bounds:
    ends = ((part.start, part.tangent_at(0.0)), (part.end, part.tangent_at(part.length)))
    points = [at + way.perpendicular() * off for at, way in ends for off in (low, high)]
    xs, ys = [p.x for p in points], [p.y for p in points]
    return Bounds(min(xs), min(ys), max(xs), max(ys))


def seam_radius(placement: StripPlacement) -> float:
    """The sharpest corner of the strip's seams, mm: 0 for one that is not rounded, infinite for straight seams."""
    return min(_sharpest(row.line.segments) for row in placement.rows)


def _sharpest(segments: tuple[Segment, ...]) -> float:
    for before, after in pairwise(segments):
        if abs(before.tangent_at(before.length).cross(after.tangent_at(0.0))) > _SHARP:
            return 0.0
    return min(segment.radius for segment in segments)
