"""Marks that make an accented letter out of a plain one: own polylines, placed by the shape of the letter."""

from __future__ import annotations

from collections.abc import Callable

from patternforge.drawing.glyph import CAPITAL, Glyph, Line

__all__ = ["ACCENTS", "accented"]

_GAP = 2.5  # grid units between a letter and the mark above it

# Lines of each mark about x = 0, standing on y = 0 (above) or hanging from y = 0 (below).
_ACUTE: Line = ((-1.5, 0), (2, 4.5))
_GRAVE: Line = ((1.5, 0), (-2, 4.5))
_COMMA_BELOW: Line = ((0.8, -2.5), (0.6, -4.5), (-1, -6.5))
_CEDILLA: Line = ((0, 0), (-0.8, -2), (1, -2.2), (2, -3.2), (1.6, -5), (0, -5.8), (-2, -5.2))
_OGONEK: Line = ((0, 0), (-1.8, -1.6), (-2.2, -3.6), (-1.2, -5), (0.6, -5))


def _dot(x: float) -> Line:
    return ((x - 1, 1), (x, 0), (x + 1, 1), (x, 2), (x - 1, 1))


def _acute_at(x: float) -> Line:
    return tuple((x + dx, dy) for dx, dy in _ACUTE)


_RING: Line = ((0, 0), (-1.7, 0.7), (-2.4, 2.4), (-1.7, 4.1), (0, 4.8), (1.7, 4.1), (2.4, 2.4), (1.7, 0.7), (0, 0))

_ABOVE: dict[str, tuple[Line, ...]] = {
    "\N{COMBINING GRAVE ACCENT}": (_GRAVE,),
    "\N{COMBINING ACUTE ACCENT}": (_ACUTE,),
    "\N{COMBINING CIRCUMFLEX ACCENT}": (((-4, 0), (0, 4.5), (4, 0)),),
    "\N{COMBINING TILDE}": (((-5, 0.8), (-3.6, 2.8), (-1.8, 2.8), (1.8, 1), (3.6, 1), (5, 3)),),
    "\N{COMBINING MACRON}": (((-4, 1.5), (4, 1.5)),),
    "\N{COMBINING BREVE}": (((-4, 4), (-2.8, 1.2), (0, 0), (2.8, 1.2), (4, 4)),),
    "\N{COMBINING DOT ABOVE}": (_dot(0),),
    "\N{COMBINING DIAERESIS}": (_dot(-3.5), _dot(3.5)),
    "\N{COMBINING RING ABOVE}": (_RING,),
    "\N{COMBINING DOUBLE ACUTE ACCENT}": (_acute_at(-2.5), _acute_at(2.5)),
    "\N{COMBINING CARON}": (((-4, 4.5), (0, 0), (4, 4.5)),),
}


def _above(lines: tuple[Line, ...]) -> Callable[[Glyph], Glyph]:
    def with_mark(base: Glyph) -> Glyph:
        mark = Glyph(0, lines)
        body = _with_room(base, mark.right + 1)
        return body.with_lines(*mark.moved(body.centre, body.top + _GAP).lines)

    return with_mark


def _with_room(base: Glyph, half: float) -> Glyph:
    """A narrow letter set in a wider place, so that a mark ``half`` to either side stays clear of its neighbours."""
    lacking = max(0.0, half - base.centre)
    return base.moved(lacking, 0).widened(base.width + 2 * lacking)


def _below(line: Line) -> Callable[[Glyph], Glyph]:
    def with_mark(base: Glyph) -> Glyph:
        return base.with_lines(*Glyph(0, (line,)).moved(base.centre, 0).lines)

    return with_mark


def _tailed(base: Glyph) -> Glyph:
    """An ogonek hangs from the right foot of its letter, not from the middle."""
    foot = max(x for line in base.lines for x, y in line if -0.5 <= y <= 1.5)
    return base.with_lines(*Glyph(0, (_OGONEK,)).moved(foot, 0).lines)


def _ticked(base: Glyph) -> Glyph:
    """Tall letters carry their caron as a tick at the upper right (as in Czech and Slovak print)."""
    x = max(x for line in base.lines for x, y in line if y >= CAPITAL - 1) + 3
    return base.widened(max(base.width, x + 3)).with_lines(((x + 0.5, CAPITAL), (x - 0.5, CAPITAL - 5)))


ACCENTS: dict[str, Callable[[Glyph], Glyph]] = {
    **{mark: _above(lines) for mark, lines in _ABOVE.items()},
    "\N{COMBINING COMMA BELOW}": _below(_COMMA_BELOW),
    "\N{COMBINING CEDILLA}": _below(_CEDILLA),
    "\N{COMBINING OGONEK}": _tailed,
}

# Unicode calls these marks cedilla and caron; print shows a comma (Latvian) and a tick.
_EXCEPTIONS: dict[str, Callable[[Glyph], Glyph]] = {
    **{letter + "\N{COMBINING CEDILLA}": _below(_COMMA_BELOW) for letter in "GKLNRklnr"},
    "g\N{COMBINING CEDILLA}": _above((_ACUTE,)),
    **{letter + "\N{COMBINING CARON}": _ticked for letter in "dtlL"},
}


def accented(letter: str, base: Glyph, marks: str) -> Glyph:
    """``base``, the glyph of ``letter``, with each combining character of ``marks`` added in turn.

    KeyError for a mark that is not in ``ACCENTS``.

    >>> stem = Glyph(8, (((4, 21), (4, 0)),))
    >>> accented("I", stem, "\\N{COMBINING ACUTE ACCENT}").top
    28.0
    """
    if letter in "ij" and any(mark in _ABOVE for mark in marks):
        base = base.without_dot()
    for mark in marks:
        base = _EXCEPTIONS.get(letter + mark, ACCENTS[mark])(base)
    return base
