"""The page shows what it is given, escaped, and says in words how the design stands."""

from __future__ import annotations

import pytest

from patternforge.live.page import SCRIPT, content_html, page_html, picture_path
from patternforge.live.shown import Picture, Shown, Standing

PICTURES = (Picture("Pieces & holes", b"<svg/>"), Picture("Sections", b"<svg/>"))


def test_text_of_the_design_is_shown_as_text() -> None:
    shown = Shown("<script>alert(1)</script>", Standing.LOOK, ("a < b", 'say "no" & go'), PICTURES)
    page = page_html(4, shown)
    assert "<script>alert" not in page
    assert "<title>&lt;script&gt;alert(1)&lt;/script&gt;</title>" in page
    assert "a &lt; b\nsay &quot;no&quot; &amp; go" in page
    assert "Pieces &amp; holes" in page


def test_every_picture_is_fetched_under_the_number_of_its_state() -> None:
    content = content_html(7, Shown("Sleeve", Standing.GOOD, (), PICTURES))
    assert [path in content for path in (picture_path(7, 0), picture_path(7, 1), picture_path(7, 2))] == [
        True,
        True,
        False,
    ]


@pytest.mark.parametrize(
    ("standing", "words"),
    [
        (Standing.GOOD, "\u2713 It fits."),
        (Standing.LOOK, "? It can be made, but look first."),
        (Standing.NO, "\u2717 It does not fit."),
        (Standing.FAULT, "\u2717 The design cannot be drafted as it is saved now."),
    ],
)
def test_how_it_stands_is_said_in_words_and_by_a_sign(standing: Standing, words: str) -> None:
    assert words in content_html(1, Shown("Sleeve", standing, ()))


def test_pictures_of_a_design_that_cannot_be_taken_are_marked_as_old() -> None:
    fault = content_html(2, Shown("Sleeve", Standing.FAULT, ("a.yaml:3:1: no",), PICTURES))
    assert fault.count(", as drafted last") == 2
    assert "as drafted last" not in content_html(2, Shown("Sleeve", Standing.NO, (), PICTURES))


def test_nothing_is_fetched_from_elsewhere() -> None:
    page = page_html(1, Shown("Sleeve", Standing.GOOD, (), PICTURES))
    assert "http:" not in page + SCRIPT
    assert "https:" not in page + SCRIPT
