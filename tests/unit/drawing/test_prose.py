"""Notes set in columns, and dimension lines beside what they measure."""

from __future__ import annotations

import pytest

from patternforge.drawing.dimension import DIMENSION, size_inks
from patternforge.drawing.lettering import letter_bounds, text_width
from patternforge.drawing.model import Role, Stroke, Text
from patternforge.drawing.prose import Note, notes_height, notes_inks
from patternforge.geometry.point import Bounds

NOTES = tuple(Note(f"Heading {i}", ("one point of some length to be broken",) * (i + 1)) for i in range(5))


@pytest.mark.parametrize("width", [20.0, 45.0, 90.0])
@pytest.mark.parametrize("word", ["edge", "cutting-edge-of-a-name-that-has-no-blank-anywhere"])
def test_no_line_is_wider_than_its_column_and_no_letter_is_lost(width: float, word: str) -> None:
    words = f"The inside of the {word} stands on it, rule and bevel outside it"
    note = Note("Which line is the edge", (words,))
    area = Bounds(0.0, 0.0, width, notes_height([note], width, 1, 2.0))
    lines = [ink for ink in notes_inks([note], area, 1, 2.0) if isinstance(ink, Text)]
    assert "".join(ink.content for ink in lines).replace(" ", "") == f"{note.heading}{words}".replace(" ", "")
    assert all(ink.at.x + text_width(ink.content, ink.height) <= width + 1e-9 for ink in lines)


@pytest.mark.parametrize("columns", [1, 2, 3, 4])
def test_notes_stay_in_their_area_and_do_not_overlap(columns: int) -> None:
    high = notes_height(NOTES, 180.0, columns, 2.0)
    area = Bounds(10.0, 200.0 - high, 190.0, 200.0)
    inks = [ink for ink in notes_inks(NOTES, area, columns, 2.0) if isinstance(ink, Text)]
    boxes = [box for ink in inks for box in [letter_bounds(ink)] if box]
    assert len({ink.at.x for ink in inks if ink.content.startswith("Heading")}) == columns
    for box in boxes:
        assert area.x0 - 1e-9 <= box.x0 <= box.x1 <= area.x1 + 1e-9
        assert area.y0 - 1e-9 <= box.y0 <= box.y1 <= area.y1 + 1e-9
    assert not [(a, b) for i, a in enumerate(boxes) for b in boxes[i + 1 :] if crossed(a, b)]


def crossed(a: Bounds, b: Bounds) -> bool:
    return a.x0 < b.x1 and b.x0 < a.x1 and a.y0 < b.y1 and b.y0 < a.y1


def test_more_columns_are_never_higher() -> None:
    heights = [notes_height(NOTES, 180.0 * columns, columns, 2.0) for columns in (1, 2, 3, 4, 5)]
    assert heights == sorted(heights, reverse=True)
    assert heights[0] > heights[-1]


def test_sizes_are_those_of_the_box_and_arrows_end_at_its_sides() -> None:
    box = Bounds(40.0, 60.0, 125.6, 113.98)
    inks = size_inks(box)
    assert [ink.content for ink in inks if isinstance(ink, Text)] == ["85.60 mm = 3.370 in", "53.98 mm = 2.125 in"]
    strokes = [ink.path for ink in inks if isinstance(ink, Stroke)]
    assert {ink.role for ink in inks} == {Role.SIZE}
    level = [path for path in strokes if path.bounds.height == 0]
    assert [(path.bounds.x0, path.bounds.x1) for path in level if path.bounds.width > 50] == [(box.x0, box.x1)]
    words = [box for ink in inks if isinstance(ink, Text) for box in [letter_bounds(ink)] if box]
    for reach in (*(path.bounds for path in strokes), *words):
        assert reach.x0 >= box.x0 - DIMENSION
        assert reach.y0 >= box.y0 - DIMENSION


def test_a_size_too_short_for_both_units_is_given_in_mm() -> None:
    inks = size_inks(Bounds(0, 0, 88.46, 27.44))
    assert [ink.content for ink in inks if isinstance(ink, Text)] == ["88.46 mm = 3.483 in", "27.44 mm"]
