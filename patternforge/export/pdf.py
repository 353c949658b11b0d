"""Printed pages as a PDF file: true size, vectors only, one optional layer for each role."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from io import BytesIO
from typing import TYPE_CHECKING

from patternforge.drawing.model import Page, Role
from patternforge.errors import DraftError
from patternforge.export.numbers import decimal
from patternforge.export.pdf_content import POINTS_PER_MM, content, layer_name

if TYPE_CHECKING:
    import pikepdf

__all__ = ["pdf_bytes"]


def pdf_bytes(pages: Sequence[Page], title: str) -> bytes:
    """A PDF 1.7 file of ``pages`` at 1:1, the same bytes for the same pages on any day and under any locale.

    Lines and letters are strokes, arcs are Bezier pieces of at most 45 degrees, each role is a layer that a viewer
    can hide, pages carry their labels, and the file asks not to be fitted to the paper. The one thing that can change
    the bytes is another build of the libraries. DraftError: no page, or a text that has no stroke letters.

    >>> pdf_bytes([Page("1", 210.0, 297.0, ())], "Card sleeve")[:8]
    b'%PDF-1.7'
    """
    import pikepdf

    if not pages:
        raise DraftError("there is no page to print")
    pdf = pikepdf.new()
    layers = _layers(pdf, pages)
    resources = pdf.make_indirect(_resources(layers))
    for page in pages:
        pdf.pages.append(_page(pdf, page, resources))
    _describe(pdf, pages, title, list(layers.values()))
    out = BytesIO()
    pdf.save(out, min_version="1.7", deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.disable)
    return out.getvalue()


def _layers(pdf: pikepdf.Pdf, pages: Sequence[Page]) -> Mapping[Role, pikepdf.Object]:
    """One optional content group for each role that is drawn, in the order of the roles."""
    from pikepdf import Dictionary, Name, String

    drawn = {ink.role for page in pages for ink in page.inks}
    return {
        role: pdf.make_indirect(Dictionary(Type=Name.OCG, Name=String(role.value))) for role in Role if role in drawn
    }


def _resources(layers: Mapping[Role, pikepdf.Object]) -> pikepdf.Dictionary:
    from pikepdf import Dictionary, Name

    courier = Dictionary(Type=Name.Font, Subtype=Name.Type1, BaseFont=Name.Courier, Encoding=Name.WinAnsiEncoding)
    properties = {f"/{layer_name(role)}": layer for role, layer in layers.items()}
    return Dictionary(Font=Dictionary(F1=courier), Properties=Dictionary(properties))


def _page(pdf: pikepdf.Pdf, page: Page, resources: pikepdf.Object) -> pikepdf.Page:
    from pikepdf import Array, Dictionary, Name, Page

    sides = (Decimal(decimal(side * POINTS_PER_MM, 5)) for side in (page.width, page.height))
    body = Dictionary(
        Type=Name.Page,
        MediaBox=Array([0, 0, *sides]),
        Resources=resources,
        Contents=pdf.make_stream(content(page)),
    )
    return Page(pdf.make_indirect(body))


def _describe(pdf: pikepdf.Pdf, pages: Sequence[Page], title: str, layers: Sequence[pikepdf.Object]) -> None:
    """Title, layer list, page labels and the wish not to be scaled (ISO 32000-1, 12.2, 12.4.2 and 8.11.4)."""
    from pikepdf import Array, Dictionary, Name, String

    pdf.docinfo["/Title"] = String(title)
    if layers:
        pdf.Root.OCProperties = Dictionary(OCGs=Array(layers), D=Dictionary(ON=Array(layers), Order=Array(layers)))
    labels = [entry for number, page in enumerate(pages) for entry in (number, Dictionary(P=String(page.label)))]
    pdf.Root.PageLabels = Dictionary(Nums=Array(labels))
    pdf.Root.ViewerPreferences = Dictionary(PrintScaling=Name("/None"), DisplayDocTitle=True)
