"""A machine table turned into what the drafting and the writers ask for."""

from __future__ import annotations

from patternforge.drafting.cutter import Cutter
from patternforge.drafting.purpose import Files, LaserOptions, Mirrors
from patternforge.export.dxf import COLOURS, DxfOptions
from patternforge.export.hpgl import CHORDS, HpglOptions
from patternforge.export.hpgl import PENS as PLOT_PENS
from patternforge.export.svg import PENS, Pen, SvgOptions
from patternforge.machines.table import Format, Machine, Operation, Tool

__all__ = ["cutter", "makes_dies", "stray_of_chords", "writing_options"]

_HUNDREDTHS = 100  # of a mm, in which a DXF file gives line weights


def cutter(machine: Machine, mirrors: Mirrors = Mirrors.SHARED) -> Cutter:
    """How the files of ``machine`` are laid out; where it makes dies, ``mirrors`` of one shape as they say."""
    width, height = machine.bed
    laser = LaserOptions(
        machine.kerf,
        machine.face,
        machine.fold_ticks,
        machine.gap,
        width,
        machine.engrave,
        height,
        machine.sanding + machine.tape,
        machine.holes,
    )
    return Cutter(
        machine.name,
        machine.format.value,
        laser,
        machine.files,
        machine.written,
        machine.sequence,
        machine.chords,
        machine.travel,
        mirrors if makes_dies(machine) else None,
    )


def makes_dies(machine: Machine) -> bool:
    """Whether each of its files is a die."""
    return machine.tool is Tool.DIE and machine.files is Files.PIECES


def writing_options(machine: Machine) -> DxfOptions | SvgOptions | HpglOptions:
    """What the writer of its format is told."""
    match machine.format:
        case Format.DXF:
            return _dxf(machine)
        case Format.SVG:
            return _svg(machine)
        case Format.HPGL:
            return _hpgl(machine)


def stray_of_chords(machine: Machine) -> float | None:
    """How far chords stray from their arcs in its files, mm; None where arcs are true."""
    return machine.chords or (CHORDS if machine.format is Format.HPGL else None)


def _dxf(machine: Machine) -> DxfOptions:
    said = machine.operations
    return DxfOptions(
        machine.release,
        machine.written,
        {**COLOURS, **{each.role: each.colour for each in said if isinstance(each.colour, int)}},
        {each.role: each.layer for each in said if each.layer},
        {each.role: round(each.weight * _HUNDREDTHS) for each in said if each.weight is not None},
    )


def _svg(machine: Machine) -> SvgOptions:
    said = machine.operations
    pens = {each.role: _pen(each) for each in said}
    return SvgOptions(machine.written, {**PENS, **pens}, {each.role: each.layer for each in said if each.layer})


def _pen(each: Operation) -> Pen:
    usual = PENS[each.role]
    colour = each.colour if isinstance(each.colour, str) else usual.colour
    return Pen(colour, usual.dashes, usual.width if each.weight is None else each.weight)


def _hpgl(machine: Machine) -> HpglOptions:
    pens = {each.role: each.pen for each in machine.operations if each.pen is not None}
    return HpglOptions(machine.written, {**PLOT_PENS, **pens}, stray_of_chords(machine) or CHORDS)
