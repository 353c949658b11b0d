"""The catalogue of what a wallet can hold as a table."""

from __future__ import annotations

from difflib import get_close_matches

import typer

from patternforge.cli.table import columns
from patternforge.leather.catalogue import catalogue
from patternforge.leather.contents import Item
from patternforge.units import mm

__all__ = ["items_table"]

_HEAD = ("name", "what it is", "length", "height", "thick", "source")


def items_table(word: str) -> list[str]:
    """A line for each item that has ``word`` in its name or description, then the sources by number.

    A usage error when none has.

    >>> items_table("id3")[1].split()
    ['id3', 'passport', 'page,', 'ID-3', '125.00', '88.00', '0.76', '[1]']
    """
    known = catalogue()
    found = [item for item in known.values() if word.casefold() in f"{item.name} {item.title}".casefold()]
    if not found:
        near = get_close_matches(word.casefold(), known, n=1)
        hint = f"; did you mean {near[0]}?" if near else ""
        raise typer.BadParameter(f"nothing has '{word}' in its name{hint}", param_hint="WORD")
    sources = list(dict.fromkeys(item.source for item in found))
    rows = [(*_sizes(item), f"[{sources.index(item.source) + 1}]") for item in found]
    notes = columns([(f"[{number}]", source) for number, source in enumerate(sources, start=1)], right=(0,))
    return [*columns([_HEAD, *rows], right=(2, 3, 4)), "", "Sizes in mm. Sources:", *notes]


def _sizes(item: Item) -> tuple[str, ...]:
    return item.name, item.title, mm(item.length), mm(item.height), mm(item.thickness)
