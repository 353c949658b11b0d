"""How far two lines lie apart, and which stretches of the one lie off the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import ceil, inf

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

__all__ = ["TOLERANCE", "apart", "is_same", "on_other", "sets_apart", "strays"]

TOLERANCE = 0.01  # mm: what lies no farther apart is in the same place; no knife cuts truer
_PARTS = 8  # of a line or arc, whose ends are measured
_STRETCH = 1.0  # mm of a line that is told as a whole


def is_same(one: Path, other: Path) -> bool:
    """Whether two paths have the same corners one by one, within the tolerance, and the same arcs between them."""
    if len(one.segments) != len(other.segments) or one.closed != other.closed:
        return False
    pairs = zip(one.segments, other.segments, strict=True)
    return all(
        a.start.distance_to(b.start) <= TOLERANCE
        and a.end.distance_to(b.end) <= TOLERANCE
        and abs(a.bulge - b.bulge) * a.chord / 2 <= TOLERANCE
        for a, b in pairs
    )


def apart(one: Path, other: Path) -> float:
    """The largest distance, mm, from a place on either path to the nearest place on the other; the same both ways.

    Measured at the ends of all lines and arcs and at seven places between them.

    >>> from patternforge.geometry.path import polygon
    >>> apart(*(polygon([Point(0, 0), Point(x, 0), Point(x, 9)]) for x in (4, 6)))
    2.0
    """
    return max(_farthest(one, other), _farthest(other, one))


def sets_apart(some: Sequence[Path], others: Sequence[Path]) -> float:
    """The largest distance between a path and the one of the other set that is nearest to it, mm.

    0 for two empty sets; infinite where one set has more paths than the other.
    """
    if len(some) != len(others):
        return inf
    if not some:
        return 0.0
    rows = [[0.0 if is_same(a, b) else apart(a, b) for b in others] for a in some]
    nearest = [min(row) for row in rows] + [min(row[i] for row in rows) for i in range(len(others))]
    return max(nearest)


def on_other(one: Path, other: Path) -> float:
    """Length of what of a path lies on another, mm, each third of a line or arc told by its middle."""
    return sum(
        segment.length / 3
        for segment in one.segments
        for third in (1, 3, 5)
        if other.distance_to(segment.point_at(segment.length * third / 6)) <= TOLERANCE
    )


def strays(path: Path, other: Path) -> Iterator[Segment]:
    """The stretches of a path that lie off another by more than the tolerance."""
    for segment in path.segments:
        count = max(ceil(segment.length / _STRETCH), 1)
        step = segment.length / count
        off = [other.distance_to(segment.point_at((i + 0.5) * step)) > TOLERANCE for i in range(count)]
        yield from (segment.sub(i * step, j * step) for i, j in _runs(off))


def _runs(off: Sequence[bool]) -> Iterator[tuple[int, int]]:
    start = None
    for index, each in enumerate((*off, False)):
        if each and start is None:
            start = index
        if not each and start is not None:
            yield start, index
            start = None


def _farthest(one: Path, other: Path) -> float:
    return max(other.distance_to(point) for point in _places(one.segments))


def _places(segments: Iterable[Segment]) -> Iterator[Point]:
    for segment in segments:
        yield from (segment.point_at(segment.length * i / _PARTS) for i in range(_PARTS + 1))
