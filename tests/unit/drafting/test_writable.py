"""Texts that no stroke letters can draw are found before anything is drawn."""

from __future__ import annotations

from pathlib import Path

import pytest

from patternforge.drafting.writable import unwritable
from patternforge.drawing.alphabet import glyph_of
from patternforge.pipeline.stages import judged
from tests.unit.small_designs import SLEEVE, saved


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("Small sleeve", "右", ["sleeve.yaml: the title '右' cannot be drawn on paper"]),
        ("revision: B", "revision: 右", ["sleeve.yaml: the revision '右' cannot be drawn on paper"]),
        ("name: Goat", "name: 右", ["sleeve.yaml: leather 'lining', the name '右' cannot be drawn on paper"]),
        ("layer: back", "layer: 右", ["sleeve.yaml:12: the piece '右' cannot be drawn on paper"]),
        ("Small sleeve", "Étui für Łukasz, 12 × 3½ €", []),
        ("Small sleeve", "Sleeve", []),
    ],
)
def test_each_text_that_cannot_be_drawn_is_told_with_what_bears_it(
    tmp_path: Path, old: str, new: str, told: list[str]
) -> None:
    pattern = judged(saved(tmp_path, SLEEVE.replace(old, new))).pattern
    assert [line.split(": no stroke")[0] for line in unwritable(pattern)] == told


def test_a_fitting_that_cannot_be_named_is_told(tmp_path: Path) -> None:
    ready = Path(__file__).parents[3] / "designs" / "strap-card-case.yaml"
    text = ready.read_text(encoding="utf-8").replace("fitting: closure", "fitting: 右")
    faults = unwritable(judged(saved(tmp_path, text)).pattern)
    assert [line.split(" cannot")[0].split(":", 2)[2] for line in faults] == [" the fitting '右'"]


def test_a_face_that_cannot_be_named_is_told(tmp_path: Path) -> None:
    ready = Path(__file__).parents[3] / "designs" / "one-piece-coin-envelope.yaml"
    text = ready.read_text(encoding="utf-8").replace("- face: lid", "- face: 右").replace("wing, lid]", "wing, 右]")
    faults = unwritable(judged(saved(tmp_path, text.replace("on: lid", "on: 右"))).pattern)
    assert [line.split(" cannot")[0].split(":", 2)[2] for line in faults] == [" the face '右'"]


def test_all_of_printable_ascii_can_be_drawn() -> None:
    assert all(glyph_of(letter).width > 0 for letter in map(chr, range(32, 127)))
