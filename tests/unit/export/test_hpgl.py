"""Plots: commands, pens, units, what is refused."""

from __future__ import annotations

import re

import pytest

from patternforge.drawing.model import Area, Dot, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.errors import DraftError
from patternforge.export.hpgl import HpglOptions, hpgl_bytes
from patternforge.geometry.path import from_vertices, polygon, polyline
from patternforge.geometry.point import Point
from tests.figures import sheet

SQUARE = Stroke(Role.OUTLINE, polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)]))
SLIT = Stroke(Role.HOLE, polyline([Point(1.01, 2), Point(3.02, 2)]))
TICK = Stroke(Role.MARK, polyline([Point(5, 0), Point(5, 2)]))


def commands(*inks: Ink, options: HpglOptions | None = None) -> list[str]:
    data = hpgl_bytes(Sheet("sheet", 50, 50, (Figure("piece", "outer", inks),)), options)
    return data.decode("ascii").splitlines()


def test_a_square_of_10_mm_is_400_units_wide_and_ends_where_it_began() -> None:
    assert commands(SQUARE) == ["IN;", "PA;", "SP1;", "PU0,0;", "PD400,0,400,400,0,400,0,0;", "PU;", "SP0;"]


def test_coordinates_are_rounded_to_the_nearest_unit() -> None:
    # 1.01 mm is 40.4 units, 3.02 mm 120.8.
    assert "PU40,80;" in commands(SLIT)
    assert "PD121,80;" in commands(SLIT)


def test_a_pen_is_selected_where_it_changes_and_the_pen_is_up_meanwhile() -> None:
    pens = {Role.MARK: 3, Role.HOLE: 1, Role.OPENING: 1, Role.OUTLINE: 1}
    found = commands(TICK, SLIT, SQUARE, TICK, options=HpglOptions(pens=pens))
    selected = [(i, line) for i, line in enumerate(found) if line.startswith("SP")]
    assert [line for _, line in selected] == ["SP3;", "SP1;", "SP3;", "SP0;"]
    assert all(found[i - 1] == "PU;" for i, _ in selected[1:])


def test_only_the_roles_asked_for_are_plotted() -> None:
    found = commands(TICK, SLIT, SQUARE, options=HpglOptions(roles=(Role.HOLE,)))
    assert [line for line in found if line.startswith("PD")] == ["PD121,80;"]


def test_a_long_run_is_parted_into_commands_of_32_points() -> None:
    wave = Stroke(Role.MARK, polyline([Point(i, i % 2) for i in range(100)]))
    runs = [line.count(",") for line in commands(wave) if line.startswith("PD")]
    assert runs == [63, 63, 63, 5]


def test_points_that_fall_on_one_unit_are_given_once() -> None:
    crowded = Stroke(Role.MARK, polyline([Point(1, 1), Point(1.004, 1), Point(1.008, 1), Point(2, 1)]))
    assert "PD80,40;" in commands(crowded)


def test_what_is_smaller_than_a_unit_is_a_dot() -> None:
    speck = Stroke(Role.MARK, polyline([Point(1, 1), Point(1.01, 1)]))
    assert [line for line in commands(speck) if line.startswith("P")][1:3] == ["PU40,40;", "PD40,40;"]


def test_arcs_and_circles_are_chords_whose_number_follows_their_tolerance() -> None:
    """r = 5 and 0.005: chords of half angle 2.5625 degrees, 36 for each half; 0.02: 5.126 degrees, 18 for each."""
    for tolerance, count in ((0.005, 72), (0.02, 36)):
        found = commands(Dot(Role.HOLE, Point(20, 20), 10.0), options=HpglOptions(chords=tolerance))
        moves = [line for line in found if line.startswith("PD")]
        assert sum(line.count(",") + 1 for line in moves) == 2 * count


def test_there_is_no_text_no_arc_and_nothing_but_the_six_commands() -> None:
    data = hpgl_bytes(sheet()).decode("ascii")
    assert re.fullmatch(r"(?:(?:IN|PA|SP\d|(?:PU|PD)(?:-?\d+(?:,-?\d+)*)?);\n)+", data)


def test_a_text_and_a_filled_area_are_refused_but_only_in_a_role_to_be_plotted() -> None:
    words, patch = Text(Role.MARK, Point(1, 1), 5.0, "AB"), Area(Role.OUTLINE, (SQUARE.path,), 0.5)
    for ink in (words, patch):
        with pytest.raises(DraftError, match=f"a {ink.role.value} that is no line"):
            commands(ink, SQUARE)
    assert len(commands(Text(Role.LABEL, Point(1, 1), 5.0, "AB"), SQUARE)) == 7


def test_a_sheet_with_nothing_to_plot_is_refused() -> None:
    with pytest.raises(DraftError, match="holds nothing to write: no mark, no stitch hole, no opening, no outline"):
        commands(Stroke(Role.FOLD, TICK.path))


def test_places_left_of_and_below_the_origin_keep_their_sign() -> None:
    found = commands(Stroke(Role.MARK, from_vertices([(-2, -1, 0), (2, 1, 0)], closed=False)))
    assert "PU-80,-40;" in found
