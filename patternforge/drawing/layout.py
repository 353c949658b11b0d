"""Which way the paper is held, which figures share a page, and which must be split."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from patternforge.drawing.extent import extent, moved
from patternforge.drawing.header import UPRIGHT, head_height
from patternforge.drawing.lettering import letter_strokes
from patternforge.drawing.model import Figure, Text
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.drawing.shelves import Room, Size, Spot, packed
from patternforge.drawing.split import Grid, grid
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import rotation, translation

__all__ = ["Cell", "Layout", "layouts"]

_NARROWEST = 160.0  # mm; what the notes beside the check bars need in their shortest wordings


@dataclass(frozen=True, slots=True)
class Cell:
    """A figure as it lies on its page, turned or not; ``spot`` is None when no page held this way takes it whole."""

    figure: Figure
    turned: bool
    spot: Spot | None


@dataclass(frozen=True, slots=True)
class Layout:
    """Figures on paper held one way; ``area`` is what may be drawn on, ``room`` what its head leaves of it.

    ``grids`` are the figures without a spot, and the tiles they are cut into.
    """

    paper: Paper
    area: Bounds
    room: Room
    cells: tuple[Cell, ...]
    grids: tuple[tuple[Figure, Grid], ...]

    @property
    def whole_pages(self) -> int:
        """How many pages hold whole figures."""
        return 1 + max((cell.spot.page for cell in self.cells if cell.spot), default=-1)

    @property
    def top_left(self) -> Point:
        """The upper left corner of the room, in true mm of the page."""
        return Point(self.area.x0, self.area.y0 + self.room.size.height)

    def cost(self) -> tuple[int, int, int]:
        """Split figures, pages, turned figures: the layout with the least is taken, in this order."""
        tiles = sum(len(whole.tiles) for _, whole in self.grids)
        return len(self.grids), self.whole_pages + tiles, sum(cell.turned for cell in self.cells)

    def page(self, number: int) -> tuple[Cell, ...]:
        """The cells on one of the pages of whole figures, counted from 0."""
        return tuple(cell for cell in self.cells if cell.spot is not None and cell.spot.page == number)


def layouts(figures: Sequence[Figure], paper: Paper, settings: PrintSettings) -> tuple[Layout, ...]:
    """How the paper is held for most figures, and where needed a second layout for those that fit the other way only.

    The paper stays as it is unless exchanging its sides splits fewer figures, takes fewer pages or turns fewer of
    them. Every figure is moved, and turned by 90 degrees where it fits in no other way, to where it is printed; only
    what fits neither way is split. DraftError when the printable area cannot hold the head of a page, GeometryError
    for a figure without ink.
    """
    first = min((_held(figures, held, settings) for held in (paper, paper.turned())), key=Layout.cost)
    if not first.grids:
        return (first,)
    second = _held([figure for figure, _ in first.grids], first.paper.turned(), settings)
    too_large = [figure for figure, _ in second.grids]
    split = tuple((figure, whole) for figure, whole in first.grids if figure in too_large)
    return replace(first, grids=split), replace(second, grids=())


def _held(figures: Sequence[Figure], paper: Paper, settings: PrintSettings) -> Layout:
    area = printable_area(paper, settings)
    room = _room(area, settings)
    boxes = [_box(figure) for figure in figures]
    turned = [not room.takes(_size(box)) and room.takes(_size(box).turned()) for box in boxes]
    sizes = [_size(box).turned() if turn else _size(box) for box, turn in zip(boxes, turned, strict=True)]
    spots = _spots(sizes, room)
    top_left = Point(area.x0, area.y0 + room.size.height)
    rows = zip(figures, turned, spots, strict=True)
    cells = tuple(Cell(_placed(figure, turn, spot, top_left), turn, spot) for figure, turn, spot in rows)
    split = [(figure, box) for figure, box, spot in zip(figures, boxes, spots, strict=True) if spot is None]
    grids = tuple((figure, grid(box, _tile_room(room), settings.overlap)) for figure, box in split)
    return Layout(paper, area, room, cells, grids)


def _room(area: Bounds, settings: PrintSettings) -> Room:
    if area.width < _NARROWEST:
        raise DraftError(f"a printable width of {area.width:.1f} mm is too little; a page needs {_NARROWEST:g} mm")
    height = area.height - head_height(settings.heading, area.width)
    if height < UPRIGHT.height:
        raise DraftError(f"a printable height of {area.height:.1f} mm does not hold the check bars of a page")
    return Room(Size(area.width, height), UPRIGHT, settings.gap)


def _tile_room(room: Room) -> Size:
    return Size(room.size.width - room.notch.width - room.gap, room.size.height)


def _box(figure: Figure) -> Bounds:
    """The extent of a figure, its texts counted letter by letter."""
    return extent(
        drawn for ink in figure.inks for drawn in (letter_strokes(ink) if isinstance(ink, Text) else (ink,))
    )


def _size(box: Bounds) -> Size:
    return Size(box.width, box.height)


def _spots(sizes: Sequence[Size], room: Room) -> tuple[Spot | None, ...]:
    """A spot for every size that a page takes."""
    fitting = [index for index, size in enumerate(sizes) if room.takes(size)]
    spots = dict(zip(fitting, packed([sizes[index] for index in fitting], room), strict=True))
    return tuple(spots.get(index) for index in range(len(sizes)))


def _placed(figure: Figure, turned: bool, spot: Spot | None, top_left: Point) -> Figure:
    if spot is None:
        return figure
    lying = moved(figure, rotation(90)) if turned else figure
    box = _box(lying)
    return moved(lying, translation(top_left.x + spot.x - box.x0, top_left.y - spot.y - box.y1))
