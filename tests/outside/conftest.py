"""File sets written by the command itself, once for all tests that read them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from typer.testing import CliRunner

from patternforge.cli.commands import app

FileSet = Callable[..., Path]


@pytest.fixture(scope="session")
def file_set(tmp_path_factory: pytest.TempPathFactory) -> FileSet:
    """``file_set(design, *options)``: the folder that ``patternforge draft`` fills for a design."""
    known: dict[tuple[object, ...], Path] = {}

    def folder(design: Path, *options: str) -> Path:
        if (design, options) not in known:
            out = tmp_path_factory.mktemp("out")
            ended = CliRunner().invoke(app, ["draft", str(design), "--out", str(out), *options])
            assert ended.exit_code == 0, ended.output
            known[design, options] = out / design.stem
        return known[design, options]

    return folder
