"""Pieces with turned edges: sizes, holes pierced later or cut twice, notches at folds, what they add to stacks.

The shell's edges are skived to 0.4 mm and turned over a lining of 0.8 mm: 9.084956 mm beyond the finished line.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.finishing import EdgeSkive, TurnedHoles, TurnedSpec
from patternforge.wallet.parts import panel_plies
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design, Edge, FoldSpec, HoleShape, HoleSpec, LayerPart, SeamSpec, Side
from patternforge.wallet.turned_plies import with_turned_in
from tests.unit.wallet.built import RIM, STITCHING, bank, shell, wallet

A = pi * 0.6 + 8.0 - 0.8
ALL = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)
LINING = LayerPart("lining", "inner", 0, 0, follows="shell", inside=1.0)
TWO: dict[str, Any] = {"widths": (100.0, 100.0), "folds": (FoldSpec(relief=5.0),)}


def lined(panels: int = 1, edges: tuple[Edge, ...] = ALL, **changes: Any) -> Design:
    spec = TurnedSpec(edges, 8.0, ("lining",), **changes)
    part = shell(panels, turned=(spec,), skives=(EdgeSkive(edges, 12.0, 0.4),))
    return wallet(part, LINING, bank(), **(TWO if panels == 2 else {}))


def names(pattern: Pattern, panel: int) -> list[tuple[str, float]]:
    plies = tuple(panel_plies(pattern.design, number) for number in range(len(pattern.panels)))
    widths = tuple(drafted_panel.width.value for drafted_panel in pattern.panels)
    found = with_turned_in(pattern.design, widths, pattern.height, plies)[panel]
    return [(ply.term.label, round(ply.term.value, 6)) for ply in found]


def test_the_piece_is_cut_larger_and_made_to_its_declared_size() -> None:
    piece = drafted(lined()).piece("shell")
    assert (piece.width, piece.height) == pytest.approx((100 + 2 * A, 80 + 2 * A))
    assert (piece.made.bounds.width, piece.made.bounds.height) == pytest.approx((100, 80))
    assert piece.made.bounds.x0 == piece.made.bounds.y0 == pytest.approx(A)
    assert len(piece.made_edges) == len(piece.made.segments)
    assert piece.area > 100 * 80


def test_holes_come_to_lie_where_they_would_without_turned_edges() -> None:
    plain = drafted(wallet(shell(1), LINING, bank()))
    turned = drafted(lined())
    for name in ("shell", "lining", "bank 1"):
        one, other = plain.piece(name), turned.piece(name)
        places = [one.placement.to_assembly(hole.at) for hole in one.holes]
        assert [
            other.placement.to_assembly(h.at).distance_to(p) for h, p in zip(other.holes, places, strict=True)
        ] == (pytest.approx([0.0] * len(places), abs=1e-9))


def test_holes_in_a_turned_edge_are_pierced_later_and_those_inside_it_cut() -> None:
    seam = SeamSpec("middle", (Edge.BOTTOM,), margin=20.0, stitching=STITCHING, line=8)
    design = lined()
    piece = drafted(replace(design, seams=(RIM, seam))).piece("shell")
    shapes = {hole.seam: {h.shape for h in piece.holes if h.seam == hole.seam} for hole in piece.holes}
    assert shapes["rim"] == {HoleShape.NONE}
    assert shapes["middle"] == {None}
    assert piece.turned_holes == ()


def test_the_pieces_inside_keep_their_holes() -> None:
    pattern = drafted(lined())
    assert {hole.shape for name in ("lining", "bank 1") for hole in pattern.piece(name).holes} == {None}


def test_marked_holes_are_pricked() -> None:
    piece = drafted(lined(holes=TurnedHoles.MARKED)).piece("shell")
    assert {hole.shape for hole in piece.holes} == {HoleShape.MARK}


def test_a_hole_cut_in_both_leathers_is_unfolded_about_the_bend() -> None:
    piece = drafted(lined(edges=(Edge.BOTTOM,), holes=TurnedHoles.CUT)).piece("shell")
    holes = {(hole.seam, hole.index): hole for hole in piece.holes}
    # A hole 4 mm inside the edge stands 3.2 mm beyond the tangent: as far beyond the other, pi x 0.6 further on.
    for mate in piece.turned_holes:
        hole = holes[mate.seam, mate.index]
        beyond = hole.at.y - A - 0.8
        assert mate.at.x == pytest.approx(hole.at.x)
        assert hole.at.y - mate.at.y == pytest.approx(beyond + pi * 0.6 + beyond)
    low = {hole.index for hole in piece.holes if hole.at.y < A + 4.0 + 1e-6}
    assert low <= {mate.index for mate in piece.turned_holes}
    assert len(low) > 10
    assert {hole.shape for hole in piece.holes} == {None}


def test_mates_are_left_out_where_the_mitre_or_a_notch_leaves_no_leather() -> None:
    piece = drafted(lined(holes=TurnedHoles.CUT)).piece("shell")
    mates = {(mate.seam, mate.index) for mate in piece.turned_holes}
    missing = [hole for hole in piece.holes if (hole.seam, hole.index) not in mates]
    assert missing
    corners = [Point(A + x, A + y) for x in (0, 100) for y in (0, 80)]
    assert all(min(hole.at.distance_to(c) for c in corners) < 9 for hole in missing)
    assert all(piece.outline.distance_to(mate.at) >= 2.0 for mate in piece.turned_holes)


def test_a_slit_in_what_is_turned_in_is_the_mirror_image_of_its_mate() -> None:
    slit = HoleSpec(HoleShape.SLIT, length=2.0, slant=30.0)
    design = lined(edges=(Edge.BOTTOM, Edge.LEFT), holes=TurnedHoles.CUT)
    rim = replace(RIM, stitching=replace(STITCHING, hole=slit))
    piece = drafted(replace(design, seams=(rim,))).piece("shell")
    holes = {(hole.seam, hole.index): hole for hole in piece.holes}
    for mate in piece.turned_holes:
        hole = holes[mate.seam, mate.index]
        across = mate.at.y == pytest.approx(hole.at.y)
        mirrored = 180 - hole.direction if across else -hole.direction
        assert (mate.direction - mirrored) % 180 == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("radius", [14.0, 17.0, 20.0, 23.0])
def test_no_mates_are_cut_at_corners_for_pleats(radius: float) -> None:
    design = lined(holes=TurnedHoles.CUT)
    piece = drafted(replace(design, body=replace(design.body, corner=radius))).piece("shell")
    box, mated = piece.made.bounds, {mate.index for mate in piece.turned_holes}
    low = [hole for hole in piece.holes if hole.at.y < box.y0 + radius]
    corner = [hole for hole in low if min(hole.at.x - box.x0, box.x1 - hole.at.x) < radius]
    assert len(corner) > 3
    assert not mated & {hole.index for hole in corner}
    assert mated


def test_what_is_turned_in_along_a_fold_is_notched_by_what_it_is_too_long() -> None:
    pattern = drafted(lined(2))
    piece = pattern.piece("shell")
    assert piece.turned is not None
    ((fold, excess, notch),) = piece.turned.gathers
    shell_layer = pattern.folds[0].layers[0]
    # Shell of 1.2, lining 0.8, turned in 0.4: its fibre runs 0.6 + 0.8 + 0.2 inside the shell's.
    assert (fold, notch) == (1, excess)
    assert excess == pytest.approx(pi * 1.6)
    assert excess < shell_layer.flat_length


def test_a_fold_whose_outsides_meet_cannot_be_crossed() -> None:
    design = lined(2)
    backwards = replace(design, body=replace(design.body, folds=(FoldSpec(-180.0, relief=5.0),)))
    with pytest.raises(DraftError, match=r"piece 'shell': .* fold 1, whose outsides meet"):
        drafted(backwards)


def test_upright_edges_cross_no_fold() -> None:
    piece = drafted(lined(2, edges=(Edge.LEFT, Edge.RIGHT))).piece("shell")
    assert piece.turned is not None
    assert piece.turned.gathers == ()


def test_a_turned_row_is_turned_in_at_its_own_edges() -> None:
    design = lined(2, edges=(Edge.TOP,))
    piece = drafted(replace(design, body=replace(design.body, turned=True))).piece("shell")
    assert piece.turned is not None
    (edge,) = piece.turned.turned
    assert edge.edge is Edge.TOP
    # The row laid on its side and shown from outside: its upper edge lies on the left.
    assert edge.drawn is Edge.LEFT
    assert piece.made.bounds.x0 == pytest.approx(A)
    assert piece.made.bounds.x1 == pytest.approx(piece.width)


def test_what_is_turned_in_stands_behind_the_lining_on_both_panels() -> None:
    pattern = drafted(lined(2, edges=(Edge.LEFT, Edge.RIGHT)))
    assert names(pattern, 0)[:3] == [("shell (outer)", 1.2), ("lining (inner)", 0.8), ("shell turned in", 0.4)]
    assert names(pattern, 1)[:3] == [("shell (outer)", 1.2), ("lining (inner)", 0.8), ("shell turned in", 0.4)]


def test_under_pockets_only_the_sides_count_and_elsewhere_every_edge() -> None:
    pattern = drafted(lined(2, edges=(Edge.TOP, Edge.BOTTOM)))
    assert "shell turned in" not in [label for label, _ in names(pattern, 0)]
    assert ("shell turned in", 0.4) in names(pattern, 1)


def test_a_core_stands_with_what_is_turned_in_over_it() -> None:
    part = shell(1, turned=(TurnedSpec((Edge.TOP,), core=0.5),))
    pattern = drafted(wallet(part, LINING, seams=(RIM,)))
    assert names(pattern, 0) == [("shell (outer)", 1.2), ("shell turned in", 1.7), ("lining (inner)", 0.8)]


def test_a_layer_that_shows_inside_is_turned_in_to_its_outer_side() -> None:
    divider = LayerPart("divider", "inner", 0, 0, turned=(TurnedSpec((Edge.TOP,)),))
    assert divider.showing is None
    pattern = drafted(wallet(shell(1), divider))
    assert pattern.piece("divider").showing is Side.INSIDE
    assert names(pattern, 0) == [("shell (outer)", 1.2), ("divider turned in", 0.8), ("divider (inner)", 0.8)]


def test_a_layer_turned_over_one_outside_it_lies_beyond_that() -> None:
    stiff = LayerPart("stiffening", "inner", 0, 0)
    divider = LayerPart("divider", "inner", 0, 0, turned=(TurnedSpec((Edge.TOP,), over=("stiffening",)),))
    labels = [label for label, _ in names(drafted(wallet(shell(1), stiff, divider)), 0)]
    assert labels == ["shell (outer)", "divider turned in", "stiffening (inner)", "divider (inner)"]


def test_thread_goes_through_a_core_too() -> None:
    thin, thick = (
        drafted(wallet(shell(1, turned=(TurnedSpec((Edge.BOTTOM,), core=core),)), bank())).seams[0]
        for core in (0.0, 0.5)
    )
    low = sum(hole.at.y < 8.0 for hole in thin.holes)
    # 1.8 mm of reach and 8 mm of overlap: every hole within 9.8 mm of the lower edge, 10.05 mm with the core.
    assert low > 10
    assert thick.thread - thin.thread >= 2 * 0.5 * low - 1e-9


def test_thread_goes_through_what_is_turned_in() -> None:
    plain, turned = drafted(wallet(shell(1), LINING, bank())), drafted(lined())
    # 4 mm off the edge lies within the 8.8 mm turned in, but beyond the band skived: 0.4 mm more than without.
    stitches = len(plain.seams[0].spacings)
    assert turned.seams[0].thread - plain.seams[0].thread == pytest.approx(2 * 0.4 * stitches)


def test_a_lowered_edge_turned_in_keeps_its_mouth() -> None:
    divider = LayerPart("divider", "inner", 0, 0, drop=10.0, exact=("drop",), turned=(TurnedSpec((Edge.TOP,)),))
    piece = drafted(wallet(shell(1), divider)).piece("divider")
    assert piece.made.bounds.height == pytest.approx(70)
    assert "mouth" in piece.made_edges
    assert piece.height > 77
