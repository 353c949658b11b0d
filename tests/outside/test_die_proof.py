"""The proof of dies as PDFium shows it: true to the pixel, the same lines as the files, and all that is signed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from io import BytesIO
from pathlib import Path

import pikepdf
import pypdfium2 as pdfium
import pytest
import shapely

from tests.outside.file_sets import OPTIONS, FileSet, Json, described
from tests.outside.gdal_reading import gdal_pieces, gdal_shapes
from tests.outside.pdf_reading import PdfPage, PdfPath, pdf_pages
from tests.outside.read_pieces import TRUE, ReadPiece
from tests.outside.written import DESIGNS

DPI = 600
PIXEL = 25.4 / DPI
SEEN = 0.05  # mm that a size may be off on a page that is shown
DARK = 128
JUDGED = {
    "good": "limit {limit:.2f} mm: good",
    "look": "the shop's limit is not given: ask",
    "no": "limit {limit:.2f} mm: NO, the shop cannot make it",
}
SOME = {path.stem: path for path in DESIGNS}
EVERY_PACK = pytest.mark.parametrize(
    "name", ["two-fold", "three-fold", "coin-pouch", "strap-card-case", "one-piece-card-wallet"]
)


def proof(folder: Path) -> Path:
    return folder / str(described(folder)["cutting"]["dies"]["proof"])


def dies_of(folder: Path) -> list[Json]:
    dies: list[Json] = described(folder)["cutting"]["dies"]["dies"]
    return dies


def pages_of(folder: Path) -> list[PdfPage]:
    """The pages of single dies."""
    return [page for page in pdf_pages(proof(folder)) if page.label.startswith("die ")]


@cache
def words_of(file: Path) -> list[str]:
    """The words of each page in one line."""
    document = pdfium.PdfDocument(file)
    return [" ".join(document[i].get_textpage().get_text_bounded().split()) for i in range(len(document))]


@EVERY_PACK
def test_every_die_is_drawn_as_in_its_file_on_a_page_of_its_own(name: str, file_set: FileSet) -> None:
    folder = file_set(SOME[name], *OPTIONS[0])
    for die, page in zip(dies_of(folder), pages_of(folder), strict=True):
        (shown,), (sent,) = page.pieces, gdal_pieces(gdal_shapes(folder / die["file"]))
        assert min(apart(way, sent) for way in (shown, shown.turned)) <= TRUE
        openings = [path for path in page.paths if path.layer == "opening"]
        assert len(openings) == len([layer for layer, _ in gdal_shapes(folder / die["file"]) if layer == "OPENING"])


def apart(one: ReadPiece, other: ReadPiece) -> float:
    own, its = (shapely.LinearRing([(p.real, p.imag) for p in each.at_origin.outline]) for each in (one, other))
    return float(shapely.hausdorff_distance(own, its))


@EVERY_PACK
def test_every_page_of_a_proof_has_bars_to_measure(name: str, file_set: FileSet) -> None:
    for page in pdf_pages(proof(file_set(SOME[name], *OPTIONS[0]))):
        for bars in page.check_bars:
            assert bars == pytest.approx([100.0, 4 * 25.4], abs=TRUE)


@EVERY_PACK
def test_a_proof_says_what_is_to_be_signed(name: str, file_set: FileSet) -> None:
    folder = file_set(SOME[name], *OPTIONS[0])
    first, *pages = words_of(proof(folder))
    json = described(folder)
    pieces = {piece["name"]: piece for piece in json["pieces"]}
    for number, (die, said) in enumerate(zip(dies_of(folder), pages, strict=True), start=1):
        assert f"Die {number} of {len(pages)}" in said
        assert f"{json['design']['title']}, revision {json['design']['revision']}" in said
        assert f"{die['width']:.2f} x {die['height']:.2f} mm" in said
        assert f"{die['width'] / 25.4:.3f} x {die['height'] / 25.4:.3f} in" in said
        assert Path(die["file"]).name in said
        for word in ("inside of the cutting edge", "Name", "Date", "Signature", "approved as drawn", "die maker"):
            assert word in said
        assert ("DIFFER" in said) is not die["symmetric"]
        mirrored = [cut for cut in die["cuts"] if cut["mirrored"]]
        assert said.count("MIRROR IMAGE of what is drawn") == len(mirrored)
        assert ("turn the LEATHER over" in said) is bool(mirrored)
        for cut in die["cuts"]:
            own = pieces[cut["piece"]]
            assert re.search(
                rf"{cut['piece']}: {cut['quantity']} of {own['leather']}.*? {own['thickness']:.2f} mm", said
            )
        for fine in die["finest"]:
            assert f"smallest {fine['what']} {fine['size']:.2f} mm, {JUDGED[fine['verdict']].format(**fine)}" in said
        assert Path(die["file"]).name in first


def test_a_page_larger_than_the_paper_says_how_large_it_is(file_set: FileSet) -> None:
    folder = file_set(SOME["three-fold"], *OPTIONS[0])
    large = [page for page in pages_of(folder) if max(page.size) > 297.1]
    assert [page.label for page in large] == ["die 1", "die 2"]
    first, shell, *_ = words_of(proof(folder))
    assert "larger than A4: 297 x 420 mm" in shell
    assert "Larger than A4: die 1 and die 2" in first


@pytest.mark.parametrize("name", ["two-fold", "coin-pouch"])
def test_bars_and_dies_measure_true_in_pixels(name: str, file_set: FileSet) -> None:
    folder = file_set(SOME[name], *OPTIONS[0])
    file = proof(folder)
    for number, page in enumerate(pdf_pages(file)):
        shown = Shown(file, number)
        bars = [path for path in page.paths if path.layer == "check square" and abs(max(path.size) - 100.0) < 1]
        assert len(bars) == 2
        for bar in bars:
            assert shown.longer_side(bar) == pytest.approx(100.0, abs=SEEN)
        if page.label.startswith("die "):
            (outline,) = (path for path in page.paths if path.layer == "outline")
            die = dies_of(folder)[int(page.label.removeprefix("die ")) - 1]
            sides = sorted([die["width"], die["height"]])
            assert sorted(shown.sides(outline)) == pytest.approx(sides, abs=SEEN)


def test_a_pixel_measure_tells_a_page_that_is_a_thousandth_too_large(file_set: FileSet) -> None:
    """The check above can fail: the same page stretched by a tenth of a percent is told."""
    file = proof(file_set(SOME["coin-pouch"], *OPTIONS[0]))
    (bar, *_) = [p for p in pdf_pages(file)[1].paths if p.layer == "check square" and abs(max(p.size) - 100.0) < 1]
    assert Shown(file, 1, 1.001).longer_side(bar) - 100.0 > SEEN


class Shown:
    """A page as it is rendered, and distances between its lines in it."""

    def __init__(self, file: Path, number: int, stretch: float = 1.0) -> None:
        page = pdfium.PdfDocument(file)[number]
        self.picture = page.render(scale=DPI / 72 * stretch, grayscale=True).to_numpy().squeeze()
        self.stretch = stretch

    def sides(self, path: PdfPath) -> tuple[float, float]:
        """Width and height of an outline, mm; three quarters up and a third along it has no notch and no tab."""
        xs, ys = [at.real for at in path.points], [at.imag for at in path.points]
        return (
            self._across(min(xs), max(xs), min(ys) + 0.75 * (max(ys) - min(ys)), level=True),
            self._across(min(ys), max(ys), min(xs) + 0.3 * (max(xs) - min(xs)), level=False),
        )

    def longer_side(self, path: PdfPath) -> float:
        """The length of a bar, measured beside the words in its middle."""
        xs, ys = [at.real for at in path.points], [at.imag for at in path.points]
        level = max(xs) - min(xs) > max(ys) - min(ys)
        along, beside = (xs, ys) if level else (ys, xs)
        return self._across(min(along), max(along), (min(beside) + max(beside)) / 2, level)

    def _across(self, low: float, high: float, beside: float, level: bool) -> float:
        return self._line(high, beside, level) - self._line(low, beside, level)

    def _line(self, near: float, beside: float, level: bool) -> float:
        """Where the line next to ``near`` is darkest, mm: the middle of its darkness within 0.8 mm on either side."""
        across = 1 if level else 0
        row = self._row(beside, across)
        # Rows are counted from the top; the way along them is turned round where it runs upwards.
        tones = row if level else row[::-1]
        middle = near * self.stretch / PIXEL
        ahead = range(int(middle - 0.8 / PIXEL), int(middle + 0.8 / PIXEL))
        dark = {i: 255.0 - float(tones[i]) for i in ahead if tones[i] < 255}
        return sum((i + 0.5) * tone for i, tone in dark.items()) / sum(dark.values()) * PIXEL

    def _row(self, beside: float, across: int) -> Sequence[float]:
        at = int(beside * self.stretch / PIXEL)
        row: Sequence[float] = (
            self.picture[self.picture.shape[0] - 1 - at] if across else self.picture[:, at]
        ).tolist()
        return row


def test_layers_are_real_and_what_is_switched_off_is_not_shown(file_set: FileSet) -> None:
    folder = file_set(SOME["two-fold"], *OPTIONS[0])
    (paper,) = (folder / "paper").glob("*.pdf")
    for file, layer in ((paper, "outline"), (paper, "stitch line"), (paper, "label"), (proof(folder), "size")):
        assert darkness(without(file, layer)) < darkness(file.read_bytes())


def without(file: Path, layer: str) -> bytes:
    """The file with one layer switched off as a viewer does it (ISO 32000-1, 8.11.4)."""
    with pikepdf.open(file) as pdf:
        (group,) = [each for each in pdf.Root.OCProperties.OCGs if str(each.Name) == layer]
        pdf.Root.OCProperties.D.OFF = pikepdf.Array([group])
        out = BytesIO()
        pdf.save(out)
        return out.getvalue()


def darkness(data: bytes) -> int:
    page = pdfium.PdfDocument(data)[1]
    return int((page.render(scale=2, grayscale=True).to_numpy() < DARK).sum())


def test_reading_order_has_every_die_once(file_set: FileSet) -> None:
    folder = file_set(SOME["two-fold"], *OPTIONS[0])
    assert [page.label for page in pdf_pages(proof(folder))] == ["list", *numbered(len(dies_of(folder)))]


def numbered(count: int) -> Iterator[str]:
    return (f"die {number}" for number in range(1, count + 1))
