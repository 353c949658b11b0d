from __future__ import annotations

import pytest

from patternforge.design.load import load_design
from patternforge.reasons.reason import How
from patternforge.reasons.told import Reasons, reasons_of
from patternforge.wallet.assemble import drafted
from tests.designs_built import two_fold

SLEEVE = """\
design: Card sleeve
parameters:
  margin: {value: 3.5 mm, from: 2 mm, to: 6 mm, meaning: stitch line to edge}
  room: {value: margin - 1 mm}
leathers:
  outer: {thickness: 1.2 mm}
  inner: {thickness: 2-3 oz, neutral: 0.4}
contents:
  card: id1
  ticket: {item: id1, thickness: 0.3 mm}
body: {height: 75 mm, panels: {back: card.length + 2 * margin + 6 mm}}
stitching: {pitch: 8 per French inch}
parts:
  - {layer: shell, leather: outer}
  - {bank: cards, on: back, leather: inner, item: card, slots: 2, step: 13 mm, show: 14 mm, ease: room}
  - {pocket: tickets, on: back, leather: inner, item: ticket, depth: 40 mm}
seams:
  - {seam: rim, along: [left, bottom, right], margin: margin}
"""


def reasons(**settings: str) -> Reasons:
    return reasons_of(drafted(load_design(SLEEVE, "folder/sleeve.yaml", settings)))


@pytest.mark.parametrize(
    ("name", "how", "value", "source"),
    [
        ("margin", How.ENTERED, 3.5, "sleeve.yaml:3, stitch line to edge"),
        ("outer.thickness", How.ENTERED, 1.2, "sleeve.yaml:6"),
        ("inner.neutral", How.ENTERED, 0.4, "sleeve.yaml:7"),
        ("ticket.thickness", How.ENTERED, 0.3, "sleeve.yaml:10"),
        ("body.declared height", How.ENTERED, 75.0, "sleeve.yaml:11"),
        ("stitching.pitch", How.ENTERED, 27.07 / 8, "sleeve.yaml:12"),
        ("cards.slots", How.ENTERED, 2.0, "sleeve.yaml:15"),
    ],
)
def test_a_value_entered_tells_its_line_and_a_parameter_its_meaning(
    name: str, how: How, value: float, source: str
) -> None:
    leaf = reasons()[name]
    assert (leaf.how, leaf.source, leaf.parts) == (how, source, ())
    assert leaf.value == pytest.approx(value)


def test_a_value_set_beside_the_file_says_so() -> None:
    told = reasons(margin="4 mm")
    leaf = told["margin"]
    assert (leaf.how, leaf.value, leaf.source) == (How.SET, 4.0, "--set margin=4 mm, stitch line to edge")
    assert told["rim.margin"].parts == (leaf,)


def test_arithmetic_stands_as_it_was_written_with_its_names_as_parts() -> None:
    told = reasons()
    width = told["back.declared width"]
    assert (width.how, width.words) == (How.WRITTEN, "card.length + 2 * margin + 6 mm")
    assert [(part.name, part.value) for part in width.parts] == [("card.length", 85.6), ("margin", 3.5)]
    assert told["cards.ease"].parts == (told["room"],)
    assert (told["room"].words, told["room"].value) == ("margin - 1 mm", 2.5)


def test_a_range_of_thickness_is_drafted_for_its_middle() -> None:
    thickness = reasons()["inner.thickness"]
    assert thickness.how is How.QUOTIENT
    assert [end.value for end in thickness.parts[0].parts] == pytest.approx([2 * 25.4 / 64, 3 * 25.4 / 64])


def test_a_size_of_the_catalogue_names_its_standard() -> None:
    for leaf in (reasons()["card.length"], reasons()["ticket.length"]):
        assert leaf.how is How.CATALOGUE
        assert "id1" in leaf.source
        assert "ISO/IEC 7810" in leaf.source


@pytest.mark.parametrize(
    ("name", "value", "words"),
    [
        ("outer.neutral", 0.5, "measure yours with a test strip"),
        ("body.headroom", 3.0, "common practice, no source"),
        ("load.cards", 1.0, "full"),
        ("tickets.ease", 2.5, "common practice, no source"),
    ],
)
def test_what_nobody_entered_is_the_programs_own_and_says_why(name: str, value: float, words: str) -> None:
    leaf = reasons()[name]
    assert (leaf.how, leaf.value) == (How.DEFAULT, value)
    assert leaf.source.startswith("the program's own: ")
    assert words in leaf.source


def test_a_seam_without_stitching_of_its_own_follows_that_of_the_design() -> None:
    told = reasons()
    assert told["rim.pitch"].parts == (told["stitching.pitch"],)


def test_a_size_that_moved_to_whole_stitches_is_what_was_asked_for_and_how_far_it_moved() -> None:
    step = reasons()["cards.step"]
    asked, moved = step.parts
    assert (asked.value, asked.source) == (13.0, "sleeve.yaml:15")
    assert (moved.name, moved.how) == ("to whole stitches", How.COUNTED)
    assert asked.value + moved.value == pytest.approx(step.value)


def test_a_design_that_stands_in_no_file_says_so() -> None:
    leaf = reasons_of(drafted(two_fold()))["left cards.ease"]
    assert (leaf.how, leaf.source) == (How.ENTERED, "given to the program, in no file")
