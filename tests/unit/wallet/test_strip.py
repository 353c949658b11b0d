"""Strips along seams that turn corners: places and directions there and back."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from patternforge.geometry.path import from_vertices, polyline
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Development
from patternforge.wallet.strip import StripPlacement, StripRow

QUARTER = sqrt(2) - 1  # bulge of a quarter turn
# Down 10 mm, round a corner of 10 mm, then 10 mm to the right: 20 + 5 pi = 35.708 mm.
LINE = from_vertices([(0.0, 20.0, 0.0), (0.0, 10.0, QUARTER), (10.0, 0.0, 0.0), (20.0, 0.0, 0.0)], closed=False)
LENGTH = 20 + 5 * pi
STRIP = StripPlacement((StripRow("back", LINE, 4.0, 1.0), StripRow("front", LINE, 26.0, -1.0)), 30.0, 1.0, 1)


def test_places_lie_as_far_from_the_middle_of_the_strip_as_from_the_middle_of_the_seam() -> None:
    assert STRIP.on_row("back", LENGTH / 2) == Point(30.0, 4.0)
    assert STRIP.on_row("back", 0.0) == Point(30.0 - LENGTH / 2, 4.0)
    assert STRIP.on_row("front", 10.0).x == pytest.approx(30.0 - 2.5 * pi)
    assert STRIP.on_row("front", 10.0).y == 26.0


def test_a_hole_of_either_row_comes_back_to_its_seam() -> None:
    for along, place in (
        (0.0, Point(0, 20)),
        (10.0, Point(0, 10)),
        (10 + 5 * pi, Point(10, 0)),
        (LENGTH, Point(20, 0)),
    ):
        for name in ("back", "front"):
            assert STRIP.to_assembly(STRIP.on_row(name, along)).distance_to(place) < 1e-9


def test_up_the_strip_is_into_the_wallet_at_the_outer_row_and_out_of_it_at_the_inner_one() -> None:
    # Past the corner the seam runs to the right, the wallet lies above it.
    x = STRIP.on_row("back", LENGTH - 4.0).x
    assert STRIP.to_assembly(Point(x, 5.0)).distance_to(Point(16.0, 1.0)) < 1e-9
    assert STRIP.to_assembly(Point(x, 25.0)).distance_to(Point(16.0, 1.0)) < 1e-9
    # Before it the seam runs down, the wallet lies to its right.
    x = STRIP.on_row("back", 4.0).x
    assert STRIP.to_assembly(Point(x, 6.0)).distance_to(Point(2.0, 16.0)) < 1e-9


def test_beyond_the_ends_of_the_seam_the_strip_runs_straight_on() -> None:
    first = STRIP.on_row("back", 0.0)
    assert STRIP.to_assembly(first - Point(3.0, 0.0)).distance_to(Point(0.0, 23.0)) < 1e-9
    assert STRIP.to_piece(Point(0.0, 23.0)).distance_to(first - Point(3.0, 0.0)) < 1e-9
    last = STRIP.on_row("back", LENGTH)
    assert STRIP.to_piece(Point(24.0, 1.0)).distance_to(last + Point(4.0, 1.0)) < 1e-9


def test_several_places_come_back_in_their_order() -> None:
    points = [STRIP.on_row("back", d) for d in (0.0, 10.0)]
    assert [round(p.y, 6) for p in STRIP.on_assembly(points)] == [20.0, 10.0]


def test_directions_are_told_against_the_way_of_the_seam_and_mirrored_on_the_inner_row() -> None:
    at_back, at_front = STRIP.on_row("back", LENGTH - 2.0), STRIP.on_row("front", LENGTH - 2.0)
    assert STRIP.angle(at_back, 30.0) == pytest.approx(30.0)
    assert STRIP.angle(at_front, 30.0) == pytest.approx(-30.0)
    # Where the seam runs down, -90 degrees is the way of the strip.
    assert STRIP.angle(STRIP.on_row("back", 2.0), -90.0) == pytest.approx(0.0)
    assert STRIP.angle(STRIP.on_row("front", 2.0), 0.0) == pytest.approx(-90.0)


def test_a_strip_that_runs_the_other_way_is_a_mirror_image() -> None:
    turned = StripPlacement(STRIP.rows, 30.0, -1.0)
    assert turned.on_row("back", 0.0) == Point(30.0 + LENGTH / 2, 4.0)
    assert turned.to_assembly(turned.on_row("back", 10.0)).distance_to(Point(0.0, 10.0)) < 1e-9
    assert turned.beside("back", 30.0) == pytest.approx(150.0)
    assert turned.onto_piece.is_mirror
    assert not STRIP.onto_piece.is_mirror


def test_the_isometry_of_the_middle_holds_there() -> None:
    line = polyline([Point(5.0, 0.0), Point(25.0, 0.0)])
    strip = StripPlacement((StripRow("back", line, 4.0, 1.0), StripRow("front", line, 26.0, -1.0)), 12.0, 1.0)
    for point in (Point(15.0, 0.0), Point(7.0, 3.0)):
        assert strip.onto_piece.point(point).distance_to(strip.to_piece(point)) < 1e-9


def test_a_strip_lies_flat_on_no_panel_and_crosses_no_fold() -> None:
    assert STRIP.panels == ()
    assert STRIP.panel == 1
    assert STRIP.development == Development()
