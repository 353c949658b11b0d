"""Cells packed on pages."""

from __future__ import annotations

import pytest

from patternforge.drawing.shelves import Room, Size, packed

ROOM = Room(Size(190, 260), Size(6, 100), 5)


@pytest.mark.parametrize(
    ("cell", "fits"),
    [
        (Size(179, 260), True),  # beside the notch, all the height
        (Size(179.001, 260), False),
        (Size(190, 155), True),  # below the notch, all the width
        (Size(190, 155.001), False),
        (Size(190.001, 10), False),
        (Size(10, 260.001), False),
    ],
)
def test_a_cell_fits_beside_the_notch_or_below_it(cell: Size, fits: bool) -> None:
    assert ROOM.takes(cell) is fits


def test_cells_stand_side_by_side_while_the_shelf_has_width() -> None:
    spots = packed([Size(80, 50)] * 4, ROOM)
    assert [(spot.page, spot.x, spot.y) for spot in spots] == [(0, 11, 0), (0, 96, 0), (0, 0, 105), (0, 85, 105)]


def test_a_full_page_is_followed_by_another() -> None:
    assert [spot.page for spot in packed([Size(179, 200)] * 3, ROOM)] == [0, 1, 2]


def test_a_small_cell_goes_back_to_the_first_page_with_room() -> None:
    assert packed([Size(179, 200), Size(179, 190), Size(30, 40)], ROOM)[2].page == 0


def test_spots_come_in_the_order_of_the_cells() -> None:
    small, large = packed([Size(30, 20), Size(100, 90)], ROOM)
    assert large.y == 0
    assert (small.x, small.y) == (large.x + 105, 0)


def test_a_shelf_grows_for_the_first_cell_taller_than_the_notch() -> None:
    _, below = packed([Size(179, 120), Size(179, 100)], ROOM)
    assert below.y == 125


def test_no_cells_take_no_spots() -> None:
    assert packed([], ROOM) == ()
