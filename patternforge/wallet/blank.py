"""Blanks: pieces as they lie on the assembly, before development, mirror and holes."""

from __future__ import annotations

from dataclasses import dataclass, field

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.leather.material import Leather
from patternforge.leather.turn import Turn
from patternforge.wallet.finishing import SkiveSpec, TurnedSpec
from patternforge.wallet.marked import Inscription, PlaceMark
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import Development, Loose, Pocket
from patternforge.wallet.spec import Edge, Side, Stitching

__all__ = ["Blank", "InnerRun", "PartBlanks", "Seat", "Strip", "TurnedSide"]


@dataclass(frozen=True, slots=True)
class Seat:
    """A hole for one half (1 or 2) of a fitting: its centre, its diameter and how far the cap reaches, mm."""

    fitting: str
    half: int
    at: Point
    diameter: float
    reach: float


@dataclass(frozen=True, slots=True)
class TurnedSide:
    """An edge of a blank to be turned in: what was asked, its bend, its leather, the thickness it encloses, mm."""

    edge: Edge
    spec: TurnedSpec
    turn: Turn
    leather: Leather
    enclosed: float


@dataclass(frozen=True, slots=True)
class Blank:
    """One piece on the assembly; ``lines`` names the piece that a clear sheet lies behind.

    ``development`` lays it flat; ``visible`` pieces are seen in the finished wallet. Inscriptions and marks lie on
    the assembly like the shape.
    """

    name: str
    leather: str
    shape: Shape
    showing: Side
    panels: tuple[int, ...]
    trims: tuple[tuple[Edge, float], ...] = ()
    openings: tuple[Path, ...] = ()
    seats: tuple[Seat, ...] = ()
    lines: str = ""
    development: Development = field(default_factory=Development)
    visible: bool = True
    inscriptions: tuple[Inscription, ...] = ()
    marks: tuple[PlaceMark, ...] = ()
    skives: tuple[SkiveSpec, ...] = ()
    turned: tuple[TurnedSide, ...] = ()  # counter-clockwise


@dataclass(frozen=True, slots=True)
class InnerRun:
    """A seam a part brings with it: its path on the assembly and the pieces and parts it may pass."""

    name: str
    path: Path
    through: tuple[str, ...]
    stitching: Stitching
    margin: float


@dataclass(frozen=True, slots=True)
class Strip:
    """A straight strip along two seams, the outer wall's first; ``margins`` from its edges to their holes, mm.

    ``width`` is its flat size across the seams, ``folds`` the tangents of its bends, mm from the outer wall's edge.
    ``walls`` are the parts it joins; it ends ``short`` mm of their edges.
    """

    name: str
    leather: str
    panel: int
    seams: tuple[str, str]
    margins: tuple[float, float]
    walls: tuple[str, str]
    width: float
    folds: tuple[tuple[float, float], ...]
    short: float
    showing: Side


@dataclass(frozen=True, slots=True)
class PartBlanks:
    """All that one part yields, from the outside in: blanks, room for items, own seams, strips, loose things."""

    blanks: tuple[Blank, ...]
    pockets: tuple[Pocket, ...]
    runs: tuple[InnerRun, ...]
    loose: tuple[Loose, ...] = ()
    strips: tuple[Strip, ...] = ()
