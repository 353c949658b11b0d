"""The test strip as drawn."""

from __future__ import annotations

import pytest

from patternforge.drafting.purpose import Purpose
from patternforge.drafting.strip import TestStrip, strip_figure
from patternforge.drawing.extent import extent
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Role, Stroke, Text
from patternforge.errors import DraftError


@pytest.mark.parametrize("purpose", Purpose)
def test_a_strip_is_as_long_and_wide_as_asked_for_every_purpose(purpose: Purpose) -> None:
    figure = strip_figure(TestStrip(120.0, 25.0), purpose)
    (outline,) = [ink.path for ink in figure.inks if isinstance(ink, Stroke) and ink.role is Role.OUTLINE]
    assert (outline.bounds.width, outline.bounds.height, outline.is_ccw) == (120.0, 25.0, True)
    box = extent(figure.inks)
    assert (box.width, box.height) == (120.0, 25.0)


def test_the_middle_is_marked_at_both_edges_but_not_for_a_die() -> None:
    inks = strip_figure(TestStrip(), Purpose.LASER).inks
    marks = [ink.path for ink in inks if isinstance(ink, Stroke) and ink.role is Role.MARK]
    assert {point.x for mark in marks for point in (mark.start, mark.end)} == {50.0}
    assert sorted(point.y for mark in marks for point in (mark.start, mark.end)) == [0.0, 3.0, 17.0, 20.0]
    assert {ink.role for ink in strip_figure(TestStrip(), Purpose.DIE).inks} == {Role.OUTLINE}


@pytest.mark.parametrize("length", [60.0, 100.0, 280.0])
def test_words_keep_within_their_half_of_the_strip_and_clear_of_the_marks(length: float) -> None:
    words = [ink for ink in strip_figure(TestStrip(length), Purpose.PAPER).inks if isinstance(ink, Text)]
    assert len(words) == 4
    for text in words:
        half = text_width(text.content, text.height) / 2
        assert abs(text.at.x - length / 2) > half + 2
        assert half < text.at.x < length - half
        assert 3.0 < text.at.y < 17.0


@pytest.mark.parametrize(
    ("sizes", "named"),
    [
        ((59.0, 20.0, 3.0), "length"),
        ((281.0, 20.0, 3.0), "length"),
        ((100.0, 9.0, 3.0), "width"),
        ((100.0, 20.0, 17.0), "gauge"),
    ],
)
def test_a_strip_out_of_range_is_refused_by_name(sizes: tuple[float, float, float], named: str) -> None:
    with pytest.raises(DraftError, match=named):
        TestStrip(*sizes)
