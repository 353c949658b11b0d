from __future__ import annotations

from pathlib import Path

import pytest

from patternforge.design.load import load_design
from patternforge.wallet.entered import Entered

DESIGNS = Path(__file__).parents[3] / "designs"


def ledger(name: str, **settings: str) -> dict[str, Entered]:
    path = DESIGNS / f"{name}.yaml"
    design = load_design(path.read_text(encoding="utf-8"), path.name, settings)
    return {each.name: each for each in design.entered}


@pytest.mark.parametrize(
    ("design", "name", "text"),
    [
        ("two-fold", "parameter margin", "3.5 mm"),
        ("two-fold", "fold 1.angle", "180"),
        ("two-fold", "load.notes", "1"),
        ("two-fold", "stitching.hole diameter", "1 mm"),
        ("two-fold", "part note divider.drop", "6 mm"),
        ("two-fold", "part note divider.holds note", "notes_held"),
        ("two-fold", "seam rim.margin", "margin"),
        ("turned-edge-two-fold", "part shell.turned top.overlap", "turn_in"),
        ("turned-edge-two-fold", "part left cards.skive 1.width", "2 * margin"),
        ("turned-edge-two-fold", "part lining.inside", "1 mm"),
        ("coin-pouch", "panel flap.declared width", "flap"),
        ("coin-pouch", "body.declared height", "width"),
        ("coin-pouch", "content coins.thickness", "18 mm"),
        ("coin-pouch", "fitting closure.at left", "13 mm"),
        ("one-piece-card-wallet", "face left pocket.reach", "pocket"),
        ("one-piece-card-wallet", "face left pocket.inset left", "2 mm"),
        ("one-piece-card-wallet", "room left cards.count", "cards"),
        ("one-piece-card-wallet", "tab left tab.width", "tab_width"),
        ("one-piece-card-wallet", "folded.ease", "ease"),
    ],
)
def test_what_was_entered_stands_under_the_name_of_its_size(design: str, name: str, text: str) -> None:
    entry = ledger(design)[name]
    assert entry.text == text
    line = (DESIGNS / f"{design}.yaml").read_text(encoding="utf-8").splitlines()[entry.line - 1]
    assert text in line or name.startswith("load.")


def test_names_in_arithmetic_lead_to_the_sizes_they_stand_for() -> None:
    assert ledger("strap-card-case")["parameter back_width"].of == (("card.length", "content card.length"),)
    assert ledger("two-fold")["seam rim.margin"].of == (("margin", "parameter margin"),)


def test_words_are_no_numbers() -> None:
    assert not {"body.panels", "panel left.declared width", "leather outer.tannage"} & ledger("two-fold").keys()


def test_a_setting_stands_in_the_place_of_what_the_file_says() -> None:
    entry = ledger("two-fold", margin="4 mm")["parameter margin"]
    assert (entry.text, entry.setting) == ("4 mm", "margin")


def test_two_designs_are_the_same_whatever_their_lines_are() -> None:
    text = (DESIGNS / "two-fold.yaml").read_text(encoding="utf-8")
    one, other = load_design(text, "a.yaml"), load_design(f"# remark\n{text}", "a.yaml")
    assert one.entered != other.entered
    assert one.leathers == other.leathers
