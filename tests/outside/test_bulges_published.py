"""The bulge of an arc against published values and against ezdxf's own arc formulas."""

from __future__ import annotations

import math

import pytest
from ezdxf.math import Vec2, bulge_center, bulge_radius

from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment


# Definition: tangent of a quarter of the included angle, negative for clockwise, 0 straight, 1 a half circle, from
# the SetBulge / GetBulge reference (help.autodesk.com, 2016); the two values from the worked examples at
# qiita.com/tydesign/items/cab9d9cf6a625204707c, given there to six decimals.
@pytest.mark.parametrize(("degrees", "bulge"), [(90, 0.414214), (180, 1.0), (-90, -0.414214), (-180, -1.0)])
def test_arcs_have_the_published_bulge(degrees: float, bulge: float) -> None:
    arc = arc_segment(Point(3, 4), 10, 0.5, 0.5 + math.radians(degrees))
    assert arc.bulge == pytest.approx(bulge, abs=5e-7)
    assert math.degrees(Segment(Point(0, 0), Point(1, 0), bulge).sweep) == pytest.approx(degrees, abs=1e-4)


# Plane geometry: on a chord c an arc of bulge b rises |b| c / 2 and has the radius c (1 + b^2) / (4 |b|).
@pytest.mark.parametrize("bulge", [0.05, 0.414214, 1.0, 2.5, -0.3, -1.7])
def test_rise_and_radius_follow_from_bulge_and_chord(bulge: float) -> None:
    arc = Segment(Point(0, 0), Point(8, 0), bulge)
    middle = arc.point_at(arc.length / 2)
    assert middle.y == pytest.approx(-bulge * 4, abs=1e-12)
    assert middle.distance_to(arc.centre) == pytest.approx(8 * (1 + bulge**2) / (4 * abs(bulge)), abs=1e-9)


@pytest.mark.parametrize("bulge", [0.05, 0.414214, 1.0, 2.5, -0.3, -1.7])
def test_centre_and_radius_are_those_of_ezdxf(bulge: float) -> None:
    arc = Segment(Point(2, -1), Point(7, 11), bulge)
    start, end = Vec2(2, -1), Vec2(7, 11)
    centre = bulge_center(start, end, bulge)
    assert arc.centre.distance_to(Point(centre.x, centre.y)) < 1e-9
    assert arc.radius == pytest.approx(bulge_radius(start, end, bulge), abs=1e-9)
