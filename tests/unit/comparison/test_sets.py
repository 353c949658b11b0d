"""Old dies against new leather: what stays and what moves, worked out by hand from the rule of folds."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.comparison.distance import apart
from patternforge.comparison.moves import Axis
from patternforge.comparison.sets import Comparison, compared
from patternforge.comparison.telling import told
from patternforge.errors import ReadingError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation
from patternforge.wallet.spec import BankPart, Design
from tests.designs_built import SLITS, sleeve, three_fold, two_fold, with_holes
from tests.folded_built import dressed_envelope, envelope
from tests.shapes_built import strap_case
from tests.unit.comparison.built import in_leather, made

ALL = {
    "two-fold": two_fold(),
    "three-fold": three_fold(),
    "sleeve": sleeve(),
    "strap": strap_case(),
    "folded": dressed_envelope(),
}


def against(old: Design, new: Design) -> Comparison:
    return compared(made(old), made(new))


@pytest.mark.parametrize("name", ALL)
def test_a_wallet_against_itself_keeps_every_die_and_template(name: str) -> None:
    found = against(ALL[name], ALL[name])
    assert len(found.same) == len(found.changes) == len(found.old.pieces)
    assert all(change.outline == change.openings == change.holes.farthest == 0.0 for change in found.changes)
    assert [line for change in found.changes for line in told(change)] == []
    assert (found.added, found.gone) == ((), ())


def test_thicker_outer_leather_moves_half_the_shell_and_nothing_else() -> None:
    # The shell's fibre lies half its thickness beyond its inside: 0.4 mm more move the far half by pi * 0.2 mm.
    found = against(two_fold(outer=1.2), two_fold(outer=1.6))
    (shell,) = found.other_die
    assert len(found.same) == len(found.changes) - 1
    assert found.other_template == ()
    (move,) = shell.moves
    assert (move.where, move.axis) == ("right half", Axis.ACROSS)
    assert move.by == pytest.approx(pi * 0.2, abs=1e-6)
    assert shell.new.width - shell.old.width == pytest.approx(pi * 0.2, abs=1e-6)
    assert shell.outline == pytest.approx(pi * 0.2, abs=1e-6)
    assert shell.holes.moved == shell.holes.unmoved == shell.holes.before // 2
    assert shell.holes.farthest == pytest.approx(pi * 0.2, abs=1e-6)
    (old_fold,), (new_fold,) = shell.old.folds, shell.new.folds
    assert new_fold[1] - old_fold[1] == pytest.approx(pi * 0.2, abs=1e-6)
    assert told(shell)[1:3] == [
        "right half moves 0.63 mm right",
        f"fold 1: {old_fold[1]:.2f} -> {new_fold[1]:.2f} mm long",
    ]


@pytest.mark.parametrize("name", ALL)
def test_back_again_everything_moves_the_other_way(name: str) -> None:
    design = ALL[name]
    thicker = in_leather(design, design.leathers[0].role, design.leathers[0].t + 0.3)
    there, back = against(design, thicker), against(thicker, design)
    for one, other in zip(there.changes, back.changes, strict=True):
        assert one.offset.distance_to(-other.offset) == pytest.approx(0.0, abs=1e-9)
        assert (one.outline, one.openings) == pytest.approx((other.outline, other.openings), abs=1e-9)
        assert one.holes.farthest == pytest.approx(other.holes.farthest, abs=1e-9)
        assert one.holes.moved == other.holes.moved
        assert [m.axis for m in one.moves] == [m.axis for m in other.moves]
        assert [-m.by for m in one.moves] == pytest.approx([m.by for m in other.moves], abs=1e-9)
        assert (one.die_stays, one.template_stays) == (other.die_stays, other.template_stays)
    assert any(change.outline > 0.1 or change.openings > 0.1 for change in there.changes) or name == "sleeve"


def test_a_die_stays_where_only_the_stitch_holes_change() -> None:
    found = against(sleeve(), with_holes(sleeve(), SLITS))
    assert found.other_die == ()
    assert found.same == ()
    for change in found.other_template:
        assert told(change) == [f"{change.holes.after} stitch holes are turned or made otherwise"]


def test_a_hole_less_is_told_with_those_that_stay_where_they_were() -> None:
    whole = made(sleeve())
    back = whole.pieces[0]
    less = replace(whole, pieces=(replace(back, holes=back.holes[1:]), *whole.pieces[1:]))
    (change,) = compared(whole, less).other_template
    count = len(back.holes)
    assert told(change) == [f"{count} -> {count - 1} stitch holes, {count - 1} of them where they were"]


def test_a_mark_that_moves_changes_the_template_and_not_the_die() -> None:
    whole = made(two_fold())
    shell = whole.pieces[0]
    lines = tuple((kind, translation(0.5, 0.0).path(path)) for kind, path in shell.drawn)
    (change,) = compared(
        whole, replace(whole, pieces=(replace(shell, drawn=lines), *whole.pieces[1:]))
    ).other_template
    assert told(change) == ["fold line moves by 0.50 mm at most"]


def test_pieces_that_only_one_set_has_are_new_or_gone() -> None:
    design = two_fold()
    cards = design.parts[-1]
    assert isinstance(cards, BankPart)
    fewer = replace(design, parts=(*design.parts[:-1], replace(cards, slots=2)))
    found, back = against(design, fewer), against(fewer, design)
    assert [piece.name for piece in found.gone] == [piece.name for piece in back.added] == ["right cards 3"]
    assert found.added == back.gone == ()


def test_wallets_with_nothing_in_common_are_not_compared() -> None:
    with pytest.raises(ReadingError, match="no piece of the same name"):
        against(two_fold(), envelope())


def piece_like(outline: Path, *openings: Path) -> Comparison:
    """The back of a sleeve against one of another outline, everything else taken off both."""
    plain = made(sleeve())
    back = replace(plain.pieces[0], holes=(), drawn=(), openings=())
    old = replace(plain, pieces=(replace(back, outline=rounded_rectangle(0, 0, 100, 60, 5)),))
    return compared(old, replace(plain, pieces=(replace(back, outline=outline, openings=openings),)))


def test_the_old_piece_is_laid_where_most_of_the_new_outline_covers_it() -> None:
    # A tongue of 8 mm on the left side pushes all that stayed 8 mm to the right.
    body = [Point(8, 0), Point(108, 0), Point(108, 60), Point(8, 60), Point(8, 40), Point(0, 40), Point(0, 20)]
    square = made(sleeve())
    back = replace(square.pieces[0], drawn=(), openings=(), outline=rounded_rectangle(0, 0, 100, 60, 0))
    holes = tuple(replace(hole, at=hole.at + Point(8, 0)) for hole in back.holes)
    tongued = replace(back, outline=polygon([*body, Point(8, 20)]), holes=holes)
    (change,) = compared(replace(square, pieces=(back,)), replace(square, pieces=(tongued,))).changes
    assert change.offset.distance_to(Point(-8, 0)) < 1e-9
    assert change.outline == pytest.approx(8.0)
    assert change.holes.stay
    assert "laid over each other with the new one 8.00 mm left" in told(change)


@pytest.mark.parametrize(("wider", "stays"), [(0.009, True), (0.011, False)])
def test_a_hundredth_of_a_millimetre_is_the_same_and_more_is_not(wider: float, stays: bool) -> None:
    (change,) = piece_like(rounded_rectangle(0, 0, 100 + wider, 60, 5)).changes
    assert change.die_stays is stays


def test_a_corner_rounded_more_is_told_by_how_far_it_strays() -> None:
    # From the corner of the square to either arc along its diagonal: r (sqrt 2 - 1).
    (change,) = piece_like(rounded_rectangle(0, 0, 100, 60, 9)).changes
    assert change.outline == pytest.approx(4 * (2**0.5 - 1), abs=1e-6)


def test_an_opening_more_changes_the_die() -> None:
    (change,) = piece_like(
        rounded_rectangle(0, 0, 100, 60, 5), rounded_rectangle(20, 20, 30, 30, 2).reversed()
    ).changes
    assert not change.die_stays
    assert told(change) == ["0 -> 1 openings"]


def test_a_piece_that_grows_both_ways_is_told_both_ways() -> None:
    (change,) = piece_like(rounded_rectangle(0, 0, 103, 64, 5)).changes
    assert told(change) == [
        "100.00 x 60.00 mm -> 103.00 x 64.00 mm: 3.00 mm wider, 4.00 mm higher",
        "right half moves 3.00 mm right; top half moves 4.00 mm up",
    ]


def test_what_counts_is_the_distance_to_the_other_line_not_to_its_corner() -> None:
    one, other = (
        polygon([Point(0, 0), Point(9, 0), Point(9, 9)]),
        polygon([Point(0, 0), Point(5, 0), Point(9, 0), Point(9, 9)]),
    )
    assert apart(one, other) == 0.0
