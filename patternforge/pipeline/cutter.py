"""The files of a machine table, laid out once for everything that is said of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.drafting.cutter import cutter_sheets
from patternforge.drafting.names import file_word
from patternforge.drafting.purpose import Files
from patternforge.drafting.sheets import Deliverable
from patternforge.export.registry import writer
from patternforge.machines.table import Machine
from patternforge.machines.writing import cutter, writing_options
from patternforge.pipeline.request import Wanted
from patternforge.wallet.pattern import Pattern

__all__ = ["CutFiles", "cut_files", "cut_for"]


@dataclass(frozen=True, slots=True)
class CutFiles:
    """A machine and every file it is to read."""

    machine: Machine
    sheets: tuple[Deliverable, ...]

    @property
    def stands_for(self) -> Wanted:
        """The files that these stand in the place of."""
        return cut_for(self.machine)

    def written(self) -> Iterator[tuple[str, bytes]]:
        """The bytes of each file by its path, in a folder that is named after the machine."""
        options = writing_options(self.machine)
        for each in self.sheets:
            yield f"{file_word(self.machine.name)}/{each.name}.{each.kind}", writer(each.kind)(each.sheet, options)


def cut_files(pattern: Pattern, machine: Machine) -> CutFiles:
    """What ``machine`` is to cut of ``pattern``; DraftError where it cannot."""
    return CutFiles(machine, cutter_sheets(pattern, cutter(machine)))


def cut_for(machine: Machine) -> Wanted:
    """The files that those of ``machine`` stand in the place of: sheets of those for a laser, pieces for a die."""
    return Wanted.LASER if machine.files is Files.SHEETS else Wanted.DIE
