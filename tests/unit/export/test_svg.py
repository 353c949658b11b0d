from __future__ import annotations

import re
from dataclasses import replace
from itertools import combinations
from xml.etree import ElementTree

import pytest

from patternforge.drawing.model import Align, Dot, Figure, Page, Role, Sheet, Stroke, Text
from patternforge.errors import DraftError
from patternforge.export.svg import PENS, SvgOptions, svg_bytes
from patternforge.geometry.path import from_vertices, polyline
from patternforge.geometry.point import Point
from tests.figures import SLIT_CENTRES, panel, pocket, sheet, slit

SVG = "{http://www.w3.org/2000/svg}"
CUT_THROUGH = (Role.HOLE, Role.OPENING, Role.OUTLINE)
OUTLINE = Stroke(Role.OUTLINE, polyline([Point(0, 0), Point(9, 0)]))


def root(drawing: Sheet | Page, options: SvgOptions | None = None) -> ElementTree.Element:
    return ElementTree.fromstring(svg_bytes(drawing, options))


def one_sheet(*inks: Stroke | Dot | Text, name: str = "piece") -> Sheet:
    return Sheet("sheet", 50, 40, (Figure(name, "outer", inks),))


def operations(drawing: Sheet | Page, options: SvgOptions | None = None) -> dict[str, ElementTree.Element]:
    found = (group for group in root(drawing, options).iter(f"{SVG}g") if group.get("class") != "piece")
    return {group.get("class", ""): group for group in found}


def path_data(*inks: Stroke | Dot | Text) -> list[str]:
    return [path.get("d", "") for path in root(one_sheet(*inks)).iter(f"{SVG}path")]


def test_the_size_in_millimetres_is_the_size_of_the_view_box() -> None:
    top = root(replace(sheet(), width=210.25, height=297.0))
    assert (top.get("width"), top.get("height"), top.get("viewBox")) == ("210.25mm", "297mm", "0 0 210.25 297")


def test_each_piece_is_a_group_that_holds_one_group_for_each_operation() -> None:
    pieces = root(sheet()).findall(f"{SVG}g")
    assert [piece.get("class") for piece in pieces] == ["piece", "piece"]
    assert [piece.findtext(f"{SVG}title") for piece in pieces] == ["panel", "pocket"]
    assert [[group.get("class") for group in piece.findall(f"{SVG}g")] for piece in pieces] == [
        ["mark", "stitch-hole", "opening", "outline", "fold-line", "stitch-line", "label"],
        ["stitch-hole", "outline"],
    ]
    assert [group.get("id") for group in pieces[1].findall(f"{SVG}g")] == [
        "piece-pocket--stitch-hole",
        "piece-pocket--outline",
    ]


def test_inks_of_one_operation_that_stand_apart_share_one_group() -> None:
    hole = Dot(Role.HOLE, Point(1, 1), 1.0)
    groups = root(one_sheet(hole, OUTLINE, hole)).findall(f"{SVG}g/{SVG}g")
    assert [group.get("class") for group in groups] == ["stitch-hole", "outline"]
    assert len(groups[0]) == 2


def test_no_two_groups_share_an_identifier_whatever_the_pieces_are_called() -> None:
    names = ["Tasche", "Tasche", "tasche-2", "Tasche 2", "Börse", "", "--", "mark", "tasche--mark"]
    mark = Stroke(Role.MARK, polyline([Point(0, 0), Point(1, 0)]))
    drawing = Sheet("sheet", 50, 40, tuple(Figure(name, "outer", (mark,)) for name in names))
    found = [group.get("id", "") for group in root(drawing).iter(f"{SVG}g")]
    assert len(found) == len(set(found)) == 2 * len(names)
    assert all(re.fullmatch(r"[a-z][a-z0-9-]*", each) for each in found)


