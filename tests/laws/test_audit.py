"""Any sheet that is drawn soundly is found clean in every kind of file; any one thing done to it is found there."""

from __future__ import annotations

import re
from math import hypot
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.audit.checks import checked
from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Entity, Ring
from patternforge.audit.reading import cut_file
from patternforge.drawing.arrange import arranged
from patternforge.drawing.model import Dot, Figure, Ink, Role, Sheet, Stroke
from patternforge.export.dxf import DxfOptions, DxfVersion, dxf_bytes
from patternforge.export.svg import SvgOptions, svg_bytes
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point

CUT = (Role.MARK, Role.HOLE, Role.OPENING, Role.OUTLINE)
FEW = settings(max_examples=25, deadline=None)


@st.composite
def figures(draw: st.DrawFn) -> Figure:
    """A piece: round holes and slits in a row, perhaps a window, and the outline."""
    width, height = draw(st.floats(40, 240)), draw(st.floats(40, 120))
    radius = draw(st.sampled_from([0.0, 0.6, 3.0, 8.0]))
    pitch, count = draw(st.floats(3.0, 5.0)), draw(st.integers(0, int((width - 24) / 5)))
    diameter = draw(st.floats(0.4, 2.0))
    inks: list[Ink] = [Dot(Role.HOLE, Point(12 + pitch * i, 10.5), diameter) for i in range(count)]
    slits = [Point(12 + pitch * i, height - 10.5) for i in range(count)]
    inks += [Stroke(Role.HOLE, polyline([p - Point(0.6, 0.9), p + Point(0.6, 0.9)])) for p in slits]
    if draw(st.booleans()):
        inks.append(Stroke(Role.OPENING, rounded_rectangle(12, 14, width - 12, height - 14, min(radius, 2)).cw()))
    return Figure("piece", "outer", (*inks, Stroke(Role.OUTLINE, rounded_rectangle(0, 0, width, height, radius))))


sheets = st.lists(figures(), min_size=1, max_size=4).map(lambda some: arranged(some, 10.0, 700.0))
versions = st.sampled_from(list(DxfVersion))


def flaws(data: bytes) -> list[Flaw]:
    return [flaw for each in checked(cut_file(data, "a")) for flaw in each.flaws]


def near(found: list[Flaw], kind: str, x: float, y: float) -> bool:
    return any(each.kind == kind and each.at and hypot(each.at.x - x, each.at.y - y) <= 0.1 for each in found)


@FEW
@given(sheets, versions)
def test_a_sound_sheet_is_clean_as_dxf(sheet: Sheet, version: DxfVersion) -> None:
    assert flaws(dxf_bytes(sheet, DxfOptions(version))) == []


@FEW
@given(sheets)
def test_a_sound_sheet_is_clean_as_svg(sheet: Sheet) -> None:
    assert flaws(svg_bytes(sheet, SvgOptions(CUT))) == []


@FEW
@given(sheets, versions)
def test_both_kinds_of_file_are_read_alike(sheet: Sheet, version: DxfVersion) -> None:
    dxf, svg = cut_file(dxf_bytes(sheet, DxfOptions(version)), "a"), cut_file(svg_bytes(sheet, SvgOptions(CUT)), "b")
    assert len(dxf.cuts) == len(svg.cuts)
    for one, other in zip(dxf.cuts, svg.cuts, strict=True):
        assert measured(one) == pytest.approx(measured(other), abs=2e-3)


def measured(entity: Entity) -> list[float]:
    assert entity.shape is not None
    box = entity.shape.bounds
    length = 2 * entity.shape.radius if isinstance(entity.shape, Ring) else entity.shape.length
    return [box.x0, box.y0, box.x1, box.y1, length]


@FEW
@given(sheets, st.randoms(use_true_random=False))
def test_one_thing_drawn_twice_is_found(sheet: Sheet, chance: Random) -> None:
    figure, number, ink = _any(sheet, chance)
    inks = sheet.figures[figure].inks
    found = flaws(dxf_bytes(_with(sheet, figure, (*inks[:number], ink, *inks[number:]))))
    assert [each.kind for each in found] == ["drawn twice"]


@FEW
@given(sheets, st.randoms(use_true_random=False), st.floats(0.01, 0.5))
def test_an_outline_that_does_not_close_is_found_where_it_is_open(sheet: Sheet, chance: Random, gap: float) -> None:
    number = _number(chance, len(sheet.figures))
    *inner, last = sheet.figures[number].inks
    assert isinstance(last, Stroke)
    opened = last.path.sub(gap, last.path.length)
    found = flaws(dxf_bytes(_with(sheet, number, (*inner, Stroke(Role.OUTLINE, opened)))))
    place = (last.path.start + opened.start) / 2
    assert near(found, "open contour", place.x, place.y)
    assert {each.kind for each in found} == {"open contour"}


@FEW
@given(sheets, st.randoms(use_true_random=False), st.floats(0.3, 3))
def test_a_hole_over_an_outline_is_found(sheet: Sheet, chance: Random, radius: float) -> None:
    number = _number(chance, len(sheet.figures))
    *inner, last = sheet.figures[number].inks
    assert isinstance(last, Stroke)
    at = last.path.point_at(last.path.length * 0.06)
    found = flaws(dxf_bytes(_with(sheet, number, (*inner, Dot(Role.HOLE, at, 2 * radius), last))))
    (crossing,) = [each for each in found if each.kind == "crossing"]
    assert crossing.at is not None
    assert crossing.at.distance_to(at) == pytest.approx(radius, abs=1e-3)


@FEW
@given(sheets, st.randoms(use_true_random=False))
def test_an_outline_cut_first_is_found(sheet: Sheet, chance: Random) -> None:
    with_holes = [i for i, figure in enumerate(sheet.figures) if len(figure.inks) > 1]
    if with_holes:
        number = with_holes[_number(chance, len(with_holes))]
        *inner, last = sheet.figures[number].inks
        found = flaws(svg_bytes(_with(sheet, number, (last, *inner)), SvgOptions(CUT)))
        assert [each.kind for each in found] == ["order"]


@FEW
@given(sheets, st.sampled_from([("mm", "in"), ("mm", "px"), ("mm", "")]))
def test_a_size_that_is_not_in_mm_is_found(sheet: Sheet, units: tuple[str, str]) -> None:
    text = svg_bytes(sheet, SvgOptions(CUT)).decode()
    changed = re.sub(rf'((?:width|height)="[\d.]+){units[0]}"', rf'\g<1>{units[1]}"', text)
    assert "unit" in {each.kind for each in flaws(changed.encode())}


def _any(sheet: Sheet, chance: Random) -> tuple[int, int, Ink]:
    figure = _number(chance, len(sheet.figures))
    number = _number(chance, len(sheet.figures[figure].inks))
    return figure, number, sheet.figures[figure].inks[number]


def _number(chance: Random, count: int) -> int:
    return chance.randrange(count)


def _with(sheet: Sheet, number: int, inks: tuple[Ink, ...]) -> Sheet:
    figures = list(sheet.figures)
    figures[number] = Figure(figures[number].name, figures[number].group, inks)
    return Sheet(sheet.name, sheet.width, sheet.height, tuple(figures))
