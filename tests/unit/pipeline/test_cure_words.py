"""Suggestions read as plain lines with the option to type."""

from __future__ import annotations

from patternforge.fit.findings import Verdict
from patternforge.pipeline.cure_words import cure_lines, cut_off_line, drafting_lines, whole_lines
from patternforge.pipeline.likeness import Less
from patternforge.pipeline.suggestion import Suggestion, Suggestions
from tests.unit.fit.found import reading

FOUND = reading(Verdict.NO, "hole rim to edge", "shell, rim 3")
LOOKS = tuple(reading(Verdict.LOOK, "stack", where) for where in ("rim", "top", "side"))
HEIGHT = Suggestion("height", 92.0, 95.5, 1, "mm", "95.5mm", 0.1)
SLOTS = Suggestion("slots", 3.0, 2.0, 0, "", "2", 0.3, (Less("card", 6, 4),), LOOKS)
FOOT = Suggestion("foot", 22.69, 24.0, 1, "mm", "24.0mm", 0.1, (), LOOKS[:1])


def suggested(*cures: Suggestion, is_cut_off: bool = False) -> Suggestions:
    return Suggestions({(FOUND.what, FOUND.where): cures}, cures[:1], 200, is_cut_off)


def test_each_change_is_a_line_with_the_option_that_sets_it() -> None:
    assert cure_lines(suggested(HEIGHT, SLOTS, FOOT), FOUND) == [
        "height 92.0 -> 95.5 mm cures it: --set height=95.5mm",
        "slots 3 -> 2 cures it: --set slots=2",
        "   then it holds 4 x card, not 6",
        "   then look at stack, rim; stack, top; and 1 more",
        "foot 22.69 -> 24.0 mm cures it: --set foot=24.0mm",
        "   then look at stack, rim",
    ]


def test_what_was_not_asked_about_has_no_line() -> None:
    assert cure_lines(suggested(HEIGHT), LOOKS[0]) == []


def test_that_nothing_cures_it_is_said_and_how_far_was_searched_if_not_to_the_end() -> None:
    assert cure_lines(suggested(), FOUND) == ["no single parameter cures it within its range"]
    assert cure_lines(suggested(is_cut_off=True), FOUND) == [
        "no single parameter cures it within its range in the 200 drafts that were tried"
    ]


def test_the_whole_the_draft_and_the_end_of_the_search_have_lines_of_their_own() -> None:
    found = suggested(HEIGHT, is_cut_off=True)
    said = "height 92.0 -> 95.5 mm leaves nothing that would spoil the leather: --set height=95.5mm"
    assert whole_lines(found) == [said]
    assert drafting_lines(found) == ["height 92.0 -> 95.5 mm lets it be drafted: --set height=95.5mm"]
    assert len(cut_off_line(found)) == 1
    assert cut_off_line(suggested(HEIGHT)) == []
