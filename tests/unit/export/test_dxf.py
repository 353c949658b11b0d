from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from io import StringIO
from itertools import pairwise
from math import atan, atan2, degrees, remainder
from pathlib import Path as FilePath

import pytest
from ezdxf._options import options as library_options
from ezdxf.document import Drawing
from ezdxf.entities.dxfgfx import DXFGraphic
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.entities.polyline import Polyline
from ezdxf.filemanagement import read
from ezdxf.lldxf.const import VALID_DXF_LINEWEIGHTS

from patternforge.drawing.model import Area, Dot, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.errors import DraftError
from patternforge.export.dxf import CUT_ROLES, WEIGHTS, DxfOptions, DxfVersion, dxf_bytes
from patternforge.geometry.path import from_vertices, polyline
from patternforge.geometry.point import Point
from tests.figures import NOTCH_RADIUS, PANEL_HOLES, SLIT_CENTRES, panel, pocket, sheet, tilted

EVERY_VERSION = pytest.mark.parametrize("version", DxfVersion)


def document(drawing: Sheet, options: DxfOptions | None = None) -> Drawing:
    return read(StringIO(dxf_bytes(drawing, options).decode("ascii")))


def entities(drawing: Sheet, options: DxfOptions | None = None) -> list[DXFGraphic]:
    return list(document(drawing, options).modelspace())


def one_sheet(*inks: Ink) -> Sheet:
    return Sheet("sheet", 50, 50, (Figure("piece", "outer", inks),))


def tags(data: bytes) -> Iterator[tuple[int, str]]:
    lines = data.decode("ascii").split("\n")
    return ((int(code), value) for code, value in zip(lines[0:-1:2], lines[1::2], strict=True))


def entity_tags(data: bytes) -> list[tuple[int, str]]:
    every = list(tags(data))
    start = every.index((2, "ENTITIES"))
    return every[start : every.index((0, "ENDSEC"), start)]


@EVERY_VERSION
def test_the_file_has_no_fault_that_an_audit_would_find_or_mend(version: DxfVersion) -> None:
    audit = document(sheet(), DxfOptions(version)).audit()
    assert (audit.errors, audit.fixes) == ([], [])


@pytest.mark.parametrize(
    ("version", "release"),
    [
        (DxfVersion.R2018, "AC1032"),
        (DxfVersion.R2010, "AC1024"),
        (DxfVersion.R2000, "AC1015"),
        (DxfVersion.R12, "AC1009"),
    ],
)
def test_each_version_is_the_release_it_is_named_for(version: DxfVersion, release: str) -> None:
    # $ACADVER of the DXF reference, header section: AC1009 R12, AC1015 2000, AC1024 2010.
    assert (1, release) in list(tags(dxf_bytes(sheet(), DxfOptions(version))))


@pytest.mark.parametrize("version", [DxfVersion.R2010, DxfVersion.R2000])
def test_newer_files_say_that_their_unit_is_the_millimetre(version: DxfVersion) -> None:
    header = document(sheet(), DxfOptions(version)).header
    assert (header["$INSUNITS"], header["$MEASUREMENT"]) == (4, 1)


def test_writing_the_oldest_version_warns_of_nothing(caplog: pytest.LogCaptureFixture) -> None:
    data = dxf_bytes(sheet(), DxfOptions(DxfVersion.R12))
    assert b"$INSUNITS" not in data
    assert caplog.records == []


@EVERY_VERSION
def test_the_extents_are_those_of_what_is_cut(version: DxfVersion) -> None:
    header = document(sheet(), DxfOptions(version)).header
    assert (tuple(header["$EXTMIN"]), tuple(header["$EXTMAX"])) == ((10, 10, 0), (200, 85, 0))
    assert (tuple(header["$LIMMIN"]), tuple(header["$LIMMAX"])) == ((10, 10), (200, 85))


def test_extents_reach_to_the_crown_of_an_arc() -> None:
    dome = Stroke(Role.OUTLINE, from_vertices([(0, 0, 0), (10, 0, 1.0)], closed=True))
    header = document(one_sheet(dome)).header
    assert tuple(header["$EXTMAX"]) == pytest.approx((10, 5, 0))


@EVERY_VERSION
def test_each_ink_becomes_the_plainest_entity_that_is_true_to_it(version: DxfVersion) -> None:
    open_run = Stroke(Role.MARK, polyline([Point(0, 0), Point(5, 0), Point(5, 5)]))
    lone_arc = Stroke(Role.MARK, from_vertices([(0, 0, 0.5), (5, 0, 0)], closed=False))
    line = Stroke(Role.HOLE, polyline([Point(1, 1), Point(2, 2)]))
    dot = Dot(Role.HOLE, Point(3, 3), 1.0)
    rim = Stroke(Role.OUTLINE, polyline([Point(0, 0), Point(9, 0)]))
    dome = Stroke(Role.OUTLINE, from_vertices([(0, 0, 0), (10, 0, 1.0)], closed=True))
    drawn = entities(one_sheet(open_run, lone_arc, line, dot, rim, dome), DxfOptions(version))
    run = "POLYLINE" if version is DxfVersion.R12 else "LWPOLYLINE"
    assert [entity.dxftype() for entity in drawn] == [run, run, "LINE", "CIRCLE", "LINE", run]
    assert [is_closed(drawn[i]) for i in (0, 1, 5)] == [False, False, True]


