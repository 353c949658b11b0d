"""Where two segments come nearest to each other: every pairing of lines and arcs, by hand."""

from __future__ import annotations

import math

import pytest

from patternforge.geometry.nearest import nearest_points
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment

LEVEL = Segment(Point(0, 0), Point(10, 0))
HALF = 1.0  # bulge of a half circle


def at(*values: float) -> list[tuple[float, float]]:
    return [(values[i], values[i + 1]) for i in range(0, len(values), 2)]


def found(a: Segment, b: Segment) -> list[tuple[float, float]]:
    return [(round(p.x, 6) + 0.0, round(p.y, 6) + 0.0) for p in nearest_points(a, b)]


@pytest.mark.parametrize(
    ("a", "b", "points"),
    [
        (LEVEL, Segment(Point(12, 1), Point(12, 5)), at(10, 0, 12, 1)),
        (LEVEL, Segment(Point(4, 2), Point(7, 6)), at(4, 0, 4, 2)),
        (LEVEL, Segment(Point(4, -2), Point(4, 6)), at(4, 0, 4, 0)),
        # Beside each other from 6 to 10: the middle of that run.
        (LEVEL, Segment(Point(14, 3), Point(6, 3)), at(8, 0, 8, 3)),
        # Level with each other but apart along the way: their ends.
        (LEVEL, Segment(Point(13, 4), Point(20, 4)), at(10, 0, 13, 4)),
        # Half circles of radius 2 about (5, 5): one bows down to the line, one up from it and ends at y = 5.
        (LEVEL, Segment(Point(3, 5), Point(7, 5), HALF), at(5, 0, 5, 3)),
        (LEVEL, Segment(Point(7, 4), Point(3, 5), HALF), at(7, 0, 7, 4)),
        # Half circles of radius 2 about (0, 0) and 3 about (10, 0) that bow towards each other, and away.
        (Segment(Point(0, -2), Point(0, 2), HALF), Segment(Point(10, 3), Point(10, -3), HALF), at(2, 0, 7, 0)),
        (Segment(Point(0, 2), Point(0, -2), HALF), Segment(Point(10, 1), Point(10, 5), HALF), at(0, 2, 10, 1)),
    ],
)
def test_the_nearest_points_are_found(a: Segment, b: Segment, points: list[tuple[float, float]]) -> None:
    assert found(a, b) == points
    assert found(b, a) == points[::-1]


def test_arcs_about_one_centre_are_measured_in_the_middle_of_their_run() -> None:
    inner, outer = (arc_segment(Point(0, 0), r, 0.0, math.pi / 2) for r in (5.0, 8.0))
    p, q = nearest_points(inner, outer)
    assert p.distance_to(q) == pytest.approx(3.0)
    assert [p.norm, q.norm] == pytest.approx([5.0, 8.0])
    assert p.x == pytest.approx(p.y)


@pytest.mark.parametrize("turn", [0.3, 1.7, 4.0])
def test_no_sampled_pair_of_points_is_nearer(turn: float) -> None:
    a = arc_segment(Point(0, 0), 4.0, turn, turn + 2.0)
    b = arc_segment(Point(3, 5), 2.5, 2 * turn, 2 * turn - 3.0)
    sampled = min(
        a.point_at(a.length * i / 200).distance_to(b.point_at(b.length * j / 200))
        for i in range(201)
        for j in range(201)
    )
    p, q = nearest_points(a, b)
    assert p.distance_to(q) <= sampled + 1e-9
    assert p.distance_to(q) == pytest.approx(sampled, abs=0.05)
