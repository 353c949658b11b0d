"""Pictures set one below the other on a sheet, letters and all."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from patternforge.drawing.extent import extent, moved
from patternforge.drawing.lettering import letter_bounds
from patternforge.drawing.model import Figure, Ink, Sheet, Text
from patternforge.errors import DraftError, GeometryError
from patternforge.geometry.point import Bounds, joined_bounds
from patternforge.geometry.transform import translation

__all__ = ["room", "stacked"]


def room(inks: Iterable[Ink]) -> Bounds:
    """The smallest upright rectangle, mm, round all ``inks``, the letters of texts as strokes included.

    GeometryError when there is no ink.

    >>> from patternforge.drawing.model import Role
    >>> from patternforge.geometry.point import Point
    >>> box = room([Text(Role.LABEL, Point(0, 0), 2.0, "card")])
    >>> box.width > 4.0
    True
    """
    boxes = [box for ink in inks if (box := _box(ink)) is not None]
    if not boxes:
        raise GeometryError("nothing is drawn, so it takes no room that could be measured")
    return joined_bounds(boxes)


def stacked(figures: Sequence[Figure], gap: float, name: str) -> Sheet:
    """A sheet with ``figures`` one below the other from the top, their left sides in line, ``gap`` mm apart.

    DraftError: no figures, or a negative gap.

    >>> from patternforge.drawing.model import Dot, Role
    >>> from patternforge.geometry.point import Point
    >>> ring = Figure("ring", "", (Dot(Role.OUTLINE, Point(0, 0), 20.0),))
    >>> sheet = stacked([ring, ring], 5.0, "rings")
    >>> sheet.width, sheet.height
    (30.0, 55.0)
    """
    if not figures:
        raise DraftError("there is no picture to set on the sheet")
    if not gap >= 0:
        raise DraftError(f"the gap between pictures is {gap:g} mm; it must be 0 mm or more")
    boxes = [room(figure.inks) for figure in figures]
    height = gap + sum(box.height + gap for box in boxes)
    top = height - gap
    placed = []
    for figure, box in zip(figures, boxes, strict=True):
        placed.append(moved(figure, translation(gap - box.x0, top - box.y1)))
        top -= box.height + gap
    return Sheet(name, max(box.width for box in boxes) + 2 * gap, height, tuple(placed))


def _box(ink: Ink) -> Bounds | None:
    return letter_bounds(ink) if isinstance(ink, Text) else extent((ink,))
