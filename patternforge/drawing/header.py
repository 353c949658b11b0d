"""What stands at the head of every printed page: what it is, how to print it, and two pairs of bars to measure."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Ink, Role, Stroke, Text
from patternforge.drawing.printing import Letters
from patternforge.drawing.shelves import Size
from patternforge.drawing.wrapping import filled
from patternforge.errors import DraftError
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Bounds, Point
from patternforge.units import MM_PER_INCH

__all__ = ["CHECK_INCH", "CHECK_MM", "MAP", "UPRIGHT", "Head", "first_fitting", "head_height", "head_inks"]

CHECK_MM = 100.0
CHECK_INCH = 4 * MM_PER_INCH

_BAR = 3.0  # height of one bar, mm
_MOST_NOTES = 3
_BARS = 2 * _BAR + 0.5  # both bars, the mm bar outermost
_ABOVE, _BELOW = 2.2, 3.0  # free above and below the bars, mm
_TITLE, _TITLE_PITCH = 3.0, 5.0
_NOTE, _NOTE_PITCH, _IMPRINT_PITCH = 2.0, 2.8, 3.6
# In words that are true of the pens of every writer, and in black and white.
LEGEND = (
    "Unbroken lines: cut. Long dashes: where a bend begins or ends. Short dashes: stitches.",
    "Unbroken: cut. Long dashes: fold. Short dashes: stitches.",
    "Long dashes: fold, short: stitches.",
)
_ASIDE = CHECK_INCH + 4.0  # where the notes beside the bars begin, mm from the left

UPRIGHT = Size(_BARS, CHECK_INCH)  # the upright bars, which hang below the head at the left
MAP = Size(20.0, 9.0)  # kept free at the upper right for a page map


@dataclass(frozen=True, slots=True)
class Head:
    """The words of one page: ``heading`` may take several lines, ``notes`` stand beside the bars, at most three.

    What the kinds of lines mean, the ``legend``, is written after the ``imprint``, as fully as there is room.
    Each note is given in one or more wordings, the fullest first; the first that fits is written.
    """

    heading: str
    imprint: str
    notes: tuple[tuple[str, ...], ...]
    letters: Letters = Letters.USUAL
    legend: tuple[str, ...] = LEGEND


def head_height(heading: str, width: float, letters: Letters = Letters.USUAL) -> float:
    """How much of the height of an area ``width`` mm wide the head takes, mm; DraftError as in ``head_inks``.

    >>> round(head_height("Card sleeve", 190), 2)
    20.3
    """
    large = letters.factor
    titles = _TITLE_PITCH * len(_lines(heading, width - MAP.width, _TITLE * large))
    return (titles + _IMPRINT_PITCH) * large + _ABOVE + _BARS + _below(large)


def _below(large: float) -> float:
    """What is kept free below the level bars: where letters are large, the notes beside them reach further down."""
    return max(_BELOW, _MOST_NOTES * _NOTE_PITCH * large - _BARS + 1.0)


def head_inks(head: Head, area: Bounds) -> tuple[Ink, ...]:
    """Words and bars at the top of ``area``; DraftError when a word or a note is wider than its place."""
    width, large = area.width - MAP.width, head.letters.factor
    title, note = _TITLE * large, _NOTE * large
    y = area.y1
    inks: list[Ink] = []
    for line in _lines(head.heading, width, title):
        y -= _TITLE_PITCH * large
        inks.append(Text(Role.LABEL, Point(area.x0, y + 1.0), title, line))
    y -= _IMPRINT_PITCH * large
    imprint = first_fitting([*(f"{head.imprint} {legend}" for legend in head.legend), head.imprint], width, note)
    inks.append(Text(Role.LABEL, Point(area.x0, y + 0.6), note, imprint))
    corner = Point(area.x0, y - _ABOVE)
    inks += _notes(head.notes, corner + Point(_ASIDE, 0), area.width - _ASIDE, large)
    return (*inks, *_check_bars(corner, _below(large)))


def _notes(notes: Sequence[Sequence[str]], top: Point, width: float, large: float) -> list[Ink]:
    lines = [first_fitting(wordings, width, _NOTE * large) for wordings in notes]
    places = [top - Point(0, row * _NOTE_PITCH * large - 0.8) for row, _ in enumerate(lines, start=1)]
    return [Text(Role.LABEL, at, _NOTE * large, line) for at, line in zip(places, lines, strict=True)]


def _check_bars(corner: Point, below: float) -> tuple[Ink, ...]:
    """Two bars across and two upright, the mm bar outermost; the far ends of each are the measure."""
    across = corner - Point(0, _BAR), corner - Point(0, _BARS)
    upright = corner - Point(0, _BARS + below)
    inks: list[Ink] = []
    for (length, words), foot in zip(_MEASURES, across, strict=True):
        inks += [_box(foot, length, _BAR), _caption(foot + Point(length / 2, 0.5), words, 0.0)]
    for (length, words), x in zip(_MEASURES, (0.0, _BARS - _BAR), strict=True):
        foot = upright + Point(x, -length)
        inks += [_box(foot, _BAR, length), _caption(foot + Point(_BAR - 0.5, length / 2), words, 90.0)]
    return tuple(inks)


_MEASURES = ((CHECK_MM, "100 mm"), (CHECK_INCH, "4 in"))


def _box(foot: Point, width: float, height: float) -> Stroke:
    return Stroke(Role.CHECK, _oblong(foot, width, height))


def _oblong(foot: Point, width: float, height: float) -> Path:
    return polygon([foot, foot + Point(width, 0), foot + Point(width, height), foot + Point(0, height)])


def _caption(at: Point, words: str, angle: float) -> Text:
    return Text(Role.CHECK, at, _NOTE, words, angle, Align.CENTRE)


def _lines(words: str, width: float, height: float) -> tuple[str, ...]:
    """The heading in letters of that height broken into lines of at most ``width`` mm."""
    return filled((first_fitting([word], width, height) for word in words.split()), width, height)


def first_fitting(wordings: Sequence[str], width: float, height: float) -> str:
    """The first of ``wordings`` that takes at most ``width`` mm in letters of ``height`` mm; DraftError if none does.

    >>> first_fitting(["turned by 90 degrees", "turned"], 20, 2)
    'turned'
    """
    for words in wordings:
        if text_width(words, height) <= width:
            return words
    raise DraftError(f"{wordings[-1]!r} does not fit in the {width:.0f} mm it has at the head of a page; shorten it")
