"""Hardware by name: the holes to punch for it or, if it is hidden, its thickness, and where the sizes come from."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from patternforge.units import MM_PER_INCH

__all__ = ["MM_PER_LIGNE", "Hardware", "Setting", "hardware"]

MM_PER_LIGNE = MM_PER_INCH / 40  # a button maker's page "International Standard"; the old French ligne was longer


class Setting(StrEnum):
    """How hardware is set: through a hole punched for it, or covered, with no hole, between two layers."""

    PUNCHED = "punched"
    COVERED = "covered"


@dataclass(frozen=True, slots=True)
class Hardware:
    """One kind of hardware: a word and the diameter of the hole for each half, mm, the first half being the one seen.

    ``cap`` is the width of the widest part that lies on the leather. A kind with one half, such as an eyelet, meets
    nothing. One that is covered has no holes; ``thickness`` of each half lies between the layers, mm. One that
    ``joins`` goes through both of its places at once, as a rivet does.
    """

    name: str
    title: str
    halves: tuple[str, ...]
    holes: tuple[float, ...]
    cap: float
    source: str = ""
    setting: Setting = Setting.PUNCHED
    thickness: float = 0.0
    joins: bool = False


def hardware() -> Mapping[str, Hardware]:
    """Every known kind of hardware under its name, in mm.

    ``source`` ends in how the sizes are known: "seen" (read in the source named), "memory" (no source at hand) or
    "common practice" (of the trade).

    >>> hardware()["snap-line-20"].cap, hardware()["snap-line-20"].holes
    (12.7, (4.5, 3.5))
    """
    data = tomllib.loads(files(__package__).joinpath("hardware.toml").read_text(encoding="utf-8"))
    kinds = [_kind(group, entry) for group in data["group"] for entry in group["kinds"]]
    return MappingProxyType({kind.name: kind for kind in kinds})


def _kind(group: Mapping[str, Any], entry: Mapping[str, Any]) -> Hardware:
    return Hardware(
        name=entry["name"],
        title=entry["title"],
        halves=tuple(group["halves"]),
        holes=tuple(entry.get("holes", ())),
        cap=entry["ligne"] * MM_PER_LIGNE if "ligne" in entry else entry["cap"],
        source=_source(group),
        setting=Setting(group.get("setting", Setting.PUNCHED)),
        thickness=entry.get("thickness", 0.0),
        joins=group.get("joins", False),
    )


def _source(group: Mapping[str, Any]) -> str:
    width = f"{group['source']} ({group['mark']})"
    return f"{width}; holes: {group['holes_source']}" if "holes_source" in group else width
