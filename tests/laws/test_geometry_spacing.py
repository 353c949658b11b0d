"""Laws of even spacing."""

from __future__ import annotations

from itertools import accumulate, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.geometry.spacing import Anchor, AnchorKind, even_positions, pitch_positions

modest = settings(max_examples=100, deadline=None)
pitches = st.floats(1, 6)
kinds = st.sampled_from(AnchorKind)


@st.composite
def anchor_rows(draw: st.DrawFn) -> list[Anchor]:
    gaps = draw(st.lists(st.floats(0.5, 120), min_size=2, max_size=6))
    return [Anchor(at, draw(kinds)) for at in accumulate(gaps)]


@modest
@given(anchor_rows(), pitches)
def test_positions_rise_and_none_is_given_twice(anchors: list[Anchor], pitch: float) -> None:
    assert all(b - a > 1e-6 for a, b in pairwise(even_positions(anchors, pitch).positions))


@modest
@given(anchor_rows(), pitches)
def test_every_on_anchor_has_a_position_and_every_between_anchor_is_midway(
    anchors: list[Anchor], pitch: float
) -> None:
    spacing = even_positions(anchors, pitch)
    for i, anchor in enumerate(anchors):
        if anchor.kind is AnchorKind.ON:
            assert min(abs(p - anchor.at) for p in spacing.positions) < 1e-9
            continue
        if i > 0:
            before = max(p for p in spacing.positions if p < anchor.at)
            assert anchor.at - before == pytest.approx(spacing.spans[i - 1].spacing / 2)
        if i < len(anchors) - 1:
            after = min(p for p in spacing.positions if p > anchor.at)
            assert after - anchor.at == pytest.approx(spacing.spans[i].spacing / 2)


@modest
@given(anchor_rows(), pitches)
def test_a_span_is_its_count_of_spacings(anchors: list[Anchor], pitch: float) -> None:
    for span in even_positions(anchors, pitch).spans:
        assert span.count * span.spacing == pytest.approx(span.end - span.start)


@modest
@given(anchor_rows(), pitches)
def test_no_lawful_count_is_nearer_to_the_pitch(anchors: list[Anchor], pitch: float) -> None:
    for (a, b), span in zip(pairwise(anchors), even_positions(anchors, pitch).spans, strict=True):
        ideal = (b.at - a.at) / pitch
        lawful = [n + (0.5 if a.kind is not b.kind else 0.0) for n in range(200)]
        nearest = min(abs(count - ideal) for count in lawful if count > 0)
        assert abs(span.count - ideal) == pytest.approx(nearest, abs=1e-9)


@modest
@given(anchor_rows(), pitches)
def test_the_row_read_backwards_is_the_same_row(anchors: list[Anchor], pitch: float) -> None:
    end = anchors[-1].at
    mirrored = [Anchor(end - a.at, a.kind) for a in reversed(anchors)]
    there, back = even_positions(anchors, pitch), even_positions(mirrored, pitch)
    assert [end - p for p in reversed(back.positions)] == pytest.approx(list(there.positions), abs=1e-9)


@modest
@given(st.floats(3, 200), pitches)
def test_a_long_span_is_off_by_no_more_than_half_a_space_over_its_count(length: float, pitch: float) -> None:
    spacing = even_positions([Anchor(0, AnchorKind.ON), Anchor(length, AnchorKind.ON)], pitch)
    count = spacing.spans[0].count
    if length >= pitch:
        assert spacing.worst <= 0.5 / count + 1e-9


@modest
@given(st.floats(0, 200), pitches)
def test_an_exact_run_keeps_its_pitch_and_leaves_less_than_one(length: float, pitch: float) -> None:
    positions = pitch_positions(length, pitch).positions
    assert all(b - a == pytest.approx(pitch) for a, b in pairwise(positions))
    assert -1e-8 <= length - positions[-1] < pitch
