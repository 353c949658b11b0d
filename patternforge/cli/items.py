"""The catalogues of what a wallet can hold and of what closes it as tables."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import get_close_matches
from typing import TypeVar

import typer

from patternforge.cli.table import columns
from patternforge.leather.catalogue import catalogue
from patternforge.leather.contents import Item
from patternforge.leather.hardware import Hardware, hardware
from patternforge.units import mm

__all__ = ["items_table"]

_ITEM_HEAD = ("name", "what it is", "length", "height", "thick", "source")
_HARDWARE_HEAD = ("name", "what it is", "cap", "first hole", "second hole", "source")
_Named = TypeVar("_Named", Item, Hardware)


def items_table(word: str) -> list[str]:
    """A line for each item and kind of hardware that has ``word`` in its name or description, then the sources.

    A usage error when none has.

    >>> items_table("id3")[1].split()
    ['id3', 'passport', 'page,', 'ID-3', '125.00', '88.00', '0.76', '[1]']
    >>> items_table("snap-line-20")[1].split()
    ['snap-line-20', 'snap,', 'line', '20', '12.70', '4.50', '3.50', '[1]']
    """
    items, kinds = _found(catalogue().values(), word), _found(hardware().values(), word)
    if not items and not kinds:
        near = get_close_matches(word.casefold(), [*catalogue(), *hardware()], n=1)
        hint = f"; did you mean {near[0]}?" if near else ""
        raise typer.BadParameter(f"nothing has '{word}' in its name{hint}", param_hint="WORD")
    sources = list(dict.fromkeys([*(item.source for item in items), *(kind.source for kind in kinds)]))
    tables = [
        *_table(_ITEM_HEAD, [(*_sizes(item), _note(item.source, sources)) for item in items]),
        *_table(_HARDWARE_HEAD, [(*_holes(kind), _note(kind.source, sources)) for kind in kinds]),
    ]
    notes = columns([(_note(source, sources), source) for source in sources], right=(0,))
    return [*tables, "Sizes in mm. Sources:", *notes]


def _found(known: Iterable[_Named], word: str) -> list[_Named]:
    return [each for each in known if word.casefold() in f"{each.name} {each.title}".casefold()]


def _table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """The rows under their head and an empty line; nothing without rows."""
    return [*columns([head, *rows], right=(2, 3, 4)), ""] if rows else []


def _note(source: str, sources: Sequence[str]) -> str:
    return f"[{sources.index(source) + 1}]"


def _sizes(item: Item) -> tuple[str, ...]:
    return item.name, item.title, mm(item.length), mm(item.height), mm(item.thickness)


def _holes(kind: Hardware) -> tuple[str, ...]:
    first, second = (*map(mm, kind.holes), "", "")[:2]
    return kind.name, kind.title, mm(kind.cap), first, second
