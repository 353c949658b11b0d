"""Pockets judged: each finding once good, once to look at, once refused.

A pocket of 40 mm on a panel of 100 x 80, rim 4 mm off the edge: stitch lines 92 mm apart, floor at 4, mouth at 44; a
card of 80 x 50 x 1 mm stands in it.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.fit.findings import Stretch, Verdict
from patternforge.leather.contents import Section
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import (
    Content,
    Edge,
    FoldSpec,
    Held,
    LayerPart,
    Lying,
    Side,
    ThumbNotch,
)
from tests.unit.fit.found import GOOD, LOOK, NO, SHARP, finding, findings, small, with_holes
from tests.unit.wallet.built import CARD, bank, pocket, shell

CLEAR = "clear width between stitch lines"
REST = "item rests off its place"
STANDS = "item stands out of its mouth"
TOP = "item's top below the edge"
COVERED = "item covered at the deepest cut"
FOLD = "item clear of the fold"
LENGTH = "clear length on the shortest wall"
SLIDE = "item may slide past its place"
FOLDS = (FoldSpec(relief=5.0),)


def plain() -> Pattern:
    return small(shell(1), pocket())


def boxed(pattern: Pattern, dx: float = 0.0, dy: float = 0.0) -> Pattern:
    """The item meant to lie elsewhere, the piece as it was."""
    (room,) = pattern.pockets
    x0, y0, x1, y1 = room.box
    return replace(pattern, pockets=(replace(room, box=(x0 + dx, y0 + dy, x1 + dx, y1 + dy)),))


@pytest.mark.parametrize(
    ("width", "verdict", "remedy"),
    # Rim 4 mm either side: clear width - 8. Taut path 80 + 1, so 91.5 leaves the 2.5 mm of ease asked for.
    [
        (91.5, GOOD, ""),
        (90.5, GOOD, ""),  # 1.5 mm will do
        (90.4, LOOK, "widen the pocket by 1.10 mm"),
        (89.0, LOOK, "widen the pocket by 2.50 mm"),
        (88.9, NO, "widen the pocket by 2.60 mm"),
        (97.0, GOOD, ""),
        (97.1, LOOK, "the item slides about: narrow the pocket"),
    ],
)
def test_the_clear_width(width: float, verdict: Verdict, remedy: str) -> None:
    found = finding(small(shell(1), pocket(), widths=(width,)), CLEAR)
    assert (found.where, found.verdict, found.remedy) == ("card in pocket", verdict, remedy)
    assert found.measured == pytest.approx(width - 8)
    assert (found.limit.good, found.limit.tolerable) == (Stretch(82.5, 89.0), Stretch(low=81.0))


def test_the_clear_width_goes_round_all_cards_that_lie_over_each_other() -> None:
    # Three cards: 80 + 3, and 1.5 to spare.
    found = findings(small(shell(1), bank(), widths=(100.0,)), CLEAR)
    assert [f.limit.good.low for f in found] == pytest.approx([84.5] * 3)
    # Steps of 50: one card ends where the next begins.
    found = findings(small(shell(1), bank(step=50.0, slots=2), height=120.0), CLEAR)
    assert [f.limit.good.low for f in found] == pytest.approx([82.5] * 2)
    # Four in one pocket, of 1 mm and of half a millimetre.
    assert finding(small(shell(1), pocket(count=4)), CLEAR).limit.good.low == pytest.approx(85.5)
    thin = (Content("card", replace(CARD, thickness=0.5)),)
    assert finding(small(shell(1), pocket(count=4), contents=thin), CLEAR).limit.good.low == pytest.approx(83.5)


def test_the_clear_width_for_a_pen_is_half_its_girth() -> None:
    pen = (Content("card", replace(CARD, length=50.0, height=12.0, thickness=12.0, section=Section.ROUND)),)
    found = finding(small(shell(1), pocket(lying=Lying.UPRIGHT), contents=pen, widths=(30.0,)), CLEAR)
    assert (found.measured, found.limit.good.low) == pytest.approx((22.0, 6 * pi + 1.5))


def test_a_pocket_open_at_a_side_is_refused() -> None:
    torn = with_holes(plain(), "pocket", lambda holes: [hole for hole in holes if hole.at.x > 5 or hole.at.y < 5])
    assert finding(torn, "clear width").verdict is NO


def test_a_pocket_without_a_floor_is_refused() -> None:
    torn = with_holes(plain(), "pocket", lambda holes: [hole for hole in holes if not (20 < hole.at.x < 80)])
    found = finding(torn, "item rests on a row of stitches")
    assert (found.verdict, found.remedy) == (NO, "give the pocket a floor seam")
    assert not findings(torn, CLEAR)


@pytest.mark.parametrize(("off", "verdict"), [(0.3, GOOD), (-0.3, GOOD), (0.4, LOOK), (2.0, LOOK), (-2.1, NO)])
def test_an_item_off_its_floor(off: float, verdict: Verdict) -> None:
    found = finding(boxed(plain(), dy=off), REST)
    assert found.measured == pytest.approx(-off)
    assert found.verdict is verdict


@pytest.mark.parametrize(("depth", "show", "verdict"), [(40.0, 10.0, GOOD), (46.0, 4.0, GOOD), (47.0, 3.0, LOOK)])
def test_a_card_to_take_hold_of(depth: float, show: float, verdict: Verdict) -> None:
    found = finding(small(shell(1), pocket(depth=depth)), STANDS)
    assert found.measured == pytest.approx(show)
    assert found.verdict is verdict


def test_a_card_sunk_in_its_pocket_is_not_asked_how_far_it_stands_out() -> None:
    assert not findings(small(shell(1), pocket(depth=55.0)), STANDS)


@pytest.mark.parametrize(("height", "verdict"), [(54.5, GOOD), (54.4, LOOK), (54.0, LOOK), (53.9, NO)])
def test_a_card_that_stands_out_of_the_wallet(height: float, verdict: Verdict) -> None:
    # The card's top is at 54.
    found = finding(small(shell(1), pocket(), height=height), TOP)
    assert found.measured == pytest.approx(height - 54)
    assert found.verdict is verdict
    assert found.remedy.endswith(": more height") == (verdict is not GOOD)


def test_smaller_steps_are_named_only_where_there_are_steps() -> None:
    low = {"height": 55.0}
    several = findings(small(shell(1), bank(), **low), TOP)
    assert several
    assert {found.remedy.partition(": ")[2] for found in several if found.remedy} == {"more height or smaller steps"}
    (only,) = findings(small(shell(1), bank(slots=1), height=40.0), TOP)
    assert only.remedy.endswith(": more height")


@pytest.mark.parametrize(
    ("cut", "share", "verdict"),
    # Of the 40 mm from floor to mouth a notch leaves 40 - cut.
    [(10.0, 75.0, GOOD), (20.0, 50.0, GOOD), (22.0, 45.0, LOOK), (28.0, 30.0, LOOK), (30.0, 25.0, NO)],
)
def test_a_deep_notch_lets_the_card_tip_out(cut: float, share: float, verdict: Verdict) -> None:
    found = finding(small(shell(1), pocket(thumb=ThumbNotch(60.0, cut))), COVERED)
    assert (found.measured, found.limit.good.low) == pytest.approx((share, 50.0))
    assert found.unit == "%"
    assert found.verdict is verdict


def test_a_layer_over_a_mouth_is_pointed_out() -> None:
    lining = LayerPart("lining", "inner", 0, 0)
    found = finding(small(shell(1), pocket(), lining), "mouth lies under lining")
    assert (found.measured, found.verdict, found.where) == (1, LOOK, "card in pocket")
    assert not findings(small(shell(1), lining, pocket()), "mouth lies under lining")
    # The card stands from 44 to 54 out of its mouth; a lining up to 50 covers the middle of that, one up to 48 not.
    for top, covers in ((50.0, True), (48.0, False)):
        low = replace(lining, drop=80 - top, exact=("drop",))
        assert bool(findings(small(shell(1), pocket(), low), "mouth lies under lining")) is covers


@pytest.mark.parametrize(("aside", "room", "verdict"), [(11.5, 1.0, GOOD), (12.0, 0.5, LOOK), (12.6, -0.1, NO)])
def test_an_item_near_the_bend(aside: float, room: float, verdict: Verdict) -> None:
    # Between stitch lines 4 and 91 the card lies from 7.5 to 87.5, 12.5 mm short of the tangent.
    pattern = small(shell(2), pocket(), widths=(100.0, 100.0), folds=FOLDS)
    assert finding(pattern, FOLD).measured == pytest.approx(12.5)
    found = finding(boxed(pattern, dx=aside), FOLD)
    assert found.measured == pytest.approx(room)
    assert found.verdict is verdict


def test_an_item_between_two_folds_is_judged_by_the_nearer_one() -> None:
    # On the middle panel between stitch lines 9 and 91: the card from 10 to 90, 10 mm off either tangent.
    pattern = small(shell(3), pocket(panel=1), widths=(100.0,) * 3, folds=(*FOLDS, *FOLDS))
    assert finding(pattern, FOLD).measured == pytest.approx(10.0)
    assert finding(boxed(pattern, dx=9.5), FOLD).measured == pytest.approx(0.5)
    assert finding(boxed(pattern, dx=-9.5), FOLD).measured == pytest.approx(0.5)


def test_without_a_fold_beside_it_nothing_is_said_of_folds() -> None:
    assert not findings(plain(), FOLD)


def noted(width: float = 140.0, **changes: object) -> Pattern:
    divider = LayerPart("divider", "inner", 0, 0, holds=(Held("note", 3),))
    return small(shell(1), divider, widths=(width,), **changes)


@pytest.mark.parametrize(
    ("width", "verdict", "remedy"),
    # Three notes of 120 mm, 0.3 thick, on one panel want 121.8 mm between the stitch lines, 8 less than the width.
    [
        (129.8, GOOD, ""),
        (129.7, LOOK, "lengthen the wallet by 0.10 mm"),
        (129.3, LOOK, "lengthen the wallet by 0.50 mm"),
        (129.2, NO, "lengthen the wallet by 0.60 mm"),
    ],
)
def test_a_notes_length(width: float, verdict: Verdict, remedy: str) -> None:
    found = finding(noted(width), LENGTH)
    assert (found.measured, found.limit.good.low) == pytest.approx((width - 8, 121.8))
    assert (found.verdict, found.remedy) == (verdict, remedy)


def test_a_note_is_held_to_the_shorter_wall() -> None:
    # Divider 0.8 pi, shell round notes and divider 2.1 pi: the divider is the shorter: 2 x 96 + 0.8 pi.
    divider = LayerPart("divider", "inner", 0, 1, holds=(Held("note", 3),))
    found = finding(small(shell(2), divider, widths=(100.0, 100.0), folds=FOLDS), LENGTH)
    assert found.measured == pytest.approx(192 + 0.8 * 3.14159265)
    # Over a fold a note wants 4 mm beyond its taut path.
    assert found.limit.good.low == pytest.approx(124.3)


@pytest.mark.parametrize(("height", "verdict"), [(74.5, GOOD), (74.2, LOOK), (73.9, NO)])
def test_a_notes_height(height: float, verdict: Verdict) -> None:
    found = finding(noted(height=height), TOP)
    assert found.measured == pytest.approx(height - 74)
    assert found.verdict is verdict


def test_a_note_rests_on_the_rim_or_slides_or_falls_through() -> None:
    assert finding(noted(), SLIDE).verdict is GOOD
    # Put in from the left it should stop at the first fold, but nothing is sewn there: it slides on to the rim.
    divider = LayerPart("divider", "inner", 0, 1, opening=Edge.LEFT, holds=(Held("note", 3),))
    along = replace(SHARP, along=(Edge.BOTTOM, Edge.RIGHT, Edge.TOP))
    sideways = finding(
        small(shell(2), divider, widths=(100.0, 100.0), folds=FOLDS, seams=(along,), height=130.0), SLIDE
    )
    # From 5 mm before the tangent at 100 to the rim at 196 + zone: 101 mm and 0.8 pi.
    assert sideways.measured == pytest.approx(101 + 0.8 * 3.14159265)
    assert sideways.verdict is LOOK
    sides = [replace(SHARP, name=edge.value, along=(edge,)) for edge in (Edge.LEFT, Edge.RIGHT)]
    (fallen,) = findings(noted(seams=sides), "item rests on stitches")
    assert fallen.verdict is NO


def test_pockets_that_face_out_are_judged_like_those_inside() -> None:
    outside = small(pocket(facing=Side.OUTSIDE), shell(1))
    for what in (CLEAR, REST, STANDS, TOP, COVERED):
        assert finding(outside, what).measured == pytest.approx(finding(plain(), what).measured)


@pytest.mark.parametrize(
    "around",
    [
        (Edge.RIGHT, Edge.TOP, Edge.LEFT),
        (Edge.BOTTOM, Edge.RIGHT, Edge.TOP),
        (Edge.TOP, Edge.LEFT, Edge.BOTTOM),
    ],
)
def test_pockets_that_open_another_way_are_judged_like_those_on_top(around: tuple[Edge, ...]) -> None:
    """The same pocket on a panel as wide as high, sewn round all edges but the one it opens at."""
    (opening,) = set(Edge) - set(around)
    turned = small(shell(1), pocket(opening=opening), seams=(replace(SHARP, along=around),), height=100.0)
    upright = small(shell(1), pocket(), height=100.0)
    for what in (CLEAR, REST, STANDS, TOP):
        assert finding(turned, what).measured == pytest.approx(finding(upright, what).measured)
