"""Whether words can be drawn in stroke letters; the letters are loaded only where there is something to ask them."""

from __future__ import annotations

from patternforge.errors import DraftError

__all__ = ["undrawable"]


def undrawable(words: str) -> str:
    """What cannot be drawn of ``words``, and what to do; nothing when all of it can.

    >>> undrawable("Zoë"), undrawable("左")
    ('', "no stroke letter for '左' (U+5DE6 CJK UNIFIED IDEOGRAPH-5DE6); write the text without it")
    """
    # Printable ASCII is all in the face.
    if words.isascii() and words.isprintable():
        return ""
    from patternforge.drawing.lettering import text_width

    try:
        text_width(words, 1.0)
    except DraftError as error:
        return str(error)
    return ""
