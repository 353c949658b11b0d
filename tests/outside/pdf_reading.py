"""PDF pages as PDFium reads them: every stroked path with its layer, in mm, curves as points close together."""

from __future__ import annotations

import ctypes
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import hypot
from pathlib import Path

import pypdfium2 as pdfium
import pypdfium2.raw as raw

from tests.outside.read_pieces import ReadHole, ReadPiece

__all__ = ["PdfPage", "PdfPath", "pdf_pages"]

MM = 25.4 / 72  # one PDF unit in mm: ISO 32000-1, 8.3.2.3
_PRICK = 1.0  # mm
_STEPS = 64  # points along a curve, which spans an eighth of a circle at most


@dataclass(frozen=True, slots=True)
class PdfPath:
    """Points along a path in mm of the page, and the width of its line."""

    layer: str
    points: tuple[complex, ...]
    closed: bool
    pen: float

    @property
    def is_hole(self) -> bool:
        """Whether it is a hole or a prick; other marks are lines, letters or larger circles."""
        return self.layer == "stitch hole" or (self.layer == "mark" and self.closed and max(self.size) < _PRICK)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height."""
        xs, ys = [at.real for at in self.points], [at.imag for at in self.points]
        return max(xs) - min(xs), max(ys) - min(ys)


@dataclass(frozen=True, slots=True)
class PdfPage:
    """A page: its label, its size in mm and all paths in the order they are drawn."""

    label: str
    size: tuple[float, float]
    paths: tuple[PdfPath, ...]

    @property
    def whole(self) -> bool:
        """Whether the page shows whole pieces; the page of a split one is labelled with its name and tile."""
        return self.label.isdigit()

    @property
    def pieces(self) -> list[ReadPiece]:
        """The pieces of a page of whole ones, parted after every outline."""
        pieces: list[ReadPiece] = []
        holes: list[ReadHole] = []
        for path in self.paths:
            if path.layer == "outline":
                pieces.append(ReadPiece(path.points, tuple(holes)))
                holes = []
            elif path.is_hole:
                holes.append(_hole(path))
        return pieces

    @property
    def fragment(self) -> ReadPiece:
        """What a page of a split piece shows of it: all points of its outline, and its whole holes."""
        outline = tuple(at for path in self.paths if path.layer == "outline" for at in _dense(path.points))
        drawn = (path for path in self.paths if path.is_hole)
        return ReadPiece(outline, tuple(_hole(path) for path in drawn if path.closed or len(path.points) == 2))

    @property
    def check_bars(self) -> tuple[list[float], list[float]]:
        """Lengths of the check bars, level ones and upright ones; letters are no larger than 10 mm."""
        sizes = [path.size for path in self.paths if path.layer == "check square" and max(path.size) > 10]
        return sorted(w for w, h in sizes if w > h), sorted(h for w, h in sizes if h > w)


def pdf_pages(file: Path) -> tuple[PdfPage, ...]:
    """Every page of a file."""
    document = pdfium.PdfDocument(file)
    return tuple(
        PdfPage(document.get_page_label(i), _millimetres(document[i].get_size()), tuple(_paths(document[i])))
        for i in range(len(document))
    )


def _millimetres(size: Iterable[float]) -> tuple[float, float]:
    width, height = size
    return width * MM, height * MM


def _paths(page: pdfium.PdfPage) -> Iterator[PdfPath]:
    for i in range(raw.FPDFPage_CountObjects(page.raw)):
        handle = raw.FPDFPage_GetObject(page.raw, i)
        if raw.FPDFPageObj_GetType(handle) == raw.FPDF_PAGEOBJ_PATH:
            yield _path(handle)


def _path(handle: object) -> PdfPath:
    matrix, width = raw.FS_MATRIX(), ctypes.c_float()
    assert raw.FPDFPageObj_GetMatrix(handle, matrix)
    assert raw.FPDFPageObj_GetStrokeWidth(handle, width)
    points, closed = _points(handle, matrix)
    scale = max(hypot(matrix.a, matrix.b), hypot(matrix.c, matrix.d))
    return PdfPath(_layer(handle), tuple(points), closed, width.value * scale * MM)


def _points(handle: object, matrix: raw.FS_MATRIX) -> tuple[list[complex], bool]:
    points: list[complex] = []
    handles: list[complex] = []
    closed = False
    for i in range(raw.FPDFPath_CountSegments(handle)):
        segment = raw.FPDFPath_GetPathSegment(handle, i)
        x, y = ctypes.c_float(), ctypes.c_float()
        assert raw.FPDFPathSegment_GetPoint(segment, x, y)
        along, up = complex(matrix.a, matrix.b), complex(matrix.c, matrix.d)
        at = (along * x.value + up * y.value + complex(matrix.e, matrix.f)) * MM
        closed = closed or bool(raw.FPDFPathSegment_GetClose(segment))
        if raw.FPDFPathSegment_GetType(segment) != raw.FPDF_SEGMENT_BEZIERTO:
            points.append(at)
        elif len(handles) < 2:
            handles.append(at)
        else:
            points += _curve(points[-1], handles[0], handles[1], at)
            handles = []
    return points, closed


def _curve(a: complex, b: complex, c: complex, d: complex) -> Iterator[complex]:
    for i in range(1, _STEPS + 1):
        t = i / _STEPS
        yield a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t * t * (1 - t) + d * t**3


def _dense(points: tuple[complex, ...]) -> Iterator[complex]:
    """The points and some between each two of them."""
    yield points[0]
    for a, b in pairwise(points):
        yield from (a + (b - a) * i / 8 for i in range(1, 9))


def _layer(handle: object) -> str:
    assert raw.FPDFPageObj_CountMarks(handle) == 1
    mark = raw.FPDFPageObj_GetMark(handle, 0)
    buffer, length = (ctypes.c_ushort * 64)(), ctypes.c_ulong()
    assert raw.FPDFPageObjMark_GetParamStringValue(mark, b"Name", buffer, ctypes.sizeof(buffer), length)
    return "".join(map(chr, buffer[: length.value // 2 - 1]))


def _hole(path: PdfPath) -> ReadHole:
    if len(path.points) == 2:
        start, end = path.points
        return ReadHole((start + end) / 2, abs(end - start), (end - start) / abs(end - start))
    xs, ys = [at.real for at in path.points], [at.imag for at in path.points]
    return ReadHole(complex(min(xs) + max(xs), min(ys) + max(ys)) / 2, path.size[0])
