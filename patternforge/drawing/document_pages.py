"""A document on printed pages: its name and the number of the page on each."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from patternforge.drawing.document import Document
from patternforge.drawing.extent import placed
from patternforge.drawing.model import Align, Ink, Page, Role, Stroke, Text
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.drawing.slabs import Slab, poured
from patternforge.drawing.typeset import Measure, document_slabs
from patternforge.drawing.wrapping import width_of
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import translation

__all__ = ["document_pages"]

_IMPRINT = 2.0  # height of the words at the foot of a page, mm
_FOOT = 3.4  # room for them, in their heights


def document_pages(document: Document, paper: Paper, settings: PrintSettings) -> tuple[Page, ...]:
    """The pages of a document on ``paper``, from its white rim inwards, numbered "page 1 of 3" at their foot.

    Of ``settings`` the margin, the corrections and the size of letters count. DraftError for a letter that cannot be
    drawn, and for what does not go on a page.
    """
    area = printable_area(paper, settings)
    imprint = _IMPRINT * settings.letters.factor
    foot = _FOOT * imprint
    slabs = document_slabs(document, Measure(area.width, settings.letters.factor))
    sheets = poured(slabs, area.height - foot)
    return tuple(
        Page(
            str(number),
            paper.width,
            paper.height,
            (*_set(slabs_here, area), *_foot(document.imprint, number, len(sheets), area, imprint)),
            settings.x_correction,
            settings.y_correction,
        )
        for number, slabs_here in enumerate(sheets, start=1)
    )


def _set(slabs: Sequence[Slab], area: Bounds) -> Iterable[Ink]:
    y = area.y1
    for number, slab in enumerate(slabs):
        y -= slab.above if number else 0.0
        yield from (placed(ink, translation(area.x0, y)) for ink in slab.inks)
        y -= slab.height


def _foot(imprint: str, number: int, pages: int, area: Bounds, height: float) -> tuple[Ink, ...]:
    """A rule, the imprint at the left, cut short where it is too long, and the number at the right."""
    line, y = area.y0 + 2.4 * height, area.y0 + 0.6 * height
    count = f"page {number} of {pages}"
    words = _short(imprint, area.width / height - width_of(count) - 2.0)
    return (
        Stroke(Role.TINT, polyline([Point(area.x0, line), Point(area.x1, line)])),
        Text(Role.LABEL, Point(area.x0, y), height, words),
        Text(Role.LABEL, Point(area.x1, y), height, count, 0.0, Align.RIGHT),
    )


def _short(words: str, room: float) -> str:
    if width_of(words) <= room:
        return words
    kept = next(n for n in range(len(words) - 1, -1, -1) if width_of(f"{words[:n]}...") <= room or n == 0)
    return f"{words[:kept]}..."
