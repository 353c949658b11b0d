"""Pictures one below the other."""

from __future__ import annotations

import pytest

from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Dot, Figure, Role, Text
from patternforge.drawing.stacked import room, stacked
from patternforge.errors import DraftError, GeometryError
from patternforge.geometry.point import Bounds, Point

RING = Figure("ring", "", (Dot(Role.OUTLINE, Point(40, 7), 20.0),))
WORDS = Figure("words", "", (Text(Role.LABEL, Point(0, 0), 3.0, "three-fold"),))


def test_letters_count_with_all_their_width() -> None:
    assert room(WORDS.inks).width == pytest.approx(text_width("three-fold", 3.0), abs=1.0)
    assert room(WORDS.inks).width > 10


def test_pictures_stand_flush_left_from_the_top_in_the_order_given() -> None:
    sheet = stacked([RING, WORDS, RING], 5.0, "all")
    boxes = [room(figure.inks) for figure in sheet.figures]
    assert [figure.name for figure in sheet.figures] == ["ring", "words", "ring"]
    assert [box.x0 for box in boxes] == pytest.approx([5.0, 5.0, 5.0])
    assert boxes[0] == Bounds(5.0, sheet.height - 25.0, 25.0, sheet.height - 5.0)
    assert boxes[0].y0 - boxes[1].y1 == pytest.approx(5.0)
    assert boxes[2].y0 == pytest.approx(5.0)
    assert sheet.width == pytest.approx(max(20.0, boxes[1].width) + 10.0)


def test_no_picture_no_ink_and_a_negative_gap_are_refused() -> None:
    with pytest.raises(DraftError, match="no picture"):
        stacked([], 5.0, "none")
    with pytest.raises(DraftError, match="gap"):
        stacked([RING], -1.0, "rings")
    with pytest.raises(GeometryError):
        room(())
