"""Closed paths laid on each other."""

from __future__ import annotations

from math import pi

import pytest

from patternforge.geometry.congruent import laid_on, laid_over, lies_on, stretches
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.segment import arc_segment
from patternforge.geometry.transform import flipped_x, rotation, translation

CARD = rounded_rectangle(0, 0, 85.6, 53.98, 3.18)
HOOK = polygon([Point(0, 0), Point(40, 0), Point(40, 10), Point(10, 10), Point(10, 70), Point(0, 70)])


def ring(radius: float, at: Point, begun: float = 0.0) -> Path:
    return Path(tuple(arc_segment(at, radius, begun + a, begun + a + pi) for a in (0.0, pi)), closed=True)


def test_a_path_is_laid_where_it_came_from() -> None:
    carried = rotation(33, Point(5, -2)).then(translation(100, 7)).path(HOOK)
    (turn,) = laid_on(HOOK, carried, 0.01)
    for corner, wanted in zip(HOOK.segments, carried.segments, strict=True):
        assert turn.point(corner.start).distance_to(wanted.start) < 1e-9


def test_a_side_that_is_divided_is_still_the_same_side() -> None:
    (x, y, bulge), *rest = CARD.vertices
    divided = from_vertices([(x, y, bulge), ((x + rest[0][0]) / 2, (y + rest[0][1]) / 2, 0.0), *rest], closed=True)
    assert bulge == 0
    assert len(divided.segments) == 9
    assert len(stretches(divided)) == 8
    assert len(list(laid_on(CARD, divided, 0.01))) == 2


def test_an_arc_that_is_divided_is_still_the_same_arc() -> None:
    parted = [part for s in CARD.segments for part in ((s.sub(0, 1.0), s.sub(1.0, s.length)) if s.is_arc else (s,))]
    assert len(list(laid_on(Path(tuple(parted), closed=True), CARD, 0.01))) == 2


def test_the_mirror_image_is_laid_over_and_not_on() -> None:
    mirrored = flipped_x(at=12).path(HOOK).reversed()
    assert list(laid_on(HOOK, mirrored, 0.01)) == []
    (turn,) = laid_over(HOOK, mirrored, 0.01)
    assert turn.is_mirror
    assert lies_on(turn.path(HOOK), mirrored, 1e-9)


@pytest.mark.parametrize(("off", "found"), [(0.008, 1), (0.03, 0)])
def test_what_strays_by_more_than_the_tolerance_is_not_laid(off: float, found: int) -> None:
    (x, y, bulge), *rest = HOOK.vertices
    assert len(list(laid_on(HOOK, from_vertices([(x - off, y, bulge), *rest], closed=True), 0.01))) == found


def test_a_bow_of_a_side_is_told_from_a_straight_one() -> None:
    (x, y, _), *rest = HOOK.vertices
    assert list(laid_on(HOOK, from_vertices([(x, y, 0.01), *rest], closed=True), 0.01)) == []


def test_a_whole_circle_lies_on_one_of_its_size_wherever_it_is_begun() -> None:
    assert len(list(laid_on(ring(5, Point(0, 0)), ring(5, Point(40, 3), 1.0), 0.01))) == 1
    assert list(laid_on(ring(5, Point(0, 0)), ring(5.1, Point(40, 3)), 0.01)) == []


def test_lines_that_end_apart_do_not_lie_on_each_other() -> None:
    slit = polyline([Point(0, 0), Point(2, 0)])
    assert lies_on(slit, slit.reversed(), 1e-9)
    assert not lies_on(slit, polyline([Point(0, 0), Point(3, 0)]), 0.01)
