"""Loose contents on panels of 100 x 80 mm: cards of 80 x 50 x 1 mm, relief 5 at the folds."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.assemble import drafted
from patternforge.wallet.parts import kind_of, panel_plies
from patternforge.wallet.parts.kind import Way
from patternforge.wallet.spec import Design, Edge, FoldSpec, LayerPart, Load, LoosePart, Lying, Spot
from tests.unit.wallet.built import body_of, shell, wallet

LINING = LayerPart("lining", "inner", 0, 1, line=6)
PAD = LoosePart("pad", 0, "card", Spot(0), count=4, line=8)
FOLD = FoldSpec(relief=5.0)
TWO = (100.0, 100.0)


def cover(pad: LoosePart = PAD, load: Load | None = None) -> Design:
    return wallet(shell(2), LINING, pad, widths=TWO, folds=(FOLD,), load=load or Load())


def needed(design: Design, way: Way) -> list[float]:
    pad = design.parts[-1]
    return [sum(term.value for term in need) for need in kind_of(pad).needs(design, pad, way)]


def test_what_lies_loose_takes_room_in_the_fold_of_every_layer_outside_it() -> None:
    # 4 cards of 1 mm on one flank: lining at radius 2, fibre 2.4; shell besides 2 x 0.8: radius 2.8, fibre 3.4.
    (fold,) = body_of(cover()).folds
    assert [(layer.gap.value, layer.true_length) for layer in fold.layers] == [
        pytest.approx((5.6, 3.4 * pi)),
        pytest.approx((4.0, 2.4 * pi)),
    ]
    assert fold.layers[1].gap.terms[0].label == "4 x card"


def test_what_lies_between_two_layers_takes_room_in_the_fold_of_the_outer_one_alone() -> None:
    between = wallet(shell(2), PAD, LINING, widths=TWO, folds=(FOLD,))
    (fold,) = body_of(between).folds
    assert [layer.gap.value for layer in fold.layers] == pytest.approx([5.6, 0.0])


@pytest.mark.parametrize(("share", "gap"), [(1.0, 4.0), (0.25, 1.0), (0.0, 0.0)])
def test_a_load_leaves_out_what_is_not_there(share: float, gap: float) -> None:
    (fold,) = body_of(cover(load=Load(loose=share))).folds
    assert fold.layers[1].gap.value == pytest.approx(gap)
    assert len(panel_plies(cover(load=Load(loose=share)), 0)) == (3 if share else 2)


def test_it_lies_in_the_middle_of_its_panel_unless_told() -> None:
    assert [loose.box for loose in drafted(cover()).loose] == [pytest.approx((10.0, 15.0, 90.0, 65.0))]
    upright = replace(PAD, lying=Lying.UPRIGHT, spot=Spot(0, (Edge.RIGHT, 40.0), (Edge.BOTTOM, 40.0)))
    assert drafted(cover(upright)).loose[0].box == pytest.approx((35.0, 0.0, 85.0, 80.0))


def test_it_counts_between_the_pieces_that_stand_before_and_after_it() -> None:
    assert [loose.order for loose in drafted(cover()).loose] == [1.5]
    between = wallet(shell(2), PAD, LINING, widths=TWO, folds=(FOLD,))
    assert [loose.order for loose in drafted(between).loose] == [0.5]


def test_it_asks_for_its_size_and_what_it_keeps_off_either_side() -> None:
    design = cover()
    assert needed(design, Way.ACROSS_FOLDS) == pytest.approx([80 + 2 * 5])  # the fold's relief
    assert needed(design, Way.ALONG_FOLDS) == pytest.approx([50 + 2 * 3])  # the headroom
    alone = wallet(shell(1), replace(PAD, lying=Lying.UPRIGHT))
    assert needed(alone, Way.ACROSS_FOLDS) == pytest.approx([50 + 2 * 3])


def test_it_yields_no_piece_and_moves_no_size() -> None:
    pattern = drafted(cover())
    assert [piece.name for piece in pattern.pieces] == ["shell", "lining"]
    assert not [moved for moved in pattern.adjustments if moved.part == "pad"]


def test_what_does_not_fit_its_panel_is_refused() -> None:
    with pytest.raises(DraftError, match=r"small\.yaml:8: 'pad': it reaches 5\.00 mm beyond panel 'P0'"):
        drafted(cover(replace(PAD, spot=Spot(0, (Edge.LEFT, 35.0)))))
    with pytest.raises(DraftError, match=r"it reaches 2\.00 mm beyond panel 'P0'"):
        drafted(cover(replace(PAD, spot=Spot(0, None, (Edge.TOP, 23.0)))))
