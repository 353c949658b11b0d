"""Laws of stitch holes in whole wallets: mates, mouths, spacing, distances, thread."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import atan2, cos, degrees, inf, radians, sin, sqrt

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern, Piece, Seam, SeamHole
from patternforge.wallet.spec import (
    Across,
    CornerStyle,
    Design,
    Edge,
    HoleShape,
    HoleSpec,
    Mode,
    Stitching,
)
from tests.laws.designs import drafted_designs, drafts, is_level_in_columns, loaded_more, thickened

rarely = settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
OPEN_RIM = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT)
ROUND = HoleSpec(HoleShape.ROUND, diameter=1.0)
COARSE = (
    3.0  # mm; a pitch from which on a 1 mm hole at mid-stitch keeps 0.6 mm from a mouth with half a stitch to spare
)


def is_even(design: Design) -> bool:
    return design.stitching.mode is Mode.EVEN


def is_iron(design: Design) -> bool:
    return design.stitching.mode is Mode.IRON


def stops_at_folds(design: Design) -> bool:
    return all(seam.across is Across.OPEN for seam in design.seams)


def is_open_rim(design: Design) -> bool:
    """The rim leaves the top edge free, where mouths and headroom are."""
    return all(len(seam.along) == 3 for seam in design.seams)


def well_holed(design: Design) -> Design:
    """The design with holes of 1 mm at a pitch that leaves room, its rim round three sides, clear of corners."""
    stitching = Stitching(max(design.stitching.pitch, COARSE), Mode.EVEN, ROUND)
    seams = tuple(
        replace(seam, along=OPEN_RIM, end=None, corners=CornerStyle.ROUNDED, across=Across.OPEN, stitching=stitching)
        for seam in design.seams
    )
    return replace(design, seams=seams, stitching=stitching)


def on_assembly(piece: Piece) -> tuple[Segment, ...]:
    """The outline of a piece laid back on the assembly, corner by corner."""
    sign = -1.0 if piece.placement.onto_piece.is_mirror else 1.0
    laid = [(piece.placement.to_assembly(Point(x, y)), sign * bulge) for x, y, bulge in piece.outline.vertices]
    return tuple(Segment(p, q, bulge) for (p, bulge), (q, _) in zip(laid, [*laid[1:], laid[0]], strict=True))


def stitches(seam: Seam) -> Iterator[tuple[SeamHole, SeamHole]]:
    return ((a, b) for a, b in pairwise(seam.holes) if a.run == b.run)


def carried(piece: Piece, seam: Seam) -> set[int]:
    return {hole.index for hole in piece.holes if hole.seam == seam.name}


@rarely
@given(drafts(stops_at_folds))
def test_mates_have_equal_hole_counts_where_both_lie(pattern: Pattern) -> None:
    """Of two pieces that one seam joins, each carries every hole of the other that lies within its own outline."""
    for seam in pattern.seams:
        pieces = [pattern.piece(name) for name in seam.pieces]
        for piece in pieces:
            for mate in pieces:
                shared = {
                    hole.index
                    for hole in piece.holes
                    if hole.seam == seam.name
                    and mate.outline.contains(mate.placement.to_piece(piece.placement.to_assembly(hole.at)))
                }
                assert shared <= carried(mate, seam)


@rarely
@given(drafts())
def test_every_hole_of_a_seam_passes_at_least_two_pieces(pattern: Pattern) -> None:
    """Stitches of a declared seam may run on beyond its pockets through the shell alone; a part's own may not."""
    for seam in (seam for seam in pattern.seams if seam.inner):
        passes = [sum(hole.index in carried(piece, seam) for piece in pattern.pieces) for hole in seam.holes]
        assert min(passes) >= 1
        assert max(passes) >= 2


@rarely
@given(drafts())
def test_holes_are_numbered_once_each_in_sewing_order(pattern: Pattern) -> None:
    for seam in pattern.seams:
        assert [hole.index for hole in seam.holes] == list(range(1, len(seam.holes) + 1))
        assert all(a.along < b.along for a, b in stitches(seam))
        open_ends = [b.along - a.along for a, b in stitches(seam)]
        closing = [seam.spacings[-1]] if len(seam.spacings) > len(open_ends) else []
        assert seam.spacings == pytest.approx([*open_ends, *closing])


@rarely
@given(drafts(stops_at_folds, is_level_in_columns))
def test_an_edge_a_seam_passes_over_lies_midway_between_two_holes(pattern: Pattern) -> None:
    for seam in pattern.seams:
        for piece in (pattern.piece(name) for name in seam.pieces):
            here = carried(piece, seam)
            outline = on_assembly(piece)
            for a, b in stitches(seam):
                if (a.index in here) != (b.index in here) and a.heading == b.heading:
                    middle = (a.at + b.at) / 2
                    assert min(edge.distance_to(middle) for edge in outline) < 1e-6


