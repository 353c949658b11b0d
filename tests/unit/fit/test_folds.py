"""Folds judged: each finding once good, once to look at, once refused where it can be."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.folds import hump
from patternforge.fit.judge import fit
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, FoldSpec, Held, LayerPart, Load
from tests.unit.fit.found import GOOD, LOOK, NO, SHARP, finding, findings, small
from tests.unit.wallet.built import leather, pocket, shell

TWO = (100.0, 100.0)
FOLD = FoldSpec(relief=5.0)
LINING = LayerPart("lining", "inner", 0, 1)
MISMATCH = "edge mismatch, closed"
HUMP = "hump, laid open"
HOLLOW = "hollow left in the bend"
CLEAR = "pockets clear of each other"
ROOM = "panel folded in, clear of the bend"
EDGES = "outer edges apart, closed"


def lined(fold: FoldSpec = FOLD, **changes: object) -> Pattern:
    """A shell 1.2 and a lining 0.8: fibres at 1.8 and 0.8 from the fold's centre."""
    return small(shell(2), LINING, widths=TWO, folds=(fold,), **changes)


def judged(pattern: Pattern, inner: float, what: str) -> Finding:
    """The finding when the inside is cut from leather of another thickness."""
    leathers = {each.role: each for each in pattern.design.leathers} | {"inner": leather("inner", inner)}
    (found,) = (each for each in fit(pattern, leathers) if each.what == what)
    return found


@pytest.mark.parametrize(
    ("thicker", "verdict"),
    # A lining thicker by d needs d pi more, the shell round it 1.5 d pi: it is short by 0.5 d pi.
    [(0.0, GOOD), (0.3, GOOD), (0.32, LOOK), (0.9, LOOK), (0.96, NO), (-0.3, GOOD), (-0.4, LOOK)],
)
def test_edges_of_another_leather_miss_each_other(thicker: float, verdict: Verdict) -> None:
    found = judged(lined(), 0.8 + thicker, MISMATCH)
    assert found.measured == pytest.approx(-0.5 * pi * thicker, abs=1e-9)
    assert found.verdict is verdict
    assert found.remedy == ("" if verdict is GOOD else "draft again for these leathers")


def test_a_wallet_drafted_flat_is_short_by_choice() -> None:
    found = finding(lined(FoldSpec(compensation=0.0)), MISMATCH)
    assert found.measured == pytest.approx(-pi)
    assert found.verdict is LOOK
    assert "follows from the fold's compensation" in found.remedy


def test_a_choice_does_not_excuse_another_leather() -> None:
    # Chosen short by pi; besides, the lining is thicker by 1.2: 0.5 x 1.2 x pi more, which nobody chose.
    # In all the shell would have to be (1.5 x 2.0 + 0.6 - 2.0) pi longer than the lining and is as long.
    found = judged(lined(FoldSpec(compensation=0.0)), 2.0, MISMATCH)
    assert found.measured == pytest.approx(-1.6 * pi)
    assert found.remedy == "follows from the fold's compensation: 1 closes true, 0 lies flat open"


def test_edges_that_meet_are_good_whatever_was_chosen() -> None:
    # The shell was drafted longer by 1.2 pi; round a lining of 1.2 mm it needs (1.5 x 1.2 + 0.6 - 1.2) pi = 1.2 pi.
    found = judged(lined(FoldSpec(compensation=1.2)), 1.2, MISMATCH)
    assert found.measured == pytest.approx(0.0, abs=1e-9)
    assert (found.verdict, found.remedy) == (GOOD, "")


def test_a_load_other_than_drafted_shows_in_the_edges() -> None:
    # Drafted on ten notes between shell and lining, 1 mm each side; judged empty the shell is 1.0 pi too long.
    divider = replace(LINING, holds=(Held("note", 10),))
    pattern = small(shell(2), divider, widths=TWO, folds=(FOLD,))
    empty = replace(pattern, design=replace(pattern.design, load=Load(1.0, 0.0)))
    found = finding(empty, MISMATCH)
    assert found.measured == pytest.approx(pi)
    assert (found.verdict, found.remedy) == (NO, "draft again for these leathers, or change the load")


