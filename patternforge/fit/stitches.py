"""What a row of stitches leaves and joins: leather between holes, stitches that go through one layer only."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from patternforge.fit.findings import Finding, Verdict, at_least
from patternforge.fit.layout import Layout
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.pattern import Seam, SeamHole
from patternforge.wallet.spec import HoleShape, HoleSpec

__all__ = ["stitch_findings"]

_WEB, _THIN_WEB = 1.0, 0.5  # mm of leather between neighbouring holes; common practice, no source
_LONE = 4  # stitches in a row that may go through one layer only, past the end of a pocket


def stitch_findings(layout: Layout) -> Iterator[Finding]:
    """The least leather between neighbouring holes and the longest row through a single layer, for every seam."""
    for seam in layout.pattern.seams:
        if seam.stitching.hole.shape in (HoleShape.ROUND, HoleShape.SLIT) and len(seam.holes) > 1:
            yield _web(seam)
        yield from _lone_rows(layout, seam)


def _web(seam: Seam) -> Finding:
    spec = seam.stitching.hole
    pairs = [(a, b) for a, b in pairwise(seam.holes) if a.run == b.run]
    least, at = min(((_between(a, b, spec), a) for a, b in pairs), key=lambda found: found[0], default=(_WEB, None))
    where = seam.name if at is None else f"{seam.name} {at.index}"
    remedy = (
        "" if least >= _WEB else "shorter slits, smaller holes or a longer pitch: the row would tear like a stamp"
    )
    return Finding("leather between neighbouring holes", where, least, _WEB, at_least(least, _WEB, _THIN_WEB), remedy)


def _between(a: SeamHole, b: SeamHole, spec: HoleSpec) -> float:
    """Leather left between two holes, mm; 0 or less when they run into each other."""
    if spec.shape is HoleShape.ROUND:
        return a.at.distance_to(b.at) - spec.diameter
    one, other = _slit(a, spec), _slit(b, spec)
    ends = ((one, other.start), (one, other.end), (other, one.start), (other, one.end))
    return min(slit.distance_to(end) for slit, end in ends) - spec.width


def _slit(hole: SeamHole, spec: HoleSpec) -> Segment:
    angle = math.radians(hole.heading - spec.slant)
    half = Point(math.cos(angle), math.sin(angle)) * (spec.length / 2)
    return Segment(hole.at - half, hole.at + half)


def _lone_rows(layout: Layout, seam: Seam) -> Iterator[Finding]:
    """Stitches in a row that join nothing: they show, take thread and weaken the leather."""
    through = dict.fromkeys((hole.index for hole in seam.holes), 0)
    for laid in (hole for holes in layout.holes.values() for hole in holes):
        if laid.seam == seam.name:
            through[laid.index] += 1
    longest = row = 0
    for hole in seam.holes:
        row = row + 1 if through[hole.index] == 1 else 0
        longest = max(longest, row)
    if longest > _LONE and len(layout.pattern.pieces) > 1:
        remedy = "end the seam sooner or let it take another layer, unless it is meant as ornament"
        yield Finding("stitches in a row through one layer only", seam.name, longest, _LONE, Verdict.LOOK, remedy, "")
