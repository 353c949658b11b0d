"""Running text and lines for the screen."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from textwrap import fill, wrap

__all__ = ["WIDTH", "numbered", "say", "searching", "wrapped"]

WIDTH = 100  # of running text, letters
_BELOW_NUMBER = "     "


def say(lines: Iterable[str]) -> None:
    """Prints the lines."""
    print("\n".join(lines))


def searching() -> None:
    """Says why nothing is said for a while, if somebody sits at the screen; a file or a pipe gets nothing."""
    # None is what Python puts here when the command was started without a standard error.
    if sys.stderr is not None and sys.stderr.isatty():
        print("Looking for the smallest change that cures it ...", file=sys.stderr, flush=True)


def numbered(steps: Iterable[tuple[str, ...]]) -> list[str]:
    """Steps to be done one after the other: running text, then commands, each whole on a line of its own.

    >>> numbered([("Cut the comb.",), ("Tell the program:", "patternforge kerf --slot 4")])
    ['  1. Cut the comb.', '  2. Tell the program:', '     patternforge kerf --slot 4']
    """
    return [
        line
        for number, (words, *commands) in enumerate(steps, 1)
        for line in (
            fill(words, WIDTH, initial_indent=f"  {number}. ", subsequent_indent=_BELOW_NUMBER),
            *(f"{_BELOW_NUMBER}{command}" for command in commands),
        )
    ]


def wrapped(words: str) -> list[str]:
    """``words`` in lines that stand in, those after the first one further.

    >>> wrapped("Turn the leather over.")
    ['  Turn the leather over.']
    """
    return wrap(words, WIDTH, initial_indent="  ", subsequent_indent="    ")
