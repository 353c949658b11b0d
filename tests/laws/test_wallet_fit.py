"""Laws of fit: it agrees with drafting where both are right, and never calls worse what is better."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import cos, pi, sin

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from patternforge.fit.findings import Finding, Verdict, at_least, at_most, worst
from patternforge.fit.folds import hump
from patternforge.fit.judge import fit, fit_over_range
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design, LayerPart
from tests.laws.designs import drafted_designs, drafts, loaded_more
from tests.laws.test_wallet_thickness import compensated, has_two_layers
from tests.unit.fit.found import reading

rarely = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
often = settings(max_examples=100, deadline=None)
RANK = {Verdict.GOOD: 0, Verdict.LOOK: 1, Verdict.NO: 2}
sizes = st.floats(-20, 20)


def by_place(findings: tuple[Finding, ...], what: str) -> dict[str, Finding]:
    return {finding.where: finding for finding in findings if finding.what == what}


def in_leathers(pattern: Pattern, **thicknesses: float) -> Mapping[str, Leather]:
    """The design's leathers with other thicknesses."""
    own = {leather.role: leather for leather in pattern.design.leathers}
    return own | {role: replace(own[role], thickness=Thickness(t, t)) for role, t in thicknesses.items()}


def with_limits(pattern: Pattern, **limits: float) -> Pattern:
    return replace(pattern, design=replace(pattern.design, limits=replace(pattern.design.limits, **limits)))


@rarely
@given(drafted_designs(has_two_layers))
def test_a_wallet_drafted_true_closes_with_its_edges_flush(pair: tuple[Design, Pattern]) -> None:
    mismatches = by_place(fit(drafted(compensated(pair[0], 1.0))), "edge mismatch, closed")
    assert mismatches
    assert [f.measured for f in mismatches.values()] == pytest.approx([0.0] * len(mismatches), abs=1e-6)
    assert {f.verdict for f in mismatches.values()} == {Verdict.GOOD}


@rarely
@given(drafted_designs(has_two_layers))
def test_a_wallet_drafted_flat_closes_short_by_pi_times_the_distance_of_its_neutral_planes(
    pair: tuple[Design, Pattern],
) -> None:
    soft = tuple(replace(leather, min_radius=0.0) for leather in pair[0].leathers)
    design = replace(compensated(pair[0], 0.0), leathers=soft)
    outer, inner = soft
    divider = next(part for part in design.parts if isinstance(part, LayerPart) and part.name == "divider")
    notes = sum(held.count * design.load.notes * design.item(held.content).thickness for held in divider.holds)
    apart = outer.neutral * outer.t + notes + (1 - inner.neutral) * inner.t
    for mismatch in by_place(fit(drafted(design)), "edge mismatch, closed").values():
        assert mismatch.measured == pytest.approx(-pi * apart, abs=1e-6)


@rarely
@given(drafted_designs(has_two_layers), st.floats(0.1, 1.2))
def test_layers_drafted_for_thinner_leather_close_the_shorter_the_thicker_it_is(
    pair: tuple[Design, Pattern], more: float
) -> None:
    soft = tuple(replace(leather, min_radius=0.0) for leather in pair[0].leathers)
    pattern = drafted(replace(compensated(pair[0], 1.0), leathers=soft))
    inner = pattern.design.leather("inner").t
    thin = by_place(fit(pattern, in_leathers(pattern, inner=inner + more)), "edge mismatch, closed")
    thick = by_place(fit(pattern, in_leathers(pattern, inner=inner + 2 * more)), "edge mismatch, closed")
    assert all(thick[where].measured <= thin[where].measured + 1e-9 for where in thin)


@rarely
@given(drafts())
def test_mating_holes_of_what_was_drafted_meet(pattern: Pattern) -> None:
    for found in fit(pattern):
        if found.what == "mating holes miss each other by":
            assert found.measured == pytest.approx(0.0, abs=1e-6)
        assert found.what != "holes that no piece carries"


@rarely
@given(drafts(), st.sampled_from(("outer", "inner")), st.floats(0.05, 1.5))
def test_thicker_leather_never_makes_a_thinner_wallet_or_seam(pattern: Pattern, role: str, more: float) -> None:
    thicker = in_leathers(pattern, **{role: pattern.design.leather(role).t + more})
    for what in ("thickness closed, as loaded", "thickest stack sewn through", "thickness at the spine"):
        before, after = by_place(fit(pattern), what), by_place(fit(pattern, thicker), what)
        assert before.keys() == after.keys()
        assert all(after[where].measured >= before[where].measured - 1e-9 for where in before)
        assert all(RANK[after[where].verdict] >= RANK[before[where].verdict] for where in before)


@rarely
@given(drafts(), st.sampled_from((0.0, 0.5, 1.0)), st.sampled_from((0.0, 0.5, 1.0)))
def test_more_in_the_wallet_never_makes_it_thinner(pattern: Pattern, cards: float, notes: float) -> None:
    part = replace(pattern, design=loaded_more(pattern.design, cards, notes))
    full = replace(pattern, design=loaded_more(pattern.design, 1.0, 1.0))
    what = "thickness closed, as loaded"
    (least,), (most,) = by_place(fit(part), what).values(), by_place(fit(full), what).values()
    assert most.measured >= least.measured - 1e-9


