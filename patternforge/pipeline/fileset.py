"""Every file that a request asks for, as bytes by path: what a drafted wallet becomes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from patternforge.drafting.names import file_word
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import Purpose
from patternforge.drafting.sheets import Deliverable, die_sheets, laser_sheets
from patternforge.drawing.arrange import arranged
from patternforge.drawing.extent import extent
from patternforge.drawing.model import Figure, Sheet
from patternforge.export.registry import writer
from patternforge.pipeline.request import DraftRequest, Wanted
from patternforge.pipeline.stages import Judged
from patternforge.wallet.pattern import Pattern

__all__ = ["fileset", "set_name"]

_GAP = 15.0  # between pieces on the overview, mm

_Files = Iterator[tuple[str, bytes]]


def set_name(pattern: Pattern) -> str:
    """The name of a design's folder, and what its file names begin with."""
    return file_word(pattern.design.name)


def fileset(wallet: Judged, request: DraftRequest) -> dict[str, bytes]:
    """The bytes of every file by its path in the design's folder; ``pattern.json`` is always among them.

    DraftError when a piece is too wide for the bed or the paper, or the kerf leaves nothing of a hole.
    """
    files = dict(_description(wallet))
    if request.wants(Wanted.LASER):
        files.update(_sheets("laser", laser_sheets(wallet.pattern, request.drafting), request))
    if request.wants(Wanted.DIE):
        files.update(_sheets("die", die_sheets(wallet.pattern, request.drafting), request))
    if request.wants(Wanted.PAPER):
        files.update(_paper(wallet.pattern, request))
    return files


def _description(wallet: Judged) -> _Files:
    from patternforge.drafting.description import description
    from patternforge.export.json import json_bytes

    yield "pattern.json", json_bytes(description(wallet.pattern, wallet.findings))


def _sheets(folder: str, sheets: Iterable[Deliverable], request: DraftRequest) -> _Files:
    for each in sheets:
        yield f"{folder}/{each.name}.{each.kind}", _written(each, request)


def _written(each: Deliverable, request: DraftRequest) -> bytes:
    if each.kind != "dxf":
        return writer(each.kind)(each.sheet)
    from patternforge.export.dxf import DxfOptions

    return writer("dxf")(each.sheet, DxfOptions(version=request.dxf))


def _paper(pattern: Pattern, request: DraftRequest) -> _Files:
    """The printed pages as one PDF and as an SVG each, and all pieces on one SVG."""
    from patternforge.drawing.tile import pages
    from patternforge.export.pdf import pdf_bytes

    # Drawn once: setting the labels is most of the work.
    drawn = figures(pattern, Purpose.PAPER)
    settings = replace(request.printing, title=pattern.design.title, revision=pattern.design.revision)
    printed = pages(drawn, request.paper, settings)
    stem = f"paper/{set_name(pattern)}-{request.paper.name.lower()}"
    yield f"{stem}.pdf", pdf_bytes(printed, settings.heading)
    for number, page in enumerate(printed, start=1):
        yield f"{stem}-page-{number:02d}.svg", writer("svg")(page)
    yield f"svg/{set_name(pattern)}.svg", writer("svg")(_overview(drawn, settings.heading))


def _overview(drawn: Sequence[Figure], heading: str) -> Sheet:
    """All pieces with their labels, net, on one sheet that takes the two widest side by side."""
    widest = max(extent(figure.inks).width for figure in drawn)
    return arranged(drawn, _GAP, 2 * widest + 3 * _GAP, heading)
