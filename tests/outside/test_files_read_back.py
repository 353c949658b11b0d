"""Every file of every ready design, as the command writes it, read back by other programs and held to pattern.json.

DXF by GDAL and by a reader of bare group codes, SVG by an XML reader, by resvg and by headless Chromium, PDF by
PDFium. What is checked is told by the names of the tests; the tolerance is 0.01 mm.
"""

from __future__ import annotations

import json
from cmath import exp
from collections.abc import Callable, Iterator, Sequence
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from math import asin, radians, sin
from pathlib import Path
from typing import Any

import pytest
import shapely

from tests.outside.chromium_reading import CHROMIUM, chromium_view
from tests.outside.dxf_reading import Cut, arc_of, cut_pieces, cuts
from tests.outside.gdal_reading import gdal_pieces, gdal_shapes
from tests.outside.pdf_reading import PdfPage, pdf_pages
from tests.outside.read_pieces import (
    TRUE,
    ReadHole,
    ReadPiece,
    described_holes,
    described_outline,
    differences,
    unmatched,
)
from tests.outside.svg_picture import picture
from tests.outside.svg_reading import svg_file
from tests.outside.written import DESIGNS

Json = dict[str, Any]
FileSet = Callable[..., Path]

EVERY_DESIGN = pytest.mark.parametrize("design", DESIGNS, ids=lambda path: path.stem)
# Between them every release, paper and kind of die.
OPTIONS = (
    ("--dxf", "r2010", "--paper", "a4"),
    ("--dxf", "r2000", "--paper", "letter", "--die-holes", "punched"),
    ("--dxf", "r12", "--paper", "a3"),
)
EVERY_RELEASE = pytest.mark.parametrize("options", OPTIONS, ids=lambda options: options[1])
EVERY_PAPER = pytest.mark.parametrize("options", OPTIONS, ids=lambda options: options[3])
ORDER = ("MARK", "STITCH-HOLE", "OPENING", "OUTLINE")
BESIDE = 0.25  # mm; half the widest line and a dot
DOUBLED = 0.02  # mm of line that may be in a file twice; what rounding leaves where two lines touch
GRAIN = 0.02  # mm; a dot of the renderer's picture is 0.1 mm, a shade of its edges a quarter of that


@cache
def described(folder: Path) -> Json:
    """The ``pattern.json`` of a set."""
    read: Json = json.loads((folder / "pattern.json").read_text(encoding="utf-8"))
    return read


def cutting_files(folder: Path, ending: str) -> Iterator[tuple[Path, list[Json]]]:
    """Every cutting file for a laser or a die, with the pieces that are to be in it."""
    pieces = described(folder)["pieces"]
    stem = folder.name
    yield folder / "laser" / f"{stem}-laser-everything.{ending}", pieces
    for leather in sorted({piece["leather"] for piece in pieces}):
        some = [piece for piece in pieces if piece["leather"] == leather]
        yield folder / "laser" / f"{stem}-laser-{leather}.{ending}", some


def die_files(folder: Path, options: Sequence[str]) -> Iterator[tuple[Path, Json]]:
    """Every file for a die with its piece, whose holes are described only where the die is to punch them."""
    punched = "punched" in options
    for piece in described(folder)["pieces"]:
        name = f"{folder.name}-die-{piece['name'].replace(' ', '-')}{'-with-holes' if punched else ''}.dxf"
        yield folder / "die" / name, piece if punched else {**piece, "holes": []}


def dxf_files(folder: Path) -> list[Path]:
    """Every DXF file of a set."""
    return sorted(folder.rglob("*.dxf"))


# DXF


