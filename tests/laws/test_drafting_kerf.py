"""Kerf: half of it on every side, once, lines staying parallel and arcs keeping their centres."""

from __future__ import annotations

from math import acos, copysign, fsum, pi, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.drafting.kerf import opening_cut, outline_cut
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.offset import Join, offset_one
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Piece
from tests.designs_built import sleeve, three_fold, two_fold

PIECES = [piece for design in (two_fold(), sleeve(), three_fold()) for piece in drafted(design).pieces]

kerfs = st.floats(0.01, 0.5)


@st.composite
def rounded(draw: st.DrawFn) -> tuple[float, float, float]:
    """Width, height and corner radius of a rectangle that keeps its straight sides."""
    width, height = draw(st.floats(10, 300)), draw(st.floats(10, 300))
    return width, height, draw(st.floats(1, 0.4 * min(width, height)))


@given(rounded(), kerfs)
def test_a_rounded_rectangle_grows_by_the_kerf_to_the_area_of_the_larger_one(
    size: tuple[float, float, float], kerf: float
) -> None:
    width, height, radius = size
    grown = outline_cut(rounded_rectangle(0, 0, width, height, radius), kerf, "piece")
    assert grown.bounds.width - width == pytest.approx(kerf, abs=1e-9)
    assert grown.bounds.height - height == pytest.approx(kerf, abs=1e-9)
    larger = (width + kerf) * (height + kerf) - (4 - pi) * (radius + kerf / 2) ** 2
    assert grown.area == pytest.approx(larger, rel=1e-12)


@given(rounded(), kerfs)
def test_an_opening_shrinks_by_the_kerf_to_the_area_of_the_smaller_one(
    size: tuple[float, float, float], kerf: float
) -> None:
    width, height, radius = size
    shrunk = opening_cut(rounded_rectangle(0, 0, width, height, radius).cw(), kerf, "piece")
    smaller = (width - kerf) * (height - kerf) - (4 - pi) * (radius - kerf / 2) ** 2
    assert -shrunk.area == pytest.approx(smaller, rel=1e-12)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(PIECES), kerfs)
def test_every_edge_of_a_drafted_piece_moves_out_by_half_the_kerf_arcs_about_their_own_centres(
    piece: Piece, kerf: float
) -> None:
    outline = piece.outline
    grown = outline_cut(outline, kerf, "piece")
    kept = [s for s in grown.segments if _twin(s.point_at(s.length / 2), outline, kerf)]
    assert len(kept) >= len(outline.segments)
    for before in outline.segments:
        if before.is_arc:
            turn = kerf / 2 * copysign(1, before.bulge)
            twins = [s for s in grown.segments if s.is_arc and s.centre.distance_to(before.centre) < 1e-6]
            assert [s.radius for s in twins] == pytest.approx([before.radius + turn] * len(twins), abs=1e-6)
            assert twins


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(PIECES), kerfs)
def test_the_area_of_a_drafted_piece_grows_as_its_length_and_its_turns_say(piece: Piece, kerf: float) -> None:
    """Steiner's formula: A + P d + d2 (half the sweep of every arc, tangent of half the turn at every corner)."""
    outline, d = piece.outline, kerf / 2
    turns = fsum(s.sweep / 2 for s in outline.segments) + fsum(tan(turn / 2) for turn in _turns(outline))
    wanted = outline.area + outline.length * d + turns * d * d
    assert outline_cut(outline, kerf, "piece").area == pytest.approx(wanted, rel=1e-9)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(PIECES), kerfs)
def test_a_beam_half_a_kerf_wide_either_side_leaves_the_net_piece(piece: Piece, kerf: float) -> None:
    outline = piece.outline
    left = offset_one(outline_cut(outline, kerf, "piece"), -kerf / 2, Join.SHARP)
    assert left.area == pytest.approx(outline.area, rel=1e-9)
    for x, y, _ in outline.vertices:
        assert left.distance_to(Point(x, y)) < 1e-6


def _twin(p: Point, outline: Path, kerf: float) -> bool:
    return abs(outline.distance_to(p) - kerf / 2) < 1e-6 and not outline.contains(p)


def _turns(outline: Path) -> list[float]:
    """The angle turned at every vertex, radians, to the left positive."""
    turns = []
    for before, after in zip((outline.segments[-1], *outline.segments[:-1]), outline.segments, strict=True):
        u, v = before.tangent_at(before.length), after.tangent_at(0.0)
        turns.append(copysign(acos(max(-1.0, min(1.0, u.dot(v)))), u.cross(v)))
    return turns
