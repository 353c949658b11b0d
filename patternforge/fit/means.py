"""What a remedy may name: only what there is of it in the design."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.wallet.pattern import Pattern, Pocket
from patternforge.wallet.spec import BankPart, GussetPart, LayerPart, PocketPart

__all__ = ["is_loaded", "keeps_sizes", "to_close_thinner", "to_lower"]


def to_close_thinner(pattern: Pattern) -> str:
    """What makes a wallet close thinner, in words."""
    return f"{', '.join(_to_close_thinner(pattern))}, or skive"


def _to_close_thinner(pattern: Pattern) -> Iterator[str]:
    parts = pattern.design.parts
    yield "thinner leather"
    if any(isinstance(part, BankPart) and part.slots > 1 for part in parts):
        yield "fewer slots"
    elif is_loaded(pattern):
        yield "fewer items"
    if any(isinstance(part, GussetPart) and not part.pleats for part in parts):
        yield "a shallower gusset"


def is_loaded(pattern: Pattern) -> bool:
    """Whether the wallet holds anything."""
    rooms = pattern.folded.rooms if pattern.folded else ()
    return bool(pattern.pockets or pattern.loose or rooms)


def keeps_sizes(pattern: Pattern) -> bool:
    """Whether any part names sizes that may not move to whole stitches."""
    parts = (part for part in pattern.design.parts if isinstance(part, LayerPart | BankPart | PocketPart))
    return any(part.exact for part in parts)


def to_lower(pattern: Pattern, pocket: Pocket) -> str:
    """What keeps the item of a pocket below the edge of the wallet, in words."""
    part = next((each for each in pattern.design.parts if each.name == pocket.part), None)
    return "more height or smaller steps" if isinstance(part, BankPart) and part.slots > 1 else "more height"
