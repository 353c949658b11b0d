"""The kerf comb: its slots, its formula by hand, its reading sheet."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternforge.drafting.comb import KerfComb, comb_figures, printed_figures, reading_figure
from patternforge.drafting.kerf import opening_cut, outline_cut
from patternforge.drawing.extent import extent
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point


def outline(index: int, comb: KerfComb | None = None) -> Path:
    ink = comb_figures(comb or KerfComb())[index].inks[-1]
    assert isinstance(ink, Stroke)
    assert ink.role is Role.OUTLINE
    return ink.path


def slots_of(path: Path) -> list[tuple[float, float]]:
    """Where each slot begins and ends, from the left: its two walls below the upper edge."""
    top, floor = path.bounds.y1, 10.0
    walls = sorted({s.start.x for s in path.segments if {s.start.y, s.end.y} == {top, floor}})
    return list(zip(walls[::2], walls[1::2], strict=True))


def test_the_slots_are_drawn_as_wide_as_the_formula_says() -> None:
    """A tongue of 8 mm: none of kerf 8 mm, 0.05 mm of it 7.9, and so on down to 8 - 2 x 0.6 = 6.8 mm."""
    widths = [end - start for start, end in slots_of(outline(0))]
    assert widths == pytest.approx([8.0, 7.9, 7.8, 7.7, 7.6, 7.5, 7.4, 7.3, 7.2, 7.1, 7.0, 6.9, 6.8])
    assert outline(1).bounds.width == 8.0


def test_teeth_stand_between_the_slots_and_the_outline_is_one_closed_contour() -> None:
    path = outline(0)
    slots = slots_of(path)
    assert [after[0] - before[1] for before, after in pairwise(slots)] == pytest.approx([4.0] * 12)
    assert path.closed
    assert path.is_ccw
    assert not any(segment.is_arc for segment in path.segments)


def test_a_worked_example_a_beam_of_017_mm_leaves_slot_4_as_the_last_that_takes_the_tongue() -> None:
    """Tongue 8 - 0.17 = 7.83 mm. Slot 4, drawn 7.7, becomes 7.87 mm and takes it; slot 5, drawn 7.6, is 7.77 mm."""
    comb = KerfComb()
    low, high = comb.kerf(4)
    assert (round(low, 9), round(high, 9)) == (0.15, 0.2)
    assert low <= 0.17 < high
    assert comb.kerf_by_width(7.83) == pytest.approx(0.17)


@given(st.floats(0.001, 0.599), st.sampled_from((0.05, 0.02, 0.1)))
def test_cut_by_a_beam_of_any_kerf_the_comb_tells_it_to_a_step(kerf: float, step: float) -> None:
    """The beam as drafting makes up for it, the other way round: outlines lose half of it, slots win as much."""
    comb = KerfComb(step)
    tongue = outline_cut(outline(1, comb), kerf, "tongue").bounds.width - 2 * kerf
    assert tongue == pytest.approx(comb.tongue - kerf)
    taken = 0
    for number, (start, end) in enumerate(slots_of(outline(0, comb)), start=1):
        hole = polygon([Point(start, 0), Point(end, 0), Point(end, 50), Point(start, 50)]).cw()
        wide = opening_cut(hole, kerf, "slot").bounds.width + 2 * kerf
        if wide >= tongue - 1e-12:
            taken = number
    if taken < comb.slots:
        low, high = comb.kerf(taken)
        assert low - 1e-9 <= kerf <= high + 1e-9


@pytest.mark.parametrize(
    ("slot", "says"),
    [(0, "slots 1 to 13, and no slot 0"), (14, "no slot 14"), (13, "narrowest slot takes the tongue")],
)
def test_a_slot_that_tells_nothing_is_refused(slot: int, says: str) -> None:
    with pytest.raises(DraftError, match=says):
        KerfComb().kerf(slot)


@pytest.mark.parametrize("measured", [8.2, 5.0])
def test_a_tongue_that_cannot_be_is_refused(measured: float) -> None:
    with pytest.raises(DraftError, match="cannot be: it was drawn 8 mm wide"):
        KerfComb().kerf_by_width(measured)


@pytest.mark.parametrize("step", [0.01, 0.3])
def test_steps_out_of_range_are_refused(step: float) -> None:
    with pytest.raises(DraftError, match=r"lawful is 0\.02 to 0\.2 mm"):
        KerfComb(step)


def test_letters_to_be_cut_are_strokes_in_the_plate_and_those_to_be_read_are_words() -> None:
    comb, _ = comb_figures(KerfComb())
    marks = [ink for ink in comb.inks if ink.role is Role.MARK]
    assert marks
    assert all(isinstance(ink, Stroke) for ink in comb.inks)
    box = extent(marks)
    assert 0 < box.y0 < box.y1 < 10
    printed, _ = printed_figures(KerfComb())
    assert [ink.content for ink in printed.inks if isinstance(ink, Text)][:4] == ["0.00", "0.05", "0.10", "0.15"]


def test_the_reading_sheet_has_a_line_for_each_slot_and_none_runs_out_of_its_frame() -> None:
    reading = reading_figure(KerfComb())
    words = [ink for ink in reading.inks if isinstance(ink, Text)]
    assert sum(text.content.startswith("last slot") for text in words) == 13
    assert "last slot 4: kerf 0.15 to 0.20 mm, take 0.175" in [text.content for text in words]
    frame = reading.inks[0]
    assert isinstance(frame, Stroke)
    assert all(text.at.x + text_width(text.content, text.height) < frame.path.bounds.x1 for text in words)
    assert all(frame.path.bounds.y0 < text.at.y < frame.path.bounds.y1 - text.height for text in words)
