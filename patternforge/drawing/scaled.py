"""Drawings made smaller or larger as a whole."""

from __future__ import annotations

from dataclasses import replace

from patternforge.drawing.model import Area, Dot, Figure, Ink, Sheet, Stroke
from patternforge.errors import DraftError
from patternforge.geometry.path import Path, from_vertices

__all__ = ["scaled_ink", "scaled_path", "scaled_sheet"]


def scaled_sheet(sheet: Sheet, factor: float) -> Sheet:
    """The sheet with all that is on it ``factor`` times as large; DraftError for a factor that is not above 0.

    >>> scaled_sheet(Sheet("s", 30.0, 20.0, ()), 0.5)
    Sheet(name='s', width=15.0, height=10.0, figures=())
    """
    if not factor > 0:
        raise DraftError(f"a drawing cannot be made {factor:g} times as large")
    figures = tuple(_figure(figure, factor) for figure in sheet.figures)
    return Sheet(sheet.name, sheet.width * factor, sheet.height * factor, figures)


def scaled_ink(ink: Ink, factor: float) -> Ink:
    """The ink ``factor`` times as large about the origin; arcs stay arcs."""
    if isinstance(ink, Stroke):
        return replace(ink, path=scaled_path(ink.path, factor))
    if isinstance(ink, Dot):
        return replace(ink, centre=ink.centre * factor, diameter=ink.diameter * factor)
    if isinstance(ink, Area):
        return replace(ink, paths=tuple(scaled_path(path, factor) for path in ink.paths))
    return replace(ink, at=ink.at * factor, height=ink.height * factor)


def _figure(figure: Figure, factor: float) -> Figure:
    return replace(figure, inks=tuple(scaled_ink(ink, factor) for ink in figure.inks))


def scaled_path(path: Path, factor: float) -> Path:
    """The path ``factor`` times as large about the origin."""
    return from_vertices([(x * factor, y * factor, bulge) for x, y, bulge in path.vertices], path.closed)
