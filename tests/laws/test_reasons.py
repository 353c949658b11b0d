"""Reasons hold for every ready design and for wallets drawn at random: parts come to what they are parts of."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import assume, given, settings

from patternforge.errors import DraftError
from patternforge.leather.material import Thickness
from patternforge.reasons.reason import LEAVES, How, Reason, walked
from patternforge.reasons.told import Reasons, reasons_of
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design
from tests.designs_built import two_fold
from tests.folded_built import folded_designs
from tests.laws.designs import drafts
from tests.reasons_told import DESIGNS, come_to, reckoned, shortfalls, told, without_finest

_PLACE = re.compile(r"[a-z-]+\.yaml:\d+(, .+)?")
_SHAPED = "as its outline is shaped"
ready = pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)


def leaves(reasons: Reasons) -> list[Reason]:
    return [leaf for _, reason in without_finest(reasons) for leaf in walked(reason) if leaf.how in LEAVES]


def shaped(reasons: Reasons) -> list[str]:
    """The pieces a size of which is what it is because its outline is neither straight nor level there."""
    return [name for name, reason in without_finest(reasons) for part in reason.parts if part.name == _SHAPED]


@ready
def test_the_parts_of_every_size_come_to_it(path: Path) -> None:
    assert shortfalls(told(path).reasons) == []


@ready
def test_every_leaf_says_where_it_comes_from(path: Path) -> None:
    for leaf in leaves(told(path).reasons):
        if leaf.how in (How.CATALOGUE, How.DEFAULT):
            assert len(leaf.source) > len("catalogue item "), leaf
        elif leaf.how is How.ENTERED:
            assert _PLACE.fullmatch(leaf.source), leaf
        else:
            assert leaf.how in (How.COUNTED, How.MEASURED, How.NUMBER), leaf


@ready
def test_what_was_entered_is_what_stands_in_that_line(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    entered = [leaf for leaf in leaves(told(path).reasons) if leaf.how is How.ENTERED]
    assert entered
    for leaf in entered:
        line = lines[int(leaf.source.partition(":")[2].partition(",")[0]) - 1]
        if leaf.words not in ("0", "1"):  # 'load: full' is a word for these
            assert leaf.words in line, leaf
        if (
            "-" not in leaf.words.lstrip("-") and "per" not in leaf.words
        ):  # a range and a count of stitches are told apart
            assert reckoned(leaf.words, {}) == pytest.approx(leaf.value, abs=1e-9), leaf


@ready
def test_only_bowed_and_slanted_sides_are_read_off_an_outline(path: Path) -> None:
    design = told(path).pattern.design
    bent = bool(design.body.shapes) or any(getattr(part, "shapes", ()) for part in design.parts)
    assert bent or not shaped(told(path).reasons)


def test_hundreds_of_sizes_are_told() -> None:
    counts = {path.stem: len(told(path).reasons) for path in DESIGNS}
    assert min(counts.values()) > 90
    assert sum(counts.values()) > 5000


@settings(max_examples=12)
@given(drafts())
def test_the_parts_come_to_every_size_of_wallets_drawn_at_random(pattern: Pattern) -> None:
    reasons = reasons_of(pattern)
    assert shortfalls(reasons) == []
    assert shaped(reasons) == []
    for piece in pattern.pieces:
        of = {whole: called for called, whole in reasons.own.items()}
        assert reasons[of[f"piece {piece.name}.width"]].value == piece.width
        assert reasons[of[f"piece {piece.name}.height"]].value == piece.height


@pytest.mark.parametrize("compensation", [0.0, 0.5, 1.2])
def test_a_fold_that_is_eased_says_by_how_much(compensation: float) -> None:
    design = two_fold()
    folds = (replace(design.body.folds[0], compensation=compensation),)
    reasons = reasons_of(drafted(replace(design, body=replace(design.body, folds=folds))))
    assert shortfalls(reasons) == []
    shell, true, inner = (reasons[f"fold 1.{each}"].value for each in ("shell", "shell.true length", "divider"))
    assert shell == pytest.approx(inner + compensation * (true - inner))


@settings(max_examples=4)
@given(folded_designs())
def test_the_parts_come_to_every_size_of_wallets_folded_from_one_piece(design: Design) -> None:
    try:
        pattern = drafted(design)
    except DraftError:
        assume(False)
    reasons = reasons_of(pattern)
    assert shortfalls(reasons) == []
    assert reasons["blank.width"].value == pattern.pieces[0].width


def test_a_part_that_is_left_out_is_noticed() -> None:
    reasons = reasons_of(drafted(two_fold()))
    width = reasons["left.width"]
    assert come_to(width) == pytest.approx(width.value)
    for left_out in width.parts:
        rest = tuple(part for part in width.parts if part is not left_out)
        assert abs(come_to(replace(width, parts=rest)) - width.value) > 1e-6


def test_thicker_leather_shows_in_the_very_leaf() -> None:
    thin, thick = (reasons_of(drafted(two_fold(outer=t)))["shell.width"] for t in (1.2, 2.0))
    before, after = (
        {leaf.name: leaf.value for leaf in walked(reason) if leaf.name == "outer.thickness"}
        for reason in (thin, thick)
    )
    assert (before, after) == ({"outer.thickness": 1.2}, {"outer.thickness": 2.0})


def test_a_range_is_told_by_both_its_ends() -> None:
    design = two_fold()
    outer, *others = design.leathers
    ranged = replace(outer, thickness=Thickness(1.0, 1.6))
    reasons = reasons_of(drafted(replace(design, leathers=(ranged, *others))))
    assert reasons["outer.thickness"].value == pytest.approx(1.3)
