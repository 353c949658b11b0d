"""Holes along a run: where it passes edges, and how they fall between its ties."""

from __future__ import annotations

import pytest

from patternforge.geometry.path import Path, from_vertices, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.spacing import Anchor, AnchorKind
from patternforge.wallet.holes import BoxedEdge, boxed_edges, crossings, run_holes
from patternforge.wallet.outline import Corner, shape
from patternforge.wallet.run import Run

LINE = polyline([Point(0, 0), Point(40, 0)])


def box(x0: float, x1: float, low: float = -5.0, high: float = 5.0) -> tuple[BoxedEdge, ...]:
    """The edges of a rectangle."""
    corners = [(x0, low), (x1, low), (x1, high), (x0, high)]
    return boxed_edges(shape([Corner(Point(x, y)) for x, y in corners]))


def run(path: Path, pitch: float, *ties: float) -> Run:
    return Run(path, tuple(Anchor(at, AnchorKind.ON) for at in ties), pitch)


@pytest.mark.parametrize(
    ("edges", "places"),
    [
        ((), ()),
        (box(10, 20), (10.0, 20.0)),
        (box(20, 30) + box(5, 30), (5.0, 20.0, 30.0)),  # an edge that two pieces share counts once
        (box(10, 60), (10.0,)),
        (box(10, 20, low=2.0), ()),  # beside the line
    ],
)
def test_a_line_passes_the_edges_across_it_in_order(edges: tuple[BoxedEdge, ...], places: tuple[float, ...]) -> None:
    assert crossings(LINE, edges) == pytest.approx(places)


def test_places_are_counted_along_a_path_that_turns() -> None:
    path = polyline([Point(0, 0), Point(40, 0), Point(40, 30)])
    assert crossings(path, box(30, 50, low=-5, high=12)) == pytest.approx((30.0, 52.0))


def test_holes_fall_on_both_ends_and_evenly_between() -> None:
    holes = run_holes(run(LINE, 4.1, 0, 40), 2, 7, ())
    assert [hole.at.x for hole in holes] == pytest.approx([4 * i for i in range(11)])
    assert [hole.index for hole in holes] == list(range(7, 18))
    assert {hole.run for hole in holes} == {2}
    assert {hole.heading for hole in holes} == {0.0}


def test_a_passed_edge_lies_midway_between_two_holes() -> None:
    # 22 mm from the start: 5.5 spaces of 4; 18 mm to the end: 4.5 of 4.
    holes = run_holes(run(LINE, 4.0, 0, 40), 1, 1, box(22, 60))
    assert [hole.at.x for hole in holes] == pytest.approx([4 * i for i in range(11)])
    # 21 mm: 5.5 spaces of 42 / 11; 19 mm: 4.5 of 38 / 9.
    holes = run_holes(run(LINE, 4.0, 0, 40), 1, 1, box(21, 60))
    first, second = 42 / 11, 38 / 9
    expected = [*(first * i for i in range(6)), *(21 + second * (i + 0.5) for i in range(5))]
    assert [hole.at.x for hole in holes] == pytest.approx(expected)


def test_an_edge_on_a_tie_gives_way_to_it() -> None:
    holes = run_holes(run(LINE, 4.0, 0, 20, 40), 1, 1, box(20, 60))
    assert 20.0 in [hole.at.x for hole in holes]
    assert len(holes) == 11


def test_an_edge_beyond_the_outer_ties_is_no_matter() -> None:
    holes = run_holes(run(LINE, 4.0, 8, 32), 1, 1, box(4, 36))
    assert [hole.at.x for hole in holes] == pytest.approx([8, 12, 16, 20, 24, 28, 32])


def test_a_loop_has_no_second_hole_where_it_closes() -> None:
    square = polyline([Point(0, 0), Point(20, 0), Point(20, 20), Point(0, 20), Point(0, 0)])
    ties = tuple(Anchor(at, AnchorKind.ON) for at in (0, 20, 40, 60, 80))
    holes = run_holes(Run(square, ties, 5.0, loop=True), 1, 1, ())
    assert len(holes) == 16
    assert (holes[-1].at.x, holes[-1].at.y) == pytest.approx((0, 5))


def test_a_hole_heads_the_way_the_path_goes() -> None:
    # Down, round a quarter of radius 10 about (10, 10), and right.
    path = from_vertices([(0, 30, 0), (0, 10, 0.414213562373095), (10, 0, 0), (40, 0, 0)], closed=False)
    middle = 20 + 10 * 3.141592653589793 / 4
    holes = run_holes(run(path, 5.0, 0, middle, path.length), 1, 1, ())
    assert holes[0].heading == pytest.approx(-90)
    assert next(h for h in holes if h.along == pytest.approx(middle)).heading == pytest.approx(-45)
    assert holes[-1].heading == pytest.approx(0)
