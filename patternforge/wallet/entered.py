"""What the maker entered, where it stands, and what it was reckoned from: kept beside the numbers it came to."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Entered"]


@dataclass(frozen=True, slots=True)
class Entered:
    """One value of a design as it was entered.

    ``name`` is that of the size (``part left cards.step``), ``text`` what was written for it, ``line`` where that
    stands in the file, ``setting`` the name it was set by beside the file, empty if it was not. ``of`` are the names
    written in it, each with the name of the size it stands for: (``margin``, ``parameter margin``).
    """

    name: str
    text: str
    line: int
    setting: str = ""
    of: tuple[tuple[str, str], ...] = ()
