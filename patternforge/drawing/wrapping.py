"""Words broken into lines of stroke letters."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache

from patternforge.drawing.lettering import letters, text_width

__all__ = ["filled", "longest_word", "width_of", "wrapped"]


@cache
def width_of(words: str) -> float:
    """Room along the base line over the height of capitals; DraftError for a letter that cannot be drawn.

    >>> width_of("I") == text_width("I", 1.0)
    True
    """
    return text_width(words, 1.0)


def longest_word(words: str, height: float) -> float:
    """Width of the widest word, mm, in letters of ``height`` mm."""
    return max((width_of(word) for word in words.split()), default=0.0) * height


def wrapped(words: str, width: float, height: float) -> tuple[str, ...]:
    """The words in lines of at most ``width`` mm in letters of ``height`` mm, at least one line.

    A word wider than a line is broken between letters; a line holds at least one letter.

    >>> wrapped("turn in along the marked line", 30, 2.0)
    ('turn in along the', 'marked line')
    >>> wrapped("mmmmmm", 10, 2.0)
    ('mmm', 'mmm')
    """
    return filled(_parts(words, width / height), width, height) or ("",)


def filled(words: Iterable[str], width: float, height: float) -> tuple[str, ...]:
    """Lines of at most ``width`` mm, each with as many of the ``words`` as go on it; a wider word has its own line.

    >>> filled(["turn", "in", "along", "the", "line"], 20, 2.0)
    ('turn in along', 'the line')
    """
    lines: list[str] = []
    for word in words:
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_of(longer) * height <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def _parts(words: str, room: float) -> Iterator[str]:
    for word in words.split():
        yield from _pieces(word, room) if width_of(word) > room else (word,)


def _pieces(word: str, room: float) -> Iterator[str]:
    piece = ""
    for letter in letters(word):
        if piece and width_of(piece + letter) > room:
            yield piece
            piece = ""
        piece += letter
    yield piece
