"""Command words put together to what the pipeline is asked for."""

from __future__ import annotations

from patternforge.cli.choices import DxfRelease, Face, Fold, Punching
from patternforge.drafting.purpose import CutFace, DieHoles, DieOptions, DraftingOptions, FoldTicks, LaserOptions
from patternforge.drawing.printing import PrintSettings
from patternforge.export.dxf import DxfVersion
from patternforge.pipeline.request import OnNo

__all__ = ["cutting", "on_no", "printing", "release"]


def cutting(
    kerf: float, face: Face, ticks: Fold, gap: float, bed: float | None, punching: Punching
) -> DraftingOptions:
    """How laser and die files are made; DraftError for a size out of its range."""
    laser = LaserOptions(kerf, CutFace(face), FoldTicks(ticks), gap, bed)
    holes = {Punching.NONE: DieHoles.LEFT_OUT, Punching.PUNCHED: DieHoles.PUNCHED}
    return DraftingOptions(laser, DieOptions(holes[punching]))


def release(dxf: DxfRelease) -> DxfVersion:
    """The release of the DXF files."""
    return DxfVersion(dxf.upper())


def printing(white: float, x_correction: float, y_correction: float) -> PrintSettings:
    """How pages are printed; the design gives the title. DraftError for a size out of its range."""
    return PrintSettings("", margin=white, x_correction=x_correction, y_correction=y_correction)


def on_no(despite_findings: bool) -> OnNo:
    """What becomes of the files of a wallet that does not fit."""
    return OnNo.WRITE if despite_findings else OnNo.STOP
