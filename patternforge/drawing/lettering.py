"""Text as strokes: what a cutter or a plotter can follow, and what a printed page shows.

Labels drawn as strokes need no font on any machine and keep their width in every file.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from math import inf, radians

from patternforge.drawing.alphabet import glyph_of
from patternforge.drawing.glyph import CAPITAL, Glyph
from patternforge.drawing.model import Align, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point

__all__ = ["letter_strokes", "text_width"]

_BEFORE = {Align.LEFT: 0.0, Align.CENTRE: 0.5, Align.RIGHT: 1.0}


def letter_strokes(text: Text) -> tuple[Stroke, ...]:
    """Open strokes of the role of ``text``, in reading order; capitals are ``text.height`` mm high.

    The line starts, centres or ends at ``text.at`` and is turned by ``text.angle`` degrees about it. Accented
    letters are composed. DraftError for a height that is not positive and for a character, named in the message,
    that cannot be composed; nothing is left out.

    >>> from patternforge.drawing.model import Role
    >>> letter_strokes(Text(Role.LABEL, Point(0, 0), 2.1, "I"))[0].path.length
    2.1
    """
    scale = _scale(text.height)
    direction = Point(1.0, 0.0).rotated(radians(text.angle))
    start = text.at - direction * (_BEFORE[text.align] * text_width(text.content, text.height))
    line = _line_of(text.content)
    placed = (tuple(_placed(p, start, direction, scale) for p in points) for points in line.lines)
    return tuple(Stroke(text.role, polyline(points)) for points in placed)


def text_width(content: str, height: float) -> float:
    """Room that ``content`` takes along its base line, mm, for capitals of ``height`` mm.

    Errors as in ``letter_strokes``.

    >>> text_width("I", 21.0)
    8.0
    """
    return _line_of(content).width * _scale(height)


def _scale(height: float) -> float:
    if not 0 < height < inf:
        raise DraftError(f"text of {height} mm height cannot be drawn; write a height above 0 mm")
    return height / CAPITAL


def _line_of(content: str) -> Glyph:
    """All letters of the text set side by side on one base line."""
    line = Glyph(0.0, ())
    for cluster in _clusters(content):
        line = line.beside(glyph_of(cluster))
    return line


def _clusters(content: str) -> Iterator[str]:
    """Each letter of the text with the combining marks that follow it."""
    cluster = ""
    for character in unicodedata.normalize("NFD", content):
        if cluster and not unicodedata.combining(character):
            yield cluster
            cluster = ""
        cluster += character
    if cluster:
        yield cluster


def _placed(p: tuple[float, float], start: Point, direction: Point, scale: float) -> Point:
    return start + direction * (p[0] * scale) + direction.perpendicular() * (p[1] * scale)
