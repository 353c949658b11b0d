"""Runs of declared seams on a body of 100 x 80 mm (one panel) or two such panels, 4 mm off the edge."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point
from patternforge.geometry.spacing import AnchorKind
from patternforge.wallet.blank import InnerRun
from patternforge.wallet.run import Run, declared_runs, own_run
from patternforge.wallet.spec import (
    Across,
    CornerStyle,
    Design,
    Edge,
    EdgeShape,
    FoldSpec,
    LayerPart,
    Mode,
    SeamSpec,
    Stitching,
)
from tests.unit.wallet.built import RIM, body_of, shell, wallet

ON, BETWEEN = AnchorKind.ON, AnchorKind.BETWEEN
LEFT, BOTTOM, RIGHT, TOP = Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP
FOLD = FoldSpec(relief=5.0)
IRON = Stitching(pitch=4.0, mode=Mode.IRON)
ZONE = 1.2 * pi  # a bare shell of 1.2 mm: radius 0.6, neutral fibre at 1.2


def one_panel(corner: float = 0.0) -> Design:
    return wallet(shell(1), corner=corner)


def two_panels(corner: float = 0.0) -> Design:
    return wallet(shell(2), widths=(100.0, 100.0), folds=(FOLD,), corner=corner)


def runs_of(design: Design, seam: SeamSpec) -> tuple[Run, ...]:
    return declared_runs(design, body_of(design), seam)


def ends(run: Run) -> tuple[float, float, float, float]:
    start, end = run.path.start, run.path.end
    return (start.x, start.y, end.x, end.y)


def ties(run: Run) -> list[tuple[object, AnchorKind]]:
    return [(pytest.approx(anchor.at), anchor.kind) for anchor in run.anchors]


def test_a_sharp_rim_goes_down_along_and_up_with_a_hole_in_each_corner() -> None:
    (run,) = runs_of(one_panel(), replace(RIM, end=6.0, corners=CornerStyle.SHARP))
    # From 6 mm below the top to 4 above the bottom: 70; between the corners 92; up again 70.
    assert ends(run) == pytest.approx((4, 74, 96, 74))
    assert ties(run) == [(0, ON), (70, ON), (162, ON), (232, ON)]
    assert run.path.length == pytest.approx(232)


def test_a_rounded_rim_turns_its_corners_in_line_with_the_bodys() -> None:
    # Corner 10, so 6 on the stitch line: straight 80 - 10 - 10 = 60, quarter 3 pi, bottom 80.
    (run,) = runs_of(one_panel(corner=10.0), RIM)
    assert ends(run) == pytest.approx((4, 70, 96, 70))
    assert run.path.length == pytest.approx(60 + 3 * pi + 80 + 3 * pi + 60)
    assert ties(run) == [
        (0, ON),
        (60 + 1.5 * pi, ON),
        (60 + 3 * pi + 80 + 1.5 * pi, ON),
        (200 + 6 * pi, ON),
    ]


@pytest.mark.parametrize(("corner", "top"), [(0.0, 76.0), (3.0, 76.0), (10.0, 70.0)])
def test_unless_told_a_seam_ends_a_margin_below_the_edge_or_where_the_rounding_begins(
    corner: float, top: float
) -> None:
    (run,) = runs_of(one_panel(corner), RIM)
    assert run.path.start.y == pytest.approx(top)


def test_the_order_of_edges_does_not_matter_for_the_path() -> None:
    there = runs_of(one_panel(), RIM)
    back = runs_of(one_panel(), replace(RIM, along=RIM.along[::-1]))
    assert [ends(run) for run in there] == [ends(run) for run in back]


def test_a_seam_along_one_edge_is_a_line() -> None:
    (run,) = runs_of(one_panel(), replace(RIM, along=(TOP,), end=5.0))
    assert ends(run) == pytest.approx((95, 76, 5, 76))
    assert ties(run) == [(0, ON), (90, ON)]


def test_a_seam_all_round_is_a_loop_from_corner_to_corner() -> None:
    (run,) = runs_of(one_panel(), replace(RIM, along=(LEFT, BOTTOM, RIGHT, TOP), corners=CornerStyle.SHARP))
    assert run.loop
    assert ends(run) == pytest.approx((4, 4, 4, 4))
    assert ties(run) == [(0, ON), (92, ON), (164, ON), (256, ON), (328, ON)]


def test_a_rounded_loop_begins_in_the_middle_of_a_corner() -> None:
    (run,) = runs_of(one_panel(corner=10.0), replace(RIM, along=(BOTTOM, RIGHT, TOP, LEFT)))
    # 80 + 60 twice and four quarters of 3 pi; from middle to middle 80 + 3 pi and 60 + 3 pi.
    assert run.path.length == pytest.approx(280 + 12 * pi)
    steps = [b.at - a.at for a, b in pairwise(run.anchors)]
    assert steps == pytest.approx([80 + 3 * pi, 60 + 3 * pi, 80 + 3 * pi, 60 + 3 * pi])


def test_an_open_seam_stops_in_line_with_the_pockets_at_every_fold() -> None:
    # Relief 5 and the pockets' margin 4: last hole 9 mm short of the tangents at 100 and 100 + zone.
    left, right = runs_of(two_panels(), replace(RIM, corners=CornerStyle.SHARP))
    assert ends(left) == pytest.approx((4, 76, 91, 4))
    assert ends(right) == pytest.approx((109 + ZONE, 4, 196 + ZONE, 76))
    assert ties(left) == [(0, ON), (72, ON), (72 + 87, ON)]


def test_an_open_seam_stops_where_it_is_told() -> None:
    left, right = runs_of(two_panels(), replace(RIM, stop=20.0))
    assert left.path.end.x == pytest.approx(80)
    assert right.path.start.x == pytest.approx(120 + ZONE)


def test_an_open_loop_is_broken_at_both_ends_of_the_fold() -> None:
    runs = runs_of(two_panels(), replace(RIM, along=(LEFT, BOTTOM, RIGHT, TOP), corners=CornerStyle.SHARP))
    assert [run.loop for run in runs] == [False, False]
    right, left = runs
    assert ends(right) == pytest.approx((109 + ZONE, 4, 109 + ZONE, 76))
    assert ends(left) == pytest.approx((91, 76, 91, 4))
    assert ties(left) == [(0, ON), (87, ON), (87 + 72, ON), (2 * 87 + 72, ON)]


def test_an_eased_seam_passes_the_fold_with_its_tangents_between_holes() -> None:
    (run,) = runs_of(two_panels(), replace(RIM, across=Across.EASED, corners=CornerStyle.SHARP))
    assert ties(run) == [
        (0, ON),
        (72, ON),
        (72 + 96, BETWEEN),
        (72 + 96 + ZONE, BETWEEN),
        (72 + 192 + ZONE, ON),
        (144 + 192 + ZONE, ON),
    ]


@pytest.mark.parametrize(("pitch", "is_spanned"), [(4.4, False), (4.5, True)])
def test_one_stitch_of_an_eased_seam_spans_a_fold_narrower_than_a_stitch(pitch: float, is_spanned: bool) -> None:
    # The zone of 3.77 mm is 0.857 of a pitch of 4.4 mm and 0.838 of one of 4.5 mm.
    stitching = replace(RIM.stitching, pitch=pitch)
    seam = replace(RIM, across=Across.EASED, corners=CornerStyle.SHARP, along=(BOTTOM,), end=4.0, stitching=stitching)
    (run,) = runs_of(two_panels(), seam)
    middle = [(96 + ZONE / 2, BETWEEN)] if is_spanned else [(96, BETWEEN), (96 + ZONE, BETWEEN)]
    assert ties(run) == [(0, ON), *middle, (192 + ZONE, ON)]


def test_under_an_iron_free_ends_move_in_to_whole_pitches_from_the_corner() -> None:
    # 73 down from 77 is 18 whole pitches and 1 mm: the first hole moves down by 1. The bottom, 92, is 23 pitches.
    (run,) = runs_of(one_panel(), replace(RIM, end=3.0, corners=CornerStyle.SHARP, stitching=IRON))
    assert ends(run) == pytest.approx((4, 76, 96, 76))
    assert ties(run) == [(0, ON), (72, ON), (164, ON), (236, ON)]


def test_under_an_iron_a_line_keeps_its_beginning_and_leaves_the_rest_at_its_end() -> None:
    (run,) = runs_of(one_panel(), replace(RIM, along=(BOTTOM,), end=5.0, stitching=IRON))
    # 90 mm: 22 pitches and 2 mm.
    assert ends(run) == pytest.approx((5, 4, 93, 4))


def test_under_an_iron_both_runs_beside_a_fold_end_short_of_their_stop() -> None:
    left, right = runs_of(two_panels(), replace(RIM, corners=CornerStyle.SHARP, stitching=IRON))
    # 87 mm from the corner: 21 pitches, 84.
    assert left.path.end.x == pytest.approx(88)
    assert right.path.start.x == pytest.approx(112 + ZONE)


@pytest.mark.parametrize(
    ("seam", "corner", "words"),
    [
        (replace(RIM, along=(LEFT, RIGHT)), 0.0, "its edges must follow one another round the body"),
        (replace(RIM, along=(LEFT, BOTTOM, LEFT)), 0.0, "its edges must follow one another round the body"),
        (replace(RIM, margin=40.0), 0.0, r"a margin of 40\.00 mm leaves no room for it"),
        (replace(RIM, stitching=IRON, across=Across.EASED), 0.0, "under an iron every layer has the same pitch"),
        (replace(RIM, along=(BOTTOM,), stop=95.0), 0.0, "no stretch of it is long enough for a stitch"),
        (replace(RIM, stop=91.0), 30.0, "one of its rounded corners stands in a fold"),
        (replace(RIM, along=(LEFT, BOTTOM, RIGHT, TOP), stop=99.0), 0.0, "no room between the fold and the corners"),
    ],
)
def test_a_seam_without_room_is_refused_by_name_and_line(seam: SeamSpec, corner: float, words: str) -> None:
    with pytest.raises(DraftError, match=rf"seam 'rim' \(line 9\): .*{words}"):
        runs_of(two_panels(corner), seam)


def test_a_seam_that_ends_beside_a_fold_is_refused() -> None:
    # Bottom of two panels, 100 and 60 mm, both ends 60 mm in: it would end on the tangent of the second panel.
    design = wallet(shell(2), widths=(100.0, 60.0), folds=(FOLD,))
    with pytest.raises(DraftError, match=r"seam 'rim' \(line 9\): it begins or ends beside a fold"):
        runs_of(design, replace(RIM, along=(BOTTOM,), end=60.0))


def test_a_seam_over_some_panels_takes_their_outer_sides_for_edges() -> None:
    # Over the right panel: its left side is the fold, where the seam stops 5 + 4 mm short; the rest as on one panel.
    over = replace(RIM, along=(BOTTOM, RIGHT), over=(1, 1), end=6.0, corners=CornerStyle.SHARP)
    (run,) = runs_of(two_panels(), over)
    assert ends(run) == pytest.approx((109 + ZONE, 4, 196 + ZONE, 74))
    # Up and down along the fold, a margin inside the panel.
    (run,) = runs_of(two_panels(), replace(over, along=(LEFT,)))
    assert ends(run) == pytest.approx((104 + ZONE, 74, 104 + ZONE, 6))


def test_a_seam_over_a_panel_stops_by_the_relief_of_its_own_fold() -> None:
    folds = (FoldSpec(relief=2.0), FoldSpec(relief=7.0))
    design = wallet(shell(3), widths=(100.0, 100.0, 100.0), folds=folds)
    body = body_of(design)
    for panel, left, right in ((0, None, 2.0), (1, 2.0, 7.0), (2, 7.0, None)):
        (run,) = runs_of(design, replace(RIM, along=(BOTTOM,), over=(panel, panel), end=5.0))
        x0, x1 = body.panels[panel].x0, body.panels[panel].x1
        starts = x0 + (5.0 if left is None else left + 4.0)
        stops = x1 - (5.0 if right is None else right + 4.0)
        assert (run.path.start.x, run.path.end.x) == pytest.approx((starts, stops))


def test_on_a_slanted_body_a_seam_over_a_panel_stops_short_of_its_fold_too() -> None:
    # The right side leans in by 10 mm; the left panel and its fold are straight.
    design = wallet(shell(2), widths=(100.0, 100.0), folds=(FOLD,))
    shaped = replace(design, body=replace(design.body, shapes=((RIGHT, EdgeShape(slant=10.0)),)))
    (left,) = runs_of(shaped, replace(RIM, along=(BOTTOM,), over=(0, 0), end=6.0))
    assert ends(left) == pytest.approx((6, 4, 91, 4))
    (right,) = runs_of(shaped, replace(RIM, along=(BOTTOM,), over=(1, 1), end=6.0))
    assert right.path.start.x == pytest.approx(109 + ZONE)
    assert right.path.end.y == pytest.approx(4)


def test_a_seam_over_some_panels_stops_only_at_folds_between_them() -> None:
    design = wallet(shell(3), widths=(100.0, 100.0, 100.0), folds=(FOLD, FOLD))
    runs = runs_of(design, replace(RIM, along=(BOTTOM,), over=(0, 1), corners=CornerStyle.SHARP))
    assert [ends(run) for run in runs] == [
        pytest.approx((4, 4, 91, 4)),
        pytest.approx((109 + ZONE, 4, 191 + ZONE, 4)),
    ]
    # Under an iron a seam that passes no fold may be eased.
    eased = replace(RIM, along=(BOTTOM,), over=(0, 0), across=Across.EASED, stitching=IRON)
    assert len(runs_of(design, eased)) == 1


def test_a_seam_of_a_layer_follows_that_layers_own_edges() -> None:
    # A strap 20 mm below the top and 10 above the bottom, its corners rounded by 6.
    strap = LayerPart("strap", "inner", 0, 0, inset=((TOP, 20.0), (BOTTOM, 10.0)), corner=6.0)
    design = wallet(shell(1), strap)
    (run,) = runs_of(design, replace(RIM, along=(LEFT, BOTTOM, RIGHT, TOP), of="strap", margin=4.0))
    bounds = run.path.bounds
    assert (bounds.x0, bounds.y0, bounds.x1, bounds.y1) == pytest.approx((4, 14, 96, 56))
    assert run.path.length == pytest.approx(2 * (88 + 38) + 4 * pi)


def inner(length: float, stitching: Stitching) -> InnerRun:
    return InnerRun("stop", polyline([Point(10, 0), Point(10 + length, 0)]), ("a",), stitching, 4.0)


def test_a_parts_own_seam_runs_from_end_to_end() -> None:
    run = own_run(inner(30.0, Stitching(pitch=4.0)))
    assert ends(run) == (10, 0, 40, 0)
    assert ties(run) == [(0, ON), (30, ON)]


def test_under_an_iron_a_parts_own_seam_is_as_long_as_whole_pitches_and_in_the_middle() -> None:
    # 30 mm are 7 pitches of 4 and 2 mm: 1 mm off at either end.
    assert ends(own_run(inner(30.0, IRON))) == pytest.approx((11, 0, 39, 0))
    assert ends(own_run(inner(28.0, IRON))) == pytest.approx((10, 0, 38, 0))
    # Shorter than a stitch: left as it is.
    assert ends(own_run(inner(3.0, IRON))) == pytest.approx((10, 0, 13, 0))
