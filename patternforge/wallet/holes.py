"""Stitch holes: placed once in assembly space, tied at ends, corners, folds and at every edge a seam passes over."""

from __future__ import annotations

import math
from collections.abc import Sequence

from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds
from patternforge.geometry.segment import Segment, intersections
from patternforge.geometry.spacing import Anchor, AnchorKind, even_positions
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import SeamHole
from patternforge.wallet.run import Run
from patternforge.wallet.spec import HoleShape, HoleSpec

__all__ = ["BoxedEdge", "boxed_edges", "crossings", "hole_reach", "run_holes"]

_SAME_PLACE = 1e-6

BoxedEdge = tuple[Segment, Bounds]
"""An edge of a blank with its bounds, so that edges far from a seam are passed over quickly."""


def boxed_edges(shape: Shape) -> tuple[BoxedEdge, ...]:
    """The edges of a shape with their bounds."""
    return tuple((edge, edge.bounds) for edge in shape.path.segments)


def run_holes(run: Run, number: int, first_index: int, edges: Sequence[BoxedEdge]) -> tuple[SeamHole, ...]:
    """The holes of a run; every edge of ``edges`` it passes over lies midway between two of them."""
    anchors = _merged(run.anchors, crossings(run.path, edges))
    positions = even_positions(anchors, run.pitch).positions
    if run.loop and len(positions) > 1:
        positions = positions[:-1]
    stations = run.path.stations(positions)
    return tuple(
        SeamHole(first_index + i, number, d, at, math.degrees(math.atan2(way.y, way.x)))
        for i, (d, (at, way)) in enumerate(zip(positions, stations, strict=True))
    )


def hole_reach(hole: HoleSpec) -> float:
    """Largest distance of a hole's rim from its centre, mm; 0 for a mark or none.

    >>> hole_reach(HoleSpec(HoleShape.ROUND, diameter=1.2))
    0.6
    """
    return {HoleShape.ROUND: hole.diameter / 2, HoleShape.SLIT: hole.length / 2}.get(hole.shape, 0.0)


def crossings(path: Path, edges: Sequence[BoxedEdge]) -> tuple[float, ...]:
    """Where a path passes over the outlines, mm along it, rising, each place once."""
    places: list[float] = []
    walked = 0.0
    for segment in path.segments:
        bounds = segment.bounds
        for edge, box in edges:
            if _may_meet(bounds, box):
                places += [walked + segment.nearest(p) for p in intersections(segment, edge)]
        walked += segment.length
    places.sort()
    return tuple(d for i, d in enumerate(places) if i == 0 or d - places[i - 1] > _SAME_PLACE)


def _may_meet(a: Bounds, b: Bounds) -> bool:
    return a.x0 <= b.x1 and b.x0 <= a.x1 and a.y0 <= b.y1 and b.y0 <= a.y1


def _merged(ties: Sequence[Anchor], places: Sequence[float]) -> list[Anchor]:
    """Ties and crossings in order along the run; a crossing on a tie gives way to it."""
    free = [d for d in places if all(abs(d - tie.at) > _SAME_PLACE for tie in ties)]
    inside = [d for d in free if ties[0].at < d < ties[-1].at]
    return sorted([*ties, *(Anchor(d, AnchorKind.BETWEEN) for d in inside)], key=lambda anchor: anchor.at)
