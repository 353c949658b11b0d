"""Text as strokes: what a cutter or a plotter can follow, and what a printed page shows.

Labels drawn as strokes need no font on any machine and keep their width in every file.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import inf, radians

from patternforge.drawing.alphabet import glyph_of
from patternforge.drawing.glyph import CAPITAL, Glyph, hull
from patternforge.drawing.model import Align, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Bounds, Point

__all__ = ["Lettering", "letter_bounds", "letter_strokes", "lettering", "letters", "text_width"]

_BEFORE = {Align.LEFT: 0.0, Align.CENTRE: 0.5, Align.RIGHT: 1.0}


@dataclass(frozen=True, slots=True)
class Lettering:
    """Glyphs set side by side: the start and direction (of length 1) of their base line, and mm for a grid unit."""

    start: Point
    direction: Point
    scale: float
    glyphs: tuple[Glyph, ...]

    @property
    def width(self) -> float:
        """Room along the base line, mm."""
        return sum(glyph.width for glyph in self.glyphs) * self.scale

    def placed(self) -> Iterator[tuple[float, Glyph]]:
        """Each glyph after its place along the base line in grid units."""
        at = 0.0
        for glyph in self.glyphs:
            yield at, glyph
            at += glyph.width

    def point(self, x: float, y: float) -> Point:
        """Where a point of the grid lies, mm; ``x`` counts from the start of the whole line."""
        along, up = x * self.scale, y * self.scale
        direction = self.direction
        return Point(
            self.start.x + direction.x * along - direction.y * up,
            self.start.y + direction.y * along + direction.x * up,
        )


def lettering(text: Text) -> Lettering:
    """The glyphs of ``text`` where they stand; capitals are ``text.height`` mm high.

    The line starts, centres or ends at ``text.at`` and is turned by ``text.angle`` degrees about it. Accented
    letters are composed. DraftError for a height that is not positive and for a character, named in the message,
    that cannot be composed; nothing is left out.

    >>> from patternforge.drawing.model import Role
    >>> set_out = lettering(Text(Role.LABEL, Point(0, 0), 2.1, "II", align=Align.RIGHT))
    >>> round(set_out.start.x, 12), [at for at, _ in set_out.placed()]
    (-1.6, [0.0, 8.0])
    """
    scale = _scale(text.height)
    glyphs = _glyphs(text.content)
    direction = Point(1.0, 0.0).rotated(radians(text.angle))
    flush = Lettering(text.at, direction, scale, glyphs)
    return replace(flush, start=text.at - direction * (_BEFORE[text.align] * flush.width))


def letter_strokes(text: Text) -> tuple[Stroke, ...]:
    """Open strokes of the role of ``text``, in reading order. Place and errors as in ``lettering``.

    >>> from patternforge.drawing.model import Role
    >>> letter_strokes(Text(Role.LABEL, Point(0, 0), 2.1, "I"))[0].path.length
    2.1
    """
    written = lettering(text)
    lines = ((at, line) for at, glyph in written.placed() for line in glyph.lines)
    return tuple(Stroke(text.role, polyline([written.point(at + x, y) for x, y in line])) for at, line in lines)


def letter_bounds(text: Text) -> Bounds | None:
    """The smallest upright box round ``letter_strokes(text)``, mm, without drawing them; None when there are none.

    >>> from patternforge.drawing.model import Role
    >>> letter_bounds(Text(Role.LABEL, Point(0, 0), 21.0, "I"))
    Bounds(x0=4.0, y0=0.0, x1=4.0, y1=21.0)
    """
    written = lettering(text)
    start, cosine, sine, scale = written.start, written.direction.x, written.direction.y, written.scale
    corners = [((at + x) * scale, y * scale) for at, glyph in written.placed() for x, y in hull(glyph)]
    if not corners:
        return None
    xs = [start.x + cosine * along - sine * up for along, up in corners]
    ys = [start.y + sine * along + cosine * up for along, up in corners]
    return Bounds(min(xs), min(ys), max(xs), max(ys))


def text_width(content: str, height: float) -> float:
    """Room that ``content`` takes along its base line, mm, for capitals of ``height`` mm.

    Errors as in ``lettering``.

    >>> text_width("I", 21.0)
    8.0
    """
    return sum(glyph.width for glyph in _glyphs(content)) * _scale(height)


def _scale(height: float) -> float:
    if not 0 < height < inf:
        raise DraftError(f"text of {height} mm height cannot be drawn; write a height above 0 mm")
    return height / CAPITAL


def _glyphs(content: str) -> tuple[Glyph, ...]:
    return tuple(glyph_of(letter) for letter in letters(content))


def letters(content: str) -> tuple[str, ...]:
    """Each letter or blank of a text with the combining marks that follow it, in canonical decomposition.

    >>> [len(letter) for letter in letters("\\N{LATIN CAPITAL LETTER A WITH RING ABOVE}B")]
    [2, 1]
    """
    return tuple(_clusters(content))


def _clusters(content: str) -> Iterator[str]:
    cluster = ""
    for character in unicodedata.normalize("NFD", content):
        if cluster and not unicodedata.combining(character):
            yield cluster
            cluster = ""
        cluster += character
    if cluster:
        yield cluster
