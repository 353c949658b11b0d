"""``--initials`` and ``--engrave``: letters for one order, proved on the screen and marked only where asked."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.unit.cli.running import run
from tests.unit.small_designs import SLEEVE, saved

LETTERED = SLEEVE + (
    "initials:\n"
    "  - {initials: monogram, text: AB, on: cards, at: {bottom: 20 mm}, width: 30 mm, height: 9 mm}\n"
    "  - {initials: owner, on: back, at: {bottom: 20 mm}, width: 40 mm, height: 9 mm, style: stamps,"
    " stamp: {width: 6 mm, height: 8 mm}}\n"
)


@pytest.fixture
def sleeve(tmp_path: Path) -> Path:
    return saved(tmp_path, LETTERED)


def drafted(sleeve: Path, *words: str) -> Path:
    ended = run("draft", sleeve, "--out", sleeve.parent / "out", *words)
    assert (ended.status, ended.err) == (0, "")
    return sleeve.parent / "out" / "sleeve"


def inscriptions(folder: Path) -> list[tuple[str, str, str]]:
    read = json.loads((folder / "pattern.json").read_text(encoding="utf-8"))
    return [
        (piece["name"], each["initials"], each["text"]) for piece in read["pieces"] for each in piece["inscriptions"]
    ]


def marked(folder: Path) -> list[str]:
    """The cutting files that hold something on the layer for marks."""
    files = sorted([*folder.glob("laser/*.dxf"), *folder.glob("die/*.dxf")])
    return [path.name for path in files if "\n  8\nMARK\n" in path.read_text(encoding="utf-8").replace("\r", "")]


def test_letters_of_the_file_stand_unless_others_are_given(sleeve: Path) -> None:
    assert inscriptions(drafted(sleeve)) == [("back", "owner", ""), ("cards", "monogram", "AB")]
    folder = drafted(sleeve, "--initials", "monogram=Å W", "--initials", "owner=NO")
    assert inscriptions(folder) == [("back", "owner", "NO"), ("cards", "monogram", "Å W")]
    assert inscriptions(drafted(sleeve, "--initials", "monogram=")) == [
        ("back", "owner", ""),
        ("cards", "monogram", ""),
    ]


def test_the_report_proves_the_spelling(sleeve: Path) -> None:
    ended = run("draft", sleeve, "--out", sleeve.parent / "out", "--initials", "monogram=ÅB")
    proof = ended.out.partition("Letters, to be proved\n")[2].splitlines()
    assert [line.split() for line in proof[:2]] == [
        ["owner", "back", "no", "letters", "yet", "stamped"],
        ["monogram", "cards", "ÅB", "strokes"],
    ]


def test_cutting_files_bear_letters_only_when_asked_and_dies_never(sleeve: Path) -> None:
    assert marked(drafted(sleeve)) == []
    assert marked(drafted(sleeve, "--engrave", "initials")) == [
        "sleeve-laser-everything.dxf",
        "sleeve-laser-lining.dxf",
    ]


def test_check_judges_the_letters_of_the_order(sleeve: Path) -> None:
    good = run("check", sleeve)
    assert good.status == 0
    assert "height of letters" in good.out
    small = run("check", sleeve, "--initials", "monogram=A very long name indeed")
    assert small.status == 0
    assert "look  height of letters" in small.out


@pytest.mark.parametrize(
    ("words", "status", "says"),
    [
        (
            ["--initials", "monogrm=A"],
            4,
            "--initials monogrm=A: there are no initials called 'monogrm'; did you mean 'monogram'?",
        ),
        (["--initials", "owner=ABCDEFG"], 4, "7 stamps in a row take 48 mm"),
        (["--initials", "monogram=漢"], 4, "U+6F22"),
        (["--initials", "monogram"], 2, "'monogram' is not NAME=VALUE"),
        (["--initials", "=A"], 2, "is not NAME=VALUE"),
        (["--initials", "owner=A", "--initials", "owner=B"], 2, "'owner' is set twice"),
        (["--engrave", "all"], 2, "none of none, initials"),
        (["--engrave", "initials", "--cut-face", "back"], 2, "the showing face"),
        (["--engrave", "initials", "--for", "die"], 2, "changes nothing in files for die"),
    ],
)
def test_what_cannot_be_lettered_is_refused(sleeve: Path, words: list[str], status: int, says: str) -> None:
    ended = run("draft", sleeve, "--out", sleeve.parent / "out", *words)
    assert ended.status == status
    assert says in " ".join(ended.err.split())
    assert not (sleeve.parent / "out").exists()


def test_a_file_without_initials_says_so(tmp_path: Path) -> None:
    ended = run("check", saved(tmp_path), "--initials", "monogram=A")
    assert ended.status != 0
    assert "there are no initials called 'monogram'; none is declared" in ended.err
