"""The files of a machine table, laid out once for everything that is said of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from patternforge.drafting.cutter import CutSheet, cutter_dies, cutter_sheets
from patternforge.drafting.cutting import tally_rows
from patternforge.drafting.dies import Die
from patternforge.drafting.names import file_word
from patternforge.drafting.purpose import Files, Mirrors, StitchHoles
from patternforge.drafting.smallest import Small, Spot, smallest
from patternforge.drawing.model import Role
from patternforge.drawing.travel import tallies
from patternforge.errors import DraftError
from patternforge.export.registry import writer
from patternforge.fit.findings import reaches
from patternforge.machines.table import Machine
from patternforge.machines.writing import cutter, stray_of_chords, writing_options
from patternforge.pipeline.proof import Commission
from patternforge.pipeline.request import Wanted
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern

__all__ = ["CutFiles", "cut_files", "cut_for"]


@dataclass(frozen=True, slots=True)
class CutFiles:
    """A machine, every file it is to read, and the smallest of what it is to cut of the net pieces.

    ``dies`` are those that its files are of, in the same order; none where it is sent no dies.
    """

    machine: Machine
    sheets: tuple[CutSheet, ...]
    smallest: Small
    dies: tuple[Die, ...] = ()

    @property
    def cut_through(self) -> tuple[Role, ...]:
        """The roles whose lines the machine cuts through."""
        return _cut_through(self.machine)

    @property
    def stands_for(self) -> Wanted:
        """The files that these stand in the place of."""
        return cut_for(self.machine)

    def written(self, pattern: Pattern) -> Iterator[tuple[Commission, bytes]]:
        """Each file, in a folder that is named after the machine: what is asked for, and its bytes."""
        machine = self.machine
        options, stray = writing_options(machine), stray_of_chords(machine) or 0.0
        grown = machine.kerf + 2 * (machine.sanding + machine.tape)
        for each in self.sheets:
            asked = Commission(self.path(each), each.sheet, options, pattern, machine.holes, grown, stray)
            yield asked, writer(each.kind)(each.sheet, options)

    def looked_at(self, pattern: Pattern) -> Iterator[tuple[str, bytes]]:
        """A drawing of each file for the eye, in a folder of its own, so that none is cut by mistake."""
        from patternforge.drafting.look import look_sheet

        design, machine = pattern.design, self.machine
        revision = f", revision {design.revision}" if design.revision else ""
        for each in self.sheets:
            file = f"{each.name}.{each.kind}"
            drawn = look_sheet(each.sheet, file, [f"{design.title}{revision}", f"{machine.title}{_bed(machine)}"])
            yield f"{file_word(machine.name)}-to-look-at/{each.name}-not-to-cut.svg", writer("svg")(drawn)

    def path(self, each: CutSheet) -> str:
        """The path of a sheet's file in the design's folder."""
        return f"{file_word(self.machine.name)}/{each.name}.{each.kind}"

    def described(self, named: Callable[[str], str]) -> dict[str, Any]:
        """What ``pattern.json`` says of the machine and its sheets; ``named`` gives the path a file ends up with."""
        machine, limits = self.machine, self.machine.smallest
        return {
            "name": machine.name,
            "title": machine.title,
            "tool": machine.tool.value,
            "format": machine.format.value,
            "face": machine.face.value,
            "kerf": machine.kerf,
            "allowance": machine.sanding + machine.tape,
            "chords": stray_of_chords(machine),
            "holes": machine.holes.value,
            "smallest": {
                "hole": _found(self.smallest.hole, limits.hole),
                "gap": _found(self.smallest.gap, limits.gap),
                "radius": _found(self.smallest.radius, limits.radius),
            },
            "sheets": [_described(each, named(self.path(each))) for each in self.sheets],
        }


def _bed(machine: Machine) -> str:
    sides = [f"{mm(side, 0)} mm {word}" for side, word in zip(machine.bed, ("wide", "high"), strict=True) if side]
    return f", bed {' and '.join(sides)}" if sides else ""


def _found(spot: Spot | None, limit: float) -> dict[str, Any] | None:
    return {"size": spot.size, "piece": spot.piece, "limit": limit} if spot else None


def _described(each: CutSheet, path: str) -> dict[str, Any]:
    return {
        "file": path,
        "leather": each.group or None,
        "width": each.sheet.width,
        "height": each.sheet.height,
        "operations": tally_rows(tallies([each.sheet])),
        "travel": {"as_drawn": each.as_drawn, "in_order": each.travel},
    }


def cut_files(pattern: Pattern, machine: Machine, mirrors: Mirrors = Mirrors.SHARED) -> CutFiles:
    """What ``machine`` is to cut of ``pattern``; DraftError where it cannot, holes that are too small among it."""
    found = smallest(pattern, _cut_through(machine))
    _refuse_small_holes(found, machine)
    laid_out = cutter(machine, mirrors)
    return CutFiles(machine, cutter_sheets(pattern, laid_out), found, cutter_dies(pattern, laid_out))


def _cut_through(machine: Machine) -> tuple[Role, ...]:
    """The roles whose lines the machine cuts through."""
    left = {Role.MARK} if machine.holes is StitchHoles.CUT else {Role.MARK, Role.HOLE}
    return tuple(role for role in machine.written if role not in left)


def _refuse_small_holes(found: Small, machine: Machine) -> None:
    hole, least = found.hole, machine.smallest.hole
    if hole and not reaches(hole.size, least):
        others = " or have stitch holes marked or left out ('holes' in its table)"
        raise DraftError(
            f"piece '{hole.piece}': a hole of {mm(hole.size)} mm is smaller than {machine.title} can cut"
            f" ({mm(least)} mm); make it larger{others if machine.holes is StitchHoles.CUT else ''}"
        )


def cut_for(machine: Machine) -> Wanted:
    """The files that those of ``machine`` stand in the place of: sheets of those for a laser, pieces for a die."""
    return Wanted.LASER if machine.files is Files.SHEETS else Wanted.DIE
