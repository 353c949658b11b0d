"""Costs, against sums worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from patternforge.drafting.making.costs import CostLine, costs, to_the_cent
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.making.price_gaps import unpriced, unused
from patternforge.drafting.making.prices import LeatherPrice, PriceList, Work
from patternforge.drafting.making.sheet import making_sheet
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Fitting, Spot
from tests.unit.drafting.making_built import cells, oblong, plain_facts, table

OUTER = LeatherPrice("outer", 1.235, "dm2", waste=15.0)


def _lines(facts: MakingFacts) -> dict[str, CostLine]:
    found = costs(facts)
    assert found is not None
    return {line.what: line for line in found.lines}


def _amounts(pattern: Pattern, **prices: Any) -> dict[str, str]:
    facts = plain_facts(pattern, prices=PriceList("Spring", "EUR", **prices))
    return {what: str(line.amount) for what, line in _lines(facts).items()}


def test_leather_costs_its_printed_area_and_its_waste_stands_in_a_line_of_its_own() -> None:
    """100 x 200 mm are 2.00 dm2 at 1.235: 2.47. Waste 15 %: 0.30 dm2, 0.3705, so 0.37."""
    amounts = _amounts(oblong(100.0, 200.0), leathers=(OUTER,))
    assert amounts == {"leather outer, net": "2.47", "leather outer, waste 15 %": "0.37"}


def test_without_waste_there_is_no_line_for_it() -> None:
    bare = replace(OUTER, waste=None)
    assert list(_amounts(oblong(100.0, 200.0), leathers=(bare,))) == ["leather outer, net"]


def test_waste_said_for_all_leathers_goes_before_the_price_lists() -> None:
    """20 % of 2.00 dm2 are 0.40 dm2: 0.494, so 0.49."""
    facts = plain_facts(oblong(100.0, 200.0), prices=PriceList("S", "EUR", leathers=(OUTER,)), waste=20.0)
    assert str(_lines(facts)["leather outer, waste 20 %"].amount) == "0.49"


def test_half_a_cent_goes_up() -> None:
    """100 x 150 mm are 1.50 dm2 at 0.03: 0.045. Rounding halves to the even cent would give 0.04."""
    assert _amounts(oblong(100.0, 150.0), leathers=(LeatherPrice("outer", 0.03, "dm2"),)) == {
        "leather outer, net": "0.05"
    }
    assert to_the_cent(Decimal("1.005")) == Decimal("1.01")


def test_a_square_foot_is_a_square_foot() -> None:
    """304.8 x 304.8 mm are 1.000 ft2 at 11.5."""
    assert _amounts(oblong(304.8, 304.8), leathers=(LeatherPrice("outer", 11.5, "ft2"),)) == {
        "leather outer, net": "11.50"
    }


def test_thread_costs_its_printed_metres() -> None:
    """1532.35 mm are printed as 1.53 m; at 0.12 that is 0.1836, so 0.18."""
    assert _amounts(oblong(100.0, 200.0, thread=1532.35), thread=0.12) == {"thread": "0.18"}


def test_work_costs_its_minutes_at_the_hourly_rate() -> None:
    """25 min at 24 an hour: 10.00. 95 min: 38.00. 7 min: 2.80. 12.5 min: 5.00."""
    work = (Work("cutting", 25.0), Work("sewing", 95.0), Work("edges", 7.0), Work("box", 12.5))
    amounts = _amounts(oblong(100.0, 200.0), rate=24.0, work=work)
    assert list(amounts.values()) == ["10.00", "38.00", "2.80", "5.00"]


def test_hardware_is_priced_by_its_name_and_else_by_its_kind() -> None:
    pattern = oblong(100.0, 200.0)
    fittings = tuple(Fitting(name, "snap-line-20", "back", Spot(0), (4.5, 3.5), 6.35) for name in ("left", "right"))
    fitted = replace(pattern, design=replace(pattern.design, fittings=fittings))
    amounts = _amounts(fitted, hardware=(("snap-line-20", 0.35), ("right", 0.5)))
    assert amounts == {"hardware: left": "0.35", "hardware: right": "0.50"}


def test_the_total_is_the_sum_of_what_is_printed() -> None:
    """2.47 + 0.37 + 0.18 + 10.00 = 13.02; unrounded it would be 13.0241."""
    prices = PriceList("Spring", "EUR", (OUTER,), 0.12, rate=24.0, work=(Work("cutting", 25.0),))
    document = making_sheet(plain_facts(oblong(100.0, 200.0), prices=prices))
    found = table(document, "amount, EUR")
    assert sum(Decimal(amount) for amount in cells(found, "amount, EUR")) == Decimal("13.02")
    assert found.totals[0][-1] == "13.02"


@pytest.mark.parametrize("count", range(1, 12))
def test_any_number_of_thirds_adds_up_as_printed(count: int) -> None:
    """A third of an hour at 1.00 is 0.33 each time: what is printed adds up, three of them to 0.99."""
    work = tuple(Work(f"w{i}", 20.0) for i in range(count))
    found = costs(plain_facts(oblong(10.0, 10.0), prices=PriceList("S", "", rate=1.0, work=work)))
    assert found is not None
    assert found.total == Decimal("0.33") * count


def test_what_has_no_price_is_named_and_not_in_the_total() -> None:
    found = costs(plain_facts(oblong(100.0, 200.0), prices=PriceList("Spring", "EUR", thread=0.1)))
    assert found is not None
    assert found.unpriced == ("leather outer", "work")


def test_what_the_wallet_has_no_use_for_is_named() -> None:
    pattern = oblong(100.0, 200.0)
    fittings = tuple(Fitting(name, "snap-line-20", "back", Spot(0), (4.5, 3.5), 6.35) for name in ("left", "right"))
    fitted = replace(pattern, design=replace(pattern.design, fittings=fittings))
    hardware = (("left", 0.5), ("snap-line-20", 0.35), ("rivet", 0.1))
    prices = PriceList("Spring", "EUR", (OUTER, replace(OUTER, role="outr")), 0.1, hardware)
    assert list(unused(fitted, prices)) == ["leather outr", "hardware: rivet"]
    both = replace(prices, hardware=(*hardware, ("right", 0.4)))
    assert list(unused(fitted, both)) == ["leather outr", "hardware: snap-line-20", "hardware: rivet"]
    assert list(unused(replace(fitted, seams=()), PriceList("Spring", "EUR", thread=0.1))) == ["thread"]


def test_a_leather_that_no_piece_is_cut_from_is_of_no_use_and_needs_no_price() -> None:
    pattern = oblong(100.0, 200.0)
    leathers = (*pattern.design.leathers, replace(pattern.design.leathers[0], role="spare"))
    design = replace(pattern, design=replace(pattern.design, leathers=leathers))
    prices = PriceList("Spring", "EUR", (OUTER, replace(OUTER, role="spare")), 0.1)
    assert list(unused(design, prices)) == ["leather spare"]
    assert list(unpriced(design, replace(prices, leathers=(OUTER,)))) == ["work"]


def test_without_prices_there_are_no_costs() -> None:
    assert costs(plain_facts(oblong(100.0, 200.0), waste=15.0)) is None


def test_a_price_in_the_design_counts_until_the_list_has_one() -> None:
    pattern = oblong(100.0, 200.0)
    leathers = tuple(replace(leather, price=2.0, price_area="dm2") for leather in pattern.design.leathers)
    priced = replace(pattern, design=replace(pattern.design, leathers=leathers))
    assert [str(line.amount) for line in _lines(plain_facts(priced)).values()] == ["4.00"]
    listed = plain_facts(priced, prices=PriceList("S", "EUR", (replace(OUTER, waste=None),)))
    assert [str(line.amount) for line in _lines(listed).values()] == ["2.47"]


def test_prices_are_printed_as_written() -> None:
    lines = _lines(plain_facts(oblong(100.0, 200.0), prices=PriceList("S", "EUR", (OUTER,), 0.1, rate=24.0)))
    assert [str(line.price) for line in lines.values()] == ["1.235", "1.235", "0.10"]
