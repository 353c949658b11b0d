"""Drawings made smaller or larger."""

from __future__ import annotations

import pytest

from patternforge.drawing.model import Area, Dot, Figure, Role, Sheet, Stroke, Text
from patternforge.drawing.scaling import scaled_ink, scaled_sheet
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Bounds, Point


def test_arcs_stay_arcs_and_areas_go_with_the_square() -> None:
    path = rounded_rectangle(0.0, 0.0, 40.0, 20.0, 4.0)
    half = scaled_ink(Stroke(Role.OUTLINE, path), 0.5)
    assert isinstance(half, Stroke)
    assert half.path.area == pytest.approx(path.area / 4)
    assert half.path.bounds == Bounds(0.0, 0.0, 20.0, 10.0)
    assert sum(segment.is_arc for segment in half.path.segments) == 4


def test_circles_letters_open_lines_and_tones_go_along() -> None:
    dot = scaled_ink(Dot(Role.HOLE, Point(2.0, 4.0), 1.0), 3.0)
    text = scaled_ink(Text(Role.LABEL, Point(1.0, 1.0), 2.0, "a", 90.0), 3.0)
    line = scaled_ink(Stroke(Role.FOLD, polyline([Point(0, 0), Point(1, 1)])), 3.0)
    area = scaled_ink(Area(Role.TINT, (rounded_rectangle(0, 0, 1, 1, 0),), 0.4), 3.0)
    assert dot == Dot(Role.HOLE, Point(6.0, 12.0), 3.0)
    assert text == Text(Role.LABEL, Point(3.0, 3.0), 6.0, "a", 90.0)
    assert isinstance(line, Stroke)
    assert (line.path.end, line.path.closed) == (Point(3.0, 3.0), False)
    assert isinstance(area, Area)
    assert (area.paths[0].area, area.tone) == (9.0, 0.4)


def test_no_drawing_is_made_nothing() -> None:
    with pytest.raises(DraftError, match="0 times"):
        scaled_sheet(Sheet("a", 1.0, 1.0, (Figure("f", "", ()),)), 0.0)
