"""What a design asked for, as plain data: every length a number in mm, every choice a word."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

from patternforge.leather.material import Leather
from patternforge.wallet.spec import BankPart, Design, Edge, LayerPart, Part

__all__ = ["inputs", "plain", "trims"]

# Where something stands in the file is no part of what it means.
_LEFT_OUT = {"line"}
_PANEL_FIELDS = ("first", "last", "panel")


def inputs(design: Design) -> dict[str, Any]:
    """Parameters, leathers, contents, body, parts from the outside in, seams, stitching, load and limits.

    Sizes that moved to whole stitches are given as drafted.
    """
    return {
        "parameters": plain(design.parameters),
        "leathers": [_leather(leather) for leather in design.leathers],
        "contents": [{"as": content.name, **plain(content.item)} for content in design.contents],
        "body": plain(design.body),
        "parts": [_part(part, [panel.name for panel in design.body.panels]) for part in design.parts],
        "seams": plain(design.seams),
        "stitching": plain(design.stitching),
        "load": plain(design.load),
        "limits": plain(design.limits),
    }


def plain(value: Any) -> Any:
    """A frozen value as plain data: records as dicts by field, tuples as lists, choices as their words.

    >>> from patternforge.wallet.spec import Load
    >>> plain(Load(cards=0.5))
    {'cards': 0.5, 'notes': 1.0}
    """
    if isinstance(value, Enum):
        return value.value
    if is_dataclass(value):
        return {f.name: plain(getattr(value, f.name)) for f in fields(value) if f.name not in _LEFT_OUT}
    if isinstance(value, tuple):
        return [plain(each) for each in value]
    return value


def trims(pairs: Iterable[tuple[Edge, float]]) -> dict[str, float]:
    """What is trimmed off each edge, mm, by the edge's word."""
    return {edge.value: size for edge, size in pairs}


def _leather(leather: Leather) -> dict[str, Any]:
    return {**plain(leather), "drafted_thickness": leather.t}


def _part(part: Part, panels: Sequence[str]) -> dict[str, Any]:
    """The fields of a part, its panels by name."""
    named = {key: panels[getattr(part, key)] for key in _PANEL_FIELDS if hasattr(part, key)}
    return {"kind": _kind(part), **plain(part), **named, "trim": trims(part.trim)}


def _kind(part: Part) -> str:
    if isinstance(part, LayerPart):
        return "layer"
    return "bank" if isinstance(part, BankPart) else "pocket"
