"""A command that the program tells can be typed as it stands, in the folder where the program was called."""

from __future__ import annotations

import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from patternforge.cli.called import module, program, to_type
from tests.unit.cli.running import in_a_process, run


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A working directory of its own, and no program to be found by its bare name."""
    folder = tmp_path / "my wallets"
    folder.mkdir()
    monkeypatch.chdir(folder)
    monkeypatch.setenv("PATH", str(tmp_path / "nothing"))
    return folder


def installed(folder: Path, name: str = "patternforge") -> Path:
    """A program that can be started, in this folder."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / name).write_text("#!/bin/sh\n")
    (folder / name).chmod(0o755)
    return folder / name


@pytest.mark.parametrize(
    ("called", "told"),
    [
        (".venv/bin/patternforge", ".venv/bin/patternforge"),
        ("../env/bin/patternforge", "../env/bin/patternforge"),
        ("{here}/.venv/bin/patternforge", ".venv/bin/patternforge"),
        ("{here}/patternforge", "./patternforge"),
        ("/elsewhere/bin/patternforge", "/elsewhere/bin/patternforge"),
        ("/else where/bin/patternforge", "'/else where/bin/patternforge'"),
        ("/elsewhere/bin/patternforge.exe", "/elsewhere/bin/patternforge.exe"),
        ("/elsewhere/bin/pytest", "patternforge"),
        ("-c", "patternforge"),
        ("", "patternforge"),
    ],
)
def test_the_program_is_told_as_it_was_called(
    here: Path, monkeypatch: pytest.MonkeyPatch, called: str, told: str
) -> None:
    monkeypatch.setattr(sys, "argv", [called.format(here=here), "check"])
    assert program() == told
    assert to_type("check", "my wallet.yaml") == f"{told} check 'my wallet.yaml'"


def test_a_program_found_by_its_bare_name_is_told_by_it(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first, other = installed(here / "bin"), installed(here / "other")
    monkeypatch.setenv("PATH", str(first.parent))
    monkeypatch.setattr(sys, "argv", [str(first)])
    assert program() == "patternforge"
    monkeypatch.setattr(sys, "argv", [str(other)])
    assert program() == "other/patternforge"


def test_what_is_called_through_python_is_told_so(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "argv", ["/lib/patternforge/cli/__main__.py", "check"])
    monkeypatch.setattr(sys, "executable", str(here / ".venv/bin/python"))
    assert program() == ".venv/bin/python -m patternforge.cli"
    assert module("-X", "dev") == ".venv/bin/python -X dev -m patternforge.cli"


def test_a_told_command_runs(here: Path) -> None:
    said = in_a_process("new", "--from", "card-sleeve", "--out", "my sleeve.yaml", cwd=here).out.splitlines()
    assert said[1].startswith("See how it fits: ")
    command = said[1].partition(": ")[2]
    assert shlex.split(command)[-2:] == ["check", "my sleeve.yaml"]
    done = subprocess.run(command, shell=True, cwd=here, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["machines"], "machines laser --out my-laser.yaml"),
        (["machines"], "draft wallet.yaml --machine my-laser.yaml"),
        (["comb", "--step", "0.1mm"], "kerf --slot 4 --step 0.1mm"),
        (["comb"], "kerf --tongue 7.82mm"),
        (["strip", "--gauge", "4mm"], "neutral --thickness 1.2mm --length 100mm --gauge 4mm 49.4+49.4 49.3+49.4"),
    ],
)
def test_every_command_stands_whole_on_one_line(monkeypatch: pytest.MonkeyPatch, words: list[str], told: str) -> None:
    monkeypatch.setattr(sys, "argv", ["tools/patternforge"])
    assert any(line.endswith(f"tools/patternforge {told}") for line in run(*words).out.splitlines())


def test_a_working_directory_that_was_removed_is_no_matter(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "argv", [str(here / "bin" / "patternforge")])
    here.rmdir()
    assert program() == shlex.quote(str(here / "bin" / "patternforge"))
