"""Words of the user's as an HTML page may hold them."""

from __future__ import annotations

__all__ = ["lawful_words"]


def lawful_words(words: str) -> str:
    """``words`` with a sign of replacement for every character that neither HTML nor XML may hold, and for others
    that cannot be seen.

    >>> lawful_words("a\\x07b")
    'a\N{REPLACEMENT CHARACTER}b'
    """
    return "".join(c if c.isprintable() or c in "\n\t" else "\N{REPLACEMENT CHARACTER}" for c in words)
