"""Plots are read by what their commands mean, and damage to them is found in its place."""

from __future__ import annotations

from math import pi, radians

import pytest

from patternforge.audit.model import FileKind, Odd, Ring
from patternforge.audit.reading import cut_file
from patternforge.errors import ReadingError
from patternforge.export.hpgl import hpgl_bytes
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from tests.unit.audit.clean import SHEET, flaws, found_at

CLEAN = hpgl_bytes(SHEET).decode("ascii")
SQUARE = "PU0,0;PD400,0,400,400,0,400,0,0;"


def shapes(text: str) -> list[Path | Ring | None]:
    return [each.shape for each in cut_file(text.encode("ascii"), "a.hpgl").entities]


def test_the_plot_that_the_faults_are_made_from_is_clean() -> None:
    file = cut_file(CLEAN.encode("ascii"), "a.hpgl")
    assert (file.kind, file.unit, len(file.cuts)) == (FileKind.HPGL, "1/40 mm", 36)
    assert flaws(CLEAN) == []


def test_a_unit_is_a_fortieth_of_a_millimetre() -> None:
    (square,) = shapes(f"IN;SP1;{SQUARE}PU;SP0;")
    assert isinstance(square, Path)
    assert (square.closed, square.length, square.bounds.x1) == (True, 40.0, 10.0)


@pytest.mark.parametrize(
    "text",
    [
        "IN;SP1;PA0,0;PD;PA400,0,400,400,0,400,0,0;PU;SP0;",
        "IN;SP1;PU0,0;PR;PD400,0,0,400,-400,0,0,-400;PU;SP0;",
        "IN SP1 PU0 0 PD400 0 PD400 400 PD0 400 PD0 0 PU",
        "\x1b%-1BIN;SP1;VS10;PU0,0PD400,0PD400,400PD0,400PD0,0PUSP0;",
        "in;sp1;pu0,0;\npd400,0,400,400;\npd0,400,0,0;pu;",
    ],
)
def test_one_square_in_many_words(text: str) -> None:
    assert shapes(text) == shapes(f"IN;SP1;{SQUARE}PU;SP0;")


def test_arcs_and_circles_are_true() -> None:
    (half,) = shapes("IN;SP1;PU400,0;PD;AA0,0,180;PU;")
    assert isinstance(half, Path)
    assert half.length == pytest.approx(10 * pi)
    assert (half.end.x, half.end.y) == pytest.approx((-10, 0), abs=1e-9)
    (ring,) = shapes("IN;SP1;PU400,400;CI200;")
    assert isinstance(ring, Ring)
    assert (ring.centre.x, ring.radius) == (10.0, 5.0)


@pytest.mark.parametrize(
    ("arc", "turned", "closed"),
    # A sweep is a clamped real number from -32768 to 32767 (PCL 5 Printer Language Technical Reference Manual, part
    # II, commands AA and AR); the pen goes through all of it and stays where the arc ends. 32767 = 91 x 360 + 7.
    [
        ("AA0,0,450", 450, False),
        ("AA0,0,-540", -540, False),
        ("AA0,0,720", 720, True),
        ("AR-400,0,-1080", -1080, True),
        ("AA0,0,32767", 32767, False),
        ("AA0,0,1000000", 32767, False),
        ("AA0,0,-1000000", -32768, False),
    ],
)
def test_an_arc_of_more_than_a_turn_goes_round_again(arc: str, turned: float, closed: bool) -> None:
    text = f"IN;SP1;PU400,0;PD;{arc};PU;SP0;"
    (shape,) = shapes(text)
    assert isinstance(shape, Path)
    assert shape.length == pytest.approx(10 * abs(radians(turned)))
    assert shape.segments[-1].end.distance_to(Point(10.0, 0.0).rotated(radians(turned))) < 1e-6
    assert shape.closed is closed
    assert [each.what for each in flaws(text) if each.kind == "drawn twice"]


@pytest.mark.parametrize("places", ["PA", "PR"])
@pytest.mark.parametrize("arc", ["AA0,0,180", "AR-400,0,180"])
def test_the_command_alone_says_whether_a_centre_is_a_place_or_a_step(arc: str, places: str) -> None:
    (half,) = shapes(f"IN;SP1;PU400,0;{places};PD;{arc};PU;SP0;")
    assert isinstance(half, Path)
    assert half.length == pytest.approx(10 * pi)
    assert half.end.distance_to(Point(-10.0, 0.0)) < 1e-9


@pytest.mark.parametrize("arc", ["AA0,0,360", "AA0,0,-360", "AA0,0,180;AA0,0,180"])
def test_a_full_turn_is_a_circle(arc: str) -> None:
    (ring,) = shapes(f"IN;SP1;PU400,0;PD;{arc};PU;SP0;")
    assert isinstance(ring, Ring)
    assert (ring.centre.x, ring.radius) == pytest.approx((0.0, 10.0), abs=1e-9)


def test_each_pen_is_a_layer_and_parts_what_is_drawn() -> None:
    file = cut_file(b"IN;SP1;PU0,0;PD40,0;SP2;PD80,0;PU;SP0;", "a.plt")
    assert [each.look.layer for each in file.entities] == ["pen 1", "pen 2"]


def with_run(points: str) -> str:
    """The clean plot with one more run from (150, 40) mm."""
    return CLEAN.replace("SP0;", f"PU6000,1600;PD{points};PU;SP0;")


@pytest.mark.parametrize(
    ("text", "kind", "at"),
    [
        (CLEAN.replace("PU;\nSP0;", "PU8200,1600;PD8200,1900;PU;\nSP0;"), "loose line", (205, 40)),
        (with_run("6200,1600,6200,1800,6000,1800,6000,1602"), "open contour", (150, 40)),
        (with_run("6200,1800,6200,1600,6000,1800,6000,1600"), "crossing", (152.5, 42.5)),
        (with_run("6000,1600"), "line without length", (150, 40)),
        (CLEAN.replace("IN;", "IN;SC0,100,0,100;"), "broken", None),
        (CLEAN.replace("SP0;", "LBcut here\x03;SP0;"), "text", (135, 10)),
    ],
)  # fmt: skip
def test_the_fault_is_found_in_its_place(text: str, kind: str, at: tuple[float, float] | None) -> None:
    found = flaws(text)
    told = [(each.kind, each.what, each.at) for each in found]
    assert found_at(found, kind, *at) if at else kind in [each.kind for each in found], told


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("IN;SP1;\nPU0,0;\nPX4,4;", "line 3: the command PX is not known"),
        ("IN;SP1;\nPU0,a;", r"line 2: .* is no command"),
        (f"IN;\nSP{'9' * 400};PD40,40;", r"line 2: .* is no command"),
        (f"IN;SP1;\nPD0,{'9' * 20};", r"line 2: .* is no command"),
    ],
)
def test_what_is_no_plot_is_refused_with_its_line(text: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words):
        cut_file(text.encode("ascii"), "a.hpgl")


def test_a_run_too_short_to_draw_is_a_dot_with_its_place() -> None:
    (dot,) = cut_file(b"IN;SP1;PU40,40;PD40,40;PU;SP0;", "a.hpgl").entities
    assert (dot.shape, dot.has(Odd.ZERO), dot.at.x) == (None, True, 1.0)
