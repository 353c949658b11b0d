"""The whole way from the text of a machine table to its value, or to every fault of the file at once."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import PurePath

from patternforge.design.entries import Entries, entries
from patternforge.design.located import FaultList
from patternforge.design.scope import Scope
from patternforge.design.source import Subject, located
from patternforge.design.values import NOT_NEGATIVE, POSITIVE, Bounds, text_of
from patternforge.drafting.purpose import (
    ROOM_BESIDE_CUT,
    WIDEST_KERF,
    CutFace,
    Engraving,
    Files,
    FoldTicks,
    StitchHoles,
)
from patternforge.drawing.course import Course, Travel
from patternforge.drawing.model import Role
from patternforge.export.dxf import CUT_ROLES, DxfVersion
from patternforge.machines.forms import BedForm, MachineForm, OperationsForm, SmallestForm
from patternforge.machines.operations import operations
from patternforge.machines.table import Format, Machine, Smallest, Tool
from patternforge.machines.words import CutWord

__all__ = ["MACHINE", "load_machine"]

MACHINE = Subject("machine", "machine: what it is called", "write the value out in each place")

_ALLOWANCE = Bounds(0.0, 5.0)
_LIMIT = Bounds(0.0, 20.0)
_CHORDS = Bounds(0.0005, 0.5)


def load_machine(text: str, file: str) -> Machine:
    """The machine that ``text`` describes, lengths in mm; ``file`` is the name used in messages, its stem the name.

    DesignError with every fault of the text, each with its line and column.

    >>> load_machine("{machine: Small laser, tool: laser, format: dxf, kerf: 0.2 mm}", "small.yaml").kerf
    0.2
    >>> load_machine("{machine: A, tool: lazer, format: dxf}", "a.yaml")
    Traceback (most recent call last):
    patternforge.errors.DesignError: a.yaml:1:20: 'tool' of the machine cannot be 'lazer'; did you mean 'laser'?
    """
    faults = FaultList()
    root = located(text, file, faults, subject=MACHINE)
    table = entries(root, MachineForm, "the machine", Scope(faults))
    machine = _machine(table, PurePath(file).stem)
    faults.raise_if_any()
    return machine


@dataclass(frozen=True, slots=True)
class _Kind:
    """What decides which other keys a table may hold."""

    tool: Tool
    format: Format
    release: DxfVersion


def _machine(table: Entries, name: str) -> Machine:
    kind = _kind(table)
    kerf = _kerf(table, kind)
    face = table.choice("face", CutFace, CutFace.FRONT)
    machine = Machine(
        name=name,
        title=table.text("machine"),
        tool=kind.tool,
        format=kind.format,
        release=kind.release,
        bed=_bed(table.table("bed", BedForm)),
        gap=_gap(table, kerf),
        files=table.choice("files", Files, Files.SHEETS),
        face=face,
        kerf=kerf,
        sanding=table.length("sanding", 0.0, _ALLOWANCE),
        tape=table.length("tape", 0.0, _ALLOWANCE),
        chords=table.optional_length("chords", _CHORDS),
        holes=table.choice("holes", StitchHoles, StitchHoles.CUT),
        fold_ticks=table.choice("fold_ticks", FoldTicks, FoldTicks.NONE),
        engrave=_engraving(table, face),
        smallest=_smallest(table.table("smallest", SmallestForm)),
        order=_order(table),
        sequence=table.choice("sequence", Course, Course.PIECES),
        travel=table.choice("travel", Travel, Travel.SHORTEST),
        operations=operations(table.table("operations", OperationsForm), _known(table, kind), kind.release),
        notes=table.notes("notes"),
        cautions=tuple(text_of(each, "a caution", table.scope) for each in table.scalars("cautions")),
    )
    _refuse_nothing_written(table, machine)
    return machine


def _kind(table: Entries) -> _Kind:
    tool = table.choice("tool", Tool, Tool.LASER)
    form = table.choice("format", Format, Format.DXF)
    release = table.choice("release", DxfVersion, DxfVersion.R2010)
    known = not (table.is_refused("format") or table.is_refused("release"))
    if "release" in table.nodes and known and form is not Format.DXF:
        table.add_fault("release", f"a {form} file has no release", "leave it out, or write 'format: dxf'")
    return _Kind(tool, form, release)


def _known(table: Entries, kind: _Kind) -> Format | None:
    """The format unless it was refused, or the release of it."""
    return None if table.is_refused("format") or table.is_refused("release") else kind.format


def _kerf(table: Entries, kind: _Kind) -> float:
    kerf = table.length("kerf", 0.0, Bounds(0.0, WIDEST_KERF))
    if kerf > 0 and kind.tool is Tool.DIE and not table.is_refused("tool"):
        table.add_fault("kerf", f"a die takes nothing away, and its kerf is {kerf:g} mm", "leave it out")
    return kerf


def _gap(table: Entries, kerf: float) -> float:
    gap = table.length("gap", 10.0, NOT_NEGATIVE)
    least = kerf + ROOM_BESIDE_CUT
    if gap < least:
        at = "gap" if "gap" in table.nodes else "kerf"
        table.add_fault(
            at, f"the gap between pieces is {gap:g} mm", f"it must be at least {least:g} mm (kerf + 2 mm)"
        )
    return gap


def _engraving(table: Entries, face: CutFace) -> Engraving:
    engraved = table.choice("engrave", Engraving, Engraving.NONE)
    if engraved is not Engraving.NONE and face is CutFace.BACK:
        what = "letters are engraved on the showing face, which lies down when the back is up"
        table.add_fault("engrave", what, "write 'face: front', or leave 'engrave' out")
    return engraved


def _bed(bed: Entries) -> tuple[float | None, float | None]:
    return bed.optional_length("width", POSITIVE), bed.optional_length("height", POSITIVE)


def _smallest(table: Entries) -> Smallest:
    return Smallest(*(table.length(key, 0.0, _LIMIT) for key in ("hole", "gap", "radius")))


def _order(table: Entries) -> tuple[Role, ...]:
    """The roles as listed; a fault unless each stands once and the outline last."""
    if "order" not in table.nodes or table.is_refused("order"):
        return CUT_ROLES
    listed = table.choices("order", CutWord)
    roles = tuple(word.role for word, _ in listed)
    if table.is_refused("order") or len(roles) != len(table.row("order")):
        return CUT_ROLES
    missing = [role.value for role in CUT_ROLES if role not in roles]
    if missing:
        table.add_fault("order", f"'order' does not name {', '.join(missing)}", "name each of the four roles once")
    elif roles[-1] is not Role.OUTLINE:
        at = next(at for word, at in listed if word is CutWord.OUTLINE)
        what = f"the outline stands before '{roles[-1]}', and a piece that is cut out may shift"
        table.scope.faults.add(at, what, "name the outline last")
    return roles if not missing else CUT_ROLES


def _refuse_nothing_written(table: Entries, machine: Machine) -> None:
    if not machine.written:
        table.add_fault("operations", "every operation is left out, so that no file has a line", "write one of them")
