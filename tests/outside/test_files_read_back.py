"""Cutting files of every ready design, as the command writes them, read back by GDAL and by bare group codes.

Held to ``pattern.json`` within 0.01 mm. SVG files and printed pages: ``test_svg_files_read_back`` and
``test_pages_read_back``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from copy import deepcopy
from pathlib import Path

import pytest
import shapely

from tests.outside.dxf_reading import Cut, cut_pieces, cuts, radii
from tests.outside.file_sets import (
    EVERY_DESIGN,
    EVERY_RELEASE,
    OPTIONS,
    FileSet,
    Json,
    cutting_files,
    described,
    die_files,
    dxf_files,
)
from tests.outside.gdal_reading import gdal_pieces, gdal_shapes
from tests.outside.read_pieces import (
    TRUE,
    ReadPiece,
    dense_outline,
    described_holes,
    described_outline,
    differences,
)
from tests.outside.written import DESIGNS

ORDER = ("MARK", "STITCH-HOLE", "OPENING", "OUTLINE")
DOUBLED = 0.02  # mm of line that may be in a file twice; what rounding leaves where two lines touch


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
    proof = folder / "die" / f"{folder.name}-die-proof.pdf"
    assert sorted([proof, *(file for file, _ in expected)]) == sorted((folder / "die").iterdir())
    cut = [piece["name"] for _, pieces in expected for piece, _ in pieces]
    assert sorted(cut) == sorted(piece["name"] for piece in described(folder)["pieces"])
    for file, pieces in expected:
        (read,) = gdal_pieces(gdal_shapes(file))
        assert differences(described(folder), pieces[0][0], read) == []
        for piece, mirrored in pieces:
            assert strays(piece, mirrored, read) <= 2 * TRUE


def strays(piece: Json, mirrored: bool, read: ReadPiece) -> float:
    """How far the outline described, turned over if it is mirrored, strays from the one read, mm, and holes too.

    A piece of a die lies on the other in steps of a quarter turn: both stand upright in their wallet.
    """
    own = [complex(-at.real, at.imag) if mirrored else at for at in dense_outline(piece)]
    holes = [complex(hole["x"], hole["y"]) for hole in described_holes(piece)]
    holes = [complex(-at.real, at.imag) if mirrored else at for at in holes]
    return min(apart([at * 1j**turn for at in own], [at * 1j**turn for at in holes], read) for turn in range(4))


def apart(own: list[complex], holes: list[complex], read: ReadPiece) -> float:
    """How far a piece laid corner to corner on the one read lies off it at most, mm."""
    shift = lower_left(read.outline) - lower_left(own)
    laid = [at + shift for at in own]
    line, found = (shapely.LinearRing([(at.real, at.imag) for at in points]) for points in (laid, read.outline))
    off = float(shapely.hausdorff_distance(line, found))
    nearest = (min(abs(at + shift - hole.at) for hole in read.holes) for at in holes)
    return max(off, *nearest) if holes else off


def lower_left(points: Sequence[complex]) -> complex:
    return complex(min(at.real for at in points), min(at.imag for at in points))


@EVERY_DESIGN
@EVERY_RELEASE
def test_bulges_give_the_described_radii_in_every_laser_file(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    for file, pieces in cutting_files(file_set(design, *options), "dxf"):
        for piece, cut in zip(pieces, cut_pieces(cuts(file.read_text())), strict=True):
            assert radii(cut.outline.stretches) == pytest.approx(radii(described_outline(piece).stretches), abs=TRUE)


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
