"""Sections of small wallets, counted by hand, and of all ready designs against their flat pieces."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from math import pi
from pathlib import Path

import pytest

from patternforge.design.load import load_design
from patternforge.fit.bulk_map import closed_map
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import Layout, layout
from patternforge.fit.section import Section, closed_section, lengthwise_section, open_section
from patternforge.geometry.point import Point
from patternforge.geometry.regions import overlap_area, region
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import FoldSpec
from tests.unit.fit.found import small
from tests.unit.wallet.built import pocket, shell

FOLD = FoldSpec(relief=5.0)
DESIGNS = sorted((Path(__file__).parents[3] / "designs").glob("*.yaml"))
# A wallet folded from one piece has no row of panels to cut across.
ROWS = [path for path in DESIGNS if "\nbody:" in path.read_text(encoding="utf-8")]


def laid(pattern: Pattern) -> Layout:
    return layout(pattern, {leather.role: leather for leather in pattern.design.leathers})


def ready(path: Path) -> Layout:
    return laid(drafted(load_design(path.read_text(encoding="utf-8"), path.name)))


def closed(found: Layout, y: float) -> Section:
    return closed_section(found, closed_wallet(found), y)


def box(section: Section, ply: str) -> list[tuple[float, ...]]:
    bounds = (strip.path.bounds for strip in section.strips if strip.ply == ply)
    return [tuple(round(v, 4) for v in (b.x0, b.y0, b.x1, b.y1)) for b in bounds]


def test_a_card_lies_on_the_shell_and_the_pocket_on_the_card_and_beside_it_on_the_shell() -> None:
    section = open_section(laid(small(shell(1), pocket())), 20.0)
    assert box(section, "shell") == [(0, 0, 100, 1.2)]
    assert box(section, "card") == [(10, 1.2, 90, 2.2)]
    assert box(section, "pocket") == [(0, 1.2, 10, 2.0), (10, 2.2, 90, 3.0), (90, 1.2, 100, 2.0)]
    assert section.thickness == pytest.approx(3.0)


def test_above_the_pocket_only_shell_and_card_are_cut() -> None:
    section = open_section(laid(small(shell(1), pocket())), 50.0)
    assert {strip.ply for strip in section.strips} == {"shell", "card"}
    assert {strip.leather for strip in section.strips} == {"outer", ""}


def test_a_shell_closed_on_itself_bends_in_a_half_circle_beyond_the_fold() -> None:
    # Nothing but the shell and a card with its pocket: the gap is 1.8, the fibre's radius 0.9 + 0.6.
    found = laid(small(shell(2), pocket(), widths=(100.0, 100.0), folds=(FOLD,)))
    section = closed(found, 20.0)
    (bent,) = [strip for strip in section.strips if strip.ply == "shell" and strip.path.segments[0].is_arc]
    assert bent.length == pytest.approx(pi * 1.5)
    assert bent.path.area == pytest.approx(pi * 1.5 * 1.2)
    assert bent.path.bounds.x1 == pytest.approx(100 + 1.5 + 0.6)
    assert section.thickness == pytest.approx(1.2 + 1.0 + 0.8 + 1.2)


def test_a_longer_shell_arches_outwards_when_laid_open() -> None:
    path = next(path for path in DESIGNS if path.stem == "two-fold")
    section = open_section(ready(path), 30.0)
    (arch,) = [strip for strip in section.strips if strip.ply == "shell" and strip.path.segments[0].is_arc]
    assert arch.path.bounds.y0 < -3.0


def test_an_uncompensated_shell_ends_short_of_the_others() -> None:
    path = next(path for path in DESIGNS if path.stem == "two-fold")
    design = load_design(path.read_text(encoding="utf-8"), path.name)
    flat = replace(design.body, folds=tuple(replace(fold, compensation=0.0) for fold in design.body.folds))
    found = laid(drafted(replace(design, body=flat)))
    section = closed(found, 30.0)
    ends = {ply: min(b[0] for b in box(section, ply)) for ply in ("shell", "note divider")}
    # The upper panel runs back to x = 0; the shell's edge stops short of it by pi x 1.66.
    upper = [strip.path.bounds for strip in section.strips if strip.ply == "shell" and strip.path.bounds.y0 > 5]
    assert min(b.x0 for b in upper) == pytest.approx(pi * 1.66, abs=1e-3)
    assert ends["note divider"] == pytest.approx(0.0, abs=1e-6)


# Round a ring a loop narrows to its neck, where its layers are drawn with a kink.
FLAT = [path for path in ROWS if "around:" not in path.read_text(encoding="utf-8")]
EVERY = pytest.mark.parametrize("path", ROWS, ids=lambda path: path.stem)


@EVERY
def test_every_layer_is_drawn_as_long_as_its_flat_piece(path: Path) -> None:
    found = ready(path)
    for y in (found.pattern.height * 0.4, found.pattern.height * 0.71):
        for section in (open_section(found, y), closed(found, y)):
            for piece in (each for each in found.pattern.pieces if each.placement.panels):
                assert section.length(piece.name) == pytest.approx(flat_length(found, piece.name, y), abs=0.05)


def flat_length(found: Layout, name: str, y: float) -> float:
    """How much leather of the flat piece lies along the cut, by stepping along it."""
    piece = found.pattern.piece(name)
    if not piece.placement.panels:
        return 0.0
    (ply,) = [ply for ply in found.plies if ply.name == name]
    ends = sorted([*ply.edges_at(y), *(x for o in ply.openings for x in crossings(o.vertices, y))])
    flat = [piece.placement.development.flat(x) for x in ends]
    return sum(b - a for a, b in zip(flat[::2], flat[1::2], strict=True))


def crossings(vertices: tuple[tuple[float, float, float], ...], y: float) -> list[float]:
    """x where an outline passes a height, arcs by their circle."""
    from patternforge.geometry.path import from_vertices
    from patternforge.geometry.segment import Segment, intersections

    level = Segment(Point(-1e4, y), Point(1e4, y))
    path = from_vertices(vertices, closed=True)
    return sorted(p.x for segment in path.segments for p in intersections(segment, level))


@pytest.mark.parametrize("path", FLAT, ids=lambda path: path.stem)
def test_no_two_layers_of_a_closed_wallet_overlap_where_it_is_thickest(path: Path) -> None:
    found = ready(path)
    highest = closed_map(found, closed_wallet(found)).highest
    section = closed(found, highest.at.y)
    areas = [(strip, region(strip.path, (), 1e-4)) for strip in section.strips]
    for (one, a), (other, b) in combinations(areas, 2):
        touching = one.path.bounds.x0 < other.path.bounds.x1 and other.path.bounds.x0 < one.path.bounds.x1
        if touching and one.ply != other.ply:
            thin = overlap_area(a, b) / max(min(one.length, other.length), 1.0)
            assert thin <= 0.02, (one.ply, other.ply)


@EVERY
def test_the_closed_section_is_as_thick_as_the_bulk_there(path: Path) -> None:
    found = ready(path)
    highest = closed_map(found, closed_wallet(found)).highest
    assert closed(found, highest.at.y).thickness == pytest.approx(highest.thickness, abs=1e-6)


def test_along_the_folds_the_pocket_stops_at_its_mouth() -> None:
    found = laid(small(shell(1), pocket()))
    section = lengthwise_section(found, closed_wallet(found), 0.5)
    assert box(section, "shell") == [(0, 0, 80, 1.2)]
    assert box(section, "card") == [(4, 1.2, 54, 2.2)]
    assert box(section, "pocket") == [(0, 1.2, 4, 2.0), (4, 2.2, 44, 3.0)]
    assert section.thickness == pytest.approx(3.0)
