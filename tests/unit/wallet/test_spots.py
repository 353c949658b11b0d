"""Places on panels, and what is cut and sewn round them."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point
from patternforge.wallet.body import Body
from patternforge.wallet.pattern import DraftedPanel, Sum, Term
from patternforge.wallet.spec import Edge, Film, Opening, Spot
from patternforge.wallet.spots import opening_path, spot_point


def _panel(name: str, x0: float, x1: float) -> DraftedPanel:
    return DraftedPanel(name, x0, x1, Sum(name, (Term("declared", x1 - x0),)))


BODY = Body((_panel("left", 0.0, 100.0), _panel("right", 112.0, 208.0)), (), 208.0, 80.0, 5.0)
WINDOW = Opening("window", Spot(1, (Edge.LEFT, 40.0), (Edge.TOP, 30.0)), 60.0, 20.0, 4.0)


@pytest.mark.parametrize(
    ("spot", "place"),
    [
        (Spot(0), Point(50, 40)),
        (Spot(1), Point(160, 40)),
        (Spot(1, (Edge.LEFT, 10.0)), Point(122, 40)),
        (Spot(1, (Edge.RIGHT, 10.0)), Point(198, 40)),
        (Spot(0, None, (Edge.BOTTOM, 7.0)), Point(50, 7)),
        (Spot(0, (Edge.RIGHT, 1.0), (Edge.TOP, 7.0)), Point(99, 73)),
    ],
)
def test_a_spot_counts_from_what_it_names_and_else_lies_in_the_middle(spot: Spot, place: Point) -> None:
    assert spot_point(BODY, spot) == place


def test_an_opening_lies_round_its_spot_with_rounded_corners() -> None:
    path = opening_path(BODY, WINDOW)
    assert path.bounds == Bounds(122.0, 40.0, 182.0, 60.0)
    assert path.is_ccw
    assert abs(path.area) == pytest.approx(60 * 20 - (4 - math.pi) * 4**2)


def test_a_round_hole_is_a_circle() -> None:
    path = opening_path(BODY, replace(WINDOW, width=12.0, height=12.0, corner=6.0))
    assert path.area == pytest.approx(math.pi * 36)
    assert all(segment.is_arc for segment in path.segments)


@pytest.mark.parametrize(
    "spot",
    [
        Spot(1, (Edge.LEFT, 29.0)),
        Spot(1, (Edge.RIGHT, 29.0)),
        Spot(1, None, (Edge.BOTTOM, 9.0)),
        Spot(1, None, (Edge.TOP, 9.0)),
    ],
)
def test_an_opening_that_leaves_its_panel_is_refused_by_name(spot: Spot) -> None:
    with pytest.raises(DraftError, match="'window' reaches beyond panel 'right'"):
        opening_path(BODY, replace(WINDOW, spot=spot))


def test_a_film_is_no_part_of_the_opening() -> None:
    assert opening_path(BODY, replace(WINDOW, film=Film("film", 6.0, 3.0))) == opening_path(BODY, WINDOW)
