"""What sits on parts and seams: mouths, notches, openings, hardware, shaped sides, stitches, what parts hold."""

from __future__ import annotations

from dataclasses import dataclass, field

from patternforge.leather.hardware import Setting
from patternforge.wallet.words import Edge, HoleShape, Mode, MouthShape, NotchShape

__all__ = [
    "EdgeNotch",
    "EdgeShape",
    "Film",
    "Fitting",
    "Held",
    "HoleSpec",
    "Initials",
    "MouthSpec",
    "Opening",
    "Spot",
    "Stamp",
    "Stitching",
    "ThumbNotch",
]


@dataclass(frozen=True, slots=True)
class EdgeShape:
    """How a side leaves the straight: ``bow`` mm outwards as an arc (inwards when negative), ``slant`` in mm.

    A slant moves the side's upper or right end in by that much, a negative one its lower or left end.
    """

    bow: float = 0.0
    slant: float = 0.0


@dataclass(frozen=True, slots=True)
class MouthSpec:
    """The edge an item goes in over; ``depth`` is the dip at the middle or the fall of the slant, mm."""

    shape: MouthShape = MouthShape.STRAIGHT
    depth: float = 0.0


@dataclass(frozen=True, slots=True)
class ThumbNotch:
    """A cut in the middle of a mouth, ``width`` x ``depth`` mm: an arc, or a semicircle when depth = width / 2.

    In a layer over several panels it is cut on the one named, else on each.
    """

    width: float
    depth: float
    panel: int | None = None


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on a panel, mm from the edges or fold tangents named; in the middle where none is named.

    ``fold`` places it in the middle of that fold's bend, by number from 1, between ``panel`` and the next.
    """

    panel: int
    beside: tuple[Edge, float] | None = None  # left or right
    above: tuple[Edge, float] | None = None  # bottom or top
    fold: int = 0


@dataclass(frozen=True, slots=True)
class EdgeNotch:
    """A notch ``width`` mm along an edge of a layer and ``depth`` mm deep, level with a spot."""

    name: str
    edge: Edge
    spot: Spot
    width: float
    depth: float
    shape: NotchShape = NotchShape.VEE


@dataclass(frozen=True, slots=True)
class Film:
    """A clear sheet sewn behind a window: material, how far it reaches beyond the opening, its stitch line; mm."""

    leather: str
    overlap: float
    margin: float


@dataclass(frozen=True, slots=True)
class Opening:
    """A cut-out of ``width`` x ``height`` mm round a spot, corners rounded by ``corner``, ``border`` off all edges.

    A round hole is as wide as high with half its width for a corner; a slot has half its lesser size.
    """

    name: str
    spot: Spot
    width: float
    height: float
    corner: float = 0.0
    border: float = 5.0
    film: Film | None = None


@dataclass(frozen=True, slots=True)
class Fitting:
    """Hardware in two halves that meet when the wallet is closed: where the first sits, and what carries the second.

    ``holes`` are the diameters to punch for the first and the second half, ``reach`` the larger cap's radius; mm.
    Covered halves have no holes: each, ``thickness`` mm of it, lies behind its part, under the next layer there.
    """

    name: str
    kind: str
    part: str
    spot: Spot
    holes: tuple[float, float]
    reach: float
    meets: str = ""
    meets_panel: int = 0
    line: int = 0
    setting: Setting = Setting.PUNCHED
    thickness: float = 0.0


@dataclass(frozen=True, slots=True)
class Stamp:
    """One letter stamp: ``width`` x ``height`` mm of its face, and the ``spacing`` between one and the next."""

    width: float
    height: float
    spacing: float = 1.0


@dataclass(frozen=True, slots=True)
class Initials:
    """Letters on the showing face of a part: their text, and a box ``width`` x ``height`` mm round a spot for them.

    ``width`` runs along the line of letters. ``up`` is the edge of the laid-open body that their tops point to; None
    means upright: as the wallet is carried where the face shows outside, as it lies open where it shows inside.
    ``clear`` mm round the box stay free of edges, stitches, folds and hardware. With a ``stamp`` they are stamped.
    """

    name: str
    text: str
    part: str
    spot: Spot
    width: float
    height: float
    stamp: Stamp | None = None
    clear: float = 3.0
    up: Edge | None = None
    line: int = 0


@dataclass(frozen=True, slots=True)
class Held:
    """``count`` of a content, lying one over the other."""

    content: str
    count: int


@dataclass(frozen=True, slots=True)
class HoleSpec:
    """Round (``diameter``) or slit (``length`` x ``width``, ``slant`` in degrees as seen from the outside)."""

    shape: HoleShape = HoleShape.ROUND
    diameter: float = 1.0
    length: float = 2.0
    width: float = 0.3
    slant: float = 45.0


@dataclass(frozen=True, slots=True)
class Stitching:
    """How seams are holed and sewn: nominal ``pitch`` centre to centre in mm, thread tails of each run, mm."""

    pitch: float = 3.4
    mode: Mode = Mode.EVEN
    hole: HoleSpec = field(default_factory=HoleSpec)
    tails: float = 150.0
    thread: float = 0.55
