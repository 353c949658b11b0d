"""Pieces laid flat: mirrored, turned, developed, holed; slits told as they look from the outside."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.blank import Blank
from patternforge.wallet.flat import Lay, flat_piece, slit_axis, spread_development
from patternforge.wallet.outline import Corner, shape
from patternforge.wallet.pattern import Development, Pattern, SeamHole
from patternforge.wallet.spec import (
    Across,
    CornerStyle,
    Edge,
    FoldSpec,
    HoleShape,
    HoleSpec,
    LayerPart,
    SeamSpec,
    Side,
    Stitching,
)
from tests.unit.wallet.built import RIM, STITCHING, body_of, corners_of, leather, shell, wallet

SLITS = HoleSpec(HoleShape.SLIT, length=2.0, slant=30.0)
ROUNDS = HoleSpec(HoleShape.ROUND)
FOLD = FoldSpec(relief=5.0)


@pytest.mark.parametrize(
    ("heading", "hole", "axis"),
    # Sewn to the right, seen from the inside: a slit that leans 30 degrees up from the outside leans down here.
    [(0.0, SLITS, -30.0), (90.0, SLITS, 60.0), (-90.0, SLITS, -120.0), (45.0, ROUNDS, 45.0)],
)
def test_a_slants_sign_turns_over_on_the_assembly(heading: float, hole: HoleSpec, axis: float) -> None:
    at = SeamHole(1, 1, 0.0, Point(0, 0), heading)
    assert slit_axis(at, Stitching(hole=hole)) == pytest.approx(axis)


def sleeve(showing: Side, *, turned: bool = False, hole: HoleSpec = SLITS) -> Pattern:
    """A shell of 100 x 80 mm and a lining, sewn along the bottom with slits."""
    stitching = replace(STITCHING, hole=hole)
    bottom = SeamSpec("bottom", (Edge.BOTTOM,), margin=4.0, end=10.0, stitching=stitching)
    lining = LayerPart("lining", "inner", 0, 0, showing=showing, drop=10.0)
    design = wallet(shell(1), lining, seams=(bottom,))
    return drafted(replace(design, body=replace(design.body, turned=turned)))


def test_a_piece_that_shows_inside_lies_as_it_is_seen() -> None:
    first = sleeve(Side.INSIDE).piece("lining").holes[0]
    assert (first.at.x, first.at.y) == pytest.approx((10.0, 4.0))
    assert first.direction % 180 == pytest.approx(150.0)


def test_a_piece_that_shows_outside_is_its_mirror_image_and_shows_the_slant_as_told() -> None:
    first = sleeve(Side.OUTSIDE).piece("lining").holes[0]
    assert (first.at.x, first.at.y) == pytest.approx((90.0, 4.0))
    # Seen from the outside the seam runs to the left, and its slits lean 30 degrees from it.
    assert first.direction % 180 == pytest.approx((180 + 30) % 180)


@pytest.mark.parametrize(
    ("showing", "at", "direction"),
    # The row's left end is the top, as seen from the inside: right goes down, up goes right.
    [(Side.INSIDE, (4.0, 90.0), 60.0), (Side.OUTSIDE, (66.0, 90.0), 120.0)],
)
def test_a_turned_row_lies_with_its_left_end_up(showing: Side, at: tuple[float, float], direction: float) -> None:
    piece = sleeve(showing, turned=True).piece("lining")
    assert (piece.width, piece.height) == pytest.approx((70.0, 100.0))
    first = piece.holes[0]
    assert (first.at.x, first.at.y) == pytest.approx(at)
    assert first.direction % 180 == pytest.approx(direction)


def two_panels(*parts: LayerPart, **changes: Any) -> Pattern:
    design = wallet(*parts, widths=(100.0, 100.0), folds=(FOLD,))
    return drafted(replace(design, **changes))


def test_a_shell_is_longer_than_its_lining_by_its_longer_fold() -> None:
    lining = LayerPart("lining", "inner", 0, 1)
    pattern = two_panels(shell(2), lining)
    # Lining: radius 0.4, fibre 0.8; shell round it: 1.2, fibre 1.8.
    assert pattern.piece("lining").width == pytest.approx(200 + 0.8 * pi)
    assert pattern.piece("shell").width == pytest.approx(200 + 1.8 * pi)


def test_fold_lines_are_the_tangents_drawn_across_the_piece() -> None:
    pattern = two_panels(shell(2), LayerPart("lining", "inner", 0, 1, notch=3.0))
    lines = pattern.piece("shell").fold_lines
    assert [line.start.x for line in lines] == pytest.approx([100 + 1.8 * pi, 100.0])
    assert [line.end.y - line.start.y for line in lines] == pytest.approx([80.0, 80.0])
    notched = pattern.piece("lining").fold_lines
    assert [(line.start.y, line.end.y) for line in notched] == [pytest.approx((3.0, 77.0))] * 2


def test_a_layer_that_does_not_cross_a_fold_has_no_fold_lines() -> None:
    parts = (shell(2), LayerPart("lining", "inner", 0, 0))
    assert two_panels(*parts).piece("lining").fold_lines == ()


def test_a_slanted_edge_across_a_fold_gets_its_corners_at_the_tangents() -> None:
    body = body_of(wallet(shell(2), widths=(100.0, 100.0), folds=(FOLD,)))
    x0, x1 = body.folds[0].x0, body.folds[0].x1
    outline = shape([Corner(Point(0, 0)), Corner(Point(x1 + 100, 0)), Corner(Point(x1 + 100, 40))])
    blank = Blank("flap", "outer", outline, Side.INSIDE, (0, 1))
    longer = Development(((x0, x0), (x1, x1 + 3.0)))
    piece = flat_piece(replace(blank, development=longer), Lay("flap", 0, False), body, ())
    rise = 40 / (x1 + 100)
    assert {(100.0, round(rise * x0, 3)), (round(x1 + 3, 3), round(rise * x1, 3))} <= corners_of(piece)
    assert len(piece.edges) == len(piece.outline.segments)


def test_an_arc_in_a_fold_zone_is_refused() -> None:
    body = body_of(wallet(shell(2), widths=(100.0, 100.0), folds=(FOLD,)))
    x1 = body.width
    corners = [Corner(Point(0, 0)), Corner(Point(x1, 0)), Corner(Point(x1, 40), bulge=0.2), Corner(Point(0, 40))]
    blank = Blank("flap", "outer", shape(corners), Side.INSIDE, (0, 1))
    fold = body.folds[0]
    stretched = Development(((fold.x0, fold.x0), (fold.x1, fold.x1 + 3.0)))
    with pytest.raises(DraftError, match="piece 'flap': an arc of its outline lies in a fold zone"):
        flat_piece(replace(blank, development=stretched), Lay("flap", 0, False), body, ())
    # Where nothing is stretched, an arc may lie.
    assert flat_piece(blank, Lay("flap", 0, False), body, ()).area > 0


def test_a_spread_seam_shares_the_stretch_out_to_either_side() -> None:
    development = Development(((100.0, 100.0), (104.0, 110.0)))
    spread = spread_development(development, 5.0)
    # From 95 to 109, 14 mm, the layer is 20 mm long; beyond, as it was.
    assert spread.breaks == ((95.0, 95.0), (109.0, 115.0))
    assert spread.flat(102.0) == pytest.approx(105.0)
    assert spread.flat(120.0) == development.flat(120.0)


def test_an_eased_seam_has_as_many_holes_in_every_layer_evenly_further_apart_in_the_longer_one() -> None:
    eased = replace(RIM, across=Across.EASED, spread=10.0, corners=CornerStyle.SHARP)
    pattern = two_panels(shell(2), LayerPart("lining", "inner", 0, 1), seams=(eased,))
    outer, inner = pattern.piece("shell"), pattern.piece("lining")
    assert [hole.index for hole in outer.holes] == [hole.index for hole in inner.holes]
    # Between the points 10 mm beyond the tangents lie 20 mm + 0.8 pi of lining and 20 mm + 1.8 pi of shell.
    stretch = (20 + 1.8 * pi) / (20 + 0.8 * pi)
    middle = [hole.index for hole in inner.holes if 95 < hole.at.x < 105 and hole.at.y < 10]
    gaps = [
        abs(
            next(h.at.x for h in piece.holes if h.index == middle[1])
            - next(h.at.x for h in piece.holes if h.index == middle[0])
        )
        for piece in (outer, inner)
    ]
    assert gaps[0] / gaps[1] == pytest.approx(stretch)


def test_levels_count_from_the_outside_in_and_hidden_layers_are_told() -> None:
    middle = LayerPart("stiffener", "inner", 0, 1)
    pattern = two_panels(shell(2), middle, LayerPart("lining", "inner", 0, 1))
    assert [(piece.name, piece.level, piece.visible) for piece in pattern.pieces] == [
        ("shell", 0, True),
        ("stiffener", 1, False),
        ("lining", 2, True),
    ]


def test_leathers_are_drafted_at_the_middle_of_their_range() -> None:
    thick = leather("outer", 1.2)
    ranged = replace(thick, thickness=type(thick.thickness)(1.0, 1.4))
    one, other = (two_panels(shell(2), leathers=(each, leather("inner", 0.8))) for each in (thick, ranged))
    assert one.piece("shell").width == pytest.approx(other.piece("shell").width)
