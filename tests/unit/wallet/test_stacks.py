"""What lies over a panel, ply by ply."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.wallet.parts import panel_plies
from patternforge.wallet.spec import BankShape, Edge, FoldSpec, Held, LayerPart, Load, Lying, Part, Side
from patternforge.wallet.stacks import (
    held_panels,
    inside_of,
    item_intervals,
    item_size,
    most_over_each_other,
    outside_of,
)
from tests.unit.wallet.built import bank, pocket, shell, wallet


def thicknesses(*parts: Part, panel: int = 0) -> list[tuple[str, float]]:
    folds = (FoldSpec(),)
    plies = panel_plies(wallet(*parts, widths=(100.0, 100.0), folds=folds), panel)
    return [(ply.term.label, round(ply.term.value, 6)) for ply in plies]


def test_plies_stand_from_the_outside_in_with_notes_before_their_divider() -> None:
    divider = LayerPart("divider", "inner", 0, 1, holds=(Held("note", 5), Held("card", 1)))
    outer = pocket(name="front", facing=Side.OUTSIDE)
    assert thicknesses(outer, shell(2), divider, pocket()) == [
        ("front (inner)", 0.8),
        ("1 x card", 1.0),
        ("shell (outer)", 1.2),
        ("5 x note", 0.5),
        ("1 x card", 1.0),
        ("divider (inner)", 0.8),
        ("1 x card", 1.0),
        ("pocket (inner)", 0.8),
    ]


def test_a_panel_bears_only_the_parts_that_lie_on_it() -> None:
    only_right = LayerPart("divider", "inner", 1, 1)
    assert thicknesses(shell(2), only_right, pocket(), panel=0) == [
        ("shell (outer)", 1.2),
        ("1 x card", 1.0),
        ("pocket (inner)", 0.8),
    ]
    assert thicknesses(shell(2), only_right, pocket(), panel=1) == [("shell (outer)", 1.2), ("divider (inner)", 0.8)]


@pytest.mark.parametrize(
    ("opening", "on_left", "on_right"),
    [(Edge.TOP, True, True), (Edge.BOTTOM, True, True), (Edge.LEFT, True, False), (Edge.RIGHT, False, True)],
)
def test_held_items_lie_on_every_panel_or_on_the_one_at_the_opening(
    opening: Edge, on_left: bool, on_right: bool
) -> None:
    divider = LayerPart("divider", "inner", 0, 1, opening=opening, holds=(Held("note", 5),))
    for panel, expected in ((0, on_left), (1, on_right)):
        assert (panel in held_panels(divider)) is expected
        assert (("5 x note", 0.5) in thicknesses(shell(2), divider, panel=panel)) is expected


@pytest.mark.parametrize(
    ("step", "shape", "pieces", "cards"),
    # Cards 50 high, standing out by 10; tee stems begin 4 mm below their floors.
    [
        (10.0, BankShape.TEE, 3, 3),  # all three lie over each other between 20 and 40
        (30.0, BankShape.TEE, 2, 2),  # the second tee stands from 26 on, the first pocket to 40: two and two cards
        (46.0, BankShape.TEE, 1, 2),  # tees from 42 on, pockets to 40: never two; cards to 50, from 46 on two
        (30.0, BankShape.FULL, 3, 2),  # full pieces run to the bottom: between 30 and 40 all three, with two cards
    ],
)
def test_a_bank_counts_pieces_and_cards_where_both_stand_highest(
    step: float, shape: BankShape, pieces: int, cards: int
) -> None:
    plies = thicknesses(shell(2), bank(step=step, shape=shape))
    assert plies[1:] == [
        (f"{pieces} x bank (inner)", round(pieces * 0.8, 6)),
        (f"{cards} x card", cards * 1.0),
    ]


@pytest.mark.parametrize(("share", "pieces", "cards"), [(0.25, "2", "0.25"), (0.5, "2", "0.5"), (1.0, "1", "2")])
def test_where_a_bank_is_highest_depends_on_its_load(share: float, pieces: str, cards: str) -> None:
    # Steps of 40: from 36 to 40 two pieces and one card, 1.6 + share; from 40 to 50 one and two, 0.8 + 2 share.
    design = wallet(shell(2), bank(step=40.0, slots=2), widths=(100.0, 100.0), folds=(FoldSpec(),), height=140.0)
    loaded = replace(design, load=Load(share, 1.0))
    labels = [ply.term.label for ply in panel_plies(loaded, 0)][1:]
    assert labels == [f"{pieces} x bank (inner)", f"{cards} x card"]


def test_a_layer_knows_what_lies_on_either_side_of_it() -> None:
    divider = LayerPart("divider", "inner", 0, 1, holds=(Held("note", 5),))
    plies = panel_plies(wallet(shell(2), divider, pocket(), widths=(100.0, 100.0), folds=(FoldSpec(),)), 0)
    assert [term.label for term in outside_of(plies, "divider")] == ["shell (outer)", "5 x note"]
    assert [term.label for term in inside_of(plies, "divider")] == ["1 x card", "pocket (inner)"]


def test_an_item_lies_with_its_longer_side_along_the_mouth_or_stands_on_it() -> None:
    design = wallet(shell(1), bank())
    assert item_size(bank(), design) == (80.0, 50.0)
    assert item_size(bank(lying=Lying.UPRIGHT), design) == (50.0, 80.0)
    assert item_intervals(bank(), design) == ((0.0, 50.0), (10.0, 60.0), (20.0, 70.0))


@pytest.mark.parametrize(
    ("intervals", "most"),
    [((), 0), (((0, 1),), 1), (((0, 1), (1, 2)), 1), (((0, 2), (1, 3)), 2), (((0, 9), (1, 2), (3, 4)), 2)],
)
def test_the_most_over_each_other_share_more_than_an_end(
    intervals: tuple[tuple[float, float], ...], most: int
) -> None:
    assert most_over_each_other(intervals) == most
