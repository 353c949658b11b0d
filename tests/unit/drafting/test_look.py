"""The drawing of a machine's sheet for the eye: everything on it, what it is told by, and never cut by mistake."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.audit.checks import checked
from patternforge.audit.reading import cut_file
from patternforge.drafting.look import WARNING, look_sheet
from patternforge.drawing.extent import extent, moved
from patternforge.drawing.model import Role, Sheet, Stroke, Text
from patternforge.drawing.stacked import room
from patternforge.export.svg import svg_bytes
from patternforge.geometry.transform import translation
from tests.unit.audit.clean import SHEET

LOOK = look_sheet(SHEET, "clean.dxf", ["A sleeve, revision B", "General laser, bed 500 mm wide"])


def texts(sheet: Sheet) -> list[str]:
    return [ink.content for figure in sheet.figures for ink in figure.inks if isinstance(ink, Text)]


def test_every_line_of_the_sheet_is_drawn_in_its_place() -> None:
    assert LOOK.figures[:2] == tuple(moved(figure, translation(8.0, 8.0)) for figure in SHEET.figures)


def test_it_says_what_it_is_of_and_that_it_is_not_to_be_cut_by() -> None:
    said = texts(LOOK)
    assert {WARNING, "clean.dxf", "A sleeve, revision B", "General laser, bed 500 mm wide", "100 mm"} <= set(said)
    assert "Sheet 210.0 x 90.0 mm. Numbers give the order of the pieces." in said


def test_pieces_are_numbered_in_their_order_with_size_and_leather() -> None:
    assert [words for words in texts(LOOK) if words[0] in "12"][:4] == [
        "1  left",
        "100.0 x 70.0 mm",
        "2  right",
        "100 mm",
    ]
    assert {"70.0 x 50.0 mm", "outer", "inner"} <= set(texts(LOOK))


def test_the_bar_is_a_hundred_millimetres_long() -> None:
    (bar,) = [
        ink for figure in LOOK.figures for ink in figure.inks if ink.role is Role.CHECK and isinstance(ink, Stroke)
    ]
    assert bar.path.bounds.width == pytest.approx(100.0)


def test_everything_lies_on_the_drawing() -> None:
    for sheet in (LOOK, look_sheet(replace(SHEET, width=20.0, height=20.0, figures=SHEET.figures[:0]), "a.dxf", [])):
        box = room([ink for figure in sheet.figures for ink in figure.inks])
        assert min(box.x0, box.y0) >= 0
        assert (box.x1 <= sheet.width, box.y1 <= sheet.height) == (True, True)


def test_names_stay_within_their_pieces() -> None:
    names = [ink for figure in LOOK.figures if figure.name == "name" for ink in figure.inks]
    left = extent(LOOK.figures[0].inks)
    assert room(names[:3]).x0 > left.x0
    assert room(names[:3]).x1 < left.x1


def test_operation_by_operation_each_piece_is_named_once() -> None:
    parted = tuple(replace(f, inks=tuple(i for i in f.inks if (i.role is Role.OUTLINE) is last))
                   for last in (False, True) for f in SHEET.figures)  # fmt: skip
    assert [each[3:] for each in texts(look_sheet(replace(SHEET, figures=parted), "a", [])) if each[1:3] == "  "] == [
        "left",
        "right",
    ]


def test_an_audit_refuses_it() -> None:
    found = [flaw.kind for each in checked(cut_file(svg_bytes(LOOK), "a.svg")) for flaw in each.flaws]
    assert "text" in found
