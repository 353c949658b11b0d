"""Labels: whatever the wallet, every letter lies on its piece and touches nothing that is cut, folded or sewn."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, hypot

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternforge.drafting.holes import hole_reach
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import Purpose
from patternforge.drafting.rooms import disc_barrier, floor, path_barriers, room
from patternforge.drawing.lettering import letter_strokes
from patternforge.drawing.model import Figure, Ink, Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point, bounds_of
from patternforge.leather.material import Stretch
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Hole, Pattern, Piece
from patternforge.wallet.spec import Design, HoleSpec
from tests.designs_built import SLITS, leathers, sleeve, three_fold, two_fold, with_holes
from tests.shapes_built import FILM, strap_case, windowed

NEAR = 0.5  # mm; half of what is kept free, to allow for letters that hang below their line
STEP = 0.8  # mm
SLEEVE = drafted(sleeve())


@st.composite
def designs(draw: st.DrawFn) -> Design:
    """Wallets of any kind, thickness, hole and stretch."""
    make = draw(st.sampled_from([two_fold, sleeve, three_fold, _strapped, _windowed]))
    design = make(draw(st.floats(0.6, 2.2)), draw(st.floats(0.4, 1.4)))
    stretch = draw(st.sampled_from(Stretch))
    named = tuple(replace(leather, stretch=stretch) for leather in design.leathers)
    body = replace(design.body, corner=draw(st.floats(2, 12)))
    return with_holes(replace(design, leathers=named, body=body), draw(st.sampled_from([HoleSpec(), SLITS])))


def _strapped(outer: float, inner: float) -> Design:
    return strap_case(thickness=inner, outer=outer)


def _windowed(outer: float, inner: float) -> Design:
    return windowed(leathers=(*leathers(outer, inner), FILM))


@settings(max_examples=20, deadline=None)
@given(designs())
def test_labels_lie_on_their_pieces_clear_of_every_line_and_hole(design: Design) -> None:
    try:
        pattern = drafted(design)
    except DraftError:
        assume(False)
    for figure, piece in zip(figures(pattern, Purpose.PAPER), pattern.pieces, strict=True):
        _assert_clear(pattern, piece, figure)


@settings(max_examples=40, deadline=None)
@given(st.floats(14, 120), st.floats(8, 120), st.floats(0.5, 4), st.booleans(), st.booleans())
def test_a_piece_of_any_size_is_labelled_within_itself_or_below_itself(
    width: float, height: float, radius: float, windowed: bool, pierced: bool
) -> None:
    pattern = _bare(width, height, radius, windowed, pierced)
    (figure,) = figures(pattern, Purpose.PAPER)
    _assert_clear(pattern, pattern.pieces[0], figure)
    assert " ".join(text.content for text in _texts(figure)).count("drafted for") == 1


def _bare(width: float, height: float, radius: float, windowed: bool, pierced: bool) -> Pattern:
    window = rounded_rectangle(width * 0.3, height * 0.3, width * 0.8, height * 0.8, 0.5).cw()
    bare = replace(
        SLEEVE.pieces[0],
        outline=rounded_rectangle(0, 0, width, height, radius),
        holes=(Hole("rim", 1, Point(width / 2, height / 5), 0.0),) if pierced else (),
        fold_lines=(),
        openings=(window,) if windowed else (),
    )
    return replace(SLEEVE, pieces=(bare,))


def _texts(figure: Figure) -> list[Text]:
    return [ink for ink in figure.inks if isinstance(ink, Text)]


def _assert_clear(pattern: Pattern, piece: Piece, figure: Figure) -> None:
    assert all(text.height >= 2.0 for text in _texts(figure))
    boxes = [_box(ink) for ink in figure.inks if ink.role is Role.LABEL]
    assert boxes
    inside = [box for box in boxes if box.y1 >= piece.outline.bounds.y0]
    lines = [ink.path for ink in figure.inks if isinstance(ink, Stroke) and ink.role in (Role.FOLD, Role.SEAM)]
    reaches = {seam.name: hole_reach(seam.stitching.hole) for seam in pattern.seams}
    for box in inside:
        assert piece.outline.contains(box.centre)
        assert not any(opening.contains(box.centre) for opening in piece.openings)
        assert all(_distance(box, hole.at) > reaches[hole.seam] + NEAR for hole in piece.holes)
    for p in (p for path in (piece.outline, *piece.openings, *lines) for p in _stations(path)):
        assert all(_distance(box, p) > NEAR for box in inside)


def _box(ink: Ink) -> Bounds:
    strokes = letter_strokes(ink) if isinstance(ink, Text) else (ink,)
    return bounds_of(Point(x, y) for s in strokes if isinstance(s, Stroke) for x, y, _ in s.path.vertices)


def _distance(box: Bounds, p: Point) -> float:
    return hypot(max(box.x0 - p.x, 0.0, p.x - box.x1), max(box.y0 - p.y, 0.0, p.y - box.y1))


def _stations(path: Path) -> list[Point]:
    """Points so near to each other that no label can slip between them."""
    parts = [(segment, ceil(segment.length / STEP)) for segment in path.segments]
    return [segment.point_at(segment.length * i / count) for segment, count in parts for i in range(count + 1)]


boxes = st.tuples(st.floats(0, 80), st.floats(0, 50), st.floats(0.5, 8))


@settings(max_examples=80, deadline=None)
@given(st.lists(boxes, max_size=6), st.floats(3, 60), st.floats(1, 40))
def test_room_is_found_wherever_a_patient_search_finds_it_and_nowhere_else(
    discs: list[tuple[float, float, float]], width: float, height: float
) -> None:
    """The patient search tries every place on a grid of 1 mm, with a mm more room all round than is needed."""
    rim = rounded_rectangle(0, 0, 80, 50, 2)
    walls = [*path_barriers(rim, 1.0, bounds=True), *(disc_barrier(Point(x, y), r) for x, y, r in discs)]
    found = room(floor(walls), width, height)
    places = ((x, y) for x in range(80) for y in range(50))
    patient = any(_is_free(Bounds(x, y, x + width, y + height), discs, 1.6, 1.0) for x, y in places)
    assert found is not None or not patient
    if found is not None:
        assert (found.width, found.height) == pytest.approx((width, height))
        assert _is_free(found, discs, 1.0, -1e-9)


def _is_free(box: Bounds, discs: list[tuple[float, float, float]], rim: float, more: float) -> bool:
    within = min(box.x0, box.y0, 80 - box.x1, 50 - box.y1) >= rim
    return within and all(_distance(box, Point(x, y)) >= r + more for x, y, r in discs)
