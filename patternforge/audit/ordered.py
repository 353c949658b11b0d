"""What a cutting file was to hold, as plain values: nothing of it comes from the file or from what wrote it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from patternforge.audit.model import FileKind
from patternforge.geometry.boxes import Box

__all__ = ["Ordered", "OrderedLine", "OrderedPiece"]

_NONE: Mapping[str, int] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class OrderedLine:
    """One line: what it is, its layer or pen, its colour (empty for any), its box and length in mm.

    ``area`` in mm2 is that of a closed line, negative where it runs clockwise; ``closed`` says whether it ends where
    it begins, ``radius`` is the smallest of its arcs, None without any; ``through`` says whether it is
    cut and not only scored.
    """

    word: str
    layer: str
    colour: str
    box: Box
    length: float
    area: float
    closed: bool
    radius: float | None
    through: bool


@dataclass(frozen=True, slots=True)
class OrderedPiece:
    """How large the outline of a piece is to be, mm; ``room`` is how much larger it may be."""

    name: str
    width: float
    height: float
    room: float = 0.0


@dataclass(frozen=True, slots=True)
class Ordered:
    """All lines of a file in their order, and what the pattern says of them.

    ``release`` is that of a DXF file, ``page`` width and height of an SVG file in mm. ``counts`` says how many lines
    of each word the pattern has, ``pieces`` how large its outlines are, in the order of the file; ``stray`` is how
    far chords may stray from arcs, mm, 0 for true arcs.
    """

    kind: FileKind
    release: str
    lines: tuple[OrderedLine, ...]
    page: tuple[float, float] | None = None
    counts: Mapping[str, int] = field(default_factory=lambda: _NONE)
    pieces: tuple[OrderedPiece, ...] = ()
    stray: float = 0.0
