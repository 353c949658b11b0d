from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from patternforge.drawing.compare import differences
from patternforge.drawing.dump import dump
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Dot, Figure, Ink, Role, Stroke, Text
from patternforge.errors import GeometryError
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation
from tests.figures import panel, pocket

TOLERANCE = 0.005


def found(before: Sequence[Figure], after: Sequence[Figure]) -> tuple[str, ...]:
    return differences(dump(before), dump(after), TOLERANCE)


def piece(*inks: Ink) -> list[Figure]:
    return [Figure("piece", "outer", inks)]


def outline(*vertices: tuple[float, float, float], closed: bool = True) -> Stroke:
    return Stroke(Role.OUTLINE, from_vertices(vertices, closed))


SQUARE = outline((0, 0, 0), (10, 0, 0), (10, 10, 0), (0, 10, 0))


def test_a_drawing_is_the_same_as_itself() -> None:
    assert found([panel(), pocket()], [panel(), pocket()]) == ()


def test_a_shift_below_the_tolerance_is_no_difference() -> None:
    assert found([panel()], [moved(panel(), translation(0.004, -0.004))]) == ()


def test_one_corner_moved_by_a_tenth_of_a_millimetre_is_found_and_named() -> None:
    after = outline((0, 0, 0), (10, 0, 0), (10, 10, 0), (0.1, 10, 0))
    assert found(piece(SQUARE), piece(after)) == (
        'figure "piece", ink 1: line to 0.0000 10.0000 -> line to 0.1000 10.0000',
    )


def test_one_hole_of_many_moved_by_a_tenth_of_a_millimetre_is_found() -> None:
    inks = list(panel().inks)
    assert isinstance(inks[5], Dot)
    inks[5] = replace(inks[5], centre=inks[5].centre + Point(0, 0.1))
    lines = found([panel()], [replace(panel(), inks=tuple(inks))])
    assert len(lines) == 1
    assert lines[0].startswith('figure "panel", ink 6: stitch hole dot at')


def test_a_flatter_arc_between_the_same_ends_is_found_by_its_rise() -> None:
    before, after = outline((0, 0, 0.30), (10, 0, 0)), outline((0, 0, 0.302), (10, 0, 0))
    assert found(piece(before), piece(outline((0, 0, 0.3005), (10, 0, 0)))) == ()
    assert len(found(piece(before), piece(after))) == 2  # the size of the piece and the arc


def test_a_closed_stroke_may_begin_at_another_corner() -> None:
    segments = SQUARE.path.segments
    for start in range(4):
        turned = replace(SQUARE, path=Path((*segments[start:], *segments[:start]), closed=True))
        assert found(piece(SQUARE), piece(turned)) == ()


def test_an_open_stroke_may_not_begin_elsewhere() -> None:
    before = outline((0, 0, 0), (10, 0, 0), (0, 0, 0), closed=False)
    after = outline((10, 0, 0), (0, 0, 0), (10, 0, 0), closed=False)
    assert found(piece(before), piece(after)) != ()


def test_an_outline_run_the_other_way_is_another_drawing() -> None:
    assert found(piece(SQUARE), piece(replace(SQUARE, path=SQUARE.path.reversed()))) != ()


def test_another_role_another_count_and_an_opened_outline_are_found() -> None:
    hole = Dot(Role.HOLE, Point(5, 5), 1.0)
    assert found(piece(hole, SQUARE), piece(replace(hole, role=Role.MARK), SQUARE)) != ()
    assert found(piece(hole, SQUARE), piece(hole, hole, SQUARE)) != ()
    assert found(piece(SQUARE), piece(SQUARE, hole)) == ('figure "piece": 1 -> 2 inks',)
    assert found(piece(SQUARE), piece(replace(SQUARE, path=Path(SQUARE.path.segments, closed=False)))) != ()


def test_inks_in_another_order_are_another_drawing() -> None:
    one, other = Dot(Role.HOLE, Point(5, 5), 1.0), Dot(Role.HOLE, Point(8, 5), 1.0)
    assert found(piece(one, other, SQUARE), piece(other, one, SQUARE)) != ()


def test_a_text_may_turn_by_the_tolerance_through_zero_but_not_change_its_words() -> None:
    text = Text(Role.LABEL, Point(0, 0), 3.0, "front", 359.998)
    assert found(piece(text), piece(replace(text, angle=0.001))) == ()
    assert found(piece(text), piece(replace(text, angle=0.01))) != ()
    assert found(piece(text), piece(replace(text, at=Point(360, 0)))) != ()
    assert found(piece(text), piece(replace(text, content="back"))) != ()


def test_a_missing_figure_is_named_and_the_others_still_compared() -> None:
    wider = [Figure("piece", "outer", (outline((0, 0, 0), (11, 0, 0), (11, 10, 0), (0, 10, 0)),))]
    lines = found([panel(), *piece(SQUARE)], wider)
    assert lines[0] == 'figures "panel", "piece" -> "piece"'
    assert any("line to 11.0000 10.0000" in line for line in lines[1:])


def test_figures_in_another_order_are_another_drawing() -> None:
    assert found([panel(), pocket()], [pocket(), panel()]) == ('figures "panel", "pocket" -> "pocket", "panel"',)


@pytest.mark.parametrize(
    "text", ["outline\n", "figure\n", "  outline closed at 0 0\n", "    line to 1 1\n", 'figure "a" empty\n\n']
)
def test_a_text_that_is_no_dump_is_refused(text: str) -> None:
    with pytest.raises(GeometryError, match="dumped drawing"):
        differences(text, text, TOLERANCE)
