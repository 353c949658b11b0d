"""Printed pages: what stands on them and what they are called."""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from patternforge.drawing.header import CHECK_MM
from patternforge.drawing.model import Align, Dot, Figure, Ink, Page, Role, Stroke, Text
from patternforge.drawing.paper import A3, A4, LEGAL, LETTER, PAPERS, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.drawing.tile import pages
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point

SETTINGS = PrintSettings("Two-fold wallet", "A")


def panel(name: str, width: float, height: float) -> Figure:
    outline = Stroke(Role.OUTLINE, rounded_rectangle(0, 0, width, height, 5))
    note = Text(Role.LABEL, Point(width / 2, height / 2), 3.0, name, align=Align.CENTRE)
    return Figure(name, "outer", (Dot(Role.HOLE, Point(4, 4), 1.0), outline, note))


def words(page: Page) -> list[str]:
    return [ink.content for ink in page.inks if isinstance(ink, Text)]


def labels(made: Iterable[Page]) -> list[str]:
    return [page.label for page in made]


def outlines(inks: Iterable[Ink]) -> list[Stroke]:
    return [ink for ink in inks if isinstance(ink, Stroke) and ink.role is Role.OUTLINE]


def test_every_page_says_what_it_is_and_how_to_print_it() -> None:
    made = pages([panel(f"panel {n}", 150, 120) for n in range(4)], A4, SETTINGS)
    assert labels(made) == ["1", "2"]
    for number, page in enumerate(made, start=1):
        said = " ".join(words(page))
        assert "Two-fold wallet, revision A" in said
        assert f"Page {number} of 2. Print at 100 %" in said
        assert "Measure the bars" in said


@pytest.mark.parametrize("paper", PAPERS.values(), ids=lambda paper: paper.name)
def test_pages_have_the_size_of_the_paper(paper: Paper) -> None:
    (page,) = pages([panel("tab", 40, 40)], paper, SETTINGS)
    assert {page.width, page.height} == {paper.width, paper.height}


@pytest.mark.parametrize("paper", [A3, A4, LETTER, LEGAL], ids=lambda paper: paper.name)
def test_check_bars_stand_on_every_page_both_ways(paper: Paper) -> None:
    for page in pages([panel("apron", 460, 460), panel("tab", 40, 40)], paper, SETTINGS):
        boxes = [ink.path.bounds for ink in page.inks if isinstance(ink, Stroke) and ink.role is Role.CHECK]
        assert sum(abs(box.width - CHECK_MM) < 1e-9 for box in boxes) == 1
        assert sum(abs(box.height - CHECK_MM) < 1e-9 for box in boxes) == 1


def test_a_turned_piece_is_named_on_its_page_alone() -> None:
    made = pages([panel("tall", 150, 240), panel("broad", 240, 160)], A4, SETTINGS)
    saying = [page.label for page in made if "Turned by 90 degrees: broad." in words(page)]
    assert len(made) == 2
    assert len(saying) == 1
    turned = next(page for page in made if page.label == saying[0])
    assert [ink.angle % 360 for ink in turned.inks if isinstance(ink, Text) and ink.content == "broad"] == [90]


def test_tiles_come_last_with_their_names() -> None:
    made = pages([panel("strap", 430, 30), panel("tab", 40, 40)], A4, SETTINGS)
    assert labels(made) == ["1", "strap A1", "strap A2"]
    assert "strap: tile A2 of 1 x 2." in words(made[2])
    assert "Lay crosses of one number on each other." in words(made[2])


def test_corrections_are_handed_to_the_writer_and_printed() -> None:
    corrected = PrintSettings("Two-fold wallet", "A", x_correction=1.004, y_correction=0.998)
    (page,) = pages([panel("tab", 40, 40)], A4, corrected)
    assert (page.x_factor, page.y_factor) == (1.004, 0.998)
    assert any("printer correction x 1.004 y 0.998" in said for said in words(page))
    assert outlines(page.inks)[0].path.bounds.width == pytest.approx(40)


def test_uncorrected_pages_say_nothing_of_correction() -> None:
    (page,) = pages([panel("tab", 40, 40)], A4, SETTINGS)
    assert (page.x_factor, page.y_factor) == (1, 1)
    assert not any("correction" in said for said in words(page))


def test_no_text_is_smaller_than_2_mm() -> None:
    made = pages([panel("apron", 460, 460)], A4, SETTINGS)
    assert min(ink.height for page in made for ink in page.inks if isinstance(ink, Text)) >= 2


def test_nothing_to_print_is_refused() -> None:
    with pytest.raises(DraftError, match="no piece"):
        pages([], A4, SETTINGS)
