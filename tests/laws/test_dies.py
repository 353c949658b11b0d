"""Dies are shared by what is the same cut, however it lies, and by nothing else."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.drafting.dies import dies
from patternforge.drafting.purpose import Mirrors
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Dot, Figure, Ink, Role, Stroke
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.transform import flipped_x, rotation, translation
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.designs_built import sleeve

TOLD = 0.01  # mm: what the list of dies tells the die maker
TURNS = st.floats(-360, 360)
SHIFTS = st.floats(-500, 500)
ARMS = st.floats(20, 90)


@cache
def three_pieces() -> Pattern:
    """Pieces whose names and quantities the dies go by; what they look like is drawn here."""
    return drafted(sleeve())


def hook(long: float, short: float) -> Figure:
    """An L with unequal arms, a window, a punched hole and a slit: it has no mirror image of its own."""
    corners = [(0, 0), (long, 0), (long, 15), (18, 15), (18, short + 30), (0, short + 30)]
    inks: tuple[Ink, ...] = (
        Dot(Role.HOLE, Point(4, 4), 1.0),
        Stroke(Role.HOLE, polyline([Point(8, 4), Point(10, 5)])),
        Stroke(Role.OPENING, rounded_rectangle(3, 18, 9, 24, 1).cw()),
        Stroke(Role.OUTLINE, polygon([Point(float(x), float(y)) for x, y in corners])),
    )
    return Figure("hook", "outer", inks)


def carried(figure: Figure, turn: float, shift: float, begun: int, over: bool) -> Figure:
    """The figure laid elsewhere, turned over or not, its outline begun at another corner."""
    way = (flipped_x() if over else rotation(0)).then(rotation(turn)).then(translation(shift, -shift / 3))
    inks = [anew(ink, begun) for ink in moved(figure, way).inks]
    return replace(figure, inks=tuple(inks))


def anew(ink: Ink, begun: int) -> Ink:
    if not isinstance(ink, Stroke) or ink.role is not Role.OUTLINE:
        return ink
    path = ink.path.ccw()
    return Stroke(ink.role, Path(path.segments[begun:] + path.segments[:begun], closed=True))


def shared(one: Figure, other: Figure, mirrors: Mirrors) -> list[list[bool]]:
    """Of each die of two pieces, which of its cuts are turned over."""
    pattern = three_pieces()
    two = replace(pattern, pieces=pattern.pieces[:2])
    return [[cut.over for cut in die.cuts] for die in dies(two, (one, other), mirrors)]


@settings(max_examples=25)
@given(ARMS, ARMS, TURNS, SHIFTS, st.integers(0, 5), st.booleans())
def test_a_piece_turned_shares_the_die_and_one_turned_over_only_where_mirrors_are_shared(
    long: float, short: float, turn: float, shift: float, begun: int, over: bool
) -> None:
    one = hook(long, short)
    other = carried(one, turn, shift, begun, over)
    assert shared(one, other, Mirrors.SHARED) == [[False, over]]
    assert shared(one, other, Mirrors.OWN) == ([[False], [False]] if over else [[False, False]])


@settings(max_examples=25)
@given(ARMS, ARMS, TURNS, st.booleans(), st.integers(0, 3), st.floats(3, 40))
def test_a_piece_with_one_line_elsewhere_takes_a_die_of_its_own(
    long: float, short: float, turn: float, over: bool, which: int, times: float
) -> None:
    one = hook(long, short)
    inks = list(one.inks)
    # Rim, hole, slit and window by turns: moved along both axes by more than the tolerance in every direction.
    if which == 3:
        inks[3] = hook(long + times * 2 * TOLD, short).inks[3]
    else:
        off = translation(times * TOLD, times * TOLD)
        inks[which] = moved(replace(one, inks=(inks[which],)), off).inks[0]
    other = carried(replace(one, inks=tuple(inks)), turn, 11.0, 2, over)
    assert shared(one, other, Mirrors.SHARED) == [[False], [False]]


@settings(max_examples=20)
@given(ARMS, ARMS, TURNS, st.booleans())
def test_what_is_its_own_mirror_image_is_never_told_to_be_turned_over(
    long: float, short: float, turn: float, over: bool
) -> None:
    outline = Stroke(Role.OUTLINE, rounded_rectangle(0, 0, long + 20, short, 4))
    one = Figure("card", "outer", (outline,))
    assert shared(one, carried(one, turn, 3.0, 1, over), Mirrors.SHARED) == [[False, False]]
