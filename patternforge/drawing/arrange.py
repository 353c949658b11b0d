"""Figures set out on a sheet in plain rows, in the order given, none of them turned."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.drawing.extent import extent, moved
from patternforge.drawing.model import Figure, Sheet
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds
from patternforge.geometry.transform import translation

__all__ = ["arranged", "on_beds"]

# Sizes that differ by less than this, mm, are the same size: what is left after sums of floating numbers.
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class _Cell:
    """A figure and the room it takes before it is moved."""

    figure: Figure
    bounds: Bounds


def arranged(figures: Sequence[Figure], gap: float, width_limit: float | None = None, name: str = "sheet") -> Sheet:
    """A sheet with ``figures`` in rows from the upper left, read like lines of text, never turned or reordered.

    The true bounds of any two figures, and of a figure and the rim of the sheet, are at least ``gap`` mm apart
    (``gap`` >= 0). A row ends where the sheet would grow wider than ``width_limit`` mm; without a limit there is one
    row. Figures of a row stand on one line. DraftError: no figures, a negative gap, a figure too wide for the limit.

    >>> from patternforge.drawing.model import Dot, Role
    >>> from patternforge.geometry.point import Point
    >>> ring = Figure("ring", "outer", (Dot(Role.OUTLINE, Point(0, 0), 20.0),))
    >>> sheet = arranged([ring, ring, ring], gap=5, width_limit=60)
    >>> sheet.width, sheet.height, [figure.inks[0].centre for figure in sheet.figures][2]
    (55.0, 55.0, Point(x=15.0, y=15.0))
    """
    return _sheet(_rows(figures, gap, width_limit), gap, name)


def on_beds(
    figures: Sequence[Figure], gap: float, width_limit: float | None, height_limit: float, name: str = "sheet"
) -> tuple[Sheet, ...]:
    """As many sheets as ``figures`` need, each set out as in ``arranged`` and at most ``height_limit`` mm high.

    Where there are several, each is numbered behind its name. DraftError as in ``arranged``, and for a figure too
    high for the limit.

    >>> from patternforge.drawing.model import Dot, Role
    >>> from patternforge.geometry.point import Point
    >>> ring = Figure("ring", "outer", (Dot(Role.OUTLINE, Point(0, 0), 20.0),))
    >>> [(sheet.name, len(sheet.figures)) for sheet in on_beds([ring, ring, ring], 5, 60, 50)]
    [('sheet-1', 2), ('sheet-2', 1)]
    """
    beds: list[list[list[_Cell]]] = [[]]
    for row in _rows(figures, gap, width_limit):
        for cell in row:
            _require_height(cell, gap, height_limit)
        if beds[-1] and _height([*beds[-1], row], gap) > height_limit + _SAME:
            beds.append([])
        beds[-1].append(row)
    names = [name] if len(beds) == 1 else [f"{name}-{number}" for number in range(1, len(beds) + 1)]
    return tuple(_sheet(rows, gap, each) for rows, each in zip(beds, names, strict=True))


def _sheet(rows: Sequence[Sequence[_Cell]], gap: float, name: str) -> Sheet:
    width = max(_row_width(row, gap) for row in rows)
    height = _height(rows, gap)
    return Sheet(name, width, height, _set_out(rows, gap, height))


def _height(rows: Sequence[Sequence[_Cell]], gap: float) -> float:
    return gap + sum(_row_height(row) + gap for row in rows)


def _rows(figures: Sequence[Figure], gap: float, width_limit: float | None) -> list[list[_Cell]]:
    if not figures:
        raise DraftError("there is no piece to set out on the sheet")
    if not gap >= 0:
        raise DraftError(f"the gap between pieces is {gap:g} mm; it must be 0 mm or more")
    rows: list[list[_Cell]] = [[]]
    for cell in (_Cell(figure, extent(figure.inks)) for figure in figures):
        _require_room(cell, gap, width_limit)
        if rows[-1] and width_limit is not None and _row_width([*rows[-1], cell], gap) > width_limit + _SAME:
            rows.append([])
        rows[-1].append(cell)
    return rows


def _require_room(cell: _Cell, gap: float, width_limit: float | None) -> None:
    if width_limit is not None and _row_width([cell], gap) > width_limit + _SAME:
        raise DraftError(
            f"piece {cell.figure.name!r} is {cell.bounds.width:.2f} mm wide; with {gap:g} mm left free on both sides"
            f" it does not fit a width of {width_limit:g} mm"
        )


def _require_height(cell: _Cell, gap: float, limit: float) -> None:
    if cell.bounds.height + 2 * gap > limit + _SAME:
        raise DraftError(
            f"piece {cell.figure.name!r} is {cell.bounds.height:.2f} mm high; with {gap:g} mm left free above"
            f" and below it does not fit a height of {limit:g} mm"
        )


def _row_width(row: Sequence[_Cell], gap: float) -> float:
    return gap + sum(cell.bounds.width + gap for cell in row)


def _row_height(row: Sequence[_Cell]) -> float:
    return max(cell.bounds.height for cell in row)


def _set_out(rows: Sequence[Sequence[_Cell]], gap: float, height: float) -> tuple[Figure, ...]:
    figures: list[Figure] = []
    line = height
    for row in rows:
        line -= gap + _row_height(row)
        x = gap
        for cell in row:
            figures.append(moved(cell.figure, translation(x - cell.bounds.x0, line - cell.bounds.y0)))
            x += cell.bounds.width + gap
    return tuple(figures)
