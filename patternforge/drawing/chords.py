"""Arcs and circles drawn as runs of short lines, for machines that follow nothing else."""

from __future__ import annotations

from dataclasses import replace

from patternforge.drawing.model import Dot, Figure, Ink, Sheet, Stroke
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Point

__all__ = ["in_chords"]


def in_chords(sheet: Sheet, tolerance: float) -> Sheet:
    """``sheet`` with chords for arcs, straying at most ``tolerance`` mm from them; ends and straight lines stay.

    A dot becomes a closed stroke that begins at its right. GeometryError when the tolerance is not positive.

    >>> from patternforge.drawing.model import Role
    >>> ring = Figure("ring", "outer", (Dot(Role.OUTLINE, Point(15, 15), 20.0),))
    >>> (stroke,) = in_chords(Sheet("sheet", 30, 30, (ring,)), 0.02).figures[0].inks
    >>> len(stroke.path.segments), any(segment.is_arc for segment in stroke.path.segments)
    (50, False)
    """
    return replace(sheet, figures=tuple(_figure(figure, tolerance) for figure in sheet.figures))


def _figure(figure: Figure, tolerance: float) -> Figure:
    return replace(figure, inks=tuple(_ink(ink, tolerance) for ink in figure.inks))


def _ink(ink: Ink, tolerance: float) -> Ink:
    if isinstance(ink, Stroke):
        return Stroke(ink.role, _path(ink.path, tolerance))
    if isinstance(ink, Dot):
        return Stroke(ink.role, _path(_circle(ink), tolerance))
    return ink


def _path(path: Path, tolerance: float) -> Path:
    if not any(segment.is_arc for segment in path.segments):
        return path
    points = flattened(path, tolerance)
    return polygon(points) if path.closed else polyline(points)


def _circle(dot: Dot) -> Path:
    half = Point(dot.diameter / 2, 0.0)
    right, left = dot.centre + half, dot.centre - half
    return from_vertices([(right.x, right.y, 1.0), (left.x, left.y, 1.0)], closed=True)
