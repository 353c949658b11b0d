"""The keys a machine table may hold, with one line on each: for the loader and for editors."""

from __future__ import annotations

from patternforge.design.form import Count, Form, Length, Text, optional, required
from patternforge.drafting.purpose import CutFace, Engraving, Files, FoldTicks, StitchHoles
from patternforge.drawing.course import Course, Travel
from patternforge.export.dxf import DxfVersion
from patternforge.machines.table import Format, Tool
from patternforge.machines.words import CutWord

__all__ = ["BedForm", "MachineForm", "OperationForm", "OperationsForm", "SmallestForm"]


class BedForm(Form):
    """What can be cut in one go."""

    width: Length = optional("from left to right; no limit if left out")
    height: Length = optional("away from you; no limit if left out")


class SmallestForm(Form):
    """The smallest the machine can cut; what is smaller is refused or told."""

    hole: Length = optional("stitch hole or opening, across", 0)
    gap: Length = optional("leather left between two cuts", 0)
    radius: Length = optional("radius of an arc", 0)


class OperationForm(Form):
    """How the lines of one role stand in the file."""

    layer: Text = optional("name of its layer: letters, digits, - and _; not in hpgl")
    colour: Text = optional("dxf: number from 1 to 255; svg: six digits of red, green and blue, such as 00666e")
    weight: Length = optional("width of its lines; svg, and dxf from R2000 on")
    pen: Count = optional("number of the pen or tool, 1 to 8; hpgl alone")
    write: bool = optional("false leaves its lines out of the file", True)


class OperationsForm(Form):
    """What is said of each role."""

    mark: OperationForm = optional("pricked or scored: awl points, fold ticks, initials")
    stitch_hole: OperationForm = optional("stitch holes and slits", alias="stitch hole")
    opening: OperationForm = optional("windows, slots, holes for hardware")
    outline: OperationForm = optional("the edge of a piece")


class MachineForm(Form):
    """A machine or shop and the files it is sent."""

    machine: Text = required("what the machine is called")
    tool: Tool = required("what cuts: laser, knife, die or hand")
    format: Format = required("kind of file: dxf, svg or hpgl")
    release: DxfVersion = optional("release of a dxf file; R12 says no units", "R2010")
    files: Files = optional("pieces together on sheets, or a file for each", "sheets")
    bed: BedForm = optional("what can be cut in one go")
    gap: Length = optional("room between pieces", 10)
    face: CutFace = optional("front: showing face up; back: its back up and all mirrored", "front")
    kerf: Length = optional("width the cut takes away, made up for", 0)
    sanding: Length = optional("left on all round each outline, to be sanded off", 0)
    tape: Length = optional("left on all round each outline, to come off with masking tape", 0)
    chords: Length = optional("arcs as chords that stray so far at most; left out: true arcs, or 0.005 mm in hpgl")
    holes: StitchHoles = optional("stitch holes: cut, marked with a prick, or left out", "cut")
    fold_ticks: FoldTicks = optional("short scored lines where folds begin and end", "none")
    engrave: Engraving = optional("letters of the design as marks: none, or initials", "none")
    smallest: SmallestForm = optional("the smallest it can cut")
    order: list[CutWord] = optional("roles in the order of cutting, the outline last", min_length=4, max_length=4)
    sequence: Course = optional("piece after piece, or operation after operation on all of them", "piece by piece")
    travel: Travel = optional("shortest: lines and pieces in an order that leaves little way between", "shortest")
    operations: OperationsForm = optional("layers, colours, line weights or pens by role")
    notes: Text = optional("free text", "")
    cautions: list[Text] = optional("said before you cut, each a line", [])
