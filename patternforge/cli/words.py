"""Command words that stand for values: NAME=VALUE pairs, lengths, readings of a printed bar."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

import typer

from patternforge.units import MeasureError, length_mm

__all__ = ["TRUE", "Corrections", "corrections", "given", "length", "one_of", "pairs", "sum_of"]

_Choice = TypeVar("_Choice", bound=StrEnum)

_BAR = 100.0  # mm, on every printed page
# Readings that a printer's fault explains; beyond, the page was fitted to the paper.
_NEAREST, _FARTHEST = 91.0, 111.0


def given(context: typer.Context) -> frozenset[str]:
    """The options and arguments that were written on the command line, by the names of their parameters."""
    written = {name: context.get_parameter_source(name) for name in context.params}
    return frozenset(name for name, source in written.items() if source and source.name == "COMMANDLINE")


def pairs(words: Iterable[str]) -> Mapping[str, str]:
    """The values given with ``--set`` by name; a usage error for a word without ``=`` and for a name given twice.

    >>> pairs(["margin=3 mm", "outer = 1.6 mm"])
    {'margin': '3 mm', 'outer': '1.6 mm'}
    """
    found = _by_name(words, "--set", "margin=3mm")
    for name, value in found.items():
        if not value:
            raise typer.BadParameter(f"'{name}=' is not NAME=VALUE, such as margin=3mm", param_hint="--set")
    return found


def texts(words: Iterable[str]) -> Mapping[str, str]:
    """The letters given with ``--initials`` by name, empty for none; usage errors as in ``pairs``.

    >>> texts(["monogram=A W", "owner="])
    {'monogram': 'A W', 'owner': ''}
    """
    return _by_name(words, "--initials", "monogram=AW")


def _by_name(words: Iterable[str], option: str, example: str) -> dict[str, str]:
    found: dict[str, str] = {}
    for word in words:
        name, sign, value = (part.strip() for part in word.partition("="))
        if not (sign and name):
            raise typer.BadParameter(f"'{word}' is not NAME=VALUE, such as {example}", param_hint=option)
        if name in found:
            raise typer.BadParameter(f"'{name}' is set twice", param_hint=option)
        found[name] = value
    return found


def one_of(choices: type[_Choice]) -> Callable[[str], _Choice]:
    """What reads a word as one of ``choices`` in whatever case it is written; a usage error for any other word.

    >>> from patternforge.cli.choices import PaperName
    >>> one_of(PaperName)("Letter").value
    'letter'
    """

    def choice(word: str) -> _Choice:
        try:
            return choices(word.lower())
        except ValueError:
            raise typer.BadParameter(f"'{word}' is none of {', '.join(choices)}") from None

    return choice


def length(word: str | float) -> float:
    """The length in mm that a command word says (``0.15``, ``0.15 mm``, ``1/8 in``); a usage error if it is none.

    >>> length("0.2 mm")
    0.2
    """
    try:
        return length_mm(str(word))
    except MeasureError as error:
        raise typer.BadParameter(str(error)) from error


@dataclass(frozen=True, slots=True)
class Corrections:
    """The factors that a printed page is multiplied by across and upright."""

    across: float = 1.0
    upright: float = 1.0


TRUE = Corrections()
"""What a printer needs that prints true."""


def corrections(words: str | Corrections) -> Corrections:
    """The factors that make bars true which measure AxB instead of 100 mm across and upright.

    A usage error for other words and outside 91 to 111 mm.

    >>> corrections("98 mm x 100")
    Corrections(across=1.0204081632653061, upright=1.0)
    """
    if isinstance(words, Corrections):
        return words
    readings = words.lower().split("x")
    if len(readings) != 2:
        raise typer.BadParameter(f"'{words}' is not AxB, such as 99.6x100.2: across, then upright")
    return Corrections(*(_correction(length(reading.strip())) for reading in readings))


def _correction(reading: float) -> float:
    if not _NEAREST <= reading <= _FARTHEST:
        raise typer.BadParameter(
            f"a bar of {reading:g} mm is no small fault of a printer; print at 100 %, not fitted to the page"
        )
    return _BAR / reading


def sum_of(word: str) -> float:
    """The sum of two lengths written with a plus sign between them, mm; a usage error for anything else.

    >>> round(sum_of("49.4+49.3 mm"), 6)
    98.7
    """
    parts = word.split("+")
    if len(parts) != 2:
        raise typer.BadParameter(f"'{word}' is not LEG+LEG, such as 49.4+49.3")
    return length(parts[0].strip()) + length(parts[1].strip())
