"""What a drawing is made for, and what may be chosen for each purpose."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from math import inf

from patternforge.drawing.printing import Letters
from patternforge.errors import DraftError

__all__ = [
    "ROOM_BESIDE_CUT",
    "WIDEST_ALLOWANCE",
    "WIDEST_KERF",
    "AwlPoints",
    "CutFace",
    "DieHoles",
    "DieOptions",
    "DraftingOptions",
    "Engraving",
    "Files",
    "FoldTicks",
    "LaserOptions",
    "Mirrors",
    "PaperOptions",
    "Purpose",
    "StitchHoles",
]

ROOM_BESIDE_CUT = 2.0  # mm of leather left standing between two cuts; common practice, no source
WIDEST_KERF = 2.0  # mm
WIDEST_ALLOWANCE = 10.0  # mm


class Purpose(StrEnum):
    """``laser``: what is cut, nothing else; ``die``: the net edge of each piece; ``paper``: all there is to say."""

    LASER = "laser"
    DIE = "die"
    PAPER = "paper"


class CutFace(StrEnum):
    """Which face of the leather lies up while it is cut: the showing face (front), or the other, mirrored (back)."""

    FRONT = "front"
    BACK = "back"


class DieHoles(StrEnum):
    """Whether a cutting die punches the stitch holes too."""

    LEFT_OUT = "left out"
    PUNCHED = "punched"


class Mirrors(StrEnum):
    """Whether pieces that are mirror images share a die, the leather turned over for some, or have a die each."""

    SHARED = "shared"
    OWN = "own"


class StitchHoles(StrEnum):
    """Whether stitch holes are cut, only marked for the awl, or left to the irons."""

    CUT = "cut"
    MARKED = "marked"
    LEFT_OUT = "left out"


class Files(StrEnum):
    """Whether pieces lie together on sheets, or each has a file of its own."""

    SHEETS = "sheets"
    PIECES = "pieces"


class FoldTicks(StrEnum):
    """Whether short lines at the edge mark where a fold begins and ends."""

    NONE = "none"
    SCORED = "scored"


class Engraving(StrEnum):
    """Whether the letters of a design are engraved: their strokes, or the lines that guide stamps."""

    NONE = "none"
    INITIALS = "initials"


class AwlPoints(StrEnum):
    """Whether paper shows a small cross in the middle of every stitch hole, for an awl to be set on."""

    NONE = "none"
    CROSSES = "crosses"


@dataclass(frozen=True, slots=True)
class LaserOptions:
    """How files for a laser or a knife plotter are made; lengths in mm.

    ``kerf`` (0 to 2) is the width the beam burns away. ``gap`` (kerf + 2 or more) lies between pieces. ``bed`` is
    the width of the machine's bed; without it a sheet is about as wide as high. ``bed_height`` is how high a sheet
    may be; what does not fit goes on another. ``allowance`` (0 to 10) is left on all round every outline, to come off
    at the bench. Letters can be engraved only with the showing face up. DraftError outside these ranges.

    >>> LaserOptions(kerf=0.2).gap
    10.0
    """

    kerf: float = 0.0
    cut_face: CutFace = CutFace.FRONT
    fold_ticks: FoldTicks = FoldTicks.NONE
    gap: float = 10.0
    bed: float | None = None
    engraving: Engraving = Engraving.NONE
    bed_height: float | None = None
    allowance: float = 0.0
    holes: StitchHoles = StitchHoles.CUT

    def __post_init__(self) -> None:
        if not 0 <= self.kerf <= WIDEST_KERF:
            raise DraftError(f"the kerf is {self.kerf:g} mm; lawful is 0 to {WIDEST_KERF:g} mm")
        if not 0 <= self.allowance <= WIDEST_ALLOWANCE:
            most = f"lawful is 0 to {WIDEST_ALLOWANCE:g} mm"
            raise DraftError(f"the allowance round an outline is {self.allowance:g} mm; {most}")
        if not self.kerf + ROOM_BESIDE_CUT <= self.gap < inf:
            least = self.kerf + ROOM_BESIDE_CUT
            raise DraftError(
                f"the gap between pieces is {self.gap:g} mm; lawful is {least:g} mm (kerf + 2 mm) or more"
            )
        if self.bed is not None and not 0 < self.bed < inf:
            raise DraftError(f"the bed is {self.bed:g} mm wide; lawful is a width above 0 mm")
        if self.bed_height is not None and not 0 < self.bed_height < inf:
            raise DraftError(f"the bed is {self.bed_height:g} mm high; lawful is a height above 0 mm")
        if self.engraving is not Engraving.NONE and self.cut_face is CutFace.BACK:
            raise DraftError("letters are engraved on the showing face, which lies down when the back is up")


@dataclass(frozen=True, slots=True)
class DieOptions:
    """What a die maker is given; a die has no kerf."""

    holes: DieHoles = DieHoles.LEFT_OUT
    mirrors: Mirrors = Mirrors.SHARED


@dataclass(frozen=True, slots=True)
class PaperOptions:
    """How pieces are labelled on paper, and whether the places of an awl are."""

    letters: Letters = Letters.USUAL
    awl: AwlPoints = AwlPoints.NONE


@dataclass(frozen=True, slots=True)
class DraftingOptions:
    """All choices, each under the purpose it belongs to."""

    laser: LaserOptions = field(default_factory=LaserOptions)
    die: DieOptions = field(default_factory=DieOptions)
    paper: PaperOptions = field(default_factory=PaperOptions)
