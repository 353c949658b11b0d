"""Soundness of outlines, and areas laid over one another."""

from __future__ import annotations

import math
import subprocess
import sys

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.regions import fault_of, overlap_area, overlay, region
from patternforge.geometry.transform import rotation

PLATE = rounded_rectangle(0, 0, 40, 30, 4)


def window(x: float, y: float, size: float = 6) -> Path:
    return rounded_rectangle(x, y, x + size, y + size, 1).cw()


def test_a_sound_outline_with_openings_has_no_fault() -> None:
    assert fault_of(PLATE) is None
    assert fault_of(PLATE, [window(5, 5), window(20, 5)]) is None
    assert fault_of(from_vertices([(-5, 0, 1), (5, 0, 1)], closed=True)) is None


@pytest.mark.parametrize(
    ("outline", "fault"),
    [
        (polyline([Point(0, 0), Point(9, 0)]), "the outline is open"),
        (
            polygon([Point(0, 0), Point(4, 0), Point(0, 4), Point(4, 4)]),
            "the outline crosses or touches itself at (2.00, 2.00)",
        ),
        (
            polygon([Point(0, 0), Point(8, 0), Point(8, 8), Point(4, 0), Point(0, 8)]),
            "the outline crosses or touches itself at (4.00, 0.00)",
        ),
        (
            polygon([Point(0, 0), Point(8, 0), Point(8, 8), Point(12, 0), Point(8, 0), Point(0, -8)]),
            "the outline crosses or touches itself at (8.00, 0.00)",
        ),
        (
            polygon([Point(0, 0), Point(8, 0), Point(4, 0), Point(4, 6)]),
            "the outline crosses or touches itself at (4.00, 0.00)",
        ),
        (
            from_vertices([(0, 0, 0), (10, 0, 0), (10, 4, 1), (0, 4, 0)], closed=True).reversed(),
            None,
        ),
        (
            from_vertices([(0, 0, 0), (10, 0, 0), (10, 4, -1), (0, 4, 0)], closed=True),
            "the outline crosses or touches itself at (2.00, 0.00)",
        ),
    ],
)
def test_an_outline_that_meets_itself_is_told_with_the_place(outline: Path, fault: str | None) -> None:
    assert fault_of(outline) == fault


@pytest.mark.parametrize(
    ("openings", "fault"),
    [
        ([window(50, 5)], "opening 1 lies outside the outline"),
        ([window(5, 5), window(37, 5)], "opening 2 meets the outline at (40.00, "),
        ([window(5, 5), window(8, 8)], "opening 1 and opening 2 meet at ("),
        ([window(5, 5, 12), window(8, 8)], "opening 2 lies inside opening 1"),
        ([window(8, 8), window(5, 5, 12)], "opening 1 lies inside opening 2"),
        ([polyline([Point(5, 5), Point(9, 5)])], "opening 1 is open"),
    ],
)
def test_openings_must_lie_inside_and_apart(openings: list[Path], fault: str) -> None:
    assert (fault_of(PLATE, openings) or "").startswith(fault)


def test_a_region_refuses_what_has_a_fault() -> None:
    with pytest.raises(GeometryError, match="opening 1 lies outside"):
        region(PLATE, [window(50, 5)])
    with pytest.raises(GeometryError, match="opening 1 lies outside"):
        overlay([(PLATE, [window(50, 5)], 1.0)])


def test_regions_are_cut_joined_and_measured() -> None:
    one, other = region(rounded_rectangle(0, 0, 10, 10, 0)), region(rounded_rectangle(6, 0, 20, 10, 0))
    far = region(rounded_rectangle(30, 0, 40, 10, 0))
    assert overlap_area(one, other) == 40
    assert one.united(other).area == 200
    assert one.without(other).area == 60
    assert one.common(far).is_empty
    assert other.distance_to(far) == 10
    assert one.contains(Point(10, 5))
    assert not one.contains(Point(10.001, 5))


def test_an_opening_is_no_part_of_its_region() -> None:
    holed = region(PLATE, [window(5, 5)], tolerance=0.001)
    assert not holed.contains(Point(8, 8))
    assert holed.area == pytest.approx(
        1200 - (4 - math.pi) * 16 - 36 + (4 - math.pi), abs=0.02
    )  # two thirds of the tolerance along the arcs


def test_cells_add_up_to_the_areas_laid_over_one_another() -> None:
    areas = [(PLATE, [window(5, 5)], 1.2), (rounded_rectangle(0, 0, 20, 30, 4), (), 0.8), (window(3, 3), (), 0.1)]
    cells = overlay(areas, tolerance=0.001)
    for i, (outline, openings, _) in enumerate(areas):
        covered = sum(cell.area for cell in cells if i in cell.covers)
        assert covered == pytest.approx(region(outline, openings, tolerance=0.001).area, abs=1e-4)


def test_every_cell_lies_in_exactly_the_areas_it_names_and_weighs_their_sum() -> None:
    areas = [(PLATE, [window(5, 5)], 1.2), (rounded_rectangle(10, -5, 50, 12, 2), (), 0.8)]
    for cell in overlay(areas):
        inside = {i for i, (outline, openings, _) in enumerate(areas) if region(outline, openings).contains(cell.at)}
        assert cell.covers == inside
        assert cell.weight == pytest.approx(sum(areas[i][2] for i in inside))


def test_equal_outlines_turned_there_and_back_leave_no_slivers() -> None:
    there = rotation(33, about=Point(7, 8)).path(PLATE)
    back = rotation(-33, about=Point(7, 8)).path(there)
    (cell,) = overlay([(PLATE, (), 1.0), (back, (), 1.0)])
    assert cell.covers == {0, 1}


def test_one_circle_flattened_from_two_starts_leaves_no_slivers() -> None:
    halves = from_vertices([(-5, 0, 1), (5, 0, 1)], closed=True)
    turned = rotation(3).path(halves)
    (cell,) = overlay([(halves, (), 1.0), (turned, (), 1.0)])
    assert cell.covers == {0, 1}


def test_nothing_has_no_cells() -> None:
    assert overlay([]) == ()


def test_shapely_is_not_loaded_before_it_is_used() -> None:
    program = "import sys, patternforge.geometry.regions; print('shapely' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_areas_that_share_an_area_and_a_line_have_the_outline_of_the_area() -> None:
    comb = polygon(Point(x, y) for x, y in ((0, 0), (9, 0), (9, 3), (6, 3), (6, 6), (3, 6), (3, 3), (0, 3)))
    shelf = region(polygon([Point(6, 3), Point(20, 3), Point(20, 9), Point(4, 9), Point(4, 5), Point(6, 5)]))
    (shared,) = region(comb).common(shelf).paths
    assert abs(shared.area) == pytest.approx(2.0)
