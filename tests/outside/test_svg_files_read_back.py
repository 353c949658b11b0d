"""SVG files of every ready design read back by an XML reader, by resvg and by headless Chromium."""

from __future__ import annotations

from cmath import exp
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import asin, radians, sin
from pathlib import Path

import pytest
import shapely

from tests.outside.chromium_reading import CHROMIUM, chromium_view
from tests.outside.dxf_reading import Contour, arc_of, radii
from tests.outside.file_sets import (
    EVERY_DESIGN,
    OPTIONS,
    FileSet,
    Json,
    cutting_files,
    described,
)
from tests.outside.read_pieces import (
    TRUE,
    ReadHole,
    ReadPiece,
    dense_outline,
    described_holes,
    described_outline,
    differences,
    unmatched,
)
from tests.outside.svg_picture import picture
from tests.outside.svg_reading import svg_file
from tests.outside.written import DESIGNS

GRAIN = 0.02  # mm; a dot of the renderer's picture is 0.06 mm, a shade of its edges a quarter of that
BESIDE = 0.25  # mm; half the widest line and a dot


@EVERY_DESIGN
def test_an_xml_reader_finds_the_described_pieces_in_every_svg_file(design: Path, file_set: FileSet) -> None:
    folder = file_set(design, *OPTIONS[0])
    whole = folder / "svg" / f"{design.stem}.svg"
    for file, pieces in (*cutting_files(folder, "svg"), (whole, described(folder)["pieces"])):
        read = svg_file(file.read_text(encoding="utf-8"))
        assert unmatched(described(folder), pieces, read.pieces) == []
        assert len(read.groups) == len(pieces)


@EVERY_DESIGN
def test_arcs_of_an_svg_file_have_the_described_radii(design: Path, file_set: FileSet) -> None:
    folder = file_set(design, *OPTIONS[0])
    for file, pieces in cutting_files(folder, "svg"):
        drawn = svg_file(file.read_text(encoding="utf-8")).operation("outline")
        for piece, outline in zip(pieces, drawn, strict=True):
            # An arc near half a circle is written in equal parts, each with the radius of the whole.
            found = [radius for radius, _ in runs(radii(outline.stretches))]
            wanted = [radius for radius, _ in runs(radii(described_outline(piece).stretches))]
            assert found == pytest.approx(wanted, abs=TRUE)


def runs(values: Sequence[float]) -> list[tuple[float, int]]:
    """Values that follow one another, each once, with how often."""
    kept: list[tuple[float, int]] = []
    for value in values:
        if kept and abs(kept[-1][0] - value) < TRUE:
            kept[-1] = (kept[-1][0], kept[-1][1] + 1)
        else:
            kept.append((value, 1))
    return kept


@EVERY_DESIGN
def test_a_renderer_draws_every_hole_and_edge_in_its_place_and_nothing_else(design: Path, file_set: FileSet) -> None:
    folder = file_set(design, *OPTIONS[0])
    text = (folder / "laser" / f"{design.stem}-laser-everything.svg").read_text(encoding="utf-8")
    file = svg_file(text)
    seen = picture(text, file.height)
    lines: list[shapely.LineString] = []
    for piece, read in zip(described(folder)["pieces"], file.pieces, strict=True):
        corner = complex(min(at.real for at in read.outline), min(at.imag for at in read.outline))
        for spot in spots(described(folder), piece):
            found = seen.middle(corner + spot.about, spot.reach)
            assert found is not None
            off = found - corner - spot.middle
            assert abs(off if spot.across is None else (off / spot.across).real) < GRAIN
        lines += drawn_lines(described(folder), piece, corner)
    drawn = shapely.MultiLineString(lines)
    shapely.prepare(drawn)
    assert bool(shapely.dwithin(drawn, shapely.points(seen.dots), BESIDE).all())
    assert seen.size == pytest.approx(sheet_size(text), abs=0.1)


