"""A document as one HTML page that asks for nothing else: no script, no font, no picture file, no request.

It is written so that it reads as XML too: every element closed, every attribute in quotes.
"""

from __future__ import annotations

from collections.abc import Iterator
from html import escape

from patternforge.drawing.document import (
    Blank,
    Block,
    Cell,
    Column,
    Document,
    Fields,
    Listing,
    Paragraph,
    Picture,
    Section,
    Step,
    Table,
    Tone,
)
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.export.html_picture import inline_svg
from patternforge.export.html_style import style
from patternforge.export.html_words import lawful_words

__all__ = ["html_bytes"]


def html_bytes(document: Document, paper: Paper, settings: PrintSettings) -> bytes:
    """``document`` as HTML in UTF-8, the same bytes on every day and machine; it prints on ``paper``.

    Of ``settings`` the white rim and the size of letters count. Words of the user's are escaped. DraftError for a
    text in a drawing that holds a control character.

    >>> from patternforge.drawing.paper import A4
    >>> page = html_bytes(Document("A <wallet>", "", "", ()), A4, PrintSettings(""))
    >>> b"<h1>A &lt;wallet&gt;</h1>" in page
    True
    """
    lines = [
        "<!DOCTYPE html>",
        f'<html lang="{_words(document.language)}">',
        "<head>",
        '<meta charset="utf-8" />',
        '<meta name="viewport" content="width=device-width, initial-scale=1" />',
        f"<title>{_words(document.title)}</title>",
        f"<style>\n{style(paper, settings, document.imprint)}</style>",
        "</head>",
        "<body>",
        "<header>",
        f"<h1>{_words(document.title)}</h1>",
        *([f"<p>{_words(document.subtitle)}</p>"] if document.subtitle else []),
        "</header>",
        "<main>",
        *(line for section in document.sections for line in _section(section)),
        "</main>",
        f"<footer><p>{_words(document.imprint)}</p></footer>",
        "</body>",
        "</html>",
    ]
    return ("\n".join(lines) + "\n").encode("utf-8")


def _words(words: str) -> str:
    """Text of the user's as HTML: nothing in it is markup, and characters that no such file may hold are shown."""
    return escape(lawful_words(words))


def _section(section: Section) -> Iterator[str]:
    yield "<section>"
    yield f"<h2>{_words(section.title)}</h2>"
    for block in section.blocks:
        yield from _block(block)
    yield "</section>"


def _block(block: Block) -> Iterator[str]:
    match block:
        case Paragraph():
            yield _paragraph(block)
        case Listing():
            yield from ("<ul>", *(f"<li>{_words(item)}</li>" for item in block.items), "</ul>")
        case Table():
            yield from _table(block)
        case Picture():
            yield from _figure(block)
        case Fields():
            yield from ('<div class="fields">', *(_field(label) for label in block.labels), "</div>")
        case Step():
            yield from _step(block)


def _paragraph(block: Paragraph) -> str:
    match block.tone:
        case Tone.PLAIN:
            return f"<p>{_words(block.words)}</p>"
        case Tone.LOUD:
            return f'<p class="loud"><strong>{_words(block.words)}</strong></p>'
        case Tone.SMALL:
            return f'<p class="small">{_words(block.words)}</p>'


def _field(label: str) -> str:
    return f'<p>{_words(label)} <span class="line" role="img" aria-label="to be written in"></span></p>'


def _table(table: Table) -> Iterator[str]:
    yield "<table>"
    if table.caption:
        yield f"<caption>{_words(table.caption)}</caption>"
    heads = (f'<th scope="col"{_side(column)}>{_words(column.head)}</th>' for column in table.columns)
    yield f"<thead><tr>{''.join(heads)}</tr></thead>"
    yield "<tbody>"
    yield from (_row(row, table.columns) for row in table.rows)
    yield "</tbody>"
    if table.totals:
        yield from ("<tfoot>", *(_row(row, table.columns) for row in table.totals), "</tfoot>")
    yield "</table>"


def _row(row: tuple[Cell, ...], columns: tuple[Column, ...]) -> str:
    cells = (f"<td{_side(column)}>{_cell(cell)}</td>" for cell, column in zip(row, columns, strict=True))
    return f"<tr>{''.join(cells)}</tr>"


def _side(column: Column) -> str:
    return "" if column.align.value == "left" else f' class="{column.align.value}"'


def _cell(cell: Cell) -> str:
    if isinstance(cell, Blank):
        told = {Blank.TICK: "to be ticked off", Blank.LINE: "to be written in"}[cell]
        return f'<span class="{cell.value}" role="img" aria-label="{told}"></span>'
    return _words(cell)


def _figure(picture: Picture) -> Iterator[str]:
    yield "<figure>"
    yield inline_svg(picture.sheet, picture.told)
    if picture.caption:
        yield f"<figcaption>{_words(picture.caption)}</figcaption>"
    yield "</figure>"


def _step(step: Step) -> Iterator[str]:
    yield '<article class="step">'
    yield f"<h3>{_cell(Blank.TICK)} Step {step.number}</h3>"
    yield f"<p>{_words(step.words)}</p>"
    if step.picture:
        yield from _figure(step.picture)
    yield "</article>"
