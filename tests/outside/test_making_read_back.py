"""The making sheet of every ready design, read back by programs that did not write it."""

from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

from patternforge.drafting.holes import hole_inks
from patternforge.drafting.making.facts import Finished, MakingFacts
from patternforge.drafting.making.sheet import making_sheet
from patternforge.drafting.making.steps import making_steps_told
from patternforge.drawing.document import Document
from patternforge.drawing.document_pages import document_pages
from patternforge.drawing.paper import A4, LETTER, Paper
from patternforge.drawing.printing import Letters, PrintSettings
from patternforge.export.html import html_bytes
from patternforge.export.pdf import pdf_bytes
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.outside.chromium_reading import CHROMIUM
from tests.outside.making_reading import DOTS, ReadHtml, html_read, pdf_read
from tests.outside.written import DESIGNS, ready_design

EVERY = pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
# With every step and its picture; the search for thicknesses that fit has tests of its own.
STEPPED = frozenset({"coin-pouch", "one-piece-card-wallet", "key-strap"})
MARGIN = 10.0
OFF = 25.4 / 72 / DOTS + 0.125  # mm: a dot of the picture that ink is looked for in, and half a line's width
PRINTED = [path for number, path in enumerate(DESIGNS) if number % 4 == 0 or path.stem in STEPPED]


@dataclass(frozen=True, slots=True)
class Made:
    """A pattern, and its sheet as a document and as a page for the screen."""

    pattern: Pattern
    document: Document
    html: bytes
    read: ReadHtml


@cache
def made(path: Path) -> Made:
    pattern = drafted(ready_design(path))
    steps = making_steps_told(pattern, 180.0, 78.0) if path.stem in STEPPED else ()
    facts = MakingFacts(pattern, (), Finished((100.0, 80.0), (50.0, 80.0), 9.0), steps=steps, height=140.0)
    document = making_sheet(facts)
    html = html_bytes(document, A4, PrintSettings(""))
    return Made(pattern, document, html, html_read(html))


def printed(document: Document, paper: Paper, settings: PrintSettings) -> bytes:
    """The document as a PDF file."""
    return pdf_bytes(document_pages(document, paper, settings), "sheet")


def _table(read: ReadHtml, head: str) -> list[dict[str, str]]:
    """The rows under the heads of which one is ``head``, each cell by its head."""
    at = next(i for i, row in enumerate(read.rows) if head in row)
    heads = read.rows[at]
    own = []
    for row in read.rows[at + 1 :]:
        if len(row) != len(heads) or row[-1] == heads[-1]:
            break
        own.append(dict(zip(heads, row, strict=True)))
    return own


@EVERY
def test_the_page_is_well_formed_and_loads_nothing(path: Path) -> None:
    read = made(path).read
    assert read.faults == []
    assert read.loads == []
    assert read.language == "en"


@EVERY
def test_every_piece_stands_once_in_the_cut_list_with_its_own_numbers(path: Path) -> None:
    """Areas are reckoned anew from the vertices of the outline, by the shoelace sum and its arcs' segments."""
    each, pieces = made(path), made(path).pattern.pieces
    rows = _table(each.read, "net cm2")[: len(pieces)]
    assert [row["piece"] for row in rows] == [piece.name for piece in pieces]
    for row, piece in zip(rows, pieces, strict=True):
        assert row["width x height"] == f"{piece.width:.1f} x {piece.height:.1f}"
        assert float(row["net cm2"]) * 100 == pytest.approx(piece.area, rel=1e-3, abs=5.0)
        assert int(row["holes"]) == len(hole_inks(each.pattern, piece, 0.0))
        assert int(row["cut"]) == piece.quantity


@EVERY
def test_the_thread_in_all_is_the_patterns(path: Path) -> None:
    each = made(path)
    if not each.pattern.seams:
        assert not any("thread" in row for row in each.read.rows)
        return
    rows = _table(each.read, "thread")
    assert [row["seam"] for row in rows[:-1]] == [seam.name for seam in each.pattern.seams]
    thread = sum(seam.thread for seam in each.pattern.seams if not seam.meets)
    assert float(rows[-1]["thread"].removesuffix(" m")) * 1000 == pytest.approx(thread, abs=5.0)


