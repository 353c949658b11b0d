"""Runs everything that must hold: format, lint, types, import contracts, then the tests with coverage, as many at
a time as there are processors.

``python -m tests`` from the project's root; stops at the first step that fails with that step's exit status.
"""

from __future__ import annotations

import subprocess
import sys

PYTHON = sys.executable

STEPS = (
    ("format", (PYTHON, "-m", "ruff", "format", "--check", ".")),
    ("lint", (PYTHON, "-m", "ruff", "check", ".")),
    ("types", (PYTHON, "-m", "mypy")),
    ("import contracts", (PYTHON, "-c", "from importlinter.cli import lint_imports_command as lint; lint()")),
    (
        "tests",
        (PYTHON, "-m", "pytest", "-rs", "--numprocesses=auto", "--dist=worksteal", "--cov", "--cov-report=term"),
    ),
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
