"""Running text and lines for the screen."""

from __future__ import annotations

from collections.abc import Iterable
from textwrap import wrap

__all__ = ["WIDTH", "say", "wrapped"]

WIDTH = 100  # of running text, letters


def say(lines: Iterable[str]) -> None:
    """Prints the lines."""
    print("\n".join(lines))


def wrapped(words: str) -> list[str]:
    """``words`` in lines that stand in, those after the first one further.

    >>> wrapped("Turn the leather over.")
    ['  Turn the leather over.']
    """
    return wrap(words, WIDTH, initial_indent="  ", subsequent_indent="    ")
