"""The order in which a machine follows the lines of a sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from enum import StrEnum

from patternforge.drawing.model import Figure, Role, Sheet

__all__ = ["Course", "Travel", "in_roles"]


class Course(StrEnum):
    """Whether a piece is finished before the next is begun, or one operation is done on all pieces first."""

    PIECES = "piece by piece"
    OPERATIONS = "operation by operation"


class Travel(StrEnum):
    """Whether lines, pieces and beginnings are exchanged to shorten the way between them, or stay as drawn."""

    SHORTEST = "shortest"
    AS_DRAWN = "as drawn"


def in_roles(sheet: Sheet, roles: Sequence[Role], course: Course = Course.PIECES) -> Sheet:
    """``sheet`` with the inks of ``roles`` alone, those of a figure in the order of ``roles``.

    Operation by operation a figure is parted into as many as it has roles, first those of the first role. A figure
    without an ink is left out.

    >>> from patternforge.drawing.model import Dot
    >>> from patternforge.geometry.point import Point
    >>> disc = Figure("disc", "outer", (Dot(Role.HOLE, Point(9, 9), 1.0), Dot(Role.OUTLINE, Point(9, 9), 9.0)))
    >>> roles = (Role.HOLE, Role.OUTLINE)
    >>> [figure.inks[0].role.value for figure in in_roles(Sheet("s", 18, 18, (disc, disc)), roles).figures]
    ['stitch hole', 'stitch hole']
    >>> parted = in_roles(Sheet("s", 18, 18, (disc, disc)), roles, Course.OPERATIONS)
    >>> [figure.inks[0].role.value for figure in parted.figures]
    ['stitch hole', 'stitch hole', 'outline', 'outline']
    """
    groups = [tuple(roles)] if course is Course.PIECES else [(role,) for role in roles]
    return replace(sheet, figures=tuple(_parts(sheet.figures, groups)))


def _parts(figures: Sequence[Figure], groups: Sequence[tuple[Role, ...]]) -> Iterator[Figure]:
    for group in groups:
        for figure in figures:
            inks = [ink for ink in figure.inks if ink.role in group]
            if inks:
                yield replace(figure, inks=tuple(sorted(inks, key=lambda ink: group.index(ink.role))))
