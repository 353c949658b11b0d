"""Slots: what a bank and a flat pocket have in common, measured in the pocket's own frame."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.wallet.frame import Frame
from patternforge.wallet.spec import BankPart, BankShape, Design, PocketPart
from patternforge.wallet.stacks import item_intervals, item_size, most_over_each_other, taut_terms
from patternforge.wallet.sums import Term

__all__ = ["Slot", "Slots", "clear_need", "pocket_slots"]


@dataclass(frozen=True, slots=True)
class Slot:
    """One slot, b measured in the frame: floor, mouth, lower end of a tee's tab, item's top; mm."""

    number: int
    floor: float
    mouth: float
    shoulder: float
    top: float


@dataclass(frozen=True, slots=True)
class Slots:
    """The slots of a part from the front (slot 1) to the back, the item's size along and across the mouth, mm."""

    slots: tuple[Slot, ...]
    item_across: float
    item_along: float
    item_count: int
    columns: int
    shape: BankShape


def pocket_slots(design: Design, frame: Frame, part: BankPart | PocketPart) -> Slots:
    """The slots of a bank or pocket: floor j = bottom stitch line + (j - 1) step, mouth j = floor j + h - show."""
    across, along = item_size(part, design)
    floor = frame.floor.stitch
    if isinstance(part, PocketPart):
        slot = Slot(1, floor, floor + part.depth, floor, floor + along)
        return Slots((slot,), across, along, part.count, 1, BankShape.FULL)
    slots = tuple(_bank_slot(part, floor, along, j) for j in range(part.slots))
    return Slots(slots, across, along, part.per_slot, part.columns, part.shape)


def _bank_slot(part: BankPart, floor: float, along: float, j: int) -> Slot:
    own_floor = floor + j * part.step
    mouth = own_floor + along - part.show
    return Slot(j + 1, own_floor, mouth, mouth - part.step - part.overlap, own_floor + along)


def clear_need(design: Design, part: BankPart | PocketPart) -> tuple[Term, ...]:
    """Clear width between stitch lines of one column, term by term: the taut path round the contents + ease.

    Half the girth of the items lying over each other + ease.
    """
    if isinstance(part, BankPart):
        count = most_over_each_other(item_intervals(part, design)) * part.per_slot
    else:
        count = part.count
    taut = taut_terms(design.content(part.content), part.lying, count)
    return (*taut, Term("ease", part.ease, (f"part {part.name}.ease",)))
