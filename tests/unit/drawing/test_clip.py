"""Lines, arcs, circles and texts cut at a window."""

from __future__ import annotations

from math import pi

import pytest

from patternforge.drawing.clip import clipped, clipped_path
from patternforge.drawing.model import Dot, Role, Stroke, Text
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.segment import Segment

WINDOW = Bounds(0, 0, 10, 10)
HALF_CIRCLE = Path((Segment(Point(5, 0), Point(5, 10), 1.0),), closed=False)


def ends(path: Path) -> tuple[float, ...]:
    return path.start.x, path.start.y, path.end.x, path.end.y


def test_a_line_is_cut_where_it_crosses_the_edge() -> None:
    (part,) = clipped_path(polyline([Point(-4, 0), Point(16, 10)]), WINDOW)
    assert ends(part) == pytest.approx((0, 2, 10, 7), abs=1e-12)


def test_an_arc_stays_an_arc_of_the_same_circle() -> None:
    (part,) = clipped_path(HALF_CIRCLE, Bounds(0, 0, 20, 5))
    (segment,) = part.segments
    assert segment.radius == pytest.approx(5, abs=1e-12)
    assert (segment.centre.x, segment.centre.y) == pytest.approx((5, 5), abs=1e-12)
    assert ends(part) == pytest.approx((5, 0, 10, 5), abs=1e-12)
    assert part.length == pytest.approx(5 * pi / 2, abs=1e-12)


def test_an_arc_that_leaves_and_returns_gives_two_parts() -> None:
    parts = clipped_path(HALF_CIRCLE, Bounds(0, 0, 9, 10))
    assert [ends(part) for part in parts] == [
        pytest.approx((5, 0, 9, 2), abs=1e-12),
        pytest.approx((9, 8, 5, 10), abs=1e-12),
    ]


def test_a_closed_path_cut_once_is_one_part_whatever_corner_it_begins_at() -> None:
    corners = [Point(2, 2), Point(20, 2), Point(20, 8), Point(2, 8)]
    for turn in range(4):
        parts = clipped_path(polygon(corners[turn:] + corners[:turn]), WINDOW)
        assert [ends(part) for part in parts] == [pytest.approx((10, 8, 10, 2), abs=1e-12)]
        assert parts[0].length == pytest.approx(22, abs=1e-12)


def test_what_lies_inside_or_on_the_edge_is_returned_as_it_is() -> None:
    square = polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)])
    assert clipped_path(square, WINDOW) == (square,)


def test_what_lies_outside_is_gone() -> None:
    assert clipped_path(polyline([Point(11, 0), Point(11, 10)]), WINDOW) == ()
    assert clipped([Dot(Role.HOLE, Point(12, 5), 1.0), Text(Role.LABEL, Point(20, 5), 2.0, "A")], WINDOW) == ()


def test_a_window_that_only_touches_a_path_shows_nothing_of_it() -> None:
    assert clipped_path(HALF_CIRCLE, Bounds(10, 0, 20, 10)) == ()


def test_a_circle_cut_in_half_is_a_half_circle() -> None:
    (part,) = clipped([Dot(Role.HOLE, Point(10, 5), 2.0)], WINDOW)
    assert isinstance(part, Stroke)
    assert part.path.length == pytest.approx(pi, abs=1e-9)
    assert all(segment.radius == pytest.approx(1, abs=1e-9) for segment in part.path.segments)


def test_a_text_inside_stays_text_and_a_cut_one_becomes_strokes() -> None:
    inside, cut = Text(Role.LABEL, Point(0, 5), 1.0, "IN"), Text(Role.LABEL, Point(8, 5), 3.0, "OUT")
    parts = clipped([inside, cut], WINDOW)
    assert parts[0] == inside
    assert len(parts) > 1
    assert all(isinstance(part, Stroke) and part.path.bounds.x1 <= 10 + 1e-9 for part in parts[1:])


def test_roles_and_order_are_kept() -> None:
    inks = [Stroke(role, polyline([Point(-5, 5), Point(15, 5)])) for role in (Role.FOLD, Role.OUTLINE, Role.SEAM)]
    assert [ink.role for ink in clipped(inks, WINDOW)] == [Role.FOLD, Role.OUTLINE, Role.SEAM]
