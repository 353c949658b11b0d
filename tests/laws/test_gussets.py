"""What holds for every gusset: it meets its walls hole for hole, and is as wide as its bends ask."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from patternforge.fit.judge import fit
from patternforge.fit.strips import folded_strip
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.parts.profile import bellows, channel
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import CornerStyle, Design, Edge, FoldSpec, GussetPart, LayerPart, SeamSpec, Side
from tests.unit.wallet.built import leather, wallet
from tests.unit.wallet.pouches import seam, strip_placement

rarely = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
_U = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT)
_TURNED = (Edge.BOTTOM, Edge.RIGHT, Edge.TOP)


def tenths(low: float, high: float) -> st.SearchStrategy[float]:
    return st.integers(round(low * 10), round(high * 10)).map(lambda n: n / 10)


leathers = st.builds(
    lambda t, neutral, sharp: Leather("inner", Thickness(t, t), neutral=neutral, min_radius=sharp),
    tenths(0.5, 1.5),
    st.floats(0.3, 0.5),
    st.floats(0.0, 1.0),
)


@st.composite
def gusseted(draw: st.DrawFn) -> Design:
    """A pouch with one gusset round three edges or along one, under a flap or open at the top, of any size."""
    margin, corner = draw(tenths(2.5, 5.0)), draw(st.one_of(st.just(0.0), tenths(6.0, 30.0)))
    flap = draw(st.booleans())
    along = draw(st.sampled_from([(Edge.LEFT,), _U])) if not flap else _TURNED
    pleats = draw(st.integers(0, 3))
    part = GussetPart(
        "side",
        "inner",
        0 if not flap else 1,
        ("back seam", "front seam"),
        pleats=pleats,
        depth=0.0 if pleats else draw(tenths(12.0, 40.0)),
        leaf=draw(tenths(9.0, 18.0)) if pleats else 0.0,
        turn=draw(st.one_of(st.none(), tenths(4.0, 6.0))) if not pleats else None,
        short=draw(st.sampled_from((0.0, 1.0))),
        opening=Edge.LEFT if flap else Edge.TOP,
        showing=draw(st.sampled_from(Side)),
    )
    changes: dict[str, Any] = {
        "margin": margin,
        "corners": CornerStyle.SHARP if corner == 0 and draw(st.booleans()) else CornerStyle.ROUNDED,
        "end": max(corner, margin) + 1.0,
        "over": (part.panel, part.panel),
    }
    seams = [
        replace(seam(name, *through, along=along), **changes)
        for name, through in (("back seam", ("back", "side")), ("front seam", ("side", "front")))
    ]
    return _walls(part, seams, draw(tenths(70.0, 110.0)), draw(tenths(65.0, 100.0)), corner, draw(leathers))


def _walls(
    part: GussetPart, seams: list[SeamSpec], width: float, height: float, corner: float, thin: Leather
) -> Design:
    flap = part.panel
    back, front = LayerPart("back", "outer", 0, flap), LayerPart("front", "outer", flap, flap)
    return wallet(
        back,
        part,
        front,
        widths=(40.0, width)[1 - flap :],
        height=height,
        folds=(FoldSpec(),) * flap,
        closing=(1,) * flap,
        seams=seams,
        corner=corner,
        leathers=(leather("outer", 1.2), thin),
    )


def lengths(pattern: Pattern, seam_name: str) -> float:
    xs = [hole.at.x for hole in pattern.piece("side").holes if hole.seam == seam_name]
    return max(xs) - min(xs)


@rarely
@given(gusseted())
def test_a_gusset_and_its_walls_are_sewn_over_equal_lengths_with_equal_holes(design: Design) -> None:
    pattern = drafted(design)
    strip = pattern.piece("side")
    for drafted_seam in pattern.seams:
        wall = next(
            p for p in pattern.pieces if p.placement.panels and any(h.seam == drafted_seam.name for h in p.holes)
        )
        own, walls = ([h.index for h in p.holes if h.seam == drafted_seam.name] for p in (strip, wall))
        assert sorted(own) == sorted(walls)
        assert lengths(pattern, drafted_seam.name) == pytest.approx(drafted_seam.length, abs=1e-9)
    assert lengths(pattern, "back seam") == pytest.approx(lengths(pattern, "front seam"), abs=0.1)


@rarely
@given(gusseted())
def test_every_hole_of_a_strip_comes_back_to_its_seam_and_every_slit_to_its_way(design: Design) -> None:
    pattern = drafted(design)
    strip = pattern.piece("side")
    places = {(s.name, h.index): h.at for s in pattern.seams for h in s.holes}
    for hole in strip.holes:
        assert strip.placement.to_assembly(hole.at).distance_to(places[hole.seam, hole.index]) < 1e-6
    placement = strip_placement(strip)
    for row in placement.rows:
        for d in (0.0, row.line.length / 3, row.line.length):
            at = placement.on_row(row.seam, d)
            way = row.line.tangent_at(d)
            told = placement.angle(at, math.degrees(math.atan2(way.y, way.x)))
            assert abs(math.remainder(told - (0.0 if placement.forward > 0 else 180.0), 360)) < 1e-6


@rarely
@given(gusseted())
def test_holes_of_a_strip_stand_their_margin_off_its_edges(design: Design) -> None:
    strip = drafted(design).piece("side")
    margin = design.seams[0].margin
    for hole in strip.holes:
        assert min(hole.at.y, strip.height - hole.at.y) == pytest.approx(margin)
        assert -1e-9 <= hole.at.x <= strip.width + 1e-9


@rarely
@given(gusseted())
def test_fit_finds_the_joined_edges_of_a_drafted_gusset_good(design: Design) -> None:
    found = [each for each in fit(drafted(design)) if "of a gusset" in each.what and "differ" in each.what]
    found += [each for each in fit(drafted(design)) if "longer or shorter" in each.what]
    assert len(found) == 5
    assert {each.verdict.value for each in found} == {"good"}


@rarely
@given(gusseted())
def test_a_strip_folded_in_its_own_leather_is_as_deep_as_asked(design: Design) -> None:
    (part,) = (each for each in design.parts if isinstance(each, GussetPart))
    folded = folded_strip(drafted(design).piece("side"), design.leather("inner"))
    assert folded.pleats == part.pleats
    if part.pleats == 0:
        assert folded.height == pytest.approx(part.depth)


@given(leathers, tenths(6.0, 30.0), tenths(0.1, 0.5))
def test_a_pleat_in_thicker_leather_is_never_narrower(thin: Leather, leaf: float, more: float) -> None:
    thicker = replace(thin, thickness=Thickness(thin.t + more, thin.t + more))
    assert bellows(thicker, leaf, 1).width.value >= bellows(thin, leaf, 1).width.value


@given(leathers, tenths(6.0, 30.0), st.integers(1, 5), tenths(0.1, 0.5))
def test_a_bellows_grows_by_its_bends_less_what_they_reach_out(
    thin: Leather, leaf: float, pleats: int, more: float
) -> None:
    """2 n - 1 half turns of pi (r + k t), r = rho t; 2 n - 2 leaves are shorter by (1 + rho) t."""
    thicker = replace(thin, thickness=Thickness(thin.t + more, thin.t + more))
    rho, k = thin.min_radius, thin.neutral
    grown = ((2 * pleats - 1) * math.pi * (rho + k) - (2 * pleats - 2) * (1 + rho)) * more
    widths = [bellows(each, leaf + 5.0, pleats).width.value for each in (thin, thicker)]
    assert widths[1] - widths[0] == pytest.approx(grown)


@given(leathers, tenths(15.0, 40.0), tenths(8.0, 12.0), tenths(0.1, 0.5))
def test_a_channel_of_outside_sizes_changes_by_its_bends_less_their_four_reaches(
    thin: Leather, depth: float, flange: float, more: float
) -> None:
    """Two quarter turns of pi / 2 (r + k t) grow, four reaches r + t are taken off: mostly it grows narrower."""
    thicker = replace(thin, thickness=Thickness(thin.t + more, thin.t + more))
    rho, k = thin.min_radius, thin.neutral
    grown = (math.pi * (rho + k) - 4 * (1 + rho)) * more
    widths = [channel(each, depth, (flange, flange)).width.value for each in (thin, thicker)]
    assert widths[1] - widths[0] == pytest.approx(grown)


@given(leathers, tenths(15.0, 40.0), tenths(0.1, 5.0))
def test_a_deeper_channel_is_wider_by_just_that(thin: Leather, depth: float, more: float) -> None:
    widths = [channel(thin, each, (9.0, 9.0)).width.value for each in (depth, depth + more)]
    assert widths[1] - widths[0] == pytest.approx(more)


@rarely
@given(gusseted())
def test_the_middle_of_a_strip_is_the_middle_of_its_seams(design: Design) -> None:
    strip = drafted(design).piece("side")
    for name in ("back seam", "front seam"):
        xs = [hole.at.x for hole in strip.holes if hole.seam == name]
        assert (min(xs) + max(xs)) / 2 == pytest.approx(strip_placement(strip).middle)
