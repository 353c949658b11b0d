"""Making sheets as strangers read them: tags by Python's HTML parser, and PDF text and ink by PDFium."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path

import pypdfium2 as pdfium

__all__ = ["DOTS", "PageOfSheet", "ReadHtml", "html_read", "pdf_read"]

DOTS = 2  # of the picture that ink is looked for in, to a point of the page
_MM = 25.4 / 72
_INK = 200  # a dot darker than this has ink on it
_VOID = frozenset({"meta", "br", "hr", "img", "input", "link"})
_ADDRESSES = frozenset({"src", "href", "xlink:href", "action", "data", "poster", "srcset", "background"})
_LOADERS = frozenset({"script", "link", "iframe", "object", "embed", "img", "use", "image", "base", "form"})


@dataclass
class ReadHtml(HTMLParser):
    """What stands in a page: cells of tables row by row, words, faults of its tags, and whatever it would load."""

    rows: list[list[str]] = field(default_factory=list)
    words: list[str] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    loads: list[str] = field(default_factory=list)
    open_tags: list[str] = field(default_factory=list)
    language: str = ""

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._look_at(tag, attrs)
        if tag not in _VOID:
            self.open_tags.append(tag)
        if tag == "tr":
            self.rows.append([])
        elif tag in ("td", "th"):
            self.rows[-1].append("")

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._look_at(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        if not self.open_tags or self.open_tags.pop() != tag:
            self.faults.append(f"</{tag}> closes what is not open, at {self.getpos()}")

    def handle_data(self, data: str) -> None:
        if "style" in self.open_tags:
            self.loads += [word for word in ("url(", "@import") if word in data]
            return
        self.words.append(data)
        if self.open_tags and self.open_tags[-1] in ("td", "th"):
            self.rows[-1][-1] += data

    def _look_at(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "html":
            self.language = dict(attrs).get("lang") or ""
        if tag in _LOADERS:
            self.loads.append(tag)
        self.loads += [f"{tag} {name}={value}" for name, value in attrs if name in _ADDRESSES or name[:2] == "on"]


def html_read(page: bytes) -> ReadHtml:
    """A page as the parser meets it; every tag still open at its end is a fault."""
    reader = ReadHtml()
    reader.feed(page.decode("utf-8"))
    reader.close()
    reader.faults += [f"<{tag}> is never closed" for tag in reader.open_tags]
    return reader


@dataclass(frozen=True, slots=True)
class PageOfSheet:
    """A printed page: size in mm, the box round all ink on it (x0, y0, x1, y1, mm), and its words."""

    size: tuple[float, float]
    ink: tuple[float, float, float, float]
    words: str


def pdf_read(file: Path) -> list[PageOfSheet]:
    """Every page of a file."""
    return [_page(page) for page in pdfium.PdfDocument(file)]


def _page(page: pdfium.PdfPage) -> PageOfSheet:
    picture = page.render(scale=DOTS, grayscale=True).to_pil()
    box = picture.point(lambda tone: 255 if tone < _INK else 0).getbbox()
    left, top, right, bottom = (side * _MM / DOTS for side in box)
    width, height = (side * _MM for side in page.get_size())
    ink = (left, height - bottom, right, height - top)
    return PageOfSheet((width, height), ink, page.get_textpage().get_text_range())
