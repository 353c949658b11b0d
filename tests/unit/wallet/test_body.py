"""Fold lengths of worked examples, reckoned by hand from what lies between the flanks."""

from __future__ import annotations

from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.body import layer_development
from patternforge.wallet.pattern import FoldLayer
from patternforge.wallet.spec import BankShape, Edge, FoldSpec, Held, LayerPart, Load, Side
from tests.unit.wallet.built import bank, body_of, leather, pocket, shell, wallet

TWO = (100.0, 100.0)
THREE = (100.0, 100.0, 100.0)


def divider(last: int = 1, **changes: Any) -> LayerPart:
    return LayerPart("divider", "inner", 0, last, **changes)


def lengths(layers: tuple[FoldLayer, ...]) -> dict[str, tuple[float, float, float]]:
    """Gap, inside radius and true length of each layer."""
    return {layer.part: (layer.gap.value, layer.radius, layer.true_length) for layer in layers}


def test_a_two_fold_wallet_worked_by_hand() -> None:
    # On each flank, where all three lie over each other: pieces 3 x 0.8 and cards 3 x 1.0 = 5.4; together 10.8.
    # Divider: inside radius 5.4, neutral fibre at 5.4 + 0.4: pi x 5.8.
    # Shell: besides, on each flank, the divider 0.8 and 4 notes 0.4: gap 13.2, radius 6.6, fibre at 7.2: pi x 7.2.
    parts = (shell(2), divider(holds=(Held("note", 4),)), bank(), bank(name="right", panel=1))
    (fold,) = body_of(wallet(*parts, widths=TWO, folds=(FoldSpec(),))).folds
    assert lengths(fold.layers) == {
        "shell": pytest.approx((13.2, 6.6, 7.2 * pi)),
        "divider": pytest.approx((10.8, 5.4, 5.8 * pi)),
    }
    assert [layer.flat_length for layer in fold.layers] == pytest.approx([7.2 * pi, 5.8 * pi])
    assert (fold.x0, fold.x1) == pytest.approx((100.0, 100.0 + 5.8 * pi))


def test_a_load_leaves_out_what_is_not_in_the_wallet() -> None:
    # Half the cards and no notes: 2 x (2.4 + 1.5) = 7.8 inside the divider, 2 x 0.8 more inside the shell.
    parts = (shell(2), divider(holds=(Held("note", 4),)), bank(), bank(name="right", panel=1))
    (fold,) = body_of(wallet(*parts, widths=TWO, folds=(FoldSpec(),), load=Load(0.5, 0.0))).folds
    assert [layer.gap.value for layer in fold.layers] == pytest.approx([9.4, 7.8])


@pytest.mark.parametrize(
    ("closing", "angles", "expected"),
    # A pocket of one card on each panel: 0.8 + 1.0 = 1.8. A panel folded in is as thick as its shell and pocket: 3.0.
    [
        # P0 onto P1: 3.6 between; then P2 over both: 3.6 and P0: gap 6.6.
        ((1, 2), (180, 180), (1.8, 3.3)),
        # P2 onto P1 first, then P0 over both: the other way round.
        ((2, 1), (180, 180), (3.3, 1.8)),
        # An accordion: at the second fold outsides meet, nothing stands on them: 0.6, as sharp as the shell bends.
        ((1, 2), (180, -180), (1.8, 0.6)),
        ((2, 1), (180, -180), (1.8, 0.6)),
    ],
)
def test_a_three_fold_wallet_worked_by_hand(
    closing: tuple[int, ...], angles: tuple[float, ...], expected: tuple[float, float]
) -> None:
    pockets = [pocket(name=f"on {panel}", panel=panel) for panel in range(3)]
    folds = [FoldSpec(angle) for angle in angles]
    body = body_of(wallet(shell(3), *pockets, widths=THREE, folds=folds, closing=closing))
    radii = [fold.layers[0].radius for fold in body.folds]
    assert radii == pytest.approx(expected)
    assert [fold.layers[0].true_length for fold in body.folds] == pytest.approx([pi * (r + 0.6) for r in expected])


