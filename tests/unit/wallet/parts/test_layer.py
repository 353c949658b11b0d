"""Outlines and rooms of layers on two panels of 100 x 80 mm, zone of the fold between them as wide as it comes."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.blank import Blank
from patternforge.wallet.body import Body, layer_extent
from patternforge.wallet.parts import part_blanks
from patternforge.wallet.pattern import EdgeRole, Pocket
from patternforge.wallet.spec import Design, Edge, FoldSpec, Held, LayerPart, Side
from tests.unit.wallet.built import RIM, body_of, shell, wallet

FOLD = FoldSpec(relief=5.0)
QUARTER = 0.41421356  # bulge of a quarter circle, tan(90 / 4)


def two_panels(part: LayerPart, corner: float = 0.0) -> tuple[Design, Body]:
    design = wallet(shell(2), part, widths=(100.0, 100.0), folds=(FOLD,), corner=corner)
    return design, body_of(design)


def drawn(part: LayerPart, corner: float = 0.0) -> Blank:
    design, body = two_panels(part, corner)
    (blank,) = part_blanks(design, body, part, 4.0).blanks
    return blank


def lining(**changes: Any) -> LayerPart:
    return replace(LayerPart("lining", "inner", 0, 1, line=8), **changes)


def right_end(part: LayerPart) -> float:
    return two_panels(part)[1].width


def outline(blank: Blank) -> list[tuple[float, float, float]]:
    return [(round(x, 4), round(y, 4), round(bulge, 4)) for x, y, bulge in blank.shape.path.vertices]


def points(blank: Blank) -> set[tuple[float, float]]:
    return {(x, y) for x, y, _ in outline(blank)}


def test_a_layer_covers_its_panels_and_the_fold_between() -> None:
    width = round(right_end(lining()), 4)
    assert points(drawn(lining())) == {(0, 0), (width, 0), (width, 80), (0, 80)}
    assert drawn(lining()).shape.edges == (EdgeRole.SEWN, EdgeRole.SEWN, EdgeRole.RAW, EdgeRole.SEWN)


@pytest.mark.parametrize(("panel", "edges"), [(0, (0.0, 95.0)), (1, (5.0, 100.0))])
def test_a_layer_on_one_panel_stops_short_of_the_fold_by_its_relief(panel: int, edges: tuple[float, float]) -> None:
    part = lining(first=panel, last=panel)
    _, body = two_panels(part)
    start = body.panels[panel].x0
    assert layer_extent(body, part) == pytest.approx((start + edges[0], start + edges[1]))


def test_only_corners_of_the_body_are_rounded() -> None:
    assert {(95, 0), (95, 80), (6, 0), (0, 6), (0, 74), (6, 80)} == points(drawn(lining(last=0), corner=6.0))


def test_the_edge_at_a_fold_is_not_sewn() -> None:
    roles = drawn(lining(last=0)).shape.edges
    assert roles == (EdgeRole.SEWN, EdgeRole.RAW, EdgeRole.RAW, EdgeRole.SEWN)


def test_the_edge_at_a_fold_on_the_left_is_not_sewn() -> None:
    roles = drawn(lining(first=1)).shape.edges
    assert roles == (EdgeRole.SEWN, EdgeRole.SEWN, EdgeRole.RAW, EdgeRole.RAW)


def test_a_lowered_edge_is_a_mouth() -> None:
    low = drawn(lining(drop=10.0))
    assert max(y for _, y in points(low)) == 70.0
    assert low.shape.edges == (EdgeRole.SEWN, EdgeRole.SEWN, EdgeRole.MOUTH, EdgeRole.SEWN)


@pytest.mark.parametrize(
    ("opening", "lowered"),
    [(Edge.BOTTOM, (0.0, 10.0)), (Edge.LEFT, (10.0, 0.0)), (Edge.RIGHT, (0.0, 0.0)), (Edge.TOP, (0.0, 0.0))],
)
def test_any_edge_may_be_lowered(opening: Edge, lowered: tuple[float, float]) -> None:
    blank = drawn(lining(drop=10.0, opening=opening))
    bounds = blank.shape.path.bounds
    assert (bounds.x0, bounds.y0) == pytest.approx(lowered)
    width, height = right_end(lining()), 80.0
    assert bounds.x1 == pytest.approx(width - (10.0 if opening is Edge.RIGHT else 0.0))
    assert bounds.y1 == pytest.approx(height - (10.0 if opening is Edge.TOP else 0.0))


def test_an_edge_lowered_past_the_rounding_has_square_corners() -> None:
    assert {(0, 74), (0, 70)} & points(drawn(lining(drop=10.0), corner=6.0)) == {(0, 70)}


def test_an_edge_lowered_within_the_rounding_keeps_what_is_left_of_it() -> None:
    # Radius 6, lowered by 2: the arc begins where 4 mm of its rise are left, 6 - sqrt(36 - 16) mm in.
    inset = round(6 - sqrt(20), 4)
    width = round(right_end(lining()), 4)
    low = drawn(lining(drop=2.0), corner=6.0)
    assert {(inset, 78), (0, 74), (round(width - inset, 4), 78), (width, 74)} <= points(low)
    # The rest of the arc is still a part of the body's rounding, about (6, 74).
    arcs = [segment for segment in low.shape.path.segments if segment.is_arc and segment.start.y > 40]
    assert [segment.radius for segment in arcs] == pytest.approx([6.0, 6.0])


def test_trim_stands_beyond_its_edge() -> None:
    trimmed = drawn(lining(trim=((Edge.LEFT, 1.5), (Edge.TOP, 2.0))))
    bounds = trimmed.shape.path.bounds
    assert (bounds.x0, bounds.y0, bounds.y1) == pytest.approx((-1.5, 0.0, 82.0))
    assert trimmed.shape.edges == (EdgeRole.SEWN, EdgeRole.SEWN, EdgeRole.TRIMMED, EdgeRole.TRIMMED)


def test_relief_notches_are_quarter_rounds_with_a_straight_bottom_across_the_fold() -> None:
    part = lining(notch=3.0)
    _, body = two_panels(part)
    x0, x1 = round(body.folds[0].x0, 4), round(body.folds[0].x1, 4)
    notched = outline(drawn(part))
    for at in [(x0 - 3, 0, -QUARTER), (x0, 3, 0), (x1, 3, -QUARTER), (round(x1 + 3, 4), 0, 0)]:
        assert any(corner == pytest.approx(at, abs=1e-4) for corner in notched)
    for at in [(x1 + 3, 80, -QUARTER), (x1, 77, 0), (x0, 77, -QUARTER), (x0 - 3, 80, 0)]:
        assert any(corner == pytest.approx(at, abs=1e-4) for corner in notched)


def test_notches_follow_a_lowered_edge() -> None:
    part = lining(notch=3.0, drop=10.0)
    assert max(y for _, y in points(drawn(part))) == 70.0
    _, body = two_panels(part)
    assert (round(body.folds[0].x0, 4), 67.0) in points(drawn(part))


def test_notches_that_meet_are_refused() -> None:
    with pytest.raises(
        DraftError, match=r"small\.yaml:8: 'lining': relief notches 40\.00 mm deep meet in the middle"
    ):
        drawn(lining(notch=40.0))
    with pytest.raises(DraftError, match="meet in the middle"):
        drawn(lining(notch=31.0, drop=20.0))
    assert drawn(lining(notch=29.0, drop=20.0)).name == "lining"


@pytest.mark.parametrize(("notch", "fits"), [(14.9, True), (15.1, False)])
def test_notches_of_neighbouring_folds_keep_off_each_other(notch: float, fits: bool) -> None:
    # On the panel of 30 mm between two folds a notch of 15 from either side would leave nothing.
    part = lining(last=2, notch=notch)
    design = wallet(shell(3), part, widths=(100.0, 30.0, 100.0), folds=(FOLD, FOLD))
    if fits:
        assert part_blanks(design, body_of(design), part, 4.0).blanks
    else:
        with pytest.raises(DraftError, match=r"relief notches of 15\.10 mm do not fit beside each other"):
            part_blanks(design, body_of(design), part, 4.0)


def test_the_rounding_of_the_body_needs_room_on_its_outer_panels_alone() -> None:
    part = lining(last=2)
    design = wallet(shell(3), part, widths=(100.0, 5.0, 100.0), folds=(FOLD, FOLD), corner=6.0)
    assert part_blanks(design, body_of(design), part, 4.0).blanks
    design = wallet(shell(3), part, widths=(5.9, 100.0, 5.9), folds=(FOLD, FOLD))
    corners = (((Edge.BOTTOM, Edge.LEFT), 6.0),)
    design = replace(design, body=replace(design.body, corners=corners))
    with pytest.raises(DraftError, match=r"panel 'P0' is narrower than the corner's rounding: round it less"):
        part_blanks(design, body_of(design), part, 4.0)


@pytest.mark.parametrize(("notch", "fits"), [(13.9, True), (14.1, False)])
def test_a_notch_shares_an_outer_panel_with_the_rounding(notch: float, fits: bool) -> None:
    part = lining(last=1, notch=notch)
    design = wallet(shell(2), part, widths=(20.0, 100.0), folds=(FOLD,), corner=6.0)
    if fits:
        assert part_blanks(design, body_of(design), part, 4.0).blanks
    else:
        with pytest.raises(DraftError, match=r"notches of 14\.10 mm do not fit beside each other on panel 'P0'"):
            part_blanks(design, body_of(design), part, 4.0)


def test_a_narrow_panel_the_layer_does_not_cover_is_no_matter() -> None:
    part = lining(last=1, notch=15.0)
    design = wallet(shell(3), part, widths=(100.0, 100.0, 20.0), folds=(FOLD, FOLD))
    assert part_blanks(design, body_of(design), part, 4.0).blanks


@pytest.mark.parametrize(
    ("part", "showing"),
    [
        (shell(2), Side.OUTSIDE),
        (lining(), Side.INSIDE),
        (lining(showing=Side.OUTSIDE), Side.OUTSIDE),
        (replace(shell(2), showing=Side.INSIDE), Side.INSIDE),
    ],
)
def test_the_outermost_layer_shows_outside_unless_it_is_told(part: LayerPart, showing: Side) -> None:
    parts = (part,) if part.name == "shell" else (shell(2), part)
    design = wallet(*parts, widths=(100.0, 100.0), folds=(FOLD,))
    (blank,) = part_blanks(design, body_of(design), part, 4.0).blanks
    assert blank.showing is showing


def test_a_layer_that_no_other_lies_outside_of_is_outermost_on_its_panel() -> None:
    left, right = shell(1), LayerPart("other", "outer", 1, 1)
    design = wallet(shell(2), left, right, widths=(100.0, 100.0), folds=(FOLD,))
    body = body_of(design)
    assert part_blanks(design, body, right, 4.0).blanks[0].showing is Side.INSIDE
    design = replace(design, parts=(left, right, replace(shell(2), name="back")))
    assert part_blanks(design, body_of(design), right, 4.0).blanks[0].showing is Side.OUTSIDE


def room(part: LayerPart) -> Pocket:
    design, body = two_panels(part)
    (held,) = part_blanks(design, body, part, 4.0).pockets
    return held


@pytest.mark.parametrize(
    ("opening", "y"),
    # A note of 120 x 70 in the middle of the body, 4 mm above the lower edge, or 4 mm below the upper one.
    [(Edge.TOP, (4, 74)), (Edge.BOTTOM, (6, 76))],
)
def test_a_held_note_lies_in_the_middle_against_the_far_seam(opening: Edge, y: tuple[float, float]) -> None:
    held = room(lining(opening=opening, holds=(Held("note", 3),)))
    middle = right_end(lining()) / 2
    assert held.box == pytest.approx((middle - 60, y[0], middle + 60, y[1]))
    assert (held.count, held.held, held.panels) == (3, True, (0, 1))


@pytest.mark.parametrize(
    ("opening", "panel", "x"),
    # Sideways a note stands 70 deep, and stops at the relief of its panel's fold.
    [(Edge.LEFT, 0, 25.0), (Edge.RIGHT, 1, 5.0)],
)
def test_a_note_put_in_sideways_stops_at_the_relief(opening: Edge, panel: int, x: float) -> None:
    part = lining(opening=opening, holds=(Held("note", 3),))
    _, body = two_panels(part)
    held = room(part)
    assert held.box[0] - body.panels[panel].x0 == pytest.approx(x)
    assert held.box[2] - held.box[0] == pytest.approx(70.0)
    assert (held.box[1], held.box[3]) == pytest.approx((-20.0, 100.0))
    assert held.panels == (panel,)


def test_on_a_single_panel_a_note_put_in_sideways_stops_at_the_seam() -> None:
    part = replace(lining(), last=0, opening=Edge.LEFT, holds=(Held("note", 1),))
    design = wallet(shell(1), part, seams=(replace(RIM, along=(Edge.BOTTOM, Edge.RIGHT, Edge.TOP)),))
    (held,) = part_blanks(design, body_of(design), part, 4.0).pockets
    assert (held.box[0], held.box[2]) == pytest.approx((26.0, 96.0))
    part = replace(part, opening=Edge.RIGHT)
    design = wallet(shell(1), part, seams=(replace(RIM, along=(Edge.TOP, Edge.LEFT, Edge.BOTTOM)),))
    (held,) = part_blanks(design, body_of(design), part, 4.0).pockets
    assert (held.box[0], held.box[2]) == pytest.approx((4.0, 74.0))
