"""Rows of text as columns that stand under one another."""

from __future__ import annotations

from collections.abc import Sequence
from unicodedata import combining, east_asian_width

__all__ = ["columns"]

_GAP = "  "


def columns(rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> list[str]:
    """A line for each row, its cells filled up to the widest of their column, from the left in columns ``right``.

    >>> columns([["shell", "9.5"], ["bank", "10.25"]], right=[1])
    ['shell    9.5', 'bank   10.25']
    """
    widths = [max(_width(cell) for cell in column) for column in zip(*rows, strict=True)]
    return [_GAP.join(_filled(cell, widths[i], i in right) for i, cell in enumerate(row)).rstrip() for row in rows]


def _filled(cell: str, width: int, at_right: bool) -> str:
    blank = " " * (width - _width(cell))
    return blank + cell if at_right else cell + blank


def _width(cell: str) -> int:
    """How many places the letters take on a screen (Unicode standard annex 11)."""
    return sum(0 if combining(c) else 2 if east_asian_width(c) in "WF" else 1 for c in cell)
