"""Random wallets made up step by step."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from patternforge.fit.layout import layout
from patternforge.fit.making import making_steps
from patternforge.fit.order import sewing_order
from patternforge.wallet.pattern import Pattern
from tests.laws.designs import drafts
from tests.making_simulated import covered_holes


@settings(max_examples=15)
@given(drafts())
def test_no_hole_of_a_random_wallet_is_covered_when_its_turn_comes(pattern: Pattern) -> None:
    found = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    order = sewing_order(found)
    steps = making_steps(found, order)
    assert list(covered_holes(pattern, steps)) == []
    sewn = Counter(step.seam for step in steps if step.seam)
    assert sewn == Counter(seam.name for seam in pattern.seams if not seam.meets)
    if not order.blocked:
        assert Counter(name for step in steps for name in step.new) == Counter(piece.name for piece in pattern.pieces)
