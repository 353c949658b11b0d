"""Quick boxes and the pairs of them that touch."""

from __future__ import annotations

import pytest

from patternforge.geometry.boxes import loose_box, touching_pairs
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment


@pytest.mark.parametrize("bulge", [0, 0.1, -0.1, 1, -1, 3, -8])
def test_the_loose_box_holds_the_segment(bulge: float) -> None:
    segment = Segment(Point(1, 2), Point(7, 5), bulge)
    x0, y0, x1, y1 = loose_box(segment)
    exact = segment.bounds
    assert x0 <= exact.x0
    assert y0 <= exact.y0
    assert x1 >= exact.x1
    assert y1 >= exact.y1


def test_boxes_that_touch_are_paired_and_those_apart_are_not() -> None:
    boxes = [(0.0, 0.0, 2.0, 2.0), (2.0, 0.0, 3.0, 1.0), (0.0, 2.1, 9.0, 3.0), (8.0, 0.0, 9.0, 2.2)]
    assert {frozenset(pair) for pair in touching_pairs(boxes)} == {frozenset({0, 1}), frozenset({2, 3})}


def test_each_pair_comes_once() -> None:
    boxes = [(0.0, 0.0, 1.0, 1.0)] * 5
    pairs = [frozenset(pair) for pair in touching_pairs(boxes)]
    assert len(pairs) == len(set(pairs)) == 10
