"""Outlines with slanted and bowed sides in a box of 100 x 80 mm."""

from __future__ import annotations

from math import atan2, pi

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.quad import Quad, quad, sides_of
from patternforge.wallet.spec import Edge, EdgeShape

BOX = (0.0, 0.0, 100.0, 80.0)
SHARP = (0.0, 0.0, 0.0, 0.0)


def shaped(
    shapes: dict[Edge, EdgeShape],
    radii: tuple[float, float, float, float] = SHARP,
    lowered: dict[Edge, float] | None = None,
) -> Quad:
    return quad(BOX, shapes, radii, lowered or {})


def corners(figure: Quad) -> list[tuple[float, float]]:
    return [(round(p.x, 6), round(p.y, 6)) for p in figure.corners]


def test_a_box_without_shapes_stays_a_box() -> None:
    assert corners(shaped({})) == [(0, 0), (100, 0), (100, 80), (0, 80)]
    assert shaped({}).path.area == pytest.approx(8000)


@pytest.mark.parametrize(
    ("edge", "slant", "expected"),
    # A slant moves the upper or right end of a side in, a negative one its lower or left end.
    [
        (Edge.LEFT, 10.0, [(0, 0), (100, 0), (100, 80), (10, 80)]),
        (Edge.LEFT, -10.0, [(10, 0), (100, 0), (100, 80), (0, 80)]),
        (Edge.RIGHT, 10.0, [(0, 0), (100, 0), (90, 80), (0, 80)]),
        (Edge.RIGHT, -10.0, [(0, 0), (90, 0), (100, 80), (0, 80)]),
        (Edge.TOP, 10.0, [(0, 0), (100, 0), (100, 70), (0, 80)]),
        (Edge.TOP, -10.0, [(0, 0), (100, 0), (100, 80), (0, 70)]),
        (Edge.BOTTOM, 10.0, [(0, 0), (100, 10), (100, 80), (0, 80)]),
        (Edge.BOTTOM, -10.0, [(0, 10), (100, 0), (100, 80), (0, 80)]),
    ],
)
def test_a_side_slants_at_the_end_it_is_told(edge: Edge, slant: float, expected: list[tuple[float, float]]) -> None:
    assert corners(shaped({edge: EdgeShape(slant=slant)})) == expected


def test_two_slanted_sides_meet_where_their_lines_do() -> None:
    # Left x = y / 8, top y = 80 - x / 10: they meet at x = 10 (1 - x / 800), x = 800 / 81.
    figure = shaped({Edge.LEFT: EdgeShape(slant=10.0), Edge.TOP: EdgeShape(slant=10.0)})
    at = figure.corners[3]
    assert (at.x, at.y) == pytest.approx((800 / 81, 6400 / 81))


@pytest.mark.parametrize(
    ("bow", "grown"),
    # A half circle over the right side of 80: radius 40; a segment of sagitta 20: radius 50, angle 2 asin 0.8.
    [(40.0, pi * 800), (-40.0, -pi * 800), (20.0, 2500 * atan2(0.8, 0.6) - 30 * 40)],
)
def test_a_side_bows_out_or_in(bow: float, grown: float) -> None:
    assert shaped({Edge.RIGHT: EdgeShape(bow=bow)}).path.area == pytest.approx(8000 + grown)


def test_a_lowered_side_is_moved_in_parallel() -> None:
    figure = shaped({Edge.LEFT: EdgeShape(slant=8.0)}, lowered={Edge.TOP: 20.0})
    # The left side leans 8 in over 80: at 60 by 6.
    assert corners(figure) == [(0, 0), (100, 0), (100, 60), (6, 60)]


def test_roundings_stand_counter_clockwise_from_the_lower_left() -> None:
    figure = shaped({}, (5.0, 0.0, 10.0, 0.0))
    assert figure.path.area == pytest.approx(8000 - (25 + 100) * (1 - pi / 4))
    arcs = sorted(
        (segment.radius, segment.centre.x, segment.centre.y) for segment in figure.path.segments if segment.is_arc
    )
    assert arcs == [pytest.approx((5.0, 5.0, 5.0)), pytest.approx((10.0, 90.0, 70.0))]
    assert figure.sharp.area == pytest.approx(8000)


def test_every_segment_knows_its_side_and_roundings_have_none() -> None:
    figure = shaped({Edge.RIGHT: EdgeShape(bow=10.0)}, (5.0, 0.0, 0.0, 0.0))
    named = {
        (round(s.point_at(s.length / 2).x), round(s.point_at(s.length / 2).y)): side
        for s, side in zip(figure.path.segments, sides_of(figure.path, figure), strict=True)
    }
    assert named == {
        (52, 0): Edge.BOTTOM,
        (110, 40): Edge.RIGHT,
        (50, 80): Edge.TOP,
        (0, 42): Edge.LEFT,
        (1, 1): None,
    }
    assert figure.path.contains(Point(105, 40))


@pytest.mark.parametrize(
    ("shapes", "words"),
    [
        ({Edge.LEFT: EdgeShape(slant=60.0), Edge.RIGHT: EdgeShape(slant=60.0)}, "its slanted sides cross each other"),
        ({Edge.RIGHT: EdgeShape(bow=41.0)}, r"a side of 80\.00 mm cannot bow by 41\.00 mm: at most half its length"),
        ({Edge.TOP: EdgeShape(bow=-51.0)}, r"a side of 100\.00 mm cannot bow by 51\.00 mm"),
    ],
)
def test_an_outline_that_cannot_be_is_refused(shapes: dict[Edge, EdgeShape], words: str) -> None:
    with pytest.raises(DraftError, match=words):
        shaped(shapes)
