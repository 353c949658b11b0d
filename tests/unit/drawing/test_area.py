"""Filled areas: how they are carried, measured, cut off, told and written."""

from __future__ import annotations

from io import BytesIO
from math import pi

import numpy as np
import pypdfium2
import pytest
import resvg_py
from PIL import Image

from patternforge.drawing.clip import clipped
from patternforge.drawing.dump import dump
from patternforge.drawing.extent import extent, placed
from patternforge.drawing.model import Area, Figure, Page, Role, Sheet
from patternforge.export.pdf import pdf_bytes
from patternforge.export.svg import svg_bytes
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Bounds
from patternforge.geometry.transform import flipped_x, translation

OUTER, INNER = rounded_rectangle(5, 5, 45, 25, 4), rounded_rectangle(15, 10, 35, 20, 0)
FRAME = Area(Role.TINT, (OUTER, INNER), 0.5)
COVERED = 40 * 20 - (4 - pi) * 16 - 20 * 10  # mm2


def shoelace(area: Area) -> float:
    """What the paths enclose, holes taken out: the first path less the others."""
    first, *holes = (abs(path.area) for path in area.paths)
    return first - sum(holes)


def test_an_area_takes_the_room_of_its_paths() -> None:
    assert extent([FRAME]) == Bounds(5, 5, 45, 25)


def test_an_area_is_carried_path_by_path() -> None:
    moved = placed(FRAME, flipped_x().then(translation(50, 0)))
    assert isinstance(moved, Area)
    assert extent([moved]) == Bounds(5, 5, 45, 25)
    assert shoelace(moved) == pytest.approx(COVERED)


def test_an_area_inside_the_window_is_left_as_it_is() -> None:
    assert clipped([FRAME], Bounds(0, 0, 50, 30)) == (FRAME,)


def test_halves_of_an_area_add_up_to_it() -> None:
    halves = [clipped([FRAME], Bounds(0, 0, 25, 30)), clipped([FRAME], Bounds(25, 0, 50, 30))]
    found = [area for half in halves for area in half if isinstance(area, Area)]
    assert [round(extent([area]).width, 6) for area in found] == [20.0, 20.0]
    assert sum(map(shoelace, found)) == pytest.approx(COVERED, abs=0.5)  # arcs in chords 0.01 mm off at most


def test_nothing_is_left_of_an_area_outside_the_window() -> None:
    assert clipped([FRAME], Bounds(60, 0, 90, 30)) == ()


def test_an_area_is_told_with_its_tone_and_paths() -> None:
    told = dump([Figure("frame", "", (FRAME,))])
    assert "tint area tone 0.5000" in told
    assert told.count("tint closed at") == 2


def share_dark(image: Image.Image, grey: int) -> float:
    """The share of pixels darker than a grey."""
    return float(np.mean(np.asarray(image.convert("L")) < grey))


def test_svg_fills_an_area_but_for_its_holes() -> None:
    sheet = Sheet("frame", 50, 30, (Figure("frame", "", (FRAME,)),))
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg_bytes(sheet).decode(), dpi=254, background="white"))
    image = Image.open(BytesIO(png))
    assert share_dark(image, 200) == pytest.approx(COVERED / 1500, abs=0.005)
    assert share_dark(image, 100) == 0.0  # half of the pen's colour is no darker than that


def test_pdf_fills_an_area_but_for_its_holes() -> None:
    with pypdfium2.PdfDocument(pdf_bytes((Page("1", 50.0, 30.0, (FRAME,)),), "frame")) as document:
        image = document[0].render(scale=10).to_pil()
    assert share_dark(image, 200) == pytest.approx(COVERED / 1500, abs=0.005)
    assert share_dark(image, 100) == 0.0


@pytest.mark.parametrize(("tone", "darkest"), [(0.0, 255), (1.0, 62)])
def test_tone_runs_from_paper_to_the_pen(tone: float, darkest: int) -> None:
    sheet = Sheet("frame", 50, 30, (Figure("frame", "", (Area(Role.TINT, (OUTER,), tone),)),))
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg_bytes(sheet).decode(), dpi=100, background="white"))
    found = int(np.asarray(Image.open(BytesIO(png)).convert("L")).min())
    assert found == pytest.approx(darkest, abs=3)
