"""What a machine does by a sheet: how far it cuts, how often, and how far it goes in between."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from math import fsum, pi

from patternforge.drawing.model import Dot, Ink, Role, Sheet, Stroke
from patternforge.geometry.point import Point

__all__ = ["Tally", "ends", "tallies", "travel"]


@dataclass(frozen=True, slots=True)
class Tally:
    """How many lines of a role there are, and how long they are together, mm."""

    role: Role
    count: int
    length: float


def ends(ink: Stroke | Dot) -> tuple[Point, Point]:
    """Where a line is begun and where it is left; a circle is begun at its right.

    >>> ends(Dot(Role.HOLE, Point(5, 5), 2.0))
    (Point(x=6.0, y=5.0), Point(x=6.0, y=5.0))
    """
    if isinstance(ink, Stroke):
        return ink.path.start, ink.path.start if ink.path.closed else ink.path.end
    right = ink.centre + Point(ink.diameter / 2, 0.0)
    return right, right


def travel(sheet: Sheet) -> float:
    """The way in mm from the end of each line of a sheet to the beginning of the next, in its order.

    Where the machine comes from and where it goes home to is not counted, for that is the machine's.

    >>> from patternforge.drawing.model import Figure
    >>> dots = tuple(Dot(Role.HOLE, Point(x, 0), 1.0) for x in (0, 4, 9))
    >>> travel(Sheet("sheet", 20, 20, (Figure("piece", "outer", dots),)))
    9.0
    """
    met = [ends(ink) for ink in _lines(sheet)]
    return fsum(end.distance_to(start) for (_, end), (start, _) in pairwise(met))


def tallies(sheets: Iterable[Sheet]) -> tuple[Tally, ...]:
    """The lines of all sheets by role, in the order of roles; a role without a line is left out."""
    lengths: dict[Role, list[float]] = {}
    for sheet in sheets:
        for ink in _lines(sheet):
            lengths.setdefault(ink.role, []).append(_length(ink))
    return tuple(Tally(role, len(lengths[role]), fsum(lengths[role])) for role in Role if role in lengths)


def _lines(sheet: Sheet) -> list[Stroke | Dot]:
    return [ink for figure in sheet.figures for ink in figure.inks if isinstance(ink, Stroke | Dot)]


def _length(ink: Ink) -> float:
    if isinstance(ink, Stroke):
        return ink.path.length
    return pi * ink.diameter if isinstance(ink, Dot) else 0.0
