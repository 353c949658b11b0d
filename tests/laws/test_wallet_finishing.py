"""Laws of turned edges, skived leather and copied outlines."""

from __future__ import annotations

from dataclasses import replace
from math import pi, sin

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternforge.errors import DraftError, GeometryError
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import layout
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.regions import fault_of
from patternforge.wallet.assemble import drafted
from patternforge.wallet.copies import copied_shape
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, SkiveSpec, TurnedHoles, TurnedSpec
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design, Edge, FoldSpec, LayerPart
from patternforge.wallet.words import EdgeRole
from tests.laws.geometry_shapes import outlines
from tests.unit.wallet.built import bank, leather, shell, wallet

some = settings(max_examples=40, deadline=None)
ALL = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)
edges = st.lists(st.sampled_from(ALL), min_size=1, max_size=4, unique=True).map(tuple)


@st.composite
def turned_wallets(draw: st.DrawFn) -> tuple[Design, float, float]:
    """A lined wallet with turned edges; the thickness of an edge and of the lining."""
    outer, inner = draw(st.floats(0.6, 2.0)), draw(st.floats(0.2, 1.2))
    edge = draw(st.floats(0.2, 1.0)) * outer
    overlap, neutral = draw(st.floats(3.0, 12.0)), draw(st.floats(0.3, 0.7))
    spec = TurnedSpec(draw(edges), overlap, ("lining",))
    skives: tuple[SkiveSpec, ...] = (EdgeSkive(spec.edges, overlap + 6.0, edge),)
    part = shell(2, turned=(spec,), skives=skives)
    design = wallet(
        part,
        LayerPart("lining", "inner", 0, 0, follows="shell", inside=1.0),
        bank(),
        widths=(draw(st.floats(95, 130)), draw(st.floats(95, 130))),
        height=draw(st.floats(75, 110)),
        folds=(FoldSpec(relief=5.0),),
        leathers=(
            leather("outer", outer, neutral=neutral, min_radius=draw(st.floats(0.0, 1.0))),
            leather("inner", inner),
        ),
    )
    return design, edge, inner


@some
@given(turned_wallets())
def test_folded_back_on_its_neutral_fibre_a_turned_edge_lies_at_its_declared_size(
    case: tuple[Design, float, float],
) -> None:
    """The cut edge is walked back: the overlap, half a circle of the fibre, and out again to the face of the bend."""
    design, edge, lining = case
    pattern = drafted(design)
    piece, outer = pattern.piece("shell"), design.leather("outer")
    radius = max(lining / 2, outer.min_radius * edge)
    fibre = pi * (radius + outer.neutral * edge)
    spec = design.parts[0]
    assert isinstance(spec, LayerPart)
    (asked,) = spec.turned
    whole, flat = piece.outline.bounds, pattern.folds[0].layers[0].flat_length
    taken = {side: (asked.overlap + fibre - (radius + edge)) if side in asked.edges else 0.0 for side in Edge}
    width = sum(panel.width.value for panel in pattern.panels) + flat
    assert whole.width - taken[Edge.LEFT] - taken[Edge.RIGHT] == pytest.approx(width)
    assert whole.height - taken[Edge.TOP] - taken[Edge.BOTTOM] == pytest.approx(pattern.height)
    assert piece.made.bounds.width == pytest.approx(width)
    assert piece.made.bounds.height == pytest.approx(pattern.height)
    assert fault_of(piece.outline) is None


