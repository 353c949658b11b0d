"""Printed pages of every ready design read back: PDF by PDFium, SVG pages by an XML reader."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest
import shapely

from tests.outside.file_sets import (
    EVERY_DESIGN,
    EVERY_PAPER,
    FileSet,
    Json,
    described,
    pages_file,
)
from tests.outside.pdf_reading import pdf_pages
from tests.outside.read_pieces import TRUE, ReadPiece, dense_outline, unmatched
from tests.outside.svg_reading import svg_file


@EVERY_DESIGN
@EVERY_PAPER
def test_pdfium_reads_every_piece_whole_or_in_tiles_that_agree(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    folder = file_set(design, *options)
    pages = pdf_pages(pages_file(folder))
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
    for page in pdf_pages(pages_file(file_set(design, *options))):
        for bars in page.check_bars:
            assert bars == pytest.approx([100.0, 4 * 25.4], abs=TRUE)


@EVERY_DESIGN
@EVERY_PAPER
def test_check_bars_of_the_svg_pages_measure_100_mm_and_4_inches_both_ways(
    design: Path, options: Sequence[str], file_set: FileSet
) -> None:
    pages = sorted((file_set(design, *options) / "paper").glob("*.svg"))
    assert len(pages) == len(pdf_pages(pages_file(file_set(design, *options))))
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
