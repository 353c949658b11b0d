"""Commands run in this process, or in one of their own."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

from typer.testing import CliRunner

from patternforge.cli.commands import app

__all__ = ["Ended", "in_a_process", "run"]


@dataclass(frozen=True, slots=True)
class Ended:
    """How a command ended and what it said."""

    status: int
    out: str
    err: str


def run(*words: object, answers: str | None = None) -> Ended:
    """The command run in this process; no traceback reaches the user and no exception the test."""
    result = CliRunner().invoke(app, [str(word) for word in words], input=answers)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert "Traceback" not in result.output
    return Ended(result.exit_code, result.stdout, result.stderr)


def in_a_process(*words: object, cwd: Path | None = None, **environment: str) -> Ended:
    """The command run in a process of its own."""
    done = subprocess.run(
        [sys.executable, "-m", "patternforge.cli", *map(str, words)],
        check=False,
        capture_output=True,
        cwd=cwd,
        env={**os.environ, **environment},
    )
    return Ended(done.returncode, done.stdout.decode("utf-8", "replace"), done.stderr.decode("utf-8", "replace"))
