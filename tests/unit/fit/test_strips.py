"""Strips folded from their flat pieces: heights and depths reckoned by hand."""

from __future__ import annotations

from math import inf, pi

import pytest

from patternforge.fit.strips import bands, enclosed, folded_strip, seam_radius
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.strip import StripPlacement, StripRow
from tests.unit.wallet.built import leather
from tests.unit.wallet.pouches import accordion, pouch, strip_placement

DRAFTED = leather("inner", 0.8)


def test_a_channel_folded_in_its_own_leather_is_as_deep_as_asked() -> None:
    folded = folded_strip(drafted(pouch()).piece("side"), DRAFTED)
    assert folded.height == pytest.approx(20.0)
    assert folded.depths == pytest.approx((7.0, 7.0))
    assert folded.pleats == 0


def test_a_channel_folded_at_the_same_lines_in_thicker_leather_is_deeper_by_what_its_bends_reach_further() -> None:
    # Of 1.2 mm a bend reaches 1.8 mm and takes pi / 2 x 1.2, of 0.8 mm 1.2 mm and pi / 2 x 0.8: bent at its middle,
    # each adds 0.6 - pi / 4 x 0.4 = 0.2858 mm outside.
    folded = folded_strip(drafted(pouch()).piece("side"), leather("inner", 1.2))
    assert folded.height == pytest.approx(20.0 + 2 * 0.285841, abs=1e-5)
    assert folded.depths == pytest.approx((7.285841, 7.285841), abs=1e-5)


@pytest.mark.parametrize(("pleats", "height"), [(1, 2.4), (2, 4.8), (3, 7.2)])
def test_a_bellows_stands_two_bends_high_for_each_pleat_and_reaches_a_bend_beyond_its_leaf(
    pleats: int, height: float
) -> None:
    folded = folded_strip(drafted(accordion(pleats)).piece("left 1"), DRAFTED)
    assert folded.height == pytest.approx(height)
    assert folded.depths == pytest.approx((11.2, 11.2))
    assert folded.pleats == pleats


def test_a_strip_covers_a_band_along_every_stretch_of_its_seam() -> None:
    boxes = bands(strip_placement(drafted(pouch(corner=0.0)).piece("side")), 7.0)
    assert [(b.x0, b.y0, b.x1, b.y1) for b in boxes] == [
        pytest.approx((0.0, 4.0, 7.0, 74.0)),
        pytest.approx((4.0, 0.0, 96.0, 7.0)),
        pytest.approx((93.0, 4.0, 100.0, 74.0)),
    ]


def test_bands_round_a_corner_stay_near_it() -> None:
    boxes = bands(strip_placement(drafted(pouch()).piece("side")), 7.0)
    assert len(boxes) == 3 + 2 * 6
    # The corner is round about (20, 20) with 20 mm, its band all that lies 13 mm and more from there.
    assert not any(b.x0 < 13.0 < b.x1 and b.y0 < 13.0 < b.y1 for b in boxes)


def test_a_channel_round_three_edges_covers_all_between_them_to_the_edges_of_its_walls() -> None:
    outline = enclosed(strip_placement(drafted(pouch()).piece("side")))
    assert outline is not None
    # The seam ends 6 mm below the top; what it goes round is told to a margin of 4 mm beyond.
    assert [getattr(outline.bounds, at) for at in ("x0", "y0", "x1", "y1")] == pytest.approx([0.0, 0.0, 100.0, 78.0])
    # Its lower corners are those of the walls, round about (20, 20) with 20 mm.
    assert sorted({round(s.radius, 6) for s in outline.segments if s.is_arc}) == [20.0]
    assert abs(outline.area) == pytest.approx(100 * 78 - 2 * (400 - 100 * pi))


def test_a_channel_along_one_edge_goes_round_nothing() -> None:
    line = polyline([Point(0, 4), Point(50, 4)])
    straight = StripPlacement((StripRow("a", line, 4.0, 1.0), StripRow("b", line, 30.0, -1.0)), 25.0, 1.0)
    assert enclosed(straight) is None


def test_the_radius_is_that_of_the_seam_and_not_of_the_edge() -> None:
    assert seam_radius(strip_placement(drafted(pouch()).piece("side"))) == pytest.approx(16.0)
    assert seam_radius(strip_placement(drafted(pouch(corner=0.0)).piece("side"))) == 0.0
    line = polyline([Point(0, 0), Point(50, 0)])
    straight = StripPlacement((StripRow("a", line, 4.0, 1.0), StripRow("b", line, 9.0, -1.0)), 25.0, 1.0)
    assert seam_radius(straight) == inf
