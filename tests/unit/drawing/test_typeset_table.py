"""Tables in stroke letters."""

from __future__ import annotations

from itertools import pairwise

import pytest

from patternforge.drawing.document import Blank, Column, Table
from patternforge.drawing.lettering import letter_bounds, text_width
from patternforge.drawing.model import Align, Stroke, Text
from patternforge.drawing.slabs import Slab
from patternforge.drawing.typeset_table import column_widths, table_slabs

HEIGHT = 2.0
WORDS = Table(
    "Pieces",
    (Column(""), Column("piece"), Column("net area", Align.RIGHT), Column("where")),
    (
        (Blank.TICK, "shell", "195.60 cm2", "a long tale of where it lies and of what is done to it there"),
        (Blank.TICK, "note divider", "1.00 cm2", "behind"),
    ),
    (("", "in all", "196.60 cm2", ""),),
)


def _texts(slab: Slab) -> list[Text]:
    return [ink for ink in slab.inks if isinstance(ink, Text)]


@pytest.mark.parametrize("width", [70.0, 100.0, 190.0])
def test_columns_fill_the_width_and_words_stay_in_their_columns(width: float) -> None:
    widths = column_widths(WORDS, width, HEIGHT)
    assert sum(widths) == pytest.approx(width)
    edges = [sum(widths[:i]) for i in range(len(widths) + 1)]
    for slab in table_slabs(WORDS, width, HEIGHT):
        for text in _texts(slab):
            box = letter_bounds(text)
            assert box is not None
            assert 0.0 <= box.x0 <= box.x1 <= width
            assert -slab.height < box.y0 <= box.y1 < 0.0
            if len(_texts(slab)) > 1:
                assert any(low <= box.x0 and box.x1 <= high for low, high in pairwise(edges))


def test_a_number_is_never_parted_from_its_unit() -> None:
    for width in (60.0, 80.0):
        said = [text.content for slab in table_slabs(WORDS, width, HEIGHT) for text in _texts(slab)]
        assert "195.60 cm2" in said


def test_long_words_are_broken_into_lines_that_make_the_row_deeper() -> None:
    caption, head, first, second, _ = table_slabs(WORDS, 90.0, HEIGHT)
    assert first.height > second.height
    assert caption.keeps
    assert head.keeps


def test_the_last_row_stays_with_the_totals_and_heads_are_set_again() -> None:
    _, head, first, second, total = table_slabs(WORDS, 190.0, HEIGHT)
    assert (first.keeps, second.keeps, total.keeps) == (False, True, False)
    assert all(slab.head is not None and slab.head.inks == head.inks for slab in (first, second, total))


def test_a_box_to_tick_is_a_square() -> None:
    first = table_slabs(WORDS, 190.0, HEIGHT)[2]
    boxes = [ink.path.bounds for ink in first.inks if isinstance(ink, Stroke) and ink.path.closed]
    assert len(boxes) == 1
    assert boxes[0].width == pytest.approx(boxes[0].height)


def test_a_word_too_long_for_any_column_is_broken_between_letters() -> None:
    word = "w" * 120
    table = Table("", (Column("a"), Column("b")), ((word, word),))
    lines = [text.content for text in _texts(table_slabs(table, 80.0, HEIGHT)[1])]
    assert "".join(lines) == word * 2
    assert all(text_width(line, HEIGHT) <= 40.0 for line in lines)


def test_a_row_with_a_cell_too_many_is_refused() -> None:
    with pytest.raises(ValueError, match="table 'Pieces'"):
        Table("Pieces", (Column("a"),), (("1", "2"),))
