"""Relief holes in corners that turn in."""

from __future__ import annotations

from math import degrees, pi, tan

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.path import from_vertices, polygon
from patternforge.geometry.point import Point
from patternforge.geometry.regions import fault_of
from patternforge.geometry.relief import reentrant, relieved

STEP = polygon([Point(0, 0), Point(9, 0), Point(9, 9), Point(4, 9), Point(4, 4), Point(0, 4)])


@pytest.mark.parametrize(
    ("after", "angle"),
    [(Point(1, 0), 180), (Point(0, 1), 90), (Point(0, -1), 270), (Point(-1, -1), 315)],
    ids=["straight on", "to the left", "to the right", "sharp right"],
)
def test_the_angle_of_the_area_is_above_180_where_it_turns_in(after: Point, angle: float) -> None:
    assert degrees(reentrant(Point(1, 0), after.unit())) == pytest.approx(angle)


def test_three_quarters_of_the_hole_are_cut_out_of_a_right_corner() -> None:
    cut = relieved(STEP, [Point(4, 4)], 1.5)
    assert STEP.area - cut.area == pytest.approx(0.75 * pi * 1.5**2)
    (rim,) = [segment for segment in cut.segments if segment.is_arc]
    assert rim.centre.distance_to(Point(4, 4)) < 1e-9
    assert rim.radius == pytest.approx(1.5)
    assert rim.bulge == pytest.approx(-tan(3 * pi / 8))
    assert fault_of(cut) is None


def test_without_a_radius_or_a_place_nothing_is_cut() -> None:
    assert relieved(STEP, [Point(4, 4)], 0.0) is STEP
    assert relieved(STEP, [], 1.0) is STEP


def test_a_hole_as_large_as_a_side_is_refused() -> None:
    with pytest.raises(GeometryError, match=r"take 4\.00 mm from a side of 4\.00 mm"):
        relieved(STEP, [Point(4, 4)], 4.0)


def test_a_place_without_a_corner_is_refused() -> None:
    with pytest.raises(GeometryError, match="no corner stands at"):
        relieved(STEP, [Point(5, 5)], 1.0)


def test_a_corner_with_an_arc_is_refused() -> None:
    bowed = from_vertices([(0, 0, 0), (9, 0, 0), (9, 9, 0), (4, 9, 0), (4, 4, 0.2), (0, 4, 0)], closed=True)
    with pytest.raises(GeometryError, match="an arc meets the corner"):
        relieved(bowed, [Point(4, 4)], 1.0)
