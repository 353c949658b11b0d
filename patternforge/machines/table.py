"""One machine or shop as a plain value: the file it reads, its bed, its operations, and what it cannot cut."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from patternforge.drafting.purpose import CutFace, Engraving, Files, FoldTicks, StitchHoles
from patternforge.drawing.course import Course, Travel
from patternforge.drawing.model import Role
from patternforge.export.dxf import CUT_ROLES, DxfVersion

__all__ = ["Format", "Machine", "Operation", "Smallest", "Tool"]


class Tool(StrEnum):
    """What cuts."""

    LASER = "laser"
    KNIFE = "knife"
    DIE = "die"
    HAND = "hand"


class Format(StrEnum):
    """The kind of file, which is also its ending."""

    DXF = "dxf"
    SVG = "svg"
    HPGL = "hpgl"


@dataclass(frozen=True, slots=True)
class Operation:
    """How the lines of one role stand in the file; what the format does not know, or the table does not say, is None.

    ``colour`` is a number from 1 to 255 in a DXF file and ``#rrggbb`` in an SVG file; ``weight`` in mm; ``pen`` from
    1 to 8 in a plot. Lines of a role that is not ``written`` are left out.
    """

    role: Role
    layer: str | None = None
    colour: int | str | None = None
    weight: float | None = None
    pen: int | None = None
    written: bool = True


@dataclass(frozen=True, slots=True)
class Smallest:
    """The smallest hole across, gap between two cuts and radius the machine can cut, mm; 0 where nothing is known."""

    hole: float = 0.0
    gap: float = 0.0
    radius: float = 0.0


@dataclass(frozen=True, slots=True)
class Machine:
    """A machine table; lengths in mm.

    ``name`` is that of its file and goes into file names. ``bed`` is width and height of what it can cut in one go,
    each None where nothing limits it. ``chords`` is how far chords may stray from the arcs they stand for; None keeps
    true arcs. ``sanding`` and ``tape`` are left on all round every outline, to come off at the bench.
    """

    name: str
    title: str
    tool: Tool
    format: Format
    release: DxfVersion = DxfVersion.R2010
    bed: tuple[float | None, float | None] = (None, None)
    gap: float = 10.0
    files: Files = Files.SHEETS
    face: CutFace = CutFace.FRONT
    kerf: float = 0.0
    sanding: float = 0.0
    tape: float = 0.0
    chords: float | None = None
    holes: StitchHoles = StitchHoles.CUT
    fold_ticks: FoldTicks = FoldTicks.NONE
    engrave: Engraving = Engraving.NONE
    smallest: Smallest = field(default_factory=Smallest)
    order: tuple[Role, ...] = CUT_ROLES
    sequence: Course = Course.PIECES
    travel: Travel = Travel.SHORTEST
    operations: tuple[Operation, ...] = ()
    notes: str = ""
    cautions: tuple[str, ...] = ()

    def operation(self, role: Role) -> Operation:
        """What is said of the lines of ``role``, or nothing in particular.

        >>> Machine("a", "A", Tool.LASER, Format.DXF).operation(Role.HOLE).written
        True
        """
        return next((each for each in self.operations if each.role is role), Operation(role))

    @property
    def written(self) -> tuple[Role, ...]:
        """The roles that go into the file, in the order they are cut in."""
        return tuple(role for role in self.order if self.operation(role).written)
