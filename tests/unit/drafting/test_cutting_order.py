"""The order of cutting that is printed beside the pieces, and the crosses that an awl is set on."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from patternforge.drafting.cutting_order import order_figure, order_steps
from patternforge.drafting.holes import awl_inks
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import AwlPoints, DraftingOptions, PaperOptions, Purpose
from patternforge.drawing.model import Dot, Role, Stroke, Text
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import HoleShape, HoleSpec
from tests.designs_built import SLITS, two_fold, with_holes
from tests.shapes_built import windowed

CROSSES = PaperOptions(awl=AwlPoints.CROSSES)


@pytest.fixture(scope="module")
def two() -> Pattern:
    return drafted(two_fold())


def test_what_is_seen_is_cut_before_what_is_hidden_and_the_largest_first(two: Pattern) -> None:
    hidden = {"left cards 3", "right cards 3"}
    pieces = tuple(replace(piece, visible=piece.name not in hidden) for piece in two.pieces)
    _, seen, other, *_ = order_steps(replace(two, pieces=pieces), CROSSES)
    assert seen.startswith("First what is seen")
    assert "(outer)" in seen
    assert other.startswith("Then what is hidden")
    assert all((name in other) and (name not in seen) for name in hidden)
    places = [seen.index(piece.name) for piece in sorted(pieces, key=lambda p: -p.area) if piece.visible]
    areas = [piece.area for piece in sorted(pieces, key=lambda p: -p.area) if piece.visible]
    assert all(a < b for (a, b), (big, small) in zip(pairwise(places), pairwise(areas), strict=True) if big > small)


def test_every_piece_is_named_once() -> None:
    pattern = drafted(windowed())
    said = " ".join(order_steps(pattern, CROSSES))
    assert "Last what is not of leather: window film (film)." in said
    assert all(said.count(piece.name) == 1 for piece in pattern.pieces)


def test_the_outline_comes_last_and_crosses_are_named_only_where_they_are_drawn(two: Pattern) -> None:
    assert any(
        "an awl on each small cross" in step and step.endswith("the outline last.")
        for step in order_steps(two, CROSSES)
    )
    assert not any("cross" in step for step in order_steps(two, PaperOptions()))


def test_the_steps_are_numbered_and_no_letter_is_smaller_than_2_mm(two: Pattern) -> None:
    texts = [ink for ink in order_figure(two, CROSSES).inks if isinstance(ink, Text)]
    steps = order_steps(two, CROSSES)
    numbered = [text.content for text in texts if text.content[0].isdigit() and text.content[1] == "."]
    assert [line.split(".")[0] for line in numbered] == [str(i + 1) for i in range(len(steps))]
    assert min(text.height for text in texts) >= 2.0


@pytest.mark.parametrize("hole", [HoleSpec(HoleShape.ROUND, diameter=1.0), SLITS, HoleSpec(HoleShape.MARK)])
def test_a_cross_stands_in_the_middle_of_every_hole(hole: HoleSpec) -> None:
    pattern = drafted(with_holes(two_fold(), hole))
    piece = pattern.pieces[0]
    arms = [ink.path for ink in awl_inks(pattern, piece)]
    assert len(arms) == 2 * len(piece.holes)
    for at, (one, other) in zip((h.at for h in piece.holes), zip(arms[::2], arms[1::2], strict=True), strict=True):
        for arm in (one, other):
            assert ((arm.start + arm.end) / 2).distance_to(at) < 1e-9
            assert arm.length <= 1.0
        assert abs((one.end - one.start).unit().dot((other.end - other.start).unit())) < 1e-9


def test_where_no_hole_is_made_there_is_no_cross() -> None:
    pattern = drafted(with_holes(two_fold(), HoleSpec(HoleShape.NONE)))
    assert awl_inks(pattern, pattern.pieces[0]) == ()


def test_crosses_are_drawn_on_paper_only_when_asked_for(two: Pattern) -> None:
    plain = figures(two, Purpose.PAPER)[0]
    crossed = figures(two, Purpose.PAPER, DraftingOptions(paper=CROSSES))[0]
    added = [ink for ink in crossed.inks if ink not in plain.inks]
    assert len(added) == 2 * len(two.pieces[0].holes)
    assert all(isinstance(ink, Stroke) and ink.role is Role.MARK for ink in added)
    assert [ink for ink in plain.inks if isinstance(ink, Dot)] == [
        ink for ink in crossed.inks if isinstance(ink, Dot)
    ]
