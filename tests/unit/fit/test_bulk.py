"""Thickness judged: closed, sewn through, round the spine."""

from __future__ import annotations

import pytest

from patternforge.fit.findings import Verdict
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import FoldSpec, LayerPart
from tests.unit.fit.found import GOOD, LOOK, NO, finding, small, with_limits
from tests.unit.wallet.built import bank, pocket, shell
from tests.unit.wallet.pouches import accordion, pouch

CLOSED = "thickness closed, as loaded"
STACK = "thickest stack sewn through"
SPINE = "thickness at the spine"
FOLD = FoldSpec(relief=5.0)


@pytest.mark.parametrize(("limit", "verdict"), [(30.0, GOOD), (3.0, GOOD), (2.9, LOOK), (1.5, LOOK), (1.4, NO)])
def test_a_wallet_too_thick_to_carry(limit: float, verdict: Verdict) -> None:
    # Shell 1.2, card 1.0, pocket 0.8.
    found = finding(with_limits(small(shell(1), pocket()), closed_thickness=limit), CLOSED)
    assert (found.measured, found.limit.good.high) == pytest.approx((3.0, limit))
    assert found.verdict is verdict
    assert bool(found.remedy) == (verdict is not GOOD)


@pytest.mark.parametrize(
    ("pattern", "remedy"),
    [
        (small(shell(1)), "thinner leather, or skive"),
        (small(shell(1), pocket()), "thinner leather, fewer items, or skive"),
        (small(shell(1), bank(slots=1)), "thinner leather, fewer items, or skive"),
        (small(shell(1), bank()), "thinner leather, fewer slots, or skive"),
        (drafted(pouch()), "thinner leather, a shallower gusset, or skive"),
        (drafted(accordion()), "thinner leather, fewer items, or skive"),
    ],
    ids=["bare", "pocket", "one slot", "slots", "gusset", "bellows"],
)
def test_only_what_a_wallet_has_can_be_less(pattern: Pattern, remedy: str) -> None:
    assert finding(with_limits(pattern, closed_thickness=1.0), CLOSED).remedy == remedy


@pytest.mark.parametrize(("limit", "verdict"), [(6.0, GOOD), (2.0, GOOD), (1.9, LOOK), (1.34, LOOK), (1.3, NO)])
def test_a_stack_too_thick_to_sew(limit: float, verdict: Verdict) -> None:
    # Shell and pocket: 2.0. Above one and a half times its limit it is refused.
    found = finding(with_limits(small(shell(1), pocket()), seam_stack=limit), STACK)
    assert (found.measured, found.limit.good.high) == pytest.approx((2.0, limit))
    assert found.verdict is verdict


def test_every_seam_has_its_own_thickest_hole() -> None:
    # Three tabs of a bank overlap beside the rim only where each is present: slots end 18 below their mouths at 44,
    # 54 and 64, so from 46 the third and second lie over each other, from 36 to 44 the second and first.
    pattern = small(shell(1), LayerPart("lining", "inner", 0, 0), bank())
    assert finding(pattern, STACK, "rim").measured == pytest.approx(1.2 + 0.8 + 2 * 0.8)
    assert finding(pattern, STACK, "bank stop 3").measured == pytest.approx(0.8 + 0.8)


@pytest.mark.parametrize(("limit", "verdict"), [(30.0, GOOD), (3.6, GOOD), (3.5, LOOK), (1.8, LOOK), (1.7, NO)])
def test_the_spine_is_twice_the_outer_radius(limit: float, verdict: Verdict) -> None:
    # A bare shell of 1.2: inside radius 0.6, outside 1.8.
    pattern = small(shell(2), widths=(100.0, 100.0), folds=(FOLD,))
    found = finding(with_limits(pattern, closed_thickness=limit), SPINE)
    assert found.measured == pytest.approx(3.6)
    assert found.verdict is verdict
