"""What the audit reads is what strangers to it read: GDAL and ezdxf in DXF files, resvg in SVG files."""

from __future__ import annotations

from io import StringIO
from math import hypot
from pathlib import Path

import numpy as np
import pytest
import shapely
from ezdxf import path as ezdxf_path
from ezdxf.document import Drawing
from ezdxf.entities.insert import Insert
from ezdxf.filemanagement import new
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.audit.model import CutFile, Entity, Odd, Ring
from patternforge.audit.reading import cut_file
from patternforge.geometry.flatten import flattened
from patternforge.geometry.point import Bounds, joined_bounds
from tests.outside.file_sets import EVERY_DESIGN, FileSet, dxf_files
from tests.outside.gdal_reading import gdal_shapes
from tests.outside.svg_picture import DOTS, picture
from tests.unit.audit.clean import clean_svg
from tests.unit.audit.dxf_faults import DXF_FAULTS, Fault

_FLAT = 0.01  # mm; chords of both readers stray a little from curves


def read(document: Drawing) -> CutFile:
    stream = StringIO()
    document.write(stream)
    return cut_file(stream.getvalue().encode("utf-8"), "a.dxf")


def corners(box: Bounds) -> tuple[float, float, float, float]:
    return box.x0, box.y0, box.x1, box.y1


def length(entity: Entity) -> float:
    assert entity.shape is not None
    return entity.shape.length


@EVERY_DESIGN
def test_entities_of_own_files_are_those_that_gdal_reads(design: Path, file_set: FileSet) -> None:
    for path in dxf_files(file_set(design, "--dxf", "r2010", "--paper", "a4")):
        shapes = gdal_shapes(path)
        cuts = cut_file(path.read_bytes(), path.name).cuts
        assert len(cuts) == len(shapes)
        for cut, (layer, shape) in zip(cuts, shapes, strict=True):
            assert cut.shape is not None
            assert cut.look.layer == layer
            assert corners(cut.shape.bounds) == pytest.approx(shape.bounds, abs=1e-3)
            assert cut.shape.length == pytest.approx(shape.length, rel=1e-4)


# GDAL draws neither what is hidden nor what lies on paper, and no points of dimensions; heights are another matter.
_NOT_DRAWN = ("layer off", "layer freeze", "invisible", "on paper", "dimension", "text", "hatch")
_NO_LINES = ("point", "solid", "face", "not there")
_GUESSED = ("half of a vertex",)  # where half a vertex lies is any reader's guess: GDAL leaves it out, ours takes 0
_UNLIKE = _NOT_DRAWN + _NO_LINES + _GUESSED
_ALIKE = tuple(each for each in DXF_FAULTS if not any(word in each.name for word in _UNLIKE))


@pytest.mark.parametrize("fault", _ALIKE, ids=lambda fault: fault.name)
def test_damaged_files_take_the_room_that_gdal_sees(fault: Fault, tmp_path: Path) -> None:
    path = tmp_path / "a.dxf"
    path.write_text(fault.text, encoding="utf-8")
    file = cut_file(path.read_bytes(), path.name)
    drawn = [shape for _, shape in gdal_shapes(path) if shape.geom_type in ("LineString", "MultiLineString")]
    extent = file.extent
    if extent is None:
        assert not drawn
        return
    seen = shapely.total_bounds(drawn) * file.scale
    assert corners(extent) == pytest.approx(seen.tolist(), abs=max(_FLAT, 1e-4 * extent.width))


numbers = st.floats(-100, 100)
points = st.tuples(numbers, numbers)
frames = st.lists(st.tuples(st.integers(-50, 50), st.integers(-50, 50)), min_size=4, max_size=9, unique=True)
weighted = st.lists(st.floats(0.3, 3), min_size=9, max_size=9)


@settings(max_examples=20, deadline=None)
@given(frames, st.integers(2, 3), weighted)
def test_splines_run_where_ezdxf_draws_them(
    controls: list[tuple[int, int]], degree: int, weights: list[float]
) -> None:
    document = new("R2010", units=4)
    spline = document.modelspace().add_rational_spline(controls, weights[: len(controls)], degree)
    (cut,) = read(document).cuts
    tool = spline.construction_tool()
    places = [tool.point(tool.max_t * i / 60) for i in range(61)]
    own = _line(cut)
    assert shapely.distance(shapely.points([(p.x, p.y) for p in places]), own).max() < 0.05
    assert own.length == pytest.approx(tool.measure(200).length, rel=0.01, abs=0.2)


angles = st.floats(-180, 180)
factors = st.sampled_from([0.5, 1.0, 2.0, -1.0, -2.0])


@settings(max_examples=12, deadline=None)
@given(points, points, angles, angles, factors, factors, st.booleans())
def test_blocks_in_blocks_lie_where_ezdxf_lays_them(
    outer: tuple[float, float],
    inner: tuple[float, float],
    turn: float,
    inner_turn: float,
    across: float,
    up: float,
    behind: bool,
) -> None:
    document = new("R2010", units=4)
    leaf = document.blocks.new("LEAF", base_point=(1, 2))
    leaf.add_lwpolyline([(0, 0, 0.5), (10, 0, 0), (10, 5, -0.3)], format="xyb", close=True)
    leaf.add_circle((3, 3), 1)
    leaf.add_arc((5, 5), 2, 20, 200)
    stem = document.blocks.new("STEM", base_point=(-3, 4))
    stem.add_blockref("LEAF", inner, dxfattribs={"rotation": inner_turn, "xscale": across, "yscale": up})
    more = {"extrusion": (0, 0, -1)} if behind else {}
    insert = document.modelspace().add_blockref("STEM", outer, dxfattribs={"rotation": turn, **more})
    leaves = [each for each in insert.virtual_entities() if isinstance(each, Insert)]
    wanted = [part for each in leaves for part in each.virtual_entities()]
    lines = [
        shapely.LineString([(p.x, p.y) for p in ezdxf_path.make_path(part).flattening(0.001)]) for part in wanted
    ]
    cuts = read(document).cuts
    assert len(cuts) == 3
    boxes = [cut.shape.bounds for cut in cuts if cut.shape is not None]
    assert corners(joined_bounds(boxes)) == pytest.approx(shapely.total_bounds(lines).tolist(), abs=_FLAT)
    assert sum(map(length, cuts)) == pytest.approx(sum(line.length for line in lines), rel=2e-3)


