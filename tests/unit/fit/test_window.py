"""Thickness windows: where the pieces as drafted stop serving, worked out by hand and looked at on either side."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from math import pi

import pytest

from patternforge.fit import window
from patternforge.fit.findings import Finding, Verdict, worst
from patternforge.fit.judge import fit_as_cut
from patternforge.fit.window import THICKEST, THINNEST, ThicknessWindow, thickness_windows
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.designs_built import sleeve, two_fold
from tests.folded_built import dressed_envelope
from tests.unit.fit.found import reading

TWO_FOLD = drafted(two_fold(outer=1.2, inner=0.8))
WINDOWS = {each.role: each for each in thickness_windows(TWO_FOLD)}


def found_at(pattern: Pattern, role: str, t: float) -> tuple[Finding, ...]:
    own = {leather.role: leather for leather in pattern.design.leathers}
    return fit_as_cut(pattern, {**own, role: replace(own[role], thickness=Thickness(t, t))})


@pytest.mark.parametrize(("role", "drafted_for"), [("outer", 1.2), ("inner", 0.8)])
def test_the_shell_of_a_two_fold_ends_the_window_where_its_edge_strays_too_far(role: str, drafted_for: float) -> None:
    # Shell and divider bend half their own thickness beyond each other's faces: the shell's edge strays by pi/2 times
    # what either grows. 0.5 mm of stray is hidden, 1.5 mm can be sanded.
    of = WINDOWS[role]
    assert of.drafted == drafted_for
    assert of.good is not None
    assert of.holds is not None
    assert of.good == pytest.approx((drafted_for - 1 / pi, drafted_for + 1 / pi), abs=0.01)
    assert of.holds[1] == pytest.approx(drafted_for + 3 / pi, abs=0.01)
    assert of.holds[0] == pytest.approx(max(drafted_for - 3 / pi, THINNEST), abs=0.01)
    assert of.good_ends[1] is not None
    assert of.good_ends[1].what == "edge mismatch, closed"


@pytest.mark.parametrize("role", ["outer", "inner"])
def test_verdicts_turn_a_hundredth_of_a_millimetre_beyond_either_end(role: str) -> None:
    of = WINDOWS[role]
    assert of.good is not None
    assert of.holds is not None
    for way, good, holds in zip((-0.01, 0.01), of.good, of.holds, strict=True):
        assert worst(found_at(TWO_FOLD, role, good)) is Verdict.GOOD
        assert worst(found_at(TWO_FOLD, role, good + way)) is Verdict.LOOK
        assert worst(found_at(TWO_FOLD, role, holds)) is not Verdict.NO
        if holds != THINNEST:
            assert worst(found_at(TWO_FOLD, role, holds + way)) is Verdict.NO


def test_a_search_that_meets_no_end_says_so() -> None:
    of = WINDOWS["inner"]
    assert of.holds is not None
    assert (of.holds[0], of.holds_ends[0]) == (THINNEST, None)


def test_a_drafted_thickness_between_two_hundredths_lies_in_its_window() -> None:
    (outer, _) = thickness_windows(drafted(two_fold(outer=1.3891)))
    assert outer.good is not None
    assert outer.good[0] < 1.3891 < outer.good[1]
    assert outer.good == pytest.approx((1.3891 - 1 / pi, 1.3891 + 1 / pi), abs=0.01)


def test_a_blank_folded_from_one_piece_has_a_window_of_its_own() -> None:
    pattern = drafted(dressed_envelope())
    (of,) = thickness_windows(pattern)
    assert of.holds is not None
    low, high = of.holds
    assert low < of.drafted < high
    assert worst(found_at(pattern, of.role, low)) is not Verdict.NO
    assert worst(found_at(pattern, of.role, low - 0.01)) is Verdict.NO
    assert worst(found_at(pattern, of.role, high + 0.01)) is Verdict.NO


def judged_by(monkeypatch: pytest.MonkeyPatch, judge: Callable[[float], list[Finding]]) -> ThicknessWindow:
    """The window of a sleeve of 0.9 mm leather when ``judge`` says what is found at a thickness."""

    def told(pattern: Pattern, leathers: Mapping[str, Leather]) -> tuple[Finding, ...]:
        return tuple(judge(leathers["outer"].t))

    monkeypatch.setattr(window, "fit_as_cut", told)
    (of,) = (each for each in thickness_windows(drafted(sleeve())) if each.role == "outer")
    return of


def reads(verdict: Verdict, what: str = "a") -> Finding:
    return reading(verdict, what, "rim")


def test_what_fits_again_beyond_a_gap_is_no_part_of_the_window(monkeypatch: pytest.MonkeyPatch) -> None:
    of = judged_by(monkeypatch, lambda t: [reads(Verdict.NO if 1.5 <= t < 2.0 or t < 0.5 else Verdict.GOOD)])
    assert of.holds == of.good == (0.5, 1.49)


def test_what_reads_look_at_every_thickness_does_not_narrow_the_good_range(monkeypatch: pytest.MonkeyPatch) -> None:
    always, above = reads(Verdict.LOOK, "always"), reads(Verdict.LOOK, "above")
    of = judged_by(monkeypatch, lambda t: [always, *([above] if t > 2.0 else [])])
    assert of.good == (THINNEST, 2.0)
    assert of.holds == (THINNEST, THICKEST)
    assert of.good_ends == (None, above)


def test_what_a_change_of_thickness_mends_leaves_no_good_range_where_it_is_not_mended(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    of = judged_by(monkeypatch, lambda t: [reads(Verdict.LOOK if t < 2.0 else Verdict.GOOD)])
    assert of.good is None
    assert of.good_ends == (reads(Verdict.LOOK), reads(Verdict.LOOK))
    assert of.holds == (THINNEST, THICKEST)


def test_a_wallet_that_does_not_fit_as_drafted_has_no_window(monkeypatch: pytest.MonkeyPatch) -> None:
    of = judged_by(monkeypatch, lambda t: [reads(Verdict.NO if t < 1.5 else Verdict.GOOD)])
    assert of.holds is None
    assert of.good is None
    assert of.holds_ends == (reads(Verdict.NO), reads(Verdict.NO))


@pytest.mark.parametrize(("thicker", "verdict"), [(0.9, Verdict.GOOD), (1.9, Verdict.LOOK), (2.1, Verdict.NO)])
def test_a_tab_is_pulled_through_a_slit_that_was_cut_a_little_too_short(thicker: float, verdict: Verdict) -> None:
    # The slit is drafted 1 mm longer than its tab is wide and thick, and leather gives another.
    pattern = drafted(dressed_envelope())
    found = found_at(pattern, "main", pattern.design.leathers[0].t + thicker)
    (slit,) = (each for each in found if each.what == "slit longer than tab and thickness by")
    assert slit.measured == pytest.approx(1.0 - thicker, abs=1e-6)
    assert slit.verdict is verdict
