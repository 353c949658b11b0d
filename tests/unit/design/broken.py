"""A broken design as a small edit of the good one.

The sign ¦ in an edit stands where a fault must be reported and is not part of the text; one wording, or a tuple of
wordings that the message must all contain, follows for each sign in file order.
"""

from __future__ import annotations

from dataclasses import dataclass

from tests.unit.design.good_case import CASE
from tests.unit.design.good_design import GOOD
from tests.unit.design.good_folded import FOLDED
from tests.unit.design.good_letters import LETTERS
from tests.unit.design.good_lined import LINED
from tests.unit.design.good_pouch import POUCH

__all__ = [
    "Broken",
    "Expected",
    "broken",
    "broken_case",
    "broken_folded",
    "broken_letters",
    "broken_lined",
    "broken_pouch",
    "edited",
    "whole",
]

_PLACE = "¦"
Wording = str | tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Expected:
    """Where a fault must stand and what its message must contain."""

    line: int
    column: int
    says: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Broken:
    """A text and every fault that must be found in it, no more and no fewer."""

    name: str
    text: str
    faults: tuple[Expected, ...]


def whole(name: str, text: str, *says: Wording) -> Broken:
    """A whole text with places marked."""
    places: list[tuple[int, int]] = []
    lines = []
    for number, line in enumerate(text.split("\n"), start=1):
        while _PLACE in line:
            places.append((number, line.index(_PLACE) + 1))
            line = line.replace(_PLACE, "", 1)
        lines.append(line)
    wordings = [(wording,) if isinstance(wording, str) else wording for wording in says]
    faults = [Expected(*place, wording) for place, wording in zip(places, wordings, strict=True)]
    return Broken(name, "\n".join(lines), tuple(faults))


def broken(name: str, edits: dict[str, str], *says: Wording) -> Broken:
    """The good design with each key of ``edits``, which stands in it once, replaced by its value."""
    return edited(name, GOOD, edits, *says)


def broken_case(name: str, edits: dict[str, str], *says: Wording) -> Broken:
    """The good key case edited in the same way."""
    return edited(name, CASE, edits, *says)


def broken_letters(name: str, edits: dict[str, str], *says: Wording) -> Broken:
    """The good lettered cover edited in the same way."""
    return edited(name, LETTERS, edits, *says)


def broken_lined(name: str, edits: dict[str, str], *says: Wording) -> Broken:
    """The good lined wallet edited in the same way."""
    return edited(name, LINED, edits, *says)


def broken_folded(name: str, edits: dict[str, str], *says: Wording) -> Broken:
    """The good folded case edited in the same way."""
    return edited(name, FOLDED, edits, *says)


def broken_pouch(name: str, edits: dict[str, str], *says: Wording) -> Broken:
    """The good pouch edited in the same way."""
    return edited(name, POUCH, edits, *says)


def edited(name: str, text: str, edits: dict[str, str], *says: Wording) -> Broken:
    """``text`` with each key of ``edits``, which stands in it once, replaced by its value."""
    for old, new in edits.items():
        if text.count(old) != 1:
            raise ValueError(f"{name}: {old!r} stands {text.count(old)} times in the text")
        text = text.replace(old, new)
    return whole(name, text, *says)
