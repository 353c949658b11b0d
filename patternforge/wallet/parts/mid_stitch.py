"""Mid-stitch: where along a run a mouth lies midway between two holes, and whole numbers of stitches."""

from __future__ import annotations

import math

from patternforge.geometry.point import Point
from patternforge.geometry.spacing import Span, even_positions
from patternforge.wallet.run import Run

__all__ = ["mid_stitch_shift", "whole_stitches"]


def mid_stitch_shift(runs: tuple[Run, ...], at: Point, direction: Point) -> tuple[float, float]:
    """Spacing of the run at that point, and how far the point must move along ``direction`` to lie mid-stitch.

    A mouth that stands more than a stitch off the run meets none of its holes and stays where it is.
    """
    run = min(runs, key=lambda r: r.path.distance_to(at))
    d = run.path.nearest(at)
    spans = even_positions(run.anchors, run.pitch).spans
    span = next((s for s in spans if s.start <= d <= s.end), spans[-1])
    shift = (run.path.point_at(_mid_stitch(span, d)) - at).dot(direction)
    return span.spacing, shift if abs(shift) <= span.spacing else 0.0


def _mid_stitch(span: Span, d: float) -> float:
    """The place midway between two holes of the span that lies nearest to ``d``."""
    last = max(math.floor(span.count - 0.5), 0)
    nearest = round((d - span.start) / span.spacing - 0.5)
    return span.start + (min(max(nearest, 0), last) + 0.5) * span.spacing


def whole_stitches(size: float, spacing: float) -> float:
    """The nearest whole number of stitches, at least one; 0 stays 0."""
    return max(round(size / spacing), 1) * spacing if size > 0 else 0.0
