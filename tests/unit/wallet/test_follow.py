"""Seam lines 4 mm inside outlines that are no rectangles."""

from __future__ import annotations

from math import hypot, pi, sqrt

import pytest

from patternforge.errors import DraftError, GeometryError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.wallet.follow import followed
from patternforge.wallet.quad import quad
from patternforge.wallet.spec import CornerStyle, Edge, EdgeShape

LEFT, BOTTOM, RIGHT, TOP = Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP
BOX = (0.0, 0.0, 100.0, 80.0)
ROUNDED, SHARP = CornerStyle.ROUNDED, CornerStyle.SHARP
LEAN = {RIGHT: EdgeShape(slant=16.0)}
TO_LEAN = hypot(80, 16)  # length of the leaning side


def line(
    edges: tuple[Edge, ...],
    shapes: dict[Edge, EdgeShape],
    ends: tuple[float | None, float | None] = (None, None),
    style: CornerStyle = SHARP,
    radius: float = 0.0,
) -> tuple[Path, list[float]]:
    return followed(quad(BOX, shapes, (radius,) * 4, {}), style, 4.0, edges, ends)


def from_lean(at: Point) -> float:
    """Distance of a point from the leaning side: the line from (100, 0) to (84, 80)."""
    return abs(80 * (at.x - 100) + 16 * at.y) / TO_LEAN


def test_a_line_along_a_leaning_side_keeps_its_margin_all_the_way() -> None:
    path, corners = line((RIGHT,), LEAN)
    assert corners == []
    for share in (0.0, 0.5, 1.0):
        assert from_lean(path.point_at(share * path.length)) == pytest.approx(4.0)
    # Without being told it runs to the lines 4 mm inside its neighbours.
    assert (path.start.y, path.end.y) == pytest.approx((4.0, 76.0))


def test_free_ends_stand_off_the_side_they_run_out_at() -> None:
    path, _ = line((RIGHT,), LEAN, ends=(10.0, 2.0))
    # Cut back at the bottom, run on at the top; measured along the line, which leans by hypot(80, 16) / 80.
    assert path.length == pytest.approx(72 * TO_LEAN / 80 - 6 + 2)
    assert from_lean(path.start) == pytest.approx(4.0)
    assert from_lean(path.end) == pytest.approx(4.0)


def test_a_sharp_corner_between_a_level_and_a_leaning_side_is_where_their_lines_meet() -> None:
    path, (corner,) = line((BOTTOM, RIGHT), LEAN)
    at = path.point_at(corner)
    assert at.y == pytest.approx(4.0)
    assert from_lean(at) == pytest.approx(4.0)


def test_a_rounded_corner_is_tied_in_the_middle_of_its_arc() -> None:
    # Radius 10 on the outline is 6 on the line, about (10, 10).
    path, (corner,) = line((LEFT, BOTTOM), {}, style=ROUNDED, radius=10.0)
    # From where the upper left rounding begins at 70, 60 mm down, a quarter of 6, then on to the right.
    assert corner == pytest.approx(60 + 6 * pi / 4)
    assert (path.start.x, path.start.y) == pytest.approx((4.0, 70.0))
    middle = path.point_at(corner)
    assert (middle.x, middle.y) == pytest.approx((10 - 3 * sqrt(2), 10 - 3 * sqrt(2)))


def test_a_bowed_side_is_followed_as_an_arc_round_the_same_centre() -> None:
    # 80 mm bowed by 20: radius 50 about (70, 40); 4 mm inside it 46.
    path, _ = line((RIGHT,), {RIGHT: EdgeShape(bow=20.0)})
    (arc,) = (segment for segment in path.segments if segment.is_arc)
    assert arc.radius == pytest.approx(46.0)
    assert (arc.centre.x, arc.centre.y) == pytest.approx((70.0, 40.0))


def test_a_loop_begins_in_the_middle_of_its_first_side_and_is_tied_there_and_in_four_corners() -> None:
    path, corners = line((BOTTOM, RIGHT, TOP, LEFT), {LEFT: EdgeShape(slant=0.0)})
    assert (path.start.x, path.start.y) == pytest.approx((50.0, 4.0))
    assert corners == pytest.approx([0.0, 46.0, 46 + 72, 46 + 72 + 92, 46 + 72 + 92 + 72, 328.0])
    assert path.length == pytest.approx(328.0)


def test_a_side_that_the_margin_leaves_nothing_of_is_refused() -> None:
    # A top of 4 mm between two sides that lean together: 4 mm inside, it is gone.
    narrow = {LEFT: EdgeShape(slant=48.0), RIGHT: EdgeShape(slant=48.0)}
    with pytest.raises(DraftError, match=r"no straight or bowed side is left to follow at a margin of 4\.00 mm"):
        line((TOP,), narrow)
    with pytest.raises(GeometryError):
        followed(quad(BOX, {}, (0.0,) * 4, {}), SHARP, 41.0, (BOTTOM,), (None, None))
