"""Documents on printed pages."""

from __future__ import annotations

import pytest

from patternforge.drawing.document import (
    Block,
    Column,
    Document,
    Fields,
    Listing,
    Paragraph,
    Picture,
    Section,
    Step,
    Table,
    Tone,
)
from patternforge.drawing.document_pages import document_pages
from patternforge.drawing.model import Dot, Figure, Page, Role, Sheet, Text
from patternforge.drawing.paper import A4, LETTER, Paper
from patternforge.drawing.printing import Letters, PrintSettings, printable_area
from patternforge.drawing.stacked import room
from patternforge.errors import DraftError
from patternforge.geometry.point import Point

RING = Sheet("ring", 40.0, 40.0, (Figure("ring", "", (Dot(Role.OUTLINE, Point(20.0, 20.0), 38.0),)),))
WIDE = Sheet("bar", 150.0, 30.0, (Figure("bar", "", (Dot(Role.OUTLINE, Point(75.0, 15.0), 28.0),)),))
BLOCKS: tuple[Block, ...] = (
    Fields(("Made by", "Date", "Order")),
    Paragraph("A wallet that says nothing of itself. " * 20),
    Paragraph("Mind this.", Tone.LOUD),
    Listing(("cut away from your hand, " * 8, "measure")),
    Table("Rows", (Column("number"), Column("what")), tuple((str(i), f"row {i}") for i in range(90))),
    Picture(RING, "A ring.", "a ring"),
    Step(1, "Lay the ring on the bar.", Picture(RING, "", "a ring")),
    Step(2, "Sew.", Picture(WIDE, "", "a bar")),
)
DOCUMENT = Document("Card sleeve", "Making sheet", "sleeve.yaml, revision A", (Section("All", BLOCKS),))


def _texts(page: Page) -> list[str]:
    return [ink.content for ink in page.inks if isinstance(ink, Text)]


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])
@pytest.mark.parametrize("letters", list(Letters))
def test_all_is_drawn_within_the_white_rim_and_in_letters_that_can_be_read(paper: Paper, letters: Letters) -> None:
    settings = PrintSettings("", letters=letters)
    area = printable_area(paper, settings)
    for page in document_pages(DOCUMENT, paper, settings):
        box = room(page.inks)
        assert area.x0 - 1e-6 <= box.x0 <= box.x1 <= area.x1 + 1e-6
        assert area.y0 - 1e-6 <= box.y0 <= box.y1 <= area.y1 + 1e-6
        assert min(ink.height for ink in page.inks if isinstance(ink, Text)) >= 2.0 * letters.factor
        assert (page.width, page.height) == (paper.width, paper.height)


def test_every_page_bears_the_imprint_and_its_number_of_all() -> None:
    pages = document_pages(DOCUMENT, A4, PrintSettings(""))
    assert len(pages) > 1
    for number, page in enumerate(pages, start=1):
        assert _texts(page)[-2:] == [DOCUMENT.imprint, f"page {number} of {len(pages)}"]


def test_every_row_is_drawn_once_and_the_heads_on_every_page_of_the_table() -> None:
    pages = document_pages(DOCUMENT, A4, PrintSettings(""))
    said = [word for page in pages for word in _texts(page)]
    assert [said.count(f"row {i}") for i in range(90)] == [1] * 90
    holding = [page for page in pages if any(word.startswith("row ") for word in _texts(page))]
    assert len(holding) > 1
    assert all("number" in _texts(page) for page in holding)


def test_a_step_stays_with_its_picture() -> None:
    pages = document_pages(DOCUMENT, A4, PrintSettings(""))
    page = next(page for page in pages if "Sew." in _texts(page))
    assert any(isinstance(ink, Dot) and ink.diameter == 28.0 for ink in page.inks)


def test_an_imprint_too_long_for_its_line_is_cut_short() -> None:
    long = Document("A", "", "revision A, " + "long " * 60, DOCUMENT.sections)
    page = document_pages(long, A4, PrintSettings(""))[0]
    assert _texts(page)[-2].startswith("revision A, long")
    assert _texts(page)[-2].endswith("...")


def test_a_printers_correction_is_kept_beside_the_page() -> None:
    page = document_pages(DOCUMENT, A4, PrintSettings("", x_correction=1.01, y_correction=0.99))[0]
    assert (page.x_factor, page.y_factor) == (1.01, 0.99)


def test_a_picture_that_goes_on_no_page_is_refused() -> None:
    tall = Picture(Sheet("tall", 20.0, 400.0, ()), "", "tall")
    with pytest.raises(DraftError, match="do not go on a page"):
        document_pages(Document("A", "", "", (Section("B", (tall,)),)), A4, PrintSettings(""))
