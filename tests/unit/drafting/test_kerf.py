"""Kerf on contours whose every number is known, and what is refused."""

from __future__ import annotations

import pytest

from patternforge.drafting.kerf import opening_cut, outline_cut, width_cut
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polygon
from patternforge.geometry.point import Point


def test_an_outline_grows_by_half_the_kerf_on_every_side_and_its_radii_with_it() -> None:
    grown = outline_cut(rounded_rectangle(0, 0, 90, 60, 5), 0.3, "shell")
    wanted = rounded_rectangle(-0.15, -0.15, 90.15, 60.15, 5.15)
    assert len(grown.segments) == 8
    for got, want in zip(grown.vertices, wanted.vertices, strict=True):
        assert got == pytest.approx(want, abs=1e-9)


def test_sharp_corners_stay_sharp() -> None:
    grown = outline_cut(polygon([Point(0, 0), Point(50, 0), Point(50, 30), Point(0, 30)]), 0.2, "flap")
    assert len(grown.segments) == 4
    assert [n for x, y, _ in grown.vertices for n in (x, y)] == pytest.approx(
        [-0.1, -0.1, 50.1, -0.1, 50.1, 30.1, -0.1, 30.1]
    )


def test_an_opening_shrinks_and_still_runs_clockwise() -> None:
    shrunk = opening_cut(rounded_rectangle(10, 10, 40, 30, 3).cw(), 0.4, "shell")
    assert not shrunk.is_ccw
    bounds = shrunk.bounds
    assert (bounds.x0, bounds.y0, bounds.x1, bounds.y1) == pytest.approx((10.2, 10.2, 39.8, 29.8))
    assert {round(s.radius, 9) for s in shrunk.segments if s.is_arc} == {2.8}


def test_no_kerf_gives_back_the_very_same_contour() -> None:
    outline = rounded_rectangle(0, 0, 90, 60, 5)
    assert outline_cut(outline, 0.0, "shell") is outline
    assert opening_cut(outline, 0.0, "shell") is outline
    assert width_cut(1.0, 0.0, "shell") == 1.0


@pytest.mark.parametrize("kerf", [1.0, 1.5])
def test_a_hole_no_wider_than_the_kerf_is_refused_by_the_name_of_its_piece(kerf: float) -> None:
    with pytest.raises(DraftError, match="piece 'divider': a stitch hole of 1 mm vanishes"):
        width_cut(1.0, kerf, "divider")


def test_an_opening_narrower_than_the_kerf_is_refused() -> None:
    with pytest.raises(DraftError, match="piece 'shell': an opening is too small for a kerf of 2 mm"):
        opening_cut(rounded_rectangle(0, 0, 30, 1.5, 0.2).cw(), 2.0, "shell")
