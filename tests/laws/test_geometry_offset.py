"""Laws of parallel contours."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.geometry.corners import filleted
from patternforge.geometry.offset import Join, offset, offset_one
from patternforge.geometry.path import Path
from patternforge.geometry.regions import fault_of
from tests.laws.geometry_shapes import convex_outlines, outlines

modest = settings(max_examples=60, deadline=None)
distances = st.one_of(st.floats(-12, -0.01), st.floats(0.01, 12))
growths = st.floats(0.01, 12)


@modest
@given(outlines(), distances)
def test_every_point_of_a_contour_lies_at_the_distance(path: Path, distance: float) -> None:
    for contour in offset(path, distance):
        for i in range(40):
            p = contour.point_at(contour.length * i / 40)
            assert path.distance_to(p) == pytest.approx(abs(distance), abs=1e-6)
        assert all(path.distance_to(s.start) == pytest.approx(abs(distance), abs=1e-6) for s in contour.segments)


@modest
@given(outlines(), distances)
def test_contours_lie_on_the_side_of_the_sign(path: Path, distance: float) -> None:
    assert all(path.contains(contour.start) is (distance < 0) for contour in offset(path, distance))


@modest
@given(outlines(), distances)
def test_contours_are_sound(path: Path, distance: float) -> None:
    assert [fault for contour in offset(path, distance) if (fault := fault_of(contour))] == []


@modest
@given(outlines(), distances)
def test_a_reversed_path_has_the_same_contours_reversed(path: Path, distance: float) -> None:
    areas = sorted(contour.area for contour in offset(path, distance))
    turned = sorted(-contour.area for contour in offset(path.reversed(), distance))
    assert turned == pytest.approx(areas, abs=1e-6)


@modest
@given(outlines(), growths)
def test_growing_adds_to_the_area_no_more_than_a_strip_and_round_corners(path: Path, distance: float) -> None:
    grown = sum(contour.area for contour in offset(path, distance))
    # Holds for every outline: the strip along it, counted twice where it overlaps, and a full circle of corners.
    assert path.area < grown <= path.area + path.length * distance + math.pi * distance**2 + 1e-6


@modest
@given(convex_outlines(), growths)
def test_a_convex_outline_grows_by_steiners_formula(path: Path, distance: float) -> None:
    grown = offset_one(path, distance)
    # Jakob Steiner, 1840: area + perimeter * d + pi d^2, and perimeter + 2 pi d.
    assert grown.area == pytest.approx(path.area + path.length * distance + math.pi * distance**2, rel=1e-9)
    assert grown.length == pytest.approx(path.length + 2 * math.pi * distance, rel=1e-9)


@modest
@given(convex_outlines(), growths)
def test_out_then_in_is_identity_on_convex_outlines(path: Path, distance: float) -> None:
    back = offset_one(offset_one(path, distance), -distance)
    assert len(back.segments) == len(path.segments)
    ends = zip(back.segments, path.segments, strict=True)
    assert max(a.start.distance_to(b.start) for a, b in ends) < 1e-6


@modest
@given(convex_outlines(), growths)
def test_sharp_out_then_in_is_identity_on_convex_outlines(path: Path, distance: float) -> None:
    back = offset_one(offset_one(path, distance, Join.SHARP), -distance, Join.SHARP)
    assert back.area == pytest.approx(path.area, rel=1e-9)
    assert len(back.segments) == len(path.segments)


@modest
@given(convex_outlines(), st.floats(0.01, 5), st.floats(0.01, 5))
def test_two_steps_inwards_are_one(path: Path, first: float, second: float) -> None:
    once = offset_one(path, -(first + second))
    twice = offset_one(offset_one(path, -first), -second)
    assert twice.area == pytest.approx(once.area, rel=1e-9)


@modest
@given(convex_outlines(), st.floats(0.5, 3))
def test_in_then_out_rounds_a_sharp_outline_like_a_fillet(path: Path, radius: float) -> None:
    sharp = offset_one(path, -4)
    opened = offset_one(offset_one(sharp, -radius), radius)
    assert opened.area == pytest.approx(filleted(sharp, radius).area, rel=1e-9)
