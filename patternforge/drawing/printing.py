"""How a drawing is to be printed, and the area of a page that this leaves."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from patternforge.drawing.paper import Paper
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds

__all__ = ["Letters", "PrintSettings", "printable_area"]


class Letters(StrEnum):
    """How large words on paper are set: ``large`` for poor eyesight or a dim bench."""

    USUAL = "usual"
    LARGE = "large"

    @property
    def factor(self) -> float:
        """What heights of letters are multiplied by."""
        return 1.5 if self is Letters.LARGE else 1.0


@dataclass(frozen=True, slots=True)
class PrintSettings:
    """What the pages say and how they are laid out; lengths in mm.

    ``margin`` (0 to 50) is what the printer leaves white, ``gap`` (0 to 50) lies between pieces, and ``overlap``
    (5 to 50) is what two pages of a split piece share. ``x_correction`` and ``y_correction`` (0.9 to 1.1) multiply
    all that is printed, the check bars included: 100 / what a bar measures on paper. DraftError outside these ranges.

    >>> PrintSettings("Card sleeve", "A").overlap
    10.0
    """

    title: str
    revision: str = ""
    margin: float = 10.0
    gap: float = 5.0
    overlap: float = 10.0
    x_correction: float = 1.0
    y_correction: float = 1.0
    letters: Letters = Letters.USUAL

    def __post_init__(self) -> None:
        _require("printer margin", self.margin, 0.0, 50.0, " mm")
        _require("gap between pieces", self.gap, 0.0, 50.0, " mm")
        _require("overlap of split pieces", self.overlap, 5.0, 50.0, " mm")
        _require("x correction", self.x_correction, 0.9, 1.1, "")
        _require("y correction", self.y_correction, 0.9, 1.1, "")

    @property
    def heading(self) -> str:
        """Title and revision, as they stand on every page."""
        return f"{self.title}, revision {self.revision}" if self.revision else self.title


def printable_area(paper: Paper, settings: PrintSettings) -> Bounds:
    """What may be drawn on, in true mm from the lower left corner of the page: what its margins leave, uncorrected.

    >>> from patternforge.drawing.paper import A4
    >>> printable_area(A4, PrintSettings("Card sleeve"))
    Bounds(x0=10.0, y0=10.0, x1=200.0, y1=287.0)
    """
    fx, fy, margin = settings.x_correction, settings.y_correction, settings.margin
    return Bounds(margin / fx, margin / fy, (paper.width - margin) / fx, (paper.height - margin) / fy)


def _require(what: str, value: float, low: float, high: float, unit: str) -> None:
    if not low <= value <= high:
        raise DraftError(f"the {what} is {value:g}{unit}; lawful is {low:g} to {high:g}{unit}")
