"""Contours traced from loose pieces."""

from __future__ import annotations

from itertools import pairwise

from patternforge.geometry.contours import Piece, contours
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment


def run(*points: tuple[float, float], first: int = 0) -> list[Piece]:
    """Straight pieces from point to point, each a curve of its own."""
    lines = [Segment(Point(*p), Point(*q)) for p, q in pairwise(points)]
    return [Piece(first + i, 0.0, s.length, s) for i, s in enumerate(lines)]


SQUARE = [(0, 0), (4, 0), (4, 4), (0, 4), (0, 0)]


def test_pieces_in_any_order_close_from_the_lowest_curve() -> None:
    pieces = run(*SQUARE)
    (path,) = contours([pieces[i] for i in (2, 0, 3, 1)], ccw=True)
    assert path.vertices == ((0, 0, 0), (4, 0, 0), (4, 4, 0), (0, 4, 0))


def test_ends_within_a_ten_millionth_meet() -> None:
    (path,) = contours(run(*SQUARE[:4], (5e-8, -5e-8)), ccw=True)
    assert path.area > 15.99


def test_pieces_that_lead_nowhere_are_left_out() -> None:
    assert contours(run((0, 0), (4, 0), (4, 4)), ccw=True) == ()
    (path,) = contours(run(*SQUARE) + run((4, 4), (9, 9), (12, 9), first=10), ccw=True)
    assert path.area == 16


def test_pieces_there_and_back_enclose_nothing() -> None:
    assert contours(run((0, 0), (4, 0), (0, 0)), ccw=True) == ()


def test_a_thread_between_two_contours_is_cut() -> None:
    other = [(x + 8, y) for x, y in SQUARE]
    found = contours(run(*SQUARE) + run((4, 0), (8, 0), (4, 0), first=10) + run(*other, first=20), ccw=True)
    assert [path.area for path in found] == [16, 16]


def test_contours_that_touch_in_a_point_are_parted() -> None:
    other = [(x + 4, y + 4) for x, y in SQUARE]
    found = contours(run(*SQUARE) + run(*other, first=10), ccw=True)
    assert [path.vertices[0][:2] for path in found] == [(0, 0), (4, 4)]
    assert [path.area for path in found] == [16, 16]


def test_contours_that_touch_in_two_points_are_parted_and_not_nested() -> None:
    left = run((0, 0), (-2, 5), (0, 10), (-6, 5), (0, 0))
    right = run((0, 0), (6, 5), (0, 10), (2, 5), (0, 0), first=10)
    assert [path.area for path in contours(left + right, ccw=True)] == [20, 20]
    turned = [(6, 5), (0, 0), (2, 5), (0, 10), (6, 5)], [(0, 0), (-6, 5), (0, 10), (-2, 5), (0, 0)]
    clockwise = run(*turned[0]) + run(*turned[1], first=10)
    assert [path.area for path in contours(clockwise, ccw=False)] == [-20, -20]


def test_a_hole_that_touches_its_outline_is_a_contour_of_its_own() -> None:
    outline = run((0, 0), (9, 0), (9, 9), (0, 9), (0, 0))
    hole = run((0, 0), (3, 6), (6, 3), (0, 0), first=10)
    assert [path.area for path in contours(outline + hole, ccw=True)] == [81, -13.5]


def test_a_piece_given_twice_counts_once() -> None:
    (path,) = contours(run(*SQUARE) + run((4, 0), (4, 4), first=10), ccw=True)
    assert path.area == 16


def test_parts_of_one_curve_become_one_segment_again() -> None:
    side = Segment(Point(0, 0), Point(4, 0))
    split = [Piece(0, 0.0, 1.0, side.sub(0, 1)), Piece(0, 1.0, 4.0, side.sub(1, 4))]
    (path,) = contours(split + run(*SQUARE)[1:], ccw=True)
    assert len(path.segments) == 4
    assert path.segments[0] == side


def test_parts_of_one_arc_keep_its_bulge() -> None:
    arc = Segment(Point(-5, 0), Point(5, 0), 1.0)
    parts = [Piece(0, 0.0, 4.0, arc.sub(0, 4)), Piece(0, 4.0, arc.length, arc.sub(4, arc.length))]
    (path,) = contours(parts + run((5, 0), (-5, 0), first=1), ccw=True)
    assert abs(path.segments[0].bulge - 1) < 1e-12
