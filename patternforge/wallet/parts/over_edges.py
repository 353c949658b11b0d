"""How high the pieces and contents of pockets stand over one place, and over what is turned in along an edge."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from patternforge.geometry.point import Bounds, Point
from patternforge.wallet.body import Body
from patternforge.wallet.frame import Frame, pocket_frame
from patternforge.wallet.parts.bank import stem_sides, stitch_lines
from patternforge.wallet.parts.slots import Slot, Slots, pocket_slots
from patternforge.wallet.spec import BankPart, BankShape, Design, PocketPart

__all__ = ["Standing", "highest", "standings"]

_GIVES_WAY = 0.5  # mm; a stack over no more than that counts for nothing; common practice, no source


@dataclass(frozen=True, slots=True)
class Standing:
    """A box of the assembly and the thickness that stands there, mm."""

    box: Bounds
    thickness: float


def standings(design: Design, body: Body, part: BankPart | PocketPart) -> tuple[Standing, ...]:
    """Every piece of a bank or pocket, a tee's tab and stem apart, and everything it holds as loaded."""
    frame = pocket_frame(design, body, part)
    slots = pocket_slots(design, frame, part)
    t = design.leather(part.leather).t
    held = slots.item_count * design.load.cards * design.item(part.content).thickness
    leathers = (box for slot in slots.slots for box in _pieces(frame, slots, slot))
    items = (box for slot in slots.slots for box in _items(frame, slots, slot))
    return (*(Standing(_laid(frame, box), t) for box in leathers), *(Standing(_laid(frame, b), held) for b in items))


def highest(standing: Sequence[Standing], within: Bounds) -> float:
    """The highest stack over any part of a box that is wide enough to hold it up, mm."""
    here = [each for each in standing if _meets(each.box, within)]
    xs = _middles(
        [within.x0, within.x1, *(x for each in here for x in (each.box.x0, each.box.x1))], within.x0, within.x1
    )
    ys = _middles(
        [within.y0, within.y1, *(y for each in here for y in (each.box.y0, each.box.y1))], within.y0, within.y1
    )
    return max((sum(each.thickness for each in here if _holds(each.box, x, y)) for x in xs for y in ys), default=0.0)


def _pieces(frame: Frame, slots: Slots, slot: Slot) -> list[Bounds]:
    left, right = frame.left.inset, frame.across - frame.right.inset
    if slots.shape is not BankShape.TEE or slot.number == 1:
        return [Bounds(left, frame.floor.inset, right, slot.mouth)]
    stem_left, stem_right = stem_sides(frame)
    foot = slot.floor - frame.floor.margin
    stem = Bounds(stem_left, foot, stem_right, max(slot.shoulder, foot))
    return [Bounds(left, max(slot.shoulder, foot), right, slot.mouth), stem]


def _items(frame: Frame, slots: Slots, slot: Slot) -> list[Bounds]:
    half = slots.item_across / 2
    middles = ((low + high) / 2 for low, high in pairwise(stitch_lines(frame, slots.columns)))
    return [Bounds(a - half, slot.floor, a + half, slot.top) for a in middles]


def _laid(frame: Frame, box: Bounds) -> Bounds:
    a, b = frame.onto.point(Point(box.x0, box.y0)), frame.onto.point(Point(box.x1, box.y1))
    return Bounds(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))


def _meets(a: Bounds, b: Bounds) -> bool:
    return a.x0 < b.x1 and b.x0 < a.x1 and a.y0 < b.y1 and b.y0 < a.y1


def _holds(box: Bounds, x: float, y: float) -> bool:
    return box.x0 < x < box.x1 and box.y0 < y < box.y1


def _middles(places: Iterable[float], low: float, high: float) -> list[float]:
    inside = sorted({at for at in places if low <= at <= high})
    return [(a + b) / 2 for a, b in pairwise(inside) if b - a > _GIVES_WAY]
