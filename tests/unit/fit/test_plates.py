"""Square spines in sections: two corners of 90 degrees, their layers reckoned by hand."""

from __future__ import annotations

from itertools import combinations
from math import pi

import pytest

from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import layout
from patternforge.fit.section import Section, Strip, closed_section
from patternforge.geometry.regions import overlap_area, region
from patternforge.wallet.spec import FoldSpec, LayerPart
from tests.unit.fit.found import small
from tests.unit.wallet.built import shell

# The lining, 0.8 mm thick, bends as sharp as it can: 0.4 mm inside, fibre at 0.8 mm. The shell lies round it: its
# inside at 0.8 + 0.4, its fibre 0.6 mm further out.
LINING, SHELL = 0.8, 1.8
SPINE = 12.0


def spined(angle: float = 90.0, widths: tuple[float, ...] = (60.0, SPINE, 60.0)) -> Section:
    folds = tuple(FoldSpec(angle=angle, relief=2.0) for _ in range(len(widths) - 1))
    layers = (shell(len(widths)), LayerPart("lining", "inner", 0, len(widths) - 1))
    pattern = small(*layers, widths=widths, folds=folds)
    found = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    return closed_section(found, closed_wallet(found), 40.0)


def corners(section: Section, ply: str) -> list[Strip]:
    return [s for s in section.strips if s.ply == ply and any(segment.is_arc for segment in s.path.segments)]


@pytest.mark.parametrize(("ply", "fibre", "thick"), [("lining", LINING, 0.8), ("shell", SHELL, 1.2)])
def test_each_layer_turns_a_quarter_of_a_circle_at_either_corner(ply: str, fibre: float, thick: float) -> None:
    found = corners(spined(), ply)
    assert [strip.length for strip in found] == [pytest.approx(pi / 2 * fibre)] * 2
    for strip in found:
        radii = sorted(segment.radius for segment in strip.path.segments if segment.is_arc)
        assert radii == [pytest.approx(fibre - thick / 2), pytest.approx(fibre + thick / 2)]
        assert strip.path.area == pytest.approx(pi / 2 * fibre * thick)


def test_the_spine_stands_upright_and_keeps_its_flanks_apart() -> None:
    section = spined()
    box = [strip.path.bounds for strip in section.strips]
    # A corner, the spine, a corner: from outside to outside.
    assert max(b.y1 for b in box) == pytest.approx(SPINE + 2 * (SHELL + 0.6))
    assert max(b.x1 for b in box) == pytest.approx(60.0 + SHELL + 0.6)
    upright = [b for b in box if b.height == pytest.approx(SPINE)]
    assert sorted(round(b.width, 6) for b in upright) == [0.8, 1.2]


def test_all_layers_of_a_corner_go_round_one_point() -> None:
    middles = [
        segment.centre
        for ply in ("shell", "lining")
        for strip in corners(spined(), ply)[:1]
        for segment in strip.path.segments
        if segment.is_arc
    ]
    assert len(middles) == 4
    assert all(middle.distance_to(middles[0]) < 1e-6 for middle in middles)


@pytest.mark.parametrize("angle", [90.0, -90.0, 60.0])
def test_no_two_layers_overlap_and_each_is_as_long_as_its_piece(angle: float) -> None:
    widths = (60.0, SPINE, 60.0) if abs(angle) == 90 else (60.0, 8.0, 8.0, 60.0)
    section = spined(angle, widths)
    for one, other in combinations(section.strips, 2):
        shared = overlap_area(region(one.path, (), 1e-4), region(other.path, (), 1e-4))
        assert shared / max(min(one.length, other.length), 1.0) <= 0.02
    # By hand: the corners of a layer make half a turn in all.
    inner, outer = ("lining", "shell") if angle > 0 else ("shell", "lining")
    fibres = {"lining": LINING, "shell": SHELL} if angle > 0 else {"shell": 1.2, "lining": 1.2 + 0.6 + 0.4}
    for ply in (inner, outer):
        assert section.length(ply) == pytest.approx(sum(widths) + pi * fibres[ply], abs=0.05)
