"""Lists of words and the nearest known word, for messages."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

__all__ = ["listed", "nearest", "word_advice"]

_ALIKE = 0.65
_LONGEST_LIST = 16
_SHORTEST_PART = 4


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word most like ``word``, capitals ignored, or None if none is like it.

    >>> nearest("stpe", ["step", "show"]), nearest("colour", ["step", "show"])
    ('step', None)
    """
    lower, by_lower = word.lower()[:60], {name.lower(): name for name in known}
    match = get_close_matches(lower, by_lower, n=1, cutoff=_ALIKE) or _containing(lower, by_lower)
    return by_lower[match[0]] if match else None


def _containing(word: str, known: Iterable[str]) -> list[str]:
    """The known word of which ``word`` is a part, if there is only one."""
    found = [name for name in known if word in name] if len(word) >= _SHORTEST_PART else []
    return found if len(found) == 1 else []


def listed(words: Iterable[str]) -> str:
    """The words with commas between them, shortened if there are many.

    >>> listed(["left", "right"])
    'left, right'
    """
    every = list(words)
    shown = ", ".join(every[:_LONGEST_LIST])
    return f"{shown}, ..." if len(every) > _LONGEST_LIST else shown


def word_advice(word: str, known: Iterable[str]) -> str:
    """What to do about an unknown word: the nearest known one, or all of them.

    >>> word_advice("topp", ["top", "left"]), word_advice("x", ["top", "left"])
    ("did you mean 'top'?", 'known here: top, left')
    """
    every = tuple(known)
    near = nearest(word, every)
    if near:
        return f"did you mean '{near}'?"
    return f"known here: {listed(every)}" if every else "none is declared"
