from __future__ import annotations

from math import cos, radians, sin

import pytest

from patternforge.drawing.extent import extent, moved, placed
from patternforge.drawing.model import Dot, Role, Stroke, Text
from patternforge.errors import GeometryError
from patternforge.geometry.path import from_vertices
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import flipped_x, rotation, translation
from tests.figures import panel, tilted


def test_an_arc_counts_to_its_crown_and_not_to_its_ends_alone() -> None:
    dome = Stroke(Role.OUTLINE, from_vertices([(0, 0, 0), (10, 0, 1.0)], closed=True))
    bounds = extent([dome])
    assert (bounds.x0, bounds.y0, bounds.x1, bounds.y1) == pytest.approx((0, 0, 10, 5), abs=1e-9)


def test_a_turned_rounded_rectangle_is_as_wide_as_its_corner_circles_reach() -> None:
    # Its corner centres span 24 x 14 mm; each corner reaches a radius of 3 mm beyond them in every direction.
    turn = radians(17)
    bounds = extent(tilted().inks)
    assert bounds.width == pytest.approx(24 * cos(turn) + 14 * sin(turn) + 6, abs=1e-9)
    assert bounds.height == pytest.approx(24 * sin(turn) + 14 * cos(turn) + 6, abs=1e-9)


def test_a_dot_counts_with_its_rim_and_a_text_with_its_anchor() -> None:
    dot, text = Dot(Role.HOLE, Point(0, 0), 2.0), Text(Role.LABEL, Point(5, -4), 3.0, "long words")
    assert extent([dot, text]) == Bounds(-1, -4, 5, 1)


def test_no_ink_has_no_extent() -> None:
    with pytest.raises(GeometryError, match="nothing is drawn"):
        extent([])


def test_a_moved_figure_keeps_its_name_group_and_the_order_of_its_inks() -> None:
    figure = panel()
    there = moved(figure, translation(3, -2))
    assert (there.name, there.group) == (figure.name, figure.group)
    assert [ink.role for ink in there.inks] == [ink.role for ink in figure.inks]


def test_a_text_turns_with_its_piece() -> None:
    text = placed(Text(Role.LABEL, Point(10, 0), 3.0, "up", angle=30.0), rotation(90))
    assert isinstance(text, Text)
    assert text.at.distance_to(Point(0, 10)) < 1e-9
    assert text.angle == pytest.approx(120.0)


def test_a_mirrored_arc_bulges_to_the_other_side() -> None:
    arc = Stroke(Role.OUTLINE, from_vertices([(0, 0, 0.5), (10, 0, 0)], closed=False))
    there = placed(arc, flipped_x(0.0))
    assert extent([arc]).y0 == pytest.approx(-2.5)
    assert extent([there]).y0 == pytest.approx(-2.5)
    assert extent([there]).x0 == pytest.approx(-10.0)
