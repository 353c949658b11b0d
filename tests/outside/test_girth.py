"""The room across a pocket against the girth of what it holds, measured by shapely on the section of the contents.

A pocket whose two walls are sewn together on both sides closes on its contents as a taut loop: its clear width laid
flat is half the perimeter of the convex hull of their section.
"""

from __future__ import annotations

from math import pi
from pathlib import Path

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity

from patternforge.design.load import load_design
from patternforge.fit.pockets import half_girth
from patternforge.leather.contents import Item, Section
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Content, Lying
from patternforge.wallet.stacks import taut_terms

SIZES = st.floats(0.3, 120.0)


def ready(name: str) -> Pattern:
    path = Path(__file__).parents[2] / "designs" / f"{name}.yaml"
    return drafted(load_design(path.read_text(encoding="utf-8"), path.name))


def half_perimeter(section: shapely.Geometry) -> float:
    return float(shapely.length(shapely.convex_hull(section))) / 2


def drafted_half_girth(item: Item, across: float, count: int) -> float:
    assert across == item.height
    return sum(term.value for term in taut_terms(Content(item.name, item), Lying.UPRIGHT, count))


@settings(max_examples=60)
@given(SIZES, SIZES, st.integers(1, 6))
def test_a_stack_of_flat_items_is_gone_round_by_its_width_and_its_thickness(
    across: float, thickness: float, count: int
) -> None:
    item = Item("block", 200.0, across, thickness)
    stack = shapely.unary_union(
        [affinity.translate(shapely.box(0, 0, across, thickness), 0, i * thickness) for i in range(count)]
    )
    assert drafted_half_girth(item, across, count) == pytest.approx(half_perimeter(stack))
    assert half_girth(item, across, count * thickness) == pytest.approx(half_perimeter(stack))


@settings(max_examples=60)
@given(SIZES)
def test_a_round_item_is_gone_round_by_half_its_circumference(thickness: float) -> None:
    pen = Item("pen", 200.0, thickness, thickness, section=Section.ROUND)
    # A circle of 4 x 512 chords falls short of its arc by less than a millionth.
    section = shapely.Point(0, 0).buffer(thickness / 2, quad_segs=512)
    assert drafted_half_girth(pen, thickness, 1) == pytest.approx(half_perimeter(section), rel=1e-6)
    assert half_girth(pen, thickness, thickness) == pytest.approx(half_perimeter(section), rel=1e-6)


def test_the_rooms_of_the_pen_sleeve_close_on_their_pens_with_the_ease_asked() -> None:
    pattern = ready("pen-sleeve")
    rows = sorted({round(h.at.x, 2) for h in pattern.piece("rooms").holes if 40 < h.at.y < 90})
    assert len(rows) == 3
    section = shapely.Point(0, 0).buffer(6.0, quad_segs=512)
    for left, right in ((rows[0], rows[1]), (rows[1], rows[2])):
        assert right - left == pytest.approx(half_perimeter(section) + 2.0, abs=0.02)  # the ease of the design


@pytest.mark.parametrize(
    ("name", "ring", "leathers"),
    # Worked by hand: half a circle through the middle of the leather, pi x (half the ring's wire + half the leather).
    # A lining inside runs pi x (1.5 + 0.35), the strap round it pi x (1.5 + 0.7 + 0.7).
    [("tapered-key-strap", 3.0, {"strap": pi * 2.5}), ("key-strap", 3.0, {"lining": pi * 1.85, "strap": pi * 2.9})],
)
def test_a_strap_goes_round_its_ring_by_half_a_circle_through_its_own_middle(
    name: str, ring: float, leathers: dict[str, float]
) -> None:
    (fold,) = ready(name).folds
    assert {layer.part: layer.flat_length for layer in fold.layers} == pytest.approx(leathers, abs=1e-9)
    assert all(term.value == ring for layer in fold.layers for term in layer.gap.terms if "round" in term.label)
