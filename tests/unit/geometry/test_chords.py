"""Lines across areas."""

from __future__ import annotations

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.chords import chords
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Point

# A tee: a bar of 20 x 4 on a stem of 10 x 6.
TEE = polygon([Point(*p) for p in ((5, 0), (15, 0), (15, 6), (20, 6), (20, 10), (0, 10), (0, 6), (5, 6))])


def ends(path: Path, start: tuple[float, float], end: tuple[float, float]) -> list[tuple[float, ...]]:
    found = chords(path, Point(*start), Point(*end))
    return [tuple(round(v, 6) + 0.0 for v in (s.start.x, s.start.y, s.end.x, s.end.y)) for s in found]


@pytest.mark.parametrize(
    ("start", "end", "stretches"),
    [
        ((10, -5), (10, 15), [(10, 0, 10, 10)]),
        ((2, -5), (2, 15), [(2, 6, 2, 10)]),
        ((10, 3), (10, 5), [(10, 3, 10, 5)]),
        ((30, 0), (30, 9), []),
        ((10, 15), (10, -5), [(10, 10, 10, 0)]),
    ],
)
def test_a_line_is_drawn_where_it_lies_inside(
    start: tuple[float, float], end: tuple[float, float], stretches: list[tuple[float, ...]]
) -> None:
    assert ends(TEE, start, end) == stretches


def test_a_line_through_a_notch_falls_into_two_stretches() -> None:
    notched = polygon([Point(*p) for p in ((0, 0), (20, 0), (20, 9), (12, 9), (12, 3), (8, 3), (8, 9), (0, 9))])
    assert ends(notched, (-1, 6), (21, 6)) == [(0, 6, 8, 6), (12, 6, 20, 6)]


def test_a_stretch_along_the_rim_is_left_out() -> None:
    assert ends(TEE, (5, -2), (5, 12)) == [(5, 6, 5, 10)]


def test_a_line_over_the_joint_of_two_edges_stays_one() -> None:
    path = polygon([Point(*p) for p in ((0, 0), (10, 0), (10, 5), (10, 9), (5, 9), (0, 9))])
    assert ends(path, (5, -1), (5, 10)) == [(5, 0, 5, 9)]


def test_arcs_end_a_line_where_they_pass_it() -> None:
    assert ends(rounded_rectangle(0, 0, 20, 20, 5), (5 - 3, 0), (2, 20)) == [(2, 1, 2, 19)]


def test_an_open_path_is_refused() -> None:
    with pytest.raises(GeometryError):
        chords(polyline([Point(0, 0), Point(1, 1)]), Point(0, 1), Point(1, 0))
