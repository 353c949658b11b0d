"""How much there is to cut: lines and their length by operation, as plain data."""

from __future__ import annotations

from typing import Any

from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import Purpose
from patternforge.drawing.model import Sheet
from patternforge.drawing.travel import Tally, tallies
from patternforge.wallet.pattern import Pattern

__all__ = ["net_tallies", "tally_rows"]


def net_tallies(pattern: Pattern) -> tuple[Tally, ...]:
    """The lines of all pieces, each as often as it is wanted, net and with every hole cut, by operation."""
    drawn = zip(figures(pattern, Purpose.LASER), pattern.pieces, strict=True)
    wanted = tuple(figure for figure, piece in drawn for _ in range(piece.quantity))
    return tallies([Sheet("", 0.0, 0.0, wanted)])


def tally_rows(found: tuple[Tally, ...]) -> list[dict[str, Any]]:
    """A record for each operation: its word, how many lines, how long they are together in mm."""
    return [{"operation": each.role.value, "count": each.count, "length": each.length} for each in found]
