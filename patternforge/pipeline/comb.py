"""The use case ``comb``: a kerf comb drawn for a machine, with the page it is read by, and written."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from patternforge.delivery import Delivery, delivered
from patternforge.drafting.comb import KerfComb, comb_figures, printed_figures, reading_figure
from patternforge.drawing.arrange import arranged
from patternforge.drawing.model import Sheet
from patternforge.drawing.paper import A4, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.export.registry import writer

if TYPE_CHECKING:
    from patternforge.machines.table import Machine

__all__ = ["CombRequest", "comb_delivered", "comb_files"]

_NAME = "kerf-comb"
_GAP = 10.0  # between comb and tongue and round them, mm
_KINDS = ("dxf", "svg")  # for a laser, where no machine is named


@dataclass(frozen=True, slots=True)
class CombRequest:
    """Which comb is wanted, for which machine, on which paper, and the folder its own folder is made in."""

    comb: KerfComb = field(default_factory=KerfComb)
    machine: Machine | None = None
    paper: Paper = A4
    printing: PrintSettings = field(default_factory=lambda: PrintSettings("Kerf comb"))
    out: Path = Path("out")


def comb_files(request: CombRequest) -> dict[str, bytes]:
    """The comb for the machine, or as DXF and SVG, and the page it is read by as PDF and SVG, by file name.

    It is cut as it is drawn, whatever kerf the machine's table says. DraftError when the bed is too small for it.
    """
    return {**dict(_cut(request)), **dict(_printed(request))}


def comb_delivered(request: CombRequest) -> Delivery:
    """Writes the files of the comb, all of them or none; DeliveryError when the disk refuses."""
    return delivered(request.out / _NAME, comb_files(request))


def _cut(request: CombRequest) -> Iterator[tuple[str, bytes]]:
    if request.machine is None:
        sheet = arranged(comb_figures(request.comb), _GAP, name=_NAME)
        for kind in _KINDS:
            yield f"{_NAME}.{kind}", writer(kind)(sheet)
        return
    from patternforge.machines.writing import writing_options

    machine = request.machine
    yield (
        f"{_NAME}-{machine.name}.{machine.format}",
        writer(machine.format.value)(_on_bed(request.comb, machine), writing_options(machine)),
    )


def _on_bed(comb: KerfComb, machine: Machine) -> Sheet:
    """Comb and tongue on one bed, in the roles and the order that the machine's table has."""
    from patternforge.drawing.arrange import on_beds
    from patternforge.drawing.course import in_roles

    width, height = machine.bed
    figures = comb_figures(comb)
    if height is None:
        sheet = arranged(figures, machine.gap, width, _NAME)
    else:
        sheet, *_ = on_beds(figures, machine.gap, width, height, _NAME)
    return in_roles(sheet, machine.written, machine.sequence)


def _printed(request: CombRequest) -> Iterator[tuple[str, bytes]]:
    from patternforge.drawing.tile import pages
    from patternforge.export.pdf import pdf_bytes

    shown = (*printed_figures(request.comb), reading_figure(request.comb))
    printed = pages(shown, request.paper, request.printing)
    stem = f"{_NAME}-{request.paper.name.lower()}"
    yield f"{stem}.pdf", pdf_bytes(printed, request.printing.heading)
    for number, page in enumerate(printed, start=1):
        yield f"{stem}-page-{number:02d}.svg", writer("svg")(page)
