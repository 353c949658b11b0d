"""Quick boxes round segments, to find which of many can meet at all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.geometry.point import COINCIDENT
from patternforge.geometry.segment import Segment

__all__ = ["Box", "loose_box", "touching_pairs"]

Box = tuple[float, float, float, float]  # left, bottom, right, top; mm


def loose_box(s: Segment) -> Box:
    """A box that holds the segment; for an arc a little larger than need be, which is quicker than the smallest.

    >>> from patternforge.geometry.point import Point
    >>> loose_box(Segment(Point(4, 0), Point(0, 0), 0.5))
    (-1.0, -1.0, 5.0, 1.0)
    """
    rise = abs(s.bulge) * s.chord / 2  # no point of an arc lies further from its chord than its middle
    (x0, x1), (y0, y1) = sorted((s.start.x, s.end.x)), sorted((s.start.y, s.end.y))
    return x0 - rise, y0 - rise, x1 + rise, y1 + rise


def touching_pairs(boxes: Sequence[Box]) -> Iterator[tuple[int, int]]:
    """The index pairs of the boxes that overlap or touch (within 1e-9 mm), each pair once.

    >>> list(touching_pairs([(0, 0, 2, 2), (1, 1, 3, 3), (5, 5, 6, 6)]))
    [(0, 1)]
    """
    order = sorted(range(len(boxes)), key=lambda i: boxes[i][0])
    for place, i in enumerate(order):
        _, y0, x1, y1 = boxes[i]
        for j in order[place + 1 :]:
            left, bottom, _, top = boxes[j]
            if left > x1 + COINCIDENT:
                break
            if bottom <= y1 + COINCIDENT and top >= y0 - COINCIDENT:
                yield i, j
