"""The smallest hole, gap and radius of what is cut, for a machine that cannot cut smaller ones."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from math import inf

from patternforge.drawing.model import Role
from patternforge.fit.fineness import Fineness, fineness
from patternforge.geometry.path import Path
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import HoleShape

__all__ = ["Small", "Spot", "across", "smallest"]

_SAME = 1e-6  # mm between the centres of arcs of one circle


@dataclass(frozen=True, slots=True)
class Spot:
    """A size, mm, and the piece it is found on."""

    size: float
    piece: str


@dataclass(frozen=True, slots=True)
class Small:
    """The smallest of each kind; None where there is nothing of the kind.

    ``hole``: round stitch hole or opening, across. ``gap``: leather between two cuts, or room within one. ``radius``:
    arc of an outline or opening, round holes left out.
    """

    hole: Spot | None
    gap: Spot | None
    radius: Spot | None


def smallest(pattern: Pattern, roles: Collection[Role]) -> Small:
    """The smallest hole, gap and radius of all pieces, net, as far as lines of ``roles`` are cut through."""
    cut = [(piece, fineness(pattern, piece)) for piece in pattern.pieces]
    holes = [Spot(_hole(pattern, piece, roles), piece.name) for piece in pattern.pieces]
    return Small(
        _least(holes),
        _least([Spot(_gap(fine, roles), piece.name) for piece, fine in cut]),
        _least([Spot(inf if fine.radius is None else fine.radius, piece.name) for piece, fine in cut]),
    )


def _least(spots: Sequence[Spot]) -> Spot | None:
    least = min(spots, key=lambda spot: spot.size, default=None)
    return least if least is not None and least.size < inf else None


def _hole(pattern: Pattern, piece: Piece, roles: Collection[Role]) -> float:
    specs = {seam.name: seam.stitching.hole for seam in pattern.seams}
    sewn = (specs[hole.seam] for hole in piece.holes if Role.HOLE in roles)
    pierced = [spec.diameter for spec in sewn if spec.shape is HoleShape.ROUND]
    openings = (across(path) or inf for path in piece.openings if Role.OPENING in roles)
    return min((*pierced, *openings), default=inf)


def _gap(fine: Fineness, roles: Collection[Role]) -> float:
    found = (fine.gap, fine.slot, fine.hole_gap if Role.HOLE in roles else None)
    return min((size for size in found if size is not None), default=inf)


def across(path: Path) -> float | None:
    """The diameter of a path that is one whole circle, mm; None for any other."""
    first = path.segments[0]
    if not all(segment.is_arc for segment in path.segments):
        return None
    same = all(segment.centre.distance_to(first.centre) < _SAME for segment in path.segments)
    return 2 * first.radius if same else None
