"""A design file is read or refused by name; a design is judged over the whole range of its leathers."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from patternforge.errors import DesignError
from patternforge.fit.findings import Verdict
from patternforge.pipeline.stages import design_at, judged
from tests.unit.small_designs import BROKEN, LOOK, MISFIT, SLEEVE, saved


def faults(path: Path) -> list[str]:
    with pytest.raises(DesignError) as caught:
        design_at(path)
    return [str(fault) for fault in caught.value.faults]


def test_a_missing_file_is_named_with_the_designs_beside_it(tmp_path: Path) -> None:
    saved(tmp_path, name="mine.yaml")
    saved(tmp_path, name="another.yaml")
    path = tmp_path / "wallet.yaml"
    assert faults(path) == [f"{path}: there is no such file; in that folder there are another.yaml, mine.yaml"]


@pytest.mark.parametrize("name", ["mien.yaml", "mine", "Mine.yml"])
def test_a_mistyped_file_is_answered_with_the_one_that_is_there(tmp_path: Path, name: str) -> None:
    there = saved(tmp_path, name="mine.yaml")
    saved(tmp_path, name="another.yaml")
    assert faults(tmp_path / name) == [f"{tmp_path / name}: there is no such file; did you mean '{there}'?"]


def test_a_missing_folder_is_no_other_fault(tmp_path: Path) -> None:
    assert "there is no such file" in faults(tmp_path / "nowhere" / "a.yaml")[0]


def test_a_folder_is_not_taken_for_a_design(tmp_path: Path) -> None:
    assert faults(tmp_path) == [f"{tmp_path}: this is a folder; give the path of a design file in it"]


def test_a_file_that_may_not_be_read_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(self: Path, mode: str) -> None:
        raise PermissionError(13, "Permission denied", str(self))

    path = saved(tmp_path)
    monkeypatch.setattr(Path, "open", refused)
    assert "cannot be read: Permission denied" in faults(path)[0]


def test_a_pipe_is_refused_and_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "a.yaml")
    assert "this is a pipe or a device, not a file; save the design in a file" in faults(tmp_path / "a.yaml")[0]


def test_a_device_is_refused() -> None:
    assert faults(Path("/dev/zero")) == [
        "/dev/zero: this is a pipe or a device, not a file; save the design in a file"
    ]


def test_no_more_than_a_megabyte_is_read(tmp_path: Path) -> None:
    path = saved(tmp_path, SLEEVE + "#" * 1_000_000)
    assert faults(path) == [f"{path}: the file is larger than 1 MB; a design has a few kB"]


def test_what_is_not_utf_8_is_named_with_its_place(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_bytes(b"design: A\nrevision: \xff")
    assert faults(path) == [f"{path}:2:11: byte 0xFF is not UTF-8 text; save the file as UTF-8"]


def test_every_fault_of_a_design_comes_at_once(tmp_path: Path) -> None:
    assert len(faults(saved(tmp_path, BROKEN))) == 2


@pytest.mark.parametrize(("text", "verdict"), [(SLEEVE, Verdict.GOOD), (LOOK, Verdict.LOOK), (MISFIT, Verdict.NO)])
def test_the_verdict_is_that_of_the_worst_finding(tmp_path: Path, text: str, verdict: Verdict) -> None:
    assert judged(saved(tmp_path, text)).verdict is verdict


def test_settings_take_the_place_of_what_the_file_says(tmp_path: Path) -> None:
    design = design_at(saved(tmp_path), {"margin": "4 mm", "main": "2 mm"})
    assert (design.parameters[0].value, design.leather("main").t) == (4.0, 2.0)


def test_a_design_is_named_alike_however_the_system_writes_its_file(tmp_path: Path) -> None:
    path = saved(tmp_path, name="täsch.yaml")
    undecoded = Path(os.fsdecode(os.fsencode(tmp_path)) + "/t\udcc3\udca4sch.yaml")
    assert design_at(undecoded).name == design_at(path).name == "täsch"
