"""Figures set out on printed pages at true size: whole where a page can hold them, in tiles where none can."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.drawing.clip import clipped
from patternforge.drawing.extent import placed
from patternforge.drawing.header import MAP, UPRIGHT, Head, head_inks
from patternforge.drawing.layout import Layout, layouts
from patternforge.drawing.model import Figure, Ink, Page
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.drawing.split import Grid, Tile, crosses, map_inks, tile_inks
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import translation

__all__ = ["pages"]

_SMALL = 2.0  # height of the numbers at joining crosses, mm
_MEASURE = "Measure the bars both ways before cutting.", "Measure the bars before cutting."
_JOIN = "Lay crosses of one number on each other.", "Join equal crosses."


@dataclass(frozen=True, slots=True)
class _Sheet:
    """What one page shows below its head, and notes its head is to carry, each in wordings, the fullest first."""

    layout: Layout
    inks: tuple[Ink, ...]
    notes: tuple[tuple[str, ...], ...] = ()
    label: str = ""


def pages(figures: Sequence[Figure], paper: Paper, settings: PrintSettings) -> tuple[Page, ...]:
    """The printed pages of ``figures``, the paper held the way that needs fewest pages.

    A figure that one page can hold is never split. It is turned by 90 degrees, and its page says so, only where it
    fits in no other way; the paper is held the other way for what fits only so. What no page can hold comes last, in
    tiles that share ``settings.overlap`` mm, with crosses at the same places of the figure on both. Everything is cut
    off at the printer margin. A page is labelled with its number, or with the names of figure and tile.
    DraftError: no figure, or paper too small for the head of a page. GeometryError: a figure without ink.

    >>> from patternforge.drawing.model import Dot, Role
    >>> from patternforge.drawing.paper import A4
    >>> ring = Figure("ring", "outer", (Dot(Role.OUTLINE, Point(0, 0), 120.0),))
    >>> [page.label for page in pages([ring, ring, ring], A4, PrintSettings("Rings"))]
    ['1', '2']
    """
    if not figures:
        raise DraftError("there is no piece to print")
    chosen = layouts(figures, paper, settings)
    whole = [sheet for held in chosen for sheet in _whole_sheets(held)]
    sheets = [*whole, *_tile_sheets(chosen[0], settings, len(whole) + 1)]
    return tuple(_page(sheet, number, len(sheets), settings) for number, sheet in enumerate(sheets, start=1))


def _page(sheet: _Sheet, number: int, count: int, settings: PrintSettings) -> Page:
    head = head_inks(_head(sheet, f"Page {number} of {count}", settings), sheet.layout.area)
    shown = clipped((*sheet.inks, *head), sheet.layout.area)
    paper, label = sheet.layout.paper, sheet.label or str(number)
    return Page(label, paper.width, paper.height, shown, settings.x_correction, settings.y_correction)


def _head(sheet: _Sheet, number: str, settings: PrintSettings) -> Head:
    x, y = settings.x_correction, settings.y_correction
    how = "not fitted to the page" if x == y == 1 else f"printer correction x {round(x, 4):g} y {round(y, 4):g}"
    imprint = f"{number}. Print at 100 %, {how}."
    return Head(settings.heading, imprint, (_MEASURE, *sheet.notes), settings.letters)


def _whole_sheets(chosen: Layout) -> Iterator[_Sheet]:
    # The page that holds the first figure comes first, and so on, whatever packing filled first.
    for number in dict.fromkeys(cell.spot.page for cell in chosen.cells if cell.spot):
        cells = chosen.page(number)
        names = [cell.figure.name for cell in cells if cell.turned]
        note = (f"Turned by 90 degrees: {', '.join(names)}.", f"Pieces turned by 90 degrees: {len(names)}.")
        yield _Sheet(chosen, tuple(ink for cell in cells for ink in cell.figure.inks), (note,) if names else ())


def _tile_sheets(chosen: Layout, settings: PrintSettings, first: int) -> Iterator[_Sheet]:
    """The pages of all split figures, the first of them page ``first``."""
    for figure, whole in chosen.grids:
        inks = (*figure.inks, *crosses(whole, _SMALL))
        for tile in whole.tiles:
            part = f"tile {tile.name} of {whole.rows} x {whole.columns}."
            notes = (f"{figure.name}: {part}", f"Split piece: {part}"), _JOIN
            shown = (*_on_page(whole, tile, inks, chosen, settings), *_page_map(whole, tile, chosen, first))
            yield _Sheet(chosen, shown, notes, f"{figure.name} {tile.name}")
        first += len(whole.tiles)


def _on_page(
    whole: Grid, tile: Tile, inks: tuple[Ink, ...], chosen: Layout, settings: PrintSettings
) -> tuple[Ink, ...]:
    """The tile beside the upright check bars, its upper edge right under the head."""
    corner = chosen.top_left + Point(UPRIGHT.width + settings.gap, 0)
    shift = translation(corner.x - tile.window.x0, corner.y - tile.window.y1)
    return tuple(placed(ink, shift) for ink in tile_inks(whole, tile, inks))


def _page_map(whole: Grid, tile: Tile, chosen: Layout, first: int) -> tuple[Ink, ...]:
    area = chosen.area
    return map_inks(whole, tile, Bounds(area.x1 - MAP.width + 2, area.y1 - MAP.height, area.x1, area.y1), first)
