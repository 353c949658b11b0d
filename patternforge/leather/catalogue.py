"""Things that wallets hold, by name, with the sizes in print and where they stand."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from patternforge.leather.contents import Item, Section

__all__ = ["catalogue"]


@cache
def catalogue() -> Mapping[str, Item]:
    """Every known item under its name, sizes in mm; ``source`` ends in how the sizes are known.

    That is "seen" (read in the source named), "memory" (no source at hand) or "common practice" (of the trade).
    Coins are as long as high, with half of that as corner radius.

    >>> catalogue()["id1"].length
    85.6
    >>> catalogue()["coin-usd-25c"].source
    'US Mint coin specifications (seen)'
    """
    data = tomllib.loads(files(__package__).joinpath("items.toml").read_text(encoding="utf-8"))
    items = [_item(group, entry) for group in data["group"] for entry in group["items"]]
    return MappingProxyType({item.name: item for item in items})


def _item(group: Mapping[str, Any], entry: Mapping[str, Any]) -> Item:
    length, height, corner_radius = _outline(entry)
    return Item(
        name=entry["name"],
        length=length,
        height=height,
        thickness=entry["thickness"] if "thickness" in entry else group["thickness"],
        corner_radius=corner_radius,
        title=entry["title"],
        source=_source(group),
        section=Section(group.get("section", "flat")),
    )


def _outline(entry: Mapping[str, Any]) -> tuple[float, float, float]:
    if len(entry["size"]) == 1:
        (diameter,) = entry["size"]
        return diameter, diameter, diameter / 2
    length, height = entry["size"]
    return length, height, entry.get("corner_radius", 0.0)


def _source(group: Mapping[str, Any]) -> str:
    outline = f"{group['source']} ({group['mark']})"
    return f"{outline}; thickness: {group['thickness_source']}" if "thickness_source" in group else outline
