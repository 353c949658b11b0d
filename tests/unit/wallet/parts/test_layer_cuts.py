"""Mouths, thumb notches and notches of layers on two panels of 100 x 80 mm, margin 4, relief 5 at their fold."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.blank import Blank
from patternforge.wallet.parts import part_blanks
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import (
    Edge,
    EdgeNotch,
    EdgeShape,
    FoldSpec,
    LayerPart,
    MouthShape,
    MouthSpec,
    NotchShape,
    Spot,
    ThumbNotch,
)
from tests.unit.wallet.built import body_of, shell, wallet

DIPPED = MouthSpec(MouthShape.DIPPED, 6.0)
LINING = LayerPart("lining", "inner", 0, 1, drop=10.0, line=8)


def drawn(part: LayerPart, **changes: Any) -> Blank:
    design = wallet(shell(2), part, widths=(100.0, 100.0), folds=(FoldSpec(relief=5.0),))
    design = replace(design, body=replace(design.body, **changes))
    (blank,) = part_blanks(design, body_of(design), part, 4.0).blanks
    return blank


def arcs(blank: Blank) -> list[tuple[float, float, float]]:
    """Left and right end and depth of every arc, left to right."""
    found = [s for s in blank.shape.path.segments if s.is_arc]
    return sorted((min(s.start.x, s.end.x), max(s.start.x, s.end.x), abs(s.bulge) * s.chord / 2) for s in found)


def test_a_mouth_dips_on_each_panel_between_the_stitch_line_and_the_relief_of_the_fold() -> None:
    blank = drawn(replace(LINING, mouth=DIPPED))
    zone = blank.shape.path.bounds.width - 200
    # Stitch line 4 mm in and 2 mm of straight mouth beyond it; 5 mm of relief at the fold.
    assert arcs(blank) == [
        pytest.approx((6.0, 95.0, 6.0)),
        pytest.approx((100 + zone + 5, 200 + zone - 6, 6.0)),
    ]
    assert blank.shape.edges.count(EdgeRole.MOUTH) == 5
    assert blank.shape.path.bounds.y1 == pytest.approx(70.0)


def test_a_thumb_notch_stands_in_the_middle_of_each_mouth() -> None:
    blank = drawn(replace(LINING, thumb=ThumbNotch(20.0, 10.0)))
    zone = blank.shape.path.bounds.width - 200
    # Mouths from 6 to 95 and from 5 past the fold to 6 short of the edge: middles 50.5 and 49.5 into each panel.
    middles = [50.5, 100 + zone + 49.5]
    assert arcs(blank) == [pytest.approx((at - 10, at + 10, 10.0)) for at in middles]
    assert blank.shape.path.area == pytest.approx((200 + zone) * 70 - 2 * pi * 100 / 2)


def test_a_thumb_notch_may_stand_on_one_panel_alone() -> None:
    (only,) = arcs(drawn(replace(LINING, thumb=ThumbNotch(20.0, 10.0, panel=0))))
    assert only == pytest.approx((40.5, 60.5, 10.0))


def test_a_mouth_at_the_bodys_own_edge_needs_no_drop() -> None:
    blank = drawn(replace(LINING, drop=0.0, thumb=ThumbNotch(20.0, 8.0, panel=1)))
    assert len(arcs(blank)) == 1
    assert blank.shape.path.bounds.y1 == pytest.approx(80.0)
    assert EdgeRole.MOUTH in blank.shape.edges


def test_a_mouth_to_the_side_is_cut_between_the_lower_and_the_upper_stitch_line() -> None:
    part = replace(LINING, last=0, opening=Edge.RIGHT, drop=20.0, mouth=DIPPED)
    (arc,) = [s for s in drawn(part).shape.path.segments if s.is_arc]
    # Right edge of panel 0, relief 5 and drop 20 short of the tangent; margin 4 below and above.
    assert (arc.start.x, arc.start.y) == pytest.approx((75.0, 6.0))
    assert (arc.end.x, arc.end.y) == pytest.approx((75.0, 74.0))


def test_a_seam_along_the_mouth_is_refused() -> None:
    with pytest.raises(DraftError, match=r"small\.yaml:8: 'lining': a seam runs along its bottom edge"):
        drawn(replace(LINING, drop=0.0, opening=Edge.BOTTOM, mouth=DIPPED))


def test_a_thumb_notch_wider_than_its_mouth_is_refused() -> None:
    with pytest.raises(DraftError, match=r"a thumb notch 89\.50 mm wide does not fit a mouth of 89\.00 mm"):
        drawn(replace(LINING, thumb=ThumbNotch(89.5, 10.0)))


@pytest.mark.parametrize(
    ("edge", "spot", "point"),
    [
        (Edge.BOTTOM, Spot(0, (Edge.LEFT, 30.0)), (30.0, 3.0)),
        (Edge.TOP, Spot(0), (50.0, 67.0)),
        (Edge.LEFT, Spot(0, None, (Edge.BOTTOM, 25.0)), (3.0, 25.0)),
    ],
)
def test_a_vee_points_into_the_leather_at_its_spot(edge: Edge, spot: Spot, point: tuple[float, float]) -> None:
    blank = drawn(replace(LINING, notches=(EdgeNotch("mark", edge, spot, 4.0, 3.0),)))
    assert any((x, y) == pytest.approx(point) for x, y, _ in blank.shape.path.vertices)


def test_a_notch_in_the_middle_of_a_fold_keeps_its_point_there() -> None:
    blank = drawn(replace(LINING, notches=(EdgeNotch("mark", Edge.BOTTOM, Spot(0, fold=1), 4.0, 3.0),)))
    zone = blank.shape.path.bounds.width - 200
    assert any((x, y) == pytest.approx((100 + zone / 2, 3.0)) for x, y, _ in blank.shape.path.vertices)


def test_a_round_notch_is_an_arc_and_one_in_a_corner_is_refused_by_name() -> None:
    notch = EdgeNotch("grip", Edge.BOTTOM, Spot(0), 12.0, 6.0, NotchShape.ROUND)
    assert arcs(drawn(replace(LINING, notches=(notch,)))) == [pytest.approx((44.0, 56.0, 6.0))]
    beside = replace(notch, spot=Spot(0, (Edge.LEFT, 3.0)))
    with pytest.raises(DraftError, match="notch 'grip': a cut of its edge does not fit there"):
        drawn(replace(LINING, notches=(beside,)))


def test_relief_notches_stand_in_the_level_edges_of_a_shaped_layer() -> None:
    leaning = ((Edge.RIGHT, EdgeShape(slant=8.0)),)
    blank = drawn(replace(LINING, notch=3.0), shapes=leaning)
    found = arcs(blank)
    assert len(found) == 4
    assert all(depth == pytest.approx(3 * 2**0.5 / 2 * 0.41421356) for _, _, depth in found)
