"""Mid-stitch: where along a run a mouth lies midway between two holes, and whole numbers of stitches."""

from __future__ import annotations

import math

from patternforge.geometry.point import Point
from patternforge.geometry.spacing import Span, even_positions
from patternforge.wallet.run import Run

__all__ = ["mid_stitch_shift", "whole_number", "whole_stitches"]

_TIE = 1e-6  # share of a stitch that counts as none where two places are equally near
_AT_CORNER = 1e-6  # mm; places nearer than this to the end of a span are at the corner where the next begins


def mid_stitch_shift(runs: tuple[Run, ...], at: Point, direction: Point) -> tuple[float, float]:
    """Spacing of the run at that point, and how far the point must move along ``direction`` to lie mid-stitch.

    A mouth that stands more than a stitch off the run meets none of its holes and stays where it is; one on a hole
    moves along ``direction``, whichever way the run is sewn.
    """
    run = min(runs, key=lambda r: r.path.distance_to(at))
    d, span = _crossed(run, run.path.nearest(at), direction)
    shift = max((run.path.point_at(place) - at).dot(direction) for place in _midways(span, d))
    return span.spacing, shift if abs(shift) <= span.spacing else 0.0


def _crossed(run: Run, d: float, direction: Point) -> tuple[float, Span]:
    """The span at ``d`` with the place in it; where two meet at a corner, the one that runs more along ``direction``.

    The other one runs beside the mouth: midway between two of its holes the mouth would lie on their row.
    """
    spans = even_positions(run.anchors, run.pitch).spans
    length = run.path.length
    places = [d, *(end for end in (0.0, length) if run.loop and min(d, length - d) <= _AT_CORNER)]
    met = [(at, s) for at in places for s in spans if s.start - _AT_CORNER <= at <= s.end + _AT_CORNER]
    return max(met or [(d, spans[-1])], key=lambda place: _leaning(run, place[1], direction))


def _leaning(run: Run, span: Span, direction: Point) -> float:
    """How far a span runs along a direction, 0 to 1; to the thousandth, so that of two alike the first is kept."""
    return round(abs(run.path.tangent_at((span.start + span.end) / 2).dot(direction)), 3)


def _midways(span: Span, d: float) -> list[float]:
    """The place midway between two holes of the span that lies nearest to ``d``; both beside it at a hole itself."""
    stitches, last = (d - span.start) / span.spacing, max(math.floor(span.count - 0.5), 0)
    nearest = {math.floor(stitches - _TIE), math.floor(stitches + _TIE)}
    return [span.start + (min(max(number, 0), last) + 0.5) * span.spacing for number in nearest]


def whole_number(count: float) -> int:
    """The whole number nearest to a count, the greater of two equally near whatever its last digits.

    >>> whole_number(2.5 - 1e-12), whole_number(2.4)
    (3, 2)
    """
    return math.floor(count + 0.5 + _TIE)


def whole_stitches(size: float, spacing: float) -> float:
    """The nearest whole number of stitches, at least one; 0 stays 0."""
    return max(whole_number(size / spacing), 1) * spacing if size > 0 else 0.0
