"""Where areas weigh most together."""

from __future__ import annotations

from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.heaviest import heaviest
from patternforge.geometry.regions import Region, region


def box(x0: float, x1: float) -> Region:
    return region(rounded_rectangle(x0, 0, x1, 10, 0))


def test_a_single_heavy_area_outweighs_two_light_ones() -> None:
    areas = [box(0, 10), box(5, 15), box(20, 30)]
    assert heaviest(areas, [1.0, 1.0, 3.0], 0.1) == frozenset({2})
    assert heaviest(areas, [1.0, 1.0, 1.5], 0.1) == frozenset({0, 1})


def test_an_overlap_narrower_than_asked_does_not_count() -> None:
    areas = [box(0, 10), box(9.95, 20)]
    assert heaviest(areas, [1.0, 2.0], 0.1) == frozenset({1})
    assert heaviest(areas, [1.0, 2.0], 0.01) == frozenset({0, 1})


def test_nothing_weighs_nothing() -> None:
    assert heaviest([], [], 0.1) == frozenset()


def test_a_shrunk_area_keeps_its_corners_sharp_and_may_vanish() -> None:
    assert box(0, 10).shrunk(1).area == 64
    assert box(0, 10).shrunk(5).is_empty
