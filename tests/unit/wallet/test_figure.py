"""Which corners and sides a body, a panel of it and a layer have."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.body import Body
from patternforge.wallet.figure import body_figure, is_shaped, layer_figure
from patternforge.wallet.quad import Quad
from patternforge.wallet.spec import Design, Edge, EdgeShape, FoldSpec, LayerPart
from tests.unit.wallet.built import body_of, shell, wallet

LOW_LEFT, HIGH_RIGHT = (Edge.BOTTOM, Edge.LEFT), (Edge.TOP, Edge.RIGHT)
LEANING = (Edge.RIGHT, EdgeShape(slant=10.0))
BOX = (0.0, 0.0, 100.0, 80.0)


def two_panels(**changes: Any) -> tuple[Design, Body]:
    """Two panels with a rounding of 6 mm, the upper right one of 12, the right side leaning in by 10."""
    design = wallet(shell(2), widths=(100.0, 100.0), folds=(FoldSpec(),), corner=6.0)
    body = replace(design.body, corners=((HIGH_RIGHT, 12.0),), shapes=(LEANING,))
    design = replace(design, body=replace(body, **changes))
    return design, body_of(design)


def xs(figure: Quad) -> list[float]:
    return [round(p.x, 6) for p in figure.corners]


def test_anything_but_plain_rectangles_is_shaped() -> None:
    plain = wallet(shell(1))
    assert not is_shaped(plain)
    assert not is_shaped(plain, shell(1))
    assert is_shaped(plain, shell(1, shapes=(LEANING,)))
    assert is_shaped(replace(plain, body=replace(plain.body, shapes=(LEANING,))))
    assert is_shaped(replace(plain, body=replace(plain.body, corners=((LOW_LEFT, 3.0),))))


@pytest.mark.parametrize(
    ("first", "last", "radii", "leans"),
    # Lower left, lower right, upper right, upper left; square at a fold.
    [
        (0, 1, (6.0, 6.0, 12.0, 6.0), True),
        (0, 0, (6.0, 0.0, 0.0, 6.0), False),
        (1, 1, (0.0, 6.0, 12.0, 0.0), True),
    ],
)
def test_panels_have_the_bodys_corners_and_sides_where_they_share_them(
    first: int, last: int, radii: tuple[float, ...], leans: bool
) -> None:
    design, body = two_panels()
    figure = body_figure(design, body, BOX, first, last)
    assert figure.radii == radii
    assert xs(figure) == [0, 100, 90 if leans else 100, 0]


def lining(**changes: Any) -> LayerPart:
    return replace(LayerPart("lining", "inner", 0, 1), **changes)


def test_a_layer_shares_the_bodys_sides_but_for_those_it_is_inset_from() -> None:
    design, body = two_panels()
    assert xs(layer_figure(design, body, lining(), BOX)) == [0, 100, 90, 0]
    inset = lining(inset=((Edge.RIGHT, 5.0),), corner=4.0)
    figure = layer_figure(design, body, inset, BOX)
    assert xs(figure) == [0, 100, 100, 0]
    assert figure.radii == (6.0, 4.0, 4.0, 6.0)
    own = replace(inset, shapes=((Edge.RIGHT, EdgeShape(slant=20.0)),))
    assert xs(layer_figure(design, body, own, BOX)) == [0, 100, 80, 0]


def test_an_inset_without_a_rounding_of_its_own_is_square() -> None:
    design, body = two_panels()
    assert layer_figure(design, body, lining(inset=((Edge.TOP, 5.0),)), BOX).radii == (6.0, 6.0, 0.0, 0.0)


def test_a_lowered_edge_is_straight_with_square_corners() -> None:
    design, body = two_panels(shapes=((Edge.TOP, EdgeShape(bow=5.0)),))
    figure = layer_figure(design, body, lining(drop=20.0), BOX)
    assert figure.radii == (6.0, 6.0, 0.0, 0.0)
    assert figure.bulges == (0.0, 0.0, 0.0, 0.0)
    assert max(p.y for p in figure.corners) == pytest.approx(60.0)


def test_what_a_shaped_layer_cannot_have_is_refused() -> None:
    design, body = two_panels()
    with pytest.raises(DraftError, match=r"lowered by 8\.00 mm it would cut the rounding of 12\.00 mm"):
        layer_figure(design, body, lining(drop=8.0), BOX)


@pytest.mark.parametrize(("first", "last"), [(0, 1), (0, 0), (1, 1)])
def test_a_panel_has_its_part_of_a_side_that_slants_across_the_folds(first: int, last: int) -> None:
    # The shell closed on itself: pi x (0.6 + 0.6) at the fold. The upper side falls by 20 mm over all of it.
    width = 200 + pi * 1.2
    design = wallet(shell(2), widths=(100.0, 100.0), folds=(FoldSpec(),))
    falling = replace(design, body=replace(design.body, shapes=((Edge.TOP, EdgeShape(slant=20.0)),)))
    body = body_of(falling)
    assert body.width == pytest.approx(width)
    box = (body.panels[first].x0, 0.0, body.panels[last].x1, 80.0)
    figure = body_figure(falling, body, box, first, last)
    low, high = (80 - 20 * x / width for x in (box[0], box[2]))
    assert (figure.corners[3].y, figure.corners[2].y) == pytest.approx((low, high))


def test_a_strap_has_its_part_of_a_side_that_leans() -> None:
    # The right side leans in by 10 over 80 mm; from 20 to 60 mm up it stands 2.5 to 7.5 in.
    design, body = two_panels()
    strap = lining(inset=((Edge.BOTTOM, 20.0), (Edge.TOP, 20.0)))
    figure = layer_figure(design, body, strap, (0.0, 20.0, 100.0, 60.0))
    assert xs(figure) == [0, 97.5, 92.5, 0]


def test_a_part_of_a_bowed_side_is_refused() -> None:
    design, body = two_panels(shapes=((Edge.TOP, EdgeShape(bow=5.0)),))
    with pytest.raises(DraftError, match="the top side bows from end to end"):
        body_figure(design, body, BOX, 0, 0)
