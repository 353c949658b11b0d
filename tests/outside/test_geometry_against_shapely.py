"""Lengths, areas, inside and contours against shapely (GEOS), which knows straight lines only.

Arcs are handed over as chords that lie within 1e-4 mm of them, so areas may differ by that times the length of the
outline. Contours are compared by the area between both; the reference is the union of what GEOS draws round each
chord alone, its circles in steps of a quarter degree (2.4e-6 of the distance). Buffering the whole ring at once would
not do: GEOS first simplifies inward curves by up to a hundredth of the distance.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
import shapely

from patternforge.geometry.corners import filleted, rounded_rectangle
from patternforge.geometry.flatten import flattened
from patternforge.geometry.offset import Join, offset
from patternforge.geometry.path import Path, from_vertices, polygon
from patternforge.geometry.point import Point

CHORDS = 1e-4  # mm
ELL = polygon([Point(0, 0), Point(30, 0), Point(30, 12), Point(12, 12), Point(12, 30), Point(0, 30)])
CUP = polygon(Point(x, y) for x, y in [(0, 0), (26, 0), (26, 30), (16, 30), (16, 10), (10, 10), (10, 30), (0, 30)])
TEE = polygon(Point(x, y) for x, y in [(8, 0), (92, 0), (92, 38), (100, 38), (100, 60), (0, 60), (0, 38), (8, 38)])
# A wedge whose tip points at a wall near enough for the sharp tip to enter the wall's own contour, or to pierce it.
WEDGE = polygon(
    Point(x, y)
    for x, y in [(0, 0), (40, 0), (40, 30), (33, 30), (33, 5), (5, 5), (5, 12), (26, 15), (5, 18), (0, 30)]
)
OUTLINES = {
    "rectangle": rounded_rectangle(0, 0, 90, 60, 0),
    "rounded rectangle": rounded_rectangle(0, 0, 90, 60, 5),
    "slot": rounded_rectangle(0, 0, 40, 8, 4),
    "circle": from_vertices([(-5, 0, 1), (5, 0, 1)], closed=True),
    "ell": ELL,
    "rounded ell": filleted(ELL, [2, 3, 1, 4, 1, 2]),
    "cup": CUP,
    "wedge": WEDGE,
    "rounded cup": filleted(CUP, 2),
    "tee": filleted(TEE, [0, 0, 2, 2, 4, 4, 2, 2]),
    "dipped edge": from_vertices([(0, 0, 0), (80, 0, 0), (80, 50, -0.15), (0, 50, 0)], closed=True),
    "thumb notch": from_vertices(
        [(0, 0, 0), (80, 0, 0), (80, 50, 0), (50, 50, -1), (30, 50, 0), (0, 50, 0)], closed=True
    ),
    "wave": from_vertices([(0, 0, -0.4), (30, 0, 0.4), (60, 0, 0.2), (60, 40, -0.8), (0, 40, 0.3)], closed=True),
}
by_name = pytest.mark.parametrize("name", OUTLINES)


def ring(path: Path) -> shapely.Polygon:
    return shapely.Polygon([(p.x, p.y) for p in flattened(path, CHORDS)])


def enclosed(contours: tuple[Path, ...]) -> shapely.geometry.base.BaseGeometry:
    """The area within contours that run counter-clockwise and not within those that run clockwise."""
    inside = shapely.unary_union([ring(path) for path in contours if path.is_ccw])
    return inside.difference(shapely.unary_union([ring(path) for path in contours if not path.is_ccw]))


def expected(path: Path, distance: float) -> shapely.geometry.base.BaseGeometry:
    area = ring(path)
    chords = [shapely.LineString(chord) for chord in pairwise(area.exterior.coords)]
    rim = shapely.unary_union([chord.buffer(abs(distance), quad_segs=360) for chord in chords])
    return area.union(rim) if distance > 0 else area.difference(rim)


@by_name
def test_area_and_length_are_those_of_shapely(name: str) -> None:
    path = OUTLINES[name]
    assert path.area == pytest.approx(ring(path).area, abs=CHORDS * path.length)
    # A chord is shorter than its arc by a share of (angle / 2)^2 / 6, with 8 * rise / radius for the angle squared.
    assert path.length == pytest.approx(ring(path).length, rel=CHORDS / 3 / 2)


@by_name
def test_inside_is_that_of_shapely(name: str) -> None:
    path, area = OUTLINES[name], ring(OUTLINES[name])
    box = path.bounds
    grid = [Point(box.x0 + box.width * i / 23, box.y0 + box.height * j / 19) for i in range(24) for j in range(20)]
    clear = [p for p in grid if path.distance_to(p) > 2 * CHORDS]
    assert len(clear) > 100
    assert [path.contains(p) for p in clear] == [area.contains(shapely.Point(p.x, p.y)) for p in clear]
    assert [path.distance_to(p) for p in clear] == pytest.approx(
        [area.exterior.distance(shapely.Point(p.x, p.y)) for p in clear], abs=CHORDS
    )


@by_name
@pytest.mark.parametrize("distance", [-7.3, -3, -1, 0.15, 2, 3, 9.1])
def test_contours_are_those_of_shapely(name: str, distance: float) -> None:
    path = OUTLINES[name]
    found, reference = enclosed(offset(path, distance)), expected(path, distance)
    allowed = 3 * CHORDS * (path.length + reference.length) + 1e-9
    assert found.symmetric_difference(reference).area < allowed


@pytest.mark.parametrize("name", ["rectangle", "ell", "cup", "wedge"])
@pytest.mark.parametrize("distance", [-2.5, -1, 0.6, 1, 1.4, 2.5])
def test_sharp_contours_are_shapelys_mitred_ones(name: str, distance: float) -> None:
    path = OUTLINES[name]
    reference = ring(path).buffer(distance, join_style="mitre", mitre_limit=10)
    assert enclosed(offset(path, distance, Join.SHARP)).symmetric_difference(reference).area < 1e-6
