"""Parallel contours, grown and shrunk."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.corners import filleted, rounded_rectangle
from patternforge.geometry.offset import Join, offset, offset_one
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.regions import fault_of

RECTANGLE = rounded_rectangle(0, 0, 90, 60, 0)
ROUNDED = rounded_rectangle(0, 0, 90, 60, 5)
ELL = polygon([Point(0, 0), Point(30, 0), Point(30, 12), Point(12, 12), Point(12, 30), Point(0, 30)])
# Two squares of 20 joined by a neck of 10 x 4, and a U whose gap is 6 wide and 20 deep.
DUMBBELL = polygon(
    Point(x, y)
    for x, y in [
        *[(0, 0), (20, 0), (20, 8), (30, 8), (30, 0), (50, 0)],
        *[(50, 20), (30, 20), (30, 12), (20, 12), (20, 20), (0, 20)],
    ]
)
CUP = polygon(Point(x, y) for x, y in [(0, 0), (26, 0), (26, 30), (16, 30), (16, 10), (10, 10), (10, 30), (0, 30)])
# A box whose inside of 20 x 20 opens upwards through a mouth 4 wide.
FLASK = polygon(
    Point(x, y)
    for x, y in [
        *[(0, 0), (30, 0), (30, 30), (17, 30), (17, 25), (25, 25)],
        *[(25, 5), (5, 5), (5, 25), (13, 25), (13, 30), (0, 30)],
    ]
)


def is_alike(path: Path, other: Path) -> bool:
    """Whether both have the same lines and arcs in the same order, vertex on vertex."""
    pairs = list(zip(path.vertices, other.vertices, strict=False))
    return len(path.vertices) == len(other.vertices) and all(a == pytest.approx(b, abs=1e-9) for a, b in pairs)


def throat(distance: float, half: float) -> float:
    """The area two arcs of radius ``distance`` leave in a throat of twice ``half``, in front of its corners."""
    under_arc = (half * math.sqrt(distance**2 - half**2) + distance**2 * math.asin(half / distance)) / 2
    return 2 * (distance * half - under_arc)


def test_shrinking_takes_the_distance_off_the_radius_of_rounded_corners() -> None:
    assert is_alike(offset_one(ROUNDED, -3), rounded_rectangle(3, 3, 87, 57, 2))


def test_shrinking_by_the_radius_or_more_leaves_sharp_corners() -> None:
    for distance in (5, 6, 20):
        inner = offset_one(ROUNDED, -distance)
        assert is_alike(inner, rounded_rectangle(distance, distance, 90 - distance, 60 - distance, 0))


def test_growing_rounds_corners_with_arcs_about_the_old_ones() -> None:
    outer = offset_one(RECTANGLE, 3)
    assert outer.area == pytest.approx(90 * 60 + 2 * 150 * 3 + math.pi * 9, abs=1e-9)
    arcs = [s for s in outer.segments if s.is_arc]
    assert len(outer.segments) == 8
    assert all(s.radius == pytest.approx(3, abs=1e-12) for s in arcs)
    assert min(s.centre.distance_to(Point(90, 60)) for s in arcs) < 1e-12


def test_growing_sharp_keeps_corners() -> None:
    assert offset_one(RECTANGLE, 3, Join.SHARP) == rounded_rectangle(-3, -3, 93, 63, 0)
    grown = offset_one(ELL, 2, Join.SHARP)
    assert [s.is_arc for s in grown.segments] == [False] * 6
    assert grown.area == pytest.approx(ELL.area + 120 * 2 + 4 * 4)


def test_inner_corners_are_rounded_when_shrinking_and_sharp_when_asked() -> None:
    rounded, sharp = offset_one(ELL, -2), offset_one(ELL, -2, Join.SHARP)
    assert [s.is_arc for s in rounded.segments].count(True) == 1
    assert not any(s.is_arc for s in sharp.segments)
    assert sharp.area - rounded.area == pytest.approx(-(4 - math.pi), abs=1e-12)


def test_a_sharp_corner_at_an_arc_goes_on_along_its_tangent() -> None:
    half = from_vertices([(-5, 0, 1), (5, 0, 0)], closed=True)
    grown = offset_one(half, 2, Join.SHARP)
    box = grown.bounds
    assert (box.x0, box.y0, box.x1, box.y1) == pytest.approx((-7, -7, 7, 2), abs=1e-9)
    assert [s.is_arc for s in grown.segments].count(True) == 1
    assert grown.area == pytest.approx(math.pi * 49 / 2 + 28, abs=1e-9)


def test_the_direction_of_the_path_is_kept_and_does_not_turn_the_distance_round() -> None:
    for path in (ROUNDED, ROUNDED.reversed()):
        assert offset_one(path, 2).is_ccw is path.is_ccw
        assert abs(offset_one(path, 2).area) > abs(path.area) > abs(offset_one(path, -2).area)


def test_a_narrow_neck_splits_the_path() -> None:
    parts = offset(DUMBBELL, -3)
    assert [p.area for p in parts] == pytest.approx([14 * 14 + throat(3, 2)] * 2)
    with pytest.raises(GeometryError, match="falls into 2 contours"):
        offset_one(DUMBBELL, -3)


def test_a_neck_of_twice_the_distance_leaves_no_thread() -> None:
    assert [p.area for p in offset(DUMBBELL, -2)] == pytest.approx([16 * 16 + throat(2, 2)] * 2)


def test_too_great_a_distance_leaves_nothing() -> None:
    assert offset(RECTANGLE, -30) == ()
    assert offset(rounded_rectangle(0, 0, 60, 60, 0), -30.02) == ()
    assert offset(RECTANGLE, -31) == ()
    assert offset(ROUNDED, -30) == ()
    with pytest.raises(GeometryError, match="vanishes when offset by -31 mm"):
        offset_one(RECTANGLE, -31)


def test_growing_closes_a_gap_of_twice_the_distance() -> None:
    for distance in (3, 4):
        closed = offset_one(CUP, distance)
        assert closed.bounds.y1 == pytest.approx(30 + distance)
        assert not fault_of(closed)
        assert closed.distance_to(Point(13, 20)) > 5


def test_growing_over_a_narrow_mouth_leaves_the_gap_behind_it_running_the_other_way() -> None:
    outer, gap = offset(FLASK, 3)
    assert outer.is_ccw
    assert not gap.is_ccw
    assert gap.area == pytest.approx(-(14 * 14 + throat(3, 2)))


def test_a_gap_closed_in_one_point_is_a_contour_of_its_own() -> None:
    lips = [(30, 30), (17, 27.5), (25, 25), (25, 5), (5, 5), (5, 25), (13, 27.5), (0, 30)]
    outer, gap = offset(polygon(Point(x, y) for x, y in [(0, 0), (30, 0), *lips]), 2)
    assert outer.distance_to(Point(15, 27.5)) < 1e-6
    assert gap.distance_to(Point(15, 27.5)) < 1e-6
    assert [fault_of(outer), fault_of(gap)] == [None, None]
    assert outer.area > 0 > gap.area


def test_a_crescent_closes_between_its_tips() -> None:
    # Two arcs of 320 and 310 degrees over one chord; each tip lies in the other's reach, between the same two arcs.
    crescent = from_vertices([(3.42, 0, math.tan(math.radians(80))), (-3.42, 0, -math.tan(math.radians(77.5)))], True)
    assert fault_of(crescent) is None
    gap, outer = sorted(offset(crescent, 3.6), key=lambda contour: contour.area)
    assert outer.area > crescent.area > 0 > gap.area
    for contour in (outer, gap):
        distances = [crescent.distance_to(contour.point_at(contour.length * i / 200)) for i in range(200)]
        assert distances == pytest.approx([3.6] * 200, abs=1e-9)


def test_an_arc_smaller_than_the_distance_disappears() -> None:
    bay = from_vertices([(0, 0, 0), (60, 0, 0), (60, 30, 0), (32, 30, -1), (28, 30, 0), (0, 30, 0)], closed=True)
    grown = offset_one(bay, 3)
    assert not any(s.is_arc and s.bulge < 0 for s in grown.segments)
    assert grown.area < rounded_rectangle(0, 0, 60, 30, 0).area + 180 * 3 + math.pi * 9
    assert not fault_of(grown)


def test_a_circle_of_two_arcs_stays_a_circle_of_two_arcs() -> None:
    circle = from_vertices([(-5, 0, 1), (5, 0, 1)], closed=True)
    for distance in (2, -2):
        grown = offset_one(circle, distance)
        assert [s.radius for s in grown.segments] == pytest.approx([5 + distance] * 2)
    assert offset(circle, -5) == ()
    assert offset(circle, -7) == ()


def test_collinear_neighbours_stay_together() -> None:
    path = polygon([Point(0, 0), Point(5, 0), Point(10, 0), Point(10, 10), Point(0, 10)])
    assert offset_one(path, -1).vertices[:3] == ((1, 1, 0), (5, 1, 0), (9, 1, 0))


def test_no_distance_changes_nothing() -> None:
    assert offset(ELL, 0) == (ELL,)


@pytest.mark.parametrize("radius", [0, 1, 2, 3])
def test_a_real_outline_shrinks_and_grows_soundly(radius: float) -> None:
    for outline in (ELL, DUMBBELL, CUP):
        rounded = filleted(outline, radius) if radius < 3 or outline is ELL else outline
        for distance in (-2.5, -1, 1, 2.5):
            assert [fault_of(path) for path in offset(rounded, distance)].count(None) == len(
                offset(rounded, distance)
            )


def test_a_needle_has_no_sharp_tip() -> None:
    needle = polygon([Point(0, 0), Point(100, -3), Point(100, 3)])
    assert offset_one(needle, 1).bounds.x0 == pytest.approx(-1)
    with pytest.raises(GeometryError, match=r"corner of 3\.44 degrees at \(0, 0\) is too sharp"):
        offset(needle, 1, Join.SHARP)


@pytest.mark.parametrize("distance", [math.nan, math.inf])
def test_a_distance_must_be_a_number(distance: float) -> None:
    with pytest.raises(GeometryError, match="must be a number"):
        offset(RECTANGLE, distance)


def test_an_open_path_has_no_contours() -> None:
    with pytest.raises(GeometryError, match="only a closed path"):
        offset(polyline([Point(0, 0), Point(5, 0)]), 1)
