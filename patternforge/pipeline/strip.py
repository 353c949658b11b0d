"""The use case ``strip``: a test strip drawn for every way of cutting, and written."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from patternforge.delivery import Delivery, delivered
from patternforge.drafting.purpose import Purpose
from patternforge.drafting.strip import TestStrip, strip_figure
from patternforge.drawing.arrange import arranged
from patternforge.drawing.paper import A4, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.export.registry import writer

__all__ = ["StripRequest", "strip_delivered", "strip_files"]

_NAME = "test-strip"
_GAP = 10.0  # round the strip on its sheet, mm


@dataclass(frozen=True, slots=True)
class StripRequest:
    """Which strip is wanted, on which paper, and the folder its own folder is made in."""

    strip: TestStrip = field(default_factory=TestStrip)
    paper: Paper = A4
    printing: PrintSettings = field(default_factory=lambda: PrintSettings("Test strip"))
    out: Path = Path("out")


def strip_files(request: StripRequest) -> dict[str, bytes]:
    """The strip for a laser (DXF and SVG), for a die maker (DXF) and on paper (PDF), by file name."""
    from patternforge.drawing.tile import pages
    from patternforge.export.pdf import pdf_bytes

    laser = arranged([strip_figure(request.strip, Purpose.LASER)], _GAP, name=f"{_NAME}-laser")
    die = arranged([strip_figure(request.strip, Purpose.DIE)], _GAP, name=f"{_NAME}-die")
    printed = pages([strip_figure(request.strip, Purpose.PAPER)], request.paper, request.printing)
    return {
        f"{_NAME}-laser.dxf": writer("dxf")(laser),
        f"{_NAME}-laser.svg": writer("svg")(laser),
        f"{_NAME}-die.dxf": writer("dxf")(die),
        f"{_NAME}-{request.paper.name.lower()}.pdf": pdf_bytes(printed, request.printing.heading),
    }


def strip_delivered(request: StripRequest) -> Delivery:
    """Writes the files of the strip, all of them or none; DeliveryError when the disk refuses."""
    return delivered(request.out / _NAME, strip_files(request))
