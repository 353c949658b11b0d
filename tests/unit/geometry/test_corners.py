"""Rounded corners."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.corners import filleted, rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Point

SQUARE = polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)])
ELL = polygon([Point(0, 0), Point(10, 0), Point(10, 4), Point(4, 4), Point(4, 10), Point(0, 10)])


def turns(path: Path) -> list[float]:
    """How much the direction changes where each segment ends."""
    pairs = zip(path.segments, path.segments[1:] + path.segments[:1], strict=True)
    return [a.tangent_at(a.length).distance_to(b.tangent_at(0)) for a, b in pairs]


def is_smooth(path: Path) -> bool:
    return all(turn < 1e-12 for turn in turns(path))


def test_a_rounded_rectangle_is_four_lines_and_four_arcs_from_the_lower_left_going_right() -> None:
    path = rounded_rectangle(0, 0, 90, 60, 5)
    assert [s.is_arc for s in path.segments] == [False, True] * 4
    assert (path.start, path.segments[0].end) == (Point(5, 0), Point(85, 0))
    assert all(s.radius == pytest.approx(5, abs=1e-12) for s in path.segments if s.is_arc)
    assert path.is_ccw
    assert is_smooth(path)
    assert (path.bounds.x0, path.bounds.y0, path.bounds.x1, path.bounds.y1) == (0, 0, 90, 60)


def test_arcs_that_just_touch_leave_no_line_between() -> None:
    assert [s.is_arc for s in rounded_rectangle(0, 0, 90, 60, 30).segments] == [False, True, True] * 2
    disc = rounded_rectangle(0, 0, 60, 60, 30)
    assert len(disc.segments) == 4
    assert disc.area == pytest.approx(900 * math.pi, abs=1e-9)
    assert len(rounded_rectangle(0, 0, 0.3, 0.2, 0.1).segments) == 6


def test_no_radius_leaves_sharp_corners() -> None:
    assert rounded_rectangle(0, 0, 10, 10, 0) == SQUARE
    assert filleted(ELL, 0) == ELL


def test_every_corner_may_have_its_own_radius() -> None:
    path = filleted(SQUARE, [0, 1, 0, 3])
    assert [round(s.radius, 9) for s in path.segments if s.is_arc] == [1, 3]
    assert path.area == pytest.approx(100 - (1 - math.pi / 4) * (1 + 9), abs=1e-12)


def test_an_inner_corner_is_rounded_the_other_way() -> None:
    path = filleted(ELL, [0, 0, 0, 2, 0, 0])
    (arc,) = (s for s in path.segments if s.is_arc)
    assert arc.bulge == pytest.approx(-math.tan(math.pi / 8))
    assert path.area == pytest.approx(ELL.area + (1 - math.pi / 4) * 4, abs=1e-12)


def test_oblique_corners_stay_tangent() -> None:
    assert is_smooth(filleted(polygon([Point(0, 0), Point(30, 5), Point(12, 26)]), 3))


def test_a_single_radius_leaves_arcs_and_straight_runs_alone() -> None:
    slot = from_vertices([(0, 0, 0), (5, 0, 0), (10, 0, 1), (10, 6, 0), (0, 6, 0)], closed=True)
    path = filleted(slot, 1)
    assert sum(s.is_arc for s in path.segments) == 3
    assert Point(5, 0) in [s.start for s in path.segments]


@pytest.mark.parametrize(
    ("radii", "why"),
    [
        (5.1, "use a smaller radius"),
        ([4, 6.1, 0, 0], "use a smaller radius"),
        (-1, "is not a corner radius"),
        (math.nan, "is not a corner radius"),
        ([1, 1], "2 radii given for 4 corners"),
    ],
)
def test_radii_that_do_not_fit_are_refused(radii: float | list[float], why: str) -> None:
    with pytest.raises(GeometryError, match=why):
        filleted(SQUARE, radii)


def test_a_corner_between_a_line_and_an_arc_is_rounded_by_the_circle_that_touches_both() -> None:
    # A half disc of radius 5 round (5, 0). A circle of 1 inside it rests on the line at y = 1, 5 - 1 = 4 from (5, 0):
    # x = 5 - sqrt(16 - 1). It touches the arc on the ray from (5, 0) through its centre.
    half = from_vertices([(0, 0, 0), (10, 0, 1)], closed=True)
    path = filleted(half, [1, 0])
    x = 5 - math.sqrt(15)
    assert path.start.x == pytest.approx(x, abs=1e-12)
    fillet = path.segments[-1]
    assert (fillet.radius, fillet.centre.x, fillet.centre.y) == pytest.approx((1, x, 1), abs=1e-12)
    assert (fillet.start.x, fillet.start.y) == pytest.approx((5 - 5 * math.sqrt(15) / 4, 5 / 4), abs=1e-12)
    assert [s.is_arc for s in path.segments] == [False, True, True]
    assert turns(path)[1] < 1e-12


def test_a_corner_between_two_arcs_is_rounded() -> None:
    # A lens of two quarter circles of radius sqrt(50), centres (5, -5) and (5, 5): a circle of 1 in its corner
    # has its centre sqrt(50) - 1 from both, so at y = 0, x = 5 - sqrt((sqrt(50) - 1)^2 - 25).
    quarter = math.tan(math.pi / 8)
    lens = from_vertices([(0, 0, quarter), (10, 0, quarter)], closed=True)
    fillet = filleted(lens, [1, 1]).segments[-1]
    x = 5 - math.sqrt((math.sqrt(50) - 1) ** 2 - 25)
    assert (fillet.radius, fillet.centre.x, fillet.centre.y) == pytest.approx((1, x, 0), abs=1e-12)
    assert is_smooth(filleted(lens, [1, 1]))


def test_an_inner_corner_beside_an_arc_is_rounded_on_its_outer_side() -> None:
    # A half circle of 3 bitten out of the upper side of a rectangle: at its rim the outline turns away from it.
    bitten = from_vertices([(0, 0, 0), (20, 0, 0), (20, 10, 0), (13, 10, -1), (7, 10, 0), (0, 10, 0)], closed=True)
    path = filleted(bitten, [0, 0, 0, 2, 2, 0])
    assert all(turn < 1e-12 for turn in turns(path)[2:6])
    assert [round(s.radius, 9) for s in path.segments if s.is_arc] == [2, 3, 2]
    # Centres 2 below the side and 3 + 2 from (10, 10): x = 10 + sqrt(25 - 4).
    assert path.segments[3].centre.x == pytest.approx(10 + math.sqrt(21), abs=1e-12)
    assert path.segments[3].centre.y == pytest.approx(8, abs=1e-12)


@pytest.mark.parametrize("radius", [2.6, 6, 60])
def test_a_radius_that_no_circle_between_line_and_arc_has_is_refused(radius: float) -> None:
    # The largest circle in a half disc of radius 5 has radius 2.5.
    half = from_vertices([(0, 0, 0), (10, 0, 1)], closed=True)
    with pytest.raises(GeometryError, match="use a smaller radius"):
        filleted(half, [radius, radius])


def test_a_radius_asked_where_nothing_can_be_rounded_is_refused() -> None:
    with pytest.raises(GeometryError, match="no corner to round"):
        filleted(polygon([Point(0, 0), Point(5, 0), Point(10, 0), Point(5, 5)]), [0, 1, 0, 0])
    half = from_vertices([(0, 0, 0), (10, 0, 0), (10, 6, 1), (0, 6, 0)], closed=True)
    with pytest.raises(GeometryError, match="no corner to round"):
        filleted(half, [0, 0, 1, 0])
    with pytest.raises(GeometryError, match="only a closed path"):
        filleted(polyline([Point(0, 0), Point(5, 0), Point(5, 5)]), 1)


@pytest.mark.parametrize("corner", [(0, 5), (5, 0), (-5, 5)])
def test_a_rectangle_without_inside_is_refused(corner: tuple[float, float]) -> None:
    with pytest.raises(GeometryError, match="has no inside"):
        rounded_rectangle(0, 0, *corner, 0)


def test_a_radius_too_small_to_be_drawn_leaves_the_corner_sharp() -> None:
    assert filleted(polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)]), 1e-10).area == 100
