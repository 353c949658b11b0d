"""What drafting yields: flat pieces with their holes and placements, folds with their lengths, seams with their runs.

Two spaces meet here. The *assembly* is the wallet laid open seen from the inside (x across the folds, y along
them). A *piece* lies flat with its showing face up, its lower left corner at the origin. ``Placement`` leads from
the one to the other and back.
"""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.wallet.folded.pattern import DraftedFolded
from patternforge.wallet.marked import Inscription, PlaceMark
from patternforge.wallet.placement import Development, Placement
from patternforge.wallet.spec import Design, Edge, HoleShape, Side, Stitching
from patternforge.wallet.strip import StripPlacement
from patternforge.wallet.sums import Sum, Term
from patternforge.wallet.words import EdgeRole
from patternforge.wallet.worked import Skive, TurnIn

__all__ = [
    "Adjustment",
    "Development",
    "DraftedFold",
    "DraftedPanel",
    "EdgeRole",
    "FittingHole",
    "FoldLayer",
    "Hole",
    "Loose",
    "Pattern",
    "Piece",
    "Placement",
    "Pocket",
    "Seam",
    "SeamHole",
    "Sum",
    "Term",
]


@dataclass(frozen=True, slots=True)
class Hole:
    """A stitch hole of a piece: seam and number say which, ``direction`` is the degrees of a slit's long axis.

    ``shape`` is what is made of it in the flat piece, where that is not the hole of its seam.
    """

    seam: str
    index: int
    at: Point
    direction: float
    shape: HoleShape | None = None


@dataclass(frozen=True, slots=True)
class FittingHole:
    """The hole of one half (1 or 2) of a fitting in its piece; ``reach`` is its cap's radius, mm."""

    fitting: str
    half: int
    at: Point
    diameter: float
    reach: float


@dataclass(frozen=True, slots=True)
class Piece:
    """One flat piece, showing face up, lower left of its bounds at the origin, outline counter-clockwise.

    ``edges`` gives the role of each outline segment; ``level`` its place counted from the outside in; ``trims`` how
    much of an edge (of the assembly view) is cut off after gluing, mm. ``turned`` says which edges are turned in,
    and to which outline; ``turned_holes`` are cut in what is turned in, mates of ``holes``.
    """

    name: str
    part: str
    leather: str
    showing: Side
    visible: bool
    level: int
    outline: Path
    edges: tuple[EdgeRole, ...]
    openings: tuple[Path, ...]
    holes: tuple[Hole, ...]
    fold_lines: tuple[Path, ...]
    placement: Placement | StripPlacement
    trims: tuple[tuple[Edge, float], ...] = ()
    quantity: int = 1
    fittings: tuple[FittingHole, ...] = ()
    lines: str = ""
    inscriptions: tuple[Inscription, ...] = ()
    marks: tuple[PlaceMark, ...] = ()
    skives: tuple[Skive, ...] = ()
    turned: TurnIn | None = None
    turned_holes: tuple[Hole, ...] = ()

    @property
    def made(self) -> Path:
        """Its outline once edges are turned in, as it lies in the wallet."""
        return self.turned.finished if self.turned else self.outline

    @property
    def made_edges(self) -> tuple[EdgeRole, ...]:
        """The role of each segment of ``made``."""
        return self.turned.edges if self.turned else self.edges

    def thickness_at(self, point: Point, thickness: float) -> float:
        """How thick leather of ``thickness`` mm is at a point of the piece, skived as it is there, mm."""
        return min((thickness, *(skive.left for skive in self.skives if skive.holds(point))))

    def stack_at(self, point: Point, thickness: float) -> float:
        """``thickness_at`` and what is turned in over that point, the core it is turned over included, mm."""
        over = self.turned.over(point) if self.turned else None
        return self.thickness_at(point, thickness) + (over.core + over.thickness if over else 0.0)

    @property
    def width(self) -> float:
        """Overall width, mm."""
        return self.outline.bounds.width

    @property
    def height(self) -> float:
        """Overall height, mm."""
        return self.outline.bounds.height

    @property
    def area(self) -> float:
        """Area of leather, openings taken out, mm2."""
        return abs(self.outline.area) - sum(abs(opening.area) for opening in self.openings)


@dataclass(frozen=True, slots=True)
class DraftedPanel:
    """A panel between its fold tangents (assembly x) or body edges."""

    name: str
    x0: float
    x1: float
    width: Sum


@dataclass(frozen=True, slots=True)
class FoldLayer:
    """One layer in one fold: what lies between its flanks, its inside radius, its true and its drafted length, mm."""

    part: str
    gap: Sum
    radius: float
    true_length: float
    flat_length: float


@dataclass(frozen=True, slots=True)
class DraftedFold:
    """A fold: its zone on the assembly lies between tangents ``x0`` and ``x1``; layers from the outside in."""

    number: int
    angle: float
    compensation: float
    relief: float
    x0: float
    x1: float
    layers: tuple[FoldLayer, ...]


@dataclass(frozen=True, slots=True)
class Pocket:
    """Room for ``count`` of an item: where the item lies on the assembly, in which piece, how it may go in.

    ``box`` is the item's rectangle (x0, y0, x1, y1) when pushed home; ``opening`` the edge it goes in over; ``show``
    how much of it stands out of the mouth; ``piece`` the wall that holds it in; ``held`` items lie behind a layer.
    """

    part: str
    piece: str
    content: str
    count: int
    panel: int
    opening: Edge
    box: tuple[float, float, float, float]
    show: float
    ease: float
    panels: tuple[int, ...]
    held: bool = False


@dataclass(frozen=True, slots=True)
class Loose:
    """``count`` of an item lying over each other on a panel in no pocket: ``box`` is its rectangle on the assembly.

    ``order`` is its place from the outside in, among the levels of the pieces.
    """

    part: str
    content: str
    count: int
    panel: int
    box: tuple[float, float, float, float]
    order: float = 0.0


@dataclass(frozen=True, slots=True)
class SeamHole:
    """A hole of a seam in assembly space, its place along the run and the direction of sewing in degrees."""

    index: int
    run: int
    along: float
    at: Point
    heading: float


@dataclass(frozen=True, slots=True)
class Seam:
    """A seam as drafted: holes in sewing order; ``spacings`` from hole to hole within each run.

    ``meets``: the holes are those of the seam of that name where they come to lie on another panel once it is folded
    over; it is sewn with that seam and takes no thread of its own.
    """

    name: str
    stitching: Stitching
    margin: float
    holes: tuple[SeamHole, ...]
    pieces: tuple[str, ...]
    length: float
    spacings: tuple[float, ...]
    thread: float
    inner: bool
    meets: str = ""


@dataclass(frozen=True, slots=True)
class Adjustment:
    """A nominal size that moved to meet the stitches, and why."""

    part: str
    size: str
    asked: float
    drafted: float
    reason: str


@dataclass(frozen=True, slots=True)
class Pattern:
    """A drafted wallet; a ``folded`` one has no panels, folds, pockets or seams."""

    design: Design
    width: float
    height: float
    height_sum: Sum
    panels: tuple[DraftedPanel, ...]
    folds: tuple[DraftedFold, ...]
    pieces: tuple[Piece, ...]
    pockets: tuple[Pocket, ...]
    seams: tuple[Seam, ...]
    adjustments: tuple[Adjustment, ...]
    loose: tuple[Loose, ...] = ()
    folded: DraftedFolded | None = None

    def piece(self, name: str) -> Piece:
        """The piece of that name; KeyError if there is none."""
        return {piece.name: piece for piece in self.pieces}[name]
