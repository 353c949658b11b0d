"""What a making sheet is made from."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.drafting.making.prices import PriceList
from patternforge.drawing.document import Block
from patternforge.fit.findings import Finding
from patternforge.fit.window import ThicknessWindow
from patternforge.wallet.pattern import Pattern

__all__ = ["Finished", "MakingFacts"]


@dataclass(frozen=True, slots=True)
class Finished:
    """Width and height of the wallet open and closed, and its thickness closed as loaded; mm."""

    open: tuple[float, float]
    closed: tuple[float, float]
    thickness: float


@dataclass(frozen=True, slots=True)
class MakingFacts:
    """A drafted and judged wallet, how it is put together, and what the maker adds.

    ``waste``: per cent of the net area that are added to every leather, None for no word on waste. ``width`` and
    ``height``: what a picture may take on the page, mm; ``letters``: what heights of letters are multiplied by.
    """

    pattern: Pattern
    findings: tuple[Finding, ...]
    finished: Finished
    windows: tuple[ThicknessWindow, ...] = ()
    steps: tuple[Block, ...] = ()
    waste: float | None = None
    prices: PriceList | None = None
    width: float = 180.0
    height: float = 110.0
    letters: float = 1.0

    def waste_of(self, role: str) -> float | None:
        """Per cent of waste for a leather: what is said for all goes before what the price list says of it."""
        listed = self.prices.leather(role) if self.prices else None
        return self.waste if self.waste is not None or listed is None else listed.waste
