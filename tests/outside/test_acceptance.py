"""What a maker checks before cutting expensive leather, on the files as written: sheets, pages, lists.

Sizes, closed outlines, nothing twice, order and check squares: ``test_files_read_back`` and its neighbours. Mating
holes, mirrors, edges and fold lengths: ``test_closing``. Pockets, stitches and seams: ``test_acceptance_sewing``.
"""

from __future__ import annotations

import re
from itertools import combinations
from pathlib import Path

import pypdfium2 as pdfium
import pytest
import shapely

from tests.outside.dxf_reading import Contour, Cut, CutPiece, cut_pieces, cuts, header_value, layer_colours
from tests.outside.file_sets import (
    EVERY_DESIGN,
    EVERY_PAPER,
    EVERY_RELEASE,
    OPTIONS,
    FileSet,
    cutting_files,
    described,
    dxf_files,
    pages_file,
)
from tests.outside.gdal_reading import gdal_shapes
from tests.outside.pdf_reading import pdf_pages

# ISO 216 and the North American sizes, mm.
PAPERS = {"a4": (210.0, 297.0), "a3": (297.0, 420.0), "letter": (215.9, 279.4)}
WHITE = 10.0  # mm left free along the rim of a page
GAP = 10.0  # mm between pieces on a sheet
WIDEST_PEN = 0.25  # mm
OWN_LAYERS = ("0", "Defpoints")  # of the format and of the library; nothing lies on them


def pieces_of(folder: Path) -> tuple[CutPiece, ...]:
    """Every piece of a set as cut by the laser."""
    file, _ = next(cutting_files(folder, "dxf"))
    return cut_pieces(cuts(file.read_text()))


@EVERY_DESIGN
@EVERY_RELEASE
def test_newer_cutting_files_say_that_they_are_in_millimetres(
    design: Path, options: tuple[str, ...], file_set: FileSet
) -> None:
    # DXF reference, HEADER: $INSUNITS 4 is millimetres, $MEASUREMENT 1 metric; release R12 knows neither.
    unit, system = (None, None) if "r12" in options else ("4", "1")
    for file in dxf_files(file_set(design, *options)):
        text = file.read_text()
        assert (header_value(text, "$INSUNITS"), header_value(text, "$MEASUREMENT")) == (unit, system)


@EVERY_DESIGN
@EVERY_PAPER
def test_every_page_is_the_true_size_of_its_paper(design: Path, options: tuple[str, ...], file_set: FileSet) -> None:
    for page in pdf_pages(pages_file(file_set(design, *options))):
        assert sorted(page.size) == pytest.approx(PAPERS[options[3]], abs=0.01)


@EVERY_DESIGN
@EVERY_PAPER
def test_nothing_is_printed_in_the_white_rim_and_no_line_is_too_wide(
    design: Path, options: tuple[str, ...], file_set: FileSet
) -> None:
    for page in pdf_pages(pages_file(file_set(design, *options))):
        xs, ys = ([at for path in page.paths for at in axis(path.points)] for axis in (real_parts, imaginary_parts))
        assert WHITE - 0.01 <= min(xs) <= max(xs) <= page.size[0] - WHITE + 0.01
        assert WHITE - 0.01 <= min(ys) <= max(ys) <= page.size[1] - WHITE + 0.01
        assert max(path.pen for path in page.paths) <= WIDEST_PEN + 1e-6


def real_parts(points: tuple[complex, ...]) -> list[float]:
    return [at.real for at in points]


def imaginary_parts(points: tuple[complex, ...]) -> list[float]:
    return [at.imag for at in points]


# What the reader gives of upright letters runs on from line to line without a break.
_FACT = re.compile(
    r"; ?|(?=cut \d|drafted for|grain side|flesh side|faces |seen when|hidden when|tight way|revision )"
    r"|(?=skive \d|turn in )"
)


def facts_of(line: str) -> list[str]:
    """What one line of a page says, fact by fact; the head of a page, which has a title before a comma, as it is."""
    return [line] if ", revision" in line else [fact for fact in _FACT.split(line) if fact]


@EVERY_DESIGN
def test_every_piece_on_paper_bears_all_a_maker_must_know_of_it(design: Path, file_set: FileSet) -> None:
    folder = file_set(design, *OPTIONS[2])
    document = pdfium.PdfDocument(pages_file(folder))
    words = "\n".join(document[i].get_textpage().get_text_bounded() for i in range(len(document)))
    lines = [fact for line in words.splitlines() for fact in facts_of(line)]
    json = described(folder)
    for piece in json["pieces"]:
        same = [p for p in json["pieces"] if (p["leather"], p["thickness"]) == (piece["leather"], piece["thickness"])]
        said = [line.strip() for line in lines]
        assert any(line == piece["name"] or line.endswith(f": {piece['name']}") for line in said)
        assert sum(f"cut {piece['quantity']} of {piece['leather']}" in line for line in said) >= len(same)
        assert sum(f"drafted for {piece['thickness']:.2f} mm" in line for line in said) >= len(same)
    every = len(json["pieces"])
    assert sum(line.strip() == f"revision {json['design']['revision']}" for line in lines) == every
    faced = sum(piece["showing_face"] is not None for piece in json["pieces"])
    loose = {leather["role"] for leather in json["inputs"]["leathers"] if leather["stretch"] != "unknown"}
    tight = sum(piece["leather"] in loose for piece in json["pieces"])
    counts = {"side up": faced, "faces ": every, " when made up": every, "tight way ": tight}
    assert {word: sum(word in line for line in lines) for word in counts} == counts
    assert sum(line.split()[:1] == ["up"] for line in lines) == every


