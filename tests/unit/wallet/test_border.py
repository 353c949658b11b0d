"""What a part meets at each edge of its panel."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.wallet.border import border, host, inner_margin, opposite, seam_along
from patternforge.wallet.spec import Edge, FoldSpec, LayerPart, SeamSpec, Side
from tests.unit.wallet.built import RIM, bank, pocket, shell, wallet

FOLDS = (FoldSpec(relief=5.0), FoldSpec(relief=7.0))
THREE = (100.0, 100.0, 100.0)


@pytest.mark.parametrize(
    ("panel", "edge", "inset", "sewn"),
    [
        (0, Edge.LEFT, 0.0, True),
        (0, Edge.RIGHT, 5.0, False),
        (1, Edge.LEFT, 5.0, False),
        (1, Edge.RIGHT, 7.0, False),
        (2, Edge.LEFT, 7.0, False),
        (2, Edge.RIGHT, 0.0, True),
        (1, Edge.BOTTOM, 0.0, True),
        (1, Edge.TOP, 0.0, False),
    ],
)
def test_a_pocket_meets_the_rim_outside_and_the_relief_at_folds(
    panel: int, edge: Edge, inset: float, sewn: bool
) -> None:
    part = pocket(panel=panel)
    found = border(wallet(shell(3), part, widths=THREE, folds=FOLDS), part, edge)
    assert (found.inset, found.seam is not None, found.margin) == (inset, sewn, 4.0)
    assert found.stitch == inset + 4.0


def test_a_border_knows_what_is_trimmed_off_there() -> None:
    part = pocket(trim=((Edge.LEFT, 1.5),))
    design = wallet(shell(1), part)
    assert border(design, part, Edge.LEFT).trim == 1.5
    assert border(design, part, Edge.RIGHT).trim == 0.0


def test_a_seam_through_named_parts_passes_the_others_by() -> None:
    design = wallet(shell(1), pocket(), seams=(replace(RIM, through=("shell",)),))
    assert seam_along(design, Edge.LEFT, pocket()) is None
    found = seam_along(design, Edge.LEFT, shell(1))
    assert found is not None
    assert found.name == "rim"
    assert seam_along(design, Edge.TOP, shell(1)) is None


def test_a_seam_over_other_panels_or_round_a_layer_is_not_along_the_parts_edge() -> None:
    left_only = replace(RIM, over=(0, 0))
    design = wallet(shell(2), widths=(100.0, 100.0), folds=FOLDS[:1], seams=(left_only,))
    assert seam_along(design, Edge.BOTTOM, pocket(panel=0)) is left_only
    assert seam_along(design, Edge.BOTTOM, pocket(panel=1)) is None
    assert seam_along(design, Edge.BOTTOM, shell(2)) is left_only
    right_only = replace(design, seams=(replace(RIM, over=(1, 1)),))
    assert seam_along(right_only, Edge.BOTTOM, shell(1)) is None
    assert seam_along(right_only, Edge.BOTTOM, shell(2)) is not None
    design = replace(design, seams=(replace(RIM, of="strap"),))
    assert seam_along(design, Edge.BOTTOM, pocket()) is None


def test_the_first_of_two_seams_along_an_edge_counts() -> None:
    second = SeamSpec("second", (Edge.LEFT,), margin=9.0)
    found = seam_along(wallet(shell(1), pocket(), seams=(RIM, second)), Edge.LEFT, pocket())
    assert found is not None
    assert found.margin == 4.0


def test_the_inner_margin_is_that_of_the_first_seam_or_the_usual_one() -> None:
    assert inner_margin(wallet(shell(1), seams=(replace(RIM, margin=6.0),))) == 6.0
    assert inner_margin(wallet(shell(1), seams=())) == 3.5


@pytest.mark.parametrize(
    ("facing", "expected"), [(Side.INSIDE, "lining"), (Side.OUTSIDE, "shell")], ids=["inside", "outside"]
)
def test_a_pocket_is_sewn_to_the_layer_behind_it(facing: Side, expected: str) -> None:
    lining = LayerPart("lining", "inner", 0, 0)
    far = LayerPart("far", "inner", 1, 1)
    part = bank(facing=facing)
    parts = (shell(2), lining, far, part) if facing is Side.INSIDE else (part, shell(2), lining, far)
    found = host(wallet(*parts, widths=(100.0, 100.0), folds=FOLDS[:1]), part)
    assert found is not None
    assert found.name == expected


def test_nothing_behind_a_pocket_is_no_host() -> None:
    part = pocket()
    assert host(wallet(part, shell(1)), part) is None


@pytest.mark.parametrize(
    ("edge", "facing"),
    [(Edge.LEFT, Edge.RIGHT), (Edge.RIGHT, Edge.LEFT), (Edge.TOP, Edge.BOTTOM), (Edge.BOTTOM, Edge.TOP)],
)
def test_every_edge_faces_another(edge: Edge, facing: Edge) -> None:
    assert opposite(edge) is facing
