"""Kerf: half of it on every side, once, lines staying parallel and arcs keeping their centres."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import acos, copysign, fsum, pi, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.drafting.kerf import opening_cut, outline_cut, width_cut
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import DraftingOptions, LaserOptions, Purpose
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.offset import Join, offset_one
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Piece
from tests.designs_built import sleeve, three_fold, two_fold
from tests.shapes_built import windowed

PATTERNS = [drafted(design) for design in (two_fold(), sleeve(), three_fold(), windowed())]
PIECES = [piece for pattern in PATTERNS for piece in pattern.pieces]
OPENINGS = [opening for piece in PIECES for opening in piece.openings]

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


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(PIECES), kerfs, st.sampled_from((0.0, 0.4)))
def test_every_width_between_parallel_edges_of_an_outline_grows_by_the_kerf_and_twice_the_allowance(
    piece: Piece, kerf: float, allowance: float
) -> None:
    """Measured across the leather; a notch, where the measure runs the other way, narrows by as much."""
    before = _supports(piece.outline)
    grown = _supports(outline_cut(piece.outline, kerf, "piece", allowance))
    pairs = [(one, other) for one, other in combinations(before, 2) if _oppose(one[0], other[0])]
    assert pairs
    for one, other in pairs:
        after = [_moved_support(each, grown, kerf / 2 + allowance) for each in (one, other)]
        assert sum(after) - (one[1] + other[1]) == pytest.approx(kerf + 2 * allowance, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(rounded(), kerfs)
def test_every_width_between_parallel_edges_of_an_opening_shrinks_by_the_kerf(
    size: tuple[float, float, float], kerf: float
) -> None:
    opening = rounded_rectangle(0, 0, *size).cw()
    before, shrunk = _supports(opening), _supports(opening_cut(opening, kerf, "piece"))
    assert len(before) == len(shrunk) == 4
    for one, other in combinations(before, 2):
        if _oppose(one[0], other[0]):
            after = [_moved_support(each, shrunk, kerf / 2) for each in (one, other)]
            # Outwards from the leather is into the opening: both sums are less than nothing, its width negative.
            assert -(one[1] + other[1]) - -sum(after) == pytest.approx(kerf, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(OPENINGS), st.floats(0.01, 0.4))
def test_an_opening_of_a_drafted_piece_keeps_the_centres_of_its_arcs_and_comes_back(
    opening: Path, kerf: float
) -> None:
    cut = opening_cut(opening, kerf, "piece")
    assert -cut.area < -opening.area
    arcs = [segment for segment in cut.segments if segment.is_arc]
    for before in (segment for segment in opening.segments if segment.is_arc):
        twins = [arc for arc in arcs if arc.centre.distance_to(before.centre) < 1e-6]
        assert [arc.radius for arc in twins] == pytest.approx([before.radius - kerf / 2] * len(twins), abs=1e-6)
        assert twins
    left = offset_one(cut, kerf / 2, Join.SHARP)
    assert left.area == pytest.approx(opening.area, rel=1e-9)
    assert max(left.distance_to(Point(x, y)) for x, y, _ in opening.vertices) < 1e-6


@settings(max_examples=60, deadline=None)
@given(st.floats(0.6, 5.0), st.floats(0.0, 0.5))
def test_a_hole_or_slit_is_drawn_shorter_by_the_kerf_and_becomes_its_net_size(size: float, kerf: float) -> None:
    assert width_cut(size, kerf, "piece") + kerf == pytest.approx(size, abs=1e-12)


def test_a_kerf_of_nothing_changes_nothing() -> None:
    assert OPENINGS
    for piece in PIECES:
        assert outline_cut(piece.outline, 0.0, piece.name) is piece.outline
    for opening in OPENINGS:
        assert opening_cut(opening, 0.0, "piece") is opening
    for pattern in PATTERNS:
        none = figures(pattern, Purpose.LASER, DraftingOptions(LaserOptions(kerf=0.0)))
        assert none == figures(pattern, Purpose.LASER)


_Support = tuple[Point, float]  # a direction and how far a straight edge that faces it lies that way, mm


def _supports(path: Path) -> list[_Support]:
    """Every straight edge by the direction that leads away from the leather, and its distance from the origin."""
    return [(normal, normal.dot(segment.start)) for segment, normal in _straight(path)]


def _straight(path: Path) -> Iterator[tuple[Segment, Point]]:
    for segment in path.segments:
        if not segment.is_arc:
            yield segment, -(segment.end - segment.start).unit().perpendicular()


def _oppose(one: Point, other: Point) -> bool:
    return one.dot(other) < 0 and abs(one.cross(other)) < 1e-12


def _moved_support(before: _Support, after: list[_Support], distance: float) -> float:
    """The place of the edge that faces the same way and lies nearest to ``distance`` farther out."""
    alike = [place for normal, place in after if normal.dot(before[0]) > 0 and abs(normal.cross(before[0])) < 1e-9]
    return min(alike, key=lambda place: abs(place - before[1] - distance))


def _twin(p: Point, outline: Path, kerf: float) -> bool:
    return abs(outline.distance_to(p) - kerf / 2) < 1e-6 and not outline.contains(p)


def _turns(outline: Path) -> list[float]:
    """The angle turned at every vertex, radians, to the left positive."""
    turns = []
    for before, after in zip((outline.segments[-1], *outline.segments[:-1]), outline.segments, strict=True):
        u, v = before.tangent_at(before.length), after.tangent_at(0.0)
        turns.append(copysign(acos(max(-1.0, min(1.0, u.dot(v)))), u.cross(v)))
    return turns
