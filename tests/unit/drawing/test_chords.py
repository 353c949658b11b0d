"""Arcs as chords: how far they stray, what stays."""

from __future__ import annotations

from math import hypot, pi

import pytest

from patternforge.drawing.chords import in_chords
from patternforge.drawing.model import Dot, Figure, Ink, Role, Sheet, Stroke
from patternforge.errors import GeometryError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import from_vertices, polyline
from patternforge.geometry.point import Point
from tests.figures import sheet

TOLERANCE = 0.02


def chorded(ink: Ink, tolerance: float = TOLERANCE) -> Stroke:
    drawn = in_chords(Sheet("sheet", 50, 50, (Figure("piece", "outer", (ink,)),)), tolerance)
    (stroke,) = drawn.figures[0].inks
    assert isinstance(stroke, Stroke)
    return stroke


def test_no_arc_and_no_dot_is_left_and_everything_stands_in_its_order() -> None:
    before, after = sheet(), in_chords(sheet(), TOLERANCE)
    roles = [[ink.role for ink in figure.inks] for figure in before.figures]
    assert [[ink.role for ink in figure.inks] for figure in after.figures] == roles
    strokes = [ink for figure in after.figures for ink in figure.inks if isinstance(ink, Stroke)]
    assert not any(segment.is_arc for stroke in strokes for segment in stroke.path.segments)
    assert not [ink for figure in after.figures for ink in figure.inks if isinstance(ink, Dot)]


def test_a_circle_becomes_as_many_chords_as_its_tolerance_needs() -> None:
    """A chord of half angle a rises r (1 - cos a): r = 5 and 0.02 give a = 5.126 degrees, 36 chords."""
    stroke = chorded(Dot(Role.HOLE, Point(20, 20), 10.0))
    assert stroke.path.closed
    assert len(stroke.path.segments) == 36
    middles = [segment.point_at(segment.length / 2) for segment in stroke.path.segments]
    rises = [5.0 - hypot(at.x - 20, at.y - 20) for at in middles]
    assert max(rises) <= TOLERANCE
    assert max(rises) > 0.9 * TOLERANCE
    assert stroke.path.is_ccw


@pytest.mark.parametrize("tolerance", [0.1, 0.02, 0.005])
def test_the_area_lost_is_that_of_the_slices_between_arc_and_chord(tolerance: float) -> None:
    outline = rounded_rectangle(0, 0, 90, 60, 5)
    stroke = chorded(Stroke(Role.OUTLINE, outline), tolerance)
    lost = outline.area - stroke.path.area
    # A slice is at most two thirds of chord and rise, and all chords together are shorter than their arcs.
    assert 0 < lost <= 2 / 3 * tolerance * 2 * pi * 5
    assert stroke.path.bounds == outline.bounds


def test_what_has_no_arc_is_left_as_it_is() -> None:
    line = polyline([Point(0, 0), Point(9, 3)])
    assert chorded(Stroke(Role.MARK, line)).path is line


def test_an_open_arc_keeps_its_ends() -> None:
    stroke = chorded(Stroke(Role.MARK, from_vertices([(0, 0, 1.0), (8, 0, 0.0)], closed=False)))
    assert not stroke.path.closed
    assert (stroke.path.start, stroke.path.end) == (Point(0, 0), Point(8, 0))


def test_a_tolerance_of_nothing_is_refused() -> None:
    with pytest.raises(GeometryError, match="0 mm is not a tolerance"):
        in_chords(sheet(), 0.0)
