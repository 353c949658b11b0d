"""Frozen values as plain data."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

from patternforge.wallet.spec import Edge

__all__ = ["plain", "trims"]

# Where something stands in the file is no part of what it means.
_LEFT_OUT = {"line"}


def plain(value: Any) -> Any:
    """A frozen value as plain data: records as dicts by field, tuples as lists, choices as their words.

    >>> from patternforge.wallet.spec import Load
    >>> plain(Load(cards=0.5))
    {'cards': 0.5, 'notes': 1.0, 'loose': 1.0}
    """
    if isinstance(value, Enum):
        return value.value
    if is_dataclass(value):
        return {f.name: plain(getattr(value, f.name)) for f in fields(value) if f.name not in _LEFT_OUT}
    if isinstance(value, tuple):
        return [plain(each) for each in value]
    return value


def trims(pairs: Iterable[tuple[Edge, float]]) -> dict[str, float]:
    """What is trimmed off each edge or measured from it, mm, by the edge's word."""
    return {edge.value: size for edge, size in pairs}
