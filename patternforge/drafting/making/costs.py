"""What one wallet costs: every line rounded to the cent as it is printed, and the total their sum.

Money is counted in decimal numbers, so that what is printed adds up to the cent.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from patternforge.drafting.making.cutting_list import LeatherTaken, leather_taken
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.making.price_gaps import price_of, unpriced
from patternforge.drafting.making.prices import LeatherPrice
from patternforge.drafting.making.sewing_section import thread_of
from patternforge.units import MM2_PER, MM_PER_M

__all__ = ["CostLine", "Costs", "costs", "to_the_cent"]

_CENT = Decimal("0.01")
_PLACES = {"dm2": "0.01", "ft2": "0.001", "m2": "0.0001"}  # to which areas are printed, and counted
_MINUTES = 60


@dataclass(frozen=True, slots=True)
class CostLine:
    """``quantity`` in ``unit`` at ``price`` each, as printed, and what that comes to, to the cent."""

    what: str
    quantity: Decimal
    unit: str
    price: Decimal
    per: str
    amount: Decimal


@dataclass(frozen=True, slots=True)
class Costs:
    """The lines, their sum, and what has no price and is not in it."""

    currency: str
    lines: tuple[CostLine, ...]
    unpriced: tuple[str, ...]

    @property
    def total(self) -> Decimal:
        """The sum of the amounts as printed."""
        return sum((line.amount for line in self.lines), Decimal("0.00"))


def costs(facts: MakingFacts) -> Costs | None:
    """The costs of one wallet; None where no price is given anywhere."""
    lines = tuple(_lines(facts))
    if facts.prices is None and not lines:
        return None
    currency = facts.prices.currency if facts.prices else ""
    return Costs(currency, lines, tuple(unpriced(facts.pattern, facts.prices)))


def to_the_cent(amount: Decimal) -> Decimal:
    """The amount to two places, half a cent up.

    >>> to_the_cent(Decimal("2.345")), to_the_cent(Decimal("2.3449"))
    (Decimal('2.35'), Decimal('2.34'))
    """
    return amount.quantize(_CENT, ROUND_HALF_UP)


def _line(what: str, quantity: Decimal, unit: str, price: float, per: str = "") -> CostLine:
    each = _money(price)
    return CostLine(what, quantity, unit, each, per or unit, to_the_cent(quantity * each))


def _money(price: float) -> Decimal:
    """A price as it was written, with two places at least."""
    exact = Decimal(repr(price))
    return to_the_cent(exact) if exact == to_the_cent(exact) else exact


def _counted(value: float, places: str) -> Decimal:
    """A measured quantity as printed."""
    return Decimal(repr(value)).quantize(Decimal(places), ROUND_HALF_UP)


def _lines(facts: MakingFacts) -> Iterator[CostLine]:
    for taken in leather_taken(facts):
        price = price_of(taken.leather, facts.prices)
        if price and taken.pieces:
            yield from _leather_lines(taken, price)
    prices, pattern = facts.prices, facts.pattern
    if prices is None:
        return
    thread = thread_of(pattern.seams)
    if prices.thread is not None and thread:
        yield _line("thread", _counted(thread / MM_PER_M, "0.01"), "m", prices.thread)
    for fitting in pattern.design.fittings:
        price_of_set = prices.of_hardware(fitting.name, fitting.kind)
        if price_of_set is not None:
            yield _line(f"hardware: {fitting.name}", Decimal(1), "set", price_of_set)
    for work in prices.work if prices.rate is not None else ():
        yield _work_line(work.name, work.minutes, prices.rate or 0.0)


def _leather_lines(taken: LeatherTaken, price: LeatherPrice) -> Iterator[CostLine]:
    """The net area, and the waste on it in a line of its own."""
    role, per = taken.leather.role, price.per
    net = _counted(taken.net / MM2_PER[per], _PLACES[per])
    yield _line(f"leather {role}, net", net, per, price.price)
    if taken.waste is not None:
        added = _counted(taken.added / MM2_PER[per], _PLACES[per])
        yield _line(f"leather {role}, waste {taken.waste:g} %", added, per, price.price)


def _work_line(name: str, minutes: float, rate: float) -> CostLine:
    spent, hourly = Decimal(repr(minutes)).normalize(), _money(rate)
    return CostLine(f"work: {name}", spent, "min", hourly, "hour", to_the_cent(spent * hourly / _MINUTES))
