"""The PDF read back by a program that did not write it (PDFium): true sizes, places, layers, labels and pens."""

from __future__ import annotations

import ctypes
from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

import pypdfium2 as pdfium
import pypdfium2.raw as raw
import pytest

from patternforge.drawing.lettering import letter_strokes
from patternforge.drawing.model import Align, Dot, Figure, Ink, Page, Role, Stroke, Text
from patternforge.drawing.paper import PAPERS
from patternforge.drawing.printing import PrintSettings
from patternforge.drawing.tile import pages
from patternforge.export.pdf import pdf_bytes
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point

MM = 25.4 / 72  # one PDF unit in mm: ISO 32000-1, 8.3.2.3
TRUE = 0.01  # mm

# 210 x 297 and 297 x 420 mm (ISO 216) and 8.5 x 11 and 8.5 x 14 in, in units of 1/72 in.
BOXES = {"A4": (595.276, 841.890), "A3": (841.890, 1190.551), "Letter": (612, 792), "Legal": (612, 1008)}

HOLES = [Point(4 + 3.4 * n, 3.5) for n in range(26)]


def sleeve(width: float = 100.0, height: float = 72.5) -> Figure:
    inks: tuple[Ink, ...] = (
        Stroke(Role.MARK, polyline([Point(50, 68.5), Point(50, 72.5)])),
        *(Dot(Role.HOLE, hole, 1.2) for hole in HOLES),
        Stroke(Role.OPENING, rounded_rectangle(20, 20, 60, 45, 4).reversed()),
        Stroke(Role.OUTLINE, rounded_rectangle(0, 0, width, height, 6)),
        Stroke(Role.FOLD, polyline([Point(50, 10), Point(50, 60)])),
        Stroke(Role.SEAM, polyline([HOLES[0], HOLES[-1]])),
        Text(Role.LABEL, Point(50, 60), 3.0, "Sleeve, Rückseite", align=Align.CENTRE),
    )
    return Figure("sleeve", "outer", inks)


@dataclass(frozen=True)
class Drawn:
    """One stroked path as read: layer, points of its steps in mm of the page (handles of curves apart), pen."""

    layer: str
    points: tuple[tuple[float, float], ...]
    handles: tuple[tuple[float, float], ...]
    width: float
    dash: int
    colour: tuple[int, int, int]

    @property
    def box(self) -> tuple[float, float, float, float]:
        xs, ys = [x for x, _ in self.points], [y for _, y in self.points]
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def size(self) -> tuple[float, float]:
        x0, y0, x1, y1 = self.box
        return x1 - x0, y1 - y0


def document(*figures: Figure, paper: str = "a4", settings: PrintSettings | None = None) -> pdfium.PdfDocument:
    made = pages(figures, PAPERS[paper.lower()], settings or PrintSettings("Card sleeve", "A"))
    return pdfium.PdfDocument(pdf_bytes(made, "Card sleeve"))


def drawn(page: pdfium.PdfPage) -> list[Drawn]:
    handles = (raw.FPDFPage_GetObject(page.raw, i) for i in range(raw.FPDFPage_CountObjects(page.raw)))
    return [_drawn(handle) for handle in handles if raw.FPDFPageObj_GetType(handle) == raw.FPDF_PAGEOBJ_PATH]


def check_bars(page: pdfium.PdfPage) -> list[tuple[float, float]]:
    """Sizes of all that is drawn on the check layer but for the letters, which are no taller or wider than 10 mm."""
    return [path.size for path in drawn(page) if path.layer == "check square" and max(path.size) > 10]


def _drawn(handle: object) -> Drawn:
    matrix, width, dash = raw.FS_MATRIX(), ctypes.c_float(), raw.FPDFPageObj_GetDashCount(handle)
    assert raw.FPDFPageObj_GetMatrix(handle, matrix)
    assert raw.FPDFPageObj_GetStrokeWidth(handle, width)
    steps = list(_steps(handle, matrix))
    ends = tuple(point for kind, point in steps if kind == "end")
    channels = [ctypes.c_uint() for _ in range(4)]
    assert raw.FPDFPageObj_GetStrokeColor(handle, *channels)
    red, green, blue, _ = (channel.value for channel in channels)
    curves = tuple(point for kind, point in steps if kind == "handle")
    scale = max(hypot(matrix.a, matrix.b), hypot(matrix.c, matrix.d))
    return Drawn(_layer(handle), ends, curves, width.value * scale * MM, dash, (red, green, blue))


