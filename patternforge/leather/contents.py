"""What a wallet holds: flat items with a length, a height and a thickness."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = ["OWN_SIZES", "Item", "Section"]

OWN_SIZES = "sizes from the design"
"""The source of an item that the design describes itself."""


class Section(StrEnum):
    """The shape of an item cut across its length."""

    FLAT = "flat"
    ROUND = "round"


@dataclass(frozen=True, slots=True)
class Item:
    """A flat item in mm, ``length`` being its longer side; ``source`` says where its sizes stand in print.

    >>> Item("id1", 85.60, 53.98, 0.76).height
    53.98
    """

    name: str
    length: float
    height: float
    thickness: float
    corner_radius: float = 0.0
    title: str = ""
    source: str = ""
    section: Section = Section.FLAT
