"""A pocket's own axes: a along its mouth, b from its floor, whichever way it opens."""

from __future__ import annotations

import pytest

from patternforge.geometry.point import Point
from patternforge.wallet.frame import pocket_frame
from patternforge.wallet.spec import Edge, FoldSpec
from tests.unit.wallet.built import body_of, pocket, shell, wallet


@pytest.mark.parametrize(
    ("opening", "across", "along", "origin", "towards_mouth", "insets"),
    # Panel 1 of two, 100 x 80, its left edge at a fold of relief 5. Insets: floor, right, mouth, left of the frame.
    [
        (Edge.TOP, 100.0, 80.0, (0, 0), (0, 80), (0, 0, 0, 5)),
        (Edge.BOTTOM, 100.0, 80.0, (100, 80), (100, 0), (0, 5, 0, 0)),
        (Edge.LEFT, 80.0, 100.0, (100, 0), (0, 0), (0, 0, 5, 0)),
        (Edge.RIGHT, 80.0, 100.0, (0, 80), (100, 80), (5, 0, 0, 0)),
    ],
)
def test_a_frame_turns_so_that_its_mouth_is_up(
    opening: Edge,
    across: float,
    along: float,
    origin: tuple[float, float],
    towards_mouth: tuple[float, float],
    insets: tuple[float, ...],
) -> None:
    part = pocket(panel=1, opening=opening)
    design = wallet(shell(2), part, widths=(100.0, 100.0), folds=(FoldSpec(relief=5.0),))
    body = body_of(design)
    frame = pocket_frame(design, body, part)
    left = body.panels[1].x0
    assert (frame.across, frame.along) == pytest.approx((across, along))
    for at, expected in ((Point(0, 0), origin), (Point(0, frame.along), towards_mouth)):
        found = frame.onto.point(at)
        assert (found.x - left, found.y) == pytest.approx(expected)
    borders = (frame.floor, frame.right, frame.mouth, frame.left)
    assert tuple(border.inset for border in borders) == insets


def test_stitch_lines_stand_a_margin_inside_the_pocket() -> None:
    part = pocket(panel=1)
    design = wallet(shell(2), part, widths=(100.0, 100.0), folds=(FoldSpec(relief=5.0),))
    frame = pocket_frame(design, body_of(design), part)
    assert (frame.stitch_left, frame.stitch_right) == pytest.approx((9.0, 96.0))
