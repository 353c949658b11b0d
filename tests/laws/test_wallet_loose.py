"""Laws of what lies loose on a panel and of what a fold goes round."""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from patternforge.errors import DraftError
from patternforge.fit.judge import fit
from patternforge.leather.closing import closing
from patternforge.leather.contents import Item
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Content, Design, FoldSpec, LoosePart, Spot
from tests.laws.designs import drafted_designs
from tests.unit.wallet.built import body_of, leather, shell, wallet

rarely = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
thicknesses = st.sampled_from((0.4, 2.0, 7.5))


def has_folds(design: Design) -> bool:
    return bool(design.body.folds) and all(abs(fold.angle) == 180 for fold in design.body.folds)


def with_pad(design: Design, panel: int, thickness: float) -> Design:
    """The design with a small pad on the innermost side of a panel."""
    pad = Item("pad", 12.0, 8.0, thickness)
    parts = (*design.parts, LoosePart("pad", panel, "pad", Spot(panel)))
    return replace(design, contents=(*design.contents, Content("pad", pad)), parts=parts)


def gaps(pattern: Pattern) -> list[dict[str, float]]:
    return [{layer.part: layer.gap.value for layer in fold.layers} for fold in pattern.folds]


@rarely
@given(drafted_designs(has_folds), thicknesses, st.data())
def test_what_lies_loose_widens_by_its_thickness_the_folds_that_close_over_it_and_no_other(
    pair: tuple[Design, Pattern], thickness: float, data: st.DataObject
) -> None:
    design, pattern = pair
    body = design.body
    panel = data.draw(st.integers(0, len(body.panels) - 1))
    try:
        loaded = drafted(with_pad(design, panel, thickness))
    except DraftError:
        assume(False)
    order = closing(len(body.panels), [fold.angle for fold in body.folds], body.closing)
    for index, (before, after) in enumerate(zip(gaps(pattern), gaps(loaded), strict=True)):
        flank = panel in (index, index + 1) and body.folds[index].angle > 0
        inside = flank or any(placed.panel == panel for placed in order.between[index])
        for part, gap in before.items():
            assert after[part] - gap == pytest.approx(thickness if inside else 0.0, abs=1e-9)


@rarely
@given(drafted_designs(has_folds), thicknesses)
def test_the_closed_wallet_grows_by_what_lies_loose_at_its_thickest(
    pair: tuple[Design, Pattern], thickness: float
) -> None:
    design, pattern = pair
    x = [panel.x1 - panel.x0 for panel in pattern.panels]
    # As large as its panel, so that it lies wherever the panel is thickest.
    pad = Item("pad", x[0] - 0.02, pattern.height - 0.02, thickness)
    parts = (*pattern.design.parts, LoosePart("pad", 0, "pad", Spot(0)))
    loaded = replace(pattern.design, contents=(*design.contents, Content("pad", pad)), parts=parts)
    try:
        closed = [_closed(drafted(each)) for each in (pattern.design, loaded)]
    except DraftError:
        assume(False)
    assert closed[1] - closed[0] == pytest.approx(thickness, abs=1e-6)


def _closed(pattern: Pattern) -> float:
    return next(f.measured for f in fit(pattern) if f.what == "thickness closed, as loaded")


@rarely
@given(drafted_designs(lambda design: bool(design.body.folds)), thicknesses)
def test_a_bar_in_every_fold_lengthens_true_layers_by_half_the_angle_times_its_thickness(
    pair: tuple[Design, Pattern], thickness: float
) -> None:
    design, pattern = pair
    folds = tuple(replace(fold, around=thickness) for fold in design.body.folds)
    try:
        wound = drafted(replace(design, body=replace(design.body, folds=folds)))
    except DraftError:
        assume(False)
    for before, after in zip(pattern.folds, wound.folds, strict=True):
        for plain, round_it in zip(before.layers, after.layers, strict=True):
            assert round_it.gap.value - plain.gap.value == pytest.approx(thickness, abs=1e-9)
            longest = radians(abs(before.angle)) * thickness / 2
            # What was hollow because the leather is stiff is filled first.
            assert -1e-9 <= round_it.true_length - plain.true_length <= longest + 1e-9
            if plain.radius <= plain.gap.value / 2 + 1e-9:
                assert round_it.true_length - plain.true_length == pytest.approx(longest, abs=1e-9)


@rarely
@given(thicknesses, st.sampled_from((0.8, 1.2, 2.4)), st.sampled_from((0.3, 0.5)))
def test_a_strap_round_a_ring_is_as_long_as_its_fibres_half_circle(ring: float, t: float, neutral: float) -> None:
    leathers = (leather("outer", t, neutral=neutral, min_radius=0.0),)
    (fold,) = body_of(wallet(shell(2), widths=(60.0, 60.0), folds=(FoldSpec(around=ring),), leathers=leathers)).folds
    assert fold.layers[0].flat_length == pytest.approx(pi * (ring / 2 + neutral * t))
