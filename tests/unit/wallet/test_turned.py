"""The flat outline of pieces whose edges are turned in, reckoned on paper.

Every edge is 0.4 mm thick and turned over 0.8 mm: the bend is pi x 0.6 = 1.884956 long, the finished edge stands
0.8 mm outside it, so 8 mm of overlap take a = 9.084956 mm beyond the finished line.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi, sin, sqrt
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polygon
from patternforge.geometry.point import Point
from patternforge.geometry.regions import fault_of
from patternforge.leather.turn import Turn
from patternforge.wallet.blank import TurnedSide
from patternforge.wallet.finishing import TurnedCorner, TurnedSpec
from patternforge.wallet.outline import Shape
from patternforge.wallet.spec import Edge
from patternforge.wallet.turned import FoldNotch, turned_cut
from patternforge.wallet.words import EdgeRole
from tests.unit.wallet.built import leather

TURN = Turn(0.4, 0.4, 0.5)
A = pi * 0.6 + 8.0 - 0.8
ALL = (Edge.BOTTOM, Edge.RIGHT, Edge.TOP, Edge.LEFT)


def sides(*edges: Edge, **changes: Any) -> tuple[TurnedSide, ...]:
    spec = replace(TurnedSpec(edges, 8.0), **changes)
    return tuple(TurnedSide(edge, spec, TURN, leather("outer", 1.2), 0.8) for edge in ALL if edge in edges)


def rectangle(radius: float = 0.0) -> Shape:
    path = rounded_rectangle(0, 0, 100, 60, radius)
    return Shape(path, (EdgeRole.SEWN,) * len(path.segments))


def points(shape: Shape) -> list[tuple[float, float]]:
    return [(round(x, 4) + 0.0, round(y, 4) + 0.0) for x, y, _ in shape.path.vertices]


def test_a_mitre_is_cut_at_45_degrees_one_and_a_half_thicknesses_off_the_finished_corner() -> None:
    cut = turned_cut(rectangle(), sides(*ALL), ()).shape
    s = 0.6 * sqrt(2)  # the cut meets the line through the corner at 45 degrees, 0.6 mm beyond it
    corner = [(-(A), -(s - A)), (-(s - A), -A)]
    expected = {(round(x, 4), round(y, 4)) for x, y in corner}
    assert expected <= set(points(cut))
    assert len(cut.path.segments) == 8
    assert cut.path.bounds.width == pytest.approx(100 + 2 * A)
    assert cut.path.bounds.height == pytest.approx(60 + 2 * A)
    assert cut.path.distance_to(Point(0, 0)) == pytest.approx(0.6)
    assert set(cut.edges) == {EdgeRole.TURNED}


def test_a_declared_gap_is_left_at_the_corner() -> None:
    cut = turned_cut(rectangle(), sides(*ALL, corner_gap=1.1), ()).shape
    assert cut.path.distance_to(Point(100, 60)) == pytest.approx(1.1)


def test_of_two_gaps_asked_for_at_a_corner_the_wider_is_left() -> None:
    asked = (*sides(Edge.RIGHT, corner_gap=0.5), *sides(Edge.TOP, corner_gap=1.2))
    assert turned_cut(rectangle(), asked, ()).shape.path.distance_to(Point(100, 60)) == pytest.approx(1.2)


def test_a_mitre_at_a_rounded_corner_leaves_the_gap_beyond_the_middle_of_the_rounding() -> None:
    cut = turned_cut(rectangle(3.0), sides(*ALL, corners=TurnedCorner.MITRE, corner_gap=0.6), ()).shape
    middle = Point(3.0, 3.0) - Point(3.0, 0.0).rotated(pi / 4)
    assert cut.path.distance_to(middle) == pytest.approx(0.6)
    assert not any(s.is_arc for s in cut.path.segments)


def test_edges_of_one_kind_only_keep_the_others_and_end_square_at_them() -> None:
    cut = turned_cut(rectangle(), sides(Edge.TOP), ()).shape
    a = round(A, 4)
    assert points(cut) == [(100.0, round(60 + A, 4)), (0.0, round(60 + a, 4)), (0, 60), (0, 0), (100, 0), (100, 60)]
    roles = dict(zip(points(cut), cut.edges, strict=True))
    assert [role for at, role in roles.items() if at[1] < 60] == [EdgeRole.SEWN, EdgeRole.SEWN]
    assert roles[(0.0, 60.0)] is EdgeRole.SEWN


def test_two_edges_that_meet_share_a_mitre_and_leave_the_other_corners() -> None:
    cut = turned_cut(rectangle(), sides(Edge.TOP, Edge.RIGHT), ())
    assert len(cut.corners) == 1
    assert cut.corners[0].at == Point(100, 60)
    assert {(0.0, 0.0), (0.0, 60.0), (100.0, 0.0)} <= set(points(cut.shape))
    assert fault_of(cut.shape.path) is None


def test_pleats_take_out_what_the_rim_is_longer_than_the_place_it_is_turned_to() -> None:
    cut = turned_cut(rectangle(10.0), sides(*ALL, overlap=5.0), ())
    (corner, *_) = cut.corners
    a = pi * 0.6 + 5.0 - 0.8
    excess = pi / 2 * ((10 + a) - (10 - 5.8))
    assert corner.notches == 5  # 18.67 mm of excess in notches of at most 4 mm
    assert corner.notches * corner.notch == pytest.approx(excess)
    assert corner.gap == pytest.approx(pi * 0.6 - 0.8 + 1.0)
    # Four corners of six arcs and five notches of two lines, and four sides.
    assert len(cut.shape.path.segments) == 4 * (6 + 10) + 4
    assert fault_of(cut.shape.path) is None


def test_notches_stand_evenly_round_the_corner_with_their_tips_off_the_finished_edge() -> None:
    cut = turned_cut(rectangle(10.0), sides(*ALL, overlap=5.0), ())
    tips = [p for p in (Point(x, y) for x, y, _ in cut.shape.path.vertices) if p.x < 10 and p.y < 10]
    centre = Point(10, 10)
    tips = sorted((p for p in tips if p.distance_to(centre) < 12.5), key=lambda p: (p - centre).unit().x)
    assert [p.distance_to(centre) for p in tips] == pytest.approx([10 + cut.corners[0].gap] * 5)
    steps = [(p - centre).unit().dot((q - centre).unit()) for p, q in pairwise(tips)]
    assert steps == pytest.approx([steps[0]] * 4)


def test_the_area_of_the_notches_is_that_of_their_triangles_and_caps() -> None:
    cut = turned_cut(rectangle(10.0), sides(*ALL, overlap=5.0), ())
    corner, a = cut.corners[0], pi * 0.6 + 5.0 - 0.8
    whole = rounded_rectangle(-a, -a, 100 + a, 60 + a, 10 + a)
    rim, tip, half = 10 + a, 10 + corner.gap, corner.notch / (10 + a) / 2
    # A sector of the rim less the two triangles between its sides and those of the notch.
    each = rim * rim * half - rim * tip * sin(half)
    assert whole.area - cut.shape.path.area == pytest.approx(4 * corner.notches * each)


def test_a_corner_turned_in_less_deep_than_its_sides_slants_down_to_its_rim() -> None:
    cut = turned_cut(rectangle(8.0), sides(*ALL, corner_overlap=5.0), ())
    rim = 8 + pi * 0.6 + 5.0 - 0.8
    radii = {round(s.radius, 6) for s in cut.shape.path.segments if s.is_arc}
    assert radii == {round(rim, 6)}
    start = (round(8 + 3.0, 4), round(-A, 4))
    assert start in points(cut.shape)
    assert fault_of(cut.shape.path) is None


def test_a_notch_is_cut_in_the_middle_of_a_fold_at_either_edge() -> None:
    cut = turned_cut(rectangle(), sides(*ALL), [FoldNotch(50.0, 4.0)]).shape
    tip = round(A - 7.0, 4)  # the overlap of 8 mm less the gap of 1 mm deep
    assert {(48.0, round(-A, 4)), (50.0, -tip), (52.0, round(-A, 4)), (50.0, round(60 + tip, 4))} <= set(points(cut))


def test_the_finished_line_is_drawn_along_what_is_turned_in_only() -> None:
    (line,) = turned_cut(rectangle(), sides(Edge.TOP, Edge.LEFT), ()).lines
    assert not line.closed
    assert line.length == pytest.approx(160)
    (whole,) = turned_cut(rectangle(10.0), sides(*ALL, overlap=5.0), ()).lines
    assert whole.closed
    apart = turned_cut(rectangle(), sides(Edge.TOP, Edge.BOTTOM), ()).lines
    assert [line.length for line in apart] == pytest.approx([100, 100])


def test_sides_of_different_overlaps_meet_in_one_straight_mitre() -> None:
    narrow, wide = sides(Edge.RIGHT, overlap=6.0), sides(Edge.TOP, overlap=9.0)
    cut = turned_cut(rectangle(), (*narrow, *wide), ()).shape
    assert cut.path.bounds.x1 == pytest.approx(100 + A - 2)
    assert cut.path.bounds.y1 == pytest.approx(60 + A + 1)
    assert cut.path.distance_to(Point(100, 60)) == pytest.approx(0.6)


@pytest.mark.parametrize(
    ("shape", "turned", "refused"),
    [
        (rectangle(5.0), sides(Edge.TOP), "must be square, or the edge next to it turned in too"),
        (rectangle(5.0), sides(*ALL), "has no room for 8.00 mm turned in: let 'corner_overlap' be less than 4.20 mm"),
        (rectangle(), sides(*ALL, corners=TurnedCorner.PLEATS), "is sharp: pleats are for rounded corners"),
        (rectangle(), sides(*ALL, corner_gap=9.0), "cuts nothing off"),
        (rectangle(9.0), sides(*ALL, overlap=2.0, notch_gap=2.0), "need an overlap of more than 2.00 mm"),
        (
            rectangle(12.0),
            (*sides(Edge.RIGHT, overlap=6.0), *sides(Edge.TOP, overlap=5.0)),
            "both edges must be turned in alike",
        ),
        (
            rectangle(),
            (*sides(Edge.RIGHT, corners=TurnedCorner.MITRE), *sides(Edge.TOP)),
            "cut in two ways",
        ),
    ],
)
def test_what_cannot_be_turned_in_is_refused(shape: Shape, turned: tuple[TurnedSide, ...], refused: str) -> None:
    with pytest.raises(DraftError, match=refused):
        turned_cut(shape, turned, ())


def test_an_edge_with_a_notch_in_it_is_refused() -> None:
    path = polygon([Point(*p) for p in ((0, 0), (40, 0), (50, 5), (60, 0), (100, 0), (100, 60), (0, 60))])
    with pytest.raises(DraftError, match="the bottom edge is not one straight line"):
        turned_cut(Shape(path, (EdgeRole.RAW,) * 7), sides(Edge.BOTTOM), ())


def test_a_fold_notch_wider_than_its_edge_is_refused() -> None:
    with pytest.raises(DraftError, match="a fold notch does not fit"):
        turned_cut(rectangle(), sides(*ALL), [FoldNotch(2.0, 40.0)])
    with pytest.raises(DraftError, match="no room for notches at folds"):
        turned_cut(rectangle(), sides(*ALL, overlap=1.0, notch_gap=1.0), [FoldNotch(50.0, 2.0)])


def test_corners_that_meet_in_the_middle_of_a_side_are_refused() -> None:
    path = rounded_rectangle(0, 0, 100, 10, 0)
    with pytest.raises(DraftError, match="no room is left"):
        turned_cut(Shape(path, (EdgeRole.RAW,) * 4), sides(*ALL, overlap=16.0), ())