@some
@given(st.floats(6.0, 25.0), st.floats(2.5, 12.0), st.floats(0.2, 0.8), st.floats(0.0, 1.0))
def test_notches_for_pleats_take_out_what_lies_too_much_round_the_corner(
    corner: float, overlap: float, edge: float, lining: float
) -> None:
    spec = TurnedSpec(ALL, overlap, core=lining)
    part = shell(1, turned=(spec,), skives=(EdgeSkive(ALL, overlap + 6.0, edge),) if edge < 1.2 else ())
    try:
        piece = drafted(wallet(part, bank(), widths=(130.0,), height=100.0, corner=corner)).piece("shell")
    except DraftError:
        assume(False)
    assert piece.turned is not None
    found, side = piece.turned.corners[0], piece.turned.turned[0]
    excess = pi / 2 * ((corner + side.allowance) - (corner - side.depth))
    assert found.notches * found.notch == pytest.approx(excess)
    assert found.notch <= 4.0 + 1e-9
    # Each takes a sector of the rim less the two triangles beside it out of the rounded allowance.
    rim, tip = corner + side.allowance, corner + found.gap
    half = found.notch / rim / 2
    cut = rim * rim * half - rim * tip * sin(half)
    a = side.allowance
    rounded = (130 + 2 * a) * (100 + 2 * a) - (4 - pi) * rim * rim
    assert rounded - piece.outline.area == pytest.approx(4 * found.notches * cut)


@some
@given(outlines(), st.floats(0.1, 3.0), st.floats(0.1, 3.0))
def test_an_inset_of_an_inset_is_one_inset_of_both(path: Path, first: float, second: float) -> None:
    shape = Shape(path.ccw(), (EdgeRole.RAW,) * len(path.segments))
    try:
        once = copied_shape(shape, first + second).path
        twice = copied_shape(copied_shape(shape, first), second).path
    except GeometryError:
        assume(False)
    assert apart(once, twice) < 1e-6
    assert apart(twice, once) < 1e-6


def apart(one: Path, other: Path) -> float:
    """How far the one strays from the other at most, at its corners and in the middle of its edges."""
    places: list[Point] = [p for s in one.segments for p in (s.start, s.point_at(s.length / 2))]
    return max(other.distance_to(p) for p in places)


def skived(pattern_of: Design, skives: tuple[SkiveSpec, ...]) -> Pattern:
    part = pattern_of.parts[0]
    assert isinstance(part, LayerPart)
    return drafted(replace(pattern_of, parts=(replace(part, skives=skives), *pattern_of.parts[1:])))


@some
@given(
    st.floats(0.3, 1.1),
    st.floats(2.0, 30.0),
    st.floats(0.0, 1.5),
    edges,
    st.sampled_from([180.0, -180.0, 90.0]),
)
def test_a_skive_never_makes_a_fold_or_the_closed_wallet_larger(
    left: float, width: float, stiffness: float, along: tuple[Edge, ...], angle: float
) -> None:
    design = wallet(
        shell(2),
        LayerPart("lining", "inner", 0, 1),
        bank(),
        widths=(100.0, 100.0),
        folds=(FoldSpec(angle, relief=5.0),),
        leathers=(leather("outer", 1.2, min_radius=stiffness), leather("inner", 0.8)),
    )
    plain = skived(design, ())
    pared = skived(design, (FoldSkive(0, width, left), EdgeSkive(along, width, left)))
    for before, after in zip(plain.folds[0].layers, pared.folds[0].layers, strict=True):
        assert after.flat_length <= before.flat_length + 1e-9
    leathers = {each.role: each for each in design.leathers}
    thick, thin = (closed_wallet(layout(pattern, leathers)) for pattern in (plain, pared))
    assert thin.thickness <= thick.thickness + 1e-9
    for one, other in zip(thick.bends[0], thin.bends[0], strict=True):
        assert other.needs <= one.needs + 1e-9


@some
@given(turned_wallets())
def test_every_mate_in_what_is_turned_in_lies_in_leather_and_off_its_edges(
    case: tuple[Design, float, float],
) -> None:
    part = case[0].parts[0]
    assert isinstance(part, LayerPart)
    spec = replace(part.turned[0], holes=TurnedHoles.CUT)
    design = replace(case[0], parts=(replace(part, turned=(spec,)), *case[0].parts[1:]))
    piece = drafted(design).piece("shell")
    for mate in piece.turned_holes:
        assert piece.outline.contains(mate.at)
        assert not piece.made.contains(mate.at)
        assert piece.outline.distance_to(mate.at) >= 2.0 - 1e-9
