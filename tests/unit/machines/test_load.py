"""A machine table read whole."""

from __future__ import annotations

from importlib.resources import files

import pytest

from patternforge.drafting.purpose import CutFace, Files, FoldTicks, StitchHoles
from patternforge.drawing.course import Course, Travel
from patternforge.drawing.model import Role
from patternforge.export.dxf import CUT_ROLES, DxfVersion
from patternforge.machines.load import load_machine
from patternforge.machines.table import Format, Machine, Operation, Smallest, Tool
from tests.unit.machines.good_machine import GOOD, PLOT, VECTOR

READY = sorted(entry.name for entry in (files("patternforge") / "machines").iterdir() if entry.name.endswith(".yaml"))


def test_every_key_reaches_the_machine() -> None:
    assert load_machine(GOOD, "here/shop.yaml") == Machine(
        name="shop",
        title="Shop laser",
        tool=Tool.LASER,
        format=Format.DXF,
        release=DxfVersion.R2018,
        bed=(600.0, 400.0),
        gap=12.0,
        files=Files.SHEETS,
        face=CutFace.BACK,
        kerf=0.2,
        sanding=0.3,
        tape=0.1,
        chords=0.02,
        holes=StitchHoles.MARKED,
        fold_ticks=FoldTicks.SCORED,
        smallest=Smallest(0.5, 1.0, 0.4),
        order=(Role.HOLE, Role.MARK, Role.OPENING, Role.OUTLINE),
        sequence=Course.OPERATIONS,
        travel=Travel.AS_DRAWN,
        operations=(
            Operation(Role.MARK, "SCORE", 5, 0.13),
            Operation(Role.HOLE, "HOLES", 6),
            Operation(Role.OPENING, written=False),
            Operation(Role.OUTLINE, "EDGE", 1, 0.5),
        ),
        notes="Cut by two people.\nNever alone.",
        cautions=("Lens cleaned?", "Air on?"),
    )


def test_what_is_left_out_is_plain() -> None:
    machine = load_machine("{machine: Least, tool: hand, format: svg}", "least.yaml")
    assert machine == Machine("least", "Least", Tool.HAND, Format.SVG)
    assert machine.written == CUT_ROLES == (Role.MARK, Role.HOLE, Role.OPENING, Role.OUTLINE)


def test_pens_and_colours_are_read_for_their_formats() -> None:
    assert [each.pen for each in load_machine(PLOT, "a.yaml").operations] == [4, 3]
    vector = load_machine(VECTOR, "a.yaml").operations
    assert [each.colour for each in vector] == ["#0000ff", "#ff8800"]
    assert [each.weight for each in vector] == [0.1, None]


def test_roles_are_written_in_the_order_named_but_for_those_left_out() -> None:
    assert load_machine(GOOD, "a.yaml").written == (Role.HOLE, Role.MARK, Role.OUTLINE)


def test_units_may_be_said() -> None:
    machine = load_machine("{machine: A, tool: die, format: dxf, bed: {width: 24 in}, gap: 1 cm}", "a.yaml")
    assert (machine.bed, machine.gap) == ((609.6, None), 10.0)


@pytest.mark.parametrize("name", READY)
def test_every_ready_table_can_be_read(name: str) -> None:
    text = (files("patternforge") / "machines" / name).read_text("utf-8")
    machine = load_machine(text, name)
    assert machine.title
    assert f"patternforge machines {machine.name} --out" in text


def test_the_ready_tables_cover_every_tool_and_every_format() -> None:
    shelf = files("patternforge") / "machines"
    machines = [load_machine((shelf / name).read_text("utf-8"), name) for name in READY]
    assert {machine.tool for machine in machines} == set(Tool)
    assert {machine.format for machine in machines} == set(Format)
