from __future__ import annotations

from itertools import combinations
from math import nan

import pytest

from patternforge.drawing.arrange import arranged, on_beds
from patternforge.drawing.dump import dump
from patternforge.drawing.extent import extent, moved
from patternforge.drawing.model import Dot, Figure, Role
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import translation
from tests import figures
from tests.figures import panel, pocket, tilted


def ring(diameter: float, name: str = "ring") -> Figure:
    return Figure(name, "outer", (Dot(Role.OUTLINE, Point(-7, 3), diameter),))


def space_between(one: Bounds, other: Bounds) -> float:
    across = max(other.x0 - one.x1, one.x0 - other.x1)
    along = max(other.y0 - one.y1, one.y0 - other.y1)
    return max(across, along)


def test_pieces_stand_a_gap_apart_and_a_gap_from_the_rim() -> None:
    sheet = arranged([panel(), tilted(), pocket(), tilted(), panel()], gap=7.5, width_limit=250)
    boxes = [extent(figure.inks) for figure in sheet.figures]
    assert min(space_between(one, other) for one, other in combinations(boxes, 2)) == pytest.approx(7.5, abs=1e-9)
    assert min(min(box.x0, box.y0, sheet.width - box.x1, sheet.height - box.y1) for box in boxes) == pytest.approx(
        7.5
    )


def test_pieces_read_like_lines_of_text_in_the_order_given() -> None:
    sheet = arranged([ring(20, name) for name in "abcde"], gap=5, width_limit=60)
    assert [figure.name for figure in sheet.figures] == list("abcde")
    centres = [extent(figure.inks).centre for figure in sheet.figures]
    expected = [(15, 65), (40, 65), (15, 40), (40, 40), (15, 15)]
    assert all(centre.distance_to(Point(*place)) < 1e-9 for centre, place in zip(centres, expected, strict=True))


def test_a_piece_is_shifted_and_never_turned() -> None:
    sheet = arranged([tilted(), panel()], gap=4)
    home = moved(sheet.figures[1], translation(-extent(sheet.figures[1].inks).x0, -extent(sheet.figures[1].inks).y0))
    assert dump([home]) == dump([panel()])


def test_without_a_limit_all_pieces_share_one_row() -> None:
    sheet = arranged([panel()] * 9, gap=10)
    assert (sheet.width, sheet.height) == pytest.approx((9 * 95 + 10 * 10, 95))


def test_a_row_that_fills_the_limit_exactly_is_not_broken() -> None:
    # These widths and gaps add up to a hair more than 1.1 in floating numbers.
    sheet = arranged([ring(0.1), ring(0.3), ring(0.3)], gap=0.1, width_limit=1.1)
    assert sheet.height == pytest.approx(0.5)


def test_the_sample_sheet_is_laid_out_as_its_constants_say() -> None:
    sheet = figures.sheet()
    boxes = [extent(figure.inks) for figure in sheet.figures]
    assert (sheet.width, sheet.height) == figures.SHEET_SIZE
    assert [Point(box.x0, box.y0) for box in boxes] == [figures.PANEL_AT, figures.POCKET_AT]


def test_a_piece_wider_than_the_limit_is_refused_by_name_and_size() -> None:
    with pytest.raises(DraftError, match=r"'panel' is 95\.00 mm wide.*10 mm.*100 mm"):
        arranged([ring(20), panel()], gap=10, width_limit=100)


def test_a_sheet_without_pieces_is_refused() -> None:
    with pytest.raises(DraftError, match="no piece"):
        arranged([], gap=10)


@pytest.mark.parametrize("gap", [-1.0, nan])
def test_a_gap_below_nothing_is_refused(gap: float) -> None:
    with pytest.raises(DraftError, match="gap"):
        arranged([panel()], gap=gap)


def test_what_does_not_fit_one_bed_goes_on_the_next_in_the_same_order() -> None:
    sheets = on_beds([ring(20, name) for name in "abcdefg"], 5, 60, 60, "bed")
    assert [sheet.name for sheet in sheets] == ["bed-1", "bed-2"]
    assert [[figure.name for figure in sheet.figures] for sheet in sheets] == [list("abcd"), list("efg")]
    assert all(sheet.width <= 60 and sheet.height <= 60 for sheet in sheets)
    for sheet in sheets:
        boxes = [extent(figure.inks) for figure in sheet.figures]
        assert min(space_between(one, other) for one, other in combinations(boxes, 2)) == pytest.approx(5)
        assert min(box.y0 for box in boxes) == pytest.approx(5)


def test_a_bed_that_takes_all_is_the_sheet_that_no_height_limits() -> None:
    rings = [ring(20, name) for name in "abc"]
    assert on_beds(rings, 5, 60, 55.0, "bed") == (arranged(rings, 5, 60, "bed"),)


def test_a_piece_higher_than_the_bed_is_refused_by_name() -> None:
    with pytest.raises(DraftError, match=r"'ring' is 20.00 mm high; with 5 mm .* does not fit a height of 29 mm"):
        on_beds([ring(20)], 5, None, 29.0)
