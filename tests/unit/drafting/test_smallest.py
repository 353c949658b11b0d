"""The smallest hole, gap and radius of a whole pattern, as far as a machine cuts it through."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.drafting.smallest import Spot, smallest
from patternforge.drawing.model import Role
from patternforge.export.dxf import CUT_ROLES
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import HoleShape, HoleSpec
from tests.designs_built import sleeve, two_fold, with_holes


@pytest.fixture(scope="module")
def pattern() -> Pattern:
    return drafted(with_holes(sleeve(), HoleSpec(HoleShape.ROUND, diameter=1.2)))


def is_at(spot: Spot | None, size: float, name: str) -> bool:
    return spot is not None and spot.piece == name and abs(spot.size - size) < 1e-9


def ring(x: float, y: float, radius: float) -> Path:
    """A round opening as it is drawn: two half circles."""
    return from_vertices([(x + radius, y, -1), (x - radius, y, -1)], closed=True)


def opened(pattern: Pattern, *openings: Path) -> Pattern:
    """The pattern with these openings in its first piece."""
    first, *others = pattern.pieces
    return replace(pattern, pieces=(replace(first, openings=openings), *others))


def test_round_stitch_holes_count_only_where_they_are_cut(pattern: Pattern) -> None:
    first = pattern.pieces[0].name
    assert is_at(smallest(pattern, CUT_ROLES).hole, 1.2, first)
    assert smallest(pattern, (Role.OPENING, Role.OUTLINE)).hole is None


def test_a_slit_is_no_hole() -> None:
    slits = drafted(with_holes(sleeve(), HoleSpec(HoleShape.SLIT, length=2.0)))
    assert smallest(slits, CUT_ROLES).hole is None


def test_a_round_opening_is_a_hole_and_of_all_the_smallest_is_named(pattern: Pattern) -> None:
    changed = opened(pattern, ring(40, 30, 0.4), ring(50, 30, 3.0))
    assert is_at(smallest(changed, CUT_ROLES).hole, 0.8, pattern.pieces[0].name)
    assert is_at(smallest(changed, (Role.HOLE, Role.OUTLINE)).hole, 1.2, pattern.pieces[0].name)


def test_a_window_is_no_hole_but_has_a_radius(pattern: Pattern) -> None:
    changed = opened(pattern, rounded_rectangle(30, 20, 50, 40, 0.7).cw())
    assert is_at(smallest(changed, CUT_ROLES).radius, 0.7, pattern.pieces[0].name)
    assert is_at(smallest(changed, CUT_ROLES).hole, 1.2, pattern.pieces[0].name)


def test_the_gap_beside_stitch_holes_counts_only_where_they_are_cut(pattern: Pattern) -> None:
    with_them, without = smallest(pattern, CUT_ROLES).gap, smallest(pattern, (Role.OUTLINE,)).gap
    assert with_them is not None
    assert with_them.size < 3.38 - 1.2 + 0.1  # pitch less a hole, where nothing is nearer
    assert without is None or without.size > 10


def test_the_room_in_a_slot_is_a_gap_too(pattern: Pattern) -> None:
    changed = opened(pattern, rounded_rectangle(30, 20, 50, 20.4, 0.0).cw())
    assert is_at(smallest(changed, CUT_ROLES).gap, 0.4, pattern.pieces[0].name)


def test_of_several_pieces_the_one_with_the_smallest_is_named() -> None:
    two = drafted(two_fold())
    found = smallest(two, CUT_ROLES)
    assert found.radius is not None
    assert found.radius.size == pytest.approx(2.0)  # the shoulders of the tee pockets
    assert "cards" in found.radius.piece