def test_the_shell_humps_over_the_lining_laid_open() -> None:
    # 1.8 pi over 0.8 pi: sin v / v = 4 / 9.
    found = finding(lined(), HUMP)
    assert found.measured == pytest.approx(hump(1.8 * pi, 0.8 * pi))
    assert found.limit.good.high == pytest.approx(0.8 * pi)
    assert found.verdict is GOOD
    thick = replace(LINING, holds=(Held("note", 40),))
    found = finding(small(shell(2), thick, widths=TWO, folds=(FOLD,)), HUMP)
    assert found.measured > found.limit.good.high
    assert (found.verdict, found.remedy) == (LOOK, "less compensation lets it lie flatter open")


@pytest.mark.parametrize(
    ("length", "chord", "height"),
    [
        (10 * pi, 20.0, 10.0),  # a half circle of radius 10
        (10 * pi / 3, 10.0, 10 * (1 - 3**0.5 / 2)),  # a sixth of one of radius 10
        (5 * pi, 10 * 2**0.5, 10 - 5 * 2**0.5),  # a quarter of one of radius 10
        (20.0, 20.0, 0.0),
        (10.0, 20.0, 0.0),
    ],
)
def test_humps_of_known_arcs(length: float, chord: float, height: float) -> None:
    assert hump(length, chord) == pytest.approx(height, abs=1e-6)


@pytest.mark.parametrize(
    ("smallest", "apart", "verdict"),
    # A lining of 0.8 with nothing inside it: its own radius on both sides.
    [(0.0, None, GOOD), (1.0, 1.6, GOOD), (1.25, 2.0, GOOD), (1.5, 2.4, LOOK)],
)
def test_a_stiff_bend_holds_its_panels_apart(smallest: float, apart: float | None, verdict: Verdict) -> None:
    leathers = (leather("outer", 1.2, min_radius=0.0), leather("inner", 0.8, min_radius=smallest))
    found = findings(lined(leathers=leathers), HOLLOW)
    assert [f.measured for f in found] == ([] if apart is None else [pytest.approx(apart)])
    assert {f.verdict for f in found} <= {verdict}


def test_what_lies_in_the_bend_makes_up_for_some_of_its_stiffness() -> None:
    # A pocket and its card, 1.8, leave the lining a radius of 0.9; it bends no sharper than 1.6.
    leathers = (leather("outer", 1.2, min_radius=0.0), leather("inner", 0.8, min_radius=2.0))
    pattern = small(shell(2), LINING, pocket(), widths=TWO, folds=(FOLD,), leathers=leathers)
    assert finding(pattern, HOLLOW).measured == pytest.approx(1.4)


@pytest.mark.parametrize(
    ("cards", "spine", "verdict"),
    # Two right angles round a spine: pockets and cards on either side, 0.8 + n each, want the spine's width and the
    # shell's inside radius, 0.6, at either corner.
    [(3, 6.4, GOOD), (3, 6.3, LOOK), (3, 5.5, LOOK), (3, 5.3, NO), (1, 2.4, GOOD)],
)
def test_a_spine_leaves_room_for_what_stands_on_both_sides(cards: int, spine: float, verdict: Verdict) -> None:
    pockets = (pocket(count=cards), pocket(name="right", panel=2, count=cards))
    widths, folds = (100.0, spine, 100.0), (FoldSpec(90, relief=0.5), FoldSpec(90, relief=0.5))
    seam = replace(SHARP, stop=5.0, along=(Edge.LEFT, Edge.BOTTOM, Edge.RIGHT))
    found = finding(small(shell(3), *pockets, widths=widths, folds=folds, seams=(seam,)), "room at the spine")
    assert (found.measured, found.limit.good.low) == pytest.approx((spine + 1.2, 2 * (0.8 + cards)))
    assert (found.where, found.verdict) == ("P1", verdict)
    assert found.remedy.endswith("mm wider or the load thinner") == (verdict is not GOOD)


