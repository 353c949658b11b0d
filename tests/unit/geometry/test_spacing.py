"""Even positions between anchors."""

from __future__ import annotations

import math

import pytest

from patternforge.errors import GeometryError
from patternforge.geometry.spacing import Anchor, AnchorKind, Span, even_positions, pitch_positions

ON, BETWEEN = AnchorKind.ON, AnchorKind.BETWEEN


@pytest.mark.parametrize(
    ("first", "last", "length", "positions"),
    [
        (ON, ON, 10, (0, 2.5, 5, 7.5, 10)),
        (ON, ON, 1, (0, 1)),
        (ON, BETWEEN, 9, (0, 2, 4, 6, 8)),
        (BETWEEN, ON, 9, (1, 3, 5, 7, 9)),
        (ON, BETWEEN, 1, (0,)),
        (BETWEEN, ON, 1, (1,)),
        (BETWEEN, BETWEEN, 10, (1.25, 3.75, 6.25, 8.75)),
        (BETWEEN, BETWEEN, 0.5, (0.25,)),
    ],
)
def test_one_span_is_filled_by_the_kinds_of_its_anchors(
    first: AnchorKind, last: AnchorKind, length: float, positions: tuple[float, ...]
) -> None:
    spacing = even_positions([Anchor(0, first), Anchor(length, last)], pitch=2.2 if length == 9 else 2.5)
    assert spacing.positions == pytest.approx(positions)


def test_the_count_is_the_nearest_one() -> None:
    def count(length: float) -> float:
        return even_positions([Anchor(0, ON), Anchor(length, ON)], 1.0).spans[0].count

    assert [count(length) for length in (0.2, 1.4, 1.5, 2.5, 2.6)] == [1, 1, 2, 3, 3]
    half = even_positions([Anchor(0, ON), Anchor(3.1, BETWEEN)], 1.0).spans[0]
    assert half == Span(0, 3.1, 3.5, 3.1 / 3.5)


def test_rounding_does_not_decide_between_two_counts_equally_near() -> None:
    a_hair_under = math.nextafter(1.5, 0)
    assert even_positions([Anchor(0, ON), Anchor(a_hair_under, ON)], 1.0).spans[0].count == 2
    assert even_positions([Anchor(0, ON), Anchor(math.nextafter(1, 0), BETWEEN)], 1.0).spans[0].count == 1.5


def test_an_anchor_between_spans_gives_its_position_once() -> None:
    spacing = even_positions([Anchor(0, ON), Anchor(4, ON), Anchor(9, BETWEEN), Anchor(14, ON)], 2.0)
    assert spacing.positions == pytest.approx((0, 2, 4, 6, 8, 10, 12, 14))
    assert [(s.count, s.spacing) for s in spacing.spans] == [(2, 2), (2.5, 2), (2.5, 2)]
    assert spacing.worst == 0


def test_the_worst_deviation_is_that_of_any_span() -> None:
    spacing = even_positions([Anchor(0, ON), Anchor(10, ON), Anchor(13, ON)], 2.0)
    assert spacing.worst == pytest.approx(0.25)


def test_exact_pitch_leaves_the_rest_at_the_end() -> None:
    assert pitch_positions(10, 3).positions == (0, 3, 6, 9)
    assert pitch_positions(9, 3).positions == (0, 3, 6, 9)
    assert pitch_positions(0.3, 0.1).positions == pytest.approx((0, 0.1, 0.2, 0.3))
    assert pitch_positions(2, 3).positions == (0,)
    assert pitch_positions(2, 3).spans == ()
    assert pitch_positions(10, 3).worst == 0


@pytest.mark.parametrize("pitch", [0, -1, math.nan, math.inf])
def test_a_pitch_must_be_a_positive_number(pitch: float) -> None:
    with pytest.raises(GeometryError, match="is not a pitch"):
        even_positions([Anchor(0, ON), Anchor(9, ON)], pitch)
    with pytest.raises(GeometryError, match="is not a pitch"):
        pitch_positions(9, pitch)


def test_anchors_must_be_two_and_rise() -> None:
    with pytest.raises(GeometryError, match="two anchors"):
        even_positions([Anchor(0, ON)], 2)
    with pytest.raises(GeometryError, match="do not rise"):
        even_positions([Anchor(0, ON), Anchor(5, ON), Anchor(5, BETWEEN)], 2)


@pytest.mark.parametrize("length", [-1, math.nan, math.inf])
def test_a_length_to_space_along_must_be_lawful(length: float) -> None:
    with pytest.raises(GeometryError, match="not a length"):
        pitch_positions(length, 2)
