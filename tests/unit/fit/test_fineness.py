"""The finest of a piece on shapes whose radius, gap and slot can be read off."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.fineness import Fineness, fineness
from patternforge.geometry.corners import filleted, rounded_rectangle
from patternforge.geometry.path import Path, from_vertices, polygon
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import EdgeRole, Hole, Pattern, Piece
from patternforge.wallet.spec import HoleShape
from tests.unit.fit.found import with_stitching
from tests.unit.wallet.built import shell, wallet

PATTERN = drafted(wallet(shell(1)))


def ring(x: float, y: float, radius: float) -> Path:
    return from_vertices([(x - radius, y, 1.0), (x + radius, y, 1.0)], closed=True).cw()


def cut(outline: Path, *openings: Path, holes: tuple[Hole, ...] = ()) -> Piece:
    shape = replace(PATTERN.pieces[0], outline=outline, edges=(EdgeRole.RAW,) * len(outline.segments))
    return replace(shape, openings=tuple(path.cw() for path in openings), holes=holes)


def measured(outline: Path, *openings: Path) -> tuple[float | None, float | None, float | None]:
    """Radius, gap and slot."""
    found = fineness(PATTERN, cut(outline, *openings))
    assert found.hole_gap is None
    return _rounded(found.radius), _rounded(found.gap), _rounded(found.slot)


def _rounded(size: float | None) -> float | None:
    return None if size is None else round(size, 6)


RECTANGLE = rounded_rectangle(0, 0, 60, 40, 0)


@pytest.mark.parametrize(
    ("outline", "openings", "expected"),
    [
        (RECTANGLE, (), (None, 40.0, None)),
        (rounded_rectangle(0, 0, 60, 40, 5), (), (5.0, 40.0, None)),
        # A tab with a round end is as wide as that is across.
        (rounded_rectangle(0, 0, 60, 8, 4), (), (4.0, 8.0, None)),
        # A window 4 mm from the nearest edge and 9 mm high, its corners rounded by 2 mm.
        (RECTANGLE, (rounded_rectangle(10, 4, 50, 13, 2),), (2.0, 4.0, 9.0)),
        # A punched hole has no radius to bend a rule to, but a width.
        (RECTANGLE, (ring(30, 20, 1.5),), (None, 18.5, 3.0)),
        # A slot with round ends 3 mm wide, 2.4 mm beside a hole.
        (RECTANGLE, (rounded_rectangle(20, 10, 40, 13, 1.5), ring(30, 16.4, 1.0)), (1.5, 2.4, 2.0)),
        # A notch 1.2 mm wide and 10 mm deep cut into the lower edge.
        (
            polygon(
                [Point(*p) for p in ((0, 0), (20, 0), (20, 10), (21.2, 10), (21.2, 0), (60, 0), (60, 40), (0, 40))]
            ),
            (),
            (None, 20.0, 1.2),
        ),
        # A bay from above leaves 6 mm over a window that stands 5 mm above the edge.
        (
            polygon(
                [Point(*p) for p in (*((0, 0), (60, 0), (60, 40), (40, 40), (40, 23), (20, 23), (20, 40), (0, 40)),)]
            ),
            (rounded_rectangle(24, 5, 36, 17, 0),),
            (None, 5.0, 12.0),
        ),
    ],
)
def test_radius_gap_and_slot(
    outline: Path, openings: tuple[Path, ...], expected: tuple[float | None, float | None, float | None]
) -> None:
    assert measured(outline, *openings) == expected


def test_a_rounded_corner_is_neither_a_gap_nor_a_slot() -> None:
    """The lines beside a rounding of 1 mm end 1.41 mm apart, across the leather outside and the void inside."""
    angle = polygon([Point(*p) for p in ((0, 0), (60, 0), (60, 20), (20, 20), (20, 40), (0, 40))])
    assert measured(filleted(angle, 1.0)) == (1.0, 20.0, None)


def test_a_notch_that_narrows_inwards_has_no_width_of_its_own() -> None:
    narrowing = [(0, 0, 0), (20, 0, -0.41421356), (23, 3, 0), (27, 3, -0.41421356), (30, 0, 0), (60, 0, 0)]
    outline = from_vertices([*narrowing, (60, 40, 0), (0, 40, 0)], closed=True)
    assert measured(outline) == (3.0, 37.0, None)


def holed(shape: HoleShape, *places: tuple[float, float], direction: float = 90.0) -> Fineness:
    pattern: Pattern = PATTERN
    spec = replace(pattern.seams[0].stitching.hole, shape=shape, diameter=1.0, length=2.0, width=0.4)
    holes = tuple(Hole("rim", i, Point(x, y), direction) for i, (x, y) in enumerate(places, 1))
    return fineness(with_stitching(pattern, hole=spec), cut(RECTANGLE, ring(30, 20, 5), holes=holes))


@pytest.mark.parametrize(
    ("shape", "places", "gap"),
    [
        (HoleShape.ROUND, ((10, 3),), 2.5),
        (HoleShape.ROUND, ((10, 10), (13.5, 10)), 2.5),
        (HoleShape.ROUND, ((22.6, 20),), 1.9),
        # Upright slits of 2 x 0.4 mm: 1 mm of their length reaches down to the edge, 0.2 mm of their width aside.
        (HoleShape.SLIT, ((10, 3),), 1.8),
        (HoleShape.SLIT, ((10, 10), (13, 10)), 2.6),
        (HoleShape.MARK, ((10, 3),), None),
        (HoleShape.NONE, ((10, 3),), None),
    ],
)
def test_what_is_left_beside_a_stitch_hole(
    shape: HoleShape, places: tuple[tuple[float, float], ...], gap: float | None
) -> None:
    assert holed(shape, *places).hole_gap == (None if gap is None else pytest.approx(gap))


def test_a_hole_that_is_cut_into_leaves_nothing() -> None:
    assert holed(HoleShape.ROUND, (10, 0.3)).hole_gap == 0.0