@rarely
@given(drafts(stops_at_folds, is_even))
def test_spacing_changes_only_at_corners_and_passed_edges(pattern: Pattern) -> None:
    for seam in pattern.seams:
        loose = zip(stitches(seam), list(stitches(seam))[1:], strict=False)
        for (a, b), (b_again, c) in loose:
            if b is b_again and abs((b.along - a.along) - (c.along - b.along)) > 1e-6:
                turns = turned(a, c) > 1e-6
                passed = any(changes(pattern.piece(name), seam, (a, b, c)) for name in seam.pieces)
                assert turns or passed or touches_an_edge(pattern, seam, (a, b, c))


def turned(a: SeamHole, c: SeamHole) -> float:
    return abs((a.heading - c.heading + 180) % 360 - 180)


def changes(piece: Piece, seam: Seam, holes: tuple[SeamHole, ...]) -> bool:
    """Whether a piece begins or ends among these neighbouring holes."""
    here = carried(piece, seam)
    return len({hole.index in here for hole in holes}) > 1


def touches_an_edge(pattern: Pattern, seam: Seam, holes: tuple[SeamHole, SeamHole, SeamHole]) -> bool:
    """Whether an outline crosses one of both stitches: twice, so that the piece is on both of its sides."""
    a, b, c = holes
    middles = ((a.at + b.at) / 2, (b.at + c.at) / 2)
    edges = [edge for name in seam.pieces for edge in on_assembly(pattern.piece(name))]
    return any(edge.distance_to(middle) < 1e-6 for edge in edges for middle in middles)


@rarely
@given(drafts(stops_at_folds, is_even, is_open_rim, is_level_in_columns))
def test_nominal_sizes_keep_every_stitch_near_the_pitch(pattern: Pattern) -> None:
    limits = pattern.design.limits
    for seam in pattern.seams:
        worst = max((abs(spacing / seam.stitching.pitch - 1) for spacing in seam.spacings), default=0.0)
        assert worst <= limits.pitch_no


@rarely
@given(drafts(is_iron, is_level_in_columns))
def test_an_iron_keeps_its_own_pitch_on_every_straight_stitch(pattern: Pattern) -> None:
    """Round a corner the stitches are shared out evenly between the holes an iron can make."""
    for seam in pattern.seams:
        straight = [(a, b) for a, b in stitches(seam) if a.heading == b.heading]
        off = [(a, b) for a, b in straight if abs(b.along - a.along - seam.stitching.pitch) > 1e-6]
        assert off == []


@rarely
@given(drafted_designs(is_level_in_columns))
def test_no_hole_stands_nearer_than_its_limit_to_any_edge(pair: tuple[Design, Pattern]) -> None:
    """At nominal sizes, with holes, pitch, ends and corners a maker would choose."""
    pattern = drafted(well_holed(pair[0]))
    limits = pattern.design.limits
    headings = {(seam.name, hole.index): hole.heading for seam in pattern.seams for hole in seam.holes}
    for piece in pattern.pieces:
        for hole in piece.holes:
            heading = piece.placement.onto_piece.angle(headings[hole.seam, hole.index])
            beside, ahead = rims(piece, hole.at, heading)
            assert ahead - 0.5 >= limits.hole_to_mouth - 1e-6
            assert beside - 0.5 >= limits.hole_to_edge - 1e-6


def rims(piece: Piece, at: Point, heading: float) -> tuple[float, float]:
    """Nearest edge beside the line of sewing, and nearest one ahead or behind on it, mm from the hole's centre."""
    beside, ahead = inf, inf
    along = Point(cos(radians(heading)), sin(radians(heading)))
    for edge in piece.outline.segments:
        foot = edge.point_at(edge.nearest(at))
        gap = at.distance_to(foot)
        if abs((foot - at).dot(along)) > gap * sqrt(0.5):
            ahead = min(ahead, gap)
        else:
            beside = min(beside, gap)
    return beside, ahead


@rarely
@given(drafts())
def test_open_seams_keep_off_every_fold_by_their_stop_or_more(pattern: Pattern) -> None:
    for seam in pattern.design.seams:
        if seam.across is Across.OPEN:
            drawn = next(s for s in pattern.seams if s.name == seam.name)
            for fold in pattern.folds:
                stop = fold.relief + seam.margin if seam.stop is None else seam.stop
                assert all(not fold.x0 - stop + 1e-6 < h.at.x < fold.x1 + stop - 1e-6 for h in drawn.holes)


