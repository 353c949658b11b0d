"""Which inks a machine is sent, and in which order."""

from __future__ import annotations

from patternforge.drawing.course import Course, in_roles
from patternforge.drawing.model import Role
from patternforge.export.dxf import CUT_ROLES
from tests.figures import panel, pocket, sheet

ROLES = [[ink.role for ink in figure.inks if ink.role in CUT_ROLES] for figure in sheet().figures]


def test_the_cutting_roles_of_a_figure_stay_in_their_order() -> None:
    assert [[ink.role for ink in figure.inks] for figure in in_roles(sheet(), CUT_ROLES).figures] == ROLES


def test_within_a_figure_roles_come_in_the_order_asked_for() -> None:
    order = (Role.HOLE, Role.OPENING, Role.MARK, Role.OUTLINE)
    first, _ = in_roles(sheet(), order).figures
    found = [ink.role for ink in first.inks]
    assert found == sorted(found, key=order.index)
    assert len(found) == len(ROLES[0])


def test_what_no_role_asks_for_is_left_out_with_the_figures_it_empties() -> None:
    only = in_roles(sheet(), (Role.OPENING,))
    assert [(figure.name, len(figure.inks)) for figure in only.figures] == [(panel().name, 1)]


def test_operation_by_operation_every_piece_has_one_operation_before_the_next_begins() -> None:
    parted = in_roles(sheet(), CUT_ROLES, Course.OPERATIONS)
    assert [(figure.name, {ink.role for ink in figure.inks}) for figure in parted.figures] == [
        (panel().name, {Role.MARK}),
        (panel().name, {Role.HOLE}),
        (pocket().name, {Role.HOLE}),
        (panel().name, {Role.OPENING}),
        (panel().name, {Role.OUTLINE}),
        (pocket().name, {Role.OUTLINE}),
    ]


def test_the_size_of_the_sheet_stays() -> None:
    cut = in_roles(sheet(), (Role.HOLE,))
    assert (cut.width, cut.height, cut.name) == (sheet().width, sheet().height, sheet().name)
