"""Laws of shifts, turns and mirrors."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, flipped_x, flipped_y
from tests.laws.geometry_shapes import outlines, points, transforms

modest = settings(max_examples=100, deadline=None)


def furthest(a: Path, b: Path) -> float:
    return max(s.start.distance_to(t.start) for s, t in zip(a.segments, b.segments, strict=True))


@modest
@given(outlines(), st.floats(-99, 99))
def test_mirrored_twice_is_the_same(path: Path, at: float) -> None:
    for mirror in (flipped_x(at), flipped_y(at)):
        twice = mirror.path(mirror.path(path))
        assert furthest(path, twice) < 1e-12
        assert [s.bulge for s in twice.segments] == [s.bulge for s in path.segments]


@modest
@given(transforms(), points())
def test_a_transform_and_its_inverse_are_identity_either_way_round(transform: Transform, p: Point) -> None:
    assert transform.then(transform.inverse()).point(p).distance_to(p) < 1e-11
    assert transform.inverse().then(transform).point(p).distance_to(p) < 1e-11


@modest
@given(transforms(), transforms(), points())
def test_then_is_the_one_after_the_other(first: Transform, second: Transform, p: Point) -> None:
    assert first.then(second).point(p).distance_to(second.point(first.point(p))) < 1e-11
    assert first.then(second).is_mirror is (first.is_mirror is not second.is_mirror)


@modest
@given(transforms(), outlines())
def test_length_is_kept_and_area_changes_sign_under_a_mirror(transform: Transform, path: Path) -> None:
    moved = transform.path(path)
    assert moved.length == pytest.approx(path.length, rel=1e-12)
    assert moved.area == pytest.approx(-path.area if transform.is_mirror else path.area, rel=1e-9)


@modest
@given(transforms(), outlines(), st.floats(0, 1))
def test_points_along_a_path_move_with_it(transform: Transform, path: Path, share: float) -> None:
    d = path.length * share
    assert transform.path(path).point_at(d).distance_to(transform.point(path.point_at(d))) < 1e-9


@modest
@given(transforms(), outlines(), points())
def test_inside_stays_inside(transform: Transform, path: Path, p: Point) -> None:
    near = p / 4
    if path.distance_to(near) > 1e-6:
        assert transform.path(path).contains(transform.point(near)) is path.contains(near)


@modest
@given(transforms(), st.floats(-180, 180))
def test_an_angle_turns_as_its_direction_does(transform: Transform, degrees: float) -> None:
    moved = transform.direction(Point(1, 0).rotated(math.radians(degrees)))
    found = transform.angle(degrees)
    assert -180 < found <= 180
    assert Point(1, 0).rotated(math.radians(found)).distance_to(moved) < 1e-12