def _steps(handle: object, matrix: raw.FS_MATRIX) -> Iterator[tuple[str, tuple[float, float]]]:
    beziers = 0
    for i in range(raw.FPDFPath_CountSegments(handle)):
        segment = raw.FPDFPath_GetPathSegment(handle, i)
        x, y = ctypes.c_float(), ctypes.c_float()
        assert raw.FPDFPathSegment_GetPoint(segment, x, y)
        if raw.FPDFPathSegment_GetType(segment) == raw.FPDF_SEGMENT_BEZIERTO:
            beziers += 1
        is_handle = beziers % 3 in (1, 2)
        yield (
            "handle" if is_handle else "end",
            (
                (matrix.a * x.value + matrix.c * y.value + matrix.e) * MM,
                (matrix.b * x.value + matrix.d * y.value + matrix.f) * MM,
            ),
        )


def _layer(handle: object) -> str:
    assert raw.FPDFPageObj_CountMarks(handle) == 1
    mark = raw.FPDFPageObj_GetMark(handle, 0)
    buffer, length = (ctypes.c_ushort * 64)(), ctypes.c_ulong()
    assert raw.FPDFPageObjMark_GetParamStringValue(mark, b"Name", buffer, ctypes.sizeof(buffer), length)
    return "".join(map(chr, buffer[: length.value // 2 - 1]))


@pytest.mark.parametrize("paper", BOXES)
def test_the_page_box_is_the_paper(paper: str) -> None:
    size = document(sleeve(), paper=paper)[0].get_size()
    assert size == pytest.approx(BOXES[paper], abs=0.001)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_check_bars_measure_100_mm_and_4_inches_both_ways_on_every_page(paper: str) -> None:
    pdf = document(sleeve(), sleeve(520, 72.5), paper=paper)
    assert len(pdf) > 2
    for page in pdf:
        bars = check_bars(page)
        across, upright = sorted(w for w, h in bars if w > h), sorted(h for w, h in bars if h > w)
        assert across == pytest.approx([100.0, 4 * 25.4], abs=TRUE)
        assert upright == pytest.approx([100.0, 4 * 25.4], abs=TRUE)


def test_corrected_bars_and_pieces_grow_by_the_correction_each_way() -> None:
    settings = PrintSettings("Card sleeve", "A", x_correction=1.004, y_correction=0.998)
    page = document(sleeve(), settings=settings)[0]
    bars, paths = check_bars(page), drawn(page)
    assert min(w for w, h in bars if w > h) == pytest.approx(100.4, abs=TRUE)
    assert min(h for w, h in bars if h > w) == pytest.approx(99.8, abs=TRUE)
    (outline,) = [path for path in paths if path.layer == "outline"]
    assert outline.size == pytest.approx((100.4, 72.5 * 0.998), abs=TRUE)


def test_outline_and_opening_have_their_true_sizes() -> None:
    paths = drawn(document(sleeve())[0])
    (outline,) = [path for path in paths if path.layer == "outline"]
    (opening,) = [path for path in paths if path.layer == "opening"]
    assert outline.size == pytest.approx((100.0, 72.5), abs=TRUE)
    assert opening.size == pytest.approx((40.0, 25.0), abs=TRUE)
    assert (opening.box[0] - outline.box[0], opening.box[1] - outline.box[1]) == pytest.approx((20, 20), abs=TRUE)


def test_every_hole_is_a_circle_in_its_place() -> None:
    paths = drawn(document(sleeve())[0])
    (outline,) = [path for path in paths if path.layer == "outline"]
    holes = [path for path in paths if path.layer == "stitch hole"]
    assert len(holes) == len(HOLES)
    for hole, true in zip(holes, HOLES, strict=True):
        x0, y0, x1, y1 = hole.box
        assert ((x0 + x1) / 2 - outline.box[0], (y0 + y1) / 2 - outline.box[1]) == pytest.approx(
            (true.x, true.y), abs=TRUE
        )
        centre = (x0 + x1) / 2, (y0 + y1) / 2
        assert [hypot(x - centre[0], y - centre[1]) for x, y in hole.points] == pytest.approx(
            [0.6] * len(hole.points), abs=TRUE
        )


def test_corners_are_curves_and_sides_are_lines() -> None:
    (outline,) = [path for path in drawn(document(sleeve())[0]) if path.layer == "outline"]
    assert len(outline.handles) == 4 * 2 * 2  # four corners, two pieces of 45 degrees each, two handles a piece


def test_each_operation_is_a_layer_of_its_own() -> None:
    layers = {path.layer for path in drawn(document(sleeve())[0])}
    assert layers == {
        "mark",
        "stitch hole",
        "opening",
        "outline",
        "fold line",
        "stitch line",
        "label",
        "check square",
    }


def test_a_split_piece_adds_the_guide_layer() -> None:
    assert "guide" in {path.layer for path in drawn(document(sleeve(520, 72.5))[0])}


def test_no_line_is_wider_than_a_quarter_of_a_millimetre() -> None:
    settings = PrintSettings("Card sleeve", "A", x_correction=0.98)
    widths = [path.width for page in document(sleeve(520, 72.5), settings=settings) for path in drawn(page)]
    assert min(widths) > 0.1
    assert max(widths) <= 0.25 + 1e-6


def test_cut_fold_and_stitch_lines_differ_in_dash_and_in_colour() -> None:
    paths = drawn(document(sleeve())[0])
    pens = {path.layer: (path.dash, path.colour) for path in paths if path.layer in ("outline", "fold line", "mark")}
    assert len(pens) == 3
    assert len({colour for _, colour in pens.values()}) == 3
    assert pens["outline"][0] == 0
    assert pens["fold line"][0] > 0
    assert pens["mark"][0] > pens["fold line"][0]


@pytest.mark.parametrize(("angle", "align"), [(0.0, Align.LEFT), (90.0, Align.RIGHT), (-33.0, Align.CENTRE)])
def test_every_corner_of_every_letter_is_in_its_place(angle: float, align: Align) -> None:
    text = Text(Role.GUIDE, Point(100.0, 150.0), 3.0, "Größe 12: Łódź, " * 4, angle, align)
    page = pdfium.PdfDocument(pdf_bytes([Page("1", 210.0, 297.0, (text,))], "Letters"))[0]
    corners = [point for path in drawn(page) for point in path.points]
    true = [(v[0], v[1]) for stroke in letter_strokes(text) for v in stroke.path.vertices]
    assert len(corners) == len(true) > 600
    assert all(hypot(x - a, y - b) < TRUE for (x, y), (a, b) in zip(corners, true, strict=True))


def test_letters_are_solid_and_as_bold_as_lines_in_a_role_that_is_dashed() -> None:
    ring = Dot(Role.GUIDE, Point(50, 50), 20.0)
    page = Page("1", 210.0, 297.0, (ring, Text(Role.GUIDE, Point(20, 20), 2.0, "I"), ring))
    before, letter, after = drawn(pdfium.PdfDocument(pdf_bytes([page], "Letters"))[0])
    assert (before.dash, letter.dash, after.dash) == (2, 0, 2)
    assert [letter.width, after.width] == pytest.approx([before.width] * 2, abs=1e-5)
    assert after.points == before.points


def test_viewers_are_asked_not_to_scale() -> None:
    assert not raw.FPDF_VIEWERREF_GetPrintScaling(document(sleeve()).raw)


def test_pages_carry_their_labels() -> None:
    pdf = document(sleeve(), sleeve(520, 72.5))
    assert [pdf.get_page_label(i) for i in range(len(pdf))] == ["1", "sleeve A1", "sleeve A2"]


def test_words_can_be_found_and_copied() -> None:
    text = document(sleeve())[0].get_textpage().get_text_bounded()
    assert "Card sleeve, revision A" in text
    assert "Sleeve, Rückseite" in text
    assert "Print at 100 %" in text


def test_the_title_is_in_the_file() -> None:
    assert document(sleeve()).get_metadata_dict()["Title"] == "Card sleeve"
