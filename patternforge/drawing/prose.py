"""Notes in running text, broken into lines and set in columns: what stands round a drawing for people to read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.drawing.model import Ink, Role, Text
from patternforge.drawing.wrapping import wrapped
from patternforge.geometry.point import Bounds, Point

__all__ = ["Note", "notes_height", "notes_inks"]

_PITCH = 1.6  # base line to base line over the height of the letters
_HEADING = 1.25  # height of a heading over that of the rest
_APART = 0.9  # between two notes, over the height of the letters
_BETWEEN = 6.0  # columns, mm
_HANG = 1.6  # of the second and every further line of a point, over the height of the letters


@dataclass(frozen=True, slots=True)
class Note:
    """A heading and what is said under it, each point from a line of its own on."""

    heading: str
    points: tuple[str, ...]


def notes_height(notes: Sequence[Note], width: float, columns: int, height: float) -> float:
    """How high an area ``width`` mm wide must be to hold ``notes`` in so many columns, none broken off, mm."""
    own = _column_width(width, columns)
    return _least_height([_note_height(note, own, height) for note in notes], columns, _APART * height)


def notes_inks(notes: Sequence[Note], area: Bounds, columns: int, height: float) -> tuple[Ink, ...]:
    """``notes`` from the upper left of ``area`` down, column by column, as level as they can be filled."""
    own = _column_width(area.width, columns)
    heights = [_note_height(note, own, height) for note in notes]
    deep = _least_height(heights, columns, _APART * height)
    inks: list[Ink] = []
    column, down = 0, 0.0
    for note, high in zip(notes, heights, strict=True):
        if down and down + high > deep + 1e-9:
            column, down = column + 1, 0.0
        inks += _note_inks(note, Point(area.x0 + column * (own + _BETWEEN), area.y1 - down), own, height)
        down += high + _APART * height
    return tuple(inks)


def _column_width(width: float, columns: int) -> float:
    return (width - (columns - 1) * _BETWEEN) / columns


def _lines(note: Note, width: float, height: float) -> list[tuple[str, float, float]]:
    """Each line of a note with the height of its letters and how far it stands in, mm."""
    hang = _HANG * height
    heading = [(line, _HEADING * height, 0.0) for line in wrapped(note.heading, width, _HEADING * height)]
    rows = [wrapped(point, width - hang, height) for point in note.points]
    return heading + [(line, height, hang if i else 0.0) for row in rows for i, line in enumerate(row)]


def _note_height(note: Note, width: float, height: float) -> float:
    return sum(_PITCH * size for _, size, _ in _lines(note, width, height))


def _note_inks(note: Note, top: Point, width: float, height: float) -> list[Ink]:
    inks: list[Ink] = []
    down = 0.0
    for line, size, inset in _lines(note, width, height):
        down += _PITCH * size
        inks.append(Text(Role.LABEL, top + Point(inset, 0.4 * size - down), size, line))
    return inks


def _least_height(heights: Sequence[float], columns: int, apart: float) -> float:
    """The least height of columns that take the notes in order: one of the sums of notes that follow each other."""
    ends = [0.0]
    for high in heights:
        ends.append(ends[-1] + high + apart)
    sums = sorted({b - a - apart for i, a in enumerate(ends) for b in ends[i + 1 :]})
    return next((deep for deep in sums if _count(heights, deep, apart) <= columns), 0.0)


def _count(heights: Sequence[float], deep: float, apart: float) -> float:
    """How many columns of a height the notes take; endless where one is higher than that."""
    if any(high > deep + 1e-9 for high in heights):
        return float("inf")
    count, down = 1, 0.0
    for high in heights:
        if down and down + high > deep + 1e-9:
            count, down = count + 1, 0.0
        down += high + apart
    return count
