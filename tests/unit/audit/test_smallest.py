"""The smallest hole, radius, gap, slot and neck, against sizes by hand; what is below a limit is told."""

from __future__ import annotations

import pytest

from patternforge.audit.checks import checked
from patternforge.audit.flaws import Limits
from patternforge.audit.model import CutFile, Entity, FileKind, Ring
from patternforge.audit.reading import cut_file
from patternforge.audit.scene import scene
from patternforge.audit.smallest import Measure, holes, necks, radii, slots, smallest_gaps
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Point
from tests.unit.audit.clean import clean_dxf, flaws


def file(*shapes: Path | Ring) -> CutFile:
    cuts = tuple(Entity("CUT", i, Point(0, 0), shape) for i, shape in enumerate(shapes, start=1))
    return CutFile("a", FileKind.DXF, "R2010", "mm", 1.0, cuts)


def only(measures: list[Measure], value: float, x: float, y: float) -> bool:
    first = measures[0]
    return first.value == pytest.approx(value) and first.at.distance_to(Point(x, y)) < 1e-6


PIECE = rounded_rectangle(0, 0, 100, 80, 5)


def test_the_smallest_hole_is_the_narrowest_contour_inside() -> None:
    found = holes(scene(file(PIECE, Ring(Point(20, 20), 2), rounded_rectangle(40, 40, 80, 43, 1))))
    assert [each.value for each in found] == [3, 4]


def test_the_smallest_radius_is_that_of_an_arc_and_not_of_a_hole() -> None:
    found = radii(scene(file(PIECE, Ring(Point(20, 20), 2), rounded_rectangle(40, 40, 80, 60, 3))))
    assert found[0].value == pytest.approx(3)
    assert found[0].at.distance_to(Point(40 + 3 * (1 - 2**-0.5), 60 - 3 * (1 - 2**-0.5))) < 45


@pytest.mark.parametrize(
    ("a", "b", "gap", "at"),
    [
        (Ring(Point(20, 20), 2), Ring(Point(25, 20), 1), 2.0, (23, 20)),
        (Ring(Point(20, 20), 2), polyline([Point(10, 25), Point(30, 25)]), 3.0, (20, 23.5)),
        (Ring(Point(20, 20), 8), Ring(Point(22, 20), 3), 3.0, None),
        (polyline([Point(10, 20), Point(20, 20)]), polyline([Point(23, 24), Point(30, 24)]), 5.0, (21.5, 22)),
        (rounded_rectangle(10, 10, 30, 30, 4), rounded_rectangle(32.5, 10, 40, 30, 2), 2.5, None),
    ],
)
def test_the_smallest_gap_lies_between_the_nearest_cuts(
    a: Path | Ring, b: Path | Ring, gap: float, at: tuple[float, float] | None
) -> None:
    (found,) = smallest_gaps(scene(file(rounded_rectangle(-40, -40, 90, 80, 0), a, b)))
    assert found.value == pytest.approx(gap)
    assert at is None or found.at.distance_to(Point(*at)) < 1e-6


def test_every_gap_below_a_limit_is_given() -> None:
    rings = [Ring(Point(20 + 4 * i, 20), 1) for i in range(10)]
    assert len(smallest_gaps(scene(file(PIECE, *rings)), limit=2.5)) == 9
    assert len(smallest_gaps(scene(file(PIECE, *rings)), limit=1.5)) == 1


def test_two_sides_of_an_opening_make_a_slot() -> None:
    assert only(slots(scene(file(PIECE, rounded_rectangle(20, 30, 60, 32, 1)))), 2, 40, 31)
    assert slots(scene(file(PIECE))) == []


def test_a_notch_in_an_outline_is_a_slot_and_what_it_leaves_a_neck() -> None:
    points = ((0, 0), (60, 0), (60, 40), (33, 40), (33, 4), (30, 4), (30, 40), (0, 40))
    notched = scene(file(polygon([Point(*p) for p in points])))
    assert slots(notched)[0].value == pytest.approx(3)
    assert necks(notched)[0].value == pytest.approx(4)


def test_corners_are_neither_slot_nor_neck() -> None:
    narrow = necks(scene(file(PIECE)))
    assert [each.value for each in narrow] == pytest.approx([80])


@pytest.mark.parametrize(
    ("limits", "count"),
    [
        (Limits(), 0),
        (Limits(hole=1.0), 0),
        (Limits(hole=1.1), 23),
        (Limits(radius=3.0), 0),
        (Limits(radius=4.0), 4),
        (Limits(gap=2.4), 0),
        (Limits(gap=2.6), 23),
        (Limits(slot=25.0), 0),
        (Limits(slot=26.0), 1),
    ],
)
def test_what_is_below_a_limit_is_told_and_what_is_on_it_is_not(limits: Limits, count: int) -> None:
    """Holes of 1 mm every 4 mm, 3 mm below their middle to the edge; slits over 3 mm apart; window 40 x 25."""
    found = [flaw for each in checked(cut_file(clean_dxf().encode(), "a"), limits) for flaw in each.flaws]
    assert {flaw.kind for flaw in found} <= {"below the limit"}
    assert len(found) == count


def test_without_limits_nothing_is_too_small() -> None:
    assert flaws(clean_dxf()) == []
