"""Nominal sizes moved to whole stitches, on a panel whose stitches are easy to count.

The rim goes down from 76 (end 4 at height 80) to 4, sharp at its corner: 72 mm are 18 stitches of 4. Holes stand at
4, 8, 12 ... 76, so places midway are 6, 10, 14 ... 74.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.wallet.run import declared_runs
from patternforge.wallet.spec import (
    BankPart,
    CornerStyle,
    Edge,
    FoldSpec,
    LayerPart,
    MouthShape,
    MouthSpec,
    Part,
    PocketPart,
    SeamSpec,
)
from patternforge.wallet.whole import Fitted, fitted_to_stitches
from tests.unit.wallet.built import RIM, bank, body_of, pocket, shell, wallet

SHARP = replace(RIM, end=4.0, corners=CornerStyle.SHARP)


def fitted(part: Part, seam: SeamSpec = SHARP, panels: int = 1) -> Fitted:
    parts = (shell(panels), part)
    design = wallet(*parts, widths=(100.0,) * panels, folds=(FoldSpec(relief=5.0),) * (panels - 1), seams=(seam,))
    body = body_of(design)
    return fitted_to_stitches(design, body, {seam.name: declared_runs(design, body, seam)}, part)


def moved(found: Fitted) -> dict[str, tuple[float, float]]:
    """Asked and drafted size, to a micrometre."""
    assert {move.reason for move in found.adjustments} <= {"to whole stitches"}
    return {move.size: (move.asked, round(move.drafted, 3)) for move in found.adjustments}


@pytest.mark.parametrize(("depth", "drafted"), [(40.1, 42.0), (42.0, 42.0), (43.9, 42.0), (37.0, 38.0), (36.1, 38.0)])
def test_a_pocket_moves_its_mouth_to_the_nearest_place_midway(depth: float, drafted: float) -> None:
    # Mouth at 4 + depth: 44.1 and 47.9 go to 46, 41 and 40.1 to 42.
    found = fitted(pocket(depth=depth, exact=()))
    assert isinstance(found.part, PocketPart)
    assert found.part.depth == pytest.approx(drafted)
    assert found.spacing == pytest.approx(4.0)


def test_a_bank_moves_step_overlap_and_show() -> None:
    # Step 11 is nearest to three stitches, overlap 9 to two; the mouth of slot 1 at 4 + 50 - 11 = 43 goes to 42.
    found = fitted(bank(exact=(), step=11.0, show=11.0, overlap=9.0))
    assert isinstance(found.part, BankPart)
    assert moved(found) == {
        "step": (11.0, 12.0),
        "overlap": (9.0, 8.0),
        "show": (11.0, 12.0),
    }


def test_exact_sizes_stay_and_are_not_reported() -> None:
    found = fitted(bank())
    assert found.part == bank()
    assert found.adjustments == ()
    assert fitted(pocket()).part == pocket()


def test_an_exact_step_shares_its_own_length_among_the_stitches_of_the_overlap() -> None:
    found = fitted(bank(exact=("step", "show"), step=9.0, overlap=8.0))
    assert isinstance(found.part, BankPart)
    # 9 mm are nearest to two stitches of 4.5: overlap 8 to 9.
    assert (found.part.step, found.part.overlap) == pytest.approx((9.0, 9.0))


def test_a_single_slot_has_no_step_to_move() -> None:
    found = fitted(bank(slots=1, exact=(), step=11.0, show=12.0, overlap=9.0))
    assert found.adjustments == ()


@pytest.mark.parametrize(("drop", "drafted"), [(11.0, 10.0), (12.5, 14.0), (9.0, 10.0), (6.0, 6.0)])
def test_a_lowered_layer_meets_the_rim_midway(drop: float, drafted: float) -> None:
    # Its edge at 80 - drop: 69 goes up to 70, 67.5 down to 66, 71 to 70.
    found = fitted(LayerPart("divider", "inner", 0, 0, drop=drop))
    assert isinstance(found.part, LayerPart)
    assert found.part.drop == pytest.approx(drafted)


@pytest.mark.parametrize("opening", Edge)
def test_a_layer_lowered_less_than_the_margin_of_a_seam_all_round_is_not_laid_on_its_row(opening: Edge) -> None:
    # 2.5 mm down the edge lies beyond the corner of the seam, 4 mm in; midway on its own side is 6, on its row 4.
    loop = replace(SHARP, along=(Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP))
    layer = LayerPart("divider", "inner", 0, 0, drop=2.5, opening=opening)
    assert moved(fitted(layer, loop)) == {"drop": (2.5, 6.0)}


@pytest.mark.parametrize("along", [(Edge.LEFT, Edge.BOTTOM, Edge.RIGHT), (Edge.RIGHT, Edge.BOTTOM, Edge.LEFT)])
@pytest.mark.parametrize("off", [-1e-9, 0.0, 1e-9])
def test_a_mouth_on_a_hole_grows_deeper_whichever_way_the_seam_runs(along: tuple[Edge, ...], off: float) -> None:
    # Mouth at 4 + 40 = 44, where a hole stands: 42 and 46 are equally near.
    found = fitted(pocket(depth=40.0 + off, exact=()), replace(SHARP, along=along))
    assert moved(found) == {"depth": (40.0 + off, 42.0)}


@pytest.mark.parametrize("off", [-1e-9, 0.0, 1e-9])
def test_a_step_midway_between_two_counts_takes_the_greater(off: float) -> None:
    # 10 mm are two and a half stitches of 4.
    assert moved(fitted(bank(exact=("show", "overlap"), step=10.0 + off)))["step"] == (10.0 + off, 12.0)


@pytest.mark.parametrize(("opening", "drop"), [(Edge.LEFT, 12.5), (Edge.RIGHT, 12.5)])
def test_a_layer_over_one_panel_is_lowered_from_its_own_edge(opening: Edge, drop: float) -> None:
    """Sewn along the bottom of the second of three panels, its edges 5 mm short of the folds on either side."""
    seam = replace(SHARP, along=(Edge.BOTTOM,), end=None, over=(1, 1), stop=8.0)
    layer = LayerPart("divider", "inner", 1, 1, drop=drop, opening=opening)
    found = fitted(layer, seam, panels=3)
    # 84 mm between the stops are 21 stitches of 4, midway at 8 + 2, 8 + 6, 8 + 10 ... mm from the fold; 5 + 12.5 is
    # 17.5 mm from it, nearest to 18.
    assert moved(found) == {"drop": (12.5, 13.0)}


def test_a_layer_lowered_exactly_or_not_at_all_stays() -> None:
    for layer in (
        LayerPart("divider", "inner", 0, 0, drop=11.0, exact=("drop",)),
        LayerPart("divider", "inner", 0, 0, drop=0.0),
        LayerPart("divider", "inner", 0, 0, drop=11.0, opening=Edge.LEFT),
    ):
        seam = replace(SHARP, along=(Edge.RIGHT,)) if layer.opening is Edge.LEFT else SHARP
        assert fitted(layer, seam).adjustments == ()


def test_a_mouth_far_off_the_seam_stays() -> None:
    # The rim ends 30 below the top, at 50: neither a divider lowered to 70 nor a mouth at 64 passes its holes.
    short = replace(SHARP, end=30.0)
    assert fitted(LayerPart("divider", "inner", 0, 0, drop=10.0), short).adjustments == ()
    assert fitted(pocket(depth=60.0, exact=()), short).adjustments == ()


@pytest.mark.parametrize(
    ("opening", "edge"), [(Edge.TOP, Edge.LEFT), (Edge.TOP, Edge.RIGHT), (Edge.BOTTOM, Edge.LEFT)]
)
def test_one_side_sewn_is_enough_to_meet(opening: Edge, edge: Edge) -> None:
    layer = LayerPart("divider", "inner", 0, 0, drop=11.0, opening=opening)
    found = fitted(layer, replace(SHARP, along=(edge,)))
    assert isinstance(found.part, LayerPart)
    assert found.part.drop == pytest.approx(10.0)


@pytest.mark.parametrize("edge", [Edge.TOP, Edge.BOTTOM])
def test_a_layer_lowered_sideways_meets_the_seams_along_the_row(edge: Edge) -> None:
    # The seam runs from 4 to 96: 92 mm are 23 stitches; 11 mm in from either end the edge goes to 10, midway.
    for opening in (Edge.LEFT, Edge.RIGHT):
        layer = LayerPart("divider", "inner", 0, 0, drop=11.0, opening=opening)
        found = fitted(layer, replace(SHARP, along=(edge,)))
        assert isinstance(found.part, LayerPart)
        assert found.part.drop == pytest.approx(10.0)


def test_a_pocket_open_at_the_side_does_not_look_to_the_seam_it_rests_on() -> None:
    # Only its floor is sewn, on the right; up its own seams places midway lie 2, 6 ... from the floor: 41 to 42.
    for opening, edge in ((Edge.LEFT, Edge.RIGHT), (Edge.RIGHT, Edge.LEFT)):
        found = fitted(pocket(opening=opening, exact=(), depth=41.0), replace(SHARP, along=(edge,)))
        assert isinstance(found.part, PocketPart)
        assert found.part.depth == pytest.approx(42.0)


def test_two_slots_have_one_step_to_move() -> None:
    assert moved(fitted(bank(slots=2, exact=("show", "overlap"), step=11.0))) == {"step": (11.0, 12.0)}


def test_a_step_of_one_stitch_shares_its_length_with_none() -> None:
    found = fitted(bank(exact=("step", "show"), step=4.0, overlap=6.9))
    assert isinstance(found.part, BankPart)
    assert found.part.overlap == pytest.approx(8.0)


def test_no_size_moves_by_more_than_half_a_stitch() -> None:
    for tenths in range(20, 400):
        size = tenths / 10
        found = fitted(bank(exact=(), step=size, show=10 + size / 10, overlap=size))
        assert all(abs(move.drafted - move.asked) <= 2.0 + 1e-9 for move in found.adjustments)


def test_pockets_between_folds_keep_level_with_the_rim() -> None:
    # On the middle panel no rim runs up beside the mouth; it lies level with places midway on the outer edge.
    found = fitted(pocket(panel=1, exact=(), depth=41.0), panels=3)
    assert isinstance(found.part, PocketPart)
    assert found.part.depth == pytest.approx(42.0)


def test_without_a_seam_beside_it_a_mouth_lies_midway_on_its_own_seams() -> None:
    # Only the bottom is sewn: floor at 4, places midway of the pocket's own seam at 2, 6, 10 ... above it.
    found = fitted(pocket(exact=(), depth=41.0), replace(SHARP, along=(Edge.BOTTOM,)))
    assert isinstance(found.part, PocketPart)
    assert found.part.depth == pytest.approx(42.0)


def test_a_slant_falls_by_whole_stitches() -> None:
    found = fitted(pocket(mouth=MouthSpec(MouthShape.SLANTED, 6.5)))
    assert isinstance(found.part, PocketPart)
    assert found.part.mouth.depth == pytest.approx(8.0)
    found = fitted(pocket(mouth=MouthSpec(MouthShape.DIPPED, 6.5)))
    assert isinstance(found.part, PocketPart)
    assert found.part.mouth.depth == 6.5
