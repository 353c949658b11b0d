"""The steps of making every ready design, followed with needle and glue by a simulation of its own."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
import shapely

from patternforge.fit.glue import Glue, glue_of
from patternforge.fit.layout import Layout, Ply, layout
from patternforge.fit.making import MakingStep, Work, making_steps
from patternforge.fit.order import sewing_order
from patternforge.geometry.path import Path as Outline
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern, Piece, Pocket
from patternforge.wallet.spec import Side
from patternforge.wallet.strip import StripPlacement
from tests.making_simulated import covered_holes
from tests.outside.written import SEWN, ready_design

EVERY = pytest.mark.parametrize("path", SEWN, ids=lambda path: path.stem)


@cache
def made(path: Path) -> tuple[Layout, tuple[MakingStep, ...]]:
    pattern = drafted(ready_design(path))
    found = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    return found, making_steps(found, sewing_order(found))


@cache
def glue(path: Path) -> tuple[Glue, ...]:
    found, steps = made(path)
    return tuple(each for step in steps for each in glue_of(found, step))


def named(stem: str) -> Path:
    return next(path for path in SEWN if path.stem == stem)


@EVERY
def test_no_hole_is_covered_when_its_turn_comes(path: Path) -> None:
    found, steps = made(path)
    assert list(covered_holes(found.pattern, steps)) == []
    assert not [step for step in steps if step.work is Work.STUCK]


@pytest.mark.parametrize(
    ("stem", "late", "cover"),
    [("two-fold", "left cards stop 3", "left cards 2"), ("strap-card-case", "strap seam", "back cards 1")],
)
def test_a_seam_left_to_the_end_would_be_covered(stem: str, late: str, cover: str) -> None:
    found, steps = made(named(stem))
    last = next(step for step in steps if step.seam == late)
    everything = replace(last, pieces=tuple(piece.name for piece in found.pattern.pieces))
    wrong = (*(step for step in steps if step is not last), everything)
    assert (late, cover) in covered_holes(found.pattern, wrong)


@EVERY
def test_every_piece_is_laid_on_in_one_step_and_every_seam_sewn_in_one(path: Path) -> None:
    found, steps = made(path)
    new = Counter(name for step in steps for name in step.new)
    assert new == Counter(piece.name for piece in found.pattern.pieces)
    sewn = Counter(step.seam for step in steps if step.seam)
    assert sewn == Counter(seam.name for seam in found.pattern.seams if not seam.meets)


@EVERY
def test_what_is_brought_together_stays_together_and_nothing_is_used_before_it_is_laid_on(path: Path) -> None:
    _, steps = made(path)
    held: set[frozenset[str]] = set()
    for step in steps:
        if step.groups:
            known = {name for group in held for name in group}
            groups = {frozenset(group) for group in step.groups}
            assert {name for group in groups for name in group} - known == set(step.new)
            assert {group for group in groups if group & known} <= held
            held = {group for group in held if group not in groups} | {frozenset(step.pieces)}


@EVERY
def test_single_pieces_are_worked_on_before_they_are_joined_and_folds_closed_after(path: Path) -> None:
    found, steps = made(path)
    joined: set[str] = set()
    for step in steps:
        if step.work in (Work.SKIVE, Work.LETTER, Work.MOUTHS, Work.CREASE):
            assert not joined & set(step.pieces)
        joined |= set(step.new)
    folds = [step.fold for step in steps if step.fold]
    assert folds == list(found.pattern.design.body.closing)
    assert steps[-1].work is Work.EDGES


@EVERY
def test_hardware_under_another_piece_is_set_before_that_piece_is_joined(path: Path) -> None:
    _, steps = made(path)
    order = {step: number for number, step in enumerate(steps)}
    late = [
        (name, cover)
        for step, name, cover in under_cover(path)
        for joined in steps
        if joined.groups and {name, cover} <= set(joined.pieces) and order[joined] < order[step]
    ]
    assert late == []


def test_some_hardware_lies_under_another_piece() -> None:
    assert sum(bool(under_cover(path)) for path in SEWN) > 1


def under_cover(path: Path) -> list[tuple[MakingStep, str, str]]:
    """The steps that set hardware in a piece where another piece comes to lie over it, with both pieces."""
    found, steps = made(path)
    return [
        (step, name, ply.of)
        for step in steps
        for name, half in step.fittings
        for ply in found.plies
        if lies_over(ply, found.pattern.piece(name), half.at)
    ]


def lies_over(ply: Ply, piece: Piece, at: Point) -> bool:
    there = piece.placement.to_assembly(at)
    is_other = ply.of not in ("", piece.name) and bool(set(ply.panels) & set(piece.placement.panels))
    return is_other and ply.holds(there) and not any(opening.contains(there) for opening in ply.openings)


@EVERY
def test_glue_lies_once_wherever_two_pieces_are_sewn_on_each_other(path: Path) -> None:
    found, _ = made(path)
    glued = Counter((each.outer, each.inner, each.seam) for each in glue(path))
    assert set(glued) == set(touching(found.pattern))
    assert set(glued.values()) <= {1}


def touching(pattern: Pattern) -> list[tuple[str, str, str]]:
    """The pieces next to each other at two holes in a row of a seam, from the outside in, with the seam."""
    found: list[tuple[str, str, str]] = []
    pierced = stacks(pattern)
    for seam in (each for each in pattern.seams if not each.meets):
        for first, second in pairwise(seam.holes):
            if first.run == second.run:
                pairs = [set(pairwise(pierced.get((seam.name, hole.index), []))) for hole in (first, second)]
                found += [(*pair, seam.name) for pair in pairs[0] & pairs[1]]
    return found


def stacks(pattern: Pattern) -> dict[tuple[str, int], list[str]]:
    """The pieces at every hole of every seam, from the outside in."""
    found: dict[tuple[str, int], list[str]] = {}
    for piece in sorted(pattern.pieces, key=lambda piece: piece.level):
        for hole in piece.holes:
            found.setdefault((hole.seam, hole.index), []).append(piece.name)
    return found


@EVERY
def test_glue_never_reaches_the_room_of_what_a_pocket_holds(path: Path) -> None:
    assert [(each.seam, pocket.part) for each, pocket in round_items(path) if reach(path, each, pocket) >= 1e-6] == []


def test_some_glue_lies_between_the_walls_of_pockets() -> None:
    assert sum(bool(round_items(path)) for path in SEWN) > len(SEWN) / 2


def round_items(path: Path) -> list[tuple[Glue, Pocket]]:
    """Glue between two pieces that the items of a pocket lie between, with the pocket; strips left out."""
    found, _ = made(path)
    pairs = [(each, pocket) for each in glue(path) for pocket in found.pattern.pockets]
    return [(g, pocket) for g, pocket in pairs if is_between(found.pattern, pocket, g) and not is_strip(found, g)]


def reach(path: Path, glued: Glue, pocket: Pocket) -> float:
    """How much of the room of a pocket's item is covered by glue, mm2."""
    corner = made(path)[0].items[pocket.content].corner_radius
    room = shapely.box(*pocket.box).buffer(-corner).buffer(corner)
    return max(float(shapely.Polygon(points(p)).intersection(room).area) for p in glued.patches)


def is_between(pattern: Pattern, pocket: Pocket, glue: Glue) -> bool:
    """Whether the items of a pocket lie between the two pieces: on the inner side of a wall that faces outwards.

    Between items and wall lie the films of its windows.
    """
    wall = pattern.piece(pocket.piece)
    levels = [wall.level, *(piece.level for piece in pattern.pieces if piece.lines == wall.name)]
    is_outwards = wall.showing is Side.OUTSIDE and not pocket.held
    order = max(levels) + 0.5 if is_outwards else min(levels) - 0.5
    return pattern.piece(glue.outer).level < order < pattern.piece(glue.inner).level


def is_strip(found: Layout, glue: Glue) -> bool:
    pieces = [found.pattern.piece(name) for name in (glue.outer, glue.inner)]
    return any(isinstance(piece.placement, StripPlacement) for piece in pieces)


def points(patch: Outline) -> list[tuple[float, float]]:
    return [(x, y) for x, y, _ in patch.vertices]