def test_a_load_is_named_only_where_there_is_one() -> None:
    # Two layers of 0.8 on either side of a spine, and on either flank of a right angle left open; nothing is held.
    flaps = tuple(LayerPart(f"{side} {n}", "inner", at, at) for side, at in (("left", 0), ("right", 2)) for n in "ab")
    widths, folds = (100.0, 0.6, 100.0), (FoldSpec(90, relief=0.5), FoldSpec(90, relief=0.5))
    seam = replace(SHARP, stop=5.0, along=(Edge.LEFT, Edge.BOTTOM, Edge.RIGHT))
    spine = finding(small(shell(3), *flaps, widths=widths, folds=folds, seams=(seam,)), "room at the spine")
    assert spine.remedy.endswith("mm wider")
    flaps = tuple(replace(each, first=min(each.first, 1), last=min(each.last, 1)) for each in flaps)
    corner = FoldSpec(90, relief=0.0)
    bare = small(shell(2), *flaps, widths=TWO, folds=(corner,), seams=(seam,))
    assert finding(bare, CLEAR).remedy == "more relief at this fold or a smaller angle"


@pytest.mark.parametrize(
    ("relief", "cards", "verdict"),
    # A right angle left open: pocket and cards 0.8 + n meet at as much from the corner; the pockets stop short of the
    # tangent by the relief, which stands the fibre's radius, 1.2, further out.
    [(5.0, 1, GOOD), (5.0, 5, GOOD), (5.0, 6, LOOK), (5.0, 11, LOOK), (5.0, 12, NO)],
)
def test_pockets_beside_a_fold_left_open_keep_clear_of_each_other(
    relief: float, cards: int, verdict: Verdict
) -> None:
    found = finding(small(shell(2), pocket(count=cards), widths=TWO, folds=(FoldSpec(90, relief=relief),)), CLEAR)
    assert (found.measured, found.limit.good.low) == pytest.approx((relief + 1.2, 0.8 + cards))
    assert found.verdict is verdict


def test_folds_of_a_square_spine_are_not_left_open() -> None:
    pattern = small(shell(3), pocket(), widths=(100.0, 20.0, 100.0), folds=(FoldSpec(90), FoldSpec(90)))
    assert not findings(pattern, CLEAR)


@pytest.mark.parametrize(
    ("middle", "room", "verdict"), [(102.0, 2.0, GOOD), (101.0, 1.0, GOOD), (100.5, 0.5, LOOK), (99.9, -0.1, NO)]
)
def test_a_panel_folded_in_ends_short_of_the_next_bend(middle: float, room: float, verdict: Verdict) -> None:
    found = finding(small(shell(3), widths=(100.0, middle, 100.0), folds=(FOLD, FOLD)), ROOM)
    assert (found.measured, found.limit.good.low) == pytest.approx((room, 1.0))
    assert found.where == "P0 in fold 2"
    assert found.verdict is verdict
    assert bool(found.remedy) == (room < 1.0)


def test_the_other_closing_order_asks_for_the_other_panel() -> None:
    found = finding(small(shell(3), widths=(100.0, 101.0, 98.0), folds=(FOLD, FOLD), closing=(2, 1)), ROOM)
    assert found.where == "P2 in fold 1"
    assert found.measured == pytest.approx(3.0)


@pytest.mark.parametrize(("right", "verdict"), [(100.0, GOOD), (100.4, GOOD), (101.0, LOOK), (90.0, LOOK)])
def test_two_panels_of_unlike_width_end_apart(right: float, verdict: Verdict) -> None:
    found = finding(small(shell(2), LINING, widths=(100.0, right), folds=(FOLD,)), EDGES)
    assert found.measured == pytest.approx(abs(100 - right))
    assert found.verdict is verdict


def test_outer_edges_are_asked_of_two_panels_only() -> None:
    assert not findings(small(shell(3), widths=(100.0, 110.0, 90.0), folds=(FOLD, FOLD)), EDGES)
    assert not findings(small(shell(1), LayerPart("lining", "inner", 0, 0)), EDGES)
