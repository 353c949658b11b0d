"""Laws of paths: parts, measures, flattening."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternforge.geometry.flatten import flattened
from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point
from tests.laws.geometry_shapes import outlines, points

modest = settings(max_examples=100, deadline=None)
shares = st.floats(0, 1)


@modest
@given(outlines(), shares, shares)
def test_the_lengths_of_two_parts_add_up_to_the_whole(path: Path, one: float, other: float) -> None:
    a, b = path.length * one, path.length * other
    assume(abs(a - b) > 1e-6 and abs(abs(a - b) - path.length) > 1e-6)
    assert path.sub(a, b).length + path.sub(b, a).length == pytest.approx(path.length, abs=1e-7)


@modest
@given(outlines(), shares, shares)
def test_a_part_runs_between_the_points_it_names(path: Path, one: float, other: float) -> None:
    a, b = sorted((path.length * one, path.length * other))
    assume(b - a > 1e-6)
    part = path.sub(a, b)
    assert part.start.distance_to(path.point_at(a)) < 1e-8
    assert part.end.distance_to(path.point_at(b)) < 1e-8
    assert part.point_at(part.length / 2).distance_to(path.point_at((a + b) / 2)) < 1e-8


@modest
@given(outlines(), shares)
def test_the_point_at_a_distance_is_found_again_at_that_distance(path: Path, share: float) -> None:
    d = path.length * share
    p = path.point_at(d)
    assert path.point_at(path.nearest(p)).distance_to(p) < 1e-8


@modest
@given(outlines())
def test_reversing_changes_the_sign_of_the_area_and_nothing_else(path: Path) -> None:
    assert path.reversed().area == pytest.approx(-path.area, rel=1e-12)
    assert path.reversed().length == pytest.approx(path.length, rel=1e-12)
    assert path.reversed().reversed() == path


@modest
@given(outlines(), points())
def test_inside_agrees_with_finely_flattened_lines_away_from_the_rim(path: Path, p: Point) -> None:
    near = p / 4
    assume(path.distance_to(near) > 0.01)
    assert path.contains(near) == polygon(flattened(path, 0.005)).contains(near)


@modest
@given(outlines(), st.floats(0.001, 1))
def test_no_flattened_chord_leaves_its_arc_by_more_than_the_tolerance(path: Path, tolerance: float) -> None:
    flat = flattened(path, tolerance)
    assert all(path.distance_to(p) < 1e-8 for p in flat)
    middles = [(p + q) / 2 for p, q in pairwise((*flat, flat[0]))]
    assert max(path.distance_to(middle) for middle in middles) <= tolerance + 1e-9


@modest
@given(outlines(), st.floats(0.001, 1))
def test_flattening_changes_the_area_by_less_than_length_times_tolerance(path: Path, tolerance: float) -> None:
    assert abs(polygon(flattened(path, tolerance)).area - path.area) <= path.length * tolerance


@modest
@given(outlines(), st.integers(0, 99), shares)
def test_the_interior_laid_out_judges_points_level_with_a_corner(path: Path, corner: int, share: float) -> None:
    side = path.segments[corner % len(path.segments)]
    for level in (side.end.y, side.start.y + (side.end.y - side.start.y)):  # often a bit apart
        p = Point(path.bounds.x0 + path.bounds.width * share, level)
        assert path.distance_to(p) <= 1e-6 or Interior(path).holds(p) == path.contains(p)
