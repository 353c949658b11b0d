"""Gussets: whether a strip meets its walls hole for hole, keeps its stitches off its bends, goes round corners."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from patternforge.fit.findings import Finding, at_least, at_most, reaches
from patternforge.fit.holes import rim_reach
from patternforge.fit.layout import Layout
from patternforge.fit.strips import FoldedStrip, folded_strip, seam_radius
from patternforge.wallet.pattern import Piece, Seam
from patternforge.wallet.strip import StripPlacement

__all__ = ["gusset_findings"]

_EVEN, _UNEVEN = 0.1, 0.3  # mm by which joined edges, or stitches of them, may differ
_ROUND, _TIGHT = 4.0, 2.0  # radius over what must stretch or gather beside the seam; common practice, no source


def gusset_findings(layout: Layout) -> Iterator[Finding]:
    """Every strip against its seams, its own bends and their corners."""
    for piece in layout.pattern.pieces:
        if isinstance(piece.placement, StripPlacement):
            folded = folded_strip(piece, layout.leathers[piece.leather])
            yield from _edges(layout, piece, piece.placement)
            yield _to_fold(layout, piece)
            yield from _round_corners(piece, piece.placement, folded)


def _edges(layout: Layout, piece: Piece, placement: StripPlacement) -> Iterator[Finding]:
    """Both edges against their seams as they run on the walls, and against each other."""
    seams = {seam.name: seam for seam in layout.pattern.seams}
    sewn = []
    for row in placement.rows:
        seam = seams[row.seam]
        own = sorted((hole for hole in piece.holes if hole.seam == seam.name), key=lambda hole: hole.index)
        along = {hole.index: row.line.nearest(hole.at) for hole in seam.holes}
        lengths = [a.at.distance_to(b.at) for a, b in pairwise(own)]
        walls = [along[b.index] - along[a.index] for a, b in pairwise(own)]
        where = f"{piece.name}, {seam.name}"
        yield _unpierced(layout, piece, seam)
        stray = max((abs(has - wall) for has, wall in zip(lengths, walls, strict=True)), default=0.0)
        yield _even("stitches of a gusset longer or shorter than its wall's", where, stray, "draft it again")
        apart = abs(sum(lengths) - sum(walls))
        yield _even("edge of a gusset longer or shorter than its seam", where, apart, "draft it again")
        sewn.append(sum(lengths))
    names = " and ".join(row.seam for row in placement.rows)
    remedy = "give both seams the same margin, ends and corners"
    yield _even("stitched edges of a gusset differ by", f"{piece.name}, {names}", abs(sewn[0] - sewn[1]), remedy)


def _even(what: str, where: str, off: float, remedy: str) -> Finding:
    limit = at_most(_EVEN, _UNEVEN)
    return Finding(what, where, off, limit, "" if limit.good.holds(off) else remedy)


def _unpierced(layout: Layout, piece: Piece, seam: Seam) -> Finding:
    """Holes of the strip that no wall has."""
    walls = {(hole.seam, hole.index) for p in layout.pattern.pieces if p.placement.panels for hole in p.holes}
    missing = sum(1 for hole in piece.holes if hole.seam == seam.name and (seam.name, hole.index) not in walls)
    remedy = "end the seam sooner, for its wall ends there" if missing else ""
    where = f"{piece.name}, {seam.name}"
    return Finding("holes of a gusset that its wall lacks", where, missing, at_most(0, 0), remedy, "")


def _to_fold(layout: Layout, piece: Piece) -> Finding:
    """The hole of the strip nearest to a bend of its own."""
    reach = {seam.name: rim_reach(seam.stitching.hole) for seam in layout.pattern.seams}
    gaps = (abs(line.start.y - hole.at.y) - reach[hole.seam] for line in piece.fold_lines for hole in piece.holes)
    gap, limit = min(gaps), layout.pattern.design.limits.hole_to_fold
    remedy = "" if reaches(gap, limit) else "a larger turn, or a deeper leaf: the stitches would stand in the bend"
    return Finding("hole rim to fold of the gusset", piece.name, gap, at_least(limit, limit / 2), remedy)


def _round_corners(piece: Piece, placement: StripPlacement, folded: FoldedStrip) -> Iterator[Finding]:
    """Round a corner the strip's edge runs further than its seam and must stretch, its bend runs less and gathers.

    Either changes its length by the share that its distance from the seam has in the seam's radius.
    """
    ys = [row.y for row in placement.rows]
    beside = (ys[0], piece.height - ys[1])
    widest = max(*beside, *(depth - margin for depth, margin in zip(folded.depths, beside, strict=True)))
    radius, limit = seam_radius(placement), _ROUND * widest
    if math.isinf(radius):
        return
    remedy = "" if reaches(radius, limit) else "rounder corners of the walls, or cut notches into the flange there"
    round_enough = at_least(limit, _TIGHT * widest)
    yield Finding("corner of the seam, for the strip to go round", piece.name, radius, round_enough, remedy)
