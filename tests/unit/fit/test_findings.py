"""Verdicts from measures and limits."""

from __future__ import annotations

import pytest

from patternforge.fit.findings import Finding, Verdict, at_least, at_most, worst
from tests.unit.fit.found import GOOD, LOOK, NO


@pytest.mark.parametrize(
    ("measured", "verdict"),
    [(2.0, GOOD), (1.5, GOOD), (1.4995, GOOD), (1.49, LOOK), (1.0, LOOK), (0.9995, LOOK), (0.99, NO), (-5.0, NO)],
)
def test_at_least_forgives_a_micrometre(measured: float, verdict: Verdict) -> None:
    assert at_least(measured, 1.5, 1.0) is verdict


@pytest.mark.parametrize(
    ("measured", "verdict"), [(0.0, GOOD), (6.0, GOOD), (6.0005, GOOD), (6.01, LOOK), (9.0, LOOK), (9.01, NO)]
)
def test_at_most_is_the_other_way_round(measured: float, verdict: Verdict) -> None:
    assert at_most(measured, 6.0, 9.0) is verdict


@pytest.mark.parametrize(
    ("verdicts", "expected"),
    [((), GOOD), ((GOOD, GOOD), GOOD), ((GOOD, LOOK, GOOD), LOOK), ((LOOK, NO, GOOD), NO), ((NO, LOOK), NO)],
)
def test_the_worst_decides(verdicts: tuple[Verdict, ...], expected: Verdict) -> None:
    assert worst(Finding("what", "where", 0.0, 0.0, verdict) for verdict in verdicts) is expected
