"""The smallest hole, gap and radius of figures whose every number is known."""

from __future__ import annotations

import pytest

from patternforge.drafting.smallest import Spot, smallest
from patternforge.drawing.model import Dot, Figure, Ink, Role, Stroke
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import from_vertices, polygon, polyline
from patternforge.geometry.point import Point

EDGE = Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 60, 40, 5))


def piece(*inks: Ink, name: str = "piece") -> Figure:
    return Figure(name, "outer", (*inks, EDGE))


def ring(x: float, y: float, radius: float) -> Stroke:
    """A round opening as it is drawn: two half circles."""
    return Stroke(Role.OPENING, from_vertices([(x + radius, y, -1), (x - radius, y, -1)], closed=True))


def is_at(spot: Spot | None, size: float, name: str) -> bool:
    return spot is not None and spot.piece == name and abs(spot.size - size) < 1e-9


def gap(*inks: Ink) -> float:
    found = smallest([piece(*inks)]).gap
    assert found is not None
    return found.size


def test_of_several_pieces_the_smallest_is_named() -> None:
    some = [piece(Dot(Role.HOLE, Point(9, 9), d), name=name) for d, name in ((1.0, "a"), (0.8, "b"), (0.9, "c"))]
    assert smallest(some).hole == Spot(0.8, "b")


def test_a_round_opening_is_a_hole_and_its_rim_no_radius() -> None:
    found = smallest([piece(ring(30, 20, 1.5))])
    assert is_at(found.hole, 3.0, "piece")
    assert is_at(found.radius, 5.0, "piece")


def test_a_window_is_no_hole_but_has_a_radius() -> None:
    window = Stroke(Role.OPENING, rounded_rectangle(10, 10, 40, 30, 2).cw())
    found = smallest([piece(window)])
    assert found.hole is None
    assert is_at(found.radius, 2.0, "piece")


@pytest.mark.parametrize(
    ("inks", "expected"),
    [
        ([Dot(Role.HOLE, Point(20, 20), 1.0), Dot(Role.HOLE, Point(23, 20), 2.0)], 1.5),  # rim to rim
        ([Dot(Role.HOLE, Point(3, 20), 1.0)], 2.5),  # rim to edge
        ([ring(30, 38, 1.0)], 1.0),  # round opening to edge
        ([Stroke(Role.HOLE, polyline([Point(20, 20), Point(22, 20)])), Dot(Role.HOLE, Point(24, 20), 1.0)], 1.5),
        ([Stroke(Role.HOLE, polyline([Point(20, y), Point(22, y)])) for y in (20, 21.2)], 1.2),  # slit to slit
        ([Stroke(Role.OPENING, rounded_rectangle(10, 10, 40, 11.7, 0).cw())], 1.7),  # across a slot
        ([Stroke(Role.OPENING, rounded_rectangle(10, 10, 59.1, 30, 2).cw())], 0.9),  # window to edge
        ([Dot(Role.HOLE, Point(20, 20), 2.0), Dot(Role.HOLE, Point(21, 20), 2.0)], 0.0),  # holes that run together
    ],
)
def test_the_gap_is_what_stands_between_two_cuts_or_two_sides_of_one(inks: list[Ink], expected: float) -> None:
    assert gap(*inks) == pytest.approx(expected)


def test_marks_cut_nothing_through() -> None:
    assert gap(Dot(Role.MARK, Point(1, 20), 0.3), Stroke(Role.MARK, polyline([Point(1, 5), Point(1, 9)]))) == 40.0


def test_an_outline_may_be_narrow_by_itself() -> None:
    comb = polygon(
        [Point(*at) for at in ((0, 0), (40, 0), (40, 20), (22, 20), (22, 5), (20.6, 5), (20.6, 20), (0, 20))]
    )
    found = smallest([Figure("comb", "outer", (Stroke(Role.OUTLINE, comb),))])
    assert is_at(found.gap, 1.4, "comb")
    assert (found.hole, found.radius) == (None, None)


def test_nothing_has_no_smallest() -> None:
    found = smallest([])
    assert (found.hole, found.gap, found.radius) == (None, None, None)
