"""The neutral drawing: strokes, dots, texts, areas, each with a role; what every writer reads and all it reads.

Coordinates are mm, y up, angles in degrees counter-clockwise (see the coordinate table in DEVELOPERS.md).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

__all__ = ["Align", "Area", "Dot", "Figure", "Ink", "Page", "Role", "Sheet", "Stroke", "Text"]


class Role(StrEnum):
    """What a mark is for; the value is the trade's word and names layers and groups in files."""

    MARK = "mark"  # pricked or scored, not cut through: fold ticks, awl points, initials
    HOLE = "stitch hole"  # cut through: round stitch holes and slits
    OPENING = "opening"  # cut through: windows, slots, hardware holes
    OUTLINE = "outline"  # cut through: the edge of the piece
    FOLD = "fold line"  # drawn only
    SEAM = "stitch line"  # drawn only
    LABEL = "label"  # drawn only: names, arrows, notes
    SIZE = "size"  # drawn only: dimension lines
    CHECK = "check square"  # drawn only: the measured squares of a printed page
    GUIDE = "guide"  # drawn only: page frames, joining crosses, page map
    TINT = "tint"  # drawn only: what pictures fill


class Align(StrEnum):
    LEFT = "left"
    CENTRE = "centre"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Stroke:
    """A path drawn or cut in one go; closed when the path is closed."""

    role: Role
    path: Path


@dataclass(frozen=True, slots=True)
class Dot:
    """A full circle given by centre and diameter in mm."""

    role: Role
    centre: Point
    diameter: float


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; ``at`` starts, centres or ends its base line; ``height``: capitals, mm."""

    role: Role
    at: Point
    height: float
    content: str
    angle: float = 0.0
    align: Align = Align.LEFT


@dataclass(frozen=True, slots=True)
class Area:
    """What closed paths enclose, filled: ``tone`` from 0 (as white as paper) to 1 (darkest).

    A point is inside when it lies in an odd number of the paths, so that a path inside another is a hole.
    """

    role: Role
    paths: tuple[Path, ...]
    tone: float


Ink = Stroke | Dot | Text | Area


@dataclass(frozen=True, slots=True)
class Figure:
    """One piece as drawn: inks in cutting order (marks, holes, openings, outline), then what is drawn only.

    ``group`` says what is cut together (the leather the piece comes from).
    """

    name: str
    group: str
    inks: tuple[Ink, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """Figures laid apart on an area of ``width`` x ``height`` mm, origin in the lower left corner."""

    name: str
    width: float
    height: float
    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True)
class Page:
    """One printed page of ``width`` x ``height`` mm; inks in true mm from its lower left corner, already clipped.

    A writer multiplies what it draws by ``x_factor`` and ``y_factor`` about that corner, the page itself by neither:
    they make good what a printer stretches, and circles stay circles on the paper.
    """

    label: str
    width: float
    height: float
    inks: tuple[Ink, ...]
    x_factor: float = 1.0
    y_factor: float = 1.0
