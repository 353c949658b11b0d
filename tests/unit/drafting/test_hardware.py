"""What is written about hardware: beside its holes on paper and on the label, nowhere on what is cut."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.drafting.hardware import fitting_facts, fitting_words, word_bounds
from patternforge.drafting.labels import label_inks
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import DraftingOptions, LaserOptions, Purpose
from patternforge.drafting.rooms import Floor, floor, path_barriers
from patternforge.drawing.model import Role, Stroke, Text
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point
from patternforge.leather.hardware import Setting
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import FittingHole, Pattern
from patternforge.wallet.spec import Edge, Spot
from tests.shapes_built import SNAP, strap_case

CASE = drafted(strap_case())


def sheet(width: float, height: float) -> Floor:
    return floor(path_barriers(rounded_rectangle(0, 0, width, height, 1.0), 1.0, bounds=True))


def placed(*at: Point) -> tuple[Pattern, FittingHole]:
    """The case with the hole of its strap at these places."""
    hole = CASE.piece("strap").fittings[0]
    strap = replace(CASE.piece("strap"), fittings=tuple(replace(hole, at=each) for each in at))
    return replace(CASE, pieces=(strap,)), hole


@pytest.mark.parametrize(
    ("piece", "fact"),
    [
        ("strap", "punch 4.50 mm for closure: cap and socket"),
        ("shell", "punch 3.50 mm for closure: stud and post"),
    ],
)
def test_the_label_says_what_to_punch_for_which_half(piece: str, fact: str) -> None:
    assert fitting_facts(CASE, CASE.piece(piece)) == (fact,)
    said = " ".join(ink.content for ink in label_inks(CASE, CASE.piece(piece)) if isinstance(ink, Text))
    assert fact.removeprefix("punch ").partition(":")[0] in said


def test_a_hidden_half_is_told_on_its_own_piece_and_on_the_one_it_lies_against() -> None:
    magnet = replace(
        SNAP,
        kind="hidden-magnet-10",
        part="shell",
        spot=Spot(2, (Edge.LEFT, 30.0)),
        meets="",
        holes=(0.0, 0.0),
        reach=5.0,
        setting=Setting.COVERED,
        thickness=1.0,
    )
    case = drafted(strap_case(fittings=(magnet,)))
    told = [fitting_facts(case, piece) for piece in case.pieces]
    hidden = "hide magnet of closure, 10.00 x 1.00 mm, behind it"
    assert told == [(), (hidden,), ("closure lies against it at its mark",)]


def test_a_kind_of_ones_own_has_a_first_and_a_second_half() -> None:
    own = drafted(strap_case(fittings=(replace(SNAP, kind="toggle"),)))
    assert fitting_facts(own, own.piece("shell")) == ("punch 3.50 mm for closure: second half",)


@pytest.mark.parametrize(
    ("width", "height", "at", "said"),
    [
        (100.0, 40.0, Point(20, 20), "closure: cap and socket"),
        (34.0, 20.0, Point(5, 10), "cap and socket"),
        (10.0, 10.0, Point(5, 5), None),
    ],
)
def test_the_words_beside_a_hole_are_as_long_as_there_is_room(
    width: float, height: float, at: Point, said: str | None
) -> None:
    pattern, _ = placed(at)
    found = fitting_words(pattern, pattern.pieces[0], sheet(width, height))
    assert [text.content for text in found] == ([said] if said else [])


@pytest.mark.parametrize("at", [Point(10, 20), Point(90, 20), Point(50, 6), Point(50, 34)])
def test_the_words_keep_off_their_hole_and_on_the_piece(at: Point) -> None:
    pattern, hole = placed(at)
    (text,) = fitting_words(pattern, pattern.pieces[0], sheet(100.0, 40.0))
    box = word_bounds(text)
    assert box.x0 >= 1.0
    assert box.x1 <= 99.0
    nearest = Point(min(max(at.x, box.x0), box.x1), min(max(at.y, box.y0), box.y1))
    assert nearest.distance_to(at) > hole.diameter / 2 + 1.0


def test_words_of_neighbouring_holes_do_not_touch() -> None:
    pattern, _ = placed(Point(20, 20), Point(26, 20))
    first, second = (word_bounds(text) for text in fitting_words(pattern, pattern.pieces[0], sheet(100.0, 40.0)))
    assert first.x1 <= second.x0 or second.x1 <= first.x0 or first.y1 <= second.y0 or second.y1 <= first.y0


def test_nothing_is_written_on_what_is_cut() -> None:
    for purpose in (Purpose.LASER, Purpose.DIE):
        inks = [ink for figure in figures(CASE, purpose) for ink in figure.inks]
        assert not any(isinstance(ink, Text) for ink in inks)


@pytest.mark.parametrize("kerf", [0.0, 0.2])
def test_a_hole_for_hardware_is_cut_as_a_round_opening_less_the_kerf(kerf: float) -> None:
    drawn = figures(CASE, Purpose.LASER, DraftingOptions(LaserOptions(kerf=kerf)))[0]
    (hole,) = [ink.path for ink in drawn.inks if isinstance(ink, Stroke) and ink.role is Role.OPENING]
    assert hole.bounds.width == pytest.approx(4.5 - kerf)
    assert {segment.is_arc for segment in hole.segments} == {True}
    assert not hole.is_ccw
