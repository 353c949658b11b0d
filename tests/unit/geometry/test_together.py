"""Lines and arcs that run along one another, and how near they come; values by hand."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment
from patternforge.geometry.together import nearness, shared


def line(*ends: float) -> Segment:
    return Segment(Point(*ends[:2]), Point(*ends[2:]))


def arc(radius: float, start: float, end: float, x: float = 0.0) -> Segment:
    return arc_segment(Point(x, 0), radius, start * pi / 180, end * pi / 180)


@pytest.mark.parametrize(
    ("a", "b", "length"),
    [
        (line(0, 0, 10, 0), line(0, 0, 10, 0), 10),
        (line(0, 0, 10, 0), line(10, 0, 0, 0), 10),
        (line(0, 0, 10, 0), line(4, 0.015, 7, 0.015), 3),
        (line(0, 0, 10, 0), line(-5, 0, 2, 0), 2),
        (line(0, 0, 10, 0), line(0, 0.03, 10, 0.03), None),
        (line(0, 0, 10, 0), line(10, 0, 20, 0), None),
        (line(0, 0, 10, 0), line(5, -5, 5, 5), None),
        (line(0, 0, 10, 0), line(0, 0, 10, 0.5), None),
        (arc(5, 0, 90), arc(5.01, 90, 0), 2.5 * pi),
        (arc(5, 0, 90), arc(5, 45, 180), 1.25 * pi),
        (arc(5, 0, 90), arc(5, 90, 180), None),
        (arc(5, 0, 90), arc(6, 0, 90), None),
        (line(-5, 5, 5, 5), arc(5, 45, 135), None),
        (line(4.9999, 0.03, 4.9995, 0.07), arc(5, -30, 30), sqrt(0.0004**2 + 0.04**2)),
    ],
)
def test_only_what_lies_alongside_is_shared(a: Segment, b: Segment, length: float | None) -> None:
    found = shared(a, b, 0.02)
    assert (found is None) if length is None else found is not None and found.length == pytest.approx(length)


def test_the_middle_of_what_is_shared_lies_on_it() -> None:
    found = shared(line(0, 0, 10, 0), line(4, 0, 20, 0), 0.02)
    assert found is not None
    assert found.middle == Point(7, 0)


@pytest.mark.parametrize(
    ("a", "b", "distance"),
    [
        (line(0, 0, 10, 0), line(3, 4, 8, 9), 4),
        (line(0, 0, 10, 0), line(13, 4, 20, 9), 5),
        (line(0, 0, 10, 0), line(5, -5, 5, 5), 0),
        (arc(5, 45, 135), line(-9, 7, 9, 7), 2),
        (arc(5, 45, 135), line(-9, 1, 9, 1), sqrt(12.5) - 1),
        (arc(5, -90, 90), arc(3, 90, 270, x=12), 4),
        (arc(5, 0, 180), arc(3, 0, 180), 2),
        (arc(5, 0, 180), arc(3, 180, 360), 2),
    ],
)
def test_the_distance_is_that_of_the_nearest_points(a: Segment, b: Segment, distance: float) -> None:
    for found in (nearness(a, b), nearness(b, a), nearness(a.reversed(), b)):
        assert found.distance == pytest.approx(distance, abs=1e-9)
        assert found.one.distance_to(found.other) == pytest.approx(distance, abs=1e-9)
