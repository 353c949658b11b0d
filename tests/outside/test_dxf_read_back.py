"""DXF files read by GDAL's own DXF reader, which shares no code with the library that wrote them.

GDAL turns arcs into straight steps; with steps of a tenth of a degree they lie within 1e-5 mm of the arcs here.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import hypot, pi
from pathlib import Path

import pyogrio
import pytest
import shapely

from patternforge.drawing.model import Sheet
from patternforge.export.dxf import DxfOptions, DxfVersion, dxf_bytes
from patternforge.geometry.point import Point
from tests import figures
from tests.figures import PANEL_AT, PANEL_RADIUS, PANEL_SIZE, POCKET_AT, POCKET_SIZE, WINDOW, WINDOW_RADIUS

EVERY_VERSION = pytest.mark.parametrize("version", DxfVersion)
Shapes = list[tuple[str, shapely.LineString]]


@pytest.fixture(autouse=True)
def _fine_arcs() -> Iterator[None]:
    known = pyogrio.get_gdal_config_option("OGR_ARC_STEPSIZE")
    pyogrio.set_gdal_config_options({"OGR_ARC_STEPSIZE": 0.1})
    yield
    pyogrio.set_gdal_config_options({"OGR_ARC_STEPSIZE": known})


def read_back(folder: Path, version: DxfVersion, sheet: Sheet | None = None) -> Shapes:
    """Layer and shape of every entity, in the order of the file."""
    path = folder / "sheet.dxf"
    path.write_bytes(dxf_bytes(sheet or figures.sheet(), DxfOptions(version)))
    meta, _, shapes, fields = pyogrio.raw.read(path)
    layers = fields[list(meta["fields"]).index("Layer")]
    return list(zip(layers.tolist(), shapely.from_wkb(shapes).tolist(), strict=True))


def of_layer(shapes: Shapes, layer: str) -> list[shapely.LineString]:
    return [shape for name, shape in shapes if name == layer]


def corners(shape: shapely.LineString, centre: Point, reach: float) -> list[float]:
    """The distances from ``centre`` of the points of ``shape`` within ``reach`` of it."""
    distances = (hypot(x - centre.x, y - centre.y) for x, y in shapely.get_coordinates(shape))
    return [distance for distance in distances if distance < reach]


@EVERY_VERSION
def test_the_whole_sheet_has_the_size_that_was_drawn(version: DxfVersion, tmp_path: Path) -> None:
    shapes = [shape for _, shape in read_back(tmp_path, version)]
    bounds = shapely.total_bounds(shapes).tolist()
    right, top = POCKET_AT.x + POCKET_SIZE[0], PANEL_AT.y + PANEL_SIZE[1]
    assert bounds == pytest.approx([PANEL_AT.x, PANEL_AT.y, right, top], abs=1e-6)


@EVERY_VERSION
def test_every_piece_has_one_closed_outline_of_its_exact_area(version: DxfVersion, tmp_path: Path) -> None:
    panel, pocket = of_layer(read_back(tmp_path, version), "OUTLINE")
    assert panel.is_ring
    assert pocket.is_ring
    # A rounded rectangle lacks (4 - pi) r^2 at its corners, the pocket half the circle of its notch.
    width, height = PANEL_SIZE
    assert shapely.Polygon(panel).area == pytest.approx(width * height - (4 - pi) * PANEL_RADIUS**2, abs=1e-3)
    width, height = POCKET_SIZE
    assert shapely.Polygon(pocket).area == pytest.approx(width * height - pi * figures.NOTCH_RADIUS**2 / 2, abs=1e-3)


@EVERY_VERSION
def test_arcs_have_their_radius_about_their_centre(version: DxfVersion, tmp_path: Path) -> None:
    shapes = read_back(tmp_path, version)
    panel, pocket = of_layer(shapes, "OUTLINE")
    (window,) = of_layer(shapes, "OPENING")
    lower_left = PANEL_AT + Point(PANEL_RADIUS, PANEL_RADIUS)
    upper_right = PANEL_AT + Point(WINDOW[2] - WINDOW_RADIUS, WINDOW[3] - WINDOW_RADIUS)
    for shape, centre, radius in (
        (panel, lower_left, PANEL_RADIUS),
        (window, upper_right, WINDOW_RADIUS),
        (pocket, POCKET_AT + figures.NOTCH_CENTRE, figures.NOTCH_RADIUS),
    ):
        found = corners(shape, centre, radius + 0.5)
        assert len(found) > 500
        assert found == pytest.approx([radius] * len(found), abs=0.01)


@EVERY_VERSION
def test_round_holes_are_as_many_and_where_they_were_drawn(version: DxfVersion, tmp_path: Path) -> None:
    holes = of_layer(read_back(tmp_path, version), "STITCH-HOLE")[: len(figures.PANEL_HOLES)]
    for hole, drawn in zip(holes, figures.PANEL_HOLES, strict=True):
        centre = PANEL_AT + drawn
        assert hole.is_ring
        assert [hole.centroid.x, hole.centroid.y] == pytest.approx([centre.x, centre.y], abs=1e-6)
        found = corners(hole, centre, 10.0)
        assert found == pytest.approx([figures.HOLE_DIAMETER / 2] * len(found), abs=1e-6)


@EVERY_VERSION
def test_slits_are_as_many_and_as_they_were_drawn_slant_included(version: DxfVersion, tmp_path: Path) -> None:
    slits = of_layer(read_back(tmp_path, version), "STITCH-HOLE")[len(figures.PANEL_HOLES) :]
    for slit, drawn in zip(slits, figures.SLIT_CENTRES, strict=True):
        (x0, y0), (x1, y1) = shapely.get_coordinates(slit).tolist()
        centre = POCKET_AT + drawn
        assert [(x0 + x1) / 2, (y0 + y1) / 2] == pytest.approx([centre.x, centre.y], abs=1e-6)
        assert slit.length == pytest.approx(figures.SLIT_LENGTH, abs=1e-5)
        assert (y1 - y0) / (x1 - x0) == pytest.approx(1.0, abs=1e-5)


@EVERY_VERSION
def test_nothing_is_in_the_file_twice_not_even_in_part(version: DxfVersion, tmp_path: Path) -> None:
    shapes = [shape for _, shape in read_back(tmp_path, version)]
    assert len(shapes) == 26  # a tick, 12 holes, a window, an outline; 10 slits and an outline
    assert max(one.intersection(other).length for one, other in combinations(shapes, 2)) == 0.0


@EVERY_VERSION
def test_outlines_run_counter_clockwise_and_openings_clockwise(version: DxfVersion, tmp_path: Path) -> None:
    shapes = read_back(tmp_path, version)
    assert shapely.is_ccw(of_layer(shapes, "OUTLINE")).tolist() == [True, True]
    assert shapely.is_ccw(of_layer(shapes, "OPENING")).tolist() == [False]


@EVERY_VERSION
def test_a_turned_piece_keeps_its_area_and_perimeter(version: DxfVersion, tmp_path: Path) -> None:
    # 30 x 20 mm with corners of 3 mm: 600 - (4 - pi) 9 = 592.274 mm2, 2 (24 + 14) + 6 pi = 94.850 mm.
    shapes = read_back(tmp_path, version, Sheet("sheet", 50, 50, (figures.tilted(),)))
    ((_, outline),) = shapes
    assert shapely.Polygon(outline).area == pytest.approx(600 - (4 - pi) * 9, abs=1e-3)
    assert outline.length == pytest.approx(76 + 6 * pi, abs=1e-3)
