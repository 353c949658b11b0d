"""Cuts in the edges of a rectangle of 100 x 60 mm."""

from __future__ import annotations

from math import pi, tan

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.path import from_vertices, polygon
from patternforge.geometry.point import Point
from patternforge.wallet.edge_cuts import bow, edge_direction, edge_place, relief, vee, with_cut
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import Edge

SEWN, RAW, MOUTH = EdgeRole.SEWN, EdgeRole.RAW, EdgeRole.MOUTH
PLAIN = Shape(polygon([Point(0, 0), Point(100, 0), Point(100, 60), Point(0, 60)]), (SEWN, SEWN, RAW, SEWN))
SLANTED = Shape(polygon([Point(0, 0), Point(100, 0), Point(100, 40), Point(0, 60)]), (SEWN, SEWN, RAW, SEWN))


def vertices(shape: Shape) -> list[tuple[float, float, float]]:
    return [(round(x, 6), round(y, 6), round(b, 6)) for x, y, b in shape.path.vertices]


def test_a_half_circle_in_the_upper_edge_is_an_arc_that_turns_inwards() -> None:
    cut = with_cut(PLAIN, bow(Point(60, 60), Point(40, 60), 10, MOUTH))
    assert vertices(cut) == [(0, 0, 0), (100, 0, 0), (100, 60, 0), (60, 60, -1), (40, 60, 0), (0, 60, 0)]
    assert cut.edges == (SEWN, SEWN, RAW, MOUTH, RAW, SEWN)
    assert cut.path.area == pytest.approx(6000 - 50 * pi)


def test_a_vee_in_the_lower_edge_is_two_lines_to_its_point() -> None:
    cut = with_cut(PLAIN, vee(Point(48, 0), Point(52, 0), 3, RAW))
    assert vertices(cut)[:5] == [(0, 0, 0), (48, 0, 0), (50, 3, 0), (52, 0, 0), (100, 0, 0)]
    assert cut.edges == (SEWN, RAW, RAW, SEWN, SEWN, RAW, SEWN)


def test_a_relief_is_a_quarter_circle_either_side_and_straight_between() -> None:
    cut = with_cut(PLAIN, relief(Point(45, 0), Point(55, 0), 4))
    quarter = round(tan(pi / 8), 6)
    assert vertices(cut)[1:5] == [(41, 0, -quarter), (45, 4, 0), (55, 4, -quarter), (59, 0, 0)]
    # 10 x 4 between the tangents and a quarter circle of 4 outside each.
    assert cut.path.area == pytest.approx(6000 - 40 - 2 * pi * 16 / 4)


def test_several_cuts_stand_in_one_edge() -> None:
    once = with_cut(PLAIN, vee(Point(20, 0), Point(24, 0), 3, RAW))
    twice = with_cut(once, vee(Point(60, 0), Point(64, 0), 3, RAW))
    assert twice.path.area == pytest.approx(6000 - 2 * 6)
    with pytest.raises(DraftError, match="does not fit there"):
        with_cut(once, vee(Point(23, 0), Point(27, 0), 3, RAW))


def test_a_cut_beside_an_end_of_its_edge_leaves_no_sliver() -> None:
    cut = with_cut(PLAIN, vee(Point(0, 0), Point(4, 0), 2, RAW))
    assert vertices(cut)[:3] == [(0, 0, 0), (2, 2, 0), (4, 0, 0)]


@pytest.mark.parametrize(
    ("start", "end"),
    [((98, 0), (102, 0)), ((50, 1), (54, 1)), ((54, 0), (50, 0)), ((99, 0), (100, 5))],
    ids=["past a corner", "off the edge", "the wrong way", "round a corner"],
)
def test_a_cut_that_is_not_on_one_straight_edge_is_refused(
    start: tuple[float, float], end: tuple[float, float]
) -> None:
    with pytest.raises(DraftError, match="meets a corner, a bowed side or another cut"):
        with_cut(PLAIN, vee(Point(*start), Point(*end), 2, RAW))


def test_an_arc_deeper_than_round_is_refused() -> None:
    with pytest.raises(DraftError, match=r"a cut 10\.10 mm deep does not fit a mouth of 20\.00 mm"):
        bow(Point(60, 60), Point(40, 60), 10.1, MOUTH)


@pytest.mark.parametrize(
    ("edge", "at", "place"),
    [
        (Edge.TOP, 50.0, (50, 50)),
        (Edge.BOTTOM, 50.0, (50, 0)),
        (Edge.LEFT, 20.0, (0, 20)),
        (Edge.RIGHT, 20.0, (100, 20)),
    ],
)
def test_a_place_on_an_edge_is_where_the_outline_stands_there(
    edge: Edge, at: float, place: tuple[float, float]
) -> None:
    found = edge_place(SLANTED, edge, at)
    assert (found.x, found.y) == pytest.approx(place, abs=1e-9)


def test_a_place_beyond_an_edge_is_refused() -> None:
    with pytest.raises(DraftError, match="a cut of its right edge lies beyond it"):
        edge_place(PLAIN, Edge.RIGHT, 61.0)


def test_an_edge_knows_its_direction_unless_it_is_bowed() -> None:
    way = edge_direction(SLANTED, Point(50, 50))
    assert (way.x, way.y) == pytest.approx((-100 / 10400**0.5, 20 / 10400**0.5))
    half = from_vertices([(0, 0, 0), (10, 0, 1)], closed=True)
    with pytest.raises(DraftError, match="in a straight edge only"):
        edge_direction(Shape(half, (SEWN, RAW)), Point(5, 5))
