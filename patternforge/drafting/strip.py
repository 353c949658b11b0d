"""The test strip: cut from a leather, folded round a gauge and read, it tells where the neutral fibre lies."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.drafting.purpose import Purpose
from patternforge.drawing.model import Align, Figure, Ink, Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.path import polygon, polyline
from patternforge.geometry.point import Point

__all__ = ["TestStrip", "strip_figure"]

_SHORTEST, _LONGEST = 60.0, 280.0  # mm: legs long enough to hold and to read, and a whole strip on one page
_NARROWEST, _WIDEST = 10.0, 60.0
_TICK = 3.0  # length of the marks at the middle, mm
_LETTERS = 2.5


@dataclass(frozen=True, slots=True)
class TestStrip:
    """A strip ``length`` x ``width`` mm (60 to 280 x 10 to 60) to be folded round a stack ``gauge`` mm thick.

    DraftError outside these ranges.

    >>> TestStrip(length=100.0, width=20.0, gauge=3.0).length
    100.0
    """

    __test__ = False  # a strip for testing leather, no test of the program

    length: float = 100.0
    width: float = 20.0
    gauge: float = 3.0

    def __post_init__(self) -> None:
        _require("length", self.length, _SHORTEST, _LONGEST)
        _require("width", self.width, _NARROWEST, _WIDEST)
        _require("gauge", self.gauge, 0.0, self.length / 6)


def strip_figure(strip: TestStrip, purpose: Purpose) -> Figure:
    """The strip with its middle marked at both edges; on paper also with what to do with it.

    A die maker gets the net edge alone.
    """
    length, width = strip.length, strip.width
    corners = [Point(0, 0), Point(length, 0), Point(length, width), Point(0, width)]
    edge = Stroke(Role.OUTLINE, polygon(corners))
    ticks: tuple[Ink, ...] = tuple(
        Stroke(Role.MARK, polyline([Point(length / 2, a), Point(length / 2, b)]))
        for a, b in ((0.0, _TICK), (width - _TICK, width))
    )
    cut = (edge,) if purpose is Purpose.DIE else (*ticks, edge)
    words = _words(strip) if purpose is Purpose.PAPER else ()
    return Figure("test strip", "test strip", (*cut, *words))


def _words(strip: TestStrip) -> tuple[Text, ...]:
    """What it is and how it is used, in the two halves of the strip."""
    left, right, y = strip.length / 4, 3 * strip.length / 4, strip.width / 2
    said = [
        (Point(left, y + 0.5), f"{strip.length:g} mm long"),
        (Point(left, y - 3.5), "fold, showing face out"),
        (Point(right, y + 0.5), f"round {strip.gauge:g} mm"),
        (Point(right, y - 3.5), "read both legs"),
    ]
    return tuple(
        Text(Role.LABEL, at, _fitting(words, strip.length / 2), words, 0.0, Align.CENTRE) for at, words in said
    )


def _fitting(words: str, room: float) -> float:
    """The height of letters with which the words keep within the room, at most the usual one."""
    from patternforge.drawing.lettering import text_width

    return min(_LETTERS, (room - 6.0) / text_width(words, 1.0))


def _require(what: str, value: float, low: float, high: float) -> None:
    if not low <= value <= high:
        raise DraftError(f"the {what} of a test strip is {value:g} mm; lawful is {low:g} to {high:g} mm")
