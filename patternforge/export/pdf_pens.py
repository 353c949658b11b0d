"""How each role is drawn on paper: colour, dash and width, so that nothing is told apart by colour alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from patternforge.drawing.model import Role

__all__ = ["PENS", "Pen"]


@dataclass(frozen=True, slots=True)
class Pen:
    """Line width in mm, colour as red, green, blue from 0 to 1, and dash: lengths drawn and left out in turn, mm."""

    width: float
    colour: tuple[float, float, float]
    dash: tuple[float, ...] = ()


_BLACK, _GREY = (0.0, 0.0, 0.0), (0.45, 0.45, 0.45)

# What is cut through is unbroken, as the head of a page says.
# No line is wider than 0.25 mm: the middle of the line is the size of the piece.
PENS: Mapping[Role, Pen] = MappingProxyType(
    {
        Role.OUTLINE: Pen(0.25, _BLACK),
        Role.OPENING: Pen(0.25, (0.75, 0.0, 0.0)),
        Role.HOLE: Pen(0.13, (0.0, 0.2, 0.75)),
        Role.MARK: Pen(0.18, (0.6, 0.0, 0.6), (3.0, 0.8, 0.4, 0.8)),
        Role.FOLD: Pen(0.18, (0.0, 0.45, 0.1), (4.0, 2.0)),
        Role.SEAM: Pen(0.13, (0.0, 0.35, 0.6), (0.8, 0.8)),
        Role.LABEL: Pen(0.18, _BLACK),
        Role.SIZE: Pen(0.13, _BLACK),
        Role.CHECK: Pen(0.13, _BLACK),
        Role.GUIDE: Pen(0.13, _GREY, (12.0, 1.5)),
        Role.TINT: Pen(0.13, (0.31, 0.23, 0.16)),
    }
)
