"""What fit finds on folded wallets: one measure after another, good and not."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.errors import GeometryError
from patternforge.fit.findings import Finding, Verdict, worst
from patternforge.fit.judge import fit, fit_over_range
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.transform import translation
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.features import EdgeShape, ThumbNotch
from patternforge.wallet.folded.spec import FaceOpening, FaceSpec, FoldedSpec, RoomSpec, TabSpec
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design, Edge, Limits, Load, Lying
from tests.folded_built import design_of, envelope, flap, with_folded

BACK = FaceSpec("back", width=90.0, height=60.0)


def found(design: Design, what: str, where: str = "") -> Finding:
    """The only finding of that kind there."""
    (only,) = [each for each in fit(drafted(design)) if each.what == what and where in each.where]
    return only


def assert_reads(finding: Finding, measured: float, verdict: Verdict, within: float = 1e-6) -> None:
    assert finding.measured == pytest.approx(measured, abs=within)
    assert finding.verdict is verdict


def with_face(design: Design, name: str, **changes: Any) -> Design:
    assert design.folded is not None
    return with_folded(
        design, faces=tuple(replace(f, **changes) if f.name == name else f for f in design.folded.faces)
    )


def with_hinge(design: Design, name: str, **changes: Any) -> Design:
    assert design.folded is not None
    hinge = design.folded.face(name).hinge
    assert hinge is not None
    return with_face(design, name, hinge=replace(hinge, **changes))


def with_piece(pattern: Pattern, **changes: Any) -> Pattern:
    return replace(pattern, pieces=(replace(pattern.pieces[0], **changes),))


def test_an_envelope_closes_with_every_measure_good() -> None:
    findings = fit(drafted(envelope()))
    assert worst(findings) is Verdict.GOOD
    assert len({each.what for each in findings}) == 14


# What is in the way


def test_a_tail_folded_in_after_what_it_hangs_on_runs_into_the_back() -> None:
    specs = (BACK, flap("front", "back", "bottom", 40.0), flap("tail", "front", "bottom", 30.0))
    design = design_of(FoldedSpec("main", specs, ("front", "tail")))
    blocked = found(design, "leather in the way as it closes", "tail")
    assert blocked.verdict is Verdict.NO
    # The tail lies on the back from 40 mm up: its own fold and 20 mm of the back above, less a rim of half a mm.
    assert blocked.measured == pytest.approx(90 * 20, rel=0.05)
    assert "'tail' runs into 'back'" in blocked.remedy
    assert (
        found(with_folded(design, closing=("tail", "front")), "leather in the way as it closes", "tail").measured == 0
    )


def test_a_tail_that_goes_round_the_back_is_free() -> None:
    specs = (BACK, flap("front", "back", "bottom", 60.0), flap("tail", "front", "bottom", 30.0))
    design = design_of(FoldedSpec("main", specs, ("front", "tail")))
    assert found(design, "leather in the way as it closes", "tail").measured == 0


def test_a_flap_across_a_fold_bars_it() -> None:
    specs = (
        BACK,
        flap("lid", "back", "top", 50.0),
        flap("ear", "lid", "left", 40.0),
        flap("wing", "back", "left", 40.0),
    )
    design = design_of(FoldedSpec("main", specs, ("ear", "wing", "lid")))
    assert worst([f for f in fit(drafted(design)) if f.what == "leather in the way as it closes"]) is Verdict.GOOD
    crossing = (
        BACK,
        flap("side", "back", "left", 80.0),
        flap("top", "side", "top", 55.0),
        flap("lid", "back", "top", 50.0),
    )
    late = design_of(FoldedSpec("main", crossing, ("side", "top", "lid")))
    assert found(late, "leather in the way as it closes", "top").verdict is Verdict.NO


# Folds


def test_a_fold_drawn_too_long_says_by_how_much() -> None:
    pattern = drafted(envelope())
    piece = pattern.pieces[0]
    lid = len(piece.fold_lines) - 1
    # The tangent of the lid drawn 0.8 mm further up: as much more fold, as much less lid.
    lines = tuple(translation(0, 0.8).path(line) if i == lid else line for i, line in enumerate(piece.fold_lines))
    findings = fit(with_piece(pattern, fold_lines=lines))
    over = next(f for f in findings if f.what == "fold longer than it needs" and "lid" in f.where)
    assert_reads(over, 0.8, Verdict.LOOK)


def test_a_fold_cut_too_long_lets_its_flap_slide_on_past_its_slit() -> None:
    pattern = drafted(envelope(t=1.2))
    findings = fit(pattern, {"main": Leather("main", Thickness(1.0, 1.0))})
    over = {f.where: f.measured for f in findings if f.what == "fold longer than it needs"}
    (miss,) = [f for f in findings if f.what == "tab misses its slit by"]
    # The front slides up and its slit with it, the lid and its tab slide down.
    assert_reads(miss, over["fold 3, front"] + over["fold 4, lid"], Verdict.NO)


def test_a_tangent_that_does_not_cross_the_blank_is_refused() -> None:
    pattern = drafted(envelope())
    piece = pattern.pieces[0]
    first = piece.fold_lines[0]
    short: Path = polyline([first.start, first.point_at(first.length / 2)])
    with pytest.raises(GeometryError, match="does not run from edge to edge"):
        fit(with_piece(pattern, fold_lines=(short, *piece.fold_lines[1:])))


def test_another_leather_needs_other_folds() -> None:
    thick = {"main": Leather("main", Thickness(1.5, 1.5))}
    over = {f.where: f.measured for f in fit(drafted(envelope()), thick) if f.what == "fold longer than it needs"}
    assert over["fold 1, left"] == pytest.approx(-pi * 0.25)
    assert over["fold 3, front"] == pytest.approx(-pi * 0.5)


def test_a_stiff_leather_holds_its_flanks_apart() -> None:
    empty = replace(
        envelope(), load=Load(cards=0.0), leathers=(Leather("main", Thickness(1.0, 1.0), min_radius=2.0),)
    )
    hollow = found(empty, "hollow left in the bend", "left")
    assert_reads(hollow, 4.0, Verdict.LOOK)
    assert found(envelope(cards=1), "hollow left in the bend", "left").verdict is Verdict.GOOD


@pytest.mark.parametrize(
    ("inset", "verdict"), [(2.0, Verdict.GOOD), (0.4, Verdict.LOOK)], ids=["clear", "in the bend"]
)
def test_a_wing_ends_short_of_the_bend_that_covers_it(inset: float, verdict: Verdict) -> None:
    design = with_folded(with_hinge(envelope(), "left", inset=((Edge.BOTTOM, inset), (Edge.TOP, 2.0))), relief=0.0)
    room = found(design, "face folded in, clear of the bend", "left in fold 3")
    assert_reads(room, inset, verdict)


def test_a_front_longer_than_its_back_stands_out() -> None:
    design = with_hinge(envelope(), "front", reach=62.0)
    out = found(design, "face that stands out over the base")
    assert (out.where, out.verdict) == ("front", Verdict.LOOK)
    assert out.measured == pytest.approx(2.0)
    assert found(envelope(), "face that stands out over the base").measured == pytest.approx(0.0, abs=1e-6)


# Tabs


@pytest.mark.parametrize(
    ("slit", "over", "verdict"),
    [(None, 0.0, Verdict.GOOD), (20.5, -0.5, Verdict.NO), (24.0, 3.0, Verdict.LOOK), (27.0, 6.0, Verdict.NO)],
)
def test_a_slit_is_as_long_as_tab_and_thickness(slit: float | None, over: float, verdict: Verdict) -> None:
    tab = TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "front", slit=slit)
    length = found(envelope(tabs=(tab,)), "slit longer than tab and thickness by")
    assert_reads(length, over, verdict)


def test_a_slit_beside_its_place_is_missed() -> None:
    pattern = drafted(envelope())
    piece = pattern.pieces[0]
    for shift, verdict in ((0.2, Verdict.GOOD), (0.4, Verdict.NO)):
        moved = tuple(translation(shift, 0).path(slit) for slit in piece.openings)
        (miss,) = [f for f in fit(with_piece(pattern, openings=moved)) if f.what == "tab misses its slit by"]
        assert_reads(miss, shift, verdict)


def test_a_slit_too_near_an_edge_says_how_near() -> None:
    near = with_hinge(envelope(), "front", reach=29.0)
    border = found(near, "leather from slit to edge")
    # 29 mm of front over 25 mm, less half the slit's width of 1 mm.
    assert_reads(border, 3.5, Verdict.LOOK)


def test_a_tab_longer_than_the_leather_it_goes_under_comes_out_again() -> None:
    tab = TabSpec("tongue", "lid", Edge.TOP, 20.0, 28.0, "front")
    tip = found(envelope(tabs=(tab,)), "tab's end inside the face it holds")
    # The lid reaches down to 25 mm, its tab 3 mm under the foot.
    assert_reads(tip, -3.0, Verdict.NO)


def test_a_face_between_a_tab_and_its_slit_bars_it() -> None:
    tab = TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "back")
    between = found(envelope(tabs=(tab,)), "layers between a tab and its slit")
    assert between.verdict is Verdict.NO
    assert between.measured == 2  # the front and the cards
    assert "front, cards lies between" in between.remedy


# Rooms


def test_play_is_what_the_folds_stand_further_apart_than_the_item_is_large() -> None:
    assert found(envelope(), "item to spare between folds", "across").measured == pytest.approx(90 - 85.6)
    tight = with_face(envelope(), "back", width=86.0)
    play = found(tight, "item to spare between folds", "across")
    assert_reads(play, 0.4, Verdict.LOOK)
    narrow = with_face(envelope(), "back", width=85.0)
    assert found(narrow, "item to spare between folds", "across").verdict is Verdict.NO


def test_a_side_without_a_fold_lets_items_out() -> None:
    open_sided = envelope(
        faces=(BACK, flap("left", "back", "left", 25.0), flap("front", "back", "bottom", 40.0)),
        closing=("left", "front"),
        tabs=(),
    )
    kept = {f.where: f for f in fit(drafted(open_sided)) if f.what == "fold that keeps an item in"}
    verdicts = sorted(f.verdict.value for f in kept.values())
    assert verdicts == ["good", "good", "no"]
    assert kept["card in cards, at its floor"].measured == pytest.approx(85.6)


def test_a_room_on_a_flap_that_is_turned_over_opens_as_the_flap_lies_closed() -> None:
    # On the front upright as in the blank the items go in from below, which is from above once it is folded up.
    room = RoomSpec("cards", ("front", "back"), "card", 1, Lying.LYING, Edge.BOTTOM)
    high = with_hinge(envelope(rooms=(room,), tabs=()), "front", reach=59.0)
    sides = {f.where.rpartition(", ")[2]: f for f in fit(drafted(high)) if f.what == "fold that keeps an item in"}
    assert sides["at its floor"].measured == pytest.approx(85.6)
    # The wings lie under the cards, which slide out over them.
    assert sides["on one side"].measured == sides["on the other side"].measured == 0


def test_an_item_is_gripped_where_the_face_over_it_leaves_it_free() -> None:
    # The card stands from 1.25 to 55.23 mm, the front ends at 40.
    assert found(envelope(), "item free to be gripped").measured == pytest.approx(15.23, abs=0.25)
    high = with_folded(with_hinge(envelope(), "front", reach=52.0), tabs=())
    grip = found(high, "item free to be gripped")
    assert_reads(grip, 3.23, Verdict.NO, within=0.25)
    notched = with_face(high, "front", thumb=ThumbNotch(20.0, 8.0), thumb_edge=Edge.BOTTOM)
    assert found(notched, "item free to be gripped").verdict is Verdict.GOOD


def test_a_room_whose_own_fold_bars_the_way_out_has_none() -> None:
    room = RoomSpec("cards", ("back", "front"), "card", 1, Lying.LYING, Edge.BOTTOM)
    assert found(envelope(rooms=(room,)), "item free to be gripped").measured == 0


def test_a_lid_without_its_tab_holds_nothing() -> None:
    loose = found(envelope(tabs=()), "flap held closed")
    assert (loose.where, loose.verdict) == ("front over cards", Verdict.LOOK)
    assert "give 'front' a tab" in loose.remedy
    assert found(envelope(), "flap held closed").verdict is Verdict.GOOD


def test_a_flap_under_one_that_is_held_is_held_too() -> None:
    cover = TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "back")
    assert found(envelope(tabs=(cover,)), "flap held closed").verdict is Verdict.GOOD


# The whole


def test_the_closed_wallet_is_as_thick_as_its_highest_stack() -> None:
    # Back, cards, wing, front and lid over one another; the wings lie beside each other.
    assert found(envelope(t=1.0, cards=2), "thickness closed, as loaded").measured == pytest.approx(4 + 2 * 0.76)
    thick = replace(envelope(t=1.0, cards=2), limits=Limits(closed_thickness=5.0))
    judged = found(thick, "thickness closed, as loaded")
    assert (judged.verdict, judged.remedy) == (
        Verdict.LOOK,
        "thinner leather, fewer items, or less that overlaps",
    )
    bare = replace(envelope(t=1.0, rooms=()), limits=Limits(closed_thickness=3.0))
    assert found(bare, "thickness closed, as loaded").remedy == "thinner leather, or less that overlaps"


def test_leather_must_stay_round_an_opening() -> None:
    hole = FaceOpening("hole", 10.0, 10.0, 5.0, border=12.0, above=(Edge.TOP, 20.0))
    border = found(with_face(envelope(tabs=()), "front", openings=(hole,), corner=0.0), "border round an opening")
    assert border.verdict is Verdict.GOOD
    near = replace(hole, above=(Edge.BOTTOM, 14.0))
    border = found(with_face(envelope(tabs=()), "front", openings=(near,), corner=0.0), "border round an opening")
    assert_reads(border, 9.0, Verdict.LOOK)


def test_over_the_range_of_a_leather_only_what_comes_of_it_is_told() -> None:
    tolerant = replace(envelope(), leathers=(Leather("main", Thickness(0.7, 1.3), tolerance=0.1),))
    extra = [each for each in fit_over_range(drafted(tolerant)) if "leather at its" in each.where]
    assert {each.what for each in extra} <= {
        "tab misses its slit by",
        "face that stands out over the base",
        "face folded in, clear of the bend",
    }
    assert any(each.what == "tab misses its slit by" for each in extra)
    steady = replace(envelope(), leathers=(Leather("main", Thickness(1.0, 1.0), tolerance=0.1),))
    assert len(fit_over_range(drafted(steady))) == len(fit(drafted(steady)))


def test_a_slanted_lid_still_finds_its_slit() -> None:
    slanted = with_face(envelope(), "back", sides=((Edge.TOP, EdgeShape(slant=6.0)),))
    assert found(slanted, "tab misses its slit by").measured < 1e-6
