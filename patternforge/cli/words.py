"""Command words that stand for values: NAME=VALUE pairs, lengths, readings of a printed bar."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import typer

from patternforge.units import MeasureError, length_mm

__all__ = ["correction", "length", "pairs"]

_BAR = 100.0  # mm, on every printed page
_NEAREST, _FARTHEST = (
    91.0,
    111.0,
)  # readings that a printer's fault explains; beyond, the page was fitted to the paper


def pairs(words: Iterable[str]) -> Mapping[str, str]:
    """The values given with ``--set`` by name; a usage error for a word without ``=`` and for a name given twice.

    >>> pairs(["margin=3 mm", "outer = 1.6 mm"])
    {'margin': '3 mm', 'outer': '1.6 mm'}
    """
    found: dict[str, str] = {}
    for word in words:
        name, sign, value = (part.strip() for part in word.partition("="))
        if not (sign and name and value):
            raise typer.BadParameter(f"'{word}' is not NAME=VALUE, such as margin=3mm", param_hint="--set")
        if name in found:
            raise typer.BadParameter(f"'{name}' is set twice", param_hint="--set")
        found[name] = value
    return found


def length(word: str | float) -> float:
    """The length in mm that a command word says (``0.15``, ``0.15 mm``, ``1/8 in``); a usage error if it is none.

    >>> length("0.2 mm")
    0.2
    """
    try:
        return length_mm(str(word))
    except MeasureError as error:
        raise typer.BadParameter(str(error)) from error


def correction(word: str | float) -> float:
    """The factor that makes a bar true which measures so much instead of 100 mm; a usage error outside 91 to 111 mm.

    >>> correction("98 mm")
    1.0204081632653061
    """
    reading = length(word)
    if not _NEAREST <= reading <= _FARTHEST:
        raise typer.BadParameter(
            f"a bar of {reading:g} mm is no small fault of a printer; print at 100 %, not fitted to the page"
        )
    return _BAR / reading
