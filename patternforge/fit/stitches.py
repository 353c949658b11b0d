"""What a row of stitches leaves and joins: leather between holes, stitches that go through one layer only."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import pairwise

from patternforge.fit.findings import Finding, at_least, at_most
from patternforge.fit.holes import apart
from patternforge.fit.layout import Layout
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.pattern import Hole, Seam
from patternforge.wallet.spec import HoleShape, HoleSpec

__all__ = ["stitch_findings"]

_WEB, _THIN_WEB = 1.0, 0.5  # mm of leather between neighbouring holes; common practice, no source
_LONE = 4  # stitches in a row that may go through one layer only, past the end of a pocket


def stitch_findings(layout: Layout) -> Iterator[Finding]:
    """The least leather between neighbouring holes and the longest row through a single layer, for every seam."""
    sewn_with = {seam.name: seam.meets or seam.name for seam in layout.pattern.seams}
    through = Counter((sewn_with[hole.seam], hole.index) for holes in layout.holes.values() for hole in holes)
    for seam in layout.pattern.seams:
        if seam.stitching.hole.shape in (HoleShape.ROUND, HoleShape.SLIT) and len(seam.holes) > 1:
            yield _web(layout, seam)
        if len(layout.pattern.pieces) > 1 and not seam.meets:
            yield from _lone_rows(seam, through)


def _web(layout: Layout, seam: Seam) -> Finding:
    """The least leather between neighbours of the seam, in whichever piece it is left."""
    spec = seam.stitching.hole
    least, where = math.inf, seam.name
    for piece in layout.pattern.pieces:
        holes = sorted((hole for hole in piece.holes if hole.seam == seam.name), key=lambda hole: hole.index)
        for a, b in pairwise(holes):
            if b.index == a.index + 1 and (web := _between(a, b, spec)) < least:
                least, where = web, f"{piece.name}, {seam.name} {a.index}"
    means = "smaller holes" if spec.shape is HoleShape.ROUND else "shorter slits"
    remedy = "" if least >= _WEB else f"{means} or a longer pitch: the row would tear like a stamp"
    return Finding("leather between neighbouring holes", where, least, at_least(_WEB, _THIN_WEB), remedy)


def _between(a: Hole, b: Hole, spec: HoleSpec) -> float:
    """Leather left between two holes, mm; 0 or less when they run into each other."""
    if spec.shape is HoleShape.ROUND:
        return a.at.distance_to(b.at) - spec.diameter
    return apart(_slit(a, spec), _slit(b, spec)) - spec.width


def _slit(hole: Hole, spec: HoleSpec) -> Segment:
    angle = math.radians(hole.direction)
    half = Point(math.cos(angle), math.sin(angle)) * (spec.length / 2)
    return Segment(hole.at - half, hole.at + half)


def _lone_rows(seam: Seam, through: Mapping[tuple[str, int], int]) -> Iterator[Finding]:
    """Stitches in a row that join nothing: they show, take thread and weaken the leather."""
    longest = row = 0
    for hole in seam.holes:
        row = row + 1 if through[seam.name, hole.index] == 1 else 0
        longest = max(longest, row)
    if longest > _LONE:
        remedy = "end the seam sooner or let it take another layer, unless it is meant as ornament"
        yield Finding(
            "stitches in a row through one layer only", seam.name, longest, at_most(_LONE, math.inf), remedy, ""
        )
