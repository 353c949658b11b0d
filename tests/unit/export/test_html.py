"""Documents as HTML."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from patternforge.drawing.document import (
    Blank,
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
from patternforge.drawing.model import Align, Dot, Figure, Role, Sheet, Text
from patternforge.drawing.paper import A4, LETTER
from patternforge.drawing.printing import Letters, PrintSettings
from patternforge.errors import DraftError
from patternforge.export.html import html_bytes
from patternforge.geometry.point import Point

EVIL = '<script>alert("1")</script> & </style> </svg> url(x)'
RING = Sheet(
    "ring",
    40.0,
    40.0,
    (Figure("ring", "", (Dot(Role.OUTLINE, Point(20, 20), 38.0), Text(Role.LABEL, Point(5, 5), 2.0, EVIL))),),
)


def _document(words: str = EVIL) -> Document:
    table = Table(
        words,
        (Column(words), Column("", Align.RIGHT)),
        ((words, Blank.TICK), ("1", Blank.LINE)),
        (("in all", "2"),),
    )
    blocks = (
        Paragraph(words),
        Paragraph(words, Tone.LOUD),
        Paragraph(words, Tone.SMALL),
        Listing((words, "b")),
        table,
        Fields((words,)),
        Picture(RING, words, words),
        Step(1, words, Picture(RING, "", words)),
    )
    return Document(words, words, words, (Section(words, blocks),))


def _page(document: Document, settings: PrintSettings = PrintSettings("")) -> str:  # noqa: B008 - a frozen value
    return html_bytes(document, A4, settings).decode("utf-8")


def test_the_page_reads_as_xml_and_words_of_the_users_stay_words() -> None:
    root = ElementTree.fromstring(_page(_document()))
    tags = {element.tag for element in root.iter()}
    assert "script" not in tags
    assert {"header", "main", "section", "table", "caption", "figure", "svg", "article", "footer"} <= tags
    said = [element.text for element in root.iter() if element.text == EVIL]
    assert len(said) >= 12


def test_nothing_of_the_users_ends_the_style_sheet() -> None:
    page = _page(_document())
    assert page.count("</style>") == 1
    style = page[page.index("<style>") : page.index("</style>")]
    assert "<script" not in style
    assert "url(" not in style
    assert "alert(" not in style


def test_it_says_its_language_and_its_size_on_paper() -> None:
    page = html_bytes(_document("a"), LETTER, PrintSettings("", margin=12.0, letters=Letters.LARGE)).decode("utf-8")
    assert '<html lang="en">' in page
    assert "size: 215.9mm 279.4mm; margin: 12mm 12mm 14mm 12mm" in page
    assert "font-size: 15.75pt" in page


def test_no_two_elements_bear_the_same_name() -> None:
    root = ElementTree.fromstring(_page(_document("a")))
    names = [element.attrib["id"] for element in root.iter() if "id" in element.attrib]
    assert len(names) == len(set(names))


def test_heads_and_totals_stand_apart_from_rows() -> None:
    root = ElementTree.fromstring(_page(_document("a")))
    table = next(root.iter("table"))
    assert [child.tag for child in table] == ["caption", "thead", "tbody", "tfoot"]
    assert [cell.attrib["scope"] for cell in table.iter("th")] == ["col", "col"]


def test_pictures_have_their_true_size_and_a_text_for_who_cannot_see_them() -> None:
    root = ElementTree.fromstring(_page(_document("a ring")))
    drawn = list(root.iter("svg"))
    assert len(drawn) == 2
    assert all((each.attrib["width"], each.attrib["aria-label"]) == ("40mm", "a ring") for each in drawn)


def test_a_control_character_is_shown_in_words_and_refused_in_a_drawing() -> None:
    assert "\x07" not in _page(_document("a\x07b"))
    bad = Sheet("bad", 9.0, 9.0, (Figure("f", "", (Text(Role.LABEL, Point(1, 1), 2.0, "a\x07"),)),))
    with pytest.raises(DraftError, match="control character"):
        _page(Document("a", "", "", (Section("b", (Picture(bad, "", ""),)),)))
