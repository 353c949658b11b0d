"""``draft --keep``: pieces made earlier, judged in other leather and written as they were."""

from __future__ import annotations

import json
from math import pi
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from patternforge.drafting.schema import pattern_schema
from tests.unit.cli.running import run

DESIGNS = Path(__file__).parents[3] / "designs"
STRAP = DESIGNS / "key-strap.yaml"


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The files of the key strap as a press owner has them, in outer leather of 1.4 mm."""
    out = tmp_path_factory.mktemp("made")
    assert run("draft", STRAP, "--for", "die", "--out", out).status == 0
    return out / "key-strap"


def cutting_files(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.rglob("*.dxf"))}


@pytest.mark.parametrize("outer", ["1.4mm", "1.7mm"])
def test_kept_pieces_are_written_byte_by_byte_whatever_the_leather(made: Path, outer: str, tmp_path: Path) -> None:
    keep = ("--keep", made / "pattern.json")
    assert run("draft", STRAP, "--for", "die", "--set", f"outer={outer}", "--out", tmp_path / "anew").status == 0
    ended = run("draft", STRAP, "--for", "die", "--set", f"outer={outer}", *keep, "--out", tmp_path / "kept")
    assert ended.status == 0
    kept = cutting_files(tmp_path / "kept" / "key-strap")
    assert kept == cutting_files(made)
    assert (kept == cutting_files(tmp_path / "anew" / "key-strap")) is (outer == "1.4mm")


def test_kept_pieces_are_judged_in_the_new_leather_and_what_would_change_is_told(made: Path, tmp_path: Path) -> None:
    words = ("--for", "die", "--set", "outer=1.8mm", "--keep", made / "pattern.json")
    ended = run("draft", STRAP, *words, "--out", tmp_path)
    assert ended.status == 0
    said = " ".join(ended.out.split())
    assert "drafted for outer 1.40 mm, lining 0.70 mm: strap, lining. None is drafted anew." in said
    assert "Judged in outer 1.80 mm, lining 0.70 mm." in said
    assert "instead: New die, new template (1) strap" in said
    assert "outer 1.80 mm 4.5 oz" in said  # the leather to buy
    told = json.loads((tmp_path / "key-strap" / "pattern.json").read_text("utf-8"))
    measured = {(f["what"], f["where"]): (f["measured"], f["verdict"]) for f in told["findings"]}
    off, verdict = measured["edge mismatch, closed", "strap at fold 1"]
    assert off == pytest.approx(-pi * 0.2, abs=1e-6)
    assert verdict == "look"
    assert [leather["drafted_thickness"] for leather in told["kept_for"]] == [1.8, 0.7]
    assert [leather["drafted_thickness"] for leather in told["inputs"]["leathers"]] == [1.4, 0.7]
    assert list(Draft202012Validator(pattern_schema()).iter_errors(told)) == []


def test_what_was_kept_can_be_kept_again_and_has_a_window(made: Path, tmp_path: Path) -> None:
    words = ("draft", STRAP, "--for", "die", "--set", "outer=1.7mm", "--keep")
    for keep, out in ((made, "first"), (tmp_path / "first" / "key-strap", "second")):
        assert run(*words, keep / "pattern.json", "--out", tmp_path / out).status == 0
    first, second = (tmp_path / out / "key-strap" / "pattern.json" for out in ("first", "second"))
    assert first.read_bytes() == second.read_bytes()
    assert "outer 1.70 mm 1.09 to 1.71 mm 0.45 to 2.35 mm" in " ".join(run("window", second).out.split())


def test_leather_changed_in_the_design_file_itself_is_leather_changed(made: Path, tmp_path: Path) -> None:
    design = tmp_path / "key-strap.yaml"
    text = STRAP.read_text("utf-8")
    design.write_text(text.replace("outer: {thickness: 1.4 mm", "outer: {thickness: 1.65 mm"), "utf-8")
    ended = run("draft", design, "--for", "die", "--keep", made / "pattern.json", "--out", tmp_path)
    assert ended.status == 0
    assert "Judged in outer 1.65 mm" in " ".join(ended.out.split())
    assert cutting_files(tmp_path / "key-strap") == cutting_files(made)


def test_values_set_for_the_pieces_stay_set(tmp_path: Path) -> None:
    words = ("draft", DESIGNS / "tapered-key-strap.yaml", "--for", "die")
    assert run(*words, "--set", "strap=90mm", "--out", tmp_path / "made").status == 0
    keep = tmp_path / "made" / "tapered-key-strap" / "pattern.json"
    assert run(*words, "--set", "main=2.2mm", "--keep", keep, "--out", tmp_path / "kept").status == 0
    assert cutting_files(tmp_path / "kept") == cutting_files(tmp_path / "made")


@pytest.mark.parametrize(
    ("design", "words", "status", "said"),
    [
        ("key-strap", ("--set", "outer=2.5mm"), 6, "does not fit with its pieces kept as they are"),
        (
            "key-strap",
            ("--set", "ring_bar=4mm"),
            9,
            "drafts other pieces even in the leathers that these are for (strap",
        ),
        ("coin-pouch", (), 9, "its pieces are of lining, outer, the design is of outer, side"),
    ],
)
def test_what_cannot_be_kept_is_refused_and_nothing_is_written(
    design: str, words: tuple[str, ...], status: int, said: str, made: Path, tmp_path: Path
) -> None:
    path = DESIGNS / f"{design}.yaml"
    ended = run("draft", path, *words, "--keep", made / "pattern.json", "--out", tmp_path)
    assert (ended.status, ended.out) == (status, "")
    assert said in ended.err
    assert list(tmp_path.iterdir()) == []
