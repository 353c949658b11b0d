"""File sets written by the command itself, once for all tests that read them, whichever process they run in."""

from __future__ import annotations

import os
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path

import pytest
from typer.testing import CliRunner

from patternforge.cli.commands import app

FileSet = Callable[..., Path]


@pytest.fixture(scope="session")
def file_set(tmp_path_factory: pytest.TempPathFactory) -> FileSet:
    """``file_set(design, *options)``: the folder that ``patternforge draft`` fills for a design."""
    own = tmp_path_factory.getbasetemp()
    shared = own.parent if "PYTEST_XDIST_WORKER" in os.environ else own

    def folder(design: Path, *options: str) -> Path:
        place = shared / f"set-{sha256(repr((str(design), options)).encode()).hexdigest()[:16]}"
        if not place.is_dir():
            _fill(place, tmp_path_factory.mktemp("out"), design, options)
        return place / design.stem

    return folder


def _fill(place: Path, out: Path, design: Path, options: tuple[str, ...]) -> None:
    """Writes a set aside and moves it to its place as a whole; a set that another process moved there first stays."""
    ended = CliRunner().invoke(app, ["draft", str(design), "--out", str(out), *options])
    assert ended.exit_code == 0, ended.output
    try:
        out.rename(place)
    except OSError:
        assert place.is_dir(), f"{place} cannot be made"
