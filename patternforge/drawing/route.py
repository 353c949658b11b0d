"""A short way through lines that may be taken in any order, by exchanging parts of the way.

The way is improved as long as one of two changes makes it shorter: turning a part of it round, and putting a part in
elsewhere, turned or not (the moves known as 2-opt and Or-opt; Croes 1958, Or 1976, from memory). No way is found to
be the shortest by this, but none is made longer.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot, inf

__all__ = ["Leg", "length", "nearest_ends", "ordered", "routed"]

_GAIN = 1e-9  # mm that a change must save to be made: what is less is rounding
_SHORT = 3  # lines in a part that is tried elsewhere although both its ends lie well


@dataclass(frozen=True, slots=True)
class Leg:
    """A line as it is taken: which, where it is begun and left (x + iy, mm), whether against its own direction."""

    index: int
    start: complex
    end: complex
    turned: bool = False

    def back(self) -> Leg:
        """The same line the other way."""
        return Leg(self.index, self.end, self.start, not self.turned)


_Place = complex | None  # None: anywhere, so that the way to it counts for nothing
_Ways = Callable[[Leg], tuple[Leg, ...]]


@dataclass(frozen=True, slots=True)
class _Search:
    """How many lines a part may have that is tried elsewhere, and the loose steps of the way."""

    lengths: Sequence[int]
    loose: frozenset[int]
    turning: bool


def length(legs: Sequence[Leg], before: _Place = None, after: _Place = None) -> float:
    """The way in mm from ``before`` to the first line, from each to the next, and from the last to ``after``.

    >>> length([Leg(0, 0j, 1 + 0j), Leg(1, 4 + 4j, 9j)], before=-2 + 0j)
    7.0
    """
    ends = [before, *(leg.end for leg in legs)]
    starts = [*(leg.start for leg in legs), after]
    return sum(_apart(a, b) for a, b in zip(ends, starts, strict=True))


def routed(legs: Sequence[Leg], before: _Place = None, after: _Place = None) -> list[Leg]:
    """The lines on a way that is never longer than the one they come on, each in whichever direction is shorter.

    ``before`` is where the way comes from and ``after`` where it goes on to; None where that does not matter.

    >>> dots = [Leg(i, complex(x), complex(x)) for i, x in enumerate((0, 5, 2, 9))]
    >>> [leg.index for leg in routed(dots, before=0j)]
    [0, 2, 1, 3]
    """
    nearest = nearest_ends(legs)
    begun = (list(legs), _nearest_next(legs, before, _both_ways))
    return _shorter([_improved(way, nearest, before, after) for way in begun], before, after)


def ordered(legs: Sequence[Leg], before: _Place = None, after: _Place = None) -> list[Leg]:
    """The lines, each in its own direction, in an order whose way is never longer than that of the order given.

    >>> runs = [Leg(i, complex(x), complex(x + 1)) for i, x in enumerate((6, 0, 2))]
    >>> [leg.index for leg in ordered(runs, before=0j)]
    [1, 2, 0]
    """
    begun = (list(legs), list(reversed(legs)), _nearest_next(legs, before, _one_way))
    return _shorter([_reordered(way, before, after) for way in begun], before, after)


def nearest_ends(legs: Sequence[Leg]) -> dict[int, float]:
    """How near to an end of each line the nearest end of another lies, mm; infinite where there is no other.

    >>> nearest_ends([Leg(0, 0j, 1 + 0j), Leg(1, 4 + 0j, 9 + 0j)])
    {0: 3.0, 1: 3.0}
    """
    found = {leg.index: inf for leg in legs}
    ends = sorted((end.real, end.imag, leg.index) for leg in legs for end in (leg.start, leg.end))
    for i, (x, y, index) in enumerate(ends):
        for side in (ends[i + 1 :], ends[:i][::-1]):
            for other_x, other_y, other in side:
                if abs(other_x - x) >= found[index]:
                    break
                if other != index:
                    found[index] = min(found[index], hypot(other_x - x, other_y - y))
    return found


def _apart(a: _Place, b: _Place) -> float:
    return 0.0 if a is None or b is None else abs(a - b)


def _shorter(ways: Sequence[list[Leg]], before: _Place, after: _Place) -> list[Leg]:
    """The first of the shortest; what rounding alone tells apart is as long."""
    return min(ways, key=lambda way: round(length(way, before, after), 9))


def _one_way(leg: Leg) -> tuple[Leg, ...]:
    return (leg,)


def _both_ways(leg: Leg) -> tuple[Leg, ...]:
    return leg, leg.back()


def _nearest_next(legs: Sequence[Leg], before: _Place, ways: _Ways) -> list[Leg]:
    """Always the line that begins nearest next, of equals the first; the first line first if nothing is before."""
    left = list(legs) if before is not None else list(legs[1:])
    way = list(legs[:1]) if before is None else []
    at = way[0].end if way else before
    while left:
        every = ((i, leg) for i, own in enumerate(left) for leg in ways(own))
        place, leg = min(every, key=lambda pair: _apart(pair[1].start, at))
        way.append(leg)
        at = leg.end
        del left[place]
    return way


def _improved(way: list[Leg], nearest: Mapping[int, float], before: _Place, after: _Place) -> list[Leg]:
    while True:
        loose = _loose(way, nearest, before, after)
        shorter = _turned_round(way, before, after, loose)
        if shorter is None:
            shorter = _moved_elsewhere(way, before, after, _Search(_lengths(loose), frozenset(loose), turning=True))
        if shorter is None:
            return way
        way = shorter


def _reordered(way: list[Leg], before: _Place, after: _Place) -> list[Leg]:
    search = _Search(range(1, len(way)), frozenset(range(len(way) + 1)), turning=False)
    while (shorter := _moved_elsewhere(way, before, after, search)) is not None:
        way = shorter
    return way


def _loose(way: Sequence[Leg], nearest: Mapping[int, float], before: _Place, after: _Place) -> list[int]:
    """The steps of the way, by the number of the line they lead to, that are longer than they would have to be.

    Every other step leads between two lines that are each other's nearest. A change takes steps away and puts as many
    in their place between the same ends. Each of these is at least as long as the way from either of its lines to its
    nearest, so a change can save only where it takes a loose step away.
    """
    steps = [0] if before is not None else []
    for i in range(1, len(way)):
        step = abs(way[i].start - way[i - 1].end)
        if step > min(nearest[way[i].index], nearest[way[i - 1].index]) + _GAIN:
            steps.append(i)
    return [*steps, len(way)] if after is not None else steps


def _turned_round(way: list[Leg], before: _Place, after: _Place, loose: Sequence[int]) -> list[Leg] | None:
    """The way with the part turned round that saves most at the first loose step where any does; None if none."""
    ends = [before, *(leg.end for leg in way)]
    starts = [*(leg.start for leg in way), after]
    steps = [_apart(a, b) for a, b in zip(ends, starts, strict=True)]
    for one in loose:
        best, part = -_GAIN, None
        for other in range(len(way) + 1):
            i, j = (one, other) if one < other else (other, one)
            # The lines i to j - 1 turned round: their last is reached from before them, their first leads on.
            change = _apart(ends[i], ends[j]) + _apart(starts[i], starts[j]) - steps[i] - steps[j]
            if change < best and i != j:
                best, part = change, (i, j)
        if part is not None:
            i, j = part
            return [*way[:i], *(leg.back() for leg in reversed(way[i:j])), *way[j:]]
    return None


def _lengths(loose: Sequence[int]) -> Sequence[int]:
    """Few, or as many as lie between two loose steps."""
    return sorted({*range(1, _SHORT + 1), *(b - a for a, b in pairwise(loose))})


def _moved_elsewhere(way: list[Leg], before: _Place, after: _Place, search: _Search) -> list[Leg] | None:
    """The way with the first part found put in where it is shorter; None if there is none."""
    for i, j in _parts(len(way), search.lengths):
        part = way[i:j]
        left = way[i - 1].end if i else before
        right = way[j].start if j < len(way) else after
        saved = _apart(left, part[0].start) + _apart(part[-1].end, right) - _apart(left, right)
        if saved <= _GAIN:
            continue
        parts = [part, [leg.back() for leg in reversed(part)]] if search.turning else [part]
        anywhere = i in search.loose or j in search.loose
        for k in range(len(way) + 1) if anywhere else sorted(search.loose):
            if i <= k <= j:
                continue
            p = way[k - 1].end if k else before
            q = way[k].start if k < len(way) else after
            most = saved + _apart(p, q) - _GAIN
            for each in parts:
                if _apart(p, each[0].start) + _apart(each[-1].end, q) < most:
                    return _put_in(way, i, j, k, each)
    return None


def _put_in(way: list[Leg], i: int, j: int, k: int, part: list[Leg]) -> list[Leg]:
    """The way without the lines i to j - 1, and ``part`` before what was the line k."""
    if k < i:
        return [*way[:k], *part, *way[k:i], *way[j:]]
    return [*way[:i], *way[j:k], *part, *way[k:]]


def _parts(size: int, lengths: Sequence[int]) -> Iterator[tuple[int, int]]:
    """The first line of each part and the first after it."""
    for many in lengths:
        for i in range(size - many + 1):
            yield i, i + many