@EVERY_DESIGN
@EVERY_RELEASE
def test_gdal_reads_the_described_pieces_from_every_laser_file(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    folder = file_set(design, *options)
    for file, pieces in cutting_files(folder, "dxf"):
        read = gdal_pieces(gdal_shapes(file))
        faults = (differences(described(folder), *pair) for pair in zip(pieces, read, strict=True))
        assert [fault for each in faults for fault in each] == []


@EVERY_DESIGN
@EVERY_RELEASE
def test_gdal_reads_the_described_piece_from_every_die_file(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    folder = file_set(design, *options)
    expected = list(die_files(folder, options))
    assert sorted(file for file, _ in expected) == sorted((folder / "die").iterdir())
    for file, piece in expected:
        (read,) = gdal_pieces(gdal_shapes(file))
        assert differences(described(folder), piece, read) == []


@EVERY_DESIGN
@EVERY_RELEASE
def test_bulges_give_the_described_radii_in_every_laser_file(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    for file, pieces in cutting_files(file_set(design, *options), "dxf"):
        for piece, cut in zip(pieces, cut_pieces(cuts(file.read_text())), strict=True):
            assert radii(cut.outline.stretches) == pytest.approx(radii(described_outline(piece).stretches), abs=TRUE)


def radii(stretches: Sequence[tuple[complex, complex, float]]) -> list[float]:
    """The radii of all arcs in order, positive where they turn left."""
    arcs = [(start, *arc_of(start, end, bulge)) for start, end, bulge in stretches if bulge]
    return [abs(start - centre) * (1 if sweep > 0 else -1) for start, centre, _, sweep in arcs]


@EVERY_DESIGN
@EVERY_RELEASE
def test_nothing_but_lines_arcs_and_circles_is_in_a_cutting_file(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    polyline = "POLYLINE" if "r12" in options else "LWPOLYLINE"
    for file in dxf_files(file_set(design, *options)):
        text = file.read_text()
        assert {cut.kind for cut in cuts(text)} <= {"LINE", "CIRCLE", polyline}
        assert {cut.layer for cut in cuts(text)} <= set(ORDER)
        assert text.count("\nINSERT\n") == 0


@EVERY_DESIGN
@EVERY_RELEASE
def test_every_outline_and_opening_is_closed_and_does_not_cross_itself(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    for file in dxf_files(file_set(design, *options)):
        contours = [shape for layer, shape in gdal_shapes(file) if layer in ("OUTLINE", "OPENING")]
        assert contours
        assert all(shape.is_ring for shape in contours)  # closed and simple
        assert all(cut.contour.closed for cut in cuts(file.read_text()) if cut.layer in ("OUTLINE", "OPENING"))


@EVERY_DESIGN
@EVERY_RELEASE
def test_nothing_is_in_a_cutting_file_twice_not_even_in_part(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    for file in dxf_files(file_set(design, *options)):
        assert doubled([shape for _, shape in gdal_shapes(file)]) <= DOUBLED


def doubled(shapes: Sequence[shapely.LineString]) -> float:
    """Length of line that two entities share, mm."""
    tree = shapely.STRtree(shapes)
    pairs = tree.query(shapes, predicate="intersects").T.tolist()
    return float(sum(shapes[a].intersection(shapes[b]).length for a, b in pairs if a < b))


@EVERY_DESIGN
@EVERY_RELEASE
def test_marks_holes_and_openings_of_a_piece_come_before_its_outline(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    for file in dxf_files(file_set(design, *options)):
        for piece in cut_pieces(cuts(file.read_text())):
            layers = [cut.layer for cut in piece.cuts]
            assert layers == sorted(layers, key=ORDER.index)
            assert layers.count("OUTLINE") == 1


@EVERY_DESIGN
@EVERY_RELEASE
def test_two_readers_find_as_many_entities_in_the_same_box(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    for file in dxf_files(file_set(design, *options)):
        gdal, own = gdal_shapes(file), cuts(file.read_text())
        assert [layer for layer, _ in gdal] == [cut.layer for cut in own]
        x0, y0, x1, y1 = zip(*(box_of(cut) for cut in own), strict=True)
        own_box = (min(x0), min(y0), max(x1), max(y1))
        assert shapely.total_bounds([shape for _, shape in gdal]).tolist() == pytest.approx(own_box, abs=1e-3)


def box_of(cut: Cut) -> tuple[float, float, float, float]:
    x0, y0, x1, y1 = cut.contour.box
    return x0 - cut.radius, y0 - cut.radius, x1 + cut.radius, y1 + cut.radius


# SVG


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
    """The outline and every hole of a piece whose lower left corner is at ``corner``."""
    yield shapely.LineString([((at + corner).real, (at + corner).imag) for at in closed_outline(piece)])
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


def dense_outline(piece: Json) -> tuple[complex, ...]:
    return tuple(described_outline(piece).flattened(64))


# PDF


def papers(folder: Path) -> tuple[PdfPage, ...]:
    (file,) = (folder / "paper").glob("*.pdf")
    return pdf_pages(file)


@EVERY_DESIGN
@EVERY_PAPER
def test_pdfium_reads_every_piece_whole_or_in_tiles_that_agree(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    folder = file_set(design, *options)
    pages = papers(folder)
    split = {page.label.rsplit(" ", 1)[0] for page in pages if not page.whole}
    whole = [piece for piece in described(folder)["pieces"] if piece["name"] not in split]
    assert unmatched(described(folder), whole, [read for page in pages if page.whole for read in page.pieces]) == []
    for piece in described(folder)["pieces"]:
        if piece["name"] in split:
            tiles = [page.fragment for page in pages if page.label.rsplit(" ", 1)[0] == piece["name"]]
            assert tiled(piece, tiles) == set(range(len(piece["holes"])))


def tiled(piece: Json, tiles: Sequence[ReadPiece]) -> set[int]:
    """Which holes of a piece its tiles show, each laid on the piece by the one shift that brings all of it to fit."""
    places = [complex(hole["x"], hole["y"]) for hole in piece["holes"]]
    rim = shapely.LinearRing([(at.real, at.imag) for at in dense_outline(piece)])
    found: set[int] = set()
    for tile in tiles:
        first = tile.holes[0].at
        shifts = [place - first for place in places if fits(tile, place - first, places, rim)]
        assert len(shifts) == 1
        found |= {nearest(hole.at + shifts[0], places) for hole in tile.holes}
    return found


def nearest(at: complex, places: Sequence[complex]) -> int:
    return min(range(len(places)), key=lambda i: abs(places[i] - at))


def fits(tile: ReadPiece, shift: complex, places: Sequence[complex], rim: shapely.LinearRing) -> bool:
    """Whether all holes and all of the outline on a tile lie on those of the piece."""
    moved = tile.moved(shift)
    if any(abs(places[nearest(hole.at, places)] - hole.at) > TRUE for hole in moved.holes):
        return False
    return all(rim.distance(shapely.Point(at.real, at.imag)) <= TRUE for at in moved.outline)


@EVERY_DESIGN
@EVERY_PAPER
def test_check_bars_measure_100_mm_and_4_inches_both_ways_on_every_page(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    for page in papers(file_set(design, *options)):
        for bars in page.check_bars:
            assert bars == pytest.approx([100.0, 4 * 25.4], abs=TRUE)


@EVERY_DESIGN
@EVERY_PAPER
def test_check_bars_of_the_svg_pages_measure_100_mm_and_4_inches_both_ways(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    pages = sorted((file_set(design, *options) / "paper").glob("*.svg"))
    assert len(pages) == len(papers(file_set(design, *options)))
    for page in pages:
        sizes = [
            bar_size(line.points) for line in svg_file(page.read_text(encoding="utf-8")).operation("check-square")
        ]
        long = [size for size in sizes if max(size) > 10]
        for bars in (sorted(w for w, h in long if w > h), sorted(h for w, h in long if h > w)):
            assert bars == pytest.approx([100.0, 4 * 25.4], abs=TRUE)


def bar_size(points: Sequence[complex]) -> tuple[float, float]:
    xs, ys = [at.real for at in points], [at.imag for at in points]
    return max(xs) - min(xs), max(ys) - min(ys)


# What the checks are worth: the same files held to a description that is not theirs.


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda piece: piece["holes"][2].update(x=piece["holes"][2]["x"] + 0.02), "mm off"),
        (lambda piece: piece["holes"].pop(), "holes, not"),
        (lambda piece: piece.update(width=piece["width"] + 0.02), " x "),
        (lambda piece: shift_corner(piece), "strays"),
        (lambda piece: sharpen(piece), "radius"),
    ],
    ids=["hole", "count", "size", "corner", "radius"],
)
def test_a_description_two_hundredths_of_a_millimetre_off_is_told_from_the_file(
    change: Callable[[Json], None], words: str, file_set: FileSet
) -> None:
    folder = file_set(DESIGNS[0], *OPTIONS[0])
    file, pieces = next(cutting_files(folder, "dxf"))
    read = gdal_pieces(gdal_shapes(file))[0]
    assert differences(described(folder), pieces[0], read) == []
    other = deepcopy(pieces[0])
    change(other)
    assert any(words in fault for fault in differences(described(folder), other, read))


def shift_corner(piece: Json) -> None:
    piece["outline"][0][1] += 0.05


def sharpen(piece: Json) -> None:
    """The first arc bowed by 0.05 mm more."""
    arc = next(i for i, (*_, bulge) in enumerate(piece["outline"]) if bulge)
    points = described_outline(piece).points
    chord = abs(points[(arc + 1) % len(points)] - points[arc])
    piece["outline"][arc][2] += 0.1 / chord


def test_a_line_drawn_twice_in_part_is_found() -> None:
    one, other = shapely.LineString([(0, 0), (10, 0)]), shapely.LineString([(9, 0), (12, 0)])
    assert doubled([one, other]) == pytest.approx(1.0)
