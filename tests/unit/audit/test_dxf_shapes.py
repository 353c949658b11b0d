"""DXF entities become the shapes that the DXF reference describes; values by hand."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from patternforge.audit.dxf_reading import dxf_file
from patternforge.audit.model import CutFile, Entity, Ring
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point


def read(*entities: str, blocks: str = "", unit: int = 4) -> CutFile:
    """A file of entities, each written as ``KIND 8 LAYER 10 1.0 ...``."""
    header = f"0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1024\n9\n$INSUNITS\n70\n{unit}\n0\nENDSEC\n"
    inner = "".join(f"0\n{lines(each)}\n" for each in entities)
    stored = f"0\nSECTION\n2\nBLOCKS\n{blocks}0\nENDSEC\n"
    return dxf_file(f"{header}{stored}0\nSECTION\n2\nENTITIES\n{inner}0\nENDSEC\n0\nEOF\n".encode(), "a.dxf")


def lines(words: str) -> str:
    return "\n".join(words.split())


def block(name: str, *entities: str, base: str = "0 0") -> str:
    x, y = base.split()
    return (
        f"0\nBLOCK\n2\n{name}\n10\n{x}\n20\n{y}\n"
        + "".join(f"0\n{lines(each)}\n" for each in entities)
        + "0\nENDBLK\n"
    )


def last(file: CutFile) -> Entity:
    return file.entities[-1]


def path(file: CutFile) -> Path:
    shape = last(file).shape
    assert isinstance(shape, Path)
    return shape


def ring(file: CutFile) -> Ring:
    shape = last(file).shape
    assert isinstance(shape, Ring)
    return shape


CIRCLE = "CIRCLE 8 C 10 4 20 5 40 2"
QUARTER = "ARC 8 C 10 4 20 5 40 2 50 0 51 90"


def near(p: Point, x: float, y: float) -> bool:
    return p.distance_to(Point(x, y)) < 1e-9


def test_a_circle_is_a_ring() -> None:
    assert ring(read(CIRCLE)) == Ring(Point(4, 5), 2)


def test_an_arc_runs_counter_clockwise_from_its_first_angle() -> None:
    arc = path(read(QUARTER))
    assert near(arc.start, 6, 5)
    assert near(arc.end, 4, 7)
    assert arc.length == pytest.approx(pi)
    over = path(read("ARC 8 C 10 4 20 5 40 2 50 270 51 90"))
    assert near(over.point_at(over.length / 2), 6, 5)


@pytest.mark.parametrize("end", ["0", "360"])
def test_an_arc_all_the_way_round_is_a_ring(end: str) -> None:
    assert ring(read(f"ARC 8 C 10 4 20 5 40 2 50 0 51 {end}")) == Ring(Point(4, 5), 2)


def test_bulges_belong_to_the_vertex_before_them() -> None:
    line = path(read("LWPOLYLINE 8 C 90 3 70 1 10 0 20 0 10 10 20 0 42 1.0 10 10 20 4"))
    assert [segment.is_arc for segment in line.segments] == [False, True, False]
    assert line.segments[1].radius == pytest.approx(2)
    assert line.segments[1].centre.x == pytest.approx(10)
    assert line.closed


def test_an_old_polyline_takes_its_vertices_and_leaves_out_those_of_its_frame() -> None:
    vertices = [
        f"VERTEX 8 C 10 {x} 20 {y} 70 {flag}" for x, y, flag in ((0, 0, 0), (50, 50, 16), (4, 0, 0), (4, 3, 0))
    ]
    line = path(read("POLYLINE 8 C 66 1 70 1 10 0 20 0", *vertices, "SEQEND 8 C"))
    assert [vertex[:2] for vertex in line.vertices] == [(0, 0), (4, 0), (4, 3)]


def test_a_plane_seen_from_behind_turns_left_to_right() -> None:
    assert ring(read(f"{CIRCLE} 210 0 220 0 230 -1")) == Ring(Point(-4, 5), 2)
    arc = path(read(f"{QUARTER} 210 0 220 0 230 -1"))
    assert near(arc.start, -6, 5)
    assert near(arc.end, -4, 7)
    assert arc.segments[0].bulge < 0


def test_a_block_is_turned_scaled_and_laid_with_its_base_on_the_place() -> None:
    stored = block("B", "CIRCLE 8 0 10 3 20 1 40 1", base="1 1")
    file = read("INSERT 8 CUT 2 B 10 100 20 50 41 2 42 2 50 90", blocks=stored)
    assert ring(file).centre.distance_to(Point(100, 54)) < 1e-9
    assert ring(file).radius == pytest.approx(2)
    assert last(file).look.layer == "CUT"


def test_blocks_in_blocks_and_rows_of_them_are_resolved() -> None:
    stored = block("A", "CIRCLE 8 X 10 1 20 0 40 1") + block("B", "INSERT 8 0 2 A 10 10 20 0")
    file = read("INSERT 8 CUT 2 B 10 0 20 0 70 3 44 20 71 2 45 30", blocks=stored)
    centres = {
        (round(each.shape.centre.x), round(each.shape.centre.y)) for each in file.cuts if isinstance(each.shape, Ring)
    }
    assert centres == {(11 + 20 * i, 30 * j) for i in range(3) for j in range(2)}
    assert {each.look.layer for each in file.cuts} == {"X"}


def test_a_circle_in_a_block_scaled_unevenly_is_the_ellipse_it_becomes() -> None:
    file = read("INSERT 8 CUT 2 B 10 0 20 0 41 3 42 1", blocks=block("B", "CIRCLE 8 0 10 0 20 0 40 2"))
    box = path(file).bounds
    assert [box.width, box.height] == pytest.approx([12, 4], abs=0.01)
    assert abs(path(file).area) == pytest.approx(pi * 6 * 2, abs=0.3)


def test_an_arc_in_a_block_scaled_unevenly_is_bent_with_it() -> None:
    file = read("INSERT 8 CUT 2 B 10 0 20 0 41 3 42 1", blocks=block("B", "ARC 8 0 10 0 20 0 40 2 50 0 51 90"))
    line = path(file)
    assert near(line.start, 6, 0)
    assert near(line.end, 0, 2)
    assert line.distance_to(Point(6 / sqrt(2), 2 / sqrt(2))) < 0.01


def test_the_unit_makes_mm() -> None:
    assert ring(read("CIRCLE 8 C 10 1 20 0 40 2", unit=1)) == Ring(Point(25.4, 0), 50.8)


def test_a_whole_ellipse_is_closed_and_half_of_one_is_not() -> None:
    whole = path(read("ELLIPSE 8 C 10 5 20 5 11 4 21 0 40 0.5 41 0 42 6.283185307179586"))
    assert whole.closed
    assert abs(whole.area) == pytest.approx(pi * 8, abs=0.15)
    half = path(read(f"ELLIPSE 8 C 10 5 20 5 11 4 21 0 40 0.5 41 0 42 {pi}"))
    assert not half.closed
    assert near(half.end, 1, 5)
    assert half.distance_to(Point(5, 7)) < 0.01


def test_a_spline_of_degree_three_with_four_points_is_the_bezier_curve() -> None:
    knots = " ".join(f"40 {k}" for k in (0, 0, 0, 0, 1, 1, 1, 1))
    points = " ".join(f"10 {x} 20 {y}" for x, y in ((0, 0), (0, 6), (9, 6), (9, 0)))
    line = path(read(f"SPLINE 8 C 71 3 {knots} {points}"))
    assert near(line.start, 0, 0)
    assert near(line.end, 9, 0)
    assert line.distance_to(Point(4.5, 4.5)) < 0.006


def test_a_weighted_spline_can_be_a_quarter_of_a_circle() -> None:
    """Les Piegl and Wayne Tiller, The NURBS Book, section 7.3: weights 1, cos 45 degrees, 1."""
    knots = " ".join(f"40 {k}" for k in (0, 0, 0, 1, 1, 1))
    weights = f"41 1 41 {sqrt(0.5)!r} 41 1"
    points = " ".join(f"10 {x} 20 {y}" for x, y in ((5, 0), (5, 5), (0, 5)))
    line = path(read(f"SPLINE 8 C 71 2 {knots} {weights} {points}"))
    assert all(abs(Point(x, y).norm - 5) < 1e-9 for x, y, _ in line.vertices)
    assert line.length == pytest.approx(2.5 * pi, abs=0.01)
