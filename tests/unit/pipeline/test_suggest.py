"""What is a cure and what is not; what is left out, held less and looked at with it; where a search ends."""

from __future__ import annotations

import pytest

from patternforge.errors import DraftError
from patternforge.fit.findings import Finding, Verdict
from patternforge.pipeline.ladder import Ladder
from patternforge.pipeline.likeness import Less, Tally, Thing, tallies
from patternforge.pipeline.search import searched
from patternforge.pipeline.suggest import cure_of, drafting_suggestions, suggestions
from patternforge.pipeline.suggestion import Suggestion, Suggestions, best_of, suggestion
from patternforge.pipeline.trial import Asked, Trial, Trials, first_trial
from tests.unit.fit.found import reading
from tests.unit.small_designs import LOOK, MISFIT, SLEEVE

# Two pockets in a sleeve whose height is given: the card of the second would stand out of its top.
LOW = (
    SLEEVE.replace("slots: 1", "slots: slots")
    .replace("height: fit", "height: height")
    .replace("step: 12 mm", "step: step")
    .replace(
        "leathers:",
        "  slots: {value: 2, from: 1, to: 3, meaning: pockets}\n"
        "  height: {value: 62 mm, from: 62 mm, to: 63 mm, meaning: height}\n"
        "  step: {value: 12 mm, from: 11 mm, to: 13 mm, meaning: rise}\n"
        "leathers:",
    )
)
TOP = "item's top below the edge"


def asked(text: str, **settings: str) -> Asked:
    return Asked(text, "sleeve.yaml", settings)


def wanting(of: Asked, verdict: Verdict = Verdict.NO) -> list[Finding]:
    return [found for found in first_trial(of).findings if found.verdict is verdict]


def cures(of: Asked, what: str) -> tuple[Suggestion, ...]:
    found = suggestions(of, wanting(of))
    (only,) = (answer for (measured, _), answer in found.of.items() if measured == what)
    return only


def test_what_no_parameter_cures_has_no_suggestion_and_all_of_its_range_was_tried() -> None:
    sleeve = asked(MISFIT)
    (spoiled,) = wanting(sleeve)
    found = suggestions(sleeve, [spoiled])
    assert found == Suggestions({(spoiled.what, spoiled.where): ()}, (), found.drafts, False)
    assert found.drafts >= 8


def test_a_pocket_is_left_out_only_if_nothing_else_helps_and_it_is_said() -> None:
    (only,) = cures(asked(LOW), TOP)
    assert (only.parameter, only.text) == ("slots", "1")
    assert only.less == (Less("card", 2, 1),)
    (other,) = cures(asked(LOW.replace("to: 63 mm", "to: 90 mm")), TOP)
    assert (other.parameter, other.less) == ("height", ())


def after(*things: Thing, **tally: Tally) -> Trial:
    """A draft with these things in it; tallies of the measure 'gap' by place."""
    return Trial(spots={("gap", place): each for place, each in tally.items()}, things=frozenset(things))


@pytest.mark.parametrize(
    ("trial", "is_cured"),
    [
        (after(("flap",), ("back",), flap=Tally()), True),
        (after(("flap",), ("back",), flap=Tally(0, 1)), False),
        (after(("flap",), ("back",)), True),
        (after(("back",)), True),
        (after(("flap",)), False),
        (after(("flap",), flap=Tally()), True),
    ],
    ids=[
        "good",
        "looked at",
        "not told, all there",
        "its piece left out",
        "not told, another left out",
        "good, less",
    ],
)
def test_a_finding_that_is_not_told_is_cured_only_if_all_is_there_or_its_own_piece_is_gone(
    trial: Trial, is_cured: bool
) -> None:
    before = after(("flap",), ("back",), flap=Tally(1, 1))
    assert cure_of(before, ("gap", "flap"), Verdict.NO)(trial) is is_cured


def test_a_look_is_not_cured_by_another_look() -> None:
    before = after(flap=Tally(0, 1))
    assert cure_of(before, ("gap", "flap"), Verdict.LOOK)(after(flap=Tally(), back=Tally()))
    assert not cure_of(before, ("gap", "flap"), Verdict.LOOK)(after(flap=Tally(), back=Tally(0, 1)))


