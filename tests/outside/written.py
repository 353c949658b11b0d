"""The files of a design as they are written, as bytes, for programs and readers that know nothing of how."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from patternforge.design.load import load_design
from patternforge.drafting.description import description
from patternforge.drafting.sheets import laser_sheets
from patternforge.export.dxf import DxfOptions, DxfVersion, dxf_bytes
from patternforge.export.json import json_bytes
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design

__all__ = ["DESIGNS", "SEWN", "Written", "compensated", "ready_design", "written"]

DESIGNS = tuple(sorted((Path(__file__).parents[2] / "designs").glob("*.yaml")))


# What is sewn of panels and parts; the others are folded from one piece.
SEWN = tuple(path for path in DESIGNS if "\nfolded:" not in path.read_text(encoding="utf-8"))


@dataclass(frozen=True, slots=True)
class Written:
    """``pattern.json`` as read by a JSON reader, and the DXF file that holds every piece, as text."""

    json: dict[str, Any]
    dxf: str


def ready_design(path: Path) -> Design:
    """A design of the project."""
    return load_design(path.read_text(encoding="utf-8"), path.name)


def compensated(design: Design, factor: float) -> Design:
    """The design with this compensation in every fold."""
    folds = tuple(replace(fold, compensation=factor) for fold in design.body.folds)
    return replace(design, body=replace(design.body, folds=folds))


def written(design: Design) -> Written:
    """Both files of a design."""
    pattern = drafted(design)
    return Written(pattern_json(pattern), everything_dxf(pattern, DxfVersion.R2010))


def pattern_json(pattern: Pattern) -> dict[str, Any]:
    """``pattern.json`` as read back."""
    read: dict[str, Any] = json.loads(json_bytes(description(pattern)))
    return read


def everything_dxf(pattern: Pattern, version: DxfVersion) -> str:
    """The cutting file with every piece."""
    sheet = next(each.sheet for each in laser_sheets(pattern) if each.name.endswith("-everything"))
    return dxf_bytes(sheet, DxfOptions(version)).decode("utf-8")
