"""Costs as they are told."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from patternforge.drafting.making.costs import CostLine, Costs, costs
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drawing.document import Block, Cell, Column, Paragraph, Section, Table, Tone
from patternforge.drawing.model import Align

__all__ = ["costs_section"]


def costs_section(facts: MakingFacts) -> Section | None:
    """Every line, the total, what is not in it, and how it is rounded; None where no price is given."""
    found = costs(facts)
    return Section("Costs of one wallet", tuple(_blocks(facts, found))) if found else None


def _blocks(facts: MakingFacts, found: Costs) -> Iterator[Block]:
    right = Align.RIGHT
    amount = f"amount, {found.currency}" if found.currency else "amount"
    columns = (Column("what"), Column("how much", right), Column("price", right), Column(amount, right))
    total: tuple[Cell, ...] = ("in all", "", "", str(found.total))
    title = f"Prices: {facts.prices.title}" if facts.prices else "Prices: from the design"
    yield Table(title, columns, tuple(_row(line) for line in found.lines), (total,))
    if found.unpriced:
        yield Paragraph(f"Not in the total, for want of a price: {', '.join(found.unpriced)}.")
    yield Paragraph(
        "Each amount is the quantity as printed times the price, rounded to a hundredth, half a hundredth up; the"
        " total is the sum of the amounts as printed. Waste is put on the net area.",
        Tone.SMALL,
    )


def _row(line: CostLine) -> tuple[Cell, ...]:
    return line.what, f"{_plain(line.quantity)} {line.unit}", f"{line.price} per {line.per}", str(line.amount)


def _plain(quantity: Decimal) -> str:
    return f"{quantity:f}"
