"""What of a piece moved, in the words of somebody who holds the old template over the new one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

from patternforge.comparison.distance import TOLERANCE
from patternforge.geometry.point import Point
from patternforge.units import mm

__all__ = ["Axis", "Move", "moves"]

_MIDDLE = (0.4, 0.6)  # share of a piece's size between which a half ends
_MOST = 4  # stretches that move each its own way and can still be told apart in words


class Axis(Enum):
    """A way to move; its value names the two ends of it, low end first."""

    ACROSS = ("left", "right")
    UPRIGHT = ("down", "up")


_ENDS = {Axis.ACROSS: ("left", "right"), Axis.UPRIGHT: ("bottom", "top")}
_NAMES = {Axis.ACROSS: "x", Axis.UPRIGHT: "y"}


@dataclass(frozen=True, slots=True)
class Move:
    """A part of a piece that moves ``by`` mm along an axis, to the right or up where that is positive."""

    where: str
    axis: Axis
    by: float

    def __str__(self) -> str:
        return f"{self.where} moves {mm(abs(self.by))} mm {self.axis.value[self.by > 0]}"


@dataclass(slots=True)
class _Stretch:
    """Corners that move by the same, and the places along an axis between which they lie."""

    by: float
    low: float
    high: float


def moves(old: Sequence[Point], new: Sequence[Point]) -> tuple[Move, ...]:
    """What moves of a piece whose corners were ``old`` and are ``new``, placed over each other as they are.

    Empty where nothing does, or where so much moves by itself that only distances tell it. Both must have as many
    corners, in the same order.
    """
    return (*_along(Axis.ACROSS, old, new), *_along(Axis.UPRIGHT, old, new))


def _along(axis: Axis, old: Sequence[Point], new: Sequence[Point]) -> Iterator[Move]:
    shifts = [_on(axis, b) - _on(axis, a) for a, b in zip(old, new, strict=True)]
    for other in (axis, *(each for each in Axis if each is not axis)):
        stretches = _stretches([_on(other, a) for a in old], shifts)
        if len(stretches) <= _MOST and all(a.high < b.low for a, b in pairwise(stretches)):
            for index, each in enumerate(stretches):
                if abs(each.by) > TOLERANCE:
                    yield Move(_where(other, stretches, index), axis, each.by)
            return


def _on(axis: Axis, point: Point) -> float:
    return point.x if axis is Axis.ACROSS else point.y


def _stretches(places: Sequence[float], shifts: Sequence[float]) -> list[_Stretch]:
    """The stretches that move by the same, from the low end on."""
    found: list[_Stretch] = []
    for place, shift in sorted(zip(places, shifts, strict=True)):
        known = next((each for each in found if abs(each.by - shift) <= TOLERANCE), None)
        if known is None:
            found.append(_Stretch(shift, place, place))
        else:
            known.low, known.high = min(known.low, place), max(known.high, place)
    return sorted(found, key=lambda each: each.low)


def _where(axis: Axis, stretches: Sequence[_Stretch], index: int) -> str:
    low, high = _ENDS[axis]
    each, name = stretches[index], _NAMES[axis]
    if len(stretches) == 1:
        return "all of it"
    if len(stretches) == 2:
        size = stretches[1].high - stretches[0].low
        parts = (stretches[0].high + stretches[1].low) / 2 - stretches[0].low
        if _MIDDLE[0] * size <= parts <= _MIDDLE[1] * size:
            return f"{(low, high)[index]} half"
    if index == 0:
        return f"{low} part, up to {name} = {mm(each.high, 1)} mm,"
    if index == len(stretches) - 1:
        return f"{high} part, from {name} = {mm(each.low, 1)} mm on,"
    if each.high - each.low < 0.05:
        return f"the part at {name} = {mm(each.low, 1)} mm"
    return f"middle part, {name} = {mm(each.low, 1)} to {mm(each.high, 1)} mm,"
