"""What is not needed is not loaded."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from patternforge import __version__
from tests.unit.cli.running import run
from tests.unit.small_designs import saved

HEAVY = {"shapely", "ezdxf", "numpy", "svgwrite", "pikepdf", "yaml", "HersheyFonts", "rich"}
PROGRAM = """
import sys
sys.argv[1:] = {words!r}
from patternforge.cli.app import main
try:
    main()
finally:
    print("loaded", *sorted({{name.partition('.')[0] for name in sys.modules}} & {names!r}), file=sys.stderr)
"""


def loaded(*words: str, names: set[str] = HEAVY) -> set[str]:
    """Those of ``names`` that a command has loaded when it ends."""
    program = PROGRAM.format(words=list(words), names=names)
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    return set(done.stderr.splitlines()[-1].split()[1:])


@pytest.mark.parametrize("words", [["--help"], ["draft", "--help"], ["--version"]])
def test_help_loads_nothing_heavy(words: list[str]) -> None:
    assert loaded(*words) == set()


def test_the_version_is_said_before_anything_is_loaded() -> None:
    assert loaded("--version", names={"typer", "click", "inspect", "dataclasses"}) == set()


def test_paper_alone_needs_no_dxf_library(tmp_path: Path) -> None:
    found = loaded("draft", str(saved(tmp_path)), "--for", "paper", "--out", str(tmp_path / "out"))
    assert {"svgwrite", "pikepdf"} <= found
    assert not found & {"ezdxf", "numpy", "shapely"}


def test_check_needs_no_writer(tmp_path: Path) -> None:
    assert not loaded("check", str(saved(tmp_path))) & {"ezdxf", "svgwrite", "pikepdf", "HersheyFonts"}


def test_the_version_is_that_of_the_program() -> None:
    assert run("--version").out == f"patternforge {__version__}\n"
