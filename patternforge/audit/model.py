"""A cutting file as it is read: what is drawn in it, in which unit, and all that a cutting machine may stumble over.

Coordinates are mm, y up. In a DXF file or a plot they are those of the file times its unit; in an SVG file they are
taken from the lower left corner of its page.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from math import pi

from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point, joined_bounds

__all__ = ["CutFile", "Entity", "FileKind", "Look", "Odd", "Oddity", "Ring", "Shape", "bounds", "box_of"]


class FileKind(StrEnum):
    DXF = "DXF"
    SVG = "SVG"
    HPGL = "HPGL"


class Odd(StrEnum):
    """What a reader comes upon besides lines, arcs and circles; the value says it in words."""

    SPLINE = "spline"
    ELLIPSE = "ellipse"
    CURVE = "curve"
    TEXT = "text"
    HATCH = "hatch"
    DIMENSION = "dimension"
    POINT = "point"
    IMAGE = "picture"
    BLOCK = "block"
    FOREIGN = "thing that cannot be cut"
    LIGHT = "light polyline in R12"
    STRAY_BULGE = "bulge on the last vertex of an open polyline"
    ZERO = "line without length"
    LIFTED = "drawn above or below the plane"
    TILTED = "drawn in a plane of its own"
    UNEVEN = "scaled unevenly"
    CLIPPED = "clipped"
    HIDDEN = "hidden"
    PAPER = "drawn on a paper layout"
    BROKEN = "broken"


@dataclass(frozen=True, slots=True)
class Oddity:
    """One thing that a reader came upon, where, and what there is to say about it."""

    odd: Odd
    at: Point | None
    detail: str = ""


@dataclass(frozen=True, slots=True)
class Ring:
    """A full circle, mm."""

    centre: Point
    radius: float

    @property
    def bounds(self) -> Bounds:
        """The upright square round the circle."""
        x, y, r = self.centre.x, self.centre.y, self.radius
        return Bounds(x - r, y - r, x + r, y + r)

    @property
    def length(self) -> float:
        """The way round, mm."""
        return 2 * pi * self.radius


Shape = Path | Ring


@dataclass(frozen=True, slots=True)
class Look:
    """How an entity is drawn: layer (or group), colour, and whether that colour is its own and not its layer's.

    ``width`` is that of its line in mm as drawn on the page, 0 when the file does not draw one.
    """

    layer: str = ""
    colour: str = ""
    own_colour: bool = False
    width: float = 0.0
    filled: bool = False
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class Entity:
    """One thing drawn: its kind as the file calls it, its place in the order of the file from 1, its shape if it has
    one that can be cut, and what is odd about it."""

    kind: str
    number: int
    at: Point
    shape: Shape | None
    look: Look = field(default_factory=Look)
    oddities: tuple[Oddity, ...] = ()

    @property
    def name(self) -> str:
        """What a finding calls it.

        >>> Entity("LINE", 7, Point(0, 0), None, Look("OUTLINE")).name
        'LINE 7 (OUTLINE)'
        """
        layer = f" ({self.look.layer})" if self.look.layer else ""
        return f"{self.kind} {self.number}{layer}"

    def has(self, *odds: Odd) -> bool:
        """Whether it has any of these oddities."""
        return any(each.odd in odds for each in self.oddities)


@dataclass(frozen=True, slots=True)
class CutFile:
    """A cutting file.

    ``unit`` is the word of the file's own unit, empty when it names none; ``scale`` is how many mm one of its units
    was taken for. ``page`` is the page of an SVG file and ``size`` its width and height as written; ``oddities`` are
    those of the file as a whole.
    """

    name: str
    kind: FileKind
    version: str
    unit: str
    scale: float
    entities: tuple[Entity, ...]
    page: Bounds | None = None
    oddities: tuple[Oddity, ...] = ()
    size: str = ""

    @property
    def cuts(self) -> tuple[Entity, ...]:
        """The entities that can be cut and are seen, in file order."""
        return tuple(each for each in self.entities if each.shape is not None and not each.has(Odd.HIDDEN, Odd.PAPER))

    @property
    def extent(self) -> Bounds | None:
        """The smallest box round all that is cut; None when nothing is."""
        boxes = [bounds(each.shape) for each in self.cuts if each.shape is not None]
        return joined_bounds(boxes) if boxes else None

    def shown(self, at: Point) -> Point:
        """A place as the user finds it: SVG programs count downwards from the upper left corner of the page."""
        return Point(at.x, self.page.y1 - at.y) if self.kind is FileKind.SVG and self.page else at


def bounds(shape: Shape) -> Bounds:
    """The smallest upright box round a shape.

    >>> bounds(Ring(Point(5, 5), 2))
    Bounds(x0=3, y0=3, x1=7, y1=7)
    """
    return shape.bounds


def box_of(shape: Shape) -> tuple[float, float, float, float]:
    """The same box as plain numbers: left, bottom, right, top."""
    found = shape.bounds
    return found.x0, found.y0, found.x1, found.y1
