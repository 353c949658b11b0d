"""Names on the pieces of a picture: where there is room, and clear of all lines."""

from __future__ import annotations

from patternforge.drafting.picture_names import name_on
from patternforge.drafting.rooms import Barrier
from patternforge.drawing.stacked import room
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point

FACE = rounded_rectangle(0, 0, 30, 20, 1)


def test_a_name_stands_beside_a_slit_and_not_on_it() -> None:
    slit = rounded_rectangle(14, 1, 15, 19, 0)
    box = room(name_on("wing", FACE, (slit,), ()))
    assert box.x1 < 14 or box.x0 > 15


def test_a_name_that_is_too_wide_stands_in_two_lines() -> None:
    narrow = rounded_rectangle(0, 0, 13, 20, 1)
    texts = name_on("left pocket", narrow, (), ())
    assert [text.content for text in texts] == ["left", "pocket"]
    box = room(texts)
    assert 0 < box.x0 < box.x1 < 13
    assert 0 < box.y0 < box.y1 < 20


def test_a_name_stands_on_what_is_not_covered() -> None:
    cover = rounded_rectangle(-5, -5, 35, 10, 0)
    assert room(name_on("left", FACE, (), (cover,))).y0 > 10
    assert name_on("left", FACE, (), (rounded_rectangle(-5, -5, 35, 25, 0),)) == ()


def test_a_name_keeps_clear_of_an_arrow() -> None:
    arrow = Barrier(Point(-5, 10), Point(35, 10), 2.0)
    box = room(name_on("left", FACE, (), (), (arrow,)))
    assert box.y0 > 12 or box.y1 < 8
