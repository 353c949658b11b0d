"""``compare`` and ``window``."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.unit.cli.running import run

DESIGNS = Path(__file__).parents[3] / "designs"
TWO_FOLD = DESIGNS / "two-fold.yaml"


@pytest.fixture(scope="module")
def pattern(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The ``pattern.json`` of the two-fold wallet in outer leather of 1.3 mm."""
    out = tmp_path_factory.mktemp("made")
    assert run("draft", TWO_FOLD, "--for", "die", "--set", "outer=1.3mm", "--out", out).status == 0
    return out / "two-fold" / "pattern.json"


def test_a_design_at_two_leathers_is_told_and_drawn(tmp_path: Path) -> None:
    ended = run("compare", TWO_FOLD, "--set", "outer=1.6mm", "--out", tmp_path)
    assert ended.status == 0
    lines = [line.strip() for line in ended.out.splitlines()]
    assert "outer  1.20 mm -> 1.60 mm" in lines
    assert lines[lines.index("New die, new template (1)") + 1] == "shell"
    assert "right half moves 0.63 mm right" in lines
    assert any(line.startswith("Die and template stay (7): note divider, left cards 3") for line in lines)
    assert "0.01 mm or less counts as the same" in ended.out
    root = ElementTree.parse(tmp_path / "two-fold-compare" / "two-fold-compare.svg").getroot()
    pieces = [group.attrib["id"] for group in root if group.attrib.get("class") == "piece"]
    assert pieces == ["piece-heading", "piece-shell"]


def test_what_was_made_is_held_against_the_design_as_it_is_now(pattern: Path, tmp_path: Path) -> None:
    ended = run("compare", pattern, TWO_FOLD, "--out", tmp_path)
    assert ended.status == 0
    assert "outer  1.30 mm -> 1.20 mm" in ended.out
    assert "right half moves 0.16 mm left" in ended.out  # pi * 0.05 mm


def test_what_did_not_change_has_no_picture(pattern: Path, tmp_path: Path) -> None:
    ended = run("compare", pattern, TWO_FOLD, "--set", "outer=1.3mm", "--out", tmp_path)
    assert ended.status == 0
    assert "Nothing changes: all 8 dies and templates stay." in ended.out
    assert list(tmp_path.iterdir()) == []


def test_what_was_made_is_held_against_itself_in_another_leather(pattern: Path, tmp_path: Path) -> None:
    ended = run("compare", pattern, "--set", "outer=1.7mm", "--out", tmp_path)
    assert ended.status == 0
    assert "right half moves 0.63 mm right" in ended.out
    assert (tmp_path / "two-fold-compare" / "two-fold-compare.svg").is_file()


@pytest.mark.parametrize(
    ("words", "status", "said"),
    [
        ((TWO_FOLD, DESIGNS / "coin-pouch.yaml"), 9, "no piece of the same name"),
        ((TWO_FOLD,), 2, "give a second file"),
        ((TWO_FOLD, "--set", "outr=2mm"), 4, "did you mean 'outer'?"),
        ((TWO_FOLD, DESIGNS / "none.json"), 9, "there is no such file"),
        ((TWO_FOLD, DESIGNS / "none.yaml"), 4, "there is no such file"),
    ],
)
def test_what_cannot_be_compared_is_refused_and_nothing_is_written(
    words: tuple[object, ...], status: int, said: str, tmp_path: Path
) -> None:
    ended = run("compare", *words, "--out", tmp_path)
    assert (ended.status, ended.out) == (status, "")
    assert said in ended.err
    assert list(tmp_path.iterdir()) == []


def test_the_window_of_a_design_is_a_row_for_each_leather_and_what_ends_it() -> None:
    ended = run("window", DESIGNS / "tapered-key-strap.yaml")
    assert ended.status == 0
    lines = [" ".join(line.split()) for line in ended.out.splitlines()]
    assert "main 2.00 mm 0.20 to 3.00 mm 0.20 to 4.50 mm" in lines
    assert (
        "fit ends above 4.50 mm thickest stack sewn through, loop seam: 9.02 mm, tolerable at most 9.00 mm" in lines
    )


def test_the_window_of_what_was_made_lies_round_the_leather_it_was_made_for(pattern: Path) -> None:
    ended = run("window", pattern)
    assert ended.status == 0
    assert "outer 1.30 mm 0.99 to 1.61 mm" in " ".join(ended.out.split())


def test_pieces_that_the_program_would_draft_otherwise_now_are_not_judged(pattern: Path, tmp_path: Path) -> None:
    told = json.loads(pattern.read_text("utf-8"))
    told["pieces"][0]["outline"][2][0] += 0.05
    moved = tmp_path / "pattern.json"
    moved.write_text(json.dumps(told), "utf-8")
    ended = run("window", moved)
    assert (ended.status, ended.out) == (9, "")
    assert "drafts other pieces from the same design (shell)" in ended.err


def test_a_file_that_does_not_tell_its_source_has_no_window(pattern: Path, tmp_path: Path) -> None:
    told = {**json.loads(pattern.read_text("utf-8")), "source": None}
    bare = tmp_path / "pattern.json"
    bare.write_text(json.dumps(told), "utf-8")
    ended = run("window", bare)
    assert (ended.status, ended.out) == (9, "")
    assert "does not tell what it was drafted from" in ended.err
