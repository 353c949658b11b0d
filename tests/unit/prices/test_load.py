"""Price lists: what they say, and every fault told where it stands."""

from __future__ import annotations

import pytest

from patternforge.drafting.making.prices import LeatherPrice, PriceList, Work
from patternforge.errors import DesignError
from patternforge.prices.load import load_prices

GOOD = """\
prices: Bench prices
currency: crowns
leathers:
  outer: {price: 14.50, per: ft2, waste: 25}
  inner: {price: 11 + 0.5, per: dm2}
thread: {price: 90, per: km}
hardware:
  snap-line-20: 0.35
  closure: 1
work:
  rate: 24
  minutes: {cutting: 25, sewing: 1.5 * 60}
"""


def test_a_whole_list_is_read() -> None:
    assert load_prices(GOOD, "p.yaml") == PriceList(
        "Bench prices",
        "crowns",
        (LeatherPrice("outer", 14.5, "ft2", 25.0), LeatherPrice("inner", 11.5, "dm2")),
        0.09,
        (("snap-line-20", 0.35), ("closure", 1.0)),
        24.0,
        (Work("cutting", 25.0), Work("sewing", 90.0)),
    )


def test_a_title_and_a_currency_are_enough() -> None:
    assert load_prices("prices: A\ncurrency: £\n", "p.yaml") == PriceList("A", "£")


@pytest.mark.parametrize(
    ("old", "new", "place", "says"),
    [
        ("prices: Bench prices\n", "", "1:1", "the price list has no 'prices'"),
        ("currency: crowns\n", "", "1:1", "the price list has no 'currency'"),
        ("14.50", "14.50 EUR", "4:18", "write the number alone, without a currency"),
        ("14.50", "$14", "4:18", "write the number alone, without a currency"),
        ("14.50", "-1", "4:18", "it must be at least 0"),
        ("per: ft2", "per: acre", "4:30", "cannot be 'acre'; known here: ft2, dm2, m2"),
        ("per: ft2", "per: ft", "4:30", "did you mean 'ft2'?"),
        ("price: 14.50, ", "", "4:10", "leather 'outer' has no 'price'"),
        ("waste: 25", "waste: 600", "4:42", "it must be at most 500"),
        ("waste: 25", "waist: 25", "4:35", "did you mean 'waste'?"),
        ("{price: 90, per: km}", "0.09", "6:9", "the thread is a table of keys"),
        ("per: km", "per: mile", "6:26", "cannot be 'mile'"),
        ("snap-line-20: 0.35", "snap-line-20: cheap", "8:17", "the price of 'snap-line-20' is 'cheap'"),
        ("snap-line-20: 0.35", "snap-line-20: {price: 1}", "8:17", "is a number, not a table"),
        ("snap-line-20: 0.35", "snap-line-20:", "8:3", "is a number, not nothing"),
        ("  rate: 24\n", "", "11:3", "the work has no 'rate'"),
        ("cutting: 25", "cutting: -5", "12:22", "it must be at least 0"),
        ("cutting: 25", "cutting: [5]", "12:22", "is a number, not a list"),
        ("thread:", "tread:", "6:1", "did you mean 'thread'?"),
        ("currency: crowns", "currency: crowns\ncurrency: EUR", "3:1", "is repeated"),
        ("currency: crowns", "currency: 円", "2:11", "no stroke letter for '円'"),
        ("Bench prices", "左", "1:9", "spell it with letters that can be drawn"),
        ("cutting: 25", "左: 25", "12:13", "the minutes of '左': no stroke letter"),
        ("currency: crowns", "currency: yes", "2:11", "which many programs read as a truth value"),
    ],
)
def test_a_fault_is_told_where_it_stands(old: str, new: str, place: str, says: str) -> None:
    assert GOOD.count(old) == 1
    with pytest.raises(DesignError) as caught:
        load_prices(GOOD.replace(old, new), "p.yaml")
    assert [str(fault).split(": ")[0] for fault in caught.value.faults] == [f"p.yaml:{place}"], str(caught.value)
    assert says in str(caught.value)


def test_all_faults_are_told_in_one_run() -> None:
    text = GOOD.replace("14.50", "x").replace("0.35", "y").replace("rate: 24", "rate: z")
    with pytest.raises(DesignError) as caught:
        load_prices(text, "p.yaml")
    assert [fault.line for fault in caught.value.faults] == [4, 8, 11]


@pytest.mark.parametrize("text", ["", "- a\n", "prices: [\n", "prices: A\n---\nprices: B\n"])
def test_what_is_no_list_of_prices_is_refused(text: str) -> None:
    with pytest.raises(DesignError, match=r"p\.yaml:\d+:\d+: "):
        load_prices(text, "p.yaml")
