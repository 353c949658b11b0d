"""Travel and tallies by hand; what becomes of a sheet put in order."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from patternforge.drawing.course import Course
from patternforge.drawing.model import Dot, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.drawing.shortest import shortest
from patternforge.drawing.travel import Tally, ends, tallies, travel
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point

EDGE = Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 50, 30, 4))
SLIT = Stroke(Role.HOLE, polyline([Point(10, 10), Point(13, 14)]))
HOLE = Dot(Role.HOLE, Point(20, 10), 2.0)


def one(*inks: Ink) -> Sheet:
    return Sheet("sheet", 50, 30, (Figure("piece", "outer", inks),))


def test_a_line_is_left_at_its_end_a_closed_one_where_it_was_begun_a_circle_at_its_right() -> None:
    assert ends(SLIT) == (Point(10, 10), Point(13, 14))
    assert ends(EDGE) == (EDGE.path.start, EDGE.path.start)
    assert ends(HOLE) == (Point(21, 10), Point(21, 10))


def test_travel_is_the_way_between_lines_and_neither_to_the_first_nor_from_the_last() -> None:
    # (13, 14) to (21, 10): 8 and 4; then to the outline's start at (4, 0): 17 and 10.
    assert travel(one(SLIT, HOLE, EDGE)) == pytest.approx(sqrt(80) + sqrt(389))
    assert travel(one(EDGE)) == 0.0


def test_tallies_count_and_measure_by_role_over_all_sheets() -> None:
    rim = 2 * (42 + 22) + 2 * pi * 4
    found = tallies([one(SLIT, HOLE, EDGE), one(EDGE)])
    assert [(each.role, each.count) for each in found] == [(Role.HOLE, 2), (Role.OUTLINE, 2)]
    assert [each.length for each in found] == pytest.approx([5 + 2 * pi, 2 * rim])
    assert tallies([one(Text(Role.LABEL, Point(0, 0), 2.0, "A"))]) == ()
    assert Tally(Role.HOLE, 1, 2.0).length == 2.0


def test_slits_in_a_row_are_cut_from_end_to_end_every_second_one_backwards() -> None:
    """Five parallel slits 2 mm long and 4 mm apart, up, across, down, across: 16 mm, not four times sqrt(20)."""
    slits = [Stroke(Role.HOLE, polyline([Point(x, 5), Point(x, 7)])) for x in (8, 0, 16, 4, 12)]
    found = shortest(one(*slits))
    assert travel(found) == pytest.approx(16.0)
    rising = [ink.path.end.y > ink.path.start.y for ink in found.figures[0].inks if isinstance(ink, Stroke)]
    assert sorted([rising[:-1], rising[1:]]) == [[False, True, False, True], [True, False, True, False]]


def test_an_outline_is_begun_on_the_side_next_to_the_last_hole() -> None:
    holes = [Dot(Role.HOLE, Point(45, y), 1.0) for y in (8, 15)]
    found = shortest(one(*holes, EDGE)).figures[0].inks[-1]
    assert isinstance(found, Stroke)
    assert (found.path.start.x, found.path.start.y) == pytest.approx((50, 15))
    assert found.path.is_ccw


def test_where_a_straight_run_would_be_a_detour_a_contour_is_begun_where_it_was() -> None:
    """Two thin tabs end to end, begun at the corners that face each other: their sides' middles lie farther apart."""
    left = Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 40, 3, 0).reversed())
    start = next(i for i, s in enumerate(left.path.segments) if (s.start.x, s.start.y) == (40, 0))
    turned = left.path.segments[start:] + left.path.segments[:start]
    left = Stroke(Role.OUTLINE, type(left.path)(turned, closed=True).ccw())
    right = Stroke(Role.OUTLINE, rounded_rectangle(42, 0, 82, 3, 0))
    sheet = Sheet("sheet", 90, 9, (Figure("left", "a", (left,)), Figure("right", "a", (right,))))
    assert travel(sheet) == pytest.approx(2.0)
    assert travel(shortest(sheet)) == pytest.approx(2.0)


def test_what_is_no_line_cannot_be_put_in_order() -> None:
    with pytest.raises(DraftError, match="a label that is no line cannot be cut"):
        shortest(one(Text(Role.LABEL, Point(0, 0), 2.0, "A"), EDGE))


def test_operation_by_operation_pieces_are_exchanged_within_each_operation_alone() -> None:
    dots = {
        role: [Figure(f"{role.value} {x}", "a", (Dot(role, Point(x, 5), 1.0),)) for x in (10, 0, 20)]
        for role in (Role.HOLE, Role.OUTLINE)
    }
    sheet = Sheet("sheet", 30, 9, (*dots[Role.HOLE], *dots[Role.OUTLINE]))
    found = shortest(sheet, Course.OPERATIONS)
    roles = [figure.inks[0].role for figure in found.figures]
    assert roles == [Role.HOLE] * 3 + [Role.OUTLINE] * 3
    assert travel(found) == pytest.approx(40.0)
