"""Fields to be filled in by hand: approval, name, date and signature, and lines to write on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Ink, Role, Stroke, Text
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Point

__all__ = ["SIGNING", "field_inks", "fields_height", "signing_inks"]

SIGNING = 23.0  # height of the boxes in usual letters, mm

_LETTERS = 2.0
_ROW = 6.0  # of fields to be written in by hand, mm
_BETWEEN = 4.0
_INSIDE = 1.5  # from the rim of a box to what stands in it, mm
_APPROVED = ("approved as drawn", "approved as changed")
_WHO = ("For the one who orders", "For the die maker")


def signing_inks(top: Point, width: float, large: float) -> tuple[Ink, ...]:
    """Two boxes side by side below ``top``: approved as drawn or with changes, name, date, signature."""
    own = (width - _BETWEEN) / 2
    boxes = [_box(top + Point(i * (own + _BETWEEN), 0), own, who, large) for i, who in enumerate(_WHO)]
    return tuple(ink for box in boxes for ink in box)


def _box(top: Point, width: float, who: str, large: float) -> Iterator[Ink]:
    size, height = _LETTERS * large, SIGNING * large
    yield Stroke(Role.LABEL, _oblong(top - Point(0, height), width, height))
    at = top + Point(_INSIDE, -_INSIDE - size)
    yield Text(Role.LABEL, at, size, who)
    half = (width - 3 * _INSIDE) / 2
    for column, words in enumerate(_APPROVED):
        foot = at + Point(column * half, -1.9 * size)
        yield Stroke(Role.LABEL, _oblong(foot - Point(0, 0.1 * size), 1.2 * size, 1.2 * size))
        yield Text(Role.LABEL, foot + Point(2.2 * size, 0), size, words)
    first = at - Point(0, 1.9 * size + 1.1 * _ROW * large)
    yield from _field("Name", first, half, size)
    yield from _field("Date", first + Point(half + _INSIDE, 0), half, size)
    yield from _field("Signature", first - Point(0, 1.2 * _ROW * large), width - 2 * _INSIDE, size)


def fields_height(labels: Sequence[str], large: float) -> float:
    """How high a column of fields is, mm."""
    return len(labels) * _ROW * large


def field_inks(labels: Sequence[str], top: Point, width: float, large: float) -> tuple[Ink, ...]:
    """A line to write on after each of ``labels``, one below the other from ``top`` down."""
    rows = (
        _field(label, top - Point(0, (i + 1) * _ROW * large), width, _LETTERS * large)
        for i, label in enumerate(labels)
    )
    return tuple(ink for row in rows for ink in row)


def _field(label: str, at: Point, width: float, size: float) -> Iterator[Ink]:
    yield Text(Role.LABEL, at, size, label)
    start = at + Point(text_width(label, size) + 1.5, -0.5)
    yield Stroke(Role.LABEL, polyline([start, Point(at.x + width, start.y)]))


def _oblong(foot: Point, width: float, height: float) -> Path:
    return polygon([foot, foot + Point(width, 0), foot + Point(width, height), foot + Point(0, height)])
