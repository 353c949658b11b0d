"""Pictures to be looked at, set on printed pages one below the other: at true size where a page can take them so."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from patternforge.drawing.extent import placed
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Figure, Ink, Page, Role, Text
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.drawing.scaling import plain_scale, scaled
from patternforge.drawing.stacked import room
from patternforge.drawing.wrapping import filled
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import translation
from patternforge.units import mm

__all__ = ["Picture", "album_pages", "broken_lines"]

_TITLE, _TITLE_PITCH = 3.0, 7.0  # mm
_LETTERS, _PITCH = 2.5, 3.8
_BELOW = 2.0  # words to their picture, mm
_LEAST = 1.8  # height of letters in a picture drawn smaller, mm


@dataclass(frozen=True, slots=True)
class Picture:
    """A figure and the words above it; ``is_true``: it is drawn at true size, and a smaller scale is told."""

    figure: Figure
    words: str = ""
    is_true: bool = False


def album_pages(chapters: Sequence[Sequence[Picture]], paper: Paper, settings: PrintSettings) -> tuple[Page, ...]:
    """The printed pages of some chapters of pictures, each begun on a new page, its paper held as its pictures need.

    A picture too large for its page is drawn at the largest plain scale that fits; where it was at true size, its
    words say so. DraftError when there is no picture, or a word is wider than the page.

    >>> from patternforge.drawing.model import Dot
    >>> from patternforge.drawing.paper import A4
    >>> ring = Picture(Figure("ring", "", (Dot(Role.OUTLINE, Point(0, 0), 120.0),)), "A ring.", is_true=True)
    >>> [page.label for page in album_pages([[ring, ring, ring]], A4, PrintSettings("Rings"))]
    ['1', '2']
    """
    if not any(chapters):
        raise DraftError("there is no picture to print")
    sheets = [sheet for chapter in chapters if chapter for sheet in _chapter(chapter, paper, settings)]
    return tuple(
        _page(held, inks, number, len(sheets), settings) for number, (held, inks) in enumerate(sheets, start=1)
    )


def broken_lines(words: str, height: float, width: float) -> tuple[str, ...]:
    """``words`` in lines of at most ``width`` mm, in letters ``height`` mm high; DraftError for a word that is wider.

    >>> broken_lines("Sew the rim.", 2.5, 20.0)
    ('Sew the', 'rim.')
    """
    for word in words.split():
        if text_width(word, height) > width:
            raise DraftError(f"{word!r} is wider than the {width:.0f} mm there are for it; shorten it")
    return filled(words.split(), width, height)


def _chapter(
    chapter: Sequence[Picture], paper: Paper, settings: PrintSettings
) -> Iterator[tuple[Paper, tuple[Ink, ...]]]:
    held = _held(chapter, paper, settings)
    area = _room(held, settings)
    inks: list[Ink] = []
    top = area.y1
    for picture in chapter:
        block, height = _block(picture, area)
        if inks and top - height < area.y0:
            yield held, tuple(inks)
            inks, top = [], area.y1
        inks += (placed(ink, translation(area.x0, top)) for ink in block)
        top -= height + settings.gap
    yield held, tuple(inks)


def _held(chapter: Sequence[Picture], paper: Paper, settings: PrintSettings) -> Paper:
    """The paper turned where only so a picture of true size keeps it."""
    upright, turned = _room(paper, settings), _room(paper.turned(), settings)
    sizes = [room(picture.figure.inks) for picture in chapter if picture.is_true]
    gains = any(size.width > upright.width and size.width <= turned.width for size in sizes)
    return paper.turned() if gains else paper


def _room(paper: Paper, settings: PrintSettings) -> Bounds:
    area = printable_area(paper, settings)
    return Bounds(area.x0, area.y0, area.x1, area.y1 - _TITLE_PITCH)


def _block(picture: Picture, area: Bounds) -> tuple[list[Ink], float]:
    """The inks of a picture under its words, its upper left corner at the origin, and its height."""
    above = _words(picture.words, area.width)
    used = _PITCH * len(above) + (_BELOW if above else 0.0)
    figure, factor = _fitted(picture.figure, area.width, area.height - used - _PITCH)
    note = _words(f"Drawn at 1 : {mm(1 / factor)}.", area.width) if picture.is_true and factor < 1 else ()
    lines = [*above, *note]
    used += _PITCH * len(note)
    inks: list[Ink] = [
        Text(Role.LABEL, Point(0.0, -_PITCH * (row + 1) + 1.0), _LETTERS, words) for row, words in enumerate(lines)
    ]
    box = room(figure.inks)
    inks += (placed(ink, translation(-box.x0, -used - box.y1)) for ink in figure.inks)
    return inks, used + box.height


def _words(words: str, width: float) -> tuple[str, ...]:
    return broken_lines(words, _LETTERS, width)


def _fitted(figure: Figure, width: float, height: float) -> tuple[Figure, float]:
    """The figure as large as there is room, and the scale it is drawn at; letters shrink less and may need more."""
    box = room(figure.inks)
    factor = plain_scale(box.width, box.height, width, height)
    drawn = scaled(figure, factor, _LEAST) if factor < 1 else figure
    taken = room(drawn.inks)
    if factor < 1 and (taken.width > width or taken.height > height):
        factor = plain_scale(box.width * taken.width / width, box.height * taken.height / height, width, height)
        drawn = scaled(figure, factor)
    return drawn, factor


def _page(paper: Paper, inks: tuple[Ink, ...], number: int, count: int, settings: PrintSettings) -> Page:
    area = printable_area(paper, settings)
    title = Text(Role.LABEL, Point(area.x0, area.y1 - _TITLE), _TITLE, settings.heading)
    place = Text(Role.LABEL, Point(area.x1, area.y1 - _TITLE), _TITLE, f"{number} of {count}", 0.0, Align.RIGHT)
    page = Page(str(number), paper.width, paper.height, (title, place, *inks))
    return replace(page, x_factor=settings.x_correction, y_factor=settings.y_correction)
