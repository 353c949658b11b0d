"""Pens for paper."""

from __future__ import annotations

from itertools import combinations

from patternforge.drawing.model import Role
from patternforge.export.pdf_pens import PENS

CUT, DRAWN = Role.OUTLINE, (Role.FOLD, Role.SEAM, Role.MARK, Role.GUIDE)


def test_every_role_has_a_pen() -> None:
    assert set(PENS) == set(Role)


def test_no_line_is_wider_than_a_quarter_of_a_millimetre() -> None:
    assert all(0 < pen.width <= 0.25 for pen in PENS.values())


def test_cut_fold_and_stitch_lines_differ_in_dash_as_well_as_in_colour() -> None:
    for one, other in combinations((CUT, *DRAWN), 2):
        assert PENS[one].dash != PENS[other].dash
        assert PENS[one].colour != PENS[other].colour


def test_what_is_cut_through_is_solid() -> None:
    assert [PENS[role].dash for role in (Role.OUTLINE, Role.OPENING, Role.HOLE)] == [(), (), ()]
