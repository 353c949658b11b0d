"""Names in a row, and names of files, safe on every system: small letters, digits and hyphens."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence

__all__ = ["file_word", "file_words", "listed"]


def file_word(words: str) -> str:
    """``words`` as one word of letters, digits and single hyphens, accents taken off; ``x`` if nothing is left.

    >>> file_word("Left cards 2"), file_word("Köper / außen"), file_word("...")
    ('left-cards-2', 'koper-aussen', 'x')
    """
    plain = "".join(c for c in unicodedata.normalize("NFKD", words.casefold()) if not unicodedata.combining(c))
    parted = "".join(c if c.isalnum() else " " for c in plain)
    return "-".join(parted.split()) or "x"


def file_words(names: Sequence[str]) -> tuple[str, ...]:
    """A different file word for each of ``names``, in order; one that was given before is numbered from 2.

    The number stands after two hyphens, which no name has of its own, so that the second ``cards 1`` is never taken
    for the first ``cards 1 2``.

    >>> file_words(["Left", "left", "left 2"])
    ('left', 'left--2', 'left-2')
    """
    words = [file_word(name) for name in names]
    turns = [words[: index + 1].count(word) for index, word in enumerate(words)]
    return tuple(word if turn == 1 else f"{word}--{turn}" for word, turn in zip(words, turns, strict=True))


def listed(words: Iterable[str]) -> str:
    """At least one name, or more of them as one would say them.

    >>> listed(["shell", "divider", "pocket"])
    'shell, divider and pocket'
    """
    *others, last = tuple(words)
    return f"{', '.join(others)} and {last}" if others else last
