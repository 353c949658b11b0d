"""Loose contents as fit sees them: cards of 80 x 50 x 1 mm on panels of 100 x 80, relief 5 at the fold."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.fit.close import closed_wallet
from patternforge.fit.findings import Verdict
from patternforge.fit.layout import layout
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, FoldSpec, LayerPart, Load, LoosePart, Spot
from tests.unit.fit.found import GOOD, LOOK, NO, finding, findings, small
from tests.unit.wallet.built import shell

LINING = LayerPart("lining", "inner", 0, 1)
PAD = LoosePart("pad", 0, "card", Spot(0), count=4)
OTHER = LoosePart("other", 1, "card", Spot(1), count=2)


def cover(*loose: LoosePart, load: Load | None = None) -> Pattern:
    return small(shell(2), LINING, *loose, widths=(100.0, 100.0), folds=(FoldSpec(relief=5.0),), load=load or Load())


def test_the_closed_wallet_is_thicker_by_what_lies_loose_in_it() -> None:
    # Shell 1.2 and lining 0.8 on both panels, 4 cards and 2: 4 + 6.
    assert finding(cover(PAD, OTHER), "thickness closed, as loaded").measured == pytest.approx(10.0)
    assert finding(cover(PAD, load=Load(loose=0.5)), "thickness closed, as loaded").measured == pytest.approx(6.0)


def test_the_pieces_close_true_round_what_lies_loose() -> None:
    pattern = cover(PAD, OTHER)
    laid = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    (bends,) = closed_wallet(laid).bends
    # 6 mm between the flanks of the lining: fibre at 3.4; the shell's at 3 + 0.8 + 0.6.
    assert [bend.needs / pi for bend in bends] == pytest.approx([3.4, 4.4])
    assert [bend.has / pi for bend in bends] == pytest.approx([3.4, 4.4])


def test_the_spine_is_thicker_by_what_lies_loose() -> None:
    pattern = cover(PAD)
    thicker = replace(pattern, loose=(replace(pattern.loose[0], count=8),))
    # Both layers run round 4 mm more, so the spine is thicker by 4.
    before, after = (finding(each, "thickness at the spine").measured for each in (pattern, thicker))
    assert after - before == pytest.approx(4.0)


@pytest.mark.parametrize(
    ("aside", "room", "verdict"), [(2.0, 2.0, GOOD), (0.4, 0.4, LOOK), (0.0, 0.0, LOOK), (-0.5, -0.5, NO)]
)
def test_what_lies_near_the_bend(aside: float, room: float, verdict: Verdict) -> None:
    pattern = cover(PAD)
    x1 = pattern.panels[0].x1 - aside
    moved = replace(pattern, loose=(replace(pattern.loose[0], box=(x1 - 80, 15.0, x1, 65.0)),))
    found = finding(moved, "item clear of the fold", "pad")
    assert found.measured == pytest.approx(room)
    assert found.verdict is verdict


def test_on_the_right_of_a_fold_it_is_the_left_side_that_counts() -> None:
    pattern = cover(replace(OTHER, spot=Spot(1, (Edge.LEFT, 43.0))))
    assert finding(pattern, "item clear of the fold", "other").measured == pytest.approx(3.0)


@pytest.mark.parametrize(("low", "room", "verdict"), [(10.0, 10.0, GOOD), (0.2, 0.2, LOOK), (-1.0, -1.0, NO)])
def test_what_stands_out_at_an_edge(low: float, room: float, verdict: Verdict) -> None:
    pattern = cover(PAD)
    moved = replace(pattern, loose=(replace(pattern.loose[0], box=(10.5, low, 90.5, low + 50)),))
    found = finding(moved, "item inside the edges", "pad")
    assert found.measured == pytest.approx(room)
    assert found.verdict is verdict


def test_without_a_fold_beside_it_nothing_is_said_of_bends() -> None:
    alone = small(shell(1), replace(PAD, spot=Spot(0)), LayerPart("lining", "inner", 0, 0))
    assert not findings(alone, "item clear of the fold", "pad")
    assert finding(alone, "item inside the edges", "pad").measured == pytest.approx(10.0)
