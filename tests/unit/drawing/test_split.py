"""A figure cut into tiles."""

from __future__ import annotations

import pytest

from patternforge.drawing.model import Role, Stroke, Text
from patternforge.drawing.shelves import Size
from patternforge.drawing.split import crosses, grid, map_inks, tile_inks
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Bounds, Point

PAGE = Size(180, 240)
FIGURE = Bounds(-5, -10, 395, 290)  # 400 x 300 mm: three columns, two rows


def test_the_fewest_tiles_of_one_size_are_taken() -> None:
    whole = grid(FIGURE, PAGE, 10)
    assert (whole.rows, whole.columns) == (2, 3)
    assert {(round(t.window.width, 9), round(t.window.height, 9)) for t in whole.tiles} == {(140, 155)}


@pytest.mark.parametrize(("width", "columns"), [(180, 1), (180.001, 2), (350, 2), (350.001, 3)])
def test_a_tile_more_is_taken_only_when_one_less_does_not_reach(width: float, columns: int) -> None:
    assert grid(Bounds(0, 0, width, 100), PAGE, 10).columns == columns


def test_rows_have_letters_from_the_top_and_columns_numbers_from_the_left() -> None:
    whole = grid(FIGURE, PAGE, 10)
    assert [tile.name for tile in whole.tiles] == ["A1", "A2", "A3", "B1", "B2", "B3"]
    assert whole.tiles[0].window.y1 == FIGURE.y1
    assert whole.tiles[0].window.x0 == FIGURE.x0


def test_after_z_come_two_letters() -> None:
    assert grid(Bounds(0, 0, 100, 27 * 230 + 10), PAGE, 10).tiles[-1].name == "AA1"


def test_neighbours_share_the_overlap() -> None:
    whole = grid(FIGURE, PAGE, 10)
    a1, a2, b1 = (next(t for t in whole.tiles if t.name == name).window for name in ("A1", "A2", "B1"))
    assert a1.x1 - a2.x0 == pytest.approx(10)
    assert b1.y1 - a1.y0 == pytest.approx(10)


def test_every_cross_is_whole_on_two_tiles_and_numbered_once() -> None:
    whole = grid(FIGURE, PAGE, 10)
    inks = crosses(whole, 2.0)
    numbers = [ink.content for ink in inks if isinstance(ink, Text)]
    assert len(numbers) == len(set(numbers)) == 2 * 7  # seven seams between six tiles
    for number in numbers:
        assert sum(number in _numbers_on(tile_inks(whole, tile, inks)) for tile in whole.tiles) >= 2


def _numbers_on(inks: tuple[object, ...]) -> list[str]:
    return [ink.content for ink in inks if isinstance(ink, Text)]


def test_only_edges_towards_another_tile_are_drawn() -> None:
    whole = grid(FIGURE, PAGE, 10)
    count = {tile.name: len(tile_inks(whole, tile, ())) for tile in whole.tiles}
    assert count == {"A1": 2, "A2": 3, "A3": 2, "B1": 2, "B2": 3, "B3": 2}
    (edge,) = tile_inks(grid(Bounds(0, 0, 200, 90), PAGE, 10), grid(Bounds(0, 0, 200, 90), PAGE, 10).tiles[0], ())
    assert isinstance(edge, Stroke)
    assert {edge.path.start.x, edge.path.end.x} == {105}


def test_a_tile_shows_what_lies_in_its_window_and_no_more() -> None:
    whole = grid(FIGURE, PAGE, 10)
    outline = Stroke(Role.OUTLINE, rounded_rectangle(-5, -10, 395, 290, 20))
    for tile in whole.tiles:
        shown = [ink for ink in tile_inks(whole, tile, (outline,)) if ink.role is Role.OUTLINE]
        assert shown
        for ink in shown:
            assert isinstance(ink, Stroke)
            for step in range(11):
                p = ink.path.point_at(ink.path.length * step / 10)
                assert _inside(p, tile.window)


def _inside(p: Point, w: Bounds) -> bool:
    return w.x0 - 1e-9 <= p.x <= w.x1 + 1e-9 and w.y0 - 1e-9 <= p.y <= w.y1 + 1e-9


def test_the_page_map_shows_every_tile_and_crosses_one_through() -> None:
    whole = grid(FIGURE, PAGE, 10)
    box = Bounds(100, 100, 118, 109)
    inks = map_inks(whole, whole.tiles[4], box, first=3)
    frames = [ink.path.bounds for ink in inks if isinstance(ink, Stroke) and ink.path.closed]
    diagonals = [ink.path.bounds for ink in inks if isinstance(ink, Stroke) and not ink.path.closed]
    assert len(frames) == 6
    assert diagonals == [frames[4]] * 2
    numbers = [ink for ink in inks if isinstance(ink, Text)]
    assert [ink.content for ink in numbers] == ["p3", "p4", "p5", "p6", "p8"]
    others = [frame for frame in frames if frame != frames[4]]
    assert all(f.x0 < ink.at.x < f.x1 and f.y0 < ink.at.y < f.y1 for f, ink in zip(others, numbers, strict=True))
    assert all(_inside(Point(x, y), box) for f in frames for x, y in ((f.x0, f.y0), (f.x1, f.y1)))
