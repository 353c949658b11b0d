"""Closed paths laid on one another: every turn and shift that brings the one to lie on the other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import Transform, flipped_x, translation

__all__ = ["laid_on", "laid_over", "lies_on", "stretches"]

_SAME = 1e-6  # mm: what is left of rounding where two segments are parts of one line or arc


def laid_on(one: Path, other: Path, tolerance: float) -> Iterator[Transform]:
    """Every turn and shift that lays closed ``one`` on closed ``other``, nowhere more than ``tolerance`` mm off.

    Both run the same way round. Where a side is divided makes no difference. Of a whole circle only the shift is
    given. The turn is the one that leaves the least squares at the corners (the orthogonal Procrustes problem in the
    plane, whose solution is the argument of one complex sum).

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> card = rounded_rectangle(0, 0, 85.6, 53.98, 3.18)
    >>> len(list(laid_on(card, card, 0.01)))
    2
    """
    mine, theirs = stretches(one), stretches(other)
    if len(mine) != len(theirs) or abs(one.length - other.length) > 2 * len(mine) * tolerance:
        return
    if not mine:
        a, b = one.segments[0], other.segments[0]
        if abs(a.radius - b.radius) <= tolerance:
            yield translation(b.centre.x - a.centre.x, b.centre.y - a.centre.y)
        return
    marks = _marks(mine)
    for k in range(len(theirs)):
        wanted = theirs[k:] + theirs[:k]
        if all(_alike(a, b, tolerance) for a, b in zip(mine, wanted, strict=True)):
            turn = _least_squares(marks, _marks(wanted))
            if turn is not None and _lie(turn, marks, _marks(wanted), tolerance):
                yield turn


def laid_over(one: Path, other: Path, tolerance: float) -> Iterator[Transform]:
    """As ``laid_on``, with ``one`` turned over first: every transform is a mirror.

    >>> from patternforge.geometry.path import polygon
    >>> hook = polygon([Point(0, 0), Point(4, 0), Point(4, 1), Point(1, 1), Point(1, 7), Point(0, 7)])
    >>> len(list(laid_over(hook, hook, 0.01))), len(list(laid_over(hook, flipped_x().path(hook).reversed(), 0.01)))
    (0, 1)
    """
    over = flipped_x()
    for turn in laid_on(over.path(one).reversed(), other, tolerance):
        yield over.then(turn)


def lies_on(one: Path, other: Path, tolerance: float) -> bool:
    """Whether both paths run along each other: ends and middles of the segments of each within ``tolerance`` mm.

    >>> from patternforge.geometry.path import polyline
    >>> slit = polyline([Point(0, 0), Point(2, 0)])
    >>> lies_on(slit, slit.reversed(), 0.01), lies_on(slit, polyline([Point(0, 0), Point(2, 0.1)]), 0.01)
    (True, False)
    """
    return all(b.distance_to(at) <= tolerance for a, b in ((one, other), (other, one)) for at in _points(a))


def _points(path: Path) -> Iterator[Point]:
    yield path.end
    for segment in path.segments:
        yield segment.start
        yield segment.point_at(segment.length / 2)


def stretches(path: Path) -> tuple[Segment, ...]:
    """The lines and arcs of a closed path, parts of one line or arc joined; none for a whole circle.

    >>> from patternforge.geometry.path import polygon
    >>> len(stretches(polygon([Point(0, 0), Point(2, 0), Point(4, 0), Point(4, 3)])))
    3
    """
    segments = path.segments
    begun = next((i for i in range(len(segments)) if not _goes_on(segments[i - 1], segments[i])), None)
    if begun is None:
        return ()
    joined = [segments[begun]]
    for segment in segments[begun + 1 :] + segments[:begun]:
        if _goes_on(joined[-1], segment):
            joined[-1] = _joined(joined[-1], segment)
        else:
            joined.append(segment)
    return tuple(joined)


def _goes_on(one: Segment, following: Segment) -> bool:
    """Whether a segment runs on in the line or the arc of the one before it."""
    if one.is_arc != following.is_arc:
        return False
    if not one.is_arc:
        way, whole = one.end - one.start, following.end - one.start
        return abs(way.cross(whole)) <= _SAME * max(whole.norm, _SAME) and way.dot(following.end - one.end) > 0
    same = one.centre.distance_to(following.centre) <= _SAME and abs(one.radius - following.radius) <= _SAME
    return same and one.bulge * following.bulge > 0


def _joined(one: Segment, following: Segment) -> Segment:
    return Segment(one.start, following.end, math.tan((one.sweep + following.sweep) / 4))


def _alike(one: Segment, other: Segment, tolerance: float) -> bool:
    return one.is_arc == other.is_arc and abs(one.chord - other.chord) <= 2 * tolerance


def _marks(run: Sequence[Segment]) -> list[complex]:
    """Where each stretch begins, and the middle of each arc."""
    places = [s.start for s in run] + [s.point_at(s.length / 2) for s in run if s.is_arc]
    return [complex(at.x, at.y) for at in places]


def _least_squares(marks: Sequence[complex], wanted: Sequence[complex]) -> Transform | None:
    count = len(marks)
    middle, goal = sum(marks) / count, sum(wanted) / count
    turn = sum((p - middle).conjugate() * (q - goal) for p, q in zip(marks, wanted, strict=True))
    if abs(turn) <= _SAME:
        return None
    way = turn / abs(turn)
    shift = goal - way * middle
    return Transform(way.real, way.imag, -way.imag, way.real, shift.real, shift.imag)


def _lie(turn: Transform, marks: Sequence[complex], wanted: Sequence[complex], tolerance: float) -> bool:
    way, shift = complex(turn.a, turn.b), complex(turn.e, turn.f)
    return all(abs(way * p + shift - q) <= tolerance for p, q in zip(marks, wanted, strict=True))
