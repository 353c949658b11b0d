"""Where two segments meet."""

from __future__ import annotations

import math

import pytest

from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment, intersections

LEVEL = Segment(Point(0, 0), Point(10, 0))
DISC = Segment(Point(-5, 0), Point(5, 0), 1.0)  # lower half of the circle of radius 5 round the origin


def meet(a: Segment, b: Segment, *expected: tuple[float, float]) -> bool:
    """Whether a and b meet in the expected points and in no other, asked both ways round."""
    for found in (intersections(a, b), intersections(b, a), intersections(a.reversed(), b)):
        if len(found) != len(expected):
            return False
        if any(min(p.distance_to(Point(*e)) for p in found) > 1e-9 for e in expected):
            return False
    return True


@pytest.mark.parametrize(
    ("other", "expected"),
    [
        (Segment(Point(3, -1), Point(3, 1)), [(3, 0)]),
        (Segment(Point(3, 0), Point(3, 1)), [(3, 0)]),
        (Segment(Point(10, 0), Point(10, 1)), [(10, 0)]),
        (Segment(Point(10.001, -1), Point(10.001, 1)), []),
        (Segment(Point(3, 0.001), Point(3, 1)), []),
        (Segment(Point(0, 1), Point(10, 1)), []),
        (Segment(Point(4, 0), Point(14, 0)), [(4, 0), (10, 0)]),
        (Segment(Point(7, 0), Point(2, 0)), [(2, 0), (7, 0)]),
        (Segment(Point(10, 0), Point(14, 0)), [(10, 0)]),
        (Segment(Point(11, 0), Point(14, 0)), []),
    ],
)
def test_lines_cross_touch_overlap_or_miss(other: Segment, expected: list[tuple[float, float]]) -> None:
    assert meet(LEVEL, other, *expected)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (Segment(Point(3, -9), Point(3, 9)), [(3, -4)]),
        (Segment(Point(-9, -3), Point(9, -3)), [(-4, -3), (4, -3)]),
        (Segment(Point(0, -3), Point(9, -3)), [(4, -3)]),
        (Segment(Point(-9, 3), Point(9, 3)), []),
        (Segment(Point(-9, -5), Point(9, -5)), [(0, -5)]),
        (Segment(Point(-9, -5.001), Point(9, -5.001)), []),
        (Segment(Point(-9, 0), Point(9, 0)), [(-5, 0), (5, 0)]),
        (Segment(Point(5, 0), Point(5, 9)), [(5, 0)]),
    ],
)
def test_a_line_crosses_touches_or_misses_an_arc(line: Segment, expected: list[tuple[float, float]]) -> None:
    assert meet(DISC, line, *expected)


@pytest.mark.parametrize(
    ("other", "expected"),
    [
        (Segment(Point(1, 0), Point(11, 0), 1.0), [(3, -4)]),
        (Segment(Point(11, 0), Point(1, 0), 1.0), []),
        (arc_segment(Point(0, -8), 5, 0.1, 3), [(-3, -4), (3, -4)]),
        (arc_segment(Point(0, -8), 3, 0.1, 3), [(0, -5)]),
        (arc_segment(Point(0, -8), 2.99, 0.1, 3), []),
        (arc_segment(Point(0, -2), 3, math.pi, 2 * math.pi), [(0, -5)]),
        (arc_segment(Point(0, 4), 9, math.pi, 2 * math.pi), [(0, -5)]),
        (arc_segment(Point(0, 0), 4, math.pi, 2 * math.pi), []),
        (arc_segment(Point(0, 0), 5, 0, math.pi), [(5, 0), (-5, 0)]),
        (arc_segment(Point(0, 0), 5, 1.5 * math.pi, 2.5 * math.pi), [(0, -5), (5, 0)]),
    ],
)
def test_arcs_cross_touch_overlap_or_miss(other: Segment, expected: list[tuple[float, float]]) -> None:
    assert meet(DISC, other, *expected)
