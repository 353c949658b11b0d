"""Drawings made larger or smaller as a whole, for pictures that are only to be looked at."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin

from patternforge.drawing.model import Align, Area, Dot, Figure, Ink, Sheet, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point

__all__ = ["PLAIN_SCALES", "plain_scale", "scaled", "scaled_ink", "scaled_sheet"]

PLAIN_SCALES = (1.0, 0.8, 0.75, 2 / 3, 0.6, 0.5, 0.4, 1 / 3, 0.25, 0.2, 0.15, 0.1)


def plain_scale(width: float, height: float, widest: float, highest: float) -> float:
    """The largest plain scale, 1 at most, at which a picture of ``width`` x ``height`` mm keeps within its room.

    The smallest there is, 1 : 10, where none does.

    >>> plain_scale(200.0, 100.0, 90.0, 90.0)
    0.4
    """
    return next((s for s in PLAIN_SCALES if s * width <= widest and s * height <= highest), PLAIN_SCALES[-1])


def scaled_sheet(sheet: Sheet, factor: float, least_letters: float = 0.0) -> Sheet:
    """The sheet with all that is on it ``factor`` times as large; letters are at least ``least_letters`` mm high.

    DraftError for a factor that is not above 0.

    >>> scaled_sheet(Sheet("s", 30.0, 20.0, ()), 0.5)
    Sheet(name='s', width=15.0, height=10.0, figures=())
    """
    _refuse(factor)
    figures = tuple(scaled(figure, factor, least_letters) for figure in sheet.figures)
    return Sheet(sheet.name, sheet.width * factor, sheet.height * factor, figures)


def scaled(figure: Figure, factor: float, least_letters: float = 0.0) -> Figure:
    """``figure`` drawn ``factor`` times as large about the origin; letters are at least ``least_letters`` mm high.

    DraftError for a factor that is not above 0.

    >>> from patternforge.drawing.model import Role
    >>> from patternforge.geometry.point import Point
    >>> dot = Figure("dot", "", (Dot(Role.HOLE, Point(10, 4), 1.0),))
    >>> scaled(dot, 0.5).inks[0]
    Dot(role=<Role.HOLE: 'stitch hole'>, centre=Point(x=5.0, y=2.0), diameter=0.5)
    """
    _refuse(factor)
    return replace(figure, inks=tuple(scaled_ink(ink, factor, least_letters) for ink in figure.inks))


def scaled_ink(ink: Ink, factor: float, least_letters: float = 0.0) -> Ink:
    """The ink ``factor`` times as large about the origin, letters as for ``scaled``; arcs stay arcs."""
    if isinstance(ink, Stroke):
        return replace(ink, path=_path(ink.path, factor))
    if isinstance(ink, Dot):
        return replace(ink, centre=ink.centre * factor, diameter=ink.diameter * factor)
    if isinstance(ink, Area):
        return replace(ink, paths=tuple(_path(path, factor) for path in ink.paths))
    return _grown(replace(ink, at=ink.at * factor, height=ink.height * factor), least_letters)


def _grown(words: Text, least: float) -> Text:
    """Words in letters of at least that height: a caption keeps its top, or it would grow into what it stands under.

    Names at a leader keep their middle.
    """
    down = max(least - words.height, 0.0) * (1.0 if words.align is Align.CENTRE else 0.5)
    turn = radians(words.angle)
    shift = Point(sin(turn), -cos(turn)) * down
    return replace(words, height=max(words.height, least), at=words.at + shift)


def _refuse(factor: float) -> None:
    if not factor > 0:
        raise DraftError(f"a drawing cannot be made {factor:g} times as large")


def _path(path: Path, factor: float) -> Path:
    return from_vertices([(x * factor, y * factor, bulge) for x, y, bulge in path.vertices], path.closed)
