"""Laws of drawings: what arranging keeps, and what a dump shows of a change."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.drawing.arrange import arranged
from patternforge.drawing.compare import differences
from patternforge.drawing.dump import dump
from patternforge.drawing.extent import extent, moved
from patternforge.drawing.model import Dot, Figure, Role, Stroke
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point
from patternforge.geometry.transform import rotation, translation

SIZES = st.floats(min_value=5, max_value=120)
PLACES = st.floats(min_value=-300, max_value=300)
SETTINGS = settings(max_examples=60, deadline=None)


@st.composite
def figures(draw: st.DrawFn) -> Figure:
    """A rounded rectangle anywhere, turned by any angle, with a hole in its middle."""
    width, height = draw(SIZES), draw(SIZES)
    radius = draw(st.floats(min_value=0.5, max_value=2))
    flat = Figure(
        "piece",
        "outer",
        (
            Dot(Role.HOLE, Point(width / 2, height / 2), 1.0),
            Stroke(Role.OUTLINE, rounded_rectangle(0, 0, width, height, radius)),
        ),
    )
    turn = rotation(draw(st.floats(min_value=0, max_value=359)))
    return moved(flat, turn.then(translation(draw(PLACES), draw(PLACES))))


@SETTINGS
@given(st.lists(figures(), min_size=1, max_size=8), st.floats(min_value=0, max_value=20))
def test_arranged_figures_stay_apart_and_on_their_sheet(pieces: list[Figure], gap: float) -> None:
    sheet = arranged(pieces, gap, width_limit=300)
    boxes = [extent(figure.inks) for figure in sheet.figures]
    assert sheet.width <= 300 + 1e-9
    for box in boxes:
        assert min(box.x0, box.y0, sheet.width - box.x1, sheet.height - box.y1) >= gap - 1e-9
    for one, other in combinations(boxes, 2):
        across = max(one.x0 - other.x1, other.x0 - one.x1)
        along = max(one.y0 - other.y1, other.y0 - one.y1)
        assert max(across, along) >= gap - 1e-9


@SETTINGS
@given(st.lists(figures(), min_size=1, max_size=4))
def test_arranging_an_arranged_sheet_moves_nothing(pieces: list[Figure]) -> None:
    sheet = arranged(pieces, 5, width_limit=300)
    again = arranged(sheet.figures, 5, width_limit=300)
    assert differences(dump(sheet.figures), dump(again.figures), 0.0002) == ()


@SETTINGS
@given(figures(), st.floats(min_value=-5, max_value=5), st.floats(min_value=-5, max_value=5))
def test_a_shift_is_seen_exactly_when_it_passes_the_tolerance(piece: Figure, dx: float, dy: float) -> None:
    shift, tolerance = max(abs(dx), abs(dy)), 0.01
    lines = differences(dump([piece]), dump([moved(piece, translation(dx, dy))]), tolerance)
    # A dump rounds each number by at most half of its last place, 0.00005 mm.
    if shift > tolerance + 0.0002:
        assert lines != ()
    elif shift < tolerance - 0.0002:
        assert lines == ()
