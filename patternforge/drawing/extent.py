"""How much room inks take, and inks carried to another place."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from patternforge.drawing.model import Area, Dot, Figure, Ink, Stroke
from patternforge.errors import GeometryError
from patternforge.geometry.point import Bounds, joined_bounds
from patternforge.geometry.transform import Transform

__all__ = ["extent", "moved", "placed"]


def extent(inks: Iterable[Ink]) -> Bounds:
    """The smallest upright rectangle, mm, round all ``inks``, true to arcs; a text counts with its anchor alone,
    since its length hangs on the typeface that will show it. GeometryError when there is no ink.

    >>> from patternforge.drawing.model import Role
    >>> from patternforge.geometry.point import Point
    >>> extent([Dot(Role.HOLE, Point(10, 5), 1.0)])
    Bounds(x0=9.5, y0=4.5, x1=10.5, y1=5.5)
    """
    boxes = [_box(ink) for ink in inks]
    if not boxes:
        raise GeometryError("nothing is drawn, so it takes no room that could be measured")
    return joined_bounds(boxes)


def placed(ink: Ink, transform: Transform) -> Ink:
    """``ink`` carried by an isometry; a mirror carries the anchor and direction of a text, never its letters.

    >>> from patternforge.drawing.model import Role
    >>> from patternforge.geometry.point import Point
    >>> from patternforge.geometry.transform import translation
    >>> placed(Dot(Role.HOLE, Point(1, 2), 1.0), translation(10, 0)).centre
    Point(x=11.0, y=2.0)
    """
    if isinstance(ink, Stroke):
        return Stroke(ink.role, transform.path(ink.path))
    if isinstance(ink, Dot):
        return Dot(ink.role, transform.point(ink.centre), ink.diameter)
    if isinstance(ink, Area):
        return replace(ink, paths=tuple(transform.path(path) for path in ink.paths))
    return replace(ink, at=transform.point(ink.at), angle=transform.angle(ink.angle))


def moved(figure: Figure, transform: Transform) -> Figure:
    """``figure`` with every ink carried by ``transform``, in the same order."""
    return replace(figure, inks=tuple(placed(ink, transform) for ink in figure.inks))


def _box(ink: Ink) -> Bounds:
    if isinstance(ink, Stroke):
        return ink.path.bounds
    if isinstance(ink, Dot):
        x, y, r = ink.centre.x, ink.centre.y, ink.diameter / 2
        return Bounds(x - r, y - r, x + r, y + r)
    if isinstance(ink, Area):
        return joined_bounds([path.bounds for path in ink.paths])
    return Bounds(ink.at.x, ink.at.y, ink.at.x, ink.at.y)
