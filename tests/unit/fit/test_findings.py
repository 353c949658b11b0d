"""Verdicts from measures and limits."""

from __future__ import annotations

from math import inf

import pytest

from patternforge.fit.findings import Bound, Finding, Limit, Stretch, Verdict, at_least, at_most, within, worst
from tests.unit.fit.found import GOOD, LOOK, NO, reading


@pytest.mark.parametrize(
    ("measured", "verdict"),
    [(2.0, GOOD), (1.5, GOOD), (1.4995, GOOD), (1.49, LOOK), (1.0, LOOK), (0.9995, LOOK), (0.99, NO), (-5.0, NO)],
)
def test_at_least_forgives_a_micrometre(measured: float, verdict: Verdict) -> None:
    assert at_least(1.5, 1.0).verdict(measured) is verdict


@pytest.mark.parametrize(
    ("measured", "verdict"), [(0.0, GOOD), (6.0, GOOD), (6.0005, GOOD), (6.01, LOOK), (9.0, LOOK), (9.01, NO)]
)
def test_at_most_is_the_other_way_round(measured: float, verdict: Verdict) -> None:
    assert at_most(6.0, 9.0).verdict(measured) is verdict


@pytest.mark.parametrize(
    ("measured", "verdict"),
    [(0.4, NO), (0.5, LOOK), (2.4, LOOK), (2.5, GOOD), (3.0, GOOD), (3.5, GOOD), (3.6, LOOK), (5.5, LOOK), (5.6, NO)],
)
def test_within_binds_on_either_side_of_a_size(measured: float, verdict: Verdict) -> None:
    assert within(0.5, 2.5, of=3.0).verdict(measured) is verdict


@pytest.mark.parametrize(
    ("limit", "bound", "told", "crossed"),
    [
        (at_least(1.5, 1.0), Bound.AT_LEAST, "1.20 mm, good at least 1.50 mm", "0.40 mm, tolerable at least 1.00 mm"),
        (at_most(0.3, 0.35), Bound.AT_MOST, "0.32 mm, good at most 0.30 mm", "0.40 mm, tolerable at most 0.35 mm"),
        (
            within(0.3, 0.35),
            Bound.BETWEEN,
            "-0.32 mm, good between -0.30 and 0.30 mm",
            "0.40 mm, tolerable between -0.35 and 0.35 mm",
        ),
    ],
)
def test_told_is_the_limit_that_was_crossed(limit: Limit, bound: Bound, told: str, crossed: str) -> None:
    measured = float(told.split()[0])
    found = [Finding("gap", "rim", size, limit) for size in (measured, 0.4)]
    assert limit.good.bound is bound
    assert [each.verdict for each in found] == [LOOK, NO]
    assert [each.told for each in found] == [told, crossed]


@pytest.mark.parametrize(
    ("measured", "size"), [(0.496, "0.50 mm"), (0.5009, "0.50 mm"), (0.5012, "0.501 mm"), (-1.504, "-1.504 mm")]
)
def test_a_measure_just_beyond_its_limit_is_not_rounded_onto_it(measured: float, size: str) -> None:
    assert Finding("edge mismatch, closed", "fold 1", measured, within(0.5, 1.5)).size == size


@pytest.mark.parametrize(
    ("measured", "limit", "told"),
    [
        (1.181, at_least(2.0, 1.1835), "1.181 mm, tolerable at least 1.183 mm"),
        (2.0305, at_least(2.034, 1.0), "2.030 mm, good at least 2.034 mm"),
        (2.0355, at_least(2.034, 1.0), "2.04 mm, good at least 2.03 mm"),
    ],
)
def test_a_measure_and_its_limit_are_not_rounded_onto_each_other(measured: float, limit: Limit, told: str) -> None:
    assert Finding("hole rim to edge", "rim", measured, limit).told == told


def test_what_is_good_has_no_remedy() -> None:
    found = [Finding("hole rim to edge", "rim", size, at_least(2.0, 1.0), "more margin") for size in (1.9, 1.9995)]
    assert [each.remedy for each in found] == ["more margin", ""]


def test_a_count_is_told_whole() -> None:
    assert Finding("holes that no piece carries", "rim", 2, at_most(0, 0), unit="").told == "2, tolerable at most 0"


def test_an_infinite_end_does_not_bind() -> None:
    assert (Stretch(low=1.0).ends, Stretch(high=2.0).ends, Stretch(1.0, 2.0).ends) == ((1.0,), (2.0,), (1.0, 2.0))
    assert at_most(0.0, inf).verdict(1e9) is LOOK


@pytest.mark.parametrize(
    ("verdicts", "expected"),
    [((), GOOD), ((GOOD, GOOD), GOOD), ((GOOD, LOOK, GOOD), LOOK), ((LOOK, NO, GOOD), NO), ((NO, LOOK), NO)],
)
def test_the_worst_decides(verdicts: tuple[Verdict, ...], expected: Verdict) -> None:
    assert worst(reading(verdict) for verdict in verdicts) is expected
