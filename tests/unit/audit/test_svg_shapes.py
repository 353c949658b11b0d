"""SVG elements become the shapes that SVG 1.1 describes, in mm from the lower left of the page; values by hand."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from patternforge.audit.model import CutFile, Ring
from patternforge.audit.svg_reading import svg_file
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="{}" height="{}" viewBox="{}">'
LOOK = 'fill="none" stroke="black" stroke-width="0.2"'


def read(inner: str, width: str = "100mm", height: str = "80mm", view: str = "0 0 100 80") -> CutFile:
    return svg_file(f"{HEAD.format(width, height, view)}<g {LOOK}>{inner}</g></svg>".encode(), "a.svg")


def path(file: CutFile) -> Path:
    shape = file.entities[-1].shape
    assert isinstance(shape, Path)
    return shape


def ring(file: CutFile) -> Ring:
    shape = file.entities[-1].shape
    assert isinstance(shape, Ring)
    return shape


def near(p: Point, x: float, y: float, within: float = 1e-9) -> bool:
    return p.distance_to(Point(x, y)) < within


def test_y_is_turned_to_run_upwards() -> None:
    assert ring(read('<circle cx="10" cy="20" r="3"/>')) == Ring(Point(10, 60), 3)


def test_width_and_viewbox_give_the_scale_and_the_corner() -> None:
    found = ring(read('<circle cx="10" cy="20" r="3"/>', "200mm", "160mm", "5 10 100 80"))
    assert near(found.centre, 10, 140)
    assert found.radius == pytest.approx(6)


def test_px_are_96_to_the_inch() -> None:
    found = read('<circle cx="96" cy="0" r="9.6"/>', "960", "480", "0 0 960 480")
    assert near(ring(found).centre, 25.4, 127)
    assert ring(found).radius == pytest.approx(2.54)


def test_lengths_with_units_are_reckoned_in_px_of_the_drawing() -> None:
    assert ring(read('<circle cx="1in" cy="0" r="1"/>', "96mm", "96mm", "0 0 96 96")).centre.x == pytest.approx(96)


def test_a_rectangle_with_round_corners_has_four_lines_and_four_arcs() -> None:
    box = path(read('<rect x="10" y="10" width="40" height="20" rx="5"/>'))
    assert [segment.is_arc for segment in box.segments].count(True) == 4
    assert {round(segment.radius, 9) for segment in box.segments if segment.is_arc} == {5}
    assert abs(box.area) == pytest.approx(800 - (4 - pi) * 25)


def test_a_rectangle_that_is_all_corners_is_a_circle() -> None:
    assert near(ring(read('<rect x="10" y="10" width="8" height="8" rx="9"/>')).centre, 14, 66)


def test_a_rectangle_with_elliptic_corners_is_the_area_of_its_ellipses_short() -> None:
    box = path(read('<rect x="10" y="10" width="40" height="20" rx="8" ry="4"/>'))
    assert abs(box.area) == pytest.approx(800 - (4 - pi) * 32, abs=0.2)


@pytest.mark.parametrize(
    ("flags", "middle"),
    [("0 0", (15, 70 - 5 * (2 - sqrt(3)))), ("0 1", (15, 70 + 5 * (2 - sqrt(3))))],
)
def test_arcs_bend_to_the_side_of_their_flags(flags: str, middle: tuple[float, float]) -> None:
    """From (10, 10) to (20, 10) with a radius of 10: the rise is 10 less half the root of 300."""
    arc = path(read(f'<path d="M10 10A10 10 0 {flags} 20 10"/>'))
    x, y = middle
    assert near(arc.point_at(arc.length / 2), x, y)


@pytest.mark.parametrize(("flags", "rise"), [("1 0", -1), ("1 1", 1)])
def test_the_large_way_round_is_longer_than_half(flags: str, rise: int) -> None:
    arc = path(read(f'<path d="M40 40A10 10 0 {flags} 50 40"/>'))
    assert arc.length == pytest.approx(10 * (2 * pi - pi / 3))
    assert near(arc.point_at(arc.length / 2), 45, 40 + rise * (10 + 5 * sqrt(3)))


def test_an_arc_too_small_for_its_ends_grows_to_half_a_circle() -> None:
    arc = path(read('<path d="M10 10A1 1 0 0 1 20 10"/>'))
    assert arc.length == pytest.approx(5 * pi)


def test_flags_may_run_together_with_what_follows() -> None:
    loose = path(read('<path d="M10 10a5 5 0 0 1 10 0z"/>'))
    assert path(read('<path d="M10 10a5,5,0,0110,0z"/>')) == loose


def test_letters_left_out_are_the_one_before() -> None:
    line = path(read('<path d="m10 10 5 0 0 5z"/>'))
    assert [vertex[:2] for vertex in line.vertices] == [(10, 70), (15, 70), (15, 65)]


def test_after_a_close_a_path_goes_on_from_where_that_part_began() -> None:
    file = read('<path d="M10 10h5v5zh-5v-5z"/>')
    assert [each.at for each in file.entities] == [Point(10, 70), Point(10, 70)]
    assert near(path(file).segments[0].end, 5, 70)


def test_a_cubic_curve_passes_through_its_middle() -> None:
    """At half its parameter a Bezier curve is at (start + 3 first + 3 second + end) / 8."""
    curve = path(read('<path d="M0 0C0 40 60 40 60 0"/>'))
    assert curve.distance_to(Point(30, 80 - 30)) < 0.006


def test_a_smooth_curve_goes_on_as_the_one_before_came() -> None:
    whole = path(read('<path d="M0 0C0 20 30 20 30 0C30 -20 60 -20 60 0"/>', view="0 -40 100 80"))
    smooth = path(read('<path d="M0 0C0 20 30 20 30 0S60 -20 60 0"/>', view="0 -40 100 80"))
    assert smooth == whole
    quadratic = path(read('<path d="M0 0Q15 20 30 0Q45 -20 60 0"/>', view="0 -40 100 80"))
    assert path(read('<path d="M0 0Q15 20 30 0T60 0"/>', view="0 -40 100 80")) == quadratic


def test_transforms_work_from_the_last_to_the_first() -> None:
    found = ring(read('<circle cx="1" cy="0" r="1" transform="translate(10 20) rotate(90) scale(2)"/>'))
    assert near(found.centre, 10, 80 - 22)
    assert found.radius == pytest.approx(2)
    about = ring(read('<circle cx="12" cy="20" r="1" transform="rotate(90 10 20)"/>'))
    assert near(about.centre, 10, 80 - 22)


def test_a_mirror_turns_arcs_the_other_way() -> None:
    plain = path(read('<path d="M10 10A10 10 0 0 1 20 10"/>'))
    turned = path(read('<path transform="matrix(-1 0 0 1 30 0)" d="M20 10A10 10 0 0 1 10 10"/>'))
    assert turned.segments[0].bulge == -path(read('<path d="M20 10A10 10 0 0 1 10 10"/>')).segments[0].bulge
    assert turned.bounds.y0 == pytest.approx(plain.bounds.y0 - (plain.bounds.height))


def test_a_copy_stands_where_it_is_used_and_a_symbol_in_its_box() -> None:
    copies = read('<defs><circle id="h" r="3"/></defs><use href="#h" x="10" y="20"/>')
    assert near(ring(copies).centre, 10, 60)
    symbol = '<symbol id="s" viewBox="0 0 10 10"><circle cx="5" cy="5" r="5"/></symbol>'
    boxed = read(
        f'{symbol}<use xmlns:x="http://www.w3.org/1999/xlink" x:href="#s" x="10" y="10" width="20" height="40"/>'
    )
    assert near(ring(boxed).centre, 20, 80 - 30)
    assert ring(boxed).radius == pytest.approx(10)


def test_what_is_only_kept_ready_is_not_drawn() -> None:
    kept = "".join(
        f"<{tag}><circle r='3'/></{tag}>" for tag in ("defs", "clipPath", "mask", "pattern", "marker", "symbol")
    )
    assert read(kept).entities == ()


def test_style_counts_more_than_the_sheet_and_the_sheet_more_than_attributes() -> None:
    sheet = "<style>circle { stroke: red } .a { stroke: green } #b { stroke: blue }</style>"
    for more, colour in (("", "red"), ('class="a"', "green"), ('class="a" id="b"', "blue")):
        assert read(f'{sheet}<circle r="3" stroke="black" {more}/>').entities[-1].look.colour == colour
    assert read(f'{sheet}<circle id="b" r="3" style="stroke:pink"/>').entities[-1].look.colour == "pink"


def test_the_width_of_a_line_grows_with_its_group() -> None:
    found = read('<g transform="scale(3)"><circle r="3" stroke-width="0.5"/></g>', "200mm", "160mm")
    assert found.entities[-1].look.width == pytest.approx(3.0)
