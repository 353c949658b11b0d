"""What a machine is sent, and what pattern.json says of it."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from patternforge.drafting.purpose import Files, StitchHoles
from patternforge.drafting.schema import pattern_schema
from patternforge.errors import DraftError
from patternforge.machines.load import load_machine
from patternforge.machines.table import Machine, Smallest
from patternforge.pipeline.cutter import cut_files
from patternforge.pipeline.draft import draft
from patternforge.pipeline.request import DraftRequest, OnNo, Wanted
from patternforge.wallet.assemble import drafted
from tests.designs_built import two_fold
from tests.unit.machines.good_machine import GOOD, PLOT
from tests.unit.small_designs import MISFIT, SLEEVE, saved

TWO = drafted(two_fold())


def described(folder: Path, machine: Machine | None, text: str = SLEEVE) -> dict[str, Any]:
    """``pattern.json`` of a sleeve that was drafted for the machine; valid under its schema."""
    request = DraftRequest(
        saved(folder, text), wanted=Wanted.ALL, out=folder / "out", machine=machine, on_no=OnNo.WRITE
    )
    draft(request)
    read: dict[str, Any] = json.loads((folder / "out" / "sleeve" / "pattern.json").read_text(encoding="utf-8"))
    assert [error.message for error in Draft202012Validator(pattern_schema()).iter_errors(read)] == []
    return read


def test_without_a_machine_what_there_is_to_cut_is_described_net(tmp_path: Path) -> None:
    read = described(tmp_path, None)
    assert read["cutting"]["machine"] is None
    rows = {row["operation"]: row for row in read["cutting"]["operations"]}
    assert rows["outline"]["count"] == sum(piece["quantity"] for piece in read["pieces"])
    assert rows["stitch hole"]["count"] == sum(len(piece["holes"]) for piece in read["pieces"])
    # Round holes of 1 mm.
    assert rows["stitch hole"]["length"] == pytest.approx(3.14159265 * rows["stitch hole"]["count"], rel=1e-6)


@pytest.mark.parametrize("text", [GOOD, PLOT, GOOD.replace("files: sheets", "files: pieces")])
def test_every_sheet_that_is_written_is_described_by_its_path(tmp_path: Path, text: str) -> None:
    machine = load_machine(text.replace("  hole: 0.5 mm\n", ""), "shop.yaml")
    read = described(tmp_path, machine)["cutting"]["machine"]
    files = sorted(path.relative_to(tmp_path / "out" / "sleeve") for path in (tmp_path / "out").rglob("shop/*"))
    assert sorted(sheet["file"] for sheet in read["sheets"]) == [path.as_posix() for path in files]
    assert (read["name"], read["title"], read["holes"]) == ("shop", machine.title, machine.holes)
    assert all(sheet["travel"]["in_order"] <= sheet["travel"]["as_drawn"] + 1e-6 for sheet in read["sheets"])


def test_files_that_bear_a_warning_are_described_with_it(tmp_path: Path) -> None:
    read = described(tmp_path, load_machine(PLOT, "shop.yaml"), MISFIT)["cutting"]["machine"]
    assert all("DOES-NOT-FIT" in sheet["file"] for sheet in read["sheets"])
    assert all((tmp_path / "out" / "sleeve" / sheet["file"]).is_file() for sheet in read["sheets"])


def test_what_a_machine_does_not_write_does_not_limit_it(tmp_path: Path) -> None:
    machine = replace(load_machine(PLOT, "shop.yaml"), smallest=Smallest(hole=2.0))
    with pytest.raises(DraftError, match=r"a hole of 1\.00 mm is smaller than Shop plotter can cut \(2\.00 mm\)"):
        cut_files(TWO, machine)
    for holes in (StitchHoles.MARKED, StitchHoles.LEFT_OUT):
        assert cut_files(TWO, replace(machine, holes=holes)).smallest.hole is None
    assert cut_files(TWO, replace(machine, smallest=Smallest(hole=1.0))).sheets


def test_the_smallest_is_that_of_the_net_pieces_whatever_the_kerf() -> None:
    machine = load_machine(PLOT, "shop.yaml")
    plain, grown = cut_files(TWO, machine), cut_files(TWO, replace(machine, kerf=0.3, sanding=0.5))
    assert plain.smallest == grown.smallest


def test_sheets_for_each_leather_hold_each_piece_once_and_all_together_once_more() -> None:
    cut = cut_files(TWO, load_machine(PLOT, "shop.yaml"))
    groups = [sheet.group for sheet in cut.sheets]
    assert groups == ["outer", "inner", ""]
    by_piece = cut_files(TWO, replace(load_machine(PLOT, "shop.yaml"), files=Files.PIECES))
    assert [sheet.group for sheet in by_piece.sheets] == [piece.leather for piece in TWO.pieces]


def test_each_file_is_drawn_once_more_to_be_looked_at_in_a_folder_of_its_own(tmp_path: Path) -> None:
    described(tmp_path, load_machine(PLOT, "shop.yaml"))
    folder = tmp_path / "out" / "sleeve"
    cut = sorted(path.stem for path in (folder / "shop").iterdir())
    looked_at = {path.name: path.read_text(encoding="utf-8") for path in (folder / "shop-to-look-at").iterdir()}
    assert sorted(looked_at) == [f"{stem}-not-to-cut.svg" for stem in cut]
    for name, text in looked_at.items():
        assert ">NOT TO BE CUT BY." in text
        assert f">{name.removesuffix('-not-to-cut.svg')}.hpgl<" in text
