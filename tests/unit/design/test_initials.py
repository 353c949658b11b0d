"""Initials and hidden hardware as they are resolved, and letters given beside the file."""

from __future__ import annotations

import pytest

from patternforge.design import load_design
from patternforge.errors import DesignError
from patternforge.leather.hardware import Setting
from patternforge.wallet.spec import Edge, Initials, Spot, Stamp
from tests.unit.design.good_letters import LETTERS


def texts(**given: str) -> list[str]:
    return [each.text for each in load_design(LETTERS, "cover.yaml", {}, given).initials]


def test_initials_are_resolved_with_the_line_they_begin_on() -> None:
    line = LETTERS[: LETTERS.index("- initials: monogram")].count("\n") + 1
    place = Spot(0, (Edge.RIGHT, 30.0), (Edge.BOTTOM, 20.0))
    strokes = Initials("monogram", "ANW", "shell", place, 24.0, 9.0, None, 4.0, Edge.TOP, line)
    stamped = Initials("owner", "7 BÉ", "lining", Spot(1), 30.0, 10.0, Stamp(6.0, 8.0, 0.5), 3.0, None, line + 9)
    assert load_design(LETTERS, "cover.yaml").initials == (strokes, stamped)


def test_letters_and_the_room_between_stamps_may_be_left_out() -> None:
    text = LETTERS.replace('    text: "7 BÉ"\n', "").replace(", spacing: 0.5 mm", "")
    (_, owner) = load_design(text, "cover.yaml").initials
    assert (owner.text, owner.stamp) == ("", Stamp(6.0, 8.0, 1.0))
    quoted = LETTERS.replace('"7 BÉ"', "''")
    assert [each.text for each in load_design(quoted, "cover.yaml").initials] == ["ANW", ""]


def test_letters_given_beside_the_file_take_the_place_of_its_own() -> None:
    assert texts() == ["ANW", "7 BÉ"]
    assert texts(monogram="Ø 2", owner="") == ["Ø 2", ""]
    # What would be a truth value, a blank or a comment in the file is a text here.
    assert texts(monogram="NO", owner=" # ") == ["NO", "#"]
    assert texts(monogram="~") == ["~", "7 BÉ"]


def test_a_text_may_be_given_for_initials_that_have_none() -> None:
    text = LETTERS.replace("    text: ANW\n", "")
    assert load_design(text, "cover.yaml", {}, {"monogram": "F"}).initials[0].text == "F"


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        (
            "monogramm",
            "A",
            r"^--initials monogramm=A: there are no initials called 'monogramm'; did you mean 'monogram'\?$",
        ),
        ("owner", "ABCDE", r"^--initials owner=ABCDE: 5 stamps in a row take 32 mm.* wider, the spacing less"),
        ("monogram", "Ж", r"^--initials monogram=Ж: .*U\+0416 CYRILLIC CAPITAL LETTER ZHE\); spell it"),
        ("monogram", "A" * 201, "too long"),
        ("monogram", "A\nB", "too long"),
    ],
)
def test_letters_that_do_not_suit_are_a_fault_beside_the_file(name: str, text: str, says: str) -> None:
    with pytest.raises(DesignError, match=says) as caught:
        load_design(LETTERS, "cover.yaml", {}, {name: text})
    assert len(caught.value.faults) == 1


def test_letters_for_a_file_whose_initials_cannot_be_read_are_one_fault_among_its_own() -> None:
    with pytest.raises(DesignError) as caught:
        load_design(LETTERS.replace("initials:\n", "initials: no\n_:\n", 1), "cover.yaml", {}, {"owner": "A"})
    assert any("there are no initials called 'owner'" in str(fault) for fault in caught.value.faults)
    assert len(caught.value.faults) > 1


def test_hidden_hardware_has_no_holes_and_its_own_thickness() -> None:
    (magnet,) = load_design(LETTERS, "cover.yaml").fittings
    assert (magnet.setting, magnet.holes, magnet.reach, magnet.thickness) == (Setting.COVERED, (0.0, 0.0), 5.0, 1.5)
    (usual,) = load_design(LETTERS.replace("    thickness: 1.5 mm\n", ""), "cover.yaml").fittings
    assert usual.thickness == 1.0
    (wider,) = load_design(LETTERS.replace("thickness: 1.5 mm", "cap: 12 mm"), "cover.yaml").fittings
    assert wider.reach == 6.0