def test_pockets_on_the_outside_stand_in_a_fold_whose_outsides_meet() -> None:
    outside = [pocket(name=f"on {panel}", panel=panel, facing=Side.OUTSIDE) for panel in range(2)]
    (fold,) = body_of(wallet(*outside, shell(2), widths=TWO, folds=(FoldSpec(-180),))).folds
    assert fold.layers[0].gap.value == pytest.approx(3.6)
    (fold,) = body_of(wallet(*outside, shell(2), widths=TWO, folds=(FoldSpec(180),))).folds
    assert fold.layers[0].gap.value == 0


def test_at_a_corner_of_ninety_degrees_nothing_but_the_layers_counts() -> None:
    # Lining: as sharp as it bends, 0.4, fibre at 0.8. Shell round it: 0.4 + 0.8 = 1.2, fibre at 1.8. A quarter turn.
    parts = (shell(3), divider(2), pocket(), pocket(name="right", panel=2))
    folds = (FoldSpec(90), FoldSpec(90))
    for fold in body_of(wallet(*parts, widths=THREE, folds=folds)).folds:
        assert [layer.true_length for layer in fold.layers] == pytest.approx([1.8 * pi / 2, 0.8 * pi / 2])
    for fold in body_of(wallet(*parts, widths=THREE, folds=(FoldSpec(-90), FoldSpec(-90)))).folds:
        # The shell is innermost: 0.6, fibre at 1.2; the lining lies round it: 0.6 + 1.2 + 0.4 = 2.2.
        assert [layer.true_length for layer in fold.layers] == pytest.approx([1.2 * pi / 2, 2.2 * pi / 2])


def test_a_layer_too_stiff_for_its_gap_keeps_a_hollow_that_the_shell_goes_round() -> None:
    # Nothing inside the lining, which bends no sharper than twice its 0.8: radius 1.6; the shell's is 1.6 + 0.8.
    leathers = (leather("outer", 1.2), leather("inner", 0.8, min_radius=2.0))
    (fold,) = body_of(wallet(shell(2), divider(), widths=TWO, folds=(FoldSpec(),), leathers=leathers)).folds
    assert [layer.radius for layer in fold.layers] == pytest.approx([2.4, 1.6])
    assert [layer.gap.value for layer in fold.layers] == pytest.approx([1.6, 0.0])


def test_the_neutral_fibre_lies_where_the_leather_has_it() -> None:
    leathers = (leather("outer", 2.0, neutral=0.3, min_radius=1.0), leather("inner", 0.8))
    (fold,) = body_of(wallet(shell(2), widths=TWO, folds=(FoldSpec(),), leathers=leathers)).folds
    assert fold.layers[0].true_length == pytest.approx(pi * (2.0 + 0.3 * 2.0))


@pytest.mark.parametrize(("factor", "shell_length"), [(0.0, 0.8), (0.5, 1.3), (1.0, 1.8), (1.2, 2.0)])
def test_compensation_runs_from_the_innermost_length_to_the_true_one_and_beyond(
    factor: float, shell_length: float
) -> None:
    # Lining 0.8 pi, shell true 1.8 pi: half way 1.3 pi, a fifth beyond 2.0 pi.
    (fold,) = body_of(wallet(shell(2), divider(), widths=TWO, folds=(FoldSpec(compensation=factor),))).folds
    assert [layer.flat_length for layer in fold.layers] == pytest.approx([shell_length * pi, 0.8 * pi])


def test_a_bank_is_reckoned_where_its_pieces_and_cards_together_stand_highest() -> None:
    # Steps of 50 mm: no card lies over another. Tee: from 46 mm up the second stem overlaps the first pocket only if
    # its mouth, at 40, were higher: one piece and one card, 1.8. Full pieces run down behind: 2 and 1, 2.6.
    for style, expected in ((BankShape.TEE, 1.8), (BankShape.FULL, 2.6)):
        part = bank(slots=2, step=50.0, shape=style)
        (fold,) = body_of(wallet(shell(2), part, widths=TWO, height=130.0, folds=(FoldSpec(),))).folds
        assert fold.layers[0].gap.value == pytest.approx(expected)


def test_the_gap_is_told_term_by_term() -> None:
    parts = (shell(2), divider(holds=(Held("note", 4),)), pocket(count=2))
    (fold,) = body_of(wallet(*parts, widths=TWO, folds=(FoldSpec(),))).folds
    terms = {term.label: term.value for term in fold.layers[0].gap.terms if "note" in term.label}
    assert terms == {"4 x note": pytest.approx(0.4)}
    labels = [term.label for term in fold.layers[0].gap.terms]
    assert labels.count("4 x note") == 2
    assert "2 x card" in labels
    assert "pocket (inner)" in labels


