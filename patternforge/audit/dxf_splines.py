"""B-splines of DXF files as points, by the algorithm of C. de Boor (A Practical Guide to Splines, chapter X)."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from math import ceil, hypot, sqrt

from patternforge.audit.dxf_tags import Record
from patternforge.errors import ReadingError
from patternforge.geometry.point import Point

__all__ = ["spline_points"]

_CHORD = 0.005  # mm
_MOST = 3000  # chords of one curve
_LEAST = 8  # chords between two knots that differ

_Weighted = tuple[float, float, float]


def spline_points(record: Record, scale: float) -> list[Point]:
    """Points along a SPLINE from its start to its end; its fit points where it has no control points.

    ReadingError when degree, knots and control points do not belong together.
    """
    controls = [Point(run[10], run.get(20, 0.0)) for run in record.runs(10)]
    if not controls:
        return [Point(run[11], run.get(21, 0.0)) for run in record.runs(11)]
    degree, knots = record.whole(71, 3), record.numbers(40)
    if degree < 1 or len(controls) <= degree or len(knots) != len(controls) + degree + 1 or sorted(knots) != knots:
        raise ReadingError(
            f"line {record.line}: the SPLINE that begins here has {len(controls)} control points and {len(knots)}"
            f" knots, which make no curve of degree {degree}; export the file again"
        )
    weights = record.numbers(41) or [1.0] * len(controls)
    weighted = [(p.x * w, p.y * w, w) for p, w in zip(controls, weights, strict=False)]
    spans = [(a, b) for a, b in zip(knots[degree:], knots[degree + 1 : len(controls) + 1], strict=False) if b > a]
    count = _count(controls, scale, len(spans))
    places = [a + (b - a) * i / count for a, b in spans for i in range(count)] + [knots[len(controls)]]
    return [_at(t, degree, knots, weighted) for t in places]


def _count(controls: Sequence[Point], scale: float, spans: int) -> int:
    """How many chords between two knots keep close to the curve, from how sharply its control polygon bends."""
    bends = [a - 2 * b + c for a, b, c in zip(controls, controls[1:], controls[2:], strict=False)]
    steep = 6 * max((hypot(bend.x, bend.y) for bend in bends), default=0.0) * scale
    return min(max(ceil(sqrt(steep / (8 * _CHORD))), _LEAST), max(_MOST // spans, _LEAST))


def _at(t: float, degree: int, knots: Sequence[float], controls: Sequence[_Weighted]) -> Point:
    span = min(max(bisect_right(knots, t) - 1, degree), len(controls) - 1)
    points = [controls[span - degree + i] for i in range(degree + 1)]
    for level in range(1, degree + 1):
        for i in range(degree, level - 1, -1):
            low, high = knots[span - degree + i], knots[span + 1 + i - level]
            share = (t - low) / (high - low) if high > low else 0.0
            (ax, ay, aw), (bx, by, bw) = points[i - 1], points[i]
            points[i] = (ax + (bx - ax) * share, ay + (by - ay) * share, aw + (bw - aw) * share)
    x, y, w = points[degree]
    return Point(x / w, y / w)
