"""``new``: a design of one's own from a ready one, by options or by answers; nothing is overwritten."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from patternforge.pipeline.ready import ready_names
from patternforge.pipeline.stages import design_at
from tests.unit.cli.running import run
from tests.unit.delivery.killing import everything

ENTER = "\n"


@pytest.fixture(autouse=True)
def _in_a_folder_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


@pytest.fixture
def keyboard(monkeypatch: pytest.MonkeyPatch) -> None:
    """Answers given to the command are typed by somebody."""
    monkeypatch.setattr("patternforge.cli.start._is_keyboard", lambda: True)


def test_a_design_is_started_by_options(tmp_path: Path) -> None:
    words = ["--from", "two-fold", "--name", "Mine", "--set", "outer=1.6 mm", "--set", "margin=4mm"]
    ended = run("new", *words, "--out", "my.yaml")
    assert (ended.status, ended.err) == (0, "")
    assert ended.out.splitlines()[0] == "my.yaml is written."
    design = design_at(tmp_path / "my.yaml")
    assert (design.title, design.name, design.leather("outer").t) == ("Mine", "my", 1.6)
    assert {parameter.name: parameter.value for parameter in design.parameters}["margin"] == 4.0


@pytest.mark.parametrize("name", ready_names())
def test_what_new_writes_can_be_checked_and_has_the_ready_designs_comments(name: str) -> None:
    assert run("new", "--from", name).status == 0
    assert Path(f"{name}.yaml").read_text(encoding="utf-8").startswith("# ")
    assert run("check", f"{name}.yaml").status in (0, 6)


def test_without_a_file_name_the_wallets_own_is_taken() -> None:
    assert run("new", "--from", "card-sleeve", "--name", "Für Tante Jo").status == 0
    assert [path.name for path in Path().iterdir()] == ["fur-tante-jo.yaml"]


@pytest.mark.parametrize(
    ("words", "status", "substance"),
    [
        ([], 2, "two-fold"),
        (["--name", "Mine"], 2, "two-fold"),
        (["--from", "twofold"], 4, "did you mean two-fold?"),
        (["--from", "two-fold", "--set", "margn=3mm"], 4, "did you mean 'margin'?"),
        (["--from", "two-fold", "--set", "margin=99mm"], 4, "margin"),
        (["--from", "two-fold", "--set", "margin"], 2, "is not NAME=VALUE"),
        (["--from", "two-fold", "--set", "margin=3mm", "--set", "margin=4mm"], 2, "'margin' is set twice"),
        (["--from", "two-fold", "--name", "a\tb"], 4, "tab"),
        (["--from", "two-fold", "--out", "nowhere/a.yaml"], 7, "nowhere is not a folder"),
        (["--from", "two-fold", "--out", "."], 7, "not overwritten"),
    ],
)
def test_what_cannot_be_started_writes_nothing(tmp_path: Path, words: list[str], status: int, substance: str) -> None:
    ended = run("new", *words)
    assert (ended.status, ended.out) == (status, "")
    assert substance in ended.err
    assert everything(tmp_path) == {}


def test_a_file_that_is_there_is_not_overwritten(tmp_path: Path) -> None:
    (tmp_path / "two-fold.yaml").write_bytes(b"mine")
    ended = run("new", "--from", "two-fold")
    assert ended.status == 7
    assert "two-fold.yaml is there already" in ended.err
    assert everything(tmp_path) == {"two-fold.yaml": b"mine"}


@pytest.mark.usefixtures("keyboard")
def test_with_no_options_questions_are_asked_and_enter_takes_the_ready_designs_answer(tmp_path: Path) -> None:
    ended = run("new", answers="two-fold\nMine\n" + ENTER * 20)
    assert ended.status == 0
    for words in (
        "Which wallet is nearest",
        "How thick is the outer leather",
        "Stitch line to edge (margin, from 2.5 mm",
    ):
        assert words in ended.out
    design = design_at(tmp_path / "mine.yaml")
    ready = design_at(Path(__file__).parents[3] / "designs" / "two-fold.yaml")
    assert (design.title, design.leathers, design.parameters) == ("Mine", ready.leathers, ready.parameters)


@pytest.mark.usefixtures("keyboard")
def test_an_answer_that_the_design_does_not_take_is_asked_for_again(tmp_path: Path) -> None:
    number = str(ready_names().index("two-fold") + 1)
    answers = f"seven\n{number}\nMine\nthick\n1,6 mm\n{ENTER}90 mm\n4 mm\n{ENTER * 20}"
    ended = run("new", answers=answers)
    assert ended.status == 0
    assert "'seven' is not among them." in ended.out
    assert ended.out.count("How thick is the outer leather") == 2
    assert ended.out.count("Stitch line to edge (margin") == 2
    design = design_at(tmp_path / "mine.yaml")
    assert design.leather("outer").t == 1.6
    assert {parameter.name: parameter.value for parameter in design.parameters}["margin"] == 4.0


def test_at_a_terminal_questions_are_asked(tmp_path: Path) -> None:
    ours, theirs = pty.openpty()
    os.write(ours, ("card-sleeve\nMine\n" + ENTER * 20).encode())
    done = subprocess.run(
        [sys.executable, "-m", "patternforge.cli", "new"], stdin=theirs, capture_output=True, check=False
    )
    os.close(ours)
    os.close(theirs)
    assert (done.returncode, done.stderr.decode()) == (0, "")
    assert design_at(tmp_path / "mine.yaml").title == "Mine"
