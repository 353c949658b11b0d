"""Seams sewn after folding as fit sees them: a flap of 60 mm sewn to a panel of 100, holes every 4 mm."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.findings import Verdict
from patternforge.fit.layout import layout
from patternforge.fit.order import sewing_order
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import FoldSpec, LayerPart
from tests.unit.fit.found import GOOD, LOOK, NO, finding, findings
from tests.unit.wallet.built import RIM, shell, wallet
from tests.unit.wallet.test_closed import FLAP, flapped


def shifted(by: float) -> Pattern:
    """The flap with the holes of its other side moved by that much along the row."""
    pattern = drafted(flapped())
    (piece,) = pattern.pieces
    moved = tuple(
        replace(hole, at=hole.at + Point(0.0, by)) if hole.seam.endswith("other side") else hole
        for hole in piece.holes
    )
    return replace(pattern, pieces=(replace(piece, holes=moved),))


@pytest.mark.parametrize(("by", "verdict"), [(0.0, GOOD), (0.25, GOOD), (0.6, LOOK), (1.2, NO)])
def test_the_holes_of_both_sides_meet_once_folded(by: float, verdict: Verdict) -> None:
    found = finding(shifted(by), "stitches meet once folded, within")
    assert found.measured == pytest.approx(by, abs=1e-9)
    assert found.verdict is verdict


def test_a_hole_that_one_side_lacks_is_found() -> None:
    pattern = drafted(flapped())
    (piece,) = pattern.pieces
    fewer = tuple(hole for hole in piece.holes if (hole.seam, hole.index) != ("flap seam, other side", 5))
    lacking = replace(pattern, pieces=(replace(piece, holes=fewer),))
    found = finding(lacking, "holes missing on the other side")
    assert (found.measured, found.verdict) == (1, NO)
    assert not findings(pattern, "holes missing on the other side")


def test_both_sides_count_as_one_stack_and_as_one_seam_to_sew() -> None:
    pattern = drafted(flapped())
    assert [f.measured for f in findings(pattern, "thickest stack sewn through")] == pytest.approx([2.4, 2.4])
    order = sewing_order(layout(pattern, {leather.role: leather for leather in pattern.design.leathers}))
    assert [step.seam for step in order.steps] == ["flap seam"]


def test_a_seam_through_one_layer_on_each_side_joins_them() -> None:
    lining = LayerPart("lining", "inner", 0, 0)
    seams = (replace(RIM, over=(0, 0), along=RIM.along[:2]), replace(FLAP, through=("shell",)))
    pattern = drafted(wallet(shell(2), lining, widths=(100.0, 60.0), folds=(FoldSpec(),), seams=seams))
    assert not findings(pattern, "stitches in a row through one layer only", "flap seam")
