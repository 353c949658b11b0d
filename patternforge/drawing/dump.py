"""A drawing as plain text that is stable, readable and made to be compared.

Every line of the text is a row of words, decimal numbers in mm (angles in degrees) and quoted names::

    figure "shell" group "outer" size 95.0000 75.0000
      stitch hole dot at 5.0000 5.0000 diameter 1.0000
      outline closed at 0.0000 0.0000
        line to 95.0000 0.0000
        arc to 95.0000 75.0000 through 132.5000 37.5000

A stroke is given by its start and then one row for each segment; an arc by its end and the point half way along it,
so that all its numbers are lengths and answer to one tolerance.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator

from patternforge.drawing.extent import extent
from patternforge.drawing.model import Area, Dot, Figure, Ink, Stroke, Text
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.units import mm

__all__ = ["DECIMALS", "dump"]

DECIMALS = 4


def dump(figures: Iterable[Figure]) -> str:
    """``figures`` as text: one block for each, its inks in order, lengths in mm to ``DECIMALS`` places.

    >>> from patternforge.drawing.model import Role
    >>> print(dump([Figure("ring", "outer", (Dot(Role.OUTLINE, Point(0, 0), 20.0),))]), end="")
    figure "ring" group "outer" size 20.0000 20.0000
      outline dot at 0.0000 0.0000 diameter 20.0000
    """
    return "".join(f"{row}\n" for figure in figures for row in _figure_rows(figure))


def _figure_rows(figure: Figure) -> Iterator[str]:
    title = f"figure {_quoted(figure.name)} group {_quoted(figure.group)}"
    if not figure.inks:
        yield f"{title} empty"
        return
    bounds = extent(figure.inks)
    yield f"{title} size {_numbers(bounds.width, bounds.height)}"
    for ink in figure.inks:
        yield from _ink_rows(ink)


def _ink_rows(ink: Ink) -> Iterator[str]:
    if isinstance(ink, Stroke):
        yield from _stroke_rows(ink)
    elif isinstance(ink, Dot):
        yield f"  {ink.role.value} dot at {_point(ink.centre)} diameter {_numbers(ink.diameter)}"
    elif isinstance(ink, Area):
        yield f"  {ink.role.value} area tone {_numbers(ink.tone)}"
        yield from (row for path in ink.paths for row in _stroke_rows(Stroke(ink.role, path)))
    else:
        yield f"  {ink.role.value} text at {_point(ink.at)} {_lettering(ink)}"


def _stroke_rows(ink: Stroke) -> Iterator[str]:
    kind = "closed" if ink.path.closed else "open"
    yield f"  {ink.role.value} {kind} at {_point(ink.path.segments[0].start)}"
    for segment in ink.path.segments:
        yield f"    {_segment(segment)}"


def _segment(segment: Segment) -> str:
    if not segment.is_arc:
        return f"line to {_point(segment.end)}"
    return f"arc to {_point(segment.end)} through {_point(segment.point_at(segment.length / 2))}"


def _lettering(text: Text) -> str:
    turn = _numbers(round(text.angle, DECIMALS) % 360)
    return f"height {_numbers(text.height)} angle {turn} {text.align.value} {_quoted(text.content)}"


def _point(point: Point) -> str:
    return _numbers(point.x, point.y)


def _numbers(*values: float) -> str:
    return " ".join(mm(value, DECIMALS) for value in values)


def _quoted(words: str) -> str:
    return json.dumps(words, ensure_ascii=False)
