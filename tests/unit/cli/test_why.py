from __future__ import annotations

from pathlib import Path

import pytest

from patternforge.cli.branches import Tree, value_told
from patternforge.reasons.reason import How, leaf, less, made, measured, number, same
from tests.unit.cli.running import run

DESIGNS = Path(__file__).parents[3] / "designs"
TWO_FOLD = DESIGNS / "two-fold.yaml"


def test_without_a_name_every_size_is_listed_in_groups() -> None:
    ended = run("why", TWO_FOLD)
    assert ended.status == 0
    heads = [line for line in ended.out.splitlines() if line and not line.startswith(" ")]
    assert heads[:5] == ["Finished size", "Pieces", "Panels", "Folds", "Parts"]
    assert "  left, right: width, x0, x1, stack" in ended.out
    assert max(map(len, ended.out.splitlines())) <= 100


def test_a_size_is_told_down_to_the_standard_behind_it() -> None:
    ended = run("why", TWO_FOLD, "left.width")
    assert ended.status == 0
    assert ended.out.splitlines()[:3] == [
        "left.width = 101.38 mm, the sum of",
        "  card: across the mouth = 85.60 mm = card.length [1]",
        "  card: 3 x thickness = 2.28 mm = 3 x card.thickness 0.76 mm [1]",
    ]
    assert "[1] catalogue item id1, bank card, ID-1: ISO/IEC 7810" in ended.out
    assert "two-fold.yaml:13, room across a card beyond its taut path" in ended.out


def test_a_setting_is_told_as_one() -> None:
    ended = run("why", TWO_FOLD, "rim.margin", "--set", "margin=4mm")
    assert "rim.margin = 4.00 mm = margin [1]" in ended.out
    assert "[1] --set margin=4mm, stitch line to edge" in ended.out


def test_the_beginning_of_many_names_lists_them_with_their_values() -> None:
    ended = run("why", TWO_FOLD, "fold 1")
    assert ended.status == 0
    assert "fold 1.shell.gap" in ended.out
    assert "21.17 mm" in ended.out


def test_a_name_that_two_sizes_bear_tells_both() -> None:
    ended = run("why", DESIGNS / "coin-pouch.yaml", "side.thickness")
    assert "piece side.thickness = 0.80 mm = leather side.thickness [1]" in ended.out
    assert "\nleather side.thickness = 0.80 mm [1]" in ended.out


@pytest.mark.parametrize(
    ("word", "advice"), [("rim.thred", "did you mean 'rim.thread'?"), ("zzzz", "leave the name")]
)
def test_an_unknown_name_is_answered_with_the_nearest(word: str, advice: str) -> None:
    ended = run("why", TWO_FOLD, word)
    assert ended.status == 2
    assert advice in " ".join(ended.err.split())


@pytest.mark.parametrize(
    ("design", "name", "said"),
    [
        ("one-piece-card-wallet", "left tab.slit", "left tab.slit = 23.10 mm, the sum of"),
        ("coin-pouch", "side.height", "FAA airframe handbook"),
        ("coin-pouch", "closure.second half from the left", "closure.second half from the left = 33.00 mm"),
        ("three-fold", "closed.thickness", "closed.thickness = 15.77 mm, the sum of"),
        ("turned-edge-two-fold", "shell.turned left.allowance", "shell.turned left.overlap"),
    ],
)
def test_every_kind_of_wallet_tells_its_sizes(design: str, name: str, said: str) -> None:
    ended = run("why", DESIGNS / f"{design}.yaml", name)
    assert ended.status == 0
    assert said in ended.out


def test_a_design_with_faults_is_refused_as_everywhere(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text("design: A", encoding="utf-8")
    ended = run("why", tmp_path / "a.yaml")
    assert ended.status == 4
    assert ended.out == ""


CARD = leaf("card.length", 85.6, How.CATALOGUE, source="ISO/IEC 7810")
EASE = leaf("ease", 2.5, How.ENTERED, source="a.yaml:3")


def test_what_is_taken_off_is_told_as_less() -> None:
    assert list(Tree().lines(made("clear", How.SUM, (CARD, less(EASE)))))[-1] == "  less ease = 2.50 mm [2]"


def test_of_the_largest_the_others_are_named_and_only_it_is_followed() -> None:
    room = made("room", How.SUM, (CARD, EASE))
    lines = list(Tree().lines(made("radius", How.LARGEST, (EASE, room))))
    assert lines == [
        "radius = 88.10 mm, larger than ease 2.50 mm: it is",
        "  room = 88.10 mm, the sum of",
        "    card.length = 85.60 mm [1]",
        "    ease = 2.50 mm [2]",
    ]


def test_factors_stand_in_one_line_without_the_ones_nobody_chose() -> None:
    one = leaf("one", 1.0, How.DEFAULT, unit="")
    product = made("stack", How.PRODUCT, (leaf("", 3.0, How.COUNTED, unit=""), one, CARD))
    assert list(Tree().lines(product)) == ["stack = 256.80 mm = 3 x card.length 85.60 mm [1]"]


def test_what_was_told_is_not_told_again_and_a_source_keeps_its_number() -> None:
    room = made("room", How.SUM, (CARD, EASE))
    tree = Tree()
    lines = list(tree.lines(made("both", How.SUM, (room, room))))
    assert lines[-1] == "  room = 88.10 mm, as above"
    assert tree.sources == ["  [1] ISO/IEC 7810", "  [2] a.yaml:3"]


def test_what_comes_to_nothing_is_not_followed() -> None:
    nothing = made("hollow", How.SUM, (EASE, less(EASE)))
    assert list(Tree().lines(made("all", How.SUM, (CARD, nothing))))[-1] == "  hollow = 0.00 mm"


def test_values_bear_their_units() -> None:
    assert value_told(leaf("angle", 180.0, How.ENTERED, "degrees")) == "180.00 degrees"
    assert value_told(number(0.5)) == "0.5"
    assert value_told(measured("slot", 0.0, words="the piece has none")) == "none"
    assert value_told(same("area", leaf("a", 12.0, How.MEASURED, "mm2"))) == "12.00 mm2"
