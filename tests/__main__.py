"""Runs everything that must hold: format, lint, types, import contracts, unit tests with coverage, laws and checks
from outside, as many tests at a time as there are processors.

``python -m tests`` from the project's root; stops at the first step that fails with that step's exit status.
"""

from __future__ import annotations

import subprocess
import sys

PYTHON = sys.executable

_PYTEST = (PYTHON, "-m", "pytest", "-rs", "--numprocesses=auto", "--dist=worksteal")
_UNIT = ("tests/unit", "tests/golden", "patternforge")
_WHOLE = ("tests/laws", "tests/outside")

# Counting lines takes three times as long as running them, so the unit tests alone must reach the coverage asked for.
STEPS = (
    ("format", (PYTHON, "-m", "ruff", "format", "--check", ".")),
    ("lint", (PYTHON, "-m", "ruff", "check", ".")),
    ("types", (PYTHON, "-m", "mypy")),
    ("import contracts", (PYTHON, "-c", "from importlinter.cli import lint_imports_command as lint; lint()")),
    ("unit tests, with coverage", (*_PYTEST, "--cov", "--cov-report=term", *_UNIT)),
    ("laws and checks from outside", (*_PYTEST, *_WHOLE)),
)


def main() -> int:
    """Runs the steps in order; 0 when all pass."""
    for name, command in STEPS:
        print(f"== {name}", flush=True)
        status = subprocess.run(command, check=False).returncode
        if status:
            print(f"== {name} failed", flush=True)
            return status
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
