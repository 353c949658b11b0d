"""The help says what there is, in words that are not cut off."""

from __future__ import annotations

import pytest
import typer

from patternforge.cli.commands import app
from tests.unit.cli.running import run

_NAMES = list(typer.main.get_group(app).commands)
_COLUMNS = 80


@pytest.fixture(autouse=True)
def _narrow(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", str(_COLUMNS))


def test_every_command_is_told_in_a_whole_sentence_on_one_line() -> None:
    listed = run("--help").out.partition("Commands:\n")[2].splitlines()
    assert [line.split()[0] for line in listed] == _NAMES
    assert [line for line in listed if not line.endswith(".") or line.endswith("...")] == []
    assert max(map(len, listed)) <= _COLUMNS


@pytest.mark.parametrize("name", _NAMES)
def test_the_help_of_a_command_cuts_no_sentence_off(name: str) -> None:
    usage, _, rest = run(name, "--help").out.partition("\n")
    assert usage.startswith("Usage: ")
    assert name in usage
    assert rest.strip()
    assert [line for line in rest.splitlines() if line.endswith("...")] == []
