"""Hardware: a hole for each half, in the piece that carries it, or a refusal that names the fitting."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.errors import DraftError
from patternforge.leather.hardware import Setting
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Edge, FoldSpec, PanelSpec, Spot
from tests.shapes_built import LINING, SHELL, SNAP, STRAP, strap_case


def test_each_half_has_its_hole_in_its_own_piece() -> None:
    pattern = drafted(strap_case())
    first, second = pattern.piece("strap").fittings[0], pattern.piece("shell").fittings[0]
    assert (first.fitting, first.half, first.diameter, first.reach) == ("closure", 1, 4.5, 6.35)
    assert (second.fitting, second.half, second.diameter, second.reach) == ("closure", 2, 3.5, 6.35)
    for piece, hole in (("strap", first), ("shell", second)):
        (opening,) = pattern.piece(piece).openings
        assert opening.bounds.centre.distance_to(hole.at) < 1e-9
        assert opening.bounds.width == pytest.approx(hole.diameter)
        assert not opening.is_ccw
    assert pattern.piece("lining").fittings == ()


def test_a_half_without_a_hole_is_only_a_place() -> None:
    pattern = drafted(strap_case(fittings=(replace(SNAP, holes=(0.0, 3.5)),)))
    strap = pattern.piece("strap")
    assert strap.openings == ()
    assert [hole.diameter for hole in strap.fittings] == [0.0]


def test_a_fitting_that_meets_nothing_is_punched_once() -> None:
    pattern = drafted(strap_case(fittings=(replace(SNAP, meets=""),)))
    assert [len(piece.fittings) for piece in pattern.pieces] == [1, 0, 0]


def test_a_half_off_its_part_is_refused() -> None:
    high = replace(SNAP, spot=Spot(0, (Edge.LEFT, 14.0), (Edge.BOTTOM, 20.0)))
    with pytest.raises(DraftError, match=r"fitting 'closure' \(line 7\): its place lies off 'strap'"):
        drafted(strap_case(fittings=(high,)))


def test_a_second_half_off_its_part_is_refused() -> None:
    off = replace(SNAP, meets="lining")
    with pytest.raises(DraftError, match="lies off 'lining'"):
        drafted(strap_case(fittings=(off,), parts=(STRAP, SHELL, replace(LINING, drop=45.0))))


def test_a_strap_that_reaches_past_the_panel_it_meets_is_refused_with_the_distance() -> None:
    design = strap_case(parts=(STRAP, SHELL, LINING))
    body = replace(design.body, panels=(*design.body.panels[:2], PanelSpec("front", 60.0)))
    # The snap lies 31 mm from the fold; the front ends 60 mm from the other one, 102 - 60 = 42 mm from the first.
    with pytest.raises(DraftError, match=r"11\.00 mm off panel 'front'"):
        drafted(replace(design, body=body))


def test_halves_that_are_never_laid_on_each_other_are_refused() -> None:
    design = strap_case()
    body = replace(design.body, folds=(FoldSpec(90.0, relief=2.0), design.body.folds[1]))
    with pytest.raises(DraftError, match="never laid on each other"):
        drafted(replace(design, body=body))


MAGNET = replace(
    SNAP, kind="hidden-magnet-10", holes=(0.0, 0.0), reach=5.0, setting=Setting.COVERED, thickness=1.0, part="shell"
)


def test_a_hidden_half_has_no_hole_and_is_marked_on_its_piece_and_on_the_next_one_behind() -> None:
    """Behind the lining, which shows inside, lies the shell."""
    inside = replace(MAGNET, part="lining", spot=Spot(2, (Edge.LEFT, 30.0)), meets="")
    pattern = drafted(strap_case(fittings=(inside,)))
    assert [len(piece.marks) for piece in pattern.pieces] == [0, 1, 1]
    assert [len(piece.fittings) for piece in pattern.pieces] == [0, 0, 1]
    assert all(piece.openings == () for piece in pattern.pieces)
    shell, lining = pattern.piece("shell"), pattern.piece("lining")
    assert lining.marks[0].name == shell.marks[0].name == "closure"
    assert lining.marks[0].path.bounds.width == pytest.approx(10.0)
    middles = [piece.placement.to_assembly(piece.marks[0].path.bounds.centre) for piece in (shell, lining)]
    assert middles[0].distance_to(middles[1]) < 1e-9
    assert lining.marks[0].path.bounds.centre.distance_to(lining.fittings[0].at) < 1e-9


def test_a_hidden_half_with_nothing_behind_it_is_marked_on_its_own_piece_alone() -> None:
    # The strap lies on the outside of panel 0, where nothing else is.
    pattern = drafted(strap_case(fittings=(replace(MAGNET, part="strap", meets=""),)))
    assert [len(piece.marks) for piece in pattern.pieces] == [1, 0, 0]


def test_both_hidden_halves_come_to_lie_over_each_other() -> None:
    pattern = drafted(strap_case(fittings=(replace(MAGNET, part="strap"),)))
    snap = drafted(strap_case())
    for piece in ("strap", "shell"):
        assert pattern.piece(piece).fittings[0].at == snap.piece(piece).fittings[0].at
    # The second half lies behind the shell's outer face: the lining covers it.
    assert [len(piece.marks) for piece in pattern.pieces] == [1, 1, 1]


def test_a_hidden_half_off_its_part_is_refused() -> None:
    with pytest.raises(DraftError, match=r"fitting 'closure' \(line 7\): its place lies off 'lining'"):
        drafted(strap_case(fittings=(replace(MAGNET, part="lining", spot=Spot(0)),)))
