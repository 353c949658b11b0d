"""What a price list lacks for a wallet, and what of it the wallet has no use for."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.making.prices import LeatherPrice, PriceList
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import Pattern

__all__ = ["price_of", "unpriced", "unused"]


def price_of(leather: Leather, prices: PriceList | None) -> LeatherPrice | None:
    """What the price list says of a leather, else what the design says."""
    listed = prices.leather(leather.role) if prices else None
    if listed or leather.price is None:
        return listed
    return LeatherPrice(leather.role, leather.price, leather.price_area)


def unpriced(pattern: Pattern, prices: PriceList | None) -> Iterator[str]:
    """What the wallet takes and neither the list nor the design has a price for, in words."""
    taken = _taken(pattern)
    for leather in pattern.design.leathers:
        if leather.role in taken and price_of(leather, prices) is None:
            yield f"leather {leather.role}"
    if pattern.seams and (prices is None or prices.thread is None):
        yield "thread"
    for fitting in pattern.design.fittings:
        if prices is None or prices.of_hardware(fitting.name, fitting.kind) is None:
            yield f"hardware: {fitting.name}"
    if prices is None or not prices.work:
        yield "work"


def unused(pattern: Pattern, prices: PriceList) -> Iterator[str]:
    """The leathers, thread and hardware that the list names and nothing of the wallet is made of, in words."""
    taken = _taken(pattern)
    yield from (f"leather {each.role}" for each in prices.leathers if each.role not in taken)
    if prices.thread is not None and not pattern.seams:
        yield "thread"
    listed = [name for name, _ in prices.hardware]
    met = {fitting.name if fitting.name in listed else fitting.kind for fitting in pattern.design.fittings}
    yield from (f"hardware: {name}" for name in listed if name not in met)


def _taken(pattern: Pattern) -> set[str]:
    """The roles of the leathers that pieces are cut from."""
    return {piece.leather for piece in pattern.pieces}
