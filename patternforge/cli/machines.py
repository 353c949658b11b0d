"""Machine tables on the command line: the one that is asked for, and the list of all that have a name."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import typer

from patternforge.cli.called import to_type
from patternforge.cli.choices import Usage
from patternforge.cli.request import refuse_unused
from patternforge.cli.table import columns
from patternforge.drafting.purpose import DieHoles, Files, StitchHoles
from patternforge.errors import DraftError
from patternforge.machines.table import Format, Machine, Tool
from patternforge.machines.writing import cutter
from patternforge.pipeline.cutter import cut_for
from patternforge.pipeline.machines import known_machines, machine_at, own_folder
from patternforge.pipeline.request import DraftRequest, Wanted

__all__ = ["comb_machine", "machines_table", "with_machine"]

_OVERRIDING = ("kerf", "cut_face", "fold_ticks", "bed", "gap", "engrave", "dxf", "die_holes")


def with_machine(request: DraftRequest, word: str, written: Collection[str]) -> DraftRequest:
    """``request`` for the machine that ``word`` names or whose file it is.

    What was ``written`` on the command line (names of parameters) goes before what the table says. A usage error when
    the files asked for are none of the machine's, or an option does not go with it. DesignError as in ``machine_at``.
    """
    machine = machine_at(word, request.design.parent)
    kind = cut_for(machine)
    if not request.wants(kind):
        raise typer.BadParameter(
            f"the files of {machine.title} are {machine.files}; ask for --for {kind}, or for all",
            param_hint="--machine",
        )
    refuse_unused(Usage(request.wanted), [name for name in written if name not in _OVERRIDING])
    return replace(request, machine=_overridden(machine, [name for name in _OVERRIDING if name in written], request))


def _overridden(machine: Machine, names: Sequence[str], request: DraftRequest) -> Machine:
    """The machine with what the options say in the place of what the table says."""
    for name in names:
        _refuse_foreign(machine, name, request)
    stages = [machine]
    for name in names:
        stages.append(replace(stages[-1], **_said(name, request, machine)))
    if fault := _fault(stages[-1]):
        blamed = next(name for name, stage in zip(names, stages[1:], strict=True) if _fault(stage))
        raise _unfit(blamed, fault)
    return stages[-1]


def _fault(machine: Machine) -> str:
    """Why no cutter can work by the table, if so."""
    try:
        cutter(machine)
    except DraftError as error:
        return str(error)
    return ""


def _refuse_foreign(machine: Machine, name: str, request: DraftRequest) -> None:
    """A usage error for an option that means nothing to the machine, unless files of another kind heed it."""
    alone = request.wanted is not Wanted.ALL
    if name == "dxf" and machine.format is not Format.DXF and alone:
        raise _unfit(name, f"{machine.title} reads {machine.format}")
    if name == "die_holes" and machine.files is Files.SHEETS and alone:
        raise _unfit(name, f"{machine.title} is sent sheets; write 'holes' in its table")
    if name == "kerf" and request.drafting.laser.kerf and machine.tool is Tool.DIE:
        raise _unfit(name, "a die takes nothing away")


def _said(name: str, request: DraftRequest, machine: Machine) -> Mapping[str, Any]:
    """The fields of a table that an option sets."""
    laser = request.drafting.laser
    holes = {DieHoles.PUNCHED: StitchHoles.CUT, DieHoles.LEFT_OUT: StitchHoles.LEFT_OUT}
    fields: dict[str, dict[str, Any]] = {
        "kerf": {"kerf": laser.kerf},
        "cut_face": {"face": laser.cut_face},
        "fold_ticks": {"fold_ticks": laser.fold_ticks},
        "bed": {"bed": (laser.bed, machine.bed[1])},
        "gap": {"gap": laser.gap},
        "engrave": {"engrave": laser.engraving},
        "dxf": {"release": request.dxf},
        "die_holes": {"holes": holes[request.drafting.die.holes]} if machine.files is Files.PIECES else {},
    }
    return fields.get(name, {})


def _unfit(name: str, why: str) -> typer.BadParameter:
    return typer.BadParameter(why, param_hint=f"--{name.replace('_', '-')}")


def comb_machine(word: str) -> Machine:
    """The machine a kerf comb is cut by; a usage error for a die, which has no kerf."""
    machine = machine_at(word, Path())
    if machine.tool is Tool.DIE:
        raise typer.BadParameter(f"{machine.title} makes dies, which have no kerf", param_hint="--machine")
    return machine


def machines_table(folder: Path) -> list[str]:
    """A line for each table that can be named from ``folder``, and how to start one of your own."""
    known = known_machines(folder)
    rows = [("name", "machine", "where"), *((each.name, each.title, each.place) for each in known)]
    return [
        *columns(rows),
        "",
        f"Start your own from the nearest: {to_type('machines', 'laser', '--out', 'my-laser.yaml')}",
        f"Use it by its file: {to_type('draft', 'wallet.yaml', '--machine', 'my-laser.yaml')}",
        f"By its name, once it lies in a folder 'machines' beside the design or in {own_folder()}",
    ]
