"""Whatever goes wrong: one plain message on stderr, the status that belongs to it, nothing half-written."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from patternforge.cli import commands
from patternforge.errors import (
    DeliveryError,
    DesignError,
    DraftError,
    FitError,
    GeometryError,
    PatternforgeError,
)
from tests.unit.cli.running import in_a_process, run
from tests.unit.small_designs import SLEEVE, saved

COMMAND = [sys.executable, "-m", "patternforge.cli"]
# Whoever runs the tests in the background of a shell has them ignore Ctrl-C, and what they start does too.
STOPPABLE = [
    sys.executable,
    "-c",
    "import signal; signal.signal(signal.SIGINT, signal.default_int_handler);"
    "from patternforge.cli.app import main; main()",
]


@pytest.mark.parametrize(
    ("words", "status", "substance"),
    [
        (["--for", "stamp"], 2, "stamp"),
        (["--kerf", "0,2"], 2, "write 0.2, or say the unit"),
        (["--kerf", "wide"], 2, "--kerf"),
        (["--kerf", "3"], 5, "lawful is 0 to 2 mm"),
        (["--gap", "1"], 5, "lawful is 2 mm"),
        (["--bed", "90"], 5, "does not fit a width of 90 mm"),
        (["--bar-x", "0"], 2, "not fitted to the page"),
        (["--bar-y", "nan"], 2, "--bar-y"),
        (["--paper", "a5"], 2, "a5"),
        (["--dxf", "r14"], 2, "r14"),
        (["--set", "=3"], 2, "is not NAME=VALUE"),
        (["--set", "margin=9 mm"], 4, "--set:1:1"),
        (["--white", "60"], 5, "printer margin"),
        (["--thickness", "3"], 2, "--thickness"),
    ],
)
def test_a_wrong_word_is_named_and_nothing_is_written(
    tmp_path: Path, words: list[str], status: int, substance: str
) -> None:
    ended = run("draft", saved(tmp_path), "--out", tmp_path / "out", *words)
    assert ended.status == status, ended.err
    assert substance in ended.err
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("command", ["draft", "check"])
def test_files_that_cannot_be_read_end_with_status_4(tmp_path: Path, command: str) -> None:
    (tmp_path / "bytes.yaml").write_bytes(b"\xff\xfe\x00")
    (tmp_path / "empty.yaml").write_bytes(b"")
    for path in (tmp_path, tmp_path / "no.yaml", tmp_path / "bytes.yaml", tmp_path / "empty.yaml"):
        ended = run(command, path)
        assert (ended.status, ended.out) == (4, "")
        assert ended.err.startswith(f"{path}:1:1: ")
        assert ended.err.count("\n") == 1


def test_a_folder_that_is_a_file_ends_with_status_7(tmp_path: Path) -> None:
    (tmp_path / "out").write_bytes(b"mine")
    ended = run("draft", saved(tmp_path), "--out", tmp_path / "out")
    assert ended.status == 7
    assert str(tmp_path / "out") in ended.err
    assert (tmp_path / "out").read_bytes() == b"mine"


@pytest.mark.parametrize(
    ("error", "status"),
    [
        (PatternforgeError("p"), 3),
        (DesignError([]), 4),
        (DraftError("p"), 5),
        (FitError("p"), 6),
        (DeliveryError("p"), 7),
        (GeometryError("p"), 8),
        (KeyboardInterrupt(), 130),
        (ZeroDivisionError("p"), 1),
        (RecursionError("p"), 1),
        (OSError(28, "No space left on device"), 7),
    ],
)
def test_every_branch_of_the_error_tree_has_its_status(
    monkeypatch: pytest.MonkeyPatch, error: BaseException, status: int
) -> None:
    def failing(lines: object) -> None:
        raise error

    monkeypatch.setattr(commands, "_say", failing)
    assert run("items").status == status


def test_a_fault_of_the_program_says_so_and_asks_for_a_report(monkeypatch: pytest.MonkeyPatch) -> None:
    def failing(lines: object) -> None:
        raise ZeroDivisionError("division by zero")

    monkeypatch.setattr(commands, "_say", failing)
    ended = run("items")
    assert "a fault of its own (ZeroDivisionError: division by zero)" in ended.err
    assert "report it" in ended.err


def test_a_reader_that_goes_away_is_no_fault() -> None:
    with subprocess.Popen([*COMMAND, "schema"], stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        said = process.stderr.read()
    assert (process.returncode, said) == (141, b"")


def test_a_full_screen_disk_is_named() -> None:
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run([*COMMAND, "items"], stdout=full, stderr=subprocess.PIPE, check=False)
    assert (done.returncode, done.stderr) == (7, b"the output cannot be written: No space left on device\n")


def test_ctrl_c_ends_with_status_130_one_word_and_no_files(tmp_path: Path) -> None:
    """The command reads its design from a pipe that stays empty, so that it is surely at work when stopped."""
    pipe = tmp_path / "slow.yaml"
    os.mkfifo(pipe)
    words = [*STOPPABLE, "draft", str(pipe), "--out", str(tmp_path / "out")]
    with subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        writer = _writer_once_read(pipe, process)
        process.send_signal(signal.SIGINT)
        out, err = process.communicate()
        os.close(writer)
    assert (process.returncode, out, err) == (130, b"", b"stopped\n")
    assert [path.name for path in tmp_path.iterdir()] == ["slow.yaml"]


def _writer_once_read(pipe: Path, process: subprocess.Popen[bytes]) -> int:
    """A handle that writes to the pipe once the process has opened it to read; the process waits for its closing."""
    while process.poll() is None:
        try:
            return os.open(pipe, os.O_WRONLY | os.O_NONBLOCK)
        except OSError:
            time.sleep(0.01)
    raise AssertionError(f"the process ended before it read: {process.communicate()}")


def test_a_screen_without_the_letters_of_a_title_is_no_fault(tmp_path: Path) -> None:
    design = saved(tmp_path, SLEEVE.replace("Small sleeve", "Kleine Hülle"))
    ended = in_a_process("check", design, PYTHONIOENCODING="ascii")
    assert ended.status == 0
    assert ended.out.startswith(r"Kleine H\xfclle")


def test_without_a_command_the_help_is_shown() -> None:
    ended = run()
    assert ended.status == 2
    assert "draft" in ended.out + ended.err
