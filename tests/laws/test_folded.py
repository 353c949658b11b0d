"""Laws of wallets folded from one piece, judged by a closing in space that knows none of the program's formulas."""

from __future__ import annotations

import re
from dataclasses import replace
from math import pi

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternforge.drafting.description import description
from patternforge.errors import DraftError
from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.judge import fit
from patternforge.geometry.flatten import flattened
from patternforge.wallet.assemble import drafted
from patternforge.wallet.folded.pattern import DraftedFolded
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design
from tests.folded_built import folded_designs, with_folded
from tests.folded_sheet import Sheet, sheet

SAME = 1e-6
BESIDE, RIM = 15.0, 1.0  # mm from a fold that what lies there counts, and of its rim that does not
SMALL = 20.0  # mm2; faces that overlap by less may pass as beside each other


def drawn(design: Design) -> Pattern:
    """The pattern of a random design, of those that are not refused."""
    try:
        return drafted(design)
    except DraftError:
        assume(False)
        raise


def refused(design: Design) -> str:
    """What is said of a design that is refused; nothing for one that is not."""
    try:
        drafted(design)
    except DraftError as refusal:
        return str(refusal)
    return ""


def folded_of(pattern: Pattern) -> DraftedFolded:
    assert pattern.folded is not None
    return pattern.folded


def sheet_of(pattern: Pattern) -> Sheet:
    outline = flattened(pattern.pieces[0].outline, 0.002)
    return sheet(description(pattern), [(p.x, p.y) for p in outline])


def measured(findings: tuple[Finding, ...], what: str) -> dict[str, Finding]:
    return {found.where: found for found in findings if found.what == what}


@settings(max_examples=60)
@given(folded_designs())
def test_every_fold_is_as_long_as_what_lies_in_it_needs(design: Design) -> None:
    pattern = drawn(design)
    closed, t = sheet_of(pattern), design.leathers[0].t
    for fold, hinge in zip(closed.folds, folded_of(pattern).hinges, strict=True):
        hollow = max(0.0, 2 * design.leathers[0].min_radius * t - hinge.gap.value)
        assert closed.slack(fold, BESIDE, RIM) == pytest.approx(hollow, abs=SAME)
    over = measured(fit(pattern), "fold longer than it needs")
    assert len(over) == len(closed.folds)
    assert all(abs(found.measured) < SAME for found in over.values())


@settings(max_examples=60)
@given(folded_designs())
def test_folding_the_drawn_blank_by_its_fibre_lands_each_face_where_it_was_planned(design: Design) -> None:
    pattern = drawn(design)
    closed = sheet_of(pattern)
    for face in folded_of(pattern).faces:
        for segment in face.outline.segments:
            x, y, _ = closed.place(face.name, segment.start.x, segment.start.y)
            planned = face.closed.point(segment.start)
            assert (x, y) == pytest.approx((planned.x, planned.y), abs=SAME)


@settings(max_examples=60)
@given(folded_designs())
def test_a_design_closes_or_is_told_the_fold_that_does_not(design: Design) -> None:
    pattern = drawn(design)
    blocked = sheet_of(pattern).blocked()
    told = measured(fit(pattern), "leather in the way as it closes")
    assert {where.partition(", ")[2] for where in told} == set(blocked)
    for where, found in told.items():
        pairs = blocked[where.partition(", ")[2]]
        assert bool(pairs) == (found.verdict is Verdict.NO) or found.measured < SMALL
        assert all(f"'{moved}'" in found.remedy and f"'{other}'" in found.remedy for moved, other in pairs)


@settings(max_examples=60)
@given(folded_designs(tabs=True))
def test_what_cannot_be_drafted_is_refused_by_the_name_of_a_face_or_a_tab(design: Design) -> None:
    spec = design.folded
    assert spec is not None
    refusal = refused(design)
    assume(refusal)
    named = set(re.findall(r"'([^']+)'", refusal))
    assert named & {*(face.name for face in spec.faces), "tab"}
    assert refusal.startswith("folded.yaml:")


@settings(max_examples=60)
@given(folded_designs(tabs=True))
def test_a_tabs_root_comes_to_lie_on_the_middle_of_its_slit(design: Design) -> None:
    pattern = drawn(design)
    closed = sheet_of(pattern)
    for tab in folded_of(pattern).tabs:
        root = [closed.place(tab.face, end.x, end.y)[:2] for end in tab.root]
        slit = [closed.place(tab.into, end.x, end.y)[:2] for end in tab.slit]
        assert sum(root) / 2 == pytest.approx(sum(slit) / 2, abs=SAME)
        lengths = [float(((b - a) ** 2).sum() ** 0.5) for a, b in (root, slit)]
        assert lengths[1] - lengths[0] == pytest.approx(design.leathers[0].t, abs=SAME)
        assert measured(fit(pattern), "tab misses its slit by")[tab.name].measured < SAME


@settings(max_examples=40)
@given(folded_designs(), st.integers(1, 5))
def test_more_cards_lengthen_the_folds_round_them_by_half_a_turn_of_what_they_add_and_no_other(
    design: Design, more: int
) -> None:
    """Half the gap is the radius, so a gap of g more takes pi g / 2: bend allowance, NAVEDTRA 14119, p. 13-43."""
    assume(design.folded is not None and design.folded.rooms and design.load.cards)
    soft = replace(design, leathers=tuple(replace(each, min_radius=0.0) for each in design.leathers))
    thin = drawn(soft)
    rooms = (
        tuple(replace(room, count=room.count + more) for room in thin.design.folded.rooms)
        if thin.design.folded
        else ()
    )
    thick = drawn(with_folded(soft, rooms=rooms))
    added = more * design.load.cards * 0.76
    for before, after in zip(folded_of(thin).hinges, folded_of(thick).hinges, strict=True):
        has_cards = any(term.label.endswith("x card") for term in before.gap.terms)
        assert after.length - before.length == pytest.approx(pi / 2 * added * has_cards, abs=SAME)


@settings(max_examples=40)
@given(folded_designs(), st.sampled_from((0.1, 0.5, 1.0)))
def test_thicker_leather_never_takes_a_shorter_fold(design: Design, more: float) -> None:
    thin = drawn(design)
    t = design.leathers[0].thickness
    thicker = replace(design.leathers[0], thickness=replace(t, low=t.low + more, high=t.high + more))
    thick = drawn(replace(design, leathers=(thicker,)))
    for before, after in zip(folded_of(thin).hinges, folded_of(thick).hinges, strict=True):
        # Its own fibre alone lies so much further from the middle of the bend.
        assert after.length - before.length >= pi * design.leathers[0].neutral * more - SAME
