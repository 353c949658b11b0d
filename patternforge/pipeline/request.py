"""What may be asked of the program when a design is to be drafted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from types import MappingProxyType

from patternforge.drafting.purpose import DraftingOptions
from patternforge.drawing.paper import A4, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.export.dxf import DxfVersion

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
    are those of the design.
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

    def wants(self, kind: Wanted) -> bool:
        """Whether the files of ``kind`` are to be made."""
        return self.wanted in (kind, Wanted.ALL)
