"""A machine's sheet drawn once more to be looked at beside the machine: names, sizes, order, a bar to measure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from patternforge.drawing.extent import extent, moved
from patternforge.drawing.model import Align, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import translation
from patternforge.units import mm

__all__ = ["WARNING", "look_sheet"]

WARNING = "NOT TO BE CUT BY. To look at beside the machine."

_RIM = 8.0  # free round the sheet, mm
_TITLE, _NOTE = 4.0, 2.6  # letters, mm
_LINE = 1.7  # from line to line, in letters
_HEAD = 34.0  # over the sheet, mm
_BAR, _BAR_HEIGHT = 100.0, 3.0
_WIDE = 1.05  # of its height, more than a letter takes on the average in plain faces; from memory
_LARGEST, _LEAST = 4.0, 1.2


def look_sheet(sheet: Sheet, file: str, told: Sequence[str]) -> Sheet:
    """The sheet as it is cut, in its frame, each piece with its place in the order, name and size over all.

    Above it stand a warning, the name of the cutting ``file``, what is ``told``, and a bar of 100 mm. Sizes are those
    of the lines as they are cut, kerf and allowance included.
    """
    lines = [WARNING, file, *told, f"Sheet {_by(sheet.width, sheet.height)}. Numbers give the order of the pieces."]
    width = max(sheet.width, _BAR, *(_width(line, _NOTE) for line in lines), _width(WARNING, _TITLE)) + 2 * _RIM
    head = max(_HEAD, (len(lines) + 1) * _NOTE * _LINE + _TITLE * _LINE + _BAR_HEIGHT + 6.0)
    up = translation(_RIM, _RIM)
    drawn = [moved(figure, up) for figure in sheet.figures]
    frame = Figure("sheet", "", (Stroke(Role.GUIDE, _box(Point(_RIM, _RIM), sheet.width, sheet.height)),))
    names = [Figure("name", "", tuple(_name_inks(n, each))) for n, each in enumerate(_pieces(drawn), start=1)]
    height = sheet.height + 2 * _RIM + head
    words = Figure("head", "", tuple(_head_inks(lines, Point(_RIM, height - _RIM))))
    return replace(
        sheet, name=f"{file}: not to be cut by", width=width, height=height, figures=(*drawn, frame, *names, words)
    )


def _pieces(figures: Sequence[Figure]) -> list[Figure]:
    """The figures that stand for pieces: those with an outline, all where none is drawn."""
    with_outline = [each for each in figures if any(ink.role is Role.OUTLINE for ink in each.inks)]
    return with_outline or list(figures)


def _name_inks(number: int, figure: Figure) -> Iterator[Ink]:
    edge = [ink for ink in figure.inks if ink.role is Role.OUTLINE] or figure.inks
    box = extent(edge)
    words = [f"{number}  {figure.name}", _by(box.width, box.height), figure.group]
    high = _letters(words, box)
    for row, line in enumerate(words):
        at = box.centre + Point(0.0, high * _LINE * (1 - row) - high / 2)
        yield Text(Role.LABEL, at, high, line, align=Align.CENTRE)


def _letters(words: Sequence[str], box: Bounds) -> float:
    """Letters as high as the piece has room for."""
    across = 0.8 * box.width / max(_width(line, 1.0) for line in words)
    return max(min(_LARGEST, across, 0.8 * box.height / (_LINE * len(words))), _LEAST)


def _head_inks(lines: Sequence[str], top: Point) -> Iterator[Ink]:
    title, *others = lines
    y = top.y - _TITLE
    yield Text(Role.LABEL, Point(top.x, y), _TITLE, title)
    for line in others:
        y -= _NOTE * _LINE
        yield Text(Role.LABEL, Point(top.x, y), _NOTE, line)
    y -= _BAR_HEIGHT + 2.0
    yield Stroke(Role.CHECK, _box(Point(top.x, y), _BAR, _BAR_HEIGHT))
    yield Text(Role.CHECK, Point(top.x + _BAR / 2, y + 0.6), _NOTE * 0.7, "100 mm", align=Align.CENTRE)


def _box(corner: Point, width: float, height: float) -> Path:
    return polygon([corner, corner + Point(width, 0), corner + Point(width, height), corner + Point(0, height)])


def _width(words: str, height: float) -> float:
    return _WIDE * height * max(len(words), 1)


def _by(width: float, height: float) -> str:
    return f"{mm(width, 1)} x {mm(height, 1)} mm"
