"""Sizes that depend on each other, settled: room for whole stitches, whole pitches of an iron."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.errors import DraftError
from patternforge.wallet import settle
from patternforge.wallet.pattern import Sum
from patternforge.wallet.settle import Settled, settled_sizes
from patternforge.wallet.spec import BankPart, CornerStyle, Edge, FoldSpec, Mode, PocketPart, SeamSpec, Stitching
from tests.unit.wallet.built import RIM, bank, pocket, shell, wallet

IRON = Stitching(pitch=4.0, mode=Mode.IRON)
SHARP = replace(RIM, end=4.0, corners=CornerStyle.SHARP)
ROUND = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)


def terms(size: Sum) -> dict[str, float]:
    return {term.label: round(term.value, 6) for term in size.terms}


def moves(found: Settled) -> list[tuple[str, str, float, float, str]]:
    return [(m.part, m.size, m.asked, round(m.drafted, 6), m.reason) for m in found.adjustments]


def settled(*parts: BankPart, seam: SeamSpec = SHARP, height: float | None = None) -> Settled:
    return settled_sizes(wallet(shell(1), *parts, seams=(seam,), height=height))


def test_a_body_of_declared_sizes_stays_as_it_is() -> None:
    found = settled(bank(), height=80.0)
    assert (found.body.width, found.body.height) == (100.0, 80.0)
    assert found.adjustments == ()
    assert found.spacings == {"shell": 4.0, "bank": pytest.approx(4.0)}


def test_a_body_that_fits_its_cards_grows_with_a_step_that_grew() -> None:
    # Steps of 11 come to three stitches of nearly 4, so the body is higher than the 4 + 22 + 50 + 3 it began with.
    part = bank(exact=("show", "overlap"), step=11.0)
    found = settled(part)
    (drafted,) = (p for p in found.design.parts if isinstance(p, BankPart))
    assert 11.0 < drafted.step < 12.5
    assert found.height.value >= 4 + 2 * drafted.step + 50 + 3 - 1e-6
    rim = found.runs["rim"][0].anchors
    stitches = round((rim[1].at - rim[0].at) / 4.0)
    assert drafted.step == pytest.approx(3 * (rim[1].at - rim[0].at) / stitches)


def test_room_that_was_needed_on_the_way_is_told_as_such() -> None:
    found = settled(bank(exact=("show", "overlap"), step=11.0))
    assert found.height.value == pytest.approx(sum(terms(found.height).values()), abs=1e-5)
    assert set(terms(found.height)) >= {"margin at the bottom", "steps", "card across", "headroom"}


def test_an_iron_makes_the_body_as_large_as_whole_pitches_between_corners() -> None:
    # Loop at 4 mm: 92 are 23 pitches; 73 high: 65 are 16 pitches and 1, so 3 mm more.
    found = settled_sizes(
        wallet(shell(1), seams=(replace(SHARP, along=ROUND, stitching=IRON),), widths=(98.0,), height=73.0)
    )
    # 98 wide: 90 between the corners are 22.5 pitches, so 2 mm more.
    assert (found.body.width, found.body.height) == pytest.approx((100.0, 76.0))
    assert moves(found) == [
        ("P0", "width", 98.0, 100.0, "to whole pitches of the iron"),
        ("body", "height", 73.0, 76.0, "to whole pitches of the iron"),
    ]
    assert terms(found.height) == {"declared": 73.0, "to whole pitches of the iron": 3.0}


def test_an_iron_counts_between_the_corners_of_an_open_rim_too() -> None:
    # 90 mm between its two corners: 2 mm wider; the height has one corner only on either side.
    found = settled_sizes(wallet(shell(1), seams=(replace(SHARP, stitching=IRON),), widths=(98.0,), height=73.0))
    assert (found.body.width, found.body.height) == pytest.approx((100.0, 73.0))


def test_an_iron_leaves_the_width_of_a_folded_body_alone() -> None:
    iron = replace(SHARP, stitching=IRON)
    found = settled_sizes(wallet(shell(2), seams=(iron,), widths=(97.0, 97.0), folds=(FoldSpec(),), height=73.0))
    assert [panel.width.value for panel in found.body.panels] == [97.0, 97.0]
    # The height has no corner at the top to meet: the seam just ends short of it.
    assert found.body.height == 73.0


def test_a_steps_own_spacing_is_that_of_the_seam_beside_it() -> None:
    # 71 mm from end to corner (end 5): 18 stitches of 71 / 18.
    found = settled(bank(), seam=replace(SHARP, end=5.0), height=80.0)
    assert found.spacings["bank"] == pytest.approx(71 / 18)


def test_the_settled_design_carries_the_sizes_that_moved() -> None:
    found = settled_sizes(wallet(shell(1), pocket(exact=(), depth=41.0), seams=(SHARP,)))
    part = found.design.parts[1]
    assert isinstance(part, PocketPart)
    assert part.depth == pytest.approx(42.0)
    assert moves(found) == [("pocket", "depth", 41.0, 42.0, "to whole stitches")]


def test_settling_again_moves_nothing() -> None:
    once = settled_sizes(wallet(shell(1), bank(exact=(), step=11.0), seams=(SHARP,), height=90.0))
    again = settled_sizes(once.design)
    assert once.adjustments
    assert again.adjustments == ()


def test_sizes_that_do_not_settle_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    # One round finds the steps; a second would find the height that goes with them.
    monkeypatch.setattr(settle, "_ROUNDS", 1)
    with pytest.raises(DraftError, match=r"small\.yaml: the sizes do not settle .* keep under 'exact'"):
        settled(bank(exact=("show", "overlap"), step=11.0))