def test_a_development_stretches_a_layer_by_what_its_fold_is_longer() -> None:
    parts = (shell(2), divider())
    body = body_of(wallet(*parts, widths=TWO, folds=(FoldSpec(),)))
    outer = layer_development(body, shell(2))
    zone = 0.8 * pi
    assert outer.flat(50.0) == 50.0
    assert outer.flat(100.0 + zone / 2) == pytest.approx(100.0 + 0.9 * pi)
    assert outer.flat(150.0 + zone) == pytest.approx(150.0 + 1.8 * pi)
    inner = layer_development(body, divider())
    assert inner.flat(150.0) == pytest.approx(150.0)


def test_the_second_fold_adds_to_the_first() -> None:
    parts = (shell(3), divider(2))
    body = body_of(wallet(*parts, widths=THREE, folds=(FoldSpec(90), FoldSpec(90))))
    # Each fold zone is 0.4 pi on the assembly and 0.9 pi in the shell.
    assert layer_development(body, shell(3)).flat(body.width) == pytest.approx(300.0 + 2 * 0.9 * pi)
    assert body.width == pytest.approx(300.0 + 2 * 0.4 * pi)


def test_a_fold_that_no_layer_crosses_is_refused() -> None:
    halves = (shell(1), LayerPart("other", "outer", 1, 1))
    with pytest.raises(DraftError, match=r"small\.yaml: fold 1 is crossed by no layer"):
        body_of(wallet(*halves, widths=TWO, folds=(FoldSpec(),)))


def test_a_strap_round_a_ring_runs_half_a_circle_through_its_own_middle() -> None:
    # A ring of 3 mm wire and a strap of 1.2: pi x (1.5 + 0.6).
    ring = FoldSpec(around=3.0, core="ring")
    (fold,) = body_of(wallet(shell(2), widths=TWO, folds=(ring,))).folds
    assert lengths(fold.layers) == {"shell": pytest.approx((3.0, 1.5, pi * 2.1))}
    assert [(term.label, term.value) for term in fold.layers[0].gap.terms] == [("round ring", 3.0)]


def test_what_a_fold_goes_round_lies_in_the_gap_of_every_layer_besides_all_else() -> None:
    parts = (shell(2), divider(holds=(Held("note", 4),)), bank(), bank(name="right", panel=1))
    plain, round_a_bar = (
        body_of(wallet(*parts, widths=TWO, folds=(FoldSpec(around=around),))).folds[0] for around in (0.0, 2.0)
    )
    for before, after in zip(plain.layers, round_a_bar.layers, strict=True):
        assert after.gap.value == pytest.approx(before.gap.value + 2.0)
        assert after.true_length == pytest.approx(before.true_length + pi)
        assert after.gap.terms[-1].label == "round its core"


@pytest.mark.parametrize(("inset", "gap"), [(16.9, 0.8), (17.0, 0.0)])
@pytest.mark.parametrize("tongue", [0, 1])
def test_a_layer_that_a_tongue_folded_back_does_not_reach_lies_in_no_gap(
    tongue: int, inset: float, gap: float
) -> None:
    # The tongue of 20 mm reaches 20 mm beyond the bend, the lining begins 3 mm of relief and its inset beyond it.
    edge = (Edge.LEFT, Edge.RIGHT)[tongue]
    lining = LayerPart("lining", "inner", 1 - tongue, 1 - tongue, inset=((edge, inset),))
    widths = (100.0, 20.0) if tongue else (20.0, 100.0)
    (fold,) = body_of(wallet(shell(2), lining, widths=widths, folds=(FoldSpec(relief=3.0),))).folds
    assert fold.layers[0].gap.value == pytest.approx(gap)


def test_a_corner_goes_round_a_bar_by_its_share_of_the_circle() -> None:
    # Alone and without a bar the shell bends as sharp as it can, 0.6 mm inside; a bar of 4 mm asks for 2 mm.
    (plain,), (bent,) = (
        body_of(wallet(shell(2), widths=TWO, folds=(FoldSpec(90.0, around=around),))).folds for around in (0.0, 4.0)
    )
    assert plain.layers[0].true_length == pytest.approx(pi / 2 * 1.2)
    assert bent.layers[0].true_length == pytest.approx(pi / 2 * 2.6)