def is_closed(entity: DXFGraphic) -> bool:
    assert isinstance(entity, LWPolyline | Polyline)
    return entity.is_closed


def test_a_rounded_rectangle_is_one_closed_polyline_of_eight_vertices_with_four_bulges() -> None:
    (outline,) = (entity for entity in entities(one_sheet(*panel().inks)) if entity.dxf.layer == "OUTLINE")
    assert isinstance(outline, LWPolyline)
    bulges = [point[4] for point in outline.get_points()]
    assert outline.closed
    assert len(bulges) == 8
    # tan(22.5 degrees), the bulge of a quarter circle.
    assert [bulge for bulge in bulges if bulge] == pytest.approx([0.41421356237] * 4, abs=1e-11)


def test_a_half_round_notch_is_one_bulge_of_minus_one() -> None:
    (outline,) = (entity for entity in entities(one_sheet(*pocket().inks)) if entity.dxf.layer == "OUTLINE")
    assert isinstance(outline, LWPolyline)
    points = outline.get_points()
    (notch,) = [i for i, point in enumerate(points) if point[4]]
    assert points[notch][4] == -1.0
    assert abs(points[notch][0] - points[notch + 1][0]) == 2 * NOTCH_RADIUS


@EVERY_VERSION
def test_pieces_follow_one_another_and_the_outline_of_each_comes_last(version: DxfVersion) -> None:
    layers = [entity.dxf.layer for entity in entities(sheet(), DxfOptions(version))]
    assert layers == (
        ["MARK"]
        + ["STITCH-HOLE"] * len(PANEL_HOLES)
        + ["OPENING", "OUTLINE"]
        + ["STITCH-HOLE"] * len(SLIT_CENTRES)
        + ["OUTLINE"]
    )


def test_nothing_that_must_not_be_cut_is_in_the_file_unless_asked_for() -> None:
    names = {layer.dxf.name for layer in document(sheet()).layers}
    assert names == {"0", "Defpoints", "MARK", "STITCH-HOLE", "OPENING", "OUTLINE"}
    wider = document(sheet(), DxfOptions(roles=(*CUT_ROLES, Role.FOLD, Role.SEAM)))
    assert {"FOLD-LINE", "STITCH-LINE"} <= {entity.dxf.layer for entity in wider.modelspace()}


def test_layers_take_the_colours_they_are_given_and_entities_the_colour_of_their_layer() -> None:
    colours = dict.fromkeys(Role, 7) | {Role.OUTLINE: 1, Role.HOLE: 5}
    written = document(sheet(), DxfOptions(colours=colours))
    assert [written.layers.get(name).color for name in ("OUTLINE", "STITCH-HOLE", "MARK")] == [1, 5, 7]
    assert {entity.dxf.color for entity in written.modelspace()} == {256}


@EVERY_VERSION
def test_layers_take_the_names_they_are_given_in_every_release(version: DxfVersion) -> None:
    written = document(sheet(), DxfOptions(version, layers={Role.OUTLINE: "EDGE"}))
    assert {entity.dxf.layer for entity in written.modelspace()} == {"MARK", "STITCH-HOLE", "OPENING", "EDGE"}
    assert "OUTLINE" not in written.layers


@EVERY_VERSION
def test_layers_take_the_line_weights_they_are_given_where_the_release_knows_any(version: DxfVersion) -> None:
    written = document(sheet(), DxfOptions(version, weights={Role.OUTLINE: 50}))
    edge, hole = (written.layers.get(name).dxf.get("lineweight") for name in ("OUTLINE", "STITCH-HOLE"))
    assert (edge, hole) == ((None, None) if version is DxfVersion.R12 else (50, -3))


def test_the_line_weights_are_those_of_the_library_too() -> None:
    assert tuple(weight for weight in VALID_DXF_LINEWEIGHTS if weight >= 0) == WEIGHTS


def test_the_layers_of_a_file_differ_in_colour() -> None:
    shown = DxfOptions().colours
    assert len(set(shown.values())) == len(Role)


