"""Floors, mouths and shoulders of slots, in the pocket's own frame."""

from __future__ import annotations

import pytest

from patternforge.wallet.frame import pocket_frame
from patternforge.wallet.parts.slots import Slot, Slots, clear_need, pocket_slots
from patternforge.wallet.spec import BankPart, BankShape, Lying, PocketPart
from tests.unit.wallet.built import bank, body_of, pocket, shell, wallet


def slots(part: BankPart | PocketPart) -> Slots:
    design = wallet(shell(1), part)
    return pocket_slots(design, pocket_frame(design, body_of(design), part), part)


def test_slots_rise_by_a_step_and_leave_their_cards_standing_out() -> None:
    # Rim at 4; card 50 high, 10 standing out: mouths at 44, 54, 64. Tabs reach 10 + 8 below their mouths.
    assert slots(bank()).slots == (
        Slot(1, 4.0, 44.0, 26.0, 54.0),
        Slot(2, 14.0, 54.0, 36.0, 64.0),
        Slot(3, 24.0, 64.0, 46.0, 74.0),
    )


def test_an_upright_card_is_eighty_high() -> None:
    found = slots(bank(lying=Lying.UPRIGHT, slots=1))
    assert found.slots == (Slot(1, 4.0, 74.0, 56.0, 84.0),)
    assert (found.item_across, found.item_along) == (50.0, 80.0)


def test_a_pocket_is_one_full_slot_of_its_depth() -> None:
    found = slots(pocket(count=3))
    assert found.slots == (Slot(1, 4.0, 44.0, 4.0, 54.0),)
    assert (found.shape, found.item_count, found.columns) == (BankShape.FULL, 3, 1)


def test_a_bank_holds_so_many_per_slot_and_column() -> None:
    found = slots(bank(per_slot=2, columns=2))
    assert (found.item_count, found.columns, found.shape) == (2, 2, BankShape.TEE)


@pytest.mark.parametrize(
    ("part", "thickness"),
    [
        (bank(), 3.0),  # all three overlap between 20 and 50
        (bank(step=30.0), 2.0),  # the third begins at 60, where the first has ended
        (bank(step=50.0), 1.0),  # one begins where the other ends
        (bank(per_slot=2), 6.0),
        (pocket(count=4), 4.0),
    ],
)
def test_the_clear_width_is_the_taut_path_round_the_cards_and_ease(
    part: BankPart | PocketPart, thickness: float
) -> None:
    # The item's width, the thickness of those that lie over each other, ease: common practice, no source.
    terms = [term.value for term in clear_need(wallet(shell(1), part), part)]
    assert terms == [80.0, thickness, 2.5]
