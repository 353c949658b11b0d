"""The blocks of a document as slabs in stroke letters."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from patternforge.drawing.document import (
    Block,
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
from patternforge.drawing.extent import placed
from patternforge.drawing.model import Area, Ink, Role, Stroke, Text
from patternforge.drawing.slabs import Slab
from patternforge.drawing.strong import strong
from patternforge.drawing.typeset_table import table_slabs
from patternforge.drawing.wrapping import width_of, wrapped
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation

__all__ = ["Measure", "document_slabs"]

_BODY, _SMALL, _TITLE, _HEAD = 2.3, 2.0, 4.6, 3.0  # heights of capitals, mm
_PITCH = 1.7  # base line to base line, in heights of letters
_BAND = 0.3  # tone behind the title of a section
_BULLET = 2.0  # indent of a listing, in heights of letters
_FIELD = 4.2  # height of a line to write on, in heights of letters
_BESIDE = 0.46  # share of the width that the picture of a step may take


@dataclass(frozen=True, slots=True)
class Measure:
    """How wide a page is between its edges, mm, and what heights of letters are multiplied by."""

    width: float
    letters: float = 1.0

    def height(self, usual: float) -> float:
        """Height of capitals, mm."""
        return usual * self.letters


def document_slabs(document: Document, measure: Measure) -> tuple[Slab, ...]:
    """All of a document from its title down; DraftError for a letter that cannot be drawn."""
    titles = (*_title(document.title, _TITLE, measure), *_title(document.subtitle, _BODY, measure))
    return (*titles, *(slab for section in document.sections for slab in _section(section, measure)))


def _title(words: str, usual: float, measure: Measure) -> tuple[Slab, ...]:
    height = measure.height(usual)
    lines = wrapped(words, measure.width, height) if words else ()
    return tuple(_line(line, height, bold=usual > _BODY) for line in lines)


def _line(words: str, height: float, bold: bool = False, x: float = 0.0) -> Slab:
    text = Text(Role.LABEL, Point(x, -1.25 * height), height, words)
    return Slab(_PITCH * height, strong(text) if bold else (text,))


def _section(section: Section, measure: Measure) -> Iterator[Slab]:
    height = measure.height(_HEAD)
    deep = 2.1 * height
    band = Area(Role.TINT, (rounded_rectangle(0.0, -deep, measure.width, 0.0, 0.0),), _BAND)
    for number, line in enumerate(wrapped(section.title, measure.width - 2 * height, height)):
        text = strong(Text(Role.LABEL, Point(height * 0.7, -1.55 * height), height, line))
        yield Slab(deep, (band, *text), above=0.0 if number else 1.8 * height, keeps=True)
    yield Slab(0.7 * height, keeps=True)
    for number, block in enumerate(section.blocks):
        slabs = _block(block, measure)
        yield from _set_off(slabs, 1.6 * measure.height(_BODY) if number else 0.0)


def _set_off(slabs: Sequence[Slab], above: float) -> Iterator[Slab]:
    for number, slab in enumerate(slabs):
        yield replace(slab, above=above) if number == 0 else slab


def _block(block: Block, measure: Measure) -> tuple[Slab, ...]:
    match block:
        case Paragraph():
            return _paragraph(block, measure)
        case Listing():
            return tuple(slab for item in block.items for slab in _item(item, measure))
        case Table():
            return table_slabs(block, measure.width, measure.height(_SMALL))
        case Picture():
            return (_picture(block, measure),)
        case Fields():
            return _fields(block, measure)
        case Step():
            return (_step(block, measure),)


def _paragraph(block: Paragraph, measure: Measure) -> tuple[Slab, ...]:
    height = measure.height(_SMALL if block.tone is Tone.SMALL else _BODY)
    loud = block.tone is Tone.LOUD
    lines = wrapped(block.words, measure.width, height)
    slabs = [_line(line, height, bold=loud) for line in lines]
    return tuple(
        replace(slab, keeps=number < len(slabs) - 1 and len(slabs) < 12) for number, slab in enumerate(slabs)
    )


def _item(words: str, measure: Measure) -> tuple[Slab, ...]:
    height = measure.height(_BODY)
    indent = _BULLET * height
    lines = [_line(line, height, x=indent) for line in wrapped(words, measure.width - indent, height)]
    dash = Text(Role.LABEL, Point(0.2 * height, -1.25 * height), height, "-")
    first = replace(lines[0], inks=(dash, *lines[0].inks))
    return tuple(replace(slab, keeps=n < len(lines) - 1) for n, slab in enumerate((first, *lines[1:])))


def _picture(block: Picture, measure: Measure, x: float = 0.0) -> Slab:
    """The drawing over its caption, from the left."""
    height = measure.height(_SMALL)
    top = translation(x, -block.sheet.height)
    inks = [placed(ink, top) for figure in block.sheet.figures for ink in figure.inks]
    lines = wrapped(block.caption, max(block.sheet.width, 60.0), height) if block.caption else ()
    for number, line in enumerate(lines, start=1):
        at = Point(x, -block.sheet.height - number * _PITCH * height)
        inks.append(Text(Role.LABEL, at, height, line))
    return Slab(block.sheet.height + (len(lines) * _PITCH + 0.8) * height, tuple(inks))


def _fields(block: Fields, measure: Measure) -> tuple[Slab, ...]:
    """Two to a row."""
    height = measure.height(_BODY)
    rows = [block.labels[i : i + 2] for i in range(0, len(block.labels), 2)]
    return tuple(_field_row(row, measure.width, height) for row in rows)


def _field_row(labels: Sequence[str], width: float, height: float) -> Slab:
    room, foot = width / 2, -3.2 * height
    inks: list[Ink] = []
    for number, label in enumerate(labels):
        x = number * room
        start, end = x + (width_of(label) + 0.8) * height, x + room - 2 * height
        inks.append(Text(Role.LABEL, Point(x, foot), height, label))
        inks.append(
            Stroke(
                Role.LABEL,
                polyline([Point(min(start, end - 8 * height), foot - 0.3 * height), Point(end, foot - 0.3 * height)]),
            )
        )
    return Slab(_FIELD * height, tuple(inks))


def _step(block: Step, measure: Measure) -> Slab:
    """A box to tick, the number, what to do, and the picture: at the right where it is narrow, else below."""
    height = measure.height(_BODY)
    indent = 7.0 * height
    picture = _picture(block.picture, measure) if block.picture else None
    wide = block.picture.sheet.width if block.picture else 0.0
    beside = 0.0 < wide <= _BESIDE * measure.width
    lines = wrapped(block.words, measure.width - indent - (wide + 3.0 if beside else 0.0), height)
    inks: list[Ink] = [*_tick_and_number(block.number, height)]
    inks += (_at(line, indent, row, height) for row, line in enumerate(lines))
    deep = (len(lines) * _PITCH + 0.9) * height
    if picture and beside:
        inks += (placed(ink, translation(measure.width - wide, 0.0)) for ink in picture.inks)
        deep = max(deep, picture.height)
    elif picture:
        inks += (placed(ink, translation(0.0, -deep)) for ink in picture.inks)
        deep += picture.height
    deep = max(deep, 3.0 * height)
    return Slab(deep + 1.0, (*inks, Stroke(Role.TINT, polyline([Point(0.0, -deep), Point(measure.width, -deep)]))))


def _at(line: str, indent: float, row: int, height: float) -> Text:
    return Text(Role.LABEL, Point(indent, -(1.4 + row * _PITCH) * height), height, line)


def _tick_and_number(number: int, height: float) -> tuple[Ink, ...]:
    side = 1.8 * height
    box = rounded_rectangle(0.0, -0.2 * height - side, side, -0.2 * height, 0.0)
    return (
        Stroke(Role.LABEL, box),
        *strong(Text(Role.LABEL, Point(2.6 * height, -1.6 * height), 1.3 * height, str(number))),
    )
