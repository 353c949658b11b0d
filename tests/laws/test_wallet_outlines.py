"""Laws of whole drafted wallets: what any lawful design gives, and what every piece of a drafted one is."""

from __future__ import annotations

from itertools import pairwise
from math import isfinite

import pytest
from hypothesis import HealthCheck, given, settings

from patternforge.errors import PatternforgeError
from patternforge.fit.judge import fit_over_range
from patternforge.geometry.regions import fault_of
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design
from tests.laws.designs import designs, drafts

rarely = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
often = settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@often
@given(designs())
def test_any_lawful_design_gives_sound_outlines_or_a_plain_refusal(design: Design) -> None:
    result = outcome(design)
    if isinstance(result, str):
        assert result
    else:
        assert {fault_of(piece.outline, piece.openings) for piece in result.pieces} == {None}


def outcome(design: Design) -> Pattern | str:
    """The pattern of a design, or the words it is refused with; any other exception goes through."""
    try:
        return drafted(design)
    except PatternforgeError as refusal:
        return str(refusal)


@often
@given(designs())
def test_whatever_is_drafted_can_be_judged_and_every_measure_is_a_number(design: Design) -> None:
    result = outcome(design)
    findings = () if isinstance(result, str) else fit_over_range(result)
    assert findings or isinstance(result, str)
    assert all(isfinite(finding.measured) and finding.limit.good.ends for finding in findings)


@rarely
@given(designs())
def test_the_same_design_gives_the_same_pattern_or_the_same_refusal(design: Design) -> None:
    assert outcome(design) == outcome(design)


@rarely
@given(drafts())
def test_every_piece_runs_counter_clockwise_from_the_origin_with_a_role_for_each_edge(pattern: Pattern) -> None:
    for piece in pattern.pieces:
        bounds = piece.outline.bounds
        assert piece.outline.is_ccw
        assert (bounds.x0, bounds.y0) == pytest.approx((0.0, 0.0), abs=1e-9)
        assert len(piece.edges) == len(piece.outline.segments)


@rarely
@given(drafts())
def test_panels_and_fold_zones_lie_side_by_side_and_make_up_the_width(pattern: Pattern) -> None:
    ends = [0.0]
    for index, panel in enumerate(pattern.panels):
        zone = pattern.folds[index : index + 1]
        ends += [panel.x0, panel.x1, *(x for fold in zone for x in (fold.x0, fold.x1))]
        assert panel.x1 - panel.x0 == pytest.approx(panel.width.value)
    assert all(a <= b for a, b in pairwise(ends))
    gaps = [b - a for a, b in zip(ends[2::2], ends[3::2], strict=False)]
    assert gaps == pytest.approx([0.0] * len(gaps), abs=1e-9)
    assert ends[-1] == pytest.approx(pattern.width)
    assert pattern.height == pytest.approx(pattern.height_sum.value)


@rarely
@given(drafts())
def test_every_hole_lies_inside_its_piece_and_no_two_on_one_point(pattern: Pattern) -> None:
    for piece in pattern.pieces:
        assert all(piece.outline.contains(hole.at) for hole in piece.holes)
        points = sorted((hole.at.x, hole.at.y) for hole in piece.holes)
        assert len({(round(x, 6), round(y, 6)) for x, y in points}) == len(points)


@rarely
@given(drafts())
def test_every_piece_is_sewn_to_another_one(pattern: Pattern) -> None:
    """All pieces hang together: starting from the first, seams lead to every other one."""
    found, waiting = {pattern.pieces[0].name}, {pattern.pieces[0].name}
    while waiting:
        near = {name for seam in pattern.seams if waiting & set(seam.pieces) for name in seam.pieces}
        waiting = near - found
        found |= waiting
    assert found == {piece.name for piece in pattern.pieces}
