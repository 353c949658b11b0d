"""Dimension lines: how far it is from one side of a drawing to the other, in mm and in inches."""

from __future__ import annotations

from collections.abc import Iterator
from math import atan2, degrees

from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Ink, Role, Stroke, Text
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.units import inches, mm

__all__ = ["DIMENSION", "both_units", "size_inks"]

DIMENSION = 12.0  # mm that a dimension line takes beside what it measures, its words included

_OFF = 7.5  # of the line from what it measures, mm
_CLEAR = 1.0  # from what is measured to where an extension line begins, mm
_BEYOND = 1.5  # of an extension line over the dimension line, mm
_ARROW = Point(2.5, 0.6)  # length and half width of an arrow head, mm
_LETTERS = 2.2


def both_units(size: float) -> str:
    """A size in mm and inches.

    >>> both_units(85.6)
    '85.60 mm = 3.370 in'
    """
    return f"{mm(size)} mm = {inches(size)} in"


def size_inks(box: Bounds) -> tuple[Ink, ...]:
    """The width of ``box`` below it and its height at its left, each with extension lines and arrow heads."""
    below, left = box.y0 - _OFF, box.x0 - _OFF
    return (
        *_extension(Point(box.x0, box.y0 - _CLEAR), Point(box.x0, below - _BEYOND)),
        *_extension(Point(box.x1, box.y0 - _CLEAR), Point(box.x1, below - _BEYOND)),
        *_measured(Point(box.x0, below), Point(box.x1, below), box.width),
        *_extension(Point(box.x0 - _CLEAR, box.y0), Point(left - _BEYOND, box.y0)),
        *_extension(Point(box.x0 - _CLEAR, box.y1), Point(left - _BEYOND, box.y1)),
        *_measured(Point(left, box.y0), Point(left, box.y1), box.height),
    )


def _extension(start: Point, end: Point) -> tuple[Ink, ...]:
    return (Stroke(Role.SIZE, polyline([start, end])),)


def _measured(start: Point, end: Point, size: float) -> Iterator[Ink]:
    """The line with a head at both ends, and its words beside it, away from what is measured or turned to be read."""
    way = (end - start).unit()
    yield Stroke(Role.SIZE, polyline([start, end]))
    for tip, inward in ((start, way), (end, -way)):
        foot, side = tip + inward * _ARROW.x, inward.perpendicular() * _ARROW.y
        yield Stroke(Role.SIZE, polyline([foot + side, tip, foot - side]))
    # Level words stand under their line and upright ones, read from the right, left of theirs: outside both times.
    level = abs(way.x) > abs(way.y)
    off = -way.perpendicular() * (_LETTERS + 1.0) if level else way.perpendicular() * 1.0
    words = _fitting(both_units(size), end.distance_to(start))
    turn = 0.0 if level else degrees(atan2(way.y, way.x))
    yield Text(Role.SIZE, (start + end) / 2 + off, _LETTERS, words, turn, Align.CENTRE)


def _fitting(words: str, room: float) -> str:
    """The words, or where the line is too short for them only those in mm."""
    return words if text_width(words, _LETTERS) <= room else words.partition(" =")[0]
