"""What a design asks to be done to leather besides cutting it: skived here, turned in there."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from patternforge.wallet.features import Spot
from patternforge.wallet.words import Edge

__all__ = ["EdgeSkive", "FoldSkive", "PatchSkive", "SkiveSpec", "TurnedCorner", "TurnedHoles", "TurnedSpec"]


@dataclass(frozen=True, slots=True)
class EdgeSkive:
    """A band ``width`` mm wide along edges of every piece of a part, as cut, pared down to ``to`` mm."""

    edges: tuple[Edge, ...]
    width: float
    to: float


@dataclass(frozen=True, slots=True)
class FoldSkive:
    """The zone of a fold (0-based) and ``width`` mm on either side of it, pared down to ``to`` mm."""

    fold: int
    width: float
    to: float


@dataclass(frozen=True, slots=True)
class PatchSkive:
    """A rectangle ``width`` x ``height`` mm round a spot, pared down to ``to`` mm."""

    spot: Spot
    width: float
    height: float
    to: float


SkiveSpec = EdgeSkive | FoldSkive | PatchSkive


class TurnedCorner(StrEnum):
    """How the allowance is cut where two turned edges meet."""

    MITRE = "mitre"
    PLEATS = "pleats"


class TurnedHoles(StrEnum):
    """What of the stitch holes in a turned edge is made before it is turned.

    ``pierced``: nothing, they are pierced once the edge is turned in; ``marked``: a prick on the showing face;
    ``cut``: the hole, and its mate in the allowance where that comes to lie on it.
    """

    PIERCED = "pierced"
    MARKED = "marked"
    CUT = "cut"


@dataclass(frozen=True, slots=True)
class TurnedSpec:
    """Edges of a layer that are turned in to its back over other layers, over a core, or onto itself. Lengths in mm.

    ``overlap`` lies flat beyond the bend, ``corner_overlap`` at rounded corners (None: the same). ``corners`` None is
    a mitre at a sharp corner and pleats at a rounded one; ``corner_gap`` is left between a mitre and the finished
    corner, ``notch_gap`` between the tips of notches and the bend.
    """

    edges: tuple[Edge, ...]
    overlap: float = 8.0
    over: tuple[str, ...] = ()
    core: float = 0.0
    corners: TurnedCorner | None = None
    corner_gap: float | None = None
    corner_overlap: float | None = None
    notch_gap: float = 1.0
    holes: TurnedHoles = TurnedHoles.PIERCED
