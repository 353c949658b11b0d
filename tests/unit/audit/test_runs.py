"""Lines are joined to what is cut in one go; contours are found to lie in one another."""

from __future__ import annotations

from itertools import pairwise
from math import pi

import pytest

from patternforge.audit.model import Entity, Ring
from patternforge.audit.nesting import parents
from patternforge.audit.runs import Run, runs
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.segment import arc_segment


def entities(*shapes: Path | Ring) -> list[Entity]:
    return [Entity("LINE", number, Point(0, 0), shape) for number, shape in enumerate(shapes, start=1)]


def lines(*points: tuple[float, float]) -> list[Path]:
    return [polyline([Point(*p), Point(*q)]) for p, q in pairwise(points)]


SQUARE = [(0, 0), (10, 0), (10, 10), (0, 10), (0, 0)]


def test_lines_in_any_order_and_direction_close() -> None:
    sides = lines(*SQUARE)
    (run,) = runs(entities(sides[2].reversed(), sides[0], sides[3], sides[1].reversed()))
    assert run.closed
    assert run.gaps == ()
    assert isinstance(run.shape, Path)
    assert abs(run.shape.area) == 100


def test_half_circles_close_to_a_ring() -> None:
    halves = [Path((arc_segment(Point(3, 4), 5, turn, turn + pi),), closed=False) for turn in (0.0, pi)]
    (run,) = runs(entities(*halves))
    assert isinstance(run.shape, Ring)
    assert run.shape.centre.distance_to(Point(3, 4)) < 1e-9


@pytest.mark.parametrize("gap", [0.01, 0.05, 0.29])
def test_a_small_gap_between_two_lines_is_bridged_and_told(gap: float) -> None:
    (run,) = runs(entities(*lines(*SQUARE[:3]), *lines((10 - gap, 10), *SQUARE[3:])))
    assert run.closed
    assert [each.width for each in run.gaps] == pytest.approx([gap])
    assert run.gaps[0].at.distance_to(Point(10 - gap / 2, 10)) < 1e-9


def test_two_gaps_are_two() -> None:
    (run,) = runs(entities(*lines((0, 0.1), (0, 10), (10, 10), (10, 0), (5.2, 0)), *lines((5, 0), (0, 0))))
    assert run.closed
    assert sorted(each.width for each in run.gaps) == pytest.approx([0.1, 0.2])


def test_slits_in_a_row_are_not_joined() -> None:
    slits = [polyline([Point(4 * i, 0), Point(4 * i + 2, 0)]) for i in range(10)]
    found = runs(entities(*slits))
    assert len(found) == 10
    assert not any(run.closed or run.gaps for run in found)


def test_a_wide_gap_in_one_line_is_one_if_it_is_small_beside_the_line() -> None:
    points = [Point(*p) for p in ((0, 40), (0, 0), (100, 0), (100, 50), (0, 50), (0, 45))]
    (run,) = runs(entities(polyline(points)))
    assert run.closed
    assert [each.width for each in run.gaps] == [5]
    (letter,) = runs(entities(polyline([Point(*p) for p in ((4, 0), (0, 0), (0, 6), (4, 6), (4, 2))])))
    assert not letter.closed


def test_a_line_drawn_twice_does_not_part_a_contour() -> None:
    sides = lines(*SQUARE)
    found = runs(entities(*sides, sides[1].reversed()))
    assert [run.closed for run in found] == [True]


def test_contours_lie_in_the_smallest_one_round_them() -> None:
    shapes: list[Path | Ring] = [
        rounded_rectangle(0, 0, 100, 80, 5),
        rounded_rectangle(10, 10, 60, 60, 3),
        Ring(Point(20, 20), 2),
        Ring(Point(80, 40), 2),
        Ring(Point(200, 40), 2),
        polyline([Point(70, 70), Point(72, 70)]),
    ]
    assert parents(runs(entities(*shapes))) == (None, 0, 1, 0, None, 0)


def test_a_ring_holds_what_is_in_it_and_a_copy_holds_nothing() -> None:
    found = runs(entities(Ring(Point(0, 0), 30), Ring(Point(0.005, 0), 30.005), Ring(Point(3, 0), 2)))
    assert parents(found)[:2] == (None, None)
    assert parents(found)[2] in (0, 1)


def test_what_lies_in_a_notch_lies_outside() -> None:
    comb = polygon([Point(*p) for p in ((0, 0), (30, 0), (30, 30), (20, 30), (20, 10), (10, 10), (10, 30), (0, 30))])
    assert parents(runs(entities(comb, Ring(Point(15, 20), 2), Ring(Point(5, 20), 2)))) == (None, None, 0)


def test_first_and_last_are_the_places_in_the_file() -> None:
    run = Run(tuple(entities(*lines(*SQUARE))), rounded_rectangle(0, 0, 10, 10, 0))
    assert (run.first, run.last) == (1, 4)
