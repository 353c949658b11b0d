"""Windows and hardware as measured on the pieces: a case for each verdict of each measure."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.close import closed_wallet
from patternforge.fit.features import feature_findings
from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.layout import layout
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Design, Edge, Film, Opening, Spot
from tests.shapes_built import SNAP, WINDOW, strap_case, windowed


def findings(pattern: Pattern) -> list[Finding]:
    laid = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    return list(feature_findings(laid, closed_wallet(laid)))


def only(pattern: Pattern, what: str, where: str) -> Finding:
    (found,) = [f for f in findings(pattern) if (f.what, f.where) == (what, where)]
    return found


def with_piece(pattern: Pattern, piece: Piece) -> Pattern:
    """The pattern with one piece cut otherwise than drafted."""
    return replace(pattern, pieces=tuple(piece if each.name == piece.name else each for each in pattern.pieces))


def _bordered(height: float) -> Design:
    return windowed(Opening("window", Spot(0, None, (Edge.BOTTOM, 20.0)), 60.0, height, 4.0, 5.0))


@pytest.mark.parametrize(
    ("height", "border", "verdict"),
    # The middle lies 20 mm above the lower edge of the front piece, so the border is 20 - height / 2.
    [(26.0, 7.0, Verdict.GOOD), (32.0, 4.0, Verdict.LOOK), (36.0, 2.0, Verdict.NO)],
)
def test_the_border_of_an_opening_is_measured_to_the_nearest_edge(
    height: float, border: float, verdict: Verdict
) -> None:
    found = only(drafted(_bordered(height)), "border round an opening", "window in cards 1")
    assert found.measured == pytest.approx(border)
    assert found.verdict is verdict
    assert bool(found.remedy) is (verdict is not Verdict.GOOD)


@pytest.mark.parametrize(
    ("overlap", "verdict"), [(6.0, Verdict.GOOD), (3.0, Verdict.GOOD), (2.0, Verdict.LOOK), (0.5, Verdict.NO)]
)
def test_a_film_reaches_beyond_its_window(overlap: float, verdict: Verdict) -> None:
    opening = replace(WINDOW, film=Film("film", overlap, overlap / 2))
    found = only(drafted(windowed(opening)), "film beyond its window", "window film")
    assert found.measured == pytest.approx(overlap)
    assert found.verdict is verdict


@pytest.mark.parametrize(
    ("left", "room", "verdict"), [(14.0, 5.65, Verdict.GOOD), (7.0, 0.65, Verdict.LOOK), (6.0, -0.35, Verdict.NO)]
)
def test_a_cap_stays_inside_the_edge(left: float, room: float, verdict: Verdict) -> None:
    # The strap is 24 mm wide, so the snap of 12.7 mm leaves 12 - 6.35 mm beside it and left - 6.35 mm at its end.
    fitting = replace(SNAP, spot=Spot(0, (Edge.LEFT, left)))
    found = only(drafted(strap_case(fittings=(fitting,))), "cap clear of the edge", "closure in strap")
    assert found.measured == pytest.approx(room)
    assert found.verdict is verdict


@pytest.mark.parametrize(("off", "verdict"), [(7.0, Verdict.GOOD), (6.6, Verdict.LOOK), (6.0, Verdict.NO)])
def test_a_cap_stays_off_the_stitches(off: float, verdict: Verdict) -> None:
    pattern = drafted(strap_case())
    shell = pattern.piece("shell")
    hole = shell.holes[0]
    moved = replace(shell.fittings[0], at=hole.at + Point(0.0, off))
    cut = with_piece(pattern, replace(shell, fittings=(moved,), holes=(hole,)))
    found = only(cut, "cap clear of stitches", "closure in shell")
    assert found.measured == pytest.approx(off - 6.35)
    assert found.verdict is verdict


@pytest.mark.parametrize(
    ("off", "verdict"),
    [(0.0, Verdict.GOOD), (0.29, Verdict.GOOD), (0.5, Verdict.LOOK), (1.2, Verdict.NO)],
)
def test_halves_that_miss_each_other_are_told(off: float, verdict: Verdict) -> None:
    pattern = drafted(strap_case())
    strap = pattern.piece("strap")
    hole = strap.fittings[0]
    moved = replace(hole, at=translation(off, 0.0).point(hole.at))
    found = only(with_piece(pattern, replace(strap, fittings=(moved,))), "halves meet within", "closure")
    assert found.measured == pytest.approx(off, abs=1e-9)
    assert found.verdict is verdict
    assert bool(found.remedy) is (verdict is not Verdict.GOOD)


def test_a_fitting_of_one_half_meets_nothing() -> None:
    alone = drafted(strap_case(fittings=(replace(SNAP, meets=""),)))
    assert not any(found.what == "halves meet within" for found in findings(alone))
