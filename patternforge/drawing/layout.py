"""Which way the paper is held, which figures share a page, and which must be split."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from patternforge.drawing.extent import extent, moved
from patternforge.drawing.header import UPRIGHT, head_height
from patternforge.drawing.lettering import letter_bounds
from patternforge.drawing.model import Figure, Text
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.drawing.shelves import Room, Size, Spot, packed
from patternforge.drawing.split import Grid, grid
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point, joined_bounds
from patternforge.geometry.transform import identity, rotation, translation

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

    def page(self, number: int) -> tuple[Cell, ...]:
        """The cells on one of the pages of whole figures, counted from 0."""
        return tuple(cell for cell in self.cells if cell.spot is not None and cell.spot.page == number)


@dataclass(frozen=True, slots=True)
class _Plan:
    """A layout before anything is moved: the boxes of its figures, which are turned, and where those that fit lie."""

    paper: Paper
    area: Bounds
    room: Room
    figures: Sequence[Figure]
    boxes: tuple[Bounds, ...]
    turned: tuple[bool, ...]
    spots: tuple[Spot | None, ...]
    grids: tuple[tuple[Figure, Grid], ...]

    def cost(self) -> tuple[int, int, int]:
        """Split figures, pages, turned figures: the plan with the least is carried out, in this order."""
        pages = 1 + max((spot.page for spot in self.spots if spot), default=-1)
        tiles = sum(len(whole.tiles) for _, whole in self.grids)
        return len(self.grids), pages + tiles, sum(self.turned)

    def layout(self) -> Layout:
        """The figures moved to where they are printed."""
        top_left = Point(self.area.x0, self.area.y0 + self.room.size.height)
        rows = zip(self.figures, self.boxes, self.turned, self.spots, strict=True)
        cells = tuple(
            Cell(_placed(figure, box, turn, spot, top_left), turn, spot) for figure, box, turn, spot in rows
        )
        return Layout(self.paper, self.area, self.room, cells, self.grids)


def layouts(figures: Sequence[Figure], paper: Paper, settings: PrintSettings) -> tuple[Layout, ...]:
    """How the paper is held for most figures, and where needed a second layout for those that fit the other way only.

    The paper stays as it is unless exchanging its sides splits fewer figures, takes fewer pages or turns fewer of
    them. Every figure is moved, and turned by 90 degrees where it fits in no other way, to where it is printed; only
    what fits neither way is split. DraftError when the printable area cannot hold the head of a page, GeometryError
    for a figure without ink.
    """
    boxes = [_box(figure) for figure in figures]
    plans = (_plan(figures, boxes, held, settings) for held in (paper, paper.turned()))
    first = min(plans, key=_Plan.cost)
    if not first.grids:
        return (first.layout(),)
    left = [figure for figure, _ in first.grids]
    second = _plan(left, [_box(figure) for figure in left], first.paper.turned(), settings)
    too_large = [figure for figure, _ in second.grids]
    split = tuple((figure, whole) for figure, whole in first.grids if figure in too_large)
    return replace(first.layout(), grids=split), replace(second.layout(), grids=())


def _plan(figures: Sequence[Figure], boxes: Sequence[Bounds], paper: Paper, settings: PrintSettings) -> _Plan:
    area = printable_area(paper, settings)
    room = _room(area, settings)
    turned = tuple(not room.takes(_size(box)) and room.takes(_size(box).turned()) for box in boxes)
    sizes = [_size(box).turned() if turn else _size(box) for box, turn in zip(boxes, turned, strict=True)]
    spots = _spots(sizes, room)
    split = [(figure, box) for figure, box, spot in zip(figures, boxes, spots, strict=True) if spot is None]
    grids = tuple((figure, grid(box, _tile_room(room), settings.overlap)) for figure, box in split)
    return _Plan(paper, area, room, figures, tuple(boxes), turned, spots, grids)


def _room(area: Bounds, settings: PrintSettings) -> Room:
    if area.width < _NARROWEST:
        raise DraftError(f"a printable width of {area.width:.1f} mm is too little; a page needs {_NARROWEST:g} mm")
    height = area.height - head_height(settings.heading, area.width, settings.letters)
    if height < UPRIGHT.height:
        raise DraftError(f"a printable height of {area.height:.1f} mm does not hold the check bars of a page")
    return Room(Size(area.width, height), UPRIGHT, settings.gap)


def _tile_room(room: Room) -> Size:
    return Size(room.size.width - room.notch.width - room.gap, room.size.height)


def _box(figure: Figure) -> Bounds:
    """The extent of a figure, its texts counted letter by letter."""
    letters = [box for ink in figure.inks if isinstance(ink, Text) for box in [letter_bounds(ink)] if box]
    rest = [ink for ink in figure.inks if not isinstance(ink, Text)]
    return joined_bounds([extent(rest), *letters] if rest or not letters else letters)


def _size(box: Bounds) -> Size:
    return Size(box.width, box.height)


def _spots(sizes: Sequence[Size], room: Room) -> tuple[Spot | None, ...]:
    """A spot for every size that a page takes."""
    fitting = [index for index, size in enumerate(sizes) if room.takes(size)]
    spots = dict(zip(fitting, packed([sizes[index] for index in fitting], room), strict=True))
    return tuple(spots.get(index) for index in range(len(sizes)))


def _placed(figure: Figure, box: Bounds, turned: bool, spot: Spot | None, top_left: Point) -> Figure:
    if spot is None:
        return figure
    turn = rotation(90) if turned else identity()
    left, top = turn.point(Point(box.x0, box.y0)), turn.point(Point(box.x1, box.y1))
    x0, y1 = min(left.x, top.x), max(left.y, top.y)
    return moved(figure, turn.then(translation(top_left.x + spot.x - x0, top_left.y - spot.y - y1)))
