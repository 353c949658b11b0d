"""Layers that copy the outline of another."""

from __future__ import annotations

from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polygon
from patternforge.wallet.assemble import drafted
from patternforge.wallet.copies import copied_shape, with_copies
from patternforge.wallet.finishing import TurnedSpec
from patternforge.wallet.outline import Shape
from patternforge.wallet.spec import Edge, EdgeShape, FoldSpec, LayerPart
from patternforge.wallet.words import EdgeRole
from tests.unit.wallet.built import bank, shell, wallet

TWO: dict[str, Any] = {"widths": (100.0, 100.0), "folds": (FoldSpec(relief=5.0),)}


def lining(inside: float, follows: str = "shell", name: str = "lining") -> LayerPart:
    return LayerPart(name, "inner", 0, 0, follows=follows, inside=inside)


def test_a_lining_ends_inside_the_shell_all_round_and_keeps_the_centres_of_its_corners() -> None:
    pattern = drafted(wallet(shell(1), lining(1.5), bank(), corner=6.0))
    piece = pattern.piece("lining")
    assert (piece.width, piece.height) == pytest.approx((97, 77))
    assert {round(s.radius, 6) for s in piece.outline.segments if s.is_arc} == {4.5}


def test_a_backing_outside_the_layer_it_follows_keeps_sharp_corners_sharp() -> None:
    of = Shape(rounded_rectangle(0, 0, 50, 30, 0), (EdgeRole.SEWN,) * 4)
    grown = copied_shape(of, -2.0)
    assert len(grown.path.segments) == 4
    assert grown.path.area == pytest.approx(54 * 34)
    assert set(grown.edges) == {EdgeRole.SEWN}


def test_an_inset_deeper_than_a_rounding_leaves_the_corner_sharp() -> None:
    of = Shape(rounded_rectangle(0, 0, 50, 30, 2), (EdgeRole.SEWN,) * 8)
    assert not any(s.is_arc for s in copied_shape(of, 3.0).path.segments)


def test_a_lining_covers_the_panels_of_its_shell_and_is_developed_by_its_own_fold() -> None:
    pattern = drafted(wallet(shell(2), lining(2.0), bank(), **TWO))
    piece, outer = pattern.piece("lining"), pattern.piece("shell")
    assert piece.placement.panels == outer.placement.panels == (0, 1)
    lengths = {layer.part: layer.flat_length for layer in pattern.folds[0].layers}
    assert piece.width == pytest.approx(200 - 4 + lengths["lining"])
    assert outer.width == pytest.approx(200 + lengths["shell"])
    assert lengths["lining"] < lengths["shell"]


def test_a_copy_of_a_lowered_layer_has_its_own_edge_below_the_lowered_one() -> None:
    divider = LayerPart("divider", "inner", 0, 0, drop=10.0, exact=("drop",))
    pattern = drafted(wallet(shell(1), divider, lining(2.0, "divider"), bank()))
    assert pattern.piece("lining").height == pytest.approx(80 - 10 - 4)
    assert EdgeRole.MOUTH in pattern.piece("lining").edges


def test_a_copy_follows_the_outline_before_trimming_and_turning_in() -> None:
    trimmed = drafted(wallet(shell(1, trim=((Edge.TOP, 3.0),)), lining(1.0), bank())).piece("lining")
    assert trimmed.height == pytest.approx(78)
    turned = drafted(wallet(shell(1, turned=(TurnedSpec((Edge.TOP,)),)), lining(1.0), bank())).piece("lining")
    assert turned.height == pytest.approx(78)
    assert EdgeRole.TURNED not in turned.edges


def test_a_copy_follows_a_slanted_side_at_right_angles_to_it() -> None:
    part = shell(1, inset=((Edge.LEFT, 10.0),), shapes=((Edge.LEFT, EdgeShape(slant=20.0)),))
    pattern = drafted(wallet(part, lining(2.0), bank()))
    outer, piece = pattern.piece("shell"), pattern.piece("lining")
    laid = [piece.placement.to_assembly(s.start) for s in piece.outline.segments]
    edge = [outer.placement.to_assembly(s.start) for s in outer.outline.segments]
    assert [polygon(edge).distance_to(p) for p in laid] == pytest.approx([2.0] * 4)


def test_insets_add_up_along_a_chain_of_copies() -> None:
    design = with_copies(wallet(shell(2), lining(1.5), lining(2.0, "lining", "inner lining"), **TWO))
    last = design.parts[-1]
    assert isinstance(last, LayerPart)
    assert dict(last.inset) == dict.fromkeys(Edge, 3.5)
    assert (last.first, last.last) == (0, 1)


def test_a_copy_of_what_does_not_stand_before_it_is_refused_by_name_and_line() -> None:
    with pytest.raises(DraftError, match=r"small.yaml:0: 'lining' follows 'shel', no layer outside it"):
        drafted(wallet(shell(1), lining(1.0, "shel"), bank()))


def test_a_copy_of_which_nothing_is_left_is_refused() -> None:
    with pytest.raises(DraftError, match="'lining'"):
        drafted(wallet(shell(1), lining(45.0), bank()))
