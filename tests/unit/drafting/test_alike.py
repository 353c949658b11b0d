"""Pieces are alike when one can be laid on the other, turned but not turned over, hole on hole."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path as FilePath

import pytest

from patternforge.drafting.alike import alike
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, flipped_x, rotation, translation
from patternforge.pipeline.stages import design_at
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Hole, Pattern, Piece
from patternforge.wallet.spec import HoleShape, HoleSpec
from tests.designs_built import SLITS, two_fold, with_holes

READY = FilePath(__file__).parents[3] / "designs" / "two-fold.yaml"
ROUND = HoleSpec(HoleShape.ROUND, diameter=1.0)
# An L with unequal arms: it can be laid on itself in one way only, and never turned over.
CORNERS = ((0, 0), (60, 0), (60, 20), (25, 20), (25, 50), (0, 50))
PLACES = ((5, 5), (12, 5), (5, 40))
WINDOW = rounded_rectangle(35, 6, 50, 14, 1).cw()


@pytest.fixture(scope="module")
def pattern() -> Pattern:
    return drafted(with_holes(two_fold(), SLITS))


def ell(pattern: Pattern) -> Piece:
    """An L with three slits and a window."""
    piece = pattern.pieces[0]
    holes = tuple(Hole(piece.holes[0].seam, n, Point(*at), 30.0) for n, at in enumerate(PLACES))
    outline = polygon([Point(*corner) for corner in CORNERS])
    return replace(piece, name="one", outline=outline, holes=holes, openings=(WINDOW,))


def carried(piece: Piece, turn: Transform) -> Piece:
    """The piece laid elsewhere, its outline begun at another corner."""
    outline = turn.path(piece.outline)
    begun = Path(outline.segments[2:] + outline.segments[:2], closed=True)
    holes = tuple(replace(hole, at=turn.point(hole.at), direction=turn.angle(hole.direction)) for hole in piece.holes)
    openings = tuple(turn.path(opening) for opening in piece.openings)
    return replace(piece, name="other", outline=begun.ccw(), holes=holes[::-1], openings=openings)


def moved_hole(piece: Piece) -> Piece:
    first, *rest = piece.holes
    return replace(piece, holes=(replace(first, at=first.at + Point(1e-5, 0)), *rest))


def turned_slit(piece: Piece) -> Piece:
    first, *rest = piece.holes
    return replace(piece, holes=(replace(first, direction=first.direction + 1), *rest))


def moved_window(piece: Piece) -> Piece:
    return replace(piece, openings=(translation(1e-5, 0).path(piece.openings[0]),))


def moved_corner(piece: Piece) -> Piece:
    (x, y, bulge), *rest = piece.outline.vertices
    return replace(piece, outline=from_vertices([(x + 1e-5, y, bulge), *rest], closed=True))


def bent_edge(piece: Piece) -> Piece:
    (x, y, _), *rest = piece.outline.vertices
    return replace(piece, outline=from_vertices([(x, y, 1e-5), *rest], closed=True))


@pytest.mark.parametrize("turn", [rotation(180), rotation(90, Point(7, 3)), rotation(33), translation(5, 0)])
def test_a_piece_turned_is_alike(pattern: Pattern, turn: Transform) -> None:
    one = ell(pattern)
    assert alike(replace(pattern, pieces=(one, carried(one, turn)))) == (("one", "other"),)


@pytest.mark.parametrize("change", [moved_hole, turned_slit, moved_window, moved_corner, bent_edge])
def test_a_piece_that_differs_in_one_place_is_not_alike(pattern: Pattern, change: Callable[[Piece], Piece]) -> None:
    one = ell(pattern)
    assert alike(replace(pattern, pieces=(one, change(carried(one, rotation(90)))))) == ()


def test_a_piece_with_holes_of_another_size_is_not_alike(pattern: Pattern) -> None:
    one, (seam, *seams) = ell(pattern), pattern.seams
    larger = replace(seam, name="larger", stitching=replace(seam.stitching, hole=replace(SLITS, length=3.0)))
    other = replace(one, name="other", holes=tuple(replace(hole, seam="larger") for hole in one.holes))
    assert alike(replace(pattern, pieces=(one, other), seams=(seam, larger, *seams))) == ()


def test_a_piece_turned_over_is_not_alike(pattern: Pattern) -> None:
    one = ell(pattern)
    assert alike(replace(pattern, pieces=(one, carried(one, flipped_x())))) == ()


@pytest.mark.parametrize("hole", [ROUND, SLITS])
def test_the_upper_leaves_of_both_banks_are_alike_and_the_lowest_are_not(hole: HoleSpec) -> None:
    """The lowest leaf of either bank is sewn to the rim at its outer side only: one is the other turned over."""
    found = alike(drafted(with_holes(design_at(READY), hole)))
    assert found == (("left cards 3", "left cards 2", "right cards 3", "right cards 2"),)
