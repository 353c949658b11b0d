"""Laws of what a leather's thickness and the load change in a whole wallet, and what they leave alone."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Across, BankPart, Design, Held, LayerPart, LoosePart, Part, PocketPart
from tests.laws.designs import drafted_designs, drafts, loaded_more, thickened

rarely = settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
roles = st.sampled_from(("outer", "inner"))
more = st.sampled_from((0.1, 0.4, 1.0))
shares = st.sampled_from((0.0, 0.3, 1.0))


def folds_true(design: Design) -> bool:
    """No fold is made longer than true, as a compensation above 1 would."""
    return bool(design.body.folds) and all(fold.compensation <= 1 for fold in design.body.folds)


def stops_at_folds(design: Design) -> bool:
    return all(seam.across is Across.OPEN for seam in design.seams)


def has_two_layers(design: Design) -> bool:
    return bool(design.body.folds) and sum(isinstance(part, LayerPart) for part in design.parts) == 2


def compensated(design: Design, factor: float) -> Design:
    folds = tuple(replace(fold, compensation=factor) for fold in design.body.folds)
    return replace(design, body=replace(design.body, folds=folds))


def true_lengths(pattern: Pattern) -> list[float]:
    return [layer.true_length for fold in pattern.folds for layer in fold.layers]


def flat_lengths(pattern: Pattern) -> list[float]:
    return [layer.flat_length for fold in pattern.folds for layer in fold.layers]


def panel_sizes(pattern: Pattern) -> list[float]:
    return [pattern.height, *(panel.width.value for panel in pattern.panels)]


def local(pattern: Pattern, piece: Piece, point: Point) -> tuple[float, float]:
    """A piece's point as (panel number + share, y): mm right of its panel's left end, or the share of a fold zone."""
    at = piece.placement.to_assembly(point)
    for index, (fold, panel) in enumerate(zip(pattern.folds, pattern.panels, strict=False)):
        if at.x < panel.x1 + 1e-7:
            return 1000.0 * index + at.x - panel.x0, at.y
        if at.x < fold.x1 - 1e-7:
            return 1000.0 * index + 900 + (at.x - fold.x0) / (fold.x1 - fold.x0), at.y
    last = len(pattern.panels) - 1
    return 1000.0 * last + at.x - pattern.panels[last].x0, at.y


def outline_points(pattern: Pattern, piece: Piece) -> list[tuple[float, float]]:
    return [local(pattern, piece, Point(x, y)) for x, y, _ in piece.outline.vertices]


def hole_points(pattern: Pattern, piece: Piece) -> list[tuple[float, float]]:
    return [local(pattern, piece, hole.at) for hole in piece.holes]


@rarely
@given(drafted_designs(stops_at_folds), roles, more)
def test_a_leathers_thickness_changes_fold_zones_only(
    pair: tuple[Design, Pattern], role: str, thicker: float
) -> None:
    design, pattern = pair
    other = drafted(thickened(design, role, thicker))
    assert panel_sizes(other) == pytest.approx(panel_sizes(pattern), abs=1e-6)
    for piece, changed in zip(pattern.pieces, other.pieces, strict=True):
        for points in (outline_points, hole_points):
            before, after = points(pattern, piece), points(other, changed)
            assert len(before) == len(after)
            assert all(a == pytest.approx(b, abs=1e-6) for a, b in zip(before, after, strict=True))


@rarely
@given(drafted_designs(folds_true), more)
def test_a_thicker_inside_never_shortens_a_layer(pair: tuple[Design, Pattern], thicker: float) -> None:
    design, pattern = pair
    other = drafted(thickened(design, "inner", thicker))
    assert all(a >= b - 1e-9 for a, b in zip(flat_lengths(other), flat_lengths(pattern), strict=True))


@rarely
@given(drafted_designs(folds_true), more)
def test_a_thicker_shell_never_shortens_it_and_leaves_a_soft_inside_as_it_is(
    pair: tuple[Design, Pattern], thicker: float
) -> None:
    design, pattern = pair
    other = drafted(thickened(design, "outer", thicker))
    for fold, changed in zip(pattern.folds, other.folds, strict=True):
        for before, after in zip(fold.layers, changed.layers, strict=True):
            grows = before.part == "shell"
            assert after.true_length >= before.true_length + (1e-6 if grows and thicker_counts(pattern) else -1e-9)


def thicker_counts(pattern: Pattern) -> bool:
    """Whether a thicker shell needs more length: its neutral fibre must lie within it, not on its inside."""
    return pattern.design.leather("outer").neutral > 0


@rarely
@given(drafted_designs(folds_true), shares, shares, shares, shares)
def test_more_in_the_wallet_never_shortens_a_layer(
    pair: tuple[Design, Pattern], cards: float, notes: float, more_cards: float, more_notes: float
) -> None:
    design, _ = pair
    least = drafted(loaded_more(design, min(cards, more_cards), min(notes, more_notes)))
    most = drafted(loaded_more(design, max(cards, more_cards), max(notes, more_notes)))
    assert all(a >= b - 1e-9 for a, b in zip(flat_lengths(most), flat_lengths(least), strict=True))
    assert panel_sizes(most) == pytest.approx(panel_sizes(least), abs=1e-6)


@rarely
@given(drafted_designs(folds_true), st.integers(1, 3))
def test_pockets_for_more_items_never_shorten_or_narrow_anything(pair: tuple[Design, Pattern], extra: int) -> None:
    design, pattern = pair
    other = drafted(with_more_items(design, extra))
    assert all(a >= b - 1e-9 for a, b in zip(true_lengths(other), true_lengths(pattern), strict=True))
    assert all(a.width.value >= b.width.value - 1e-9 for a, b in zip(other.panels, pattern.panels, strict=True))


def with_more_items(design: Design, extra: int) -> Design:
    parts: list[Part] = []
    for part in design.parts:
        if isinstance(part, LayerPart):
            parts.append(replace(part, holds=tuple(Held(held.content, held.count + extra) for held in part.holds)))
        elif isinstance(part, PocketPart | LoosePart):
            parts.append(replace(part, count=part.count + extra))
        elif isinstance(part, BankPart):
            parts.append(replace(part, per_slot=part.per_slot + extra))
    return replace(design, parts=tuple(parts))


@rarely
@given(drafted_designs(has_two_layers))
def test_two_soft_layers_differ_by_pi_times_the_distance_of_their_neutral_planes(
    pair: tuple[Design, Pattern],
) -> None:
    """What lies between them: notes and the half of each leather that faces the other."""
    design, _ = pair
    soft = tuple(replace(leather, min_radius=0.0) for leather in design.leathers)
    design = replace(design, leathers=soft)
    outer, inner = soft
    divider = next(part for part in design.parts if part.name == "divider" and isinstance(part, LayerPart))
    notes = sum(held.count * design.load.notes * design.item(held.content).thickness for held in divider.holds)
    apart = outer.neutral * outer.t + notes + (1 - inner.neutral) * inner.t
    for fold in drafted(design).folds:
        shell, lining = fold.layers
        assert shell.true_length - lining.true_length == pytest.approx(pi * apart, abs=1e-9)


@rarely
@given(drafted_designs(has_two_layers), st.floats(0, 1.2))
def test_compensation_shares_out_the_difference_between_flat_and_true(
    pair: tuple[Design, Pattern], factor: float
) -> None:
    design, _ = pair
    flat, part, true = (drafted(compensated(design, c)) for c in (0.0, factor, 1.0))
    for at_zero, at_factor, at_one in zip(flat.folds, part.folds, true.folds, strict=True):
        assert len({round(layer.flat_length, 9) for layer in at_zero.layers}) == 1
        for a, b, c in zip(at_zero.layers, at_factor.layers, at_one.layers, strict=True):
            assert c.flat_length == pytest.approx(c.true_length)
            assert b.flat_length == pytest.approx(a.flat_length + factor * (c.flat_length - a.flat_length))


@rarely
@given(drafts(has_two_layers))
def test_the_zone_on_the_assembly_is_the_innermost_layers(pattern: Pattern) -> None:
    for fold in pattern.folds:
        assert fold.x1 - fold.x0 == pytest.approx(min(layer.flat_length for layer in fold.layers))


@rarely
@given(drafts(has_two_layers))
def test_layers_further_out_enclose_more_and_bend_round_a_greater_radius(pattern: Pattern) -> None:
    for fold in pattern.folds:
        assert all(a.gap.value >= b.gap.value for a, b in pairwise(fold.layers))
        assert all(a.radius >= b.radius for a, b in pairwise(fold.layers))


@rarely
@given(drafts(folds_true))
def test_a_wider_piece_is_wider_by_what_its_folds_are_longer(pattern: Pattern) -> None:
    """Each layer across the whole body is as long as the panels and its own fold lengths, trims apart."""
    panels = sum(panel.width.value for panel in pattern.panels)
    for piece in pattern.pieces:
        if piece.placement.panels == tuple(range(len(pattern.panels))) and piece.part in ("shell", "divider"):
            own = sum(
                layer.flat_length for fold in pattern.folds for layer in fold.layers if layer.part == piece.part
            )
            trims = sum(size for edge, size in piece.trims if edge in ("left", "right"))
            across = piece.height if pattern.design.body.turned else piece.width
            assert across == pytest.approx(panels + own + trims)
