"""Inks drawn larger or smaller, for pictures that are only to be looked at."""

from __future__ import annotations

from dataclasses import replace

from patternforge.drawing.model import Area, Dot, Figure, Ink, Stroke
from patternforge.errors import DraftError
from patternforge.geometry.path import Path, from_vertices

__all__ = ["PLAIN_SCALES", "plain_scale", "scaled"]

PLAIN_SCALES = (1.0, 0.8, 0.75, 2 / 3, 0.6, 0.5, 0.4, 1 / 3, 0.25, 0.2, 0.15, 0.1)


def plain_scale(width: float, height: float, widest: float, highest: float) -> float:
    """The largest plain scale, 1 at most, at which a picture of ``width`` x ``height`` mm keeps within its room.

    The smallest there is, 1 : 10, where none does.

    >>> plain_scale(200.0, 100.0, 90.0, 90.0)
    0.4
    """
    return next((s for s in PLAIN_SCALES if s * width <= widest and s * height <= highest), PLAIN_SCALES[-1])


def scaled(figure: Figure, factor: float, least_letters: float = 0.0) -> Figure:
    """``figure`` drawn ``factor`` times as large about the origin; letters are at least ``least_letters`` mm high.

    DraftError when the factor is not positive.

    >>> from patternforge.drawing.model import Role
    >>> from patternforge.geometry.point import Point
    >>> dot = Figure("dot", "", (Dot(Role.HOLE, Point(10, 4), 1.0),))
    >>> scaled(dot, 0.5).inks[0]
    Dot(role=<Role.HOLE: 'stitch hole'>, centre=Point(x=5.0, y=2.0), diameter=0.5)
    """
    if not factor > 0:
        raise DraftError(f"nothing can be drawn {factor:g} times as large")
    return replace(figure, inks=tuple(_ink(ink, factor, least_letters) for ink in figure.inks))


def _ink(ink: Ink, factor: float, least: float) -> Ink:
    if isinstance(ink, Stroke):
        return Stroke(ink.role, _path(ink.path, factor))
    if isinstance(ink, Dot):
        return Dot(ink.role, ink.centre * factor, ink.diameter * factor)
    if isinstance(ink, Area):
        return replace(ink, paths=tuple(_path(path, factor) for path in ink.paths))
    return replace(ink, at=ink.at * factor, height=max(ink.height * factor, least))


def _path(path: Path, factor: float) -> Path:
    vertices = [(x * factor, y * factor, bulge) for x, y, bulge in path.vertices]
    return from_vertices(vertices, path.closed)
