"""Oblong cells packed on pages in shelves, tallest first: the same cells always lie in the same places."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

__all__ = ["Room", "Size", "Spot", "packed"]

# Sizes that differ by less than this, mm, are the same size: what is left after sums of floating numbers.
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Size:
    """Width and height of an oblong, mm."""

    width: float
    height: float

    def turned(self) -> Size:
        return Size(self.height, self.width)


@dataclass(frozen=True, slots=True)
class Room:
    """Free oblong of a page, mm, less ``notch`` in its upper left corner; cells keep ``gap`` apart and off the notch.

    >>> Room(Size(190, 260), Size(6, 102), 5).takes(Size(190, 150))
    True
    >>> Room(Size(190, 260), Size(6, 102), 5).takes(Size(190, 160))
    False
    """

    size: Size
    notch: Size
    gap: float

    def takes(self, cell: Size) -> bool:
        """Whether the cell finds a place on an empty page."""
        return _place(_Page(self), cell) is not None


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a cell lies: page (from 0), and its upper left corner from that of the room, x right and y down, mm."""

    page: int
    x: float
    y: float


@dataclass(slots=True)
class _Shelf:
    """A row of cells: how far down the page it begins, its height, and how much of its length is taken, mm."""

    top: float
    height: float
    used: float


@dataclass(slots=True)
class _Page:
    """A page being filled, shelf under shelf."""

    room: Room
    shelves: list[_Shelf] = field(default_factory=list)

    def __post_init__(self) -> None:
        # The notch is what stands first on the first shelf.
        self.shelves.append(_Shelf(0.0, self.room.notch.height, self.room.notch.width + self.room.gap))


def packed(cells: Sequence[Size], room: Room) -> tuple[Spot, ...]:
    """A spot for each cell, in the order given; every cell must be one that ``room.takes``.

    >>> packed([Size(80, 50), Size(100, 60)], Room(Size(190, 260), Size(6.5, 102), 5))
    (Spot(page=0, x=0.0, y=107.0), Spot(page=0, x=11.5, y=0.0))
    """
    pages: list[_Page] = []
    spots: dict[int, Spot] = {}
    for index in sorted(range(len(cells)), key=lambda i: (-cells[i].height, -cells[i].width, i)):
        spots[index] = _first_spot(pages, cells[index], room)
    return tuple(spots[index] for index in range(len(cells)))


def _first_spot(pages: list[_Page], cell: Size, room: Room) -> Spot:
    for number, page in enumerate(pages):
        corner = _place(page, cell)
        if corner is not None:
            return Spot(number, *corner)
    pages.append(_Page(room))
    corner = _place(pages[-1], cell)
    assert corner is not None, "a cell that no page takes was to be packed"
    return Spot(len(pages) - 1, *corner)


def _place(page: _Page, cell: Size) -> tuple[float, float] | None:
    """Puts the cell on the first shelf that holds it, or on a new one; None when the page is full."""
    for shelf in page.shelves:
        if _holds(page, shelf, cell):
            x, shelf.used = shelf.used, shelf.used + cell.width + page.room.gap
            shelf.height = max(shelf.height, cell.height)
            return x, shelf.top
    last = page.shelves[-1]
    fresh = _Shelf(last.top + last.height + page.room.gap, 0.0, 0.0)
    page.shelves.append(fresh)
    if _holds(page, fresh, cell):
        fresh.height, fresh.used = cell.height, cell.width + page.room.gap
        return 0.0, fresh.top
    page.shelves.remove(fresh)
    return None


def _holds(page: _Page, shelf: _Shelf, cell: Size) -> bool:
    """Only the last shelf of a page may still grow in height."""
    room = page.room.size
    height = room.height - shelf.top if shelf is page.shelves[-1] else shelf.height
    return cell.height <= height + _SAME and shelf.used + cell.width <= room.width + _SAME