def test_a_page_holds_its_operations_without_pieces() -> None:
    page = Page("A 1", 210, 297, (OUTLINE, Stroke(Role.GUIDE, polyline([Point(0, 0), Point(1, 0)]))))
    assert [group.get("id") for group in root(page).findall(f"{SVG}g")] == ["outline", "guide"]


def test_y_runs_downwards_and_arcs_keep_their_side() -> None:
    # Counter-clockwise seen with y upwards is drawn in the negative angle direction of the file: sweep flag 0.
    dome = Stroke(Role.OUTLINE, from_vertices([(0, 0, 0), (10, 0, 0.41421356237309503), (0, 10, 0)], closed=True))
    assert path_data(dome) == ["M0 40L10 40A10 10 0 0 0 0 30Z"]
    hollow = Stroke(Role.OUTLINE, from_vertices([(0, 0, 0), (10, 0, -0.41421356237309503), (0, 10, 0)], closed=True))
    assert path_data(hollow) == ["M0 40L10 40A10 10 0 0 1 0 30Z"]


def test_an_arc_too_wide_for_its_radius_to_be_sure_is_written_in_equal_parts() -> None:
    half = Stroke(Role.OUTLINE, from_vertices([(0, 0, 1.0), (10, 0, 0)], closed=True))
    assert path_data(half) == ["M0 40A5 5 0 0 0 5 45A5 5 0 0 0 10 40Z"]


def test_a_closed_stroke_that_ends_in_an_arc_draws_it_to_the_end() -> None:
    lens = Stroke(Role.OPENING, from_vertices([(0, 0, 0.2), (10, 0, 0.2)], closed=True))
    (data,) = path_data(lens)
    assert data.count("A") == 2
    assert data.endswith(" 0 40Z")


def test_an_open_stroke_is_not_closed() -> None:
    assert path_data(OUTLINE, Stroke(Role.MARK, polyline([Point(0, 0), Point(1, 0), Point(1, 1)]))) == [
        "M0 40L9 40",
        "M0 40L1 40L1 39",
    ]


def test_a_dot_is_a_full_circle() -> None:
    (circle,) = root(one_sheet(Dot(Role.HOLE, Point(12.5, 30), 1.2))).iter(f"{SVG}circle")
    assert (circle.get("cx"), circle.get("cy"), circle.get("r")) == ("12.5", "10", "0.6")


def test_a_row_of_slits_is_one_path_and_an_arc_among_them_one_of_its_own() -> None:
    arc = Stroke(Role.HOLE, from_vertices([(0, 0, 0.1), (2, 0, 0)], closed=False))
    slits = [slit(centre) for centre in SLIT_CENTRES]
    data = path_data(*slits[:4], arc, *slits[4:])
    assert [each.count("M") for each in data] == [4, 1, 6]


def test_lines_are_thin_enough_to_cut_along() -> None:
    widths = [float(group.get("stroke-width", "inf")) for group in operations(sheet()).values()]
    assert len(widths) == 7
    assert max(widths) <= 0.25
    assert max(pen.width for pen in PENS.values()) <= 0.25


def test_every_operation_has_a_pen_of_its_own_colour() -> None:
    assert set(PENS) == set(Role)
    assert len({pen.colour for pen in PENS.values()}) == len(Role)


def test_cut_mark_fold_and_stitch_lines_differ_without_colour() -> None:
    looks = [PENS[role].dashes for role in (Role.OUTLINE, Role.MARK, Role.FOLD, Role.SEAM, Role.GUIDE)]
    assert all(one != other for one, other in combinations(looks, 2))


def test_what_is_cut_through_is_never_dashed() -> None:
    assert [PENS[role].dashes for role in CUT_THROUGH] == [(), (), ()]
    groups = operations(sheet())
    assert groups["outline"].get("stroke-dasharray") is None
    assert groups["fold-line"].get("stroke-dasharray") == "6 1.5"


def test_shapes_are_outlines_and_never_filled() -> None:
    groups = operations(sheet())
    assert {group.get("fill") for group in groups.values()} == {"none"}


