"""The whole way from the text of a price list to its value, or to every fault of the file at once."""

from __future__ import annotations

import math
from enum import StrEnum

from patternforge.design.arithmetic import as_number
from patternforge.design.entries import Entries, entries
from patternforge.design.located import FaultList, Lost, Node, Scalar
from patternforge.design.scope import Scope
from patternforge.design.source import Subject, located
from patternforge.design.values import Bounds, kind_of, number_of
from patternforge.drafting.making.prices import LeatherPrice, PriceList, Work
from patternforge.drawing.drawable import undrawable
from patternforge.prices.forms import LeatherForm, PriceListForm, ThreadForm, WorkForm

__all__ = ["PRICES", "load_prices"]

PRICES = Subject("price list", "prices: what the list is called", "write the number out in each place")

_SPELL = "spell it with letters that can be drawn"
_SUM = frozenset("0123456789.,+-*/() ")  # of what a price may be written
_MONEY = Bounds(0.0, 1e6)
_PER_CENT = Bounds(0.0, 500.0)
_MINUTES = Bounds(0.0, 10_000.0)


class _Area(StrEnum):
    FT2 = "ft2"
    DM2 = "dm2"
    M2 = "m2"


class _Length(StrEnum):
    M = "m"
    KM = "km"


_METRES = {_Length.M: 1.0, _Length.KM: 1000.0}


def load_prices(text: str, file: str) -> PriceList:
    """The price list that ``text`` holds; ``file`` is the name used in messages.

    DesignError with every fault of the text, each with its line and column. What a design has no use for is not
    looked at, so that one list serves many designs.

    >>> load_prices("{prices: Spring, currency: EUR, thread: {price: 0.08, per: m}}", "p.yaml").thread
    0.08
    >>> load_prices("{prices: Spring, currency: EUR, thread: {price: -1, per: m}}", "p.yaml")
    Traceback (most recent call last):
    patternforge.errors.DesignError: p.yaml:1:49: 'price' of the thread is -1; it must be at least 0
    """
    faults = FaultList()
    table = entries(located(text, file, faults, subject=PRICES), PriceListForm, "the price list", Scope(faults))
    found = _price_list(table)
    faults.raise_if_any()
    return found


def _price_list(table: Entries) -> PriceList:
    work = table.table("work", WorkForm, "the work")
    return PriceList(
        title=_words(table, "prices"),
        currency=_words(table, "currency"),
        leathers=tuple(_leather(name.text, node, table.scope) for name, node in table.named("leathers")),
        thread=_thread(table.table("thread", ThreadForm, "the thread")) if "thread" in table.nodes else None,
        hardware=tuple((name.text, _money(node, name.text, table.scope)) for name, node in table.named("hardware")),
        rate=_number(work, "rate") if "work" in table.nodes else None,
        work=tuple(_work(name, node, table.scope) for name, node in work.named("minutes")),
    )


def _words(table: Entries, key: str) -> str:
    """A text that stands on the making sheet; a fault if a letter of it cannot be drawn there."""
    text = table.text(key)
    fault = undrawable(text).partition(";")[0]
    if fault:
        table.add_fault(key, f"'{key}' of {table.what}: {fault}", _SPELL)
    return text


def _leather(role: str, node: Node, scope: Scope) -> LeatherPrice:
    table = entries(node, LeatherForm, f"leather '{role}'", scope)
    per = table.choice("per", _Area, _Area.FT2).value
    waste = table.number("waste", bounds=_PER_CENT) if "waste" in table.nodes else None
    return LeatherPrice(role, _number(table, "price"), per, waste)


def _thread(table: Entries) -> float:
    """The price of one metre."""
    return _number(table, "price") / _METRES[table.choice("per", _Length, _Length.M)]


def _work(key: Scalar, node: Node, scope: Scope) -> Work:
    name = key.text
    fault = undrawable(name).partition(";")[0]
    if fault:
        scope.faults.add(key.at, f"the minutes of '{name}': {fault}", _SPELL)
    if not isinstance(node, Scalar) or node.is_blank:
        return Work(name, _refused(node, f"the minutes of '{name}'", scope))
    return Work(name, number_of(node, f"the minutes of '{name}'", scope, as_number, _MINUTES))


def _number(table: Entries, key: str) -> float:
    """A price; a fault of its own for one that is written with a currency."""
    node = table.scalar(key)
    return (
        math.nan if node is None else _money(node, f"{key} of {table.what}", table.scope, f"'{key}' of {table.what}")
    )


def _money(node: Node, name: str, scope: Scope, what: str = "") -> float:
    told = what or f"the price of '{name}'"
    if not isinstance(node, Scalar) or node.is_blank:
        return _refused(node, told, scope)
    text = node.text.strip()
    if not set(text) <= _SUM:
        scope.faults.add(node.at, f"{told} is '{text[:40]}'", "write the number alone, without a currency")
        return math.nan
    return number_of(node, told, scope, as_number, _MONEY)


def _refused(node: Node, told: str, scope: Scope) -> float:
    if not isinstance(node, Lost):
        what = "nothing" if isinstance(node, Scalar) else kind_of(node)
        scope.faults.add(node.at, f"{told} is a number, not {what}", "write it behind the colon")
    return math.nan
