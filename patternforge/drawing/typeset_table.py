"""Tables in stroke letters: columns as wide as their words need, rows that are never parted."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from patternforge.drawing.document import Blank, Cell, Column, Table
from patternforge.drawing.model import Align, Area, Ink, Role, Stroke, Text
from patternforge.drawing.slabs import Slab
from patternforge.drawing.strong import strong
from patternforge.drawing.wrapping import longest_word, width_of, wrapped
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Point

__all__ = ["column_widths", "table_slabs"]

_BAND = 0.16  # tone behind the heads
# The rest in heights of letters.
_PAD = 0.8  # beside the words of a cell
_PITCH = 1.6  # base line to base line
_OVER, _UNDER = 0.8, 0.8  # edge of a cell to its capitals, its last base line to its edge
_TICK = 1.6  # side of a box to tick
_LINE = 9.0  # shortest line to write on

Words = Callable[[str, float], float]


def table_slabs(table: Table, width: float, height: float) -> tuple[Slab, ...]:
    """The caption, the heads and each row as slabs ``width`` mm wide, in letters of ``height`` mm.

    Where a row heads a page, the heads are set over it again; the last row stays with the totals that follow it.
    DraftError for a letter that cannot be drawn.
    """
    widths = column_widths(table, width, height)
    head = _head(table.columns, widths, height)
    rows = [_row(row, table.columns, widths, height) for row in table.rows]
    totals = [_total(row, table.columns, widths, height) for row in table.totals]
    last = len(rows) - 1
    body = [
        Slab(slab.height, slab.inks, keeps=bool(totals) and last <= number < last + len(totals), head=head)
        for number, slab in enumerate((*rows, *totals))
    ]
    return (*_caption(table.caption, width, height), Slab(head.height, head.inks, keeps=True), *body)


def column_widths(table: Table, width: float, height: float) -> tuple[float, ...]:
    """How wide each column is, mm, ``width`` in all, in letters of ``height`` mm.

    Every column gets what its longest words need, one that stands at the right what its longest cells need, so that
    no number is parted from its unit; then of the rest as much as its longest lines still lack; what is left over is
    shared out in the measure of what the columns have. Where not even the words fit, all shrink alike.
    """
    least = [_least(table, i, height) for i in range(len(table.columns))]
    wanted = [max(need, _room(table, i, height, _whole)) for i, need in enumerate(least)]
    lacking = [want - need for want, need in zip(wanted, least, strict=True)]
    free = width - sum(least)
    if free < 0 or sum(wanted) <= width:
        base = least if free < 0 else wanted
        return tuple(width * each / sum(base) for each in base)
    return tuple(need + free * lack / sum(lacking) for need, lack in zip(least, lacking, strict=True))


def _least(table: Table, column: int, height: float) -> float:
    words = _room(table, column, height, longest_word)
    if table.columns[column].align is Align.LEFT:
        return words
    cells = (row[column] for row in (*table.rows, *table.totals))
    return max(words, *(_cell_room(cell, height, _whole) + 2 * _PAD * height + 0.01 for cell in cells))


def _whole(words: str, height: float) -> float:
    return width_of(words) * height


def _room(table: Table, column: int, height: float, of: Words) -> float:
    cells = [table.columns[column].head, *(row[column] for row in (*table.rows, *table.totals))]
    return max(_cell_room(cell, height, of) for cell in cells) + 2 * _PAD * height + 0.01


def _cell_room(cell: Cell, height: float, of: Words) -> float:
    if isinstance(cell, Blank):
        return (_TICK if cell is Blank.TICK else _LINE) * height
    return of(cell, height)


def _caption(words: str, width: float, height: float) -> tuple[Slab, ...]:
    lines = wrapped(words, width, height) if words else ()
    return tuple(
        Slab(1.9 * height, strong(Text(Role.LABEL, Point(0.0, -1.3 * height), height, line)), keeps=True)
        for line in lines
    )


def _head(columns: Sequence[Column], widths: Sequence[float], height: float) -> Slab:
    plain = _row([column.head for column in columns], columns, widths, height)
    band = Area(Role.TINT, (rounded_rectangle(0.0, -plain.height, sum(widths), 0.0, 0.0),), _BAND)
    bolder = tuple(ink for each in plain.inks for ink in (strong(each) if isinstance(each, Text) else (each,)))
    return Slab(plain.height, (band, *bolder))


def _total(row: Sequence[Cell], columns: Sequence[Column], widths: Sequence[float], height: float) -> Slab:
    plain = _row(row, columns, widths, height)
    bolder = tuple(ink for each in plain.inks for ink in (strong(each) if isinstance(each, Text) else (each,)))
    return Slab(plain.height, (Stroke(Role.LABEL, _level(0.0, sum(widths))), *bolder))


def _row(row: Sequence[Cell], columns: Sequence[Column], widths: Sequence[float], height: float) -> Slab:
    """One row over a thin rule."""
    lines = [_lines(cell, room - 2 * _PAD * height, height) for cell, room in zip(row, widths, strict=True)]
    deep = (1 + _OVER + _UNDER + _PITCH * (max(map(len, lines)) - 1)) * height
    inks: list[Ink] = []
    left = 0.0
    for cell, column, room, words in zip(row, columns, widths, lines, strict=True):
        inks += _cell(cell, column.align, left, room, words, height)
        left += room
    return Slab(deep, (Stroke(Role.TINT, _level(-deep, left)), *inks))


def _level(y: float, width: float) -> Path:
    return polyline([Point(0.0, y), Point(width, y)])


def _lines(cell: Cell, room: float, height: float) -> tuple[str, ...]:
    return ("",) if isinstance(cell, Blank) else wrapped(cell, room, height)


def _cell(cell: Cell, align: Align, left: float, room: float, words: Sequence[str], height: float) -> tuple[Ink, ...]:
    pad, foot = _PAD * height, -(1 + _OVER) * height
    if cell is Blank.TICK:
        low = foot - 0.3 * height
        return (
            Stroke(
                Role.LABEL, rounded_rectangle(left + pad, low, left + pad + _TICK * height, low + _TICK * height, 0)
            ),
        )
    if cell is Blank.LINE:
        return (Stroke(Role.LABEL, polyline([Point(left + pad, foot), Point(left + room - pad, foot)])),)
    at = {Align.LEFT: left + pad, Align.CENTRE: left + room / 2, Align.RIGHT: left + room - pad}[align]
    return tuple(
        Text(Role.LABEL, Point(at, foot - number * _PITCH * height), height, line, 0.0, align)
        for number, line in enumerate(words)
        if line
    )
