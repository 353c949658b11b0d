"""Circles reckoned from a chord."""

from __future__ import annotations

import pytest

from patternforge.geometry.circle import Circle, circle_meetings
from patternforge.geometry.point import Point

FIVE = Circle(seat=Point(0, 0), normal=Point(0, 1), rise=3, half_chord=4)  # radius 5 round (0, 3)


def test_centre_and_radius_follow_from_the_chord() -> None:
    assert (FIVE.centre, FIVE.radius) == (Point(0, 3), 5)


@pytest.mark.parametrize(
    ("p", "power", "distance"), [((4, 0), 0, 0), ((0, 3), -25, 5), ((0, 18), 200, 10), ((0, 6), -16, 2)]
)
def test_power_and_distance_agree(p: tuple[float, float], power: float, distance: float) -> None:
    assert FIVE.power(Point(*p)) == power
    assert FIVE.distance_to(Point(*p)) == distance


def test_a_line_cuts_touches_or_misses() -> None:
    across = Point(1, 0)
    assert FIVE.line_meetings(Point(7, 0), across, 1e-9) == [Point(-4, 0), Point(4, 0)]
    assert FIVE.line_meetings(Point(7, 8), across, 1e-9) == [Point(0, 8)]
    assert FIVE.line_meetings(Point(7, 8.1), across, 1e-9) == []


@pytest.mark.parametrize(
    ("distance", "count"), [(0.9, 0), (1, 1), (5, 2), (7, 2), (11, 1), (11.1, 0), (1 + 5e-10, 1), (11 - 5e-10, 1)]
)
def test_circles_of_five_and_six_touch_at_one_and_eleven(distance: float, count: int) -> None:
    six = Circle(seat=Point(0, distance), normal=Point(0, 1), rise=3, half_chord=27**0.5)
    for found in (circle_meetings(FIVE, six), circle_meetings(six, FIVE)):
        assert found is not None
        assert len(found) == count
        assert all(max(FIVE.distance_to(p), six.distance_to(p)) < 1e-9 for p in found)


def test_one_circle_from_two_chords_is_one_circle() -> None:
    assert circle_meetings(FIVE, Circle(Point(0, 6), Point(0, -1), 3, 4)) is None
    assert circle_meetings(FIVE, Circle(Point(0, 6), Point(0, -1), 3, 3)) == []


def test_a_circle_of_ten_kilometres_still_knows_its_rise() -> None:
    flat = Circle(seat=Point(50, 0), normal=Point(0, 1), rise=1e7, half_chord=50)
    depth = 50**2 / 2e7
    assert flat.distance_to(Point(50, 0)) == pytest.approx(depth, rel=1e-9)
    left, right = flat.line_meetings(Point(-7, 0), Point(1, 0), 1e-2)
    assert left.distance_to(Point(0, 0)) < 1e-9
    assert right.distance_to(Point(100, 0)) < 1e-9