def drawn_lines(json: Json, piece: Json, corner: complex) -> Iterator[shapely.LineString]:
    """The outline, every opening and every hole of a piece whose lower left corner is at ``corner``."""
    for ring in (closed_outline(piece), *closed_openings(piece)):
        yield shapely.LineString([((at + corner).real, (at + corner).imag) for at in ring])
    kinds = {seam["name"]: seam["hole"] for seam in json["seams"]}
    for hole in described_holes(piece):
        kind, at = kinds[hole["seam"]], corner + complex(hole["x"], hole["y"])
        if hole["shape"] == "slit":
            way = exp(1j * radians(hole["direction"])) * kind["length"] / 2
            yield shapely.LineString([((at + end).real, (at + end).imag) for end in (-way, way)])
        else:
            yield shapely.Point(at.real, at.imag).buffer(kind["diameter"] / 2, 32).exterior


def closed_outline(piece: Json) -> list[complex]:
    points = described_outline(piece).flattened(64)
    return [*points, points[0]]


def closed_openings(piece: Json) -> Iterator[list[complex]]:
    for opening in piece["openings"]:
        points = tuple(complex(x, y) for x, y, _ in opening)
        ring = Contour(points, tuple(bulge for *_, bulge in opening), True).flattened(64)
        yield [*ring, ring[0]]


@dataclass(frozen=True, slots=True)
class Spot:
    """A place to look at, how far round it, where the middle of the ink is to be, across which way alone if any."""

    about: complex
    reach: float
    middle: complex
    across: complex | None = None


def spots(json: Json, piece: Json) -> Iterator[Spot]:
    """All holes, and the middles of all edges long enough."""
    kinds = {seam["name"]: seam["hole"] for seam in json["seams"]}
    for hole in described_holes(piece):
        kind, at = kinds[hole["seam"]], complex(hole["x"], hole["y"])
        size = kind["length"] if hole["shape"] == "slit" else kind["diameter"]
        yield Spot(at, size / 2 + 0.25, at)
    for start, end, bulge in described_outline(piece).stretches:
        if abs(end - start) > 1.5:
            yield arc_spot(*arc_of(start, end, bulge), start) if bulge else line_spot(start, end)


def line_spot(start: complex, end: complex) -> Spot:
    return Spot((start + end) / 2, 0.4, (start + end) / 2, 1j * (end - start) / abs(end - start))


def arc_spot(centre: complex, angle: float, sweep: float, start: complex) -> Spot:
    """The ink round an arc's middle is an arc too; its own middle lies at r sin(a) / a, with a half its sweep."""
    way, radius = exp(1j * (angle + sweep / 2)), abs(start - centre)
    half = 2 * asin(0.2 / radius)
    return Spot(centre + radius * way, 0.4, centre + radius * way * sin(half) / half, way)


def sheet_size(text: str) -> tuple[float, float]:
    file = svg_file(text)
    return float(file.root.attrib["width"].removesuffix("mm")), file.height


@pytest.mark.skipif(
    CHROMIUM is None, reason="no Chromium on this machine: its reading of the SVG files is not checked"
)
def test_chromium_lays_out_every_piece_and_hole_of_every_design_at_true_size(
    file_set: FileSet, tmp_path: Path
) -> None:
    folders = [file_set(design, *OPTIONS[0]) for design in DESIGNS]
    files = {each.name: (each / "laser" / f"{each.name}-laser-everything.svg").read_text() for each in folders}
    seen = chromium_view(files, tmp_path)
    for folder in folders:
        view = seen[folder.name]
        assert view["size"] == pytest.approx(sheet_size(files[folder.name]), abs=TRUE)
        for piece, shapes in zip(described(folder)["pieces"], view["pieces"], strict=True):
            ((x0, y0, x1, y1),) = shapes["outlines"]
            assert (x1 - x0, y1 - y0) == pytest.approx((piece["width"], piece["height"]), abs=TRUE)
            if any(hole["shape"] == "slit" for hole in piece["holes"]):
                continue  # slits share one path, which has one box: see the test of their renderer
            places = [(complex(a + c, b + d) / 2 - complex(x0, y0), c - a) for a, b, c, d in shapes["holes"]]
            read = ReadPiece(dense_outline(piece), tuple(ReadHole(at, size) for at, size in places))
            assert differences(described(folder), piece, read) == []