@pytest.mark.parametrize("path", PRINTED, ids=lambda path: path.stem)
def test_pages_are_numbered_name_revision_and_file_and_keep_within_their_margins(path: Path, tmp_path: Path) -> None:
    each = made(path)
    number = DESIGNS.index(path)
    paper: Paper = LETTER if number % 2 else A4
    letters = Letters.LARGE if number % 3 == 0 else Letters.USUAL
    file = tmp_path / "sheet.pdf"
    file.write_bytes(printed(each.document, paper, PrintSettings("", margin=MARGIN, letters=letters)))
    read = pdf_read(file)
    words = " ".join(" ".join(page.words.split()) for page in read)
    for i, page in enumerate(read, start=1):
        assert page.size == pytest.approx((paper.width, paper.height), abs=0.01)
        x0, y0, x1, y1 = page.ink
        assert x0 >= MARGIN - OFF
        assert y0 >= MARGIN - OFF
        assert x1 <= paper.width - MARGIN + OFF
        assert y1 <= paper.height - MARGIN + OFF
        assert f"page {i} of {len(read)}" in page.words
        assert f"{path.name}, revision {each.pattern.design.revision}" in " ".join(page.words.split())
    assert all(piece.name.split()[0] in words for piece in each.pattern.pieces)


@pytest.mark.parametrize("name", sorted(STEPPED))
def test_every_step_has_a_number_a_box_and_a_picture(name: str) -> None:
    each = made(next(path for path in DESIGNS if path.stem == name))
    page = each.html.decode("utf-8")
    steps = page.count('<article class="step">')
    assert steps >= 4
    assert all(f"Step {number}</h3>" in page for number in range(1, steps + 1))
    assert page.count("<svg") == steps + 2  # the finished wallet, and the pieces pulled apart


_SCRIPT = """
import sys
from pathlib import Path
from tests.outside.test_making_read_back import digests
print(*digests(Path(sys.argv[1])))
"""


def digests(path: Path) -> list[str]:
    """A number for the bytes of the page and one for those of the printed pages."""
    each = made(path)
    files = (each.html, printed(each.document, A4, PrintSettings("")))
    return [hashlib.sha256(file).hexdigest() for file in files]


def test_the_same_design_gives_the_same_bytes_under_any_hash_seed_locale_and_day() -> None:
    path = next(path for path in DESIGNS if path.stem == "key-strap")
    done = subprocess.run(
        [sys.executable, "-c", _SCRIPT, str(path)],
        capture_output=True,
        check=True,
        env={**os.environ, "PYTHONHASHSEED": "77", "TZ": "Pacific/Kiritimati", "LC_ALL": "tr_TR.UTF-8"},
        cwd=Path(__file__).parents[2],
    )
    assert done.stdout.decode().split() == digests(path)


@pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this machine: its reading of the sheet is not checked")
def test_chromium_shows_the_page_without_a_word_of_complaint_and_asks_for_nothing(tmp_path: Path) -> None:
    """A script put into a copy tells how wide each picture is on the screen, and what was asked for."""
    page = made(next(path for path in DESIGNS if path.stem == "coin-pouch")).html.decode("utf-8")
    script = (
        "<pre id='seen'></pre><script>document.getElementById('seen').textContent = JSON.stringify(["
        "performance.getEntriesByType('resource').length, document.querySelectorAll('svg').length,"
        "Math.max(...[...document.querySelectorAll('svg')].map(e => Math.abs(e.getBoundingClientRect().width"
        " * 25.4 / 96 - parseFloat(e.getAttribute('width')))))]);</script></body>"
    )
    copy = tmp_path / "sheet.html"
    copy.write_text(page.replace("</body>", script), encoding="utf-8")
    words = ["--headless", "--no-sandbox", "--disable-gpu", "--enable-logging=stderr", "--window-size=1400,1000"]
    done = subprocess.run(
        [str(CHROMIUM), *words, f"--user-data-dir={tmp_path / 'profile'}", "--dump-dom", copy.as_uri()],
        capture_output=True,
        check=True,
        timeout=120,
    )
    dom = done.stdout.decode("utf-8")
    start = dom.rindex('id="seen">') + len('id="seen">')
    asked, pictures, off = json.loads(dom[start : dom.index("</pre>", start)])
    assert "CONSOLE" not in done.stderr.decode("utf-8", "replace")
    assert asked == 0
    assert pictures == page.count("<svg")
    assert off < 0.1
