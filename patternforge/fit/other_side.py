"""Seams sewn after folding: whether the holes of the panel folded over come to lie on those it is sewn to."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.fit.close import ClosedWallet
from patternforge.fit.findings import Finding, at_most
from patternforge.fit.folds import closed_point, closed_spans
from patternforge.fit.layout import Layout
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Seam

__all__ = ["other_side_findings"]

_MEET, _PULLED = 0.3, 1.0  # mm that a needle finds its hole by, and can be pulled over; common practice, no source


def other_side_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """How far the holes of both sides lie apart once the wallet is folded, where furthest."""
    spans = closed_spans(layout, closed)
    for seam in layout.pattern.seams:
        if seam.meets:
            here, there = _places(layout, seam.meets, spans), _places(layout, seam.name, spans)
            apart = max((p.distance_to(q) for i in here for p in here[i] for q in there.get(i, ())), default=0.0)
            limit = at_most(_MEET, _PULLED)
            remedy = "" if limit.good.holds(apart) else "let the holes follow the fold, or punch them after folding"
            yield Finding("stitches meet once folded, within", seam.meets, apart, limit, remedy)
            missing = sum(1 for hole in _seam(layout, seam.meets).holes if not there.get(hole.index))
            if missing:
                yield Finding("holes missing on the other side", seam.meets, missing, at_most(0, 0), "shorten it", "")


def _seam(layout: Layout, name: str) -> Seam:
    return next(seam for seam in layout.pattern.seams if seam.name == name)


def _places(layout: Layout, seam: str, spans: dict[int, tuple[float, float]]) -> dict[int, list[Point]]:
    """Where each hole of a seam comes to lie in the closed wallet, piece by piece."""
    found: dict[int, list[Point]] = {}
    for holes in layout.holes.values():
        for hole in holes:
            if hole.seam == seam:
                found.setdefault(hole.index, []).append(closed_point(layout, spans, hole.at))
    return found
