"""Laws of laying pieces flat: folding them back, mirrors, turned rows."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Across, Design, HoleShape, Mode, Side
from tests.laws.designs import drafted_designs, drafts, is_slanted, mirrored

rarely = settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
shares = st.floats(0, 1)


def can_be_mirrored(design: Design) -> bool:
    """Slanted mouths fall to the right and an iron starts at the left: their mirror image is another design."""
    return not is_slanted(design) and design.stitching.mode is Mode.EVEN


def stops_at_folds(design: Design) -> bool:
    return all(seam.across is Across.OPEN for seam in design.seams)


def has_slits(design: Design) -> bool:
    return design.stitching.hole.shape is HoleShape.SLIT


def outlines_on_assembly(pattern: Pattern) -> dict[str, list[tuple[float, float]]]:
    return {
        piece.name: [
            (at.x, at.y) for x, y, _ in piece.outline.vertices for at in [piece.placement.to_assembly(Point(x, y))]
        ]
        for piece in pattern.pieces
    }


@rarely
@given(drafts(), shares, shares)
def test_what_is_developed_and_folded_back_comes_to_lie_where_it_was(
    pattern: Pattern, across: float, up: float
) -> None:
    point = Point(across * pattern.width, up * pattern.height)
    for piece in pattern.pieces:
        back = piece.placement.to_assembly(piece.placement.to_piece(point))
        assert (back.x, back.y) == pytest.approx((point.x, point.y), abs=1e-9)


@rarely
@given(drafts(), shares, shares)
def test_what_is_folded_back_and_developed_again_is_the_piece_again(
    pattern: Pattern, across: float, up: float
) -> None:
    for piece in pattern.pieces:
        point = Point(across * piece.width, up * piece.height)
        again = piece.placement.to_piece(piece.placement.to_assembly(point))
        assert (again.x, again.y) == pytest.approx((point.x, point.y), abs=1e-9)


@rarely
@given(drafts(), shares, shares, shares, shares)
def test_distances_on_a_panel_are_the_same_in_every_piece(
    pattern: Pattern, x0: float, y0: float, x1: float, y1: float
) -> None:
    for panel in pattern.panels:
        a, b = (Point(panel.x0 + x * (panel.x1 - panel.x0), y * pattern.height) for x, y in ((x0, y0), (x1, y1)))
        for piece in pattern.pieces:
            laid = piece.placement.to_piece(a).distance_to(piece.placement.to_piece(b))
            assert laid == pytest.approx(a.distance_to(b), abs=1e-9)


@rarely
@given(drafts(stops_at_folds))
def test_every_hole_folded_back_lies_on_its_seam(pattern: Pattern) -> None:
    seams = {(seam.name, hole.index): hole.at for seam in pattern.seams for hole in seam.holes}
    for piece in pattern.pieces:
        for hole in piece.holes:
            at, wanted = piece.placement.to_assembly(hole.at), seams[hole.seam, hole.index]
            assert (at.x, at.y) == pytest.approx((wanted.x, wanted.y), abs=1e-9)


@rarely
@given(drafts())
def test_pieces_that_show_outside_are_mirror_images_and_the_others_are_not(pattern: Pattern) -> None:
    for piece in pattern.pieces:
        assert piece.placement.onto_piece.is_mirror == (piece.showing is Side.OUTSIDE)


@rarely
@given(drafts(has_slits))
def test_slits_folded_back_lie_along_one_line_in_every_piece(pattern: Pattern) -> None:
    """Within one pattern a slit of a mate has the same direction on the assembly, whichever way its piece shows."""
    directions: dict[tuple[str, int], float] = {}
    for piece in pattern.pieces:
        for hole in piece.holes:
            back = piece.placement.onto_piece.inverse().angle(hole.direction) % 180
            first = directions.setdefault((hole.seam, hole.index), back)
            assert (back - first + 90) % 180 - 90 == pytest.approx(0.0, abs=1e-6)


@rarely
@given(drafted_designs())
def test_mirrored_twice_is_the_same(pair: tuple[Design, Pattern]) -> None:
    design, pattern = pair
    twice = mirrored(mirrored(design))
    assert twice == design
    for piece, again in zip(pattern.pieces, drafted(twice).pieces, strict=True):
        assert again.outline == piece.outline


@rarely
@given(drafted_designs(can_be_mirrored))
def test_the_pattern_of_a_mirrored_design_is_the_mirrored_pattern(pair: tuple[Design, Pattern]) -> None:
    design, pattern = pair
    other = drafted(mirrored(design))
    assert other.width == pytest.approx(pattern.width)
    here, there = outlines_on_assembly(pattern), outlines_on_assembly(other)
    assert here.keys() == there.keys()
    for name, points in here.items():
        flipped = sorted((round(pattern.width - x, 5), round(y, 5)) for x, y in points)
        assert flipped == [
            pytest.approx(p, abs=2e-5) for p in sorted((round(x, 5), round(y, 5)) for x, y in there[name])
        ]


@rarely
@given(drafted_designs(can_be_mirrored))
def test_the_holes_of_a_mirrored_design_are_the_mirrored_holes(pair: tuple[Design, Pattern]) -> None:
    design, pattern = pair
    other = drafted(mirrored(design))
    for piece in pattern.pieces:
        mate = other.piece(piece.name)
        assert len(mate.holes) == len(piece.holes)
        here = [piece.placement.to_assembly(hole.at) for hole in piece.holes]
        there = [mate.placement.to_assembly(hole.at) for hole in mate.holes]
        for at in here:
            assert min(Point(pattern.width - at.x, at.y).distance_to(p) for p in there) < 1e-6


@rarely
@given(drafted_designs())
def test_a_row_laid_on_its_side_gives_the_same_pieces_a_quarter_turned(pair: tuple[Design, Pattern]) -> None:
    design, pattern = pair
    body = replace(design.body, turned=not design.body.turned)
    for piece, other in zip(pattern.pieces, drafted(replace(design, body=body)).pieces, strict=True):
        assert (other.width, other.height) == pytest.approx((piece.height, piece.width))
        assert other.area == pytest.approx(piece.area)
        assert [hole.index for hole in other.holes] == [hole.index for hole in piece.holes]
