"""Hardware: a hole for each half, in the piece that carries it, or a refusal that names the fitting."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.errors import DraftError
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
