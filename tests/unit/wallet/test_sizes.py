"""Sizes of the body as sums of what stands in them."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.errors import DraftError
from patternforge.leather.contents import Section
from patternforge.wallet.pattern import Sum
from patternforge.wallet.sizes import body_height, panel_widths
from patternforge.wallet.spec import Content, Edge, FoldSpec, Held, LayerPart, Lying, Part, SeamSpec
from tests.unit.wallet.built import CARD, bank, pocket, shell, wallet

FOLD = FoldSpec(relief=5.0)


def told(size: Sum) -> dict[str, float]:
    return {term.label: round(term.value, 6) for term in size.terms}


def test_a_panel_is_as_wide_as_its_bank_needs() -> None:
    # Three cards of 1 mm lie over each other: 80 + 3 + 2.5 between the stitch lines; 4 mm rim, 5 mm relief, 4 mm.
    design = wallet(shell(2), bank(), widths=(None, 90.0), folds=(FOLD,))
    width, declared = panel_widths(design)
    assert told(width) == {
        "card: across the mouth": 80.0,
        "card: 3 x thickness": 3.0,
        "ease": 2.5,
        "margin at the left": 4.0,
        "relief at the right": 5.0,
        "margin at the right": 4.0,
    }
    assert width.value == pytest.approx(98.5)
    assert told(declared) == {"declared": 90.0}


def test_columns_stand_side_by_side() -> None:
    # 2 x (80 + 3 + 2.5) + 2 x 4.
    (width,) = panel_widths(wallet(shell(1), bank(columns=2), widths=(None,)))
    assert width.value == pytest.approx(179.0)


def test_two_per_slot_are_twice_as_thick() -> None:
    (width,) = panel_widths(wallet(shell(1), bank(per_slot=2), widths=(None,)))
    assert width.value == pytest.approx(80 + 6 + 2.5 + 8)


def test_an_upright_card_is_as_wide_as_it_is_high() -> None:
    (width,) = panel_widths(wallet(shell(1), bank(lying=Lying.UPRIGHT), widths=(None,)))
    assert width.value == pytest.approx(50 + 3 + 2.5 + 8)


def test_a_pocket_open_at_the_side_makes_its_panel_as_wide_as_its_item_is_deep() -> None:
    # Floor at the rim on the left: 4 + 50 (deeper than the 40 of the pocket) + 5 relief at the mouth.
    width, _ = panel_widths(wallet(shell(2), pocket(opening=Edge.RIGHT), widths=(None, 90.0), folds=(FOLD,)))
    assert width.value == pytest.approx(59.0)
    width, _ = panel_widths(
        wallet(shell(2), pocket(opening=Edge.RIGHT, depth=60.0), widths=(None, 90.0), folds=(FOLD,))
    )
    assert width.value == pytest.approx(69.0)


def test_a_layer_over_more_panels_makes_wide_the_panel_its_items_are_pushed_in_over() -> None:
    # Open at the left the note stops at the relief of the fold: 70 + 5 + 3 headroom; open at the right likewise.
    asked: tuple[tuple[Edge, tuple[float | None, ...]], ...] = (
        (Edge.LEFT, (None, 90.0)),
        (Edge.RIGHT, (90.0, None)),
    )
    for opening, widths in asked:
        notes = LayerPart("divider", "inner", 0, 1, opening=opening, holds=(Held("note", 3),))
        width = panel_widths(wallet(shell(2), notes, widths=widths, folds=(FOLD,)))[widths.index(None)]
        assert told(width) == {"note: towards the mouth": 70.0, "relief at the fold": 5.0, "headroom": 3.0}


def test_both_panels_are_as_wide_as_the_wider_one() -> None:
    design = wallet(shell(2), bank(), bank(name="two", panel=1, slots=1), widths=(None, None), folds=(FOLD,))
    left, right = panel_widths(design)
    # One card instead of three on the right: 2 mm less, made up.
    assert left.value == right.value == pytest.approx(98.5)
    assert told(right)["to match the other panel"] == 2.0


def test_panels_of_declared_width_are_not_made_equal() -> None:
    widths = panel_widths(wallet(shell(2), bank(), widths=(None, 120.0), folds=(FOLD,)))
    assert [width.value for width in widths] == pytest.approx([98.5, 120.0])


def test_a_panel_that_covers_a_folded_in_one_is_longer_by_the_clearance() -> None:
    parts: tuple[Part, ...] = (shell(3), *(bank(name=f"bank {i}", panel=i, slots=1) for i in range(3)))
    design = wallet(*parts, widths=(None, None, None), folds=(FOLD, FOLD))
    # Outer panels 80 + 1 + 2.5 + 4 + 9, the middle one 4 mm of rim less but 9 more: it is long enough by itself.
    assert [width.value for width in panel_widths(design)] == pytest.approx([96.5, 101.5, 96.5])
    # P0 folds onto P1 first, so P1 must be longer than P0.
    design = wallet(*parts, widths=(110.0, None, None), folds=(FOLD, FOLD))
    widths = panel_widths(design)
    assert widths[1].value == pytest.approx(111.5)
    assert told(widths[1])["clearance of the panel folded in"] == 1.5


def test_the_later_panel_folded_in_asks_for_the_same() -> None:
    # P2 folds onto P1 first: P1 must be longer than P2, which is 101 wide; by itself it would be 101.5.
    parts: tuple[Part, ...] = (shell(3), *(bank(name=f"bank {i}", panel=i, slots=1) for i in range(3)))
    design = wallet(*parts, widths=(None, None, 101.0), folds=(FOLD, FOLD), closing=(2, 1))
    assert [width.value for width in panel_widths(design)] == pytest.approx([96.5, 102.5, 101.0])


def test_the_height_is_that_of_the_highest_need() -> None:
    # 4 + 2 steps of 10 + 50 + 3 headroom = 77; the notes want 70 + 4 + 3 = 77: with one slot less they decide.
    notes = LayerPart("divider", "inner", 0, 0, holds=(Held("note", 3),))
    height = body_height(wallet(shell(1), bank(), widths=(None,), height=None))
    assert told(height) == {"margin at the bottom": 4.0, "steps": 20.0, "card across": 50.0, "headroom": 3.0}
    height = body_height(wallet(shell(1), notes, bank(slots=1), widths=(None,), height=None))
    assert told(height) == {"note: towards the mouth": 70.0, "margin": 4.0, "headroom": 3.0}
    assert height.value == pytest.approx(77.0)


def test_a_pocket_makes_the_body_high_enough_for_its_item() -> None:
    assert body_height(wallet(shell(1), pocket(), height=None)).value == pytest.approx(4 + 50 + 3)
    assert body_height(wallet(shell(1), pocket(depth=66.0), height=None)).value == pytest.approx(4 + 66 + 3)


def test_without_a_seam_a_pocket_has_the_margin_of_the_first_one() -> None:
    # The rim leaves the top free, where the floor of an upside-down pocket is: 50 + 4 + 3 headroom at the bottom.
    top_only = SeamSpec("top", (Edge.LEFT,), margin=6.0)
    height = body_height(wallet(shell(1), pocket(opening=Edge.BOTTOM), height=None, seams=(top_only,)))
    assert told(height) == {"margin at the top": 6.0, "card across": 50.0, "headroom": 3.0}


def test_a_panel_of_its_own_layer_may_take_its_width_from_what_the_layer_holds() -> None:
    divider = LayerPart("divider", "inner", 0, 0, holds=(Held("note", 3),))
    (width,) = panel_widths(wallet(shell(1), divider, widths=(None,)))
    # 120 and three notes of 0.1, 3 ease, 2 x 4.
    assert width.value == pytest.approx(131.3)


def test_held_items_may_stand_upright() -> None:
    divider = LayerPart("divider", "inner", 0, 0, holds=(Held("note", 3),), lying=Lying.UPRIGHT)
    design = wallet(shell(1), divider, widths=(None,), height=None)
    (width,) = panel_widths(design)
    assert width.value == pytest.approx(70 + 0.3 + 3 + 8)
    assert body_height(design).value == pytest.approx(120 + 4 + 3)


def test_a_round_item_needs_half_its_girth() -> None:
    pen = replace(CARD, name="pen", length=140.0, height=12.0, thickness=12.0, section=Section.ROUND)
    design = wallet(shell(1), pocket(lying=Lying.UPRIGHT), widths=(None,), contents=(Content("card", pen),))
    (width,) = panel_widths(design)
    assert width.value == pytest.approx(6 * pi + 2.5 + 8)


def test_a_width_or_height_that_nothing_gives_is_refused() -> None:
    with pytest.raises(DraftError, match="nothing on panel 'P1' says how wide it is: give it a width"):
        panel_widths(wallet(shell(2), bank(), widths=(None, None), folds=(FOLD,)))
    with pytest.raises(DraftError, match="nothing in the wallet says how high it is"):
        body_height(wallet(shell(1), height=None))