@EVERY_DESIGN
def test_pieces_on_a_sheet_keep_their_gap_and_stay_on_the_bed(design: Path, file_set: FileSet) -> None:
    folder = file_set(design, "--for", "laser", "--bed", "300")
    for file, _ in cutting_files(folder, "dxf"):
        outlines = [shapely.Polygon(shape) for layer, shape in gdal_shapes(file) if layer == "OUTLINE"]
        assert min((a.distance(b) for a, b in combinations(outlines, 2)), default=GAP) >= GAP - 0.001
        x0, y0, x1, _ = shapely.total_bounds(outlines).tolist()
        assert min(x0, y0) >= GAP - 0.001
        assert x1 <= 300 - GAP + 0.001


@EVERY_DESIGN
def test_areas_and_counts_described_are_those_of_the_pieces_cut(design: Path, file_set: FileSet) -> None:
    folder = file_set(design, *OPTIONS[0])
    for file, pieces in cutting_files(folder, "dxf"):
        outlines = [shapely.Polygon(shape) for layer, shape in gdal_shapes(file) if layer == "OUTLINE"]
        assert len(outlines) == sum(piece["quantity"] for piece in pieces)
        cut_out = [shapely.Polygon(shape) for layer, shape in gdal_shapes(file) if layer == "OPENING"]
        areas = [o.area - sum(each.area for each in cut_out if o.contains(each)) for o in outlines]
        assert areas == pytest.approx([piece["area"] for piece in pieces], rel=0.001)


@EVERY_DESIGN
def test_the_kerf_is_applied_once_and_only_when_there_is_one(design: Path, file_set: FileSet) -> None:
    kerf = 0.2
    net = pieces_of(file_set(design, *OPTIONS[0]))
    folder = file_set(design, "--for", "laser", "--kerf", str(kerf))
    (file,) = (folder / "laser").glob("*everything*.dxf")
    assert f"kerf-{kerf:.3f}" in file.name
    for before, after in zip(net, cut_pieces(cuts(file.read_text())), strict=True):
        (*_, w1, h1) = after.outline.box
        x0, y0, x1, y1 = grown_box(before.outline, kerf / 2)
        assert (w1, h1) == pytest.approx((x1 - x0, y1 - y0), abs=1e-5)
        for hole, cut in zip(before.holes, after.holes, strict=True):
            # Each lies at the origin by its own corner, which moves out with the outline.
            assert abs(cut.centre - hole.centre + complex(x0, y0)) < 1e-5
            assert cut_size(hole) - cut_size(cut) == pytest.approx(kerf, abs=1e-5)


def grown_box(outline: Contour, by: float) -> tuple[float, float, float, float]:
    """The bounds of an outline with sharp corners kept, ``by`` mm larger all round."""
    shape = shapely.Polygon([(at.real, at.imag) for at in outline.flattened(steps=1000)])
    grown = shapely.bounds(shape.buffer(by, join_style="mitre")).tolist()
    return grown[0], grown[1], grown[2], grown[3]


def cut_size(cut: Cut) -> float:
    """Diameter of a round hole, length of a slit."""
    points = cut.contour.points
    return 2 * cut.radius if cut.kind == "CIRCLE" else abs(points[1] - points[0])


@EVERY_DESIGN
@EVERY_RELEASE
def test_each_operation_has_one_layer_of_one_colour_in_all_files_of_a_set(
    design: Path, options: tuple[str, ...], file_set: FileSet
) -> None:
    known: dict[str, int] = {}
    for file in dxf_files(file_set(design, *options)):
        text = file.read_text()
        colours = {name: colour for name, colour in layer_colours(text).items() if name not in OWN_LAYERS}
        assert {cut.layer for cut in cuts(text)} == set(colours)
        assert all(known.setdefault(name, colour) == colour for name, colour in colours.items())
    assert len(set(known.values())) == len(known)


@EVERY_DESIGN
def test_cutting_files_hold_no_frame_square_or_letter(design: Path, file_set: FileSet) -> None:
    for file in dxf_files(file_set(design, *OPTIONS[0])):
        pieces = cut_pieces(cuts(file.read_text()))
        for piece in pieces:
            ground = shapely.Polygon([(at.real, at.imag) for at in piece.outline.flattened()])
            for cut in piece.cuts[:-1]:
                assert all(ground.contains(shapely.Point(at.real, at.imag)) for at in cut.contour.points)
