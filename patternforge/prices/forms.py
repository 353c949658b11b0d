"""The keys a price list may hold, with one line on each."""

from __future__ import annotations

from typing import Any

from patternforge.design.form import Form, Number, Text, optional, required

__all__ = ["LeatherForm", "PriceListForm", "ThreadForm", "WorkForm"]


class LeatherForm(Form):
    """What a leather costs."""

    price: Number = required("price of one area, the number alone")
    per: Text = required("area the price is for: ft2, dm2 or m2")
    waste: Number = optional("per cent of the net area that are cut to waste; left out: nothing is said")


class ThreadForm(Form):
    """What thread costs."""

    price: Number = required("price of one length, the number alone")
    per: Text = required("length the price is for: m, or km")


class WorkForm(Form):
    """What your time costs."""

    rate: Number = required("price of an hour, the number alone")
    minutes: dict[str, Any] = required("minutes that each kind of work takes for one wallet, by a word of your own")


class PriceListForm(Form):
    """A price list."""

    prices: Text = required("what the list is called")
    currency: Text = required("in words or a sign of your own: EUR, crowns, £")
    leathers: dict[str, LeatherForm] = optional("by the word the design has for each: outer, inner")
    thread: ThreadForm = optional("thread")
    hardware: dict[str, Any] = optional("price of one set, by the name in the design or by its kind")
    work: WorkForm = optional("your own time")
