"""Outlines with a role on every edge."""

from __future__ import annotations

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.point import Point
from patternforge.geometry.transform import rotation
from patternforge.wallet.outline import Corner, shape
from patternforge.wallet.pattern import EdgeRole

RAW, MOUTH, SEWN = EdgeRole.RAW, EdgeRole.MOUTH, EdgeRole.SEWN


def test_each_edge_keeps_the_role_of_the_corner_it_leaves_and_arcs_are_raw() -> None:
    found = shape(
        [
            Corner(Point(0, 0), 5.0, role=SEWN),
            Corner(Point(100, 0), 0.0, role=RAW),
            Corner(Point(100, 60), 0.0, role=MOUTH),
            Corner(Point(0, 60), 0.0, role=SEWN),
        ]
    )
    roles = {
        (round(segment.start.x), round(segment.start.y), segment.is_arc): role
        for segment, role in zip(found.path.segments, found.edges, strict=True)
    }
    assert roles == {
        (5, 0, False): SEWN,
        (100, 0, False): RAW,
        (100, 60, False): MOUTH,
        (0, 60, False): SEWN,
        (0, 5, True): RAW,
    }
    # 6000 less what a fillet of 5 takes off one corner: (4 - pi) / 4 of 25.
    assert found.path.area == pytest.approx(6000 - 25 * (1 - 3.14159265 / 4))


def test_an_edge_may_be_an_arc_with_its_own_role() -> None:
    # A half circle of radius 10 cut into the upper edge, run from right to left: bulge -1.
    found = shape(
        [
            Corner(Point(0, 0)),
            Corner(Point(60, 0)),
            Corner(Point(60, 40), role=MOUTH),
            Corner(Point(40, 40), bulge=-1.0, role=MOUTH),
            Corner(Point(20, 40), role=MOUTH),
            Corner(Point(0, 40)),
        ]
    )
    assert found.edges == (RAW, RAW, MOUTH, MOUTH, MOUTH, RAW)
    assert found.path.area == pytest.approx(2400 - 3.14159265 * 50)


def test_a_corner_given_twice_counts_once() -> None:
    found = shape([Corner(Point(0, 0)), Corner(Point(50, 0)), Corner(Point(50, 0)), Corner(Point(50, 30))])
    assert len(found.path.segments) == 3


def test_a_turned_shape_keeps_its_roles() -> None:
    found = shape([Corner(Point(0, 0), role=SEWN), Corner(Point(50, 0), role=MOUTH), Corner(Point(50, 30))])
    turned = found.moved(rotation(90))
    assert turned.edges == (SEWN, MOUTH, RAW)
    assert (turned.path.segments[0].end.x, turned.path.segments[0].end.y) == pytest.approx((0.0, 50.0))


def test_a_rounding_that_does_not_fit_is_refused() -> None:
    with pytest.raises(GeometryError, match="corner radii take"):
        shape([Corner(Point(0, 0), 30.0), Corner(Point(50, 0), 30.0), Corner(Point(50, 90)), Corner(Point(0, 90))])
