"""The way the paper is held, and what is turned or split."""

from __future__ import annotations

import pytest

from patternforge.drawing.extent import extent
from patternforge.drawing.layout import Layout, layouts
from patternforge.drawing.model import Figure, Role, Stroke, Text
from patternforge.drawing.paper import A4, LETTER, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point

SETTINGS = PrintSettings("Sleeve", "A")


def panel(name: str, width: float, height: float) -> Figure:
    return Figure(name, "outer", (Stroke(Role.OUTLINE, rounded_rectangle(0, 0, width, height, 5)),))


def layout(figures: list[Figure], paper: Paper, settings: PrintSettings) -> Layout:
    return layouts(figures, paper, settings)[0]


def test_the_paper_stays_upright_when_both_ways_are_alike() -> None:
    assert layout([panel("tab", 40, 40)], A4, SETTINGS).paper == A4


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_the_paper_is_turned_for_a_wide_piece(paper: Paper) -> None:
    chosen = layout([panel("shell", 240, 95)], paper, SETTINGS)
    assert chosen.paper == paper.turned()
    assert not chosen.cells[0].turned


def test_a_piece_is_turned_only_where_it_fits_in_no_other_way() -> None:
    tall, broad = layout([panel("tall", 150, 240), panel("broad", 240, 160)], A4, SETTINGS).cells
    assert (tall.turned, broad.turned) == (False, True)
    box = extent(broad.figure.inks)
    assert (box.width, box.height) == pytest.approx((160, 240))


def test_only_a_piece_larger_than_every_page_is_split() -> None:
    chosen = layout([panel("tab", 40, 40), panel("strap", 420, 30)], A4, SETTINGS)
    assert [figure.name for figure, _ in chosen.grids] == ["strap"]
    assert chosen.cells[1].spot is None
    assert chosen.cells[0].spot is not None


def test_what_fits_only_the_other_way_is_not_split_but_has_its_own_page() -> None:
    # 255 mm fits the long side of Letter across, 235 x 180 mm fits it upright beside the bars, neither the other way.
    one, other = layouts([panel("strap", 255, 60), panel("apron", 180, 235)], LETTER, SETTINGS)
    assert {one.paper, other.paper} == {LETTER, LETTER.turned()}
    assert not one.grids
    assert not other.grids
    assert [cell.figure.name for layout in (one, other) for cell in layout.page(0)] == ["apron", "strap"]


def test_a_piece_may_take_all_the_width_below_the_upright_bars() -> None:
    chosen = layout([panel("strap", 277, 30)], A4, SETTINGS)
    assert not chosen.grids
    assert layout([panel("strap", 277.01, 30)], A4, SETTINGS).grids


def test_a_text_counts_with_all_its_letters() -> None:
    note = Text(Role.LABEL, Point(2, 5), 3.0, "W" * 30)  # 108 mm long, on a piece of 20 x 20 mm
    tag = Figure("tag", "outer", (*panel("tag", 20, 20).inks, note))
    first, second = (cell.spot for cell in layout([tag, panel("near", 20, 20)], A4, SETTINGS).cells)
    assert first is not None
    assert second is not None
    assert second.x - first.x > 100


def test_margins_that_leave_no_room_are_refused() -> None:
    with pytest.raises(DraftError, match=r"printable width of 110\.0 mm"):
        layout([panel("tab", 40, 40)], A4, PrintSettings("Sleeve", margin=50))
    with pytest.raises(DraftError, match=r"printable height of 110\.0 mm"):
        layout([panel("tab", 40, 40)], Paper("card", 190, 130, "none"), SETTINGS)
