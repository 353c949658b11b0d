"""One figure too large for a page, cut into tiles that share an overlap, with crosses to join them by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from math import ceil

from patternforge.drawing.clip import clipped
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Ink, Role, Stroke, Text
from patternforge.drawing.shelves import Size
from patternforge.geometry.path import polygon, polyline
from patternforge.geometry.point import Bounds, Point

__all__ = ["Grid", "Tile", "crosses", "grid", "map_inks", "tile_inks"]

_SAME = 1e-9
_NUMBER, _LEAST = 2.5, 2.0  # height of a page's number on the plan, mm
_FILLED = 0.85  # of a tile on the plan by its number
_ARM = 3.0  # half a joining cross, mm


@dataclass(frozen=True, slots=True)
class Tile:
    """One tile, named by the letter of its row from the top and the number of its column; window in figure mm."""

    name: str
    row: int
    column: int
    window: Bounds


@dataclass(frozen=True, slots=True)
class Grid:
    """Tiles in reading order, ``rows`` x ``columns``, neighbours sharing ``overlap`` mm."""

    rows: int
    columns: int
    overlap: float
    tiles: tuple[Tile, ...]


def grid(figure: Bounds, page: Size, overlap: float) -> Grid:
    """The fewest tiles no larger than ``page`` that cover ``figure``, all of one size.

    ``overlap`` must be less than both sides of ``page``.

    >>> [tile.name for tile in grid(Bounds(0, 0, 300, 150), Size(180, 240), 10).tiles]
    ['A1', 'A2']
    """
    columns, width = _shares(figure.width, page.width, overlap)
    rows, height = _shares(figure.height, page.height, overlap)
    places = product(range(rows), range(columns))
    tiles = (_tile(figure, row, column, Size(width, height), overlap) for row, column in places)
    return Grid(rows, columns, overlap, tuple(tiles))


def crosses(whole: Grid, number_height: float) -> tuple[Ink, ...]:
    """Two numbered crosses on every seam between two tiles, in figure mm: the same on each page that shows them."""
    inks: list[Ink] = []
    for number, centre in enumerate(_seam_points(whole), start=1):
        arm = min(_ARM, whole.overlap / 3)
        ends = (Point(arm, 0), Point(0, arm))
        inks += [Stroke(Role.GUIDE, polyline([centre - end, centre + end])) for end in ends]
        inks.append(Text(Role.GUIDE, centre + Point(0.5, 0.5), number_height, str(number)))
    return tuple(inks)


def tile_inks(whole: Grid, tile: Tile, inks: tuple[Ink, ...]) -> tuple[Ink, ...]:
    """What the tile shows of ``inks``, and its edges towards other tiles."""
    return (*clipped(inks, tile.window), *_joined_edges(whole, tile))


def _joined_edges(whole: Grid, tile: Tile) -> Iterator[Stroke]:
    w = tile.window
    corners = Point(w.x0, w.y0), Point(w.x1, w.y0), Point(w.x1, w.y1), Point(w.x0, w.y1)
    joined = tile.row + 1 < whole.rows, tile.column + 1 < whole.columns, tile.row > 0, tile.column > 0
    for start, end, is_joined in zip(corners, (*corners[1:], corners[0]), joined, strict=True):
        if is_joined:
            yield Stroke(Role.GUIDE, polyline([start, end]))


def map_inks(whole: Grid, shown: Tile, box: Bounds, first: int) -> tuple[Ink, ...]:
    """A small plan of all tiles in ``box``, the shown one crossed through, the others with the page they are on.

    ``first`` is the page of the first tile; the others follow it in reading order.

    >>> whole = grid(Bounds(0, 0, 300, 150), Size(180, 240), 10)
    >>> [ink.content for ink in map_inks(whole, whole.tiles[0], Bounds(0, 0, 20, 10), 3) if isinstance(ink, Text)]
    ['p4']
    """
    width, height = box.width / whole.columns, box.height / whole.rows
    inks: list[Ink] = []
    for page, tile in enumerate(whole.tiles, start=first):
        corner = Point(box.x0 + tile.column * width, box.y1 - (tile.row + 1) * height)
        across, up = Point(width - 0.6, 0), Point(0, height - 0.6)
        inks.append(Stroke(Role.GUIDE, polygon([corner, corner + across, corner + across + up, corner + up])))
        if tile == shown:
            inks.append(Stroke(Role.GUIDE, polyline([corner, corner + across + up])))
            inks.append(Stroke(Role.GUIDE, polyline([corner + up, corner + across])))
        else:
            inks += _page_number(page, corner, across + up)
    return tuple(inks)


def _page_number(page: int, corner: Point, size: Point) -> tuple[Text, ...]:
    """The number of a page in the middle of its tile on the plan; nothing where it could not be read."""
    words = f"p{page}"
    height = min(_NUMBER, _FILLED * size.y, _FILLED * size.x / text_width(words, 1.0))
    if height < _LEAST:
        return ()
    return (Text(Role.GUIDE, corner + size / 2 - Point(0, height / 2), height, words, 0.0, Align.CENTRE),)


def _shares(length: float, page: float, overlap: float) -> tuple[int, float]:
    """How many tiles a length takes, and how long each is."""
    count = max(1, ceil((length - overlap) / (page - overlap) - _SAME))
    return count, (length + (count - 1) * overlap) / count


def _tile(figure: Bounds, row: int, column: int, size: Size, overlap: float) -> Tile:
    x0 = figure.x0 + column * (size.width - overlap)
    y1 = figure.y1 - row * (size.height - overlap)
    window = Bounds(x0, y1 - size.height, x0 + size.width, y1)
    return Tile(f"{_letters(row)}{column + 1}", row, column, window)


def _letters(row: int) -> str:
    """A, B ... Z, AA, AB ..."""
    above, last = divmod(row, 26)
    return (_letters(above - 1) if above else "") + chr(ord("A") + last)


def _seam_points(whole: Grid) -> Iterator[Point]:
    """Points in the middle of each overlap, a fifth of a tile from either end of the seam."""
    half = whole.overlap / 2
    for tile in whole.tiles:
        w = tile.window
        if tile.column + 1 < whole.columns:
            yield from (Point(w.x1 - half, w.y1 - share * w.height) for share in (0.2, 0.8))
        if tile.row + 1 < whole.rows:
            yield from (Point(w.x0 + share * w.width, w.y0 + half) for share in (0.2, 0.8))
