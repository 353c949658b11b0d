"""Plots of ready designs read by a reader that knows the published commands alone, held against ``pattern.json``.

The unit of a plot is 1/40 mm: nothing in it can be told from a place 0.025 mm beside it.
"""

from __future__ import annotations

from cmath import rect
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import radians
from pathlib import Path
from typing import Any

import pytest
import shapely

from tests.outside.dxf_reading import cuts
from tests.outside.file_sets import FileSet, Json, described
from tests.outside.hpgl_reading import UNIT, Run, runs, runs_by_piece
from tests.outside.read_pieces import described_holes, described_outline
from tests.outside.written import DESIGNS

MARK, HOLE, OPENING, OUTLINE = 4, 2, 3, 1
HEAD = "machine: Test plotter\ntool: knife\ntravel: as drawn\n"
PENS = f"""\
format: hpgl
operations:
  mark: {{pen: {MARK}}}
  stitch hole: {{pen: {HOLE}}}
  opening: {{pen: {OPENING}}}
  outline: {{pen: {OUTLINE}}}
"""
SOME = [path for path in DESIGNS if path.stem in ("two-fold", "id-window-two-fold", "badge-holder", "comb-sheath")]
EVERY = pytest.mark.parametrize("design", SOME, ids=lambda path: path.stem)
Plotted = Callable[[Path], list["Piece"]]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece as described, what was plotted of it, and where on the sheet its lower left corner was laid."""

    json: Json
    holes: tuple[Run, ...]
    openings: tuple[Run, ...]
    outline: Run


@pytest.fixture(scope="module")
def plotted(tmp_path_factory: pytest.TempPathFactory, file_set: FileSet) -> Plotted:
    """The pieces of a design, each with its lower left corner at the origin.

    Where they lie on the sheet is told by a DXF file of the same layout, whose coordinates are far finer.
    """
    folder = tmp_path_factory.mktemp("machine")
    tables = {"hpgl": folder / "plotter.yaml", "dxf": folder / "same" / "plotter.yaml"}
    tables["dxf"].parent.mkdir()
    tables["hpgl"].write_text(HEAD + PENS, encoding="ascii")
    tables["dxf"].write_text(HEAD + "format: dxf\n", encoding="ascii")

    def pieces(design: Path) -> list[Piece]:
        texts = {
            kind: file_text(file_set(design, "--machine", str(table), "--for", "laser"), kind)
            for kind, table in tables.items()
        }
        boxes = [cut.contour.box for cut in cuts(texts["dxf"]) if cut.layer == "OUTLINE"]
        parted = runs_by_piece(runs(texts["hpgl"]), OUTLINE)
        json = described(file_set(design, "--machine", str(tables["hpgl"]), "--for", "laser"))["pieces"]
        return [
            piece_at(each, found, complex(x0, y0))
            for each, found, (x0, y0, _, _) in zip(json, parted, boxes, strict=True)
        ]

    return pieces


def file_text(folder: Path, kind: str) -> str:
    return (folder / "plotter" / f"{folder.name}-plotter-everything.{kind}").read_text("ascii")


def piece_at(json: Json, found: tuple[Run, ...], corner: complex) -> Piece:
    own = [Run(run.pen, tuple(at - corner for at in run.points)) for run in found]
    holes = tuple(run for run in own if run.pen in (HOLE, MARK))
    return Piece(json, holes, tuple(run for run in own if run.pen == OPENING), own[-1])


def line(points: Sequence[complex]) -> shapely.LineString:
    return shapely.LineString([(at.real, at.imag) for at in points])


def strays(one: shapely.LineString, other: shapely.LineString) -> float:
    """How far the points of either lie from the other, mm."""
    pairs = ((one, other), (other, one))
    return max(float(shapely.distance(a, shapely.points(shapely.get_coordinates(b))).max()) for a, b in pairs)


def test_four_designs_are_read(file_set: FileSet) -> None:
    assert len(SOME) == 4


@EVERY
def test_every_outline_has_its_size_and_its_course_within_a_unit(design: Path, plotted: Plotted) -> None:
    for piece in plotted(design):
        assert piece.outline.closed
        x0, y0, x1, y1 = piece.outline.box
        assert (x1 - x0, y1 - y0) == pytest.approx((piece.json["width"], piece.json["height"]), abs=UNIT)
        assert strays(line(piece.outline.points), described_line(piece.json["outline"])) <= UNIT


def described_line(vertices: list[list[float]]) -> shapely.LineString:
    points = described_outline({"outline": vertices}).flattened(64)
    return line([*points, points[0]])


@EVERY
def test_every_hole_is_there_once_and_within_a_unit_of_its_place(
    design: Path, plotted: Plotted, file_set: FileSet
) -> None:
    pieces = plotted(design)
    kinds = {seam["name"]: seam["hole"] for seam in described(file_set(design, "--for", "laser"))["seams"]}
    for piece in pieces:
        drawn = described_holes(piece.json)
        assert len(piece.holes) == len(drawn)
        left = list(piece.holes)
        for hole in drawn:
            at = complex(hole["x"], hole["y"])
            run = min(left, key=lambda each: abs(middle(each) - at))
            left.remove(run)
            assert abs(middle(run) - at) <= UNIT
            assert differs(run, hole, kinds[hole["seam"]]) == ""


def middle(run: Run) -> complex:
    x0, y0, x1, y1 = run.box
    return complex(x0 + x1, y0 + y1) / 2


def differs(run: Run, hole: Mapping[str, Any], kind: Json) -> str:
    """How a hole as plotted differs from what is described by more than a unit at either side."""
    x0, y0, x1, y1 = run.box
    if hole["shape"] == "round" and (
        not run.closed or max(abs(d - kind["diameter"]) for d in (x1 - x0, y1 - y0)) > UNIT
    ):
        return f"{x1 - x0:.3f} x {y1 - y0:.3f} mm, not {kind['diameter']:.3f}"
    if hole["shape"] == "slit":
        start, end = run.points
        way = rect(kind["length"] / 2, radians(hole["direction"]))
        ends = min(max(abs(start - at - s * way), abs(end - at + s * way)) for at in [middle(run)] for s in (1, -1))
        return f"its ends are {ends:.3f} mm off" if ends > UNIT else ""
    return ""


@EVERY
def test_every_opening_is_there_within_a_unit(design: Path, plotted: Plotted) -> None:
    for piece in plotted(design):
        assert len(piece.openings) == len(piece.json["openings"])
        for opening in piece.json["openings"]:
            wanted = described_line(opening)
            assert min(strays(line(run.points), wanted) for run in piece.openings) <= UNIT


def test_the_ready_knife_plotter_is_sent_marks_with_one_pen_and_cuts_with_another(file_set: FileSet) -> None:
    folder = file_set(SOME[0], "--machine", "drag-knife", "--for", "laser")
    text = (folder / "drag-knife" / f"{folder.name}-drag-knife-everything.hpgl").read_text("ascii")
    pens = [run.pen for run in runs(text)]
    pieces = described(folder)["pieces"]
    assert pens == sorted(pens, reverse=True)  # pen 2 is changed for pen 1 once
    assert pens.count(2) == sum(len(described_holes(piece)) for piece in pieces)
    assert pens.count(1) == sum(1 + len(piece["openings"]) for piece in pieces)


# What the reader is worth.


def test_a_plot_a_unit_and_a_half_off_is_told(plotted: Plotted) -> None:
    piece = plotted(SOME[0])[0]
    moved = [at + 1.5 * UNIT for at in piece.outline.points]
    assert strays(line(moved), described_line(piece.json["outline"])) > UNIT


def test_relative_moves_are_read_as_the_guide_says() -> None:
    (run,) = runs("IN;SP3;PU40,40;PR;PD40,0,0,40;PA;PD40,40;PU;SP0;")
    assert run == Run(3, (1 + 1j, 2 + 1j, 2 + 2j, 1 + 1j))
    assert run.closed


@pytest.mark.parametrize("text", ["IN;SP1;PD40,40;", "IN;PD40,40;PU;", "IN;SP1;LBtext;PU;SP0;", "IN;SP1;PU;SP0;PD"])
def test_what_is_no_whole_plot_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"pen|command|invalid"):
        runs(text)
