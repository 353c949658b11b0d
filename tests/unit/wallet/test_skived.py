"""Skived boxes of flat pieces, and what skiving changes in folds and stacks."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.geometry.point import Bounds, Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, PatchSkive
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import Edge, Film, FoldSpec, LayerPart, Opening, Spot
from patternforge.wallet.stacks import edge_thickness, fold_thickness
from tests.unit.wallet.built import bank, body_of, shell, wallet

TWO: dict[str, Any] = {"widths": (100.0, 100.0), "folds": (FoldSpec(relief=5.0),)}


def box(bounds: Bounds) -> tuple[float, ...]:
    return tuple(round(v, 4) + 0.0 for v in (bounds.x0, bounds.y0, bounds.x1, bounds.y1))


def lines(piece: Piece) -> list[tuple[float, ...]]:
    found = [path for skive in piece.skives for path in skive.lines]
    return [tuple(round(v, 4) + 0.0 for v in (p.start.x, p.start.y, p.end.x, p.end.y)) for p in found]


def test_a_band_lies_along_its_edges_and_its_lines_end_where_they_meet() -> None:
    part = shell(1, skives=(EdgeSkive((Edge.LEFT, Edge.BOTTOM), 8.0, 0.4),))
    piece = drafted(wallet(part)).piece("shell")
    # The shell shows its outside: the left edge of the assembly is on the right of the piece.
    assert [box(skive.box) for skive in piece.skives] == [(92, 0, 100, 80), (0, 0, 100, 8)]
    assert lines(piece) == [(92, 8, 92, 80), (92, 8, 0, 8)]
    assert {skive.left for skive in piece.skives} == {0.4}


def test_a_band_along_the_tabs_of_a_tee_is_drawn_on_its_tab_only() -> None:
    pattern = drafted(wallet(shell(1), bank(skives=(EdgeSkive((Edge.LEFT,), 8.0, 0.3),))))
    tee = pattern.piece("bank 2")
    (line,) = lines(tee)
    # The stem stands twice the margin of 4 mm inside the tab: there the band ends on its very edge.
    assert line[0] == line[2] == 8.0
    assert line[3] == tee.height
    assert line[1] == pytest.approx(tee.height - 10 - 8, abs=2.0)


def test_a_fold_is_skived_over_its_own_flat_length_and_beside_it() -> None:
    part = shell(2, skives=(FoldSkive(0, 6.0, 0.7),))
    pattern = drafted(wallet(part, bank(), **TWO))
    (skive,) = pattern.piece("shell").skives
    flat = pattern.folds[0].layers[0].flat_length
    assert box(skive.box) == pytest.approx((94, 0, 106 + flat, 80), abs=1e-3)
    assert [line.length for line in skive.lines] == pytest.approx([80, 80])


def test_a_patch_lies_on_the_pieces_that_hold_its_middle() -> None:
    patch = PatchSkive(Spot(0, (Edge.LEFT, 20.0), (Edge.BOTTOM, 40.0)), 10.0, 6.0, 0.5)
    pattern = drafted(wallet(shell(1), bank(skives=(patch,))))
    marked = {piece.name for piece in pattern.pieces if piece.skives}
    # Slot 1 reaches from 0 to 44 mm, slot 2 from 10 to 54, slot 3 from 20 to 64.
    assert marked == {"bank 1", "bank 2", "bank 3"}
    low = replace(patch, spot=Spot(0, (Edge.LEFT, 20.0), (Edge.BOTTOM, 12.0)))
    pattern = drafted(wallet(shell(1), bank(skives=(low,))))
    assert {piece.name for piece in pattern.pieces if piece.skives} == {"bank 1", "bank 2"}
    (skive,) = pattern.piece("bank 1").skives
    assert box(skive.box) == (15, 9, 25, 15)
    assert sum(line.length for line in skive.lines) == pytest.approx(32)


def test_a_piece_is_as_thick_as_the_least_that_is_left_there() -> None:
    skives = (EdgeSkive((Edge.BOTTOM,), 10.0, 0.6), EdgeSkive((Edge.LEFT, Edge.RIGHT), 10.0, 0.4))
    piece = drafted(wallet(shell(1, skives=skives))).piece("shell")
    assert piece.thickness_at(Point(50, 40), 1.2) == 1.2
    assert piece.thickness_at(Point(50, 5), 1.2) == 0.6
    assert piece.thickness_at(Point(5, 5), 1.2) == 0.4
    assert piece.thickness_at(Point(5, 5), 0.3) == 0.3


def test_a_clear_sheet_is_not_skived_with_its_pocket() -> None:
    window = Opening("window", Spot(0, None, (Edge.BOTTOM, 22.0)), 40.0, 20.0, film=Film("inner", 6.0, 3.0))
    part = bank(slots=1, skives=(EdgeSkive((Edge.LEFT,), 8.0, 0.4),), openings=(window,))
    pattern = drafted(wallet(shell(1), part))
    assert pattern.piece("bank").skives
    assert not pattern.piece("window film").skives


def test_the_thickness_in_a_fold_and_at_an_edge_is_that_of_the_skive_there() -> None:
    skives = (FoldSkive(0, 6.0, 0.7), EdgeSkive((Edge.TOP,), 9.0, 0.5))
    part = shell(3, skives=skives)
    design = wallet(part, widths=(100.0,) * 3, folds=(FoldSpec(),) * 2)
    assert [fold_thickness(design, part, fold) for fold in (0, 1)] == [0.7, 1.2]
    assert [edge_thickness(design, part, edge) for edge in (Edge.TOP, Edge.LEFT)] == [0.5, 1.2]


def test_a_skived_shell_bends_by_its_own_thickness_round_the_same_gap() -> None:
    plain = body_of(wallet(shell(2), bank(), **TWO)).folds[0].layers[0]
    skived = body_of(wallet(shell(2, skives=(FoldSkive(0, 6.0, 0.7),)), bank(), **TWO)).folds[0].layers[0]
    assert skived.gap == plain.gap
    # The fibre runs in the middle: pi x half of what is pared away.
    assert plain.true_length - skived.true_length == pytest.approx(pi * 0.25)


def test_a_stiff_layer_skived_at_the_fold_keeps_a_smaller_hollow() -> None:
    folds = (FoldSpec(relief=5.0),)
    layers = (shell(2), LayerPart("lining", "inner", 0, 1, skives=(FoldSkive(0, 6.0, 0.4),)))
    design = wallet(*layers, widths=(100.0, 100.0), folds=folds)
    lining = body_of(design).folds[0].layers[1]
    assert lining.radius == pytest.approx(0.5 * 0.4)
    assert lining.true_length == pytest.approx(pi * 0.4)


def test_at_a_corner_a_skived_layer_leaves_less_room_to_the_one_round_it() -> None:
    folds = (FoldSpec(90.0),)
    lining = LayerPart("lining", "inner", 0, 1, skives=(FoldSkive(0, 6.0, 0.4),))
    outer = body_of(wallet(shell(2), lining, widths=(100.0, 100.0), folds=folds)).folds[0].layers[0]
    assert outer.gap.value == pytest.approx(0.8)


def test_thread_is_shorter_where_the_edge_is_skived() -> None:
    plain = drafted(wallet(shell(1), bank())).seams[0]
    skived = drafted(wallet(shell(1, skives=(EdgeSkive((Edge.LEFT,), 10.0, 0.4),)), bank())).seams[0]
    left = [hole for hole in plain.holes if hole.at.x < 10]
    assert plain.thread - skived.thread == pytest.approx(2 * 0.8 * len(left), abs=2 * 0.8)
