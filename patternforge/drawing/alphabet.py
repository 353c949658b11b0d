"""The stroke letters: the simplex face of the Hershey-Fonts package, and signs composed from it.

The face covers ASCII, with a hyphen as long as a dash, which is used as one. Letters and signs beyond ASCII are put
together from its glyphs, straight bars, a few strokes and the marks in ``accents``.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from functools import cache
from typing import Any

from patternforge.drawing.accents import ACCENTS, accented
from patternforge.drawing.glyph import CAPITAL, SMALL, Glyph, Line
from patternforge.errors import DraftError

__all__ = ["glyph_of"]

_FACE = "futural"  # single strokes, and every ASCII character in its own place

_SAME = str.maketrans(
    {
        "\N{NO-BREAK SPACE}": " ",
        "\N{NARROW NO-BREAK SPACE}": " ",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{LEFT SINGLE QUOTATION MARK}": "`",
        "\N{SINGLE LOW-9 QUOTATION MARK}": ",",
        "\N{LEFT DOUBLE QUOTATION MARK}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{PRIME}": "'",
        "\N{DOUBLE PRIME}": '"',
    }
)


@cache
def glyph_of(cluster: str) -> Glyph:
    """The glyph of one letter with its combining marks, in canonical decomposition.

    DraftError, naming the character, for a letter or mark that cannot be composed.

    >>> glyph_of("e\\N{COMBINING ACUTE ACCENT}").width == glyph_of("e").width
    True
    """
    letter, marks = cluster[0].translate(_SAME), cluster[1:]
    base = _signs().get(letter) or _face().get(letter)
    unknown = [letter] if base is None else [mark for mark in marks if mark not in ACCENTS]
    if base is None or unknown:
        raise DraftError(f"no stroke letter for {_named(unknown[0])}; write the text without it")
    return accented(letter, base, marks)


def _named(character: str) -> str:
    name = unicodedata.name(character, "a control or unassigned character")
    shown = f"'{character}' " if character.isprintable() else ""
    return f"{shown}(U+{ord(character):04X} {name})"


@cache
def _face() -> Mapping[str, Glyph]:
    from HersheyFonts import HersheyFonts

    # The package unpacks all its faces once to list their names and again to read one; the name is known here.
    fonts: Any = type("OneFace", (HersheyFonts,), {"default_font_names": (_FACE,)})()
    fonts.load_default_font(_FACE)
    glyphs = fonts.all_glyphs
    return {c: _from_face(glyphs[c]) for c in map(chr, range(ord(" "), ord("~") + 1))}


def _from_face(raw: Any) -> Glyph:
    """The package counts y downwards from 9 below the base line and x from the middle of the glyph."""
    left, base = raw.left_offset, raw.base_line
    lines = tuple(tuple((float(x - left), float(base - y)) for x, y in stroke) for stroke in raw.strokes)
    return Glyph(float(raw.char_width), lines)


def _bar(base: Glyph, x0: float, x1: float, y: float) -> Glyph:
    return base.with_lines(((x0, y), (x1, y)))


def _struck(base: Glyph) -> Glyph:
    """A slash across the whole letter, as in o with stroke."""
    return base.with_lines(((base.left - 0.5, -2.0), (base.right + 0.5, base.top + 2.0)))


def _slashed(base: Glyph) -> Glyph:
    """A short slash across the stem, as in l with stroke."""
    x, y = base.left, base.top / 2
    return base.with_lines(((x - 3.0, y - 2.5), (x + 4.0, y + 2.5)))


def _raised(base: Glyph) -> Glyph:
    return base.scaled(0.55).moved(0.0, 0.45 * CAPITAL)


def _fraction(above: Glyph, slash: Glyph, below: Glyph) -> Glyph:
    return _raised(above).beside(slash.scaled(0.7), closer=2.0).beside(below.scaled(0.55), closer=2.0)


@cache
def _signs() -> Mapping[str, Glyph]:
    return {**_letters(_face()), **_typographic(_face())}


def _letters(face: Mapping[str, Glyph]) -> dict[str, Glyph]:
    """Letters without a canonical decomposition."""
    eth_tail: Line = ((16, 7), (14.5, 13), (11, 17.5), (6, 21))
    sharp_s: Line = ((4, 0), (4, 17), (5, 19.5), (7.5, 21), (10, 21), (12.5, 20), (13.5, 17.5), (12.5, 15), (9, 12))
    bowl: Line = ((9, 12), (13, 11), (15, 8.5), (15.5, 5.5), (14.5, 2), (12, 0), (9, 0))
    tail: Line = ((15, 0), (15, -4), (13.5, -6.5), (11, -7))
    return {
        "ß": Glyph(18, (sharp_s, bowl)),
        "ẞ": Glyph(18, (sharp_s, bowl)),
        "æ": face["a"].beside(face["e"], closer=7.0),
        "Æ": face["A"].beside(face["E"], closer=5.0),
        "œ": face["o"].beside(face["e"], closer=6.0),
        "Œ": face["O"].beside(face["E"], closer=7.0),
        "ø": _struck(face["o"]),
        "Ø": _struck(face["O"]),
        "ł": _slashed(face["l"]),
        "Ł": _slashed(face["L"]),
        "đ": _bar(face["d"], 10.0, 19.0, 17.5),
        "Đ": _bar(face["D"], 0.0, 10.0, CAPITAL / 2),
        "Ð": _bar(face["D"], 0.0, 10.0, CAPITAL / 2),
        "ð": face["o"].with_lines(eth_tail, ((7.0, 16.0), (13.5, 20.5))),
        "þ": face["p"].with_lines(((4, CAPITAL), (4, SMALL))),
        "Þ": Glyph(21, face["P"].lines[:1]).over(Glyph(21, face["P"].lines[1:]).moved(0, -5)),
        "ħ": _bar(face["h"], 0.5, 10.0, 17.5),
        "Ħ": _bar(face["H"], 1.0, 21.0, 16.0),
        "ŧ": _bar(face["t"], 1.5, 9.0, 8.0),
        "Ŧ": _bar(face["T"], 4.0, 12.0, CAPITAL / 2),
        "ŋ": face["n"].with_lines(tail),
        "Ŋ": face["N"].with_lines(((18, 0), (18, -3), (16, -5.5), (13, -6))),
        "ı": face["i"].without_dot(),
    }


def _typographic(face: Mapping[str, Glyph]) -> dict[str, Glyph]:
    ring = _raised(face["o"].scaled(0.9)).moved(0.0, 4.0)
    dot = Glyph(8, face["."].lines)
    double_low = face[","].beside(face[","], closer=2.0)
    return {
        "-": Glyph(16, (((4, 9), (12, 9)),)),
        "\N{EN DASH}": face["-"],
        "\N{EM DASH}": face["-"],
        "\N{MINUS SIGN}": face["-"],
        "°": ring,
        "º": ring,
        "·": dot.moved(0.0, 8.0),
        "•": dot.moved(0.0, 8.0),
        "…": dot.beside(dot).beside(dot),
        "„": double_low,
        "«": face["<"].scaled(0.6).beside(face["<"].scaled(0.6), closer=8.0).moved(0.0, 2.0),
        "»": face[">"].scaled(0.6).beside(face[">"].scaled(0.6), closer=8.0).moved(0.0, 2.0),
        "¡": face["!"].turned_over(SMALL / 2),
        "¿": face["?"].turned_over(SMALL / 2),
        "×": Glyph(18, (((4, 4), (14, 14)), ((4, 14), (14, 4)))),
        "÷": face["-"].over(dot.moved(9.0, 13.0)).over(dot.moved(9.0, 3.0)),
        "±": _bar(face["+"], 4.0, 22.0, -3.0),
        "¹": _raised(face["1"]),
        "²": _raised(face["2"]),
        "³": _raised(face["3"]),
        "½": _fraction(face["1"], face["/"], face["2"]),
        "¼": _fraction(face["1"], face["/"], face["4"]),
        "¾": _fraction(face["3"], face["/"], face["4"]),
        "€": _bar(_bar(face["C"], 0.0, 13.0, 12.5), 0.0, 12.0, 8.5),
        "£": _bar(face["L"], 0.5, 10.0, 10.0).with_lines(((4, 21), (7, 23), (11, 22.5), (13, 20))),
        "¥": _bar(_bar(face["Y"], 3.0, 15.0, 9.0), 3.0, 15.0, 5.0),
    }
