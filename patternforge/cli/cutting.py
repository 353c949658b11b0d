"""What is said of the files of a machine: how much it cuts, how far it goes in between, how small the smallest is."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.cli.table import columns
from patternforge.drafting.purpose import CutFace
from patternforge.drafting.smallest import Spot
from patternforge.drawing.model import Role
from patternforge.drawing.travel import tallies
from patternforge.export.dxf import DxfOptions
from patternforge.export.hpgl import HpglOptions
from patternforge.fit.findings import reaches
from patternforge.machines.table import Format, Machine
from patternforge.machines.writing import makes_dies, stray_of_chords, writing_options
from patternforge.pipeline.cutter import CutFiles
from patternforge.units import MM_PER_M, mm

__all__ = ["cutting_report"]


def cutting_report(cut: CutFiles) -> list[str]:
    """Operations with count and length, each piece once; the way between the lines; the smallest and its limits."""
    own = [sheet for sheet in cut.sheets if sheet.group]
    rows = [
        (each.role.value, _mark(cut.machine, each.role), str(each.count), f"{mm(each.length / MM_PER_M)} m")
        for each in tallies(sheet.sheet for sheet in own)
    ]
    table = columns([("operation", _marked_by(cut.machine), "lines", "length"), *rows], right=(2, 3))
    way = _way(sum(sheet.as_drawn for sheet in own), sum(sheet.travel for sheet in own))
    return [f"Cut by {_words(cut.machine)}", *(f"  {line}" for line in (*table, way, *_smallest(cut)))]


def _words(machine: Machine) -> str:
    """The machine and what its files have that others have not."""
    chords = stray_of_chords(machine)
    said = (
        f"{machine.format} {machine.release}" if machine.format is Format.DXF else str(machine.format),
        f"kerf {mm(machine.kerf)} mm" if machine.kerf else "",
        f"{mm(machine.sanding + machine.tape)} mm left on" if machine.sanding + machine.tape else "",
        f"arcs as chords within {mm(chords, 3)} mm" if chords else "",
        "back up" if machine.face is CutFace.BACK else "",
    )
    return ", ".join((machine.title, *(each for each in said if each)))


def _marked_by(machine: Machine) -> str:
    return "pen" if machine.format is Format.HPGL else "layer"


def _mark(machine: Machine, role: Role) -> str:
    """The layer, class or pen that a role has in the files."""
    options = writing_options(machine)
    if isinstance(options, DxfOptions):
        return options.layer(role)
    if isinstance(options, HpglOptions):
        return str(options.pens[role])
    return options.classes.get(role, role.value.replace(" ", "-"))


def _way(drawn: float, found: float) -> str:
    """The way between the lines, and what their order saves of it."""
    way = f"way between them {mm(found / MM_PER_M)} m"
    if reaches(found, drawn):
        return f"{way}, as they were drawn"
    return f"{way}, as drawn it was {mm(drawn / MM_PER_M)} m: {100 * (drawn - found) / drawn:.0f} % saved"


def _smallest(cut: CutFiles) -> Iterator[str]:
    """A line for each of the smallest; one that is below the machine's limit says so."""
    limits = cut.machine.smallest
    for what, spot, limit in (
        ("hole", cut.smallest.hole, limits.hole),
        ("gap", cut.smallest.gap, limits.gap),
        ("radius", cut.smallest.radius, limits.radius),
    ):
        if spot is not None:
            yield f"smallest {what} {mm(spot.size)} mm ({spot.piece}){_against(spot, limit, cut.machine)}"
    if cut.machine.kerf:
        yield f"these are sizes as cut: the lines in the files lie {mm(cut.machine.kerf / 2, 3)} mm off for the kerf"


def _against(spot: Spot, limit: float, machine: Machine) -> str:
    if not limit:
        return ""
    if reaches(spot.size, limit):
        return f", the machine can cut {mm(limit)} mm"
    word = "no" if makes_dies(machine) else "look"
    return f": {word}, the machine can cut no smaller than {mm(limit)} mm"
