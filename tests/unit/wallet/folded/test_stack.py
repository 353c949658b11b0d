"""What lies in the folds of a folded wallet and how long that makes them: values reckoned by hand."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.wallet.assemble import drafted
from patternforge.wallet.folded.pattern import DraftedHinge
from patternforge.wallet.folded.spec import FaceSpec, FoldedSpec, RoomSpec
from patternforge.wallet.spec import Design, Load, Lying
from tests.folded_built import design_of, envelope, flap, of_leather, with_folded

CARD = 0.76


def hinges(design: Design) -> dict[str, DraftedHinge]:
    folded = drafted(design).folded
    assert folded is not None
    return {hinge.face: hinge for hinge in folded.hinges}


def test_a_fold_goes_round_the_items_and_the_flaps_beside_it() -> None:
    found = hinges(envelope(t=1.0, cards=2))
    # Wings on two cards; the front on cards and, in its corners, a wing; the lid on cards and a wing, for the front
    # ends 20 mm short of it.
    assert found["left"].gap.value == pytest.approx(2 * CARD)
    assert found["front"].gap.value == pytest.approx(2 * CARD + 1.0)
    assert found["lid"].gap.value == pytest.approx(2 * CARD + 1.0)
    assert {term.label for term in found["left"].gap.terms} == {"2 x card"}


def test_a_flap_over_the_front_near_its_fold_counts_the_front_too() -> None:
    specs = envelope().folded
    assert specs is not None
    high = tuple(
        replace(f, hinge=replace(f.hinge, reach=50.0)) if f.name == "front" and f.hinge else f for f in specs.faces
    )
    assert hinges(with_folded(envelope(), faces=high))["lid"].gap.value == pytest.approx(2 * CARD + 2.0)


def test_its_length_is_half_a_turn_of_half_the_gap_and_the_fibre() -> None:
    found = hinges(envelope(t=1.2, cards=3))["left"]
    assert found.radius == pytest.approx(3 * CARD / 2)
    assert found.length == pytest.approx(pi * (3 * CARD / 2 + 0.6))


def test_leather_bends_no_sharper_than_it_can() -> None:
    found = hinges(envelope(t=1.2, cards=1))["left"]
    assert found.radius == pytest.approx(0.6)
    assert found.length == pytest.approx(pi * 1.2)


def test_an_empty_wallet_folds_round_its_leather_alone() -> None:
    found = hinges(replace(envelope(t=2.0, cards=4), load=Load(cards=0.0)))
    assert found["left"].gap.terms == ()
    assert found["front"].gap.value == pytest.approx(2.0)


def test_thicker_leather_lengthens_a_fold_by_its_own_fibre_and_by_what_lies_in_it() -> None:
    thin, thick = hinges(envelope(1.0, 4)), hinges(of_leather(envelope(1.0, 4), 1.5))
    assert thick["left"].length - thin["left"].length == pytest.approx(pi * 0.25)
    assert thick["front"].length - thin["front"].length == pytest.approx(pi * (0.25 + 0.25))


def book(reach: float) -> Design:
    """Two faces of cards closed like a book over a tongue of that reach, which hangs on the left one's outer edge."""
    folded = FoldedSpec(
        "main",
        (
            FaceSpec("left", width=60.0, height=90.0),
            flap("right", "left", "right", 60.0),
            flap("pocket", "left", "bottom", 50.0, inset={"left": 2.0, "right": 2.0}),
            flap("other pocket", "right", "bottom", 50.0, inset={"left": 2.0, "right": 2.0}),
            flap("tongue", "left", "left", reach, inset={"top": 50.0}),
        ),
        ("pocket", "other pocket", "tongue", "right"),
        (
            RoomSpec("cards", ("left", "pocket"), "card", 2, Lying.UPRIGHT),
            RoomSpec("more cards", ("right", "other pocket"), "card", 3, Lying.UPRIGHT),
        ),
    )
    return design_of(folded)


def test_what_stiff_items_on_both_sides_press_upon_counts_wherever_it_lies() -> None:
    # The tongue ends 40 mm off the spine, but cards cannot bend over it.
    assert hinges(book(20.0))["right"].gap.value == pytest.approx(5 * CARD + 3 * 1.0)


def test_without_items_only_what_lies_near_the_fold_counts() -> None:
    empty = replace(book(20.0), load=Load(cards=0.0))
    assert hinges(empty)["right"].gap.value == pytest.approx(2 * 1.0)
    near = replace(book(50.0), load=Load(cards=0.0))
    assert hinges(near)["right"].gap.value == pytest.approx(3 * 1.0)
