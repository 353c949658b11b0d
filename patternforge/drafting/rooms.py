"""Where on a piece there is room for words: upright boxes that keep clear of every line and hole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import ceil

from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import Transform

__all__ = ["Barrier", "Floor", "disc_barrier", "floor", "is_free", "path_barriers", "room"]

_BAND = 0.5  # height of the strips that room is looked for in, mm
_FLAT = 0.005  # how far an arc may bulge beyond the chords it is judged by, mm

Interval = tuple[float, float]
Strip = tuple[Interval, ...]


@dataclass(frozen=True, slots=True)
class Barrier:
    """What words must not touch: everything nearer than ``reach`` mm to the straight line from ``a`` to ``b``.

    ``bounds`` is true of lines that part inside from outside.
    """

    a: Point
    b: Point
    reach: float
    bounds: bool = False

    def moved(self, transform: Transform) -> Barrier:
        """The barrier carried by an isometry."""
        return Barrier(transform.point(self.a), transform.point(self.b), self.reach, self.bounds)


@dataclass(frozen=True, slots=True)
class Floor:
    """The inside of a piece as strips from ``low`` upwards, each with the x intervals that no barrier touches."""

    low: float
    strips: tuple[Strip, ...]


def path_barriers(path: Path, clear: float, *, bounds: bool) -> tuple[Barrier, ...]:
    """A path as barriers that keep words ``clear`` mm away from it."""
    points = flattened(path, _FLAT)
    corners = (*points, points[0]) if path.closed and points[0] != points[-1] else points
    return tuple(Barrier(a, b, clear + _FLAT, bounds) for a, b in pairwise(corners))


def disc_barrier(centre: Point, reach: float) -> Barrier:
    """A disc of radius ``reach`` mm as a barrier."""
    return Barrier(centre, centre, reach)


def floor(barriers: Sequence[Barrier]) -> Floor:
    """All room between the barriers, inside the lines that bound it; empty when nothing bounds it."""
    ends = [p.y for barrier in barriers if barrier.bounds for p in (barrier.a, barrier.b)]
    if not ends:
        return Floor(0.0, ())
    low = min(ends)
    count = ceil((max(ends) - low) / _BAND)
    rims: list[list[float]] = [[] for _ in range(count)]
    taken: list[list[Interval]] = [[] for _ in range(count)]
    for barrier in barriers:
        touched = _strips_touched(barrier, low, count)
        for index, interval in zip(touched, _taken(barrier, low, touched), strict=True):
            taken[index].append(interval)
        for index, x in _crossings(barrier, low, touched) if barrier.bounds else ():
            rims[index].append(x)
    return Floor(low, tuple(_free(*both) for both in zip(rims, taken, strict=True)))


def _strips_touched(barrier: Barrier, low: float, count: int) -> range:
    y0, y1 = sorted((barrier.a.y, barrier.b.y))
    first = int((y0 - barrier.reach - low) // _BAND)
    last = int((y1 + barrier.reach - low) // _BAND)
    return range(max(first, 0), min(last + 1, count))


def _free(rims: list[float], taken: list[Interval]) -> Strip:
    """The inside at half height of a strip, less what any barrier takes of the whole strip."""
    rims.sort()
    taken.sort()
    return tuple(free for inside in zip(rims[::2], rims[1::2], strict=True) for free in _left_of(inside, taken))


def _crossings(barrier: Barrier, low: float, touched: range) -> Iterator[tuple[int, float]]:
    """Where a barrier crosses the middles of strips: their numbers, and x."""
    a, b = barrier.a, barrier.b
    for index in touched:
        middle = low + index * _BAND + _BAND / 2
        if (a.y <= middle) != (b.y <= middle):
            yield index, _x_at(a, b, middle)


def _x_at(a: Point, b: Point, y: float) -> float:
    return a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)


def _taken(barrier: Barrier, low: float, touched: range) -> list[Interval]:
    """The x interval of the part of a barrier in reach of each strip, its reach added at both ends."""
    a, b, reach = barrier.a, barrier.b, barrier.reach
    if a.x == b.x or a.y == b.y:
        return [(min(a.x, b.x) - reach, max(a.x, b.x) + reach)] * len(touched)
    foot, head = (a, b) if a.y < b.y else (b, a)
    found = []
    for index in touched:
        y0 = low + index * _BAND
        one = _x_at(a, b, min(max(y0 - reach, foot.y), head.y))
        other = _x_at(a, b, min(max(y0 + _BAND + reach, foot.y), head.y))
        found.append((one - reach, other + reach) if one < other else (other - reach, one + reach))
    return found


def _left_of(inside: Interval, taken: Sequence[Interval]) -> list[Interval]:
    free, start = [], inside[0]
    for x0, x1 in taken:
        if x0 > start and min(x0, inside[1]) > start:
            free.append((start, min(x0, inside[1])))
        start = max(start, x1)
    return [*free, (start, inside[1])] if start < inside[1] else free


def is_free(ground: Floor, box: Bounds) -> bool:
    """Whether no barrier touches ``box`` and it lies inside the lines that bound the floor.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> ground = floor(path_barriers(rounded_rectangle(0, 0, 90, 60, 5), 1.0, bounds=True))
    >>> is_free(ground, Bounds(4, 4, 30, 30)), is_free(ground, Bounds(0.5, 4, 30, 30))
    (True, False)
    """
    first, last = int((box.y0 - ground.low) // _BAND), ceil((box.y1 - ground.low) / _BAND)
    if first < 0 or last > len(ground.strips):
        return False
    return all(any(x0 <= box.x0 and box.x1 <= x1 for x0, x1 in strip) for strip in ground.strips[first:last])


def room(ground: Floor, width: float, height: float) -> Bounds | None:
    """A box of ``width`` x ``height`` mm that nothing touches, amid the tallest stretch of room, or None.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> ground = floor(path_barriers(rounded_rectangle(0, 0, 90, 60, 5), 1.0, bounds=True))
    >>> room(ground, 40, 10)
    Bounds(x0=25.0, y0=25.0, x1=65.0, y1=35.0)
    >>> room(ground, 89, 10) is None
    True
    """
    deep = ceil(height / _BAND)
    wide = [tuple(free for free in strip if free[1] - free[0] >= width) for strip in ground.strips]
    widest = {i: _widest(free) for i, free in enumerate(_stretches(wide, deep, width)) if free}
    if not widest:
        return None
    runs = [[i for _, i in run] for _, run in groupby(enumerate(widest), key=lambda pair: pair[1] - pair[0])]
    tallest = max(runs, key=len)
    start = tallest[len(tallest) // 2]
    x, y = sum(widest[start]) / 2, ground.low + (start + deep / 2) * _BAND
    return Bounds(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def _stretches(strips: Sequence[Strip], deep: int, width: float) -> list[Strip]:
    """What is free in each ``deep`` strips that follow one another, in intervals of at least ``width`` mm.

    Any such stretch is the end of one block of ``deep`` strips and the beginning of the next, so the common parts
    from both ends of every block are all that is needed.
    """
    begun, ended = list(strips), list(strips)
    for i in range(1, len(strips)):
        begun[i] = _common(begun[i - 1], strips[i], width) if i % deep else strips[i]
    for i in reversed(range(len(strips) - 1)):
        ended[i] = _common(ended[i + 1], strips[i], width) if (i + 1) % deep else strips[i]
    return [_common(ended[i], begun[i + deep - 1], width) for i in range(len(strips) - deep + 1)]


def _common(a: Strip, b: Strip, width: float) -> Strip:
    found = []
    for a0, a1 in a:
        for b0, b1 in b:
            x0, x1 = a0 if a0 > b0 else b0, a1 if a1 < b1 else b1
            if x1 - x0 >= width:
                found.append((x0, x1))
    return tuple(found)


def _widest(free: Strip) -> Interval:
    # Widths are compared to a tenth of a mm, so that rounding errors never choose between mirrored places.
    return max(free, key=lambda span: (round(span[1] - span[0], 1), -span[0]))