@rarely
@given(drafts())
def test_the_thickest_stack_of_a_seam_is_that_of_the_pieces_that_share_a_hole(pattern: Pattern) -> None:
    found = by_place(fit(pattern), "thickest stack sewn through")
    for seam in pattern.seams:
        stacks = [
            sum(
                pattern.design.leather(piece.leather).t
                for piece in pattern.pieces
                if (seam.name, hole.index) in {(h.seam, h.index) for h in piece.holes}
            )
            for hole in seam.holes
        ]
        assert found[seam.name].measured == pytest.approx(max(stacks))


@rarely
@given(drafts(), st.floats(0, 3), st.floats(0, 3))
def test_wider_limits_never_turn_a_verdict_worse(pattern: Pattern, tight: float, loose: float) -> None:
    tight, loose = sorted((tight, loose))
    for limit, what in (
        ("hole_to_mouth", "hole rim to a mouth it straddles"),
        ("hole_to_edge", "hole rim to edge"),
        ("hole_to_fold", "hole rim to fold"),
    ):
        strict = by_place(fit(with_limits(pattern, **{limit: loose})), what)
        easy = by_place(fit(with_limits(pattern, **{limit: tight})), what)
        assert all(RANK[easy[where].verdict] <= RANK[strict[where].verdict] for where in easy)


@rarely
@given(drafted_designs(lambda design: len(design.body.panels) == 3), st.floats(0, 4), st.floats(0, 4))
def test_more_clearance_gives_a_folded_in_panel_more_room_and_no_worse_verdict(
    pair: tuple[Design, Pattern], little: float, much: float
) -> None:
    little, much = sorted((little, much))
    what = "panel folded in, clear of the bend"
    tight, wide = (
        by_place(fit(drafted(replace(pair[0], body=replace(pair[0].body, clearance=room)))), what)
        for room in (little, much)
    )
    assert tight.keys() == wide.keys()
    assert tight
    for where, found in tight.items():
        assert wide[where].measured >= found.measured - 1e-9
        assert found.measured >= little - 1e-6


@rarely
@given(drafts())
def test_every_item_of_a_sound_wallet_rests_on_its_floor_below_the_edge(pattern: Pattern) -> None:
    findings = fit(pattern)
    for what in ("item rests off its place", "item's top below the edge", "item clear of the fold"):
        assert {f.verdict for f in findings if f.what == what} <= {Verdict.GOOD}


@rarely
@given(drafts())
def test_clear_widths_leave_the_declared_ease_or_more(pattern: Pattern) -> None:
    """But for what the rim's rounding still takes above the card's own, 4.18 mm over the floor: of the roundest rim
    here, 5 mm, that is 5 - sqrt(25 - 0.82^2) = 0.07 mm."""
    eases = {f"{pocket.content} in {pocket.piece}": pocket.ease for pocket in pattern.pockets}
    found = [f for f in fit(pattern) if f.what == "clear width between stitch lines"]
    assert found
    assert all(f.measured >= f.limit.tolerable.low + eases[f.where] - 0.07 for f in found)


@rarely
@given(drafts())
def test_a_leather_without_spread_is_judged_once(pattern: Pattern) -> None:
    assert fit_over_range(pattern) == fit(pattern)


@rarely
@given(drafts(), st.floats(0.05, 0.3))
def test_a_leather_with_spread_adds_findings_and_takes_none_away(pattern: Pattern, spread: float) -> None:
    leathers = tuple(replace(leather, tolerance=spread) for leather in pattern.design.leathers)
    spread_out = replace(pattern, design=replace(pattern.design, leathers=leathers))
    findings, base = fit_over_range(spread_out), fit(spread_out)
    assert findings[: len(base)] == base
    assert all(f.verdict is not Verdict.GOOD and "leather at its" in f.where for f in findings[len(base) :])


@often
@given(sizes, sizes, sizes, sizes)
def test_a_verdict_never_worsens_as_the_measure_improves(a: float, b: float, good: float, tolerable: float) -> None:
    assume(tolerable <= good)
    low, high = sorted((a, b))
    limit = at_least(good, tolerable)
    assert RANK[limit.verdict(high)] <= RANK[limit.verdict(low)]
    assert at_most(-good, -tolerable).verdict(-high) is limit.verdict(high)


@often
@given(st.lists(st.sampled_from(Verdict)))
def test_the_worst_verdict_is_one_of_them_and_none_is_worse(verdicts: list[Verdict]) -> None:
    found = worst(reading(verdict) for verdict in verdicts)
    assert found in verdicts or (not verdicts and found is Verdict.GOOD)
    assert all(RANK[verdict] <= RANK[found] for verdict in verdicts)


@often
@given(st.floats(1, 60), st.floats(0.32, 1), st.floats(0.32, 1))
def test_a_strip_humps_the_higher_the_nearer_its_ends_are(length: float, one: float, other: float) -> None:
    """Down to a third of its length; nearer still, the strip closes into a ring, which is lower again."""
    near, far = sorted((one, other))
    assert 0 <= hump(length, length * far) <= hump(length, length * near) + 1e-6
    assert hump(length, length * near) <= 0.3625 * length


@often
@given(st.floats(1, 60), st.floats(0.01, 6.28))
def test_the_hump_of_an_arc_is_its_sagitta(radius: float, angle: float) -> None:
    chord = 2 * radius * sin(angle / 2)
    assert hump(radius * angle, chord) == pytest.approx(radius * (1 - cos(angle / 2)), abs=1e-6)