def told(**verdicts: Verdict) -> Trial:
    """A draft with a finding of this verdict at each place."""
    findings = tuple(reading(verdict, "gap", place) for place, verdict in verdicts.items())
    return Trial(findings, tallies(findings))


def test_to_be_looked_at_is_what_was_good_or_spoiled_and_wants_a_look_now() -> None:
    no, look, good = Verdict.NO, Verdict.LOOK, Verdict.GOOD
    before = told(cured=no, eased=no, still=no, known=look, new=good, fine=good)
    later = told(cured=good, eased=look, still=no, known=look, new=look, fine=good)
    change = suggestion(Ladder(asked(SLEEVE).design().parameters[0]), 1, before, later)
    assert [found.where for found in change.looks] == ["eased", "new"]


def test_a_draft_that_spoils_what_was_good_or_is_refused_counts_for_nothing() -> None:
    sleeve = asked(SLEEVE.replace("from: 2.5 mm", "from: 0.3 mm"))
    assert not wanting(sleeve)
    assert wanting(asked(sleeve.text, margin="0.5mm"))
    trials = Trials(sleeve, first_trial(sleeve), allowed=9)
    assert trials.of("margin", "0.5mm") is None
    assert trials.of("margin", "9mm") is None
    assert trials.of("margin", "3.5mm") is not None
    assert not trials.is_cut_off


def test_nothing_is_suggested_for_a_wallet_that_fits() -> None:
    assert suggestions(asked(SLEEVE), []) == Suggestions({}, (), 0, False)


def test_what_wants_a_look_is_cured_without_another_look() -> None:
    text = LOOK.replace("1.8 mm", "seam").replace(
        "leathers:", "  seam: {value: 1.8 mm, from: 1 mm, to: 4 mm, meaning: thickest seam}\nleathers:"
    )
    sleeve = asked(text)
    (looked,) = wanting(sleeve, Verdict.LOOK)
    (only,) = suggestions(sleeve, [looked]).of[looked.what, looked.where]
    assert (only.parameter, only.text, only.looks) == ("seam", "2.0mm", ())


def test_the_search_ends_when_its_drafts_are_spent_and_says_so() -> None:
    sleeve = asked(LOW.replace("to: 63 mm", "to: 90 mm"))
    trials = Trials(sleeve, first_trial(sleeve), allowed=5)
    ladders = [Ladder(parameter) for parameter in sleeve.design().parameters]
    assert searched(ladders, trials, [lambda after: False]) == [()]
    assert (len(trials.made), trials.is_cut_off) == (5, True)


def test_one_draft_serves_all_findings() -> None:
    sleeve = asked(SLEEVE)
    ladders = [Ladder(parameter) for parameter in sleeve.design().parameters]

    def drafts(count: int) -> int:
        trials = Trials(sleeve, Trial(), allowed=200)
        searched(ladders, trials, [lambda after: False] * count)
        return len(trials.made)

    assert drafts(1) == drafts(4) > 0


def change(parameter: str, share: float, less: int = 0, looks: int = 0) -> Suggestion:
    seen = reading(Verdict.LOOK, "stack", "rim")
    return Suggestion(parameter, 1.0, 2.0, 1, "mm", "2.0mm", share, (Less("card", 2, 1),) * less, (seen,) * looks)


def test_the_better_change_goes_first_and_each_parameter_once() -> None:
    least, other, looked = change("step", 0.1), change("show", 0.3), change("margin", 0.05, looks=1)
    every = [change("slots", 0.01, less=1), looked, change("step", 0.2), other, least]
    assert best_of(every, 2) == (least, other)
    assert best_of(every, 9) == (least, other, looked)
    assert best_of(every[:1], 2) == tuple(every[:1])


def test_what_is_too_narrow_for_its_corners_is_drafted_once_it_is_wide_enough() -> None:
    text = SLEEVE.replace("sleeve: fit", "sleeve: width").replace(
        "leathers:", "  width: {value: 9 mm, from: 8 mm, to: 110 mm, meaning: width}\nleathers:"
    )
    with pytest.raises(DraftError):
        first_trial(asked(text))
    (only,) = drafting_suggestions(asked(text)).whole
    assert only.parameter == "width"
    assert not wanting(asked(text, width=only.text))