LOOK = 'fill="none" stroke="#000" stroke-width="0.3"'
FEATURES = {
    "arcs": '<path d="M20 20A12 12 0 0 1 32 32A12 12 0 1 1 20 20Z"/>',
    "elliptic arcs": '<path d="M20 20A18 9 30 0 1 50 30A18 9 30 1 0 20 20Z"/>',
    "a small arc": '<path d="M20 20a3 3 0 0 1 20 5"/>',
    "cubic curves": '<path d="M10 40C20 10 40 70 60 40S70 5 20 15"/>',
    "quadratic curves": '<path d="M10 40Q30 0 40 40T70 20"/>',
    "relative steps": '<path d="m10 10h20v10l-5 5zm30 0 10 10-4 8z"/>',
    "a rounded rectangle": '<rect x="10" y="12" width="50" height="30" rx="8"/>',
    "an elliptic rectangle": '<rect x="10" y="12" width="50" height="30" rx="12" ry="4"/>',
    "an ellipse": '<ellipse cx="40" cy="30" rx="25" ry="9"/>',
    "a polygon": '<polygon points="10,10 50 12,40,40"/>',
    "a polyline": '<polyline points="10,10 50 12,40,40"/>',
    "turned": '<g transform="rotate(33 40 30)"><rect x="20" y="20" width="30" height="12" rx="4"/></g>',
    "mirrored": '<g transform="matrix(-1 0 0 1 80 0)"><path d="M20 20A12 12 0 1 1 40 40"/></g>',
    "skewed": '<g transform="translate(5 5) skewX(25) scale(1.5 .8)"><circle cx="20" cy="20" r="9"/></g>',
    "used": (
        '<defs><path id="a" d="M0 0h10a5 5 0 0 1 0 10z"/></defs><use href="#a" x="20" y="9" transform="scale(1.5)"/>'
    ),
    "a symbol": (
        '<symbol id="s" viewBox="0 0 20 10"><rect x="1" y="1" width="18" height="8" rx="3"/></symbol>'
        '<use href="#s" x="10" y="10" width="50" height="40"/>'
    ),
    "a drawing in it": (
        '<svg x="10" y="5" width="40" height="40" viewBox="0 0 10 20"><circle cx="5" cy="9" r="4"/></svg>'
    ),
}
VIEWS = {
    "mm": 'viewBox="0 0 80 60"',
    "twice": 'viewBox="0 0 160 120"',
    "moved": 'viewBox="-10 -5 80 60"',
    "wide": 'viewBox="0 0 120 60"',
    "high": 'viewBox="0 0 80 90" preserveAspectRatio="xMaxYMin meet"',
    "stretched": 'viewBox="0 0 90 60" preserveAspectRatio="none"',
    "cut off": 'viewBox="0 0 90 60" preserveAspectRatio="xMinYMax slice"',
}


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("feature", FEATURES)
def test_svg_shapes_lie_where_resvg_draws_them(feature: str, view: str) -> None:
    size = f'width="80mm" height="60mm" {VIEWS[view]}'
    text = f'<svg xmlns="http://www.w3.org/2000/svg" {size}><g {LOOK}>{FEATURES[feature]}</g></svg>'
    file = cut_file(text.encode(), "a.svg")
    dots = picture(text, 60.0).dots
    assert len(dots) > 50
    boundary = shapely.union_all([_line(each) for each in file.cuts])
    away = shapely.distance(shapely.points(dots), boundary)
    assert away.max() < max(each.look.width for each in file.cuts) / 2 + 0.3
    inner = shapely.clip_by_rect(boundary, 0.3, 0.3, 79.7, 59.7)
    places = shapely.get_coordinates(shapely.segmentize(inner, 0.5))
    tree = shapely.STRtree([shapely.Point(x, y) for x, y in dots.tolist()])
    _, apart = tree.query_nearest(shapely.points(places), return_distance=True)
    assert apart.max() < 2.5 / DOTS + 0.1


def _line(entity: Entity) -> shapely.LineString:
    shape = entity.shape
    assert shape is not None
    if isinstance(shape, Ring):
        return shapely.Point(shape.centre.x, shape.centre.y).buffer(shape.radius, 128).exterior
    return shapely.LineString([(p.x, p.y) for p in (*flattened(shape, 0.001), shape.end)])


def test_a_clean_svg_file_is_read_where_resvg_draws_it() -> None:
    text = clean_svg()
    dots = picture(text, 90.0).dots
    file = cut_file(text.encode(), "a.svg")
    boundary = shapely.union_all([_line(each) for each in file.cuts])
    assert shapely.distance(shapely.points(dots), boundary).max() < 0.3
    box = joined_bounds([each.shape.bounds for each in file.cuts if each.shape is not None])
    low, high = np.min(dots, axis=0), np.max(dots, axis=0)
    assert [*low, *high] == pytest.approx(corners(box), abs=0.25)
    assert not any(each.has(*Odd) for each in file.entities)
    assert hypot(box.width, box.height) > 200
