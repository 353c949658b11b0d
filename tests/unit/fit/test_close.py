"""The closed wallet reckoned by hand: stacks of panels, what each layer needs round each fold."""

from __future__ import annotations

from math import pi
from typing import Any

import pytest

from patternforge.fit.close import Bend, ClosedWallet, closed_wallet
from patternforge.fit.layout import layout
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, EdgeShape, FoldSpec, Held, LayerPart, SeamSpec, Side
from tests.unit.fit.found import small
from tests.unit.wallet.built import bank, leather, pocket, shell

TWO = (100.0, 100.0)
THREE = (100.0, 100.0, 100.0)
FOLD = FoldSpec(relief=5.0)


def closed(pattern: Pattern, **leathers: Leather) -> ClosedWallet:
    own = {each.role: each for each in pattern.design.leathers}
    return closed_wallet(layout(pattern, own | leathers))


def needs(bends: tuple[Bend, ...]) -> dict[str, float]:
    return {bend.piece: bend.needs / pi for bend in bends}


def test_a_panel_is_as_high_as_its_highest_stack() -> None:
    # Shell 1.2; a pocket 0.8 and its card 1.0 on the left; three pieces and three cards on the right.
    pattern = small(shell(2), pocket(), bank(panel=1), widths=TWO, folds=(FOLD,))
    found = closed(pattern)
    assert found.heights == pytest.approx((1.2 + 1.8, 1.2 + 3 * 1.8))
    assert found.thickness == pytest.approx(3.0 + 6.6)


def test_cards_that_do_not_lie_over_each_other_do_not_add_up() -> None:
    # Steps of 50: below the second pocket's foot at 50 one piece and one card; above, one of each as well.
    pattern = small(shell(2), bank(slots=2, step=50.0), widths=TWO, folds=(FOLD,), height=130.0)
    assert closed(pattern).heights[0] == pytest.approx(1.2 + 1.8)


def test_cards_that_lie_over_each_other_for_a_little_add_up_there() -> None:
    # Steps of 46: from 46 to 50 two cards and the second piece, which stands from 42 on.
    pattern = small(shell(2), bank(slots=2, step=46.0), widths=TWO, folds=(FOLD,), height=130.0)
    assert closed(pattern).heights[0] == pytest.approx(1.2 + 0.8 + 2.0)


@pytest.mark.parametrize(("inset", "radius"), [(14.9, 1.0), (15.1, 0.6)])
@pytest.mark.parametrize("tongue", [0, 1])
def test_a_lining_that_a_tongue_folded_back_does_not_reach_is_not_gone_round(
    tongue: int, inset: float, radius: float
) -> None:
    # A tongue of 20 mm; the lining of 2 mm ends its inset and 5 mm of relief from the bend. Bare, 0.6 is the least.
    near, far = (Edge.LEFT, Edge.RIGHT)[tongue], (Edge.RIGHT, Edge.LEFT)[tongue]
    lining = LayerPart("lining", "inner", 1 - tongue, 1 - tongue, inset=((near, inset),))
    rim = SeamSpec("rim", (far,), margin=4.0, end=4.0, through=("shell", "lining"))
    widths = (100.0, 20.0) if tongue else (20.0, 100.0)
    pattern = small(shell(2), lining, widths=widths, folds=(FOLD,), seams=(rim,))
    ((bend,),) = closed(pattern, inner=leather("inner", 2.0)).bends
    assert bend.fibre_radius == pytest.approx(radius + 0.6)


TENTHS = [(width / 10, relief / 10) for width in range(151, 250, 3) for relief in (20, 28, 41)]


@pytest.mark.parametrize(("width", "relief"), TENTHS)
def test_drafting_and_fit_agree_on_a_lining_that_ends_where_the_tongue_does(width: float, relief: float) -> None:
    lining = LayerPart("lining", "inner", 1, 1, inset=((Edge.LEFT, width - relief),))
    assert over(lining, width, relief) == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize(
    "how",
    [
        {"shapes": ((Edge.LEFT, EdgeShape(bow=3.0)),), "inset": ((Edge.LEFT, 16.0),)},
        {"trim": ((Edge.LEFT, 2.0),), "inset": ((Edge.LEFT, 16.0),)},
        {"opening": Edge.LEFT, "drop": 40.0},
        {"inset": ((Edge.LEFT, 14.9),)},
        {"inset": ((Edge.LEFT, 15.1),)},
    ],
    ids=["bowed", "trimmed", "lowered", "reached", "beyond"],
)
def test_a_fold_is_as_long_as_it_needs_however_the_lining_beside_it_ends(how: dict[str, Any]) -> None:
    assert over(LayerPart("lining", "inner", 1, 1, **how), 20.0, 5.0) == pytest.approx(0.0, abs=1e-6)


