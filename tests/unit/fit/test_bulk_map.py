"""The bulk map of small wallets whose stacks are counted by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.bulk_map import BulkMap, closed_map, open_map
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import layout
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, FoldSpec, Held, LayerPart, Opening, Spot
from tests.unit.fit.found import small
from tests.unit.wallet.built import SHELL, pocket, shell

FOLD = FoldSpec(relief=5.0)


def maps(pattern: Pattern) -> tuple[BulkMap, BulkMap]:
    laid = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    return open_map(laid), closed_map(laid, closed_wallet(laid))


def thickness_at(found: BulkMap, x: float, y: float) -> float:
    return sum(spot.thickness for spot in found.spots if spot.region.contains(Point(x, y)))


def test_a_pocket_stands_on_its_shell_and_its_card_between_them() -> None:
    # Panel 100 x 80; the pocket reaches 44 up, the card 80 x 50 stands on the stitches 4 above the edge.
    found, closed = maps(small(shell(1), pocket()))
    assert found.name == "laid open"
    assert thickness_at(found, 5, 40) == pytest.approx(1.2 + 0.8)
    assert thickness_at(found, 50, 40) == pytest.approx(1.2 + 1.0 + 0.8)
    assert thickness_at(found, 50, 50) == pytest.approx(1.2 + 1.0)
    assert thickness_at(found, 50, 70) == pytest.approx(1.2)
    assert [spot.thickness for spot in closed.spots] == [spot.thickness for spot in found.spots]
    assert found.volume == pytest.approx(100 * 80 * 1.2 + 100 * 44 * 0.8 + 80 * 50 * 1.0)


def test_the_highest_spot_names_what_lies_there_from_the_outside_in() -> None:
    found, _ = maps(small(shell(1), pocket()))
    assert found.highest.names == ("shell", "card", "pocket")
    assert found.highest.thickness == pytest.approx(3.0)


def test_panels_that_close_on_each_other_add_up_where_they_meet() -> None:
    pattern = small(shell(2), pocket(), widths=(100.0, 100.0), folds=(FOLD,))
    found, closed = maps(pattern)
    assert found.highest.thickness == pytest.approx(3.0)
    assert closed.highest.thickness == pytest.approx(3.0 + 1.2)
    assert thickness_at(closed, 50, 70) == pytest.approx(2.4)
    assert closed.volume == pytest.approx(found.volume)
    assert [panel.bounds.x0 for panel in closed.panels] == pytest.approx([0.0, 0.0])


def test_a_panel_turned_over_lies_mirrored() -> None:
    # A lining over the left half of panel 1 alone, next to the fold, comes to lie at the right end of panel 0.
    lining = LayerPart("lining", "inner", 1, 1, inset=((Edge.RIGHT, 50.0),))
    pattern = small(shell(2), lining, widths=(100.0, 100.0), folds=(FOLD,))
    _, closed = maps(pattern)
    assert thickness_at(closed, 80, 20) == pytest.approx(2.4 + 0.8)
    assert thickness_at(closed, 20, 20) == pytest.approx(2.4)


def test_an_opening_is_thinner_by_its_leather() -> None:
    window = Opening("window", Spot(0), 20.0, 10.0)
    front = replace(SHELL, name="front", leather="inner", openings=(window,))
    found, _ = maps(small(shell(1), front))
    assert thickness_at(found, 50, 40) == pytest.approx(1.2)
    assert thickness_at(found, 30, 40) == pytest.approx(2.0)


def test_what_lies_in_the_folds_is_not_on_the_map() -> None:
    found, _ = maps(small(shell(2), widths=(100.0, 100.0), folds=(FOLD,)))
    assert found.volume == pytest.approx(200 * 80 * 1.2)
    assert [panel.bounds.width for panel in found.panels] == pytest.approx([100.0, 100.0])


def test_notes_count_on_every_panel_they_can_reach() -> None:
    divider = LayerPart("divider", "inner", 0, 1, drop=10.0, exact=("drop",), holds=(Held("note", 5),))
    found, _ = maps(small(shell(2), divider, widths=(100.0, 100.0), folds=(FOLD,)))
    assert thickness_at(found, 10, 40) == pytest.approx(1.2 + 0.5 + 0.8)
    assert thickness_at(found, found.panels[1].bounds.x1 - 10, 40) == pytest.approx(1.2 + 0.5 + 0.8)
