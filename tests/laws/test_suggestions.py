"""What is suggested does what is said of it, and no smaller change at its side does: tried on ready designs broken.

The drafts of the search are not asked again: every value is set as a maker would type it, and what comes of it is
compared by the names of findings alone.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import pytest

from patternforge.design.load import load_design
from patternforge.errors import DraftError, PatternforgeError
from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.judge import fit_over_range
from patternforge.pipeline.suggest import drafting_suggestions, suggestions
from patternforge.pipeline.suggestion import Suggestion, Suggestions
from patternforge.pipeline.trial import Asked
from patternforge.wallet.assemble import drafted

DESIGNS = Path(__file__).parents[2] / "designs"


@dataclass(frozen=True, slots=True)
class Broken:
    """A ready design with a text in it replaced and a value set, so that something of it does not fit."""

    design: str
    name: str
    value: str
    replaced: Mapping[str, str] = field(default_factory=dict)

    def asked(self, **settings: str) -> Asked:
        """The broken design with more values set."""
        text = (DESIGNS / f"{self.design}.yaml").read_text(encoding="utf-8")
        for old, new in self.replaced.items():
            assert old in text
            text = text.replace(old, new, 1)
        return Asked(text, f"{self.design}.yaml", {self.name: self.value, **settings})

    def findings(self, **settings: str) -> tuple[Finding, ...]:
        """What is found with more values set; DraftError as usual."""
        asked = self.asked(**settings)
        return fit_over_range(drafted(load_design(asked.text, asked.file, asked.settings)))


def _with(name: str, value: str, low: str, high: str) -> str:
    return f"parameters:\n  {name}: {{value: {value}, from: {low}, to: {high}, meaning: as tried}}\n"


BROKEN = {
    "margin too small": Broken("card-sleeve", "margin", "1.2mm", {"from: 2.5 mm": "from: 1 mm"}),
    "panel too narrow": Broken(
        "card-sleeve",
        "width",
        "88mm",
        {"{sleeve: fit}": "{sleeve: width}", "parameters:\n": _with("width", "96 mm", "80 mm", "110 mm")},
    ),
    "height too low": Broken(
        "card-sleeve",
        "height",
        "62mm",
        {"height: fit": "height: height", "parameters:\n": _with("height", "70 mm", "50 mm", "110 mm")},
    ),
    "margin too large": Broken(
        "tapered-key-strap", "margin", "5mm", {"from: 2.75 mm, to: 4.5 mm": "from: 2.5 mm, to: 5 mm"}
    ),
    "window pocket of the wrong depth": Broken(
        "id-window-two-fold", "window_depth", "54mm", {"from: 55 mm": "from: 54 mm"}
    ),
    "strap on the stop stitches": Broken(
        "strap-card-case", "strap_foot", "15mm", {"22.69 mm, meaning": "22.69 mm, from: 15 mm, to: 30 mm, meaning"}
    ),
    "fold of one piece too long": Broken("one-piece-coin-envelope", "front", "43mm"),
}
UNDRAFTABLE = {
    "cards that stand out whole": Broken(
        "card-sleeve", "show", "58mm", {"to: 20 mm, meaning: how much of a": "to: 60 mm, meaning: how much of a"}
    ),
    "strap too narrow": Broken(
        "tapered-key-strap",
        "strap_width",
        "18mm",
        {
            "from: 24 mm": "from: 18 mm",
            "strap_width * 0.47, bottom left: strap_width * 0.47": "12 mm, bottom left: 12 mm",
        },
    ),
}


@cache
def _first(name: str) -> tuple[Finding, ...]:
    return BROKEN[name].findings()


@cache
def _suggested(name: str) -> Suggestions:
    return suggestions(BROKEN[name].asked(), [f for f in _first(name) if f.verdict is Verdict.NO])


def _place(found: Finding) -> tuple[str, str]:
    return found.what, found.where.partition(",")[0]


def _spoiled(findings: tuple[Finding, ...]) -> set[tuple[str, str]]:
    return {_place(found) for found in findings if found.verdict is Verdict.NO}


def _is_cure(name: str, place: tuple[str, str], parameter: str, text: str) -> bool:
    """Whether a value leaves nothing wanting at a place and spoils no other; False if it is refused."""
    try:
        after = BROKEN[name].findings(**{parameter: text})
    except PatternforgeError:
        return False
    there = [found.verdict for found in after if _place(found) == place]
    return set(there) <= {Verdict.GOOD} and _spoiled(after) <= _spoiled(_first(name)) - {place}


def _one_step_less(one: Suggestion) -> str | None:
    """The value one step nearer to the present one, as it is set; None if that is the present one."""
    step = 10.0**-one.decimals
    nearer = one.after - step if one.after > one.before else one.after + step
    is_past = (nearer - one.before) * (one.after - one.before) <= 1e-9
    return None if is_past else f"{nearer:.{one.decimals}f}{one.unit}"


@pytest.mark.parametrize("name", BROKEN)
def test_a_suggestion_cures_and_one_step_less_does_not(name: str) -> None:
    found = _suggested(name)
    assert any(found.of.values())
    assert not found.is_cut_off
    for where, cures in found.of.items():
        place = (where[0], where[1].partition(",")[0])
        for one in cures:
            assert _is_cure(name, place, one.parameter, one.text)
            less = _one_step_less(one)
            assert less is None or not _is_cure(name, place, one.parameter, less)


@pytest.mark.parametrize("name", BROKEN)
def test_a_suggestion_says_what_wants_a_look_with_it(name: str) -> None:
    before = {_place(found) for found in _first(name) if found.verdict is Verdict.LOOK}
    for one in {one for cures in _suggested(name).of.values() for one in cures}:
        after = BROKEN[name].findings(**{one.parameter: one.text})
        new = {_place(found) for found in after if found.verdict is Verdict.LOOK} - before
        assert {_place(found) for found in one.looks} >= new - _spoiled(after)
        assert not {_place(found) for found in one.looks} & _spoiled(after)


@pytest.mark.parametrize("name", BROKEN)
def test_what_is_suggested_for_the_whole_leaves_no_no(name: str) -> None:
    whole = _suggested(name).whole
    assert bool(whole) == (len(_spoiled(_first(name))) > 1)
    for one in whole:
        assert not _spoiled(BROKEN[name].findings(**{one.parameter: one.text}))


@pytest.mark.parametrize("name", BROKEN)
def test_a_suggestion_stays_in_the_lawful_range_and_the_better_comes_first(name: str) -> None:
    asked = BROKEN[name].asked()
    parameters = {each.name: each for each in load_design(asked.text, asked.file, asked.settings).parameters}
    for cures in _suggested(name).of.values():
        for one in cures:
            own = parameters[one.parameter]
            assert (own.low or 0.0) <= one.after <= (own.high or 0.0)
            assert one.before == own.value
        assert len({one.parameter for one in cures}) == len(cures) <= 2
        assert [bool(one.looks) for one in cures] == sorted(bool(one.looks) for one in cures)


@pytest.mark.parametrize("name", UNDRAFTABLE)
def test_what_cannot_be_drafted_can_be_as_suggested_and_one_step_less_does_not_fit(name: str) -> None:
    broken = UNDRAFTABLE[name]
    with pytest.raises(DraftError):
        broken.findings()
    found = drafting_suggestions(broken.asked()).whole
    assert found
    for one in found:
        assert not _spoiled(broken.findings(**{one.parameter: one.text}))
        less = _one_step_less(one)
        assert not less or not _fits(broken, **{one.parameter: less})


def _fits(broken: Broken, **settings: str) -> bool:
    try:
        return not _spoiled(broken.findings(**settings))
    except DraftError:
        return False
