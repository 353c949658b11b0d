"""Pictures on printed pages."""

from __future__ import annotations

from itertools import pairwise

import pytest

from patternforge.drawing.album import Picture, album_pages, broken_lines
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Area, Dot, Figure, Page, Role, Stroke, Text
from patternforge.drawing.paper import A4, LETTER, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.drawing.scaling import plain_scale, scaled
from patternforge.drawing.stacked import room
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point

SETTINGS = PrintSettings("Sleeve", margin=12.0)


def plate(width: float, height: float) -> Figure:
    return Figure("plate", "", (Stroke(Role.OUTLINE, rounded_rectangle(0.0, 0.0, width, height, 2.0)),))


def drawn(page: Page) -> list[tuple[float, float]]:
    boxes = [ink.path.bounds for ink in page.inks if isinstance(ink, Stroke)]
    return [(round(box.width, 6), round(box.height, 6)) for box in boxes]


def words(page: Page) -> list[str]:
    return [ink.content for ink in page.inks if isinstance(ink, Text)]


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_nothing_is_printed_beyond_the_margins(paper: Paper) -> None:
    pictures = [Picture(plate(width, 70.0), "One step. " * 30) for width in (40.0, 500.0, 150.0, 190.0)]
    for page in album_pages([pictures], paper, SETTINGS):
        box = room(page.inks)
        assert box.x0 >= 12.0 - 1e-6
        assert box.y0 >= 12.0 - 1e-6
        assert box.x1 <= page.width - 12.0 + 1e-6
        assert box.y1 <= page.height - 12.0 + 1e-6


def test_pictures_on_a_page_do_not_touch() -> None:
    for page in album_pages([[Picture(plate(100.0, 60.0))] * 7], A4, SETTINGS):
        tops = sorted((ink.path.bounds.y1, ink.path.bounds.y0) for ink in page.inks if isinstance(ink, Stroke))
        assert all(low[0] < high[1] for low, high in pairwise(tops))


def test_what_fits_keeps_its_true_size_if_need_be_on_paper_held_the_other_way() -> None:
    upright, turned = album_pages(
        [[Picture(plate(180.0, 50.0), "", True)], [Picture(plate(250.0, 50.0), "", True)]], A4, SETTINGS
    )
    assert (upright.width, turned.width) == (210.0, 297.0)
    assert (drawn(upright), drawn(turned)) == ([(180.0, 50.0)], [(250.0, 50.0)])
    assert not any("Drawn at" in word for page in (upright, turned) for word in words(page))


def test_what_does_not_fit_is_drawn_smaller_and_its_scale_is_told() -> None:
    (page,) = album_pages([[Picture(plate(400.0, 100.0), "", True)]], A4, SETTINGS)
    ((width, height),) = drawn(page)
    assert width / 400.0 == pytest.approx(height / 100.0) == pytest.approx(0.4)
    assert "Drawn at 1 : 2.50." in words(page)


def test_a_chapter_begins_on_a_new_page_and_pages_are_numbered() -> None:
    pages = album_pages([[Picture(plate(50.0, 50.0))], [Picture(plate(50.0, 50.0))]], A4, SETTINGS)
    assert [page.label for page in pages] == ["1", "2"]
    assert "2 of 2" in words(pages[1])
    with pytest.raises(DraftError, match="no picture"):
        album_pages([[]], A4, SETTINGS)


def test_lines_are_broken_where_they_would_be_too_wide_and_no_word_is_lost() -> None:
    said = "Lay the pocket on the shell and sew the rim with a stitch beyond either mouth."
    lines = broken_lines(said, 2.5, 40.0)
    assert " ".join(lines) == said
    assert all(text_width(line, 2.5) <= 40.0 for line in lines)
    with pytest.raises(DraftError, match="'unbreakable' is wider"):
        broken_lines("an unbreakable word", 2.5, 8.0)


def test_a_figure_is_scaled_with_all_that_is_in_it_and_letters_stay_readable() -> None:
    path = rounded_rectangle(0.0, 0.0, 40.0, 20.0, 5.0)
    inks = (Area(Role.TINT, (path,), 0.5), Stroke(Role.OUTLINE, path), Text(Role.LABEL, Point(8.0, 4.0), 2.0, "a"))
    area, stroke, text = scaled(Figure("f", "", inks), 0.5, 1.8).inks
    assert isinstance(area, Area)
    assert isinstance(stroke, Stroke)
    assert area.paths[0].area == pytest.approx(path.area / 4)
    assert stroke.path.length == pytest.approx(path.length / 2)
    # Letters that are made higher than their scale keep their middle: (1.8 - 1.0) / 2 further down.
    assert isinstance(text, Text)
    assert (text.at.x, text.at.y, text.height) == pytest.approx((4.0, 1.6, 1.8))
    with pytest.raises(DraftError, match="as large"):
        scaled(Figure("f", "", (Dot(Role.HOLE, Point(0, 0), 1.0),)), 0.0)


def test_the_largest_plain_scale_that_fits_is_taken() -> None:
    assert plain_scale(100.0, 50.0, 100.0, 50.0) == 1.0
    assert plain_scale(100.1, 50.0, 100.0, 50.0) == 0.8
    assert plain_scale(5000.0, 50.0, 100.0, 50.0) == 0.1
