"""The head of a page: its words and its check bars."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import pytest

from patternforge.drawing.clip import clipped
from patternforge.drawing.header import CHECK_INCH, CHECK_MM, Head, first_fitting, head_height, head_inks
from patternforge.drawing.model import Role, Stroke, Text
from patternforge.drawing.printing import Letters
from patternforge.errors import DraftError
from patternforge.export.pdf_pens import PENS as PDF_PENS
from patternforge.export.pdf_pens import Pen as PdfPen
from patternforge.export.svg import PENS as SVG_PENS
from patternforge.export.svg import Pen as SvgPen
from patternforge.geometry.point import Bounds

AREA = Bounds(10, 10, 200, 287)


Pen = PdfPen | SvgPen


def _dashes(pen: Pen) -> tuple[float, ...]:
    return pen.dash if isinstance(pen, PdfPen) else pen.dashes


def bars(heading: str = "Sleeve") -> list[Bounds]:
    inks = head_inks(Head(heading, "Page 1 of 1.", ()), AREA)
    return [ink.path.bounds for ink in inks if isinstance(ink, Stroke) and ink.role is Role.CHECK]


def words(head: Head) -> list[str]:
    return [ink.content for ink in head_inks(head, AREA) if isinstance(ink, Text)]


def test_both_ways_are_measured_by_100_mm_and_by_4_inches() -> None:
    assert sorted((round(bar.width, 9), round(bar.height, 9)) for bar in bars()) == [
        (3, 100.0),
        (3, 101.6),
        (100.0, 3),
        (101.6, 3),
    ]
    assert (CHECK_MM, CHECK_INCH) == (100, 4 * 25.4)


def test_each_bar_names_its_measure_inside_it() -> None:
    inks = head_inks(Head("Sleeve", "Page 1 of 1.", ()), AREA)
    captions = [ink for ink in inks if isinstance(ink, Text) and ink.role is Role.CHECK]
    assert sorted(caption.content for caption in captions) == ["100 mm", "100 mm", "4 in", "4 in"]
    for caption, bar in zip(captions, bars(), strict=True):
        assert clipped([caption], bar) == (caption,)


def test_the_bars_do_not_touch_each_other() -> None:
    shown = bars()
    for index, one in enumerate(shown):
        for other in shown[index + 1 :]:
            assert max(other.x0 - one.x1, one.x0 - other.x1, other.y0 - one.y1, one.y0 - other.y1) >= 0.5 - 1e-9


def test_the_upright_bars_hang_from_where_the_head_ends() -> None:
    top = AREA.y1 - head_height("Sleeve", AREA.width)
    assert max(bar.y1 for bar in bars() if bar.height > bar.width) == pytest.approx(top)


def test_a_long_heading_takes_more_lines_and_loses_no_word() -> None:
    heading = "Two-fold wallet for six cards and notes of two currencies with a divider and a coin pocket, revision C"
    assert head_height(heading, AREA.width) > head_height("Sleeve", AREA.width)
    said = words(Head(heading, "Page 1 of 1.", ()))
    assert " ".join(said).startswith(heading)
    assert len(bars(heading)) == 4


def test_a_heading_that_cannot_be_broken_is_refused() -> None:
    with pytest.raises(DraftError, match="shorten it"):
        head_height("W" * 120, AREA.width)


def test_the_shorter_wording_is_taken_where_the_fuller_does_not_fit() -> None:
    said = words(Head("Sleeve", "Page 1 of 1.", (("turned: " + "shell, " * 30, "turned: 30 pieces"),)))
    assert "turned: 30 pieces" in said


PLAIN = "Page 9 of 9. Print at 100 %, not fitted to the page."
CORRECTED = "Page 9 of 9. Print at 100 %, printer correction x 0.9804 y 1.0204."


@pytest.mark.parametrize("pens", [PDF_PENS, SVG_PENS])
@pytest.mark.parametrize(
    ("imprint", "width", "told"),
    [
        (PLAIN, 277, "Unbroken lines: cut. Long dashes: where a bend begins or ends. Short dashes: stitches."),
        (PLAIN, 190, "Unbroken: cut. Long dashes: fold. Short dashes: stitches."),
        (CORRECTED, 190, "Long dashes: fold, short: stitches."),
        (PLAIN, 160, "Long dashes: fold, short: stitches."),
    ],
)
def test_kinds_of_lines_are_told_apart_without_colour(
    imprint: str, width: int, told: str, pens: Mapping[Role, Pen]
) -> None:
    """What is said of the lines is true of the pens."""
    inks = head_inks(Head("Sleeve", imprint, ()), Bounds(10, 10, 10 + width, 287))
    assert f"{imprint} {told}" in [ink.content for ink in inks if isinstance(ink, Text)]
    cut, (fold, seam) = (Role.OUTLINE, Role.OPENING, Role.HOLE), (_dashes(pens[r]) for r in (Role.FOLD, Role.SEAM))
    assert not any(_dashes(pens[role]) for role in cut)
    assert fold[0] > 2 * seam[0] > 0


def test_no_wording_that_fits_is_refused() -> None:
    with pytest.raises(DraftError, match="'turned'"):
        first_fitting(["turned by 90 degrees", "turned"], 5, 2)


def test_no_text_of_the_head_is_smaller_than_2_mm() -> None:
    inks = head_inks(Head("Sleeve", "Page 1 of 1.", (("note",),)), AREA)
    assert min(ink.height for ink in inks if isinstance(ink, Text)) >= 2


def test_large_letters_are_half_as_large_again_and_keep_off_bars_and_notes() -> None:
    notes = (("Measure the bars.",), ("Join equal crosses.",), ("Split piece.",))
    area = Bounds(10, 10, 200, 287)
    usual, large = (head_inks(Head("Card sleeve", "Page 1 of 2.", notes, letters), area) for letters in Letters)
    for small, big in zip(usual, large, strict=True):
        if isinstance(small, Text) and isinstance(big, Text) and small.role is Role.LABEL:
            assert big.height == pytest.approx(1.5 * small.height)
    bottom = 287 - head_height("Card sleeve", 190, Letters.LARGE)
    texts = [ink for ink in large if isinstance(ink, Text) and ink.role is Role.LABEL]
    assert min(text.at.y for text in texts) > bottom
    rows = sorted({text.at.y for text in texts}, reverse=True)
    assert all(above - below >= 3.0 for above, below in pairwise(rows))
