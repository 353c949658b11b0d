"""Names of files, safe on every system: small letters, digits and hyphens."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from itertools import count

__all__ = ["file_word", "file_words"]


def file_word(words: str) -> str:
    """``words`` as one word of letters, digits and single hyphens, accents taken off; ``x`` if nothing is left.

    >>> file_word("Left cards 2"), file_word("Köper / außen"), file_word("...")
    ('left-cards-2', 'koper-aussen', 'x')
    """
    plain = "".join(c for c in unicodedata.normalize("NFKD", words.casefold()) if not unicodedata.combining(c))
    parted = "".join(c if c.isalnum() else " " for c in plain)
    return "-".join(parted.split()) or "x"


def file_words(names: Sequence[str]) -> tuple[str, ...]:
    """A different file word for each of ``names``, in order; one that is taken already is numbered from 2.

    >>> file_words(["Left", "left", "right"])
    ('left', 'left-2', 'right')
    """
    taken: list[str] = []
    for name in names:
        word = file_word(name)
        numbered = (word if number == 1 else f"{word}-{number}" for number in count(1))
        taken.append(next(each for each in numbered if each not in taken))
    return tuple(taken)
