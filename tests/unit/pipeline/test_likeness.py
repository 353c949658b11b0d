"""Spots outlast a change of size; what is lost and what is held less is told."""

from __future__ import annotations

from patternforge.design.load import load_design
from patternforge.fit.findings import Finding, Verdict
from patternforge.pipeline.likeness import Less, Tally, contents_of, less_of, spot_of, tallies, things_of
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.unit.fit.found import reading
from tests.unit.small_designs import SLEEVE

RIM = "hole rim to edge"


def found(where: str, verdict: Verdict, what: str = RIM) -> Finding:
    return reading(verdict, what, where)


def pattern(slots: int) -> Pattern:
    return drafted(load_design(SLEEVE.replace("slots: 1", f"slots: {slots}"), "sleeve.yaml"))


def test_another_hole_or_another_end_of_the_range_is_the_same_spot() -> None:
    wheres = (
        "back, rim 3",
        "back, rim 4",
        "back",
        "back, rim 3, leather at its thickest",
        "back, leather at its thinnest",
    )
    assert {spot_of(found(where, Verdict.NO)) for where in wheres} == {(RIM, "back")}
    assert spot_of(found("card in cards 3", Verdict.NO)) != spot_of(found("card in cards 2", Verdict.NO))


def test_a_spot_counts_each_place_once_and_by_its_worst() -> None:
    told = [
        found("back, rim 3", Verdict.LOOK),
        found("back, rim 3, leather at its thinnest", Verdict.NO),
        found("back, rim 3, leather at its thickest", Verdict.NO),
        found("back, rim 9", Verdict.LOOK),
        found("back, rim 12", Verdict.GOOD),
        found("front", Verdict.GOOD),
    ]
    assert tallies(told) == {(RIM, "back"): Tally(no=1, wanting=2), (RIM, "front"): Tally()}


def test_a_pocket_that_is_left_out_is_lost_and_its_cards_are_held_no_more() -> None:
    two, one = pattern(2), pattern(1)
    lost = things_of(two) - things_of(one)
    assert ("cards 2",) in lost
    assert ("back",) not in lost
    assert less_of(contents_of(two), contents_of(one)) == (Less("card", 2, 1),)
    assert less_of(contents_of(one), contents_of(two)) == ()


def test_a_change_of_size_loses_nothing() -> None:
    wider = drafted(load_design(SLEEVE, "sleeve.yaml", {"margin": "4 mm"}))
    assert things_of(pattern(1)) == things_of(wider)
