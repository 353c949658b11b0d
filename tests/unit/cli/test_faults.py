"""Whatever goes wrong: one plain message on stderr, the status that belongs to it, nothing half-written."""

from __future__ import annotations

import signal
import subprocess
import sys
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
    "import signal, time; signal.signal(signal.SIGINT, signal.default_int_handler);"
    "from patternforge.pipeline import stages;"
    "stages.drafted = lambda design: (print('at work', flush=True), time.sleep(600));"
    "from patternforge.cli.app import main; main()",
]


@pytest.mark.parametrize(
    ("words", "status", "substance"),
    [
        (["--for", "stamp"], 2, "stamp"),
        (["--kerf", "0,2"], 2, "write 0.2, or say the unit"),
        (["--kerf", "wide"], 2, "--kerf"),
        (["--kerf", "3"], 2, "--kerf: the kerf is 3 mm; lawful is 0 to 2 mm"),
        (["--gap", "1"], 2, "--gap: the gap between pieces is 1 mm; lawful is 2 mm"),
        (["--bed", "0"], 2, "--bed: the bed is 0 mm wide"),
        (["--bed", "90"], 5, "does not fit a width of 90 mm"),
        (["--measured", "0x100"], 2, "not fitted to the page"),
        (["--measured", "100xnan"], 2, "--measured"),
        (["--measured", "99.6"], 2, "is not AxB"),
        (["--type", "huge"], 2, "'huge' is none of usual, large"),
        (["--for", "laser", "--measured", "99x100"], 2, "--measured: it changes nothing"),
        (["--for", "laser", "--type", "large"], 2, "--type: it changes nothing in files for laser"),
        (["--paper", "a5"], 2, "'--paper': 'a5' is none of a4, a3, letter, legal"),
        (["--dxf", "r14"], 2, "r14"),
        (["--set", "=3"], 2, "is not NAME=VALUE"),
        (["--set", "margin=9 mm"], 4, "--set margin=9 mm: parameter 'margin' is 9 mm; it must be at most 5 mm"),
        (["--white", "60"], 2, "--white: the printer margin is 60 mm"),
        (["--for", "die", "--kerf", "0.2"], 2, "--kerf: it changes nothing in files for die"),
        (["--for", "laser", "--die-holes", "none"], 2, "--die-holes: it changes nothing in files for laser"),
        (["--for", "laser", "--paper", "a3"], 2, "--paper: it changes nothing in files for laser"),
        (["--for", "paper", "--dxf", "r12"], 2, "--dxf: it changes nothing in files for paper"),
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
    for path, place in (
        (tmp_path, ""),
        (tmp_path / "no.yaml", ""),
        (tmp_path / "bytes.yaml", ":1:1"),
        (tmp_path / "empty.yaml", ":1:1"),
    ):
        ended = run(command, path)
        assert (ended.status, ended.out) == (4, "")
        assert ended.err.startswith(f"{path}{place}: ")
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

    monkeypatch.setattr(commands, "say", failing)
    assert run("items").status == status


def test_a_fault_of_the_program_says_so_and_asks_for_a_report(monkeypatch: pytest.MonkeyPatch) -> None:
    def failing(lines: object) -> None:
        raise ZeroDivisionError("division by zero")

    monkeypatch.setattr(commands, "say", failing)
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
    """The command is stopped while it holds still in the midst of its work."""
    words = [*STOPPABLE, "draft", str(saved(tmp_path)), "--out", str(tmp_path / "out")]
    with subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == b"at work\n"
        process.send_signal(signal.SIGINT)
        out, err = process.communicate()
    assert (process.returncode, out, err) == (130, b"", b"stopped\n")
    assert [path.name for path in tmp_path.iterdir()] == ["sleeve.yaml"]


def test_questions_left_unanswered_end_with_status_130_and_no_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("patternforge.cli.start._is_keyboard", lambda: True)
    ended = run("new", answers="two-fold\n")
    assert (ended.status, ended.err) == (130, "stopped\n")
    assert [*tmp_path.iterdir()] == []


def test_a_screen_without_the_letters_of_a_title_is_no_fault(tmp_path: Path) -> None:
    design = saved(tmp_path, SLEEVE.replace("Small sleeve", "Kleine Hülle"))
    ended = in_a_process("check", design, PYTHONIOENCODING="ascii")
    assert ended.status == 0
    assert ended.out.startswith(r"Kleine H\xfclle")


def test_without_a_command_the_help_is_shown() -> None:
    ended = run()
    assert ended.status == 2
    assert "draft" in ended.out + ended.err
