"""What a gusset joins, how thick it stands, what it asks of the body, where its contents lie."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.assemble import drafted
from patternforge.wallet.parts import panel_plies
from patternforge.wallet.parts.gusset import gusset_profile
from patternforge.wallet.parts.joins import insets, joins, mates, turn_of
from patternforge.wallet.sizes import body_height, panel_widths
from patternforge.wallet.spec import (
    Design,
    Edge,
    FoldSpec,
    GussetPart,
    Held,
    HoleShape,
    HoleSpec,
    LayerPart,
    Load,
    Stitching,
)
from tests.unit.wallet.built import leather, wallet
from tests.unit.wallet.pouches import BACK, FRONT, SIDE, accordion, pouch, seam

HOLDING = replace(SIDE, holds=(Held("coins", 1),))


def side_of(design: Design) -> GussetPart:
    return next(part for part in design.parts if isinstance(part, GussetPart))


def heights(design: Design) -> list[tuple[str, float]]:
    return [(ply.term.label, round(ply.term.value, 6)) for ply in panel_plies(design, 0)]


def test_the_outer_seam_comes_first_in_whatever_order_they_are_named() -> None:
    design = pouch(replace(SIDE, joins=("front seam", "back seam")))
    assert [(join.seam.name, join.wall) for join in joins(design, side_of(design))] == [
        ("back seam", "back"),
        ("front seam", "front"),
    ]


def test_the_wall_is_the_part_next_to_the_gusset() -> None:
    lining = LayerPart("lining", "inner", 0, 0)
    seams = (seam("back seam", "back", "lining", "side"), seam("front seam", "side", "front"))
    design = wallet(BACK, lining, SIDE, FRONT, seams=seams)
    assert joins(design, SIDE)[0].wall == "lining"


@pytest.mark.parametrize(
    ("seams", "words"),
    [
        ((("back",), ("side", "front")), "seam 'back seam' does not go through it"),
        ((("side",), ("side", "front")), "must each sew it to a wall of its own"),
        ((("back", "side"), ("side", "back")), "must each sew it to a wall of its own"),
        ((("back", "side", "front"), ("side", "front")), "must each sew it to a wall of its own"),
    ],
)
def test_a_gusset_without_two_walls_is_refused_by_name(seams: tuple[Any, Any], words: str) -> None:
    with pytest.raises(DraftError, match=f"small.yaml:6: 'side':.*{words}"):
        drafted(pouch(seams=(seam("back seam", *seams[0]), seam("front seam", *seams[1]))))


def test_a_seam_that_leaves_the_panel_is_refused() -> None:
    design = pouch(widths=(100.0, 40.0), folds=(FoldSpec(),), closing=(1,))
    with pytest.raises(DraftError, match="seam 'back seam' does not keep to panel 'P0'"):
        joins(design, side_of(design))


def test_a_web_stands_as_near_the_stitches_as_its_bend_and_the_limit_let_it() -> None:
    # Bend 1.2, hole 0.5, limit 1.0.
    near = replace(SIDE, turn=None)
    assert turn_of(pouch(near), near) == pytest.approx(2.7)
    slits = Stitching(pitch=4.0, hole=HoleSpec(HoleShape.SLIT, length=2.0))
    seams = (seam("back seam", "back", "side", stitching=slits), seam("front seam", "side", "front"))
    assert turn_of(pouch(near, seams=seams), near) == pytest.approx(3.2)
    assert turn_of(pouch(), SIDE) == 3.0


def test_unlike_margins_give_unlike_flanges() -> None:
    seams = (seam("back seam", "back", "side"), seam("front seam", "side", "front", margin=5.0))
    design = pouch(seams=seams)
    # To the web's outside 4 + 3 and 5 + 3, less 1.2 in the bends.
    assert [t.value for t in gusset_profile(design, SIDE).width.terms[::4]] == pytest.approx([5.8, 6.8])


def test_a_channel_stands_as_high_as_its_depth() -> None:
    assert heights(pouch()) == [("back (outer)", 1.2), ("depth of side", 20.0), ("front (outer)", 1.2)]
    assert heights(pouch(HOLDING))[1] == ("depth of side", 20.0)


def test_contents_thicker_than_the_channel_stand_for_it() -> None:
    two = replace(SIDE, holds=(Held("coins", 2),))
    assert heights(pouch(two))[1] == ("2 x coins", 30.0)
    assert heights(pouch(two, load=Load(cards=0.5)))[1] == ("depth of side", 20.0)


def test_leaves_lie_over_what_reaches_under_them() -> None:
    # Leaves of 8.8 mm reach a bend of 1.2 mm further: 100 - 2 x 10 mm between them is just room for a card of 80 mm.
    beside = heights(accordion(leaf=8.8))
    assert [label for label, _ in beside] == [
        "wall 1 (outer)",
        "3 x card",
        "wall 2 (outer)",
        "3 x card",
        "wall 3 (outer)",
    ]
    # Folded, two leaves of 0.8 mm stand 2 x 1.2 mm high.
    assert heights(accordion(leaf=8.9))[1:3] == [("3 x card", 3.0), ("2 leaves of left 1 (inner)", 2.4)]


def test_on_a_fitted_panel_contents_reach_under_the_leaves() -> None:
    assert heights(fitted(accordion()))[1:3] == [
        ("3 x card", 3.0),
        ("2 leaves of left 1 (inner)", 2.4),
    ]


def fitted(design: Design) -> Design:
    """The design with a panel as wide as it must be."""
    panels = (replace(design.body.panels[0], width=None),)
    return replace(design, body=replace(design.body, panels=panels))


def test_empty_bellows_stand_as_high_as_their_leaves() -> None:
    assert heights(accordion(pleats=2, holds=()))[1] == ("4 leaves of left 1 (inner)", 4.8)


def test_gussets_between_the_same_walls_are_told_once() -> None:
    design = accordion()
    first = side_of(design)
    assert [mate.name for mate in mates(design, first)] == ["left 1", "right 1"]
    assert sum("leaves of right" in label for label, _ in heights(accordion(leaf=12.0))) == 0


def test_the_room_of_a_channel_begins_at_its_webs() -> None:
    design = pouch(HOLDING)
    assert insets(design, HOLDING) == {Edge.LEFT: 7.0, Edge.BOTTOM: 7.0, Edge.RIGHT: 7.0, Edge.TOP: 0.0}


def test_the_room_of_a_bellows_begins_at_its_stitches_and_at_the_seam_below() -> None:
    design = accordion()
    assert insets(design, side_of(design)) == {Edge.LEFT: 4.0, Edge.RIGHT: 4.0, Edge.BOTTOM: 4.0, Edge.TOP: 0.0}


def test_a_fitted_pouch_is_as_large_as_its_contents_between_the_webs() -> None:
    # 7 + 60 + 2.5 + 7 wide; 7 + 40 + headroom 3 high.
    design = fitted(pouch(HOLDING, height=None))
    assert panel_widths(design)[0].value == pytest.approx(76.5)
    assert body_height(design).value == pytest.approx(50.0)


def test_a_fitted_accordion_goes_round_its_cards() -> None:
    # 80 + 3 x 1.0 + 2.5 between stitch lines 4 mm inside.
    assert panel_widths(fitted(accordion()))[0].value == pytest.approx(93.5)


@pytest.mark.parametrize(
    ("opening", "along", "box"),
    [
        (Edge.TOP, (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT), (20.0, 7.0, 80.0, 47.0)),
        (Edge.BOTTOM, (Edge.LEFT, Edge.TOP, Edge.RIGHT), (20.0, 33.0, 80.0, 73.0)),
        (Edge.LEFT, (Edge.BOTTOM, Edge.RIGHT, Edge.TOP), (53.0, 10.0, 93.0, 70.0)),
        (Edge.RIGHT, (Edge.BOTTOM, Edge.LEFT, Edge.TOP), (7.0, 10.0, 47.0, 70.0)),
    ],
)
def test_contents_lie_pushed_home_in_the_middle(opening: Edge, along: Any, box: tuple[float, ...]) -> None:
    seams = (seam("back seam", "back", "side", along=along), seam("front seam", "side", "front", along=along))
    (room,) = drafted(pouch(replace(HOLDING, opening=opening), seams=seams)).pockets
    assert room.box == pytest.approx(box)
    assert (room.part, room.piece, room.content, room.held) == ("side", "side", "coins", False)


def test_the_flap_goes_round_the_depth_of_the_gusset() -> None:
    flap = replace(BACK, last=1)
    seams = tuple(
        replace(each, over=(0, 0), along=(Edge.BOTTOM, Edge.LEFT, Edge.TOP))
        for each in (seam("back seam", "back", "side"), seam("front seam", "side", "front"))
    )
    design = wallet(flap, SIDE, FRONT, seams=seams, widths=(100.0, 40.0), folds=(FoldSpec(),), closing=(1,))
    (fold,) = drafted(design).folds
    # Between its flanks 20 mm of gusset and 1.2 mm of front: pi x (21.2 / 2 + 0.6).
    assert fold.layers[0].flat_length == pytest.approx(pi * 11.2)


def test_a_bend_too_deep_for_its_size_is_refused_with_its_line() -> None:
    with pytest.raises(DraftError, match=r"small.yaml:6: 'side': a depth of 2.00 mm is all bends"):
        drafted(pouch(replace(SIDE, depth=2.0)))


def test_thicker_leather_bends_wider() -> None:
    design = pouch(leathers=(leather("outer", 1.2), leather("inner", 1.0)))
    # Bends of pi / 2 x (0.5 + 0.5) = 1.5708 that reach 1.5: 2 x 5.5 + 17 + 2 x 1.5708.
    assert gusset_profile(design, SIDE).width.value == pytest.approx(28 + pi)
