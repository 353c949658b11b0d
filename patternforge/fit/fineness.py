"""How fine a piece is: its smallest radius, gap and slot, which a knife, a die or a beam must be able to cut."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from patternforge.fit.holes import apart
from patternforge.geometry.boxes import Box, loose_box
from patternforge.geometry.nearest import nearest_points
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.pattern import Hole, Pattern, Piece
from patternforge.wallet.spec import HoleShape, HoleSpec

__all__ = ["Fineness", "fineness"]

_SAME = 1e-6  # mm; what is left of rounding in places that are the same
_STEP = 0.01  # mm along a contour that tell whether it goes on to come nearer, by more than rounding
_NEARER = 1e-9


@dataclass(frozen=True, slots=True)
class Fineness:
    """The finest of one piece, mm; None where there is nothing of the kind.

    ``radius`` of an arc of the outline or an opening, round holes apart. ``gap``: leather between two cut lines, be
    they two contours or two stretches of one. ``slot``: width of an opening or of a cut into the outline.
    ``hole_gap``: leather between a stitch hole and whatever else is cut.
    """

    radius: float | None
    gap: float | None
    slot: float | None
    hole_gap: float | None


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A stretch of a contour: its number there, and the stretches before and after it."""

    contour: int
    index: int
    segment: Segment
    before: Segment
    after: Segment
    count: int

    def touches(self, other: _Stretch) -> bool:
        """Whether both are the same stretch or neighbours in one contour."""
        step = (self.index - other.index) % self.count
        return self.contour == other.contour and step in (0, 1, self.count - 1)


def fineness(pattern: Pattern, piece: Piece) -> Fineness:
    """What is finest in a piece, measured on its net lines and arcs."""
    contours = (piece.outline, *piece.openings)
    widths = list(_widths(contours))
    gaps = [width for width, middle in widths if _is_leather(piece, middle)]
    slots = [width for width, middle in widths if not _is_leather(piece, middle)]
    return Fineness(
        radius=min((radius for path in contours for radius in _radii(path)), default=None),
        gap=min(gaps, default=None),
        slot=min(slots, default=None),
        hole_gap=_hole_gap(pattern, piece),
    )


def _is_leather(piece: Piece, at: Point) -> bool:
    return piece.outline.contains(at) and not any(hole.contains(at) for hole in piece.openings)


def _radii(path: Path) -> Iterator[float]:
    """The radii of a contour that is no round hole."""
    arcs = [segment for segment in path.segments if segment.is_arc]
    is_round = len(arcs) == len(path.segments) and all(_same_circle(arcs[0], arc) for arc in arcs)
    return (arc.radius for arc in (() if is_round else arcs))


def _same_circle(a: Segment, b: Segment) -> bool:
    return a.is_arc and b.is_arc and a.centre.distance_to(b.centre) <= _SAME and abs(a.radius - b.radius) <= _SAME


def _widths(contours: Sequence[Path]) -> Iterator[tuple[float, Point]]:
    """Every distance that is the least of its neighbourhood, and the middle of the way it was measured on."""
    for path in contours:
        yield from _round_ends(path)
    for a, b in combinations(_stretches(contours), 2):
        if not a.touches(b):
            p, q = nearest_points(a.segment, b.segment)
            if p.distance_to(q) > 0 and _is_least(a, p, q) and _is_least(b, q, p):
                yield p.distance_to(q), (p + q) / 2


def _stretches(contours: Sequence[Path]) -> list[_Stretch]:
    found = []
    for number, path in enumerate(contours):
        count, segments = len(path.segments), path.segments
        for i, segment in enumerate(segments):
            after = segments[(i + 1) % count]
            found.append(_Stretch(number, i, segment, segments[i - 1], after, count))
    return found


def _is_least(stretch: _Stretch, p: Point, q: Point) -> bool:
    """Whether its contour, followed on from ``p`` at an end of the stretch, comes no nearer to ``q``."""
    near = p.distance_to(q) - _NEARER
    onward = []
    if p.distance_to(stretch.segment.start) <= _SAME:
        onward.append(stretch.before.reversed())
    if p.distance_to(stretch.segment.end) <= _SAME:
        onward.append(stretch.after)
    return all(beyond.point_at(min(_STEP, beyond.length)).distance_to(q) >= near for beyond in onward)


def _round_ends(path: Path) -> Iterator[tuple[float, Point]]:
    """The diameters of arcs about one centre that turn through half a circle or more, and their centres."""
    segments = path.segments
    start = next((i for i in range(len(segments)) if not _same_circle(segments[i - 1], segments[i])), 0)
    ring = segments[start:] + segments[:start]
    run: list[Segment] = []
    for segment in (*ring, None):
        if run and (segment is None or not _same_circle(run[-1], segment)):
            if run[0].is_arc and abs(sum(arc.sweep for arc in run)) >= math.pi - _SAME:
                yield 2 * run[0].radius, run[0].centre
            run = []
        run += [] if segment is None else [segment]


def _hole_gap(pattern: Pattern, piece: Piece) -> float | None:
    """The least leather between the rim of a stitch hole and another hole or a contour; None without holes cut."""
    specs = {seam.name: seam.stitching.hole for seam in pattern.seams}
    rims = [_rim(hole, specs) for hole in piece.holes if specs[hole.seam].shape in (HoleShape.ROUND, HoleShape.SLIT)]
    if not rims:
        return None
    rims.sort(key=lambda rim: rim.at.x)
    sides = [(loose_box(side), side) for path in (piece.outline, *piece.openings) for side in path.segments]
    best = math.inf
    for number, rim in enumerate(rims):
        for other in rims[number + 1 :]:
            if other.at.x - rim.at.x - rim.reach - other.reach >= best:
                break
            best = min(best, rim.apart(other))
        for box, side in sides:
            if _off(box, rim.at) - rim.reach < best:
                best = min(best, rim.off(side))
    return max(best, 0.0)


@dataclass(frozen=True, slots=True)
class _Rim:
    """A stitch hole as cut: round about its middle, or a slit; ``reach`` is the farthest its rim gets, mm."""

    at: Point
    slit: Segment | None
    half_width: float
    reach: float

    def off(self, side: Segment) -> float:
        return (apart(self.slit, side) if self.slit else side.distance_to(self.at)) - self.half_width

    def apart(self, other: _Rim) -> float:
        if self.slit and other.slit:
            return apart(self.slit, other.slit) - self.half_width - other.half_width
        line, point = (self.slit or other.slit), (other.at if self.slit else self.at)
        middle = line.distance_to(point) if line else self.at.distance_to(other.at)
        return middle - self.half_width - other.half_width


def _rim(hole: Hole, specs: Mapping[str, HoleSpec]) -> _Rim:
    spec = specs[hole.seam]
    if spec.shape is HoleShape.ROUND:
        return _Rim(hole.at, None, spec.diameter / 2, spec.diameter / 2)
    half = Point(spec.length / 2, 0.0).rotated(math.radians(hole.direction))
    return _Rim(hole.at, Segment(hole.at - half, hole.at + half), spec.width / 2, (spec.length + spec.width) / 2)


def _off(box: Box, at: Point) -> float:
    """How far a point lies off a box at least."""
    x0, y0, x1, y1 = box
    return math.hypot(max(x0 - at.x, 0.0, at.x - x1), max(y0 - at.y, 0.0, at.y - y1))
