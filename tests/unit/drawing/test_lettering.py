"""Texts as strokes: height, place, direction."""

from __future__ import annotations

import pytest

from patternforge.drawing.extent import extent
from patternforge.drawing.lettering import letter_strokes, text_width
from patternforge.drawing.model import Align, Role, Text
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point


def box(text: Text) -> Bounds:
    return extent(letter_strokes(text))


def test_capitals_have_the_height_of_the_text_and_stand_on_the_base_line() -> None:
    bounds = box(Text(Role.LABEL, Point(10, 20), 3.0, "HEX"))
    assert (bounds.y0, bounds.y1) == pytest.approx((20, 23), abs=1e-12)


@pytest.mark.parametrize(("align", "start"), [(Align.LEFT, 0.0), (Align.CENTRE, 0.5), (Align.RIGHT, 1.0)])
def test_the_line_starts_centres_or_ends_at_its_place(align: Align, start: float) -> None:
    left = box(Text(Role.LABEL, Point(0, 0), 3.0, "HOLE"))
    placed = box(Text(Role.LABEL, Point(0, 0), 3.0, "HOLE", align=align))
    assert left.x0 - placed.x0 == pytest.approx(start * text_width("HOLE", 3.0), abs=1e-12)


def test_a_text_turned_by_90_degrees_runs_upwards() -> None:
    flat, upright = (
        box(Text(Role.LABEL, Point(0, 0), 3.0, "HOLE")),
        box(Text(Role.LABEL, Point(0, 0), 3.0, "HOLE", 90)),
    )
    assert (upright.y0, upright.y1) == pytest.approx((flat.x0, flat.x1), abs=1e-12)
    assert (upright.x0, upright.x1) == pytest.approx((-flat.y1, -flat.y0), abs=1e-12)


def test_the_strokes_of_a_line_of_text_lie_within_its_width() -> None:
    bounds = box(Text(Role.LABEL, Point(0, 0), 2.0, "Rückseite, oben"))
    assert bounds.x0 > 0
    assert bounds.x1 < text_width("Rückseite, oben", 2.0)


def test_a_composed_and_a_decomposed_letter_are_drawn_alike() -> None:
    composed, decomposed = (Text(Role.LABEL, Point(0, 0), 2.0, words) for words in ("é", "e\u0301"))
    assert letter_strokes(composed) == letter_strokes(decomposed)


def test_strokes_carry_the_role_of_their_text() -> None:
    assert {stroke.role for stroke in letter_strokes(Text(Role.MARK, Point(0, 0), 2.0, "AB"))} == {Role.MARK}


def test_an_empty_text_takes_no_room() -> None:
    assert letter_strokes(Text(Role.LABEL, Point(0, 0), 2.0, "")) == ()
    assert text_width("", 2.0) == 0


def test_widths_add_up() -> None:
    assert text_width("slot 12", 2.0) == pytest.approx(text_width("slot", 2.0) + text_width(" 12", 2.0))


@pytest.mark.parametrize("height", [0.0, -2.0, float("nan"), float("inf")])
def test_a_height_that_cannot_be_drawn_is_refused(height: float) -> None:
    with pytest.raises(DraftError, match="height"):
        letter_strokes(Text(Role.LABEL, Point(0, 0), height, "A"))


def test_an_unknown_letter_is_named_and_nothing_is_dropped() -> None:
    with pytest.raises(DraftError, match="CJK UNIFIED IDEOGRAPH"):
        letter_strokes(Text(Role.LABEL, Point(0, 0), 2.0, "A 革 B"))
