"""The bulk map against a raster of numbers: every piece and item asked at every point, none of them cut."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings

from patternforge.fit.bulk_map import BulkMap, closed_map, open_map
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import Layout, layout
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Pattern
from tests.laws.designs import drafts

STEP = 6.3  # mm between the points of the raster


def laid(pattern: Pattern) -> Layout:
    return layout(pattern, {leather.role: leather for leather in pattern.design.leathers})


def raster(found: Layout) -> dict[tuple[float, float], float]:
    """The thickness over points of every panel, piece by piece and item by item."""
    points: dict[tuple[float, float], float] = {}
    for number, panel in enumerate(found.pattern.panels):
        for x in np.arange(panel.x0 + 0.37, panel.x1, STEP):
            for y in np.arange(0.41, found.pattern.height, STEP):
                points[float(x), float(y)] = stack_at(found, number, Point(float(x), float(y)))
    return points


def stack_at(found: Layout, panel: int, at: Point) -> float:
    total = 0.0
    for piece in found.pattern.pieces:
        if panel in piece.placement.panels:
            there = piece.placement.to_piece(at)
            inside = piece.outline.contains(there) and not any(hole.contains(there) for hole in piece.openings)
            total += found.thickness(piece) * inside
    for ply in found.plies:
        if ply.outline is None and panel in ply.panels:
            box = ply.bounds
            total += ply.thickness * (box.x0 < at.x < box.x1 and box.y0 < at.y < box.y1)
    return total


def mapped(found: BulkMap, at: Point) -> float:
    return sum(spot.thickness for spot in found.spots if spot.region.contains(at))


@settings(max_examples=12)
@given(drafts())
def test_the_map_says_at_every_point_what_pieces_and_items_add_up_to(pattern: Pattern) -> None:
    found = laid(pattern)
    bulk = open_map(found)
    points = raster(found)
    off = [at for at, thickness in points.items() if abs(mapped(bulk, Point(*at)) - thickness) > 1e-6]
    # Points within rounding of an edge may fall on either side of it.
    assert len(off) <= len(points) / 500
    assert sum(points.values()) > 0


@settings(max_examples=30)
@given(drafts())
def test_the_volume_under_both_maps_is_the_same(pattern: Pattern) -> None:
    found = laid(pattern)
    closed = closed_wallet(found)
    if not closed.order.open_groups and len(closed.order.stack) == len(pattern.panels):
        assert closed_map(found, closed).volume == pytest.approx(open_map(found).volume, rel=1e-6)


@settings(max_examples=30)
@given(drafts(lambda design: not design.body.folds))
def test_without_folds_the_volume_is_area_times_thickness(pattern: Pattern) -> None:
    found = laid(pattern)
    leather = sum(piece.area * found.thickness(piece) for piece in pattern.pieces)
    held = sum(ply.thickness * ply.bounds.width * ply.bounds.height for ply in found.plies if ply.outline is None)
    assert open_map(found).volume == pytest.approx(leather + held, rel=1e-6)


@settings(max_examples=30)
@given(drafts())
def test_nowhere_is_the_closed_wallet_thicker_than_its_panels_at_their_thickest(pattern: Pattern) -> None:
    found = laid(pattern)
    closed = closed_wallet(found)
    assert closed_map(found, closed).highest.thickness <= closed.thickness + 1e-6
