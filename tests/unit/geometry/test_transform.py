"""Shifts, turns and mirrors."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, flipped_x, flipped_y, identity, rotation, translation


@pytest.mark.parametrize(
    ("degrees", "expected"),
    [(0, (2, 1)), (90, (-1, 2)), (180, (-2, -1)), (270, (1, -2)), (-90, (1, -2)), (450, (-1, 2)), (-720, (2, 1))],
)
def test_quarter_turns_are_exact(degrees: float, expected: tuple[float, float]) -> None:
    assert rotation(degrees).point(Point(2, 1)) == Point(*expected)


def test_a_turn_about_a_point_leaves_the_point() -> None:
    assert rotation(90, about=Point(7, 3)).point(Point(7, 3)) == Point(7, 3)
    assert rotation(37, about=Point(7, 3)).point(Point(7, 3)).distance_to(Point(7, 3)) < 1e-14
    assert rotation(30).point(Point(2, 0)).distance_to(Point(math.sqrt(3), 1)) < 1e-15


def test_mirrors_keep_their_line() -> None:
    assert flipped_x(at=4).point(Point(4, 9)) == Point(4, 9)
    assert flipped_x(at=4).point(Point(5, 9)) == Point(3, 9)
    assert flipped_y(at=4).point(Point(9, 5)) == Point(9, 3)
    assert flipped_x().is_mirror
    assert flipped_y().is_mirror
    assert not flipped_x().then(flipped_y()).is_mirror


def test_then_applies_the_first_first() -> None:
    assert translation(1, 0).then(rotation(90)).point(Point(0, 0)) == Point(0, 1)
    assert rotation(90).then(translation(1, 0)).point(Point(0, 0)) == Point(1, 0)


def test_directions_are_not_shifted() -> None:
    assert translation(5, 5).then(rotation(90)).direction(Point(1, 0)) == Point(0, 1)


@pytest.mark.parametrize(
    ("transform", "before", "after"),
    [
        (identity(), 45, 45),
        (rotation(90), 45, 135),
        (rotation(90), 100, -170),
        (rotation(180), 0, 180),
        (flipped_x(), 45, 135),
        (flipped_x(), 0, 180),
        (flipped_y(), 45, -45),
        (flipped_y().then(rotation(90)), 45, 45),
    ],
)
def test_a_slant_turns_and_turns_over(transform: Transform, before: float, after: float) -> None:
    assert transform.angle(before) == pytest.approx(after, abs=1e-12)


def test_a_mirror_turns_the_direction_of_an_outline_round_and_keeps_its_order() -> None:
    outline = rounded_rectangle(0, 0, 30, 20, 3)
    mirrored = flipped_x(at=15).path(outline)
    assert not mirrored.is_ccw
    assert mirrored.area == pytest.approx(-outline.area)
    assert mirrored.start == flipped_x(at=15).point(outline.start)
    assert [s.bulge for s in mirrored.segments] == [-s.bulge for s in outline.segments]


@pytest.mark.parametrize(
    "matrix",
    [
        (2, 0, 0, 2, 0, 0),
        (1, 0, 0.6, 0.8, 0, 0),
        (0, 0, 0, 0, 0, 0),
        (1, 0, 0, 1, math.nan, 0),
        (math.nan, 0, 0, 1, 0, 0),
    ],
)
def test_what_stretches_or_is_no_number_is_refused(matrix: tuple[float, float, float, float, float, float]) -> None:
    with pytest.raises(GeometryError, match="only shift, turn and mirror"):
        Transform(*matrix)
