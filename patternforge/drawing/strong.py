"""Words that stand out from others in stroke letters."""

from __future__ import annotations

from dataclasses import replace

from patternforge.drawing.lettering import letter_strokes
from patternforge.drawing.model import Ink, Text
from patternforge.geometry.point import Point

__all__ = ["strong"]

_BESIDE = 0.07  # how far the strokes are drawn again, in heights of letters


def strong(text: Text) -> tuple[Ink, ...]:
    """The text once as words, and its strokes again a little to the right, so that they look heavier.

    A pen of a width of its own would be wider than what a page may hold where it is measured on.
    """
    again = replace(text, at=text.at + Point(_BESIDE * text.height, 0.0))
    return (text, *letter_strokes(again))