def over(lining: LayerPart, width: float, relief: float) -> float:
    """What the shell has in the fold more than it needs, mm, with a tongue of that width beside a lining of 2 mm."""
    rim = SeamSpec("rim", (Edge.RIGHT,), margin=4.0, end=4.0, through=("shell", "lining"))
    leathers = (leather("outer", 1.2), leather("inner", 2.0))
    folds = (FoldSpec(relief=relief),)
    pattern = small(shell(2), lining, widths=(width, 100.0), folds=folds, seams=(rim,), leathers=leathers)
    ((bend,),) = closed(pattern, inner=leathers[1]).bends
    return bend.has - bend.needs


def test_each_layer_needs_a_half_circle_of_its_fibre() -> None:
    # Divider: 3.6 between its flanks, radius 1.8, fibre at 2.2. Shell: besides 2 x (0.8 + 0.4): radius 3, fibre 3.6.
    divider = LayerPart("divider", "inner", 0, 1, holds=(Held("note", 4),))
    parts = (shell(2), divider, pocket(), pocket(name="right", panel=1))
    pattern = small(*parts, widths=TWO, folds=(FOLD,))
    (bends,) = closed(pattern).bends
    assert [bend.piece for bend in bends] == ["divider", "shell"]
    assert needs(bends) == {"divider": pytest.approx(2.2), "shell": pytest.approx(3.6)}
    assert [bend.has for bend in bends] == pytest.approx([bend.needs for bend in bends])
    assert [bend.room for bend in bends] == pytest.approx([1.8, 3.0])


def test_thicker_leather_needs_more_but_has_no_more() -> None:
    parts = (shell(2), LayerPart("lining", "inner", 0, 1))
    pattern = small(*parts, widths=TWO, folds=(FOLD,))
    (bends,) = closed(pattern, inner=leather("inner", 1.6)).bends
    # Lining: smallest radius 0.8, fibre 1.6; shell round it: 0.8 + 1.6 + 0.6 = 3.0. Drafted for 0.8 and 1.8.
    assert needs(bends) == {"lining": pytest.approx(1.6), "shell": pytest.approx(3.0)}
    assert [bend.has / pi for bend in bends] == pytest.approx([0.8, 1.8])


@pytest.mark.parametrize(
    ("order", "radii"),
    # One pocket with a card on each panel: 1.8; a panel folded in besides is 3.0 thick.
    [((1, 2), (1.8, 3.3)), ((2, 1), (3.3, 1.8))],
)
def test_a_panel_folded_in_stands_in_the_fold_that_closes_over_it(
    order: tuple[int, ...], radii: tuple[float, float]
) -> None:
    pockets = [pocket(name=f"on {panel}", panel=panel) for panel in range(3)]
    pattern = small(shell(3), *pockets, widths=THREE, folds=(FOLD, FOLD), closing=order)
    found = closed(pattern)
    assert [needs(bends)["shell"] - 0.6 for bends in found.bends] == pytest.approx(radii)
    assert found.thickness == pytest.approx(9.0)


def test_where_outsides_meet_the_inside_counts_for_nothing() -> None:
    outside = [pocket(name=f"on {panel}", panel=panel, facing=Side.OUTSIDE) for panel in range(2)]
    pattern = small(*outside, shell(2), pocket(), widths=TWO, folds=(FoldSpec(-180, relief=5.0),))
    (bends,) = closed(pattern).bends
    assert needs(bends) == {"shell": pytest.approx(1.8 + 0.6)}


def test_at_a_corner_only_the_crossing_layers_count() -> None:
    lining = LayerPart("lining", "inner", 0, 1)
    pattern = small(shell(2), lining, pocket(), widths=TWO, folds=(FoldSpec(90, relief=5.0),))
    (bends,) = closed(pattern).bends
    # A quarter turn: 0.8 and 1.8 of pi / 2; the panels do not come to lie on each other.
    assert needs(bends) == {"lining": pytest.approx(0.4), "shell": pytest.approx(0.9)}
    assert closed(pattern).thickness == pytest.approx(closed(pattern).heights[0])


def test_a_stiff_layer_keeps_its_radius_and_the_shell_goes_round_it() -> None:
    stiff = leather("inner", 0.8, min_radius=2.0)
    parts = (shell(2), LayerPart("lining", "inner", 0, 1))
    pattern = small(*parts, widths=TWO, folds=(FOLD,), leathers=(leather("outer", 1.2), stiff))
    (bends,) = closed(pattern).bends
    assert needs(bends) == {"lining": pytest.approx(1.6 + 0.4), "shell": pytest.approx(2.4 + 0.6)}
    assert [(bend.room, bend.smallest) for bend in bends] == [
        pytest.approx((0.0, 1.6)),
        pytest.approx((2.4, 0.6)),
    ]


def test_what_a_fold_goes_round_stands_in_the_room_of_its_layer() -> None:
    pattern = small(shell(2), widths=TWO, folds=(FoldSpec(relief=5.0, around=3.0),))
    (bends,) = closed(pattern).bends
    # Wire of 3 mm: radius 1.5, fibre of 1.2 mm of leather at 1.5 + 0.6.
    assert needs(bends) == {"shell": pytest.approx(2.1)}
    assert [bend.room for bend in bends] == pytest.approx([1.5])
    assert [bend.has for bend in bends] == pytest.approx([2.1 * pi])