@rarely
@given(drafts())
def test_stop_rows_pass_their_own_slot_and_none_before_it(pattern: Pattern) -> None:
    for seam in pattern.seams:
        if " stop " in seam.name:
            part, _, tail = seam.name.partition(" stop ")
            own = int(tail.split(".")[0])
            slots = [int(n.removeprefix(f"{part} ")) for n in seam.pieces if n.startswith(f"{part} ")]
            assert own in slots
            assert min(slots) >= own


@rarely
@given(drafts())
def test_slits_lean_from_the_line_of_sewing_by_their_slant(pattern: Pattern) -> None:
    """As the slant is told from the outside it turns the other way on the assembly, which shows the inside."""
    seams = {seam.name: seam for seam in pattern.seams}
    for piece in pattern.pieces:
        for hole in piece.holes:
            spec = seams[hole.seam].stitching.hole
            if spec.shape is HoleShape.SLIT:
                heading = piece.placement.onto_piece.angle(seams[hole.seam].holes[hole.index - 1].heading)
                seen_from_outside = piece.placement.onto_piece.is_mirror
                lean = spec.slant if seen_from_outside else -spec.slant
                assert (hole.direction - heading - lean + 90) % 180 - 90 == pytest.approx(0.0, abs=1e-6)


@rarely
@given(drafts())
def test_thread_covers_the_seam_twice_and_more(pattern: Pattern) -> None:
    for seam in pattern.seams:
        sewn = sum(seam.spacings)
        assert seam.thread >= 2 * sewn + seam.stitching.tails
        assert sewn <= seam.length + 1e-9


@rarely
@given(drafted_designs(stops_at_folds, is_level_in_columns), st.sampled_from((0.2, 0.8)))
def test_thicker_leather_takes_two_thicknesses_more_thread_at_every_stitch(
    pair: tuple[Design, Pattern], more: float
) -> None:
    design, pattern = pair
    for before, after in zip(pattern.seams, drafted(thickened(design, "inner", more)).seams, strict=True):
        starts = {a.index for a, _ in stitches(before)}
        closed = len(before.spacings) > len(starts)
        counted = starts | ({before.holes[-1].index} if closed else set())
        inner = [p for p in pattern.pieces if p.leather == "inner"]
        passed = sum(len(counted & carried(piece, before)) for piece in inner)
        assert after.thread - before.thread == pytest.approx(2 * more * passed, abs=1e-5)


@rarely
@given(drafted_designs(stops_at_folds), st.sampled_from((0.0, 0.5, 1.0)))
def test_what_is_in_the_wallet_moves_no_hole_on_its_panel(pair: tuple[Design, Pattern], share: float) -> None:
    design, pattern = pair
    other = drafted(loaded_more(design, share, share))
    for before, after in zip(pattern.seams, other.seams, strict=True):
        assert len(before.holes) == len(after.holes)
        assert after.length == pytest.approx(before.length, abs=1e-6)


@rarely
@given(drafted_designs(is_even))
def test_sizes_that_move_to_whole_stitches_move_by_half_a_stitch_at_most(pair: tuple[Design, Pattern]) -> None:
    """By a whole one where a layer is lowered less than the seam's end, so that the seam wraps its edge after all.

    A stitch is as long as the seam's own spacing, within 15 % of the pitch.
    """
    design, pattern = pair
    longest = 1.15 * design.stitching.pitch
    for moved in pattern.adjustments:
        stitches_moved = abs(moved.drafted - moved.asked) / longest
        assert stitches_moved <= (1.0 if moved.size == "drop" else 0.5) + 1e-9


@rarely
@given(drafts(is_even))
def test_a_step_is_a_whole_number_of_the_stitches_beside_it(pattern: Pattern) -> None:
    """The mouths of a bank's slots lie mid-stitch on the same seam, so whole stitches lie between them."""
    for part in pattern.design.parts:
        slots = [p for p in pattern.pockets if p.part == part.name and not p.held]
        floors = sorted({round(p.box[1], 6) for p in slots})
        rows = [s for s in pattern.seams if s.name in (f"{part.name} left", f"{part.name} right")]
        if len(floors) > 1 and rows:
            spacing = rows[0].spacings[0]
            counts = [(b - a) / spacing for a, b in pairwise(floors)]
            assert counts == pytest.approx([round(count) for count in counts], abs=1e-6)


def angle_of(a: Point, b: Point) -> float:
    return degrees(atan2(b.y - a.y, b.x - a.x))


@rarely
@given(drafts())
def test_a_heading_is_the_direction_of_a_straight_stitch(pattern: Pattern) -> None:
    for seam in pattern.seams:
        for a, b in stitches(seam):
            if a.heading == b.heading and a.at.distance_to(b.at) == pytest.approx(b.along - a.along, abs=1e-9):
                assert (angle_of(a.at, b.at) - a.heading + 180) % 360 - 180 == pytest.approx(0.0, abs=1e-6)