def test_a_text_to_be_written_is_refused_and_a_text_of_another_role_left_out() -> None:
    initials = Text(Role.MARK, Point(1, 1), 5.0, "AB")
    rim = Stroke(Role.OUTLINE, polyline([Point(0, 0), Point(9, 0)]))
    with pytest.raises(DraftError, match=r"mark text 'AB'.*strokes"):
        dxf_bytes(one_sheet(initials, rim))
    assert len(entities(one_sheet(Text(Role.LABEL, Point(1, 1), 5.0, "AB"), rim))) == 1


def test_a_sheet_with_nothing_to_cut_is_refused() -> None:
    with pytest.raises(DraftError, match="holds nothing to write: no mark, no stitch hole, no opening, no outline"):
        dxf_bytes(one_sheet(Stroke(Role.FOLD, polyline([Point(0, 0), Point(9, 0)]))))


@EVERY_VERSION
def test_coordinates_have_six_decimals_bulges_twelve_and_no_number_an_exponent_or_a_negative_zero(
    version: DxfVersion,
) -> None:
    near_zero = Stroke(Role.MARK, from_vertices([(-2e-7, 3e-5, 1e-5), (10, -4e-7, 0), (10, 5, 0)], closed=False))
    data = dxf_bytes(one_sheet(near_zero, *tilted().inks), DxfOptions(version))
    real = [(code, text) for code, text in entity_tags(data) if 10 <= code <= 59]
    assert len(real) > 20
    assert all(re.fullmatch(r"-?\d+\.\d{1,12}" if code == 42 else r"-?\d+\.\d{1,6}", text) for code, text in real)
    assert not [text for _, text in real if float(text) == 0 and text.startswith("-")]
    assert (20, "0.00003") in real
    assert (42, "0.00001") in real


def test_rounded_arcs_stay_tangent_to_their_neighbours() -> None:
    (outline,) = entities(one_sheet(*tilted().inks))
    assert isinstance(outline, LWPolyline)
    points = [(point[0], point[1], point[4]) for point in outline.get_points()]
    ends = [directions(one, other) for one, other in pairwise([*points, points[0]])]
    breaks = [abs(remainder(follower[0] - before[1], 360)) for before, follower in pairwise([*ends, ends[0]])]
    assert len(breaks) == 8
    # A millionth of a mm over the shortest segment, 3 mm of radius, is far below a ten-thousandth of a degree.
    assert max(breaks) < 1e-4


def directions(one: tuple[float, float, float], other: tuple[float, float, float]) -> tuple[float, float]:
    """The directions, degrees, in which a segment leaves and arrives: half its sweep either side of its chord."""
    chord = degrees(atan2(other[1] - one[1], other[0] - one[0]))
    half = degrees(2 * atan(one[2]))
    return chord - half, chord + half


def test_vertices_that_fall_together_in_the_file_are_written_once() -> None:
    points = [(0, 0, 0), (10, 0, 0), (10, 10, 0), (10 - 4e-7, 10, 0), (0, 10, 0), (0, 3e-7, 0)]
    (outline,) = entities(one_sheet(Stroke(Role.OUTLINE, from_vertices(points, closed=True))))
    assert isinstance(outline, LWPolyline)
    assert [point[:2] for point in outline.get_points()] == [(0, 0), (10, 0), (10, 10), (0, 10)]


def test_the_library_is_left_as_it_was_found() -> None:
    before = library_options.write_fixed_meta_data_for_testing
    dxf_bytes(sheet())
    assert library_options.write_fixed_meta_data_for_testing is before is False
    with pytest.raises(DraftError):
        dxf_bytes(one_sheet())
    assert library_options.write_fixed_meta_data_for_testing is False


def test_writing_leaves_no_file_behind_and_the_environment_as_it_was(tmp_path: FilePath) -> None:
    code = (
        "import os; from tests.figures import sheet; from patternforge.export.dxf import dxf_bytes;"
        "known = dict(os.environ); dxf_bytes(sheet()); assert dict(os.environ) == known, 'environment'"
    )
    root = FilePath(__file__).parents[3]
    for number, extra in enumerate(({}, {"XDG_CACHE_HOME": str(tmp_path / "1" / "cache")})):
        home = tmp_path / str(number)
        home.mkdir()
        kept = {name: value for name, value in os.environ.items() if not name.startswith("XDG_")}
        surroundings = kept | {"HOME": str(home), "TMPDIR": str(home), "PYTHONPATH": str(root)} | extra
        subprocess.run([sys.executable, "-c", code], check=True, cwd=home, env=surroundings)
        assert list(home.rglob("*")) == []


def test_a_filled_area_is_refused_in_a_cutting_file() -> None:
    area = Area(Role.OUTLINE, (polyline([Point(0, 0), Point(4, 0), Point(4, 4), Point(0, 0)]),), 0.5)
    with pytest.raises(DraftError, match="filled outline cannot go into a DXF file"):
        dxf_bytes(one_sheet(area))
