"""Findings on gussets: joined edges, bends, corners, and the room between the walls."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.findings import Verdict
from patternforge.fit.gusset_rooms import gusset_room_findings
from patternforge.fit.judge import fit_over_range
from patternforge.fit.layout import layout
from patternforge.geometry.point import Point
from patternforge.leather.contents import Item
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Content, Edge, GussetPart, Held, LayerPart, Load
from tests.unit.fit.found import GOOD, LOOK, NO, finding, findings, with_holes
from tests.unit.wallet.built import leather, wallet
from tests.unit.wallet.pouches import BACK, COINS, SIDE, accordion, pouch, seam

STITCHES = "stitches of a gusset longer or shorter than its wall's"
EDGE = "edge of a gusset longer or shorter than its seam"
BOTH = "stitched edges of a gusset differ by"
LACKS = "holes of a gusset that its wall lacks"
FOLD = "hole rim to fold of the gusset"
CORNER = "corner of the seam, for the strip to go round"
DEPTH = "depth between the walls"
WIDTH = "clear width between the sides of a gusset"
HOLDING = replace(SIDE, holds=(Held("coins", 1),))


def holding(gusset: GussetPart = HOLDING, *, coins: Item = COINS, load: float = 1.0, width: float = 100.0) -> Pattern:
    contents = (Content("coins", coins),)
    return drafted(pouch(gusset, contents=contents, load=Load(cards=load), widths=(width,)))


def test_a_strip_drafted_along_its_seams_meets_them() -> None:
    pattern = drafted(pouch())
    for what in (STITCHES, EDGE):
        for name in ("back seam", "front seam"):
            found = finding(pattern, what, name)
            assert found.measured == pytest.approx(0.0, abs=1e-6)
            assert found.verdict is GOOD
    assert finding(pattern, BOTH).measured == pytest.approx(0.0, abs=1e-9)
    assert all(found.verdict is GOOD and found.measured == 0 for found in findings(pattern, LACKS))


@pytest.mark.parametrize(("by", "verdict"), [(0.08, GOOD), (0.2, LOOK), (0.4, NO)])
def test_a_hole_moved_along_the_strip_spoils_a_stitch(by: float, verdict: Verdict) -> None:
    pattern = with_holes(
        drafted(pouch()),
        "side",
        lambda holes: [replace(holes[0], at=holes[0].at - Point(by, 0.0)), *holes[1:]],
    )
    found = finding(pattern, STITCHES, "back seam")
    assert found.measured == pytest.approx(by, abs=0.01)
    assert found.verdict is verdict
    assert finding(pattern, BOTH).verdict is verdict
    assert finding(pattern, EDGE, "back seam").verdict is verdict
    assert finding(pattern, EDGE, "front seam").verdict is GOOD


def test_seams_of_unlike_length_do_not_join() -> None:
    # A margin wider by 0.1 mm moves the line in: round either corner it is pi / 2 x 0.1 mm shorter, else as long.
    seams = (seam("back seam", "back", "side"), seam("front seam", "side", "front", margin=4.1))
    found = finding(drafted(pouch(seams=seams)), BOTH)
    assert found.measured == pytest.approx(0.314, abs=0.001)
    assert found.verdict is NO
    assert "same margin" in found.remedy


def test_holes_that_a_wall_lacks_are_found() -> None:
    pattern = with_holes(drafted(pouch()), "front", lambda holes: holes[1:-1])
    assert finding(pattern, LACKS, "front seam").measured == 2
    assert finding(pattern, LACKS, "front seam").verdict is NO
    assert finding(pattern, LACKS, "back seam").verdict is GOOD


@pytest.mark.parametrize(("turn", "gap", "verdict"), [(2.7, 1.0, GOOD), (2.4, 0.7, LOOK), (2.0, 0.3, NO)])
def test_stitches_near_a_bend_of_the_strip_are_found(turn: float, gap: float, verdict: Verdict) -> None:
    # From the stitch line to the bend's tangent turn - 1.2, less half a hole.
    found = finding(drafted(pouch(replace(SIDE, turn=turn))), FOLD)
    assert found.measured == pytest.approx(gap)
    assert found.verdict is verdict


@pytest.mark.parametrize(("corner", "verdict"), [(20.0, GOOD), (19.9, LOOK), (12.0, LOOK), (11.9, NO), (0.0, NO)])
def test_a_corner_must_be_round_enough_for_flange_and_web(corner: float, verdict: Verdict) -> None:
    # 4 mm of flange outside the seam: good from a radius of 16 mm, no below 8 mm.
    found = finding(drafted(pouch(corner=corner)), CORNER)
    assert found.measured == pytest.approx(max(corner - 4.0, 0.0))
    assert found.verdict is verdict


def test_straight_seams_have_no_corner_to_go_round() -> None:
    assert findings(drafted(accordion()), CORNER) == []


@pytest.mark.parametrize(("thick", "verdict"), [(20.0, GOOD), (21.0, LOOK), (21.1, NO)])
def test_contents_thicker_than_a_channel_are_found(thick: float, verdict: Verdict) -> None:
    pattern = holding(coins=replace(COINS, thickness=thick))
    found = finding(pattern, DEPTH)
    assert [found.measured, found.limit.good.low] == pytest.approx([20.0, thick])
    assert found.verdict is verdict
    assert (f"{thick - 20:.2f} mm deeper" in found.remedy) == (verdict is not GOOD)


def test_the_load_thins_the_contents() -> None:
    found = finding(holding(coins=replace(COINS, thickness=40.0), load=0.5), DEPTH)
    assert found.limit.good.low == 20.0
    assert found.verdict is GOOD


def test_a_bellows_opens_by_its_leaves_beyond_the_stitches() -> None:
    # 2 x 10 + pi x 0.8 wide, less 4 mm at either edge.
    found = finding(drafted(accordion()), "gusset opens to", "left 1")
    assert found.measured == pytest.approx(14.5133, abs=1e-4)
    assert found.limit.good.low == 3.0
    tight = drafted(accordion(leaf=4.0, holds=(Held("card", 4),)))
    assert finding(tight, "gusset opens to", "left 1").verdict is NO


@pytest.mark.parametrize(("width", "verdict"), [(76.5, GOOD), (75.0, GOOD), (74.5, LOOK), (73.9, NO)])
def test_room_between_the_webs(width: float, verdict: Verdict) -> None:
    # Webs 7 mm inside either edge, coins 60 mm long, 1 mm to spare at the least.
    found = finding(holding(width=width), WIDTH)
    assert found.measured == pytest.approx(width - 14.0)
    assert found.limit.good.low == pytest.approx(61.0)
    assert found.verdict is verdict
    assert bool(found.remedy) == (width < 75.0)


def test_room_between_the_stitches_of_a_bellows_is_that_of_a_taut_path() -> None:
    found = finding(drafted(accordion()), WIDTH, "left 1")
    assert [found.measured, found.limit.good.low] == pytest.approx([92.0, 80 + 3 + 1])


def test_contents_rest_on_the_web_and_stay_below_the_edge() -> None:
    pattern = holding()
    assert finding(pattern, "item rests off its place", "side").measured == pytest.approx(0.0, abs=1e-9)
    assert finding(pattern, "item's top below the edge", "side").measured == pytest.approx(80 - 7 - 40)
    assert finding(pattern, "item's top below the edge", "side").verdict is GOOD
    high = holding(coins=replace(COINS, length=80.0, height=73.0))
    assert finding(high, "item's top below the edge", "side").verdict is LOOK


def test_contents_of_an_accordion_rest_on_the_seam_that_sews_the_walls() -> None:
    assert finding(drafted(accordion()), "item rests off its place", "left 1").measured == pytest.approx(
        0.0, abs=1e-9
    )


def test_a_room_left_open_at_a_side_is_found() -> None:
    pattern = holding()
    seams = tuple(
        replace(each, holes=tuple(hole for hole in each.holes if hole.at.x < 90.0)) for each in pattern.seams
    )
    torn = layout(replace(pattern, seams=seams), {each.role: each for each in pattern.design.leathers})
    (found,) = (each for each in gusset_room_findings(torn) if each.what == WIDTH)
    assert (found.measured, found.verdict, found.remedy) == (0.0, NO, "a side of the room is open")


def test_a_room_that_nothing_closes_below_is_found() -> None:
    sides = (Edge.LEFT,), (Edge.RIGHT,)
    seams = tuple(
        seam(f"{edges[0].value} {wall}", wall, edges[0].value, along=edges)
        for edges in sides
        for wall in ("back", "front")
    )
    gussets = tuple(
        GussetPart(e[0].value, "inner", 0, (f"{e[0].value} back", f"{e[0].value} front"), depth=20.0) for e in sides
    )
    held = (replace(gussets[0], holds=(Held("coins", 1),)), gussets[1])
    front = LayerPart("front", "outer", 0, 0)
    pattern = drafted(wallet(BACK, *held, front, seams=seams, contents=(Content("coins", COINS),)))
    assert finding(pattern, "item rests on stitches", "left").verdict is NO


def test_thickness_closed_is_that_of_walls_and_gusset() -> None:
    assert finding(drafted(pouch()), "thickness closed, as loaded").measured == pytest.approx(22.4)
    thick = holding(coins=replace(COINS, thickness=30.0))
    assert finding(thick, "thickness closed, as loaded").measured == pytest.approx(32.4)


def test_thickness_closed_of_an_accordion_has_leaves_over_cards_only_where_they_meet() -> None:
    # Walls 3 x 1.2; cards 2 x 3 in the middle, leaves 2 x 2.4 beside them: 11.2 mm deep leave 77.6 mm between them,
    # less than the card is long.
    assert finding(drafted(accordion()), "thickness closed, as loaded").measured == pytest.approx(3.6 + 6.0 + 4.8)
    assert finding(drafted(accordion(leaf=8.0)), "thickness closed, as loaded").measured == pytest.approx(9.6)


def test_rows_of_both_seams_do_not_crowd_each_other() -> None:
    assert findings(drafted(pouch()), "nearest two holes", "side") == []


def test_a_bare_flap_may_be_shorter_than_what_it_closes_on() -> None:
    pattern = drafted(pouch())
    assert findings(pattern, "outer edges apart, closed") == []


def test_room_in_leather_at_its_thinnest_is_judged_too() -> None:
    thin = (leather("outer", 1.2), leather("inner", 0.8, tolerance=0.3))
    contents = (Content("coins", replace(COINS, thickness=20.0)),)
    pattern = drafted(pouch(HOLDING, leathers=thin, contents=contents))
    found = [each for each in fit_over_range(pattern) if each.what == DEPTH]
    assert [each.verdict for each in found] == [GOOD, LOOK]
    assert "at its thinnest" in found[1].where
