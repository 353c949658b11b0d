"""Magnets hidden behind a lining: their cover, what lies between them, how far they stand proud.

A flap of 40 mm folds over a panel of 100 mm: shell 1.2 mm, lining 0.8 mm, magnets of 10 x 1 mm between the two.
"""

from __future__ import annotations

from dataclasses import replace
from math import hypot
from typing import Any

import pytest

from patternforge.fit.findings import Finding, Verdict
from patternforge.leather.hardware import Setting
from patternforge.leather.material import MadeOf
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, Fitting, FoldSpec, Held, LayerPart, Opening, Spot
from tests.unit.fit.found import GOOD, LOOK, NO, SHARP, finding, findings
from tests.unit.wallet.built import leather, shell, wallet

LINING = LayerPart("lining", "inner", 0, 1)
MAGNET = Fitting(
    "closure",
    "hidden-magnet-10",
    "lining",
    Spot(0, (Edge.LEFT, 12.0)),
    (0.0, 0.0),
    5.0,
    "lining",
    1,
    setting=Setting.COVERED,
    thickness=1.0,
)
COVER, BETWEEN = "cover beyond hidden hardware", "what lies between hidden halves, closed"
PROUD, DRAWN = "hidden hardware stands proud, closed", "drawn short by hidden hardware"


def flap(*parts: LayerPart, magnet: Fitting = MAGNET, **changes: Any) -> Pattern:
    sizes: dict[str, Any] = {"widths": (40.0, 100.0), "folds": (FoldSpec(relief=2.0),), "seams": (SHARP,)}
    return drafted(wallet(*(parts or (shell(2), LINING)), **{**sizes, "fittings": (magnet,), **changes}))


def seen(found: Finding) -> tuple[float, Verdict]:
    assert bool(found.remedy) is (found.verdict is not GOOD)
    return round(found.measured, 6), found.verdict


def at(left: float) -> Fitting:
    return replace(MAGNET, spot=Spot(0, (Edge.LEFT, left)))


def covers(magnet: Fitting, *parts: LayerPart, **changes: Any) -> list[tuple[float, Verdict]]:
    """The cover of the first and of the second half."""
    return [seen(found) for found in findings(flap(*parts, magnet=magnet, **changes), COVER)]


@pytest.mark.parametrize(("left", "beyond", "verdict"), [(6.0, 1.0, GOOD), (5.5, 0.5, LOOK), (4.5, -0.5, NO)])
def test_the_cover_reaches_round_a_magnet(left: float, beyond: float, verdict: Verdict) -> None:
    # The shell ends at the left edge; the other half lies far from any.
    first, second = covers(at(left))
    assert first == (beyond, verdict)
    assert second[1] is GOOD


@pytest.mark.parametrize(("off", "beyond", "verdict"), [(8.0, 1.0, GOOD), (0.0, -7.0, NO)])
def test_an_opening_in_the_cover_is_no_cover(off: float, beyond: float, verdict: Verdict) -> None:
    hole = Opening("hole", Spot(0, (Edge.LEFT, 12.0), (Edge.BOTTOM, 40.0 + off)), 4.0, 4.0, 2.0)
    assert covers(MAGNET, shell(2, openings=(hole,)), LINING)[0] == (beyond, verdict)


def test_a_magnet_with_nothing_behind_it_or_a_clear_sheet_alone_is_seen() -> None:
    """Bare from rim to rim: the cover falls short of the rim by all of its reach."""
    assert covers(MAGNET, shell(2, first=1), LINING)[0] == (-5.0, NO)
    film = (replace(leather("outer", 1.2), made_of=MadeOf.FILM), leather("inner", 0.8))
    assert covers(MAGNET, shell(2), LINING, leathers=film) == [(-5.0, NO), (-5.0, NO)]


def test_a_magnet_in_the_room_of_a_card_wants_a_look() -> None:
    """Cards lie between the lining and the shell of both panels."""
    pattern = flap(shell(2), replace(LINING, holds=(Held("card", 2),)))
    found = findings(pattern, "hidden hardware beside card")
    assert [(each.measured, each.verdict) for each in found] == [(2.0, LOOK)] * 2
    assert findings(flap(), "hidden hardware beside card") == []


@pytest.mark.parametrize(("inner", "between", "verdict"), [(0.8, 1.6, GOOD), (1.0, 2.0, GOOD), (1.2, 2.4, LOOK)])
def test_two_linings_lie_between_the_halves(inner: float, between: float, verdict: Verdict) -> None:
    pattern = flap(leathers=(leather("outer", 1.2), leather("inner", inner)))
    assert seen(finding(pattern, BETWEEN)) == (between, verdict)


def test_behind_the_shell_of_the_second_half_its_lining_lies_between_twice() -> None:
    # The flap's half lies behind its lining; the other behind the shell, which shows outside, over its lining.
    pattern = flap(magnet=replace(MAGNET, meets="shell"))
    assert seen(finding(pattern, BETWEEN)) == (1.6, GOOD)


@pytest.mark.parametrize(("thickness", "verdict"), [(0.5, GOOD), (1.0, GOOD), (1.5, LOOK)])
def test_both_magnets_stand_proud_of_a_wallet_of_one_thickness(thickness: float, verdict: Verdict) -> None:
    pattern = flap(magnet=replace(MAGNET, thickness=thickness))
    assert seen(finding(pattern, PROUD)) == (2 * thickness, verdict)


def test_magnets_where_the_wallet_is_thin_stand_less_proud() -> None:
    """A card of 1 mm lies behind a patch at the lower edge: it is 1.8 mm thicker there than where the magnets are."""
    patch = LayerPart(
        "patch", "inner", 1, 1, inset=((Edge.TOP, 60.0), (Edge.LEFT, 40.0)), holds=(Held("card", 1),), drop=1.0
    )
    proud = finding(
        flap(shell(2), LINING, patch, magnet=replace(MAGNET, spot=Spot(0, (Edge.LEFT, 12.0), (Edge.TOP, 10.0)))),
        PROUD,
    )
    assert proud.measured == pytest.approx(0.2)


@pytest.mark.parametrize(("left", "thickness", "verdict"), [(12.0, 1.0, GOOD), (34.9, 1.5, LOOK), (34.9, 3.0, NO)])
def test_leather_that_rises_over_magnets_near_the_fold_is_drawn_short(
    left: float, thickness: float, verdict: Verdict
) -> None:
    # 28 or 5.1 mm from the fold the flap climbs twice the thickness of a magnet.
    away, rise = 40.0 - left, 2 * thickness
    found = finding(flap(magnet=replace(at(left), thickness=thickness)), DRAWN)
    assert found.measured == pytest.approx(hypot(away, rise) - away)
    assert seen(found)[1] is verdict


def test_a_half_that_meets_none_is_judged_by_its_cover_alone() -> None:
    pattern = flap(magnet=replace(MAGNET, meets=""))
    assert len(findings(pattern, COVER)) == 1
    assert findings(pattern, BETWEEN) == findings(pattern, PROUD) == findings(pattern, DRAWN) == []


def test_the_halves_are_judged_as_any_hardware_is_too() -> None:
    pattern = flap(magnet=at(5.5))
    assert finding(pattern, "halves meet within").measured == pytest.approx(0.0, abs=1e-9)
    edges = findings(pattern, "cap clear of the edge")
    assert [round(found.measured, 6) for found in edges] == [0.5, 35.0]
    assert [found.verdict for found in edges] == [LOOK, GOOD]
