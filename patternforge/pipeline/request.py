"""What may be asked of the program when a design is to be drafted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from patternforge.drafting.purpose import DraftingOptions
from patternforge.drawing.paper import A4, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.export.dxf import DxfVersion

if TYPE_CHECKING:
    from patternforge.machines.table import Machine

__all__ = ["DraftRequest", "OnNo", "Wanted"]


class Wanted(StrEnum):
    """Which files are made: those for one way of cutting, or all of them."""

    LASER = "laser"
    DIE = "die"
    PAPER = "paper"
    ALL = "all"


class OnNo(StrEnum):
    """What becomes of the files when a finding reads ``no``."""

    STOP = "stop"
    WRITE = "write"


@dataclass(frozen=True, slots=True)
class DraftRequest:
    """A design file, values and letters (``texts``) set beside it, and how its files are to be made and where.

    The files go to a folder in ``out`` that is named after the design file. Of ``printing`` the title and revision
    are those of the design. The files of ``machine`` stand in the place of those for a laser or for a die.
    ``keep`` is the ``pattern.json`` of pieces that are kept as they are, whatever the leathers.
    """

    design: Path
    settings: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    wanted: Wanted = Wanted.ALL
    out: Path = Path("out")
    drafting: DraftingOptions = field(default_factory=DraftingOptions)
    dxf: DxfVersion = DxfVersion.R2010
    paper: Paper = A4
    printing: PrintSettings = field(default_factory=lambda: PrintSettings(""))
    on_no: OnNo = OnNo.STOP
    texts: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    machine: Machine | None = None
    keep: Path | None = None

    def wants(self, kind: Wanted) -> bool:
        """Whether the files of ``kind`` are to be made."""
        return self.wanted in (kind, Wanted.ALL)
