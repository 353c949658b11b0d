"""All findings together: over the range of a leather, on trimmed edges, on whole ready-made wallets."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.findings import Verdict, worst
from patternforge.fit.judge import fit, fit_over_range
from patternforge.leather.material import Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Design, Edge, FoldSpec, HoleShape, HoleSpec, LayerPart
from tests.designs_built import SLITS, sleeve, three_fold, two_fold, with_holes
from tests.unit.fit.found import GOOD, LOOK, finding, findings, small, with_stitching
from tests.unit.wallet.built import leather, pocket, shell

TRIMMED = "trimmed edge with holes cut beforehand"
MISMATCH = "edge mismatch, closed"
LINING = LayerPart("lining", "inner", 0, 1)


@pytest.mark.parametrize("design", [two_fold(), three_fold(), sleeve(), with_holes(two_fold(), SLITS)])
def test_wallets_as_built_for_tests_pass(design: Design) -> None:
    assert worst(fit(drafted(design))) is not Verdict.NO


def test_a_range_is_judged_at_both_ends_and_told_where_it_is_worse() -> None:
    # Lining 0.8 give or take 0.4: the shell is 0.2 pi too short or too long at the ends.
    leathers = (leather("outer", 1.2), leather("inner", 0.8, tolerance=0.4))
    pattern = small(shell(2), LINING, widths=(100.0, 100.0), folds=(FoldSpec(),), leathers=leathers)
    found = [f for f in fit_over_range(pattern) if f.what == MISMATCH]
    assert [(f.where, f.verdict) for f in found] == [
        ("shell at fold 1", GOOD),
        ("shell at fold 1, leather at its thinnest", LOOK),
        ("shell at fold 1, leather at its thickest", LOOK),
    ]
    assert [f.measured for f in found] == pytest.approx([0.0, 0.2 * 3.14159265, -0.2 * 3.14159265], abs=1e-6)


def test_a_range_of_thickness_counts_like_a_tolerance() -> None:
    ranged = replace(leather("inner", 0.8), thickness=Thickness(0.4, 1.2))
    leathers = (leather("outer", 1.2), ranged)
    pattern = small(shell(2), LINING, widths=(100.0, 100.0), folds=(FoldSpec(),), leathers=leathers)
    assert [f.verdict for f in fit_over_range(pattern) if f.what == MISMATCH] == [GOOD, LOOK, LOOK]


def test_what_is_as_bad_in_the_middle_is_not_told_thrice() -> None:
    leathers = (leather("outer", 1.2), leather("inner", 0.8, tolerance=0.01))
    flat = FoldSpec(compensation=0.0)
    pattern = small(shell(2), LINING, widths=(100.0, 100.0), folds=(flat,), leathers=leathers)
    assert [f.verdict for f in fit_over_range(pattern) if f.what == MISMATCH] == [LOOK]


def test_other_leathers_may_be_asked_about() -> None:
    pattern = small(shell(2), LINING, widths=(100.0, 100.0), folds=(FoldSpec(),))
    thick = {"outer": leather("outer", 1.2), "inner": leather("inner", 1.8)}
    (found,) = (f for f in fit(pattern, thick) if f.what == MISMATCH)
    assert found.measured == pytest.approx(-0.5 * 3.14159265, abs=1e-6)
    assert finding(pattern, MISMATCH).measured == pytest.approx(0.0, abs=1e-9)


def test_an_edge_to_be_trimmed_off_holes_is_pointed_out() -> None:
    trimmed = small(shell(1), pocket(trim=((Edge.LEFT, 1.0), (Edge.RIGHT, 2.0))))
    found = finding(trimmed, TRIMMED)
    assert (found.where, found.measured, found.verdict) == ("pocket", 2.0, LOOK)
    assert not findings(small(shell(1), pocket()), TRIMMED)
    marked = with_stitching(trimmed, hole=HoleSpec(HoleShape.MARK))
    assert not findings(marked, TRIMMED)