def test_only_the_roles_asked_for_are_written_and_with_the_pens_asked_for() -> None:
    pens = dict(PENS) | {Role.OUTLINE: replace(PENS[Role.OUTLINE], colour="#ff0000")}
    groups = operations(sheet(), SvgOptions(roles=(Role.HOLE, Role.OUTLINE), pens=pens))
    assert sorted(groups) == ["outline", "stitch-hole"]
    assert groups["outline"].get("stroke") == "#ff0000"


def test_words_are_text_as_they_are_written() -> None:
    (text,) = root(sheet()).iter(f"{SVG}text")
    assert text.text == "Panel <A> & lining"
    assert text.get("text-anchor") == "middle"
    # The panel stands at (10, 10) on a sheet 95 high; its label runs upwards, which is a turn by -90 in the file.
    assert (text.get("x"), text.get("y"), text.get("transform")) == ("30", "45", "rotate(-90 30 45)")
    assert text.get("stroke") == "none"
    assert text.get("fill") == PENS[Role.LABEL].colour


@pytest.mark.parametrize(("align", "anchor"), [(Align.LEFT, "start"), (Align.CENTRE, "middle"), (Align.RIGHT, "end")])
def test_a_text_starts_centres_or_ends_at_its_place(align: Align, anchor: str) -> None:
    (text,) = root(one_sheet(Text(Role.LABEL, Point(1, 1), 3.0, "a", align=align))).iter(f"{SVG}text")
    assert text.get("text-anchor") == anchor


def test_the_font_is_larger_than_its_capitals() -> None:
    # The H of Liberation Sans is 0.688 of the font size tall, that of DejaVu Sans 0.729 (their glyf tables).
    (text,) = root(one_sheet(Text(Role.LABEL, Point(1, 1), 3.5, "a"))).iter(f"{SVG}text")
    assert text.get("font-size") == "5"


def test_a_name_full_of_markup_stays_a_name() -> None:
    name = '<script>alert("x")</script> & ]]>'
    top = root(one_sheet(OUTLINE, Text(Role.LABEL, Point(1, 1), 3.0, name), name=name))
    assert top.findtext(f"{SVG}g/{SVG}title") == name
    assert [text.text for text in top.iter(f"{SVG}text")] == [name]
    assert not list(top.iter(f"{SVG}script"))


@pytest.mark.parametrize("words", ["bell \x07", "null \x00", "half \ud800", "odd \uffff"])
def test_characters_that_no_xml_file_may_hold_are_refused(words: str) -> None:
    with pytest.raises(DraftError, match="control character"):
        svg_bytes(one_sheet(Text(Role.LABEL, Point(1, 1), 3.0, words)))
    with pytest.raises(DraftError, match="control character"):
        svg_bytes(one_sheet(OUTLINE, name=words))


def test_numbers_have_four_decimals_at_most() -> None:
    drawing = Sheet("sheet", 100, 90, (panel(), pocket()))
    shapes = [
        value
        for element in root(drawing).iter()
        for key, value in element.items()
        if key in {"d", "cx", "cy", "r", "x", "y", "font-size", "transform"}
    ]
    numbers = [number for shape in shapes for number in re.findall(r"-?[\d.]+(?:e-?\d+)?", shape)]
    assert len(numbers) > 100
    assert all(re.fullmatch(r"-?\d+(\.\d{1,4})?", number) and number != "-0" for number in numbers)


def test_every_character_that_xml_refuses_is_refused() -> None:
    # XML 1.0, production 2: Char.
    char = re.compile("[\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
    strays = [chr(code) for code in range(0x10000) if not char.match(chr(code))]
    assert len(strays) == 29 + 2048 + 2
    for stray in strays:
        with pytest.raises(DraftError, match="control character"):
            svg_bytes(Page(f"a{stray}", 50, 40, ()))
