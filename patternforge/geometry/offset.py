"""Parallel contours: a closed path grown or shrunk by a distance, lines staying lines and arcs staying arcs.

Every segment is shifted to one side and every corner that opens is bridged. The true contour is made of those parts
of the shifted curves that lie nowhere nearer to the path than the distance, so the curves are split where they meet,
the parts that lie too near are left out, and what remains is traced from end to end.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from patternforge.errors import GeometryError
from patternforge.geometry.boxes import Box, loose_box, touching_pairs
from patternforge.geometry.contours import JOINT, Piece, contours
from patternforge.geometry.path import Path
from patternforge.geometry.point import COINCIDENT, Point
from patternforge.geometry.segment import Segment, intersections

__all__ = ["Join", "offset", "offset_one"]

NEAR = 1e-8  # mm; how much too near a part may lie through rounding alone
LONGEST_MITRE = 10.0  # in offset distances, from the corner to the tip


class Join(StrEnum):
    """How a corner that opens is bridged."""

    ROUND = "round"  # an arc round the corner: every point keeps the distance
    SHARP = "sharp"  # both sides drawn on straight until they meet


@dataclass(frozen=True, slots=True)
class Kite:
    """What a sharp corner adds: the area between the corner, both shifted ends and the tip where they meet."""

    corner: Point
    before: Point
    tip: Point
    after: Point

    def depth(self, p: Point) -> float:
        """How deep inside ``p`` lies, mm: 0 on the rim, negative outside."""
        if p.distance_to(self.corner) > self.tip.distance_to(self.corner) + NEAR:
            return -math.inf
        run = (self.corner, self.before, self.tip, self.after, self.corner)
        sides = [(b - a).cross(p - a) / a.distance_to(b) for a, b in pairwise(run)]
        return max(min(sides), -max(sides))


@dataclass(frozen=True, slots=True)
class Corner:
    """A vertex as shifted: where the segment before it ends, where the one after it starts, what bridges them."""

    before: Point
    after: Point
    arc: Segment | None = None
    kite: Kite | None = None


@dataclass(frozen=True, slots=True)
class Curve:
    """A shifted curve, and the path segments it can come no nearer to than the distance."""

    segment: Segment
    keeps: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Reach:
    """What lies nearer to the path than the distance, or in a kite."""

    path: Path
    distance: float
    kites: tuple[Kite, ...]
    boxes: tuple[Box, ...]

    def covers(self, piece: Piece, keeps: tuple[int, ...]) -> bool:
        """Whether the middle of a piece, and so all of it, is no part of the contour."""
        p = piece.segment.point_at(piece.segment.length / 2)
        return self._is_near(p, keeps) or self._is_in_sharp_corner(p)

    def _is_near(self, p: Point, keeps: tuple[int, ...]) -> bool:
        x, y, limit = p.x, p.y, abs(self.distance) - NEAR
        for i, (x0, y0, x1, y1) in enumerate(self.boxes):
            # The box spares most of the exact distances, which are what takes the time.
            boxed = x0 - limit < x < x1 + limit and y0 - limit < y < y1 + limit
            if boxed and i not in keeps and self.path.segments[i].distance_to(p) < limit:
                return True
        return False

    def _is_in_sharp_corner(self, p: Point) -> bool:
        """Whether a kite holds ``p``, or the tip ``p`` lies on has pierced the path to its other side."""
        depth = max((kite.depth(p) for kite in self.kites), default=-math.inf)
        return depth > NEAR or (depth > -NEAR and self.path.contains(p) is (self.distance > 0))


def offset(path: Path, distance: float, join: Join = Join.ROUND) -> tuple[Path, ...]:
    """The contours at ``distance`` mm from a closed path that does not cross itself, outside it for a positive one.

    The area enclosed grows with a positive distance whichever way the path runs; contours run the same way, only the
    rim of a gap that growing has closed in runs the other way round. There may be several (the path splits) or none
    (it vanishes). GeometryError for an open path, or a corner whose sharp join would reach out over ten distances.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> (inner,) = offset(rounded_rectangle(0, 0, 90, 60, 5), -3)
    >>> round(inner.area, 6) == round(rounded_rectangle(3, 3, 87, 57, 2).area, 6), len(inner.segments)
    (True, 8)
    """
    if not path.closed or not math.isfinite(distance):
        raise GeometryError("only a closed path has contours at a distance, and the distance must be a number")
    if abs(distance) <= COINCIDENT:
        return (path,)
    ccw = path.is_ccw
    corners = _corners(path, distance if ccw else -distance, join)
    shifted = _shifted(path, corners)
    reach = Reach(
        path, distance, tuple(k.kite for k in corners if k.kite), tuple(loose_box(s) for s in path.segments)
    )
    pieces = [piece for piece in _pieces(shifted) if not reach.covers(piece, shifted[piece.curve].keeps)]
    return contours(pieces, ccw)


def offset_one(path: Path, distance: float, join: Join = Join.ROUND) -> Path:
    """The one contour at ``distance`` mm (see ``offset``); GeometryError when it splits or vanishes.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> offset_one(rounded_rectangle(0, 0, 90, 60, 0), 4, Join.SHARP) == rounded_rectangle(-4, -4, 94, 64, 0)
    True
    """
    found = offset(path, distance, join)
    if len(found) != 1:
        state = f"falls into {len(found)} contours" if found else "vanishes"
        raise GeometryError(f"the path {state} when offset by {distance:g} mm")
    return found[0]


def _corners(path: Path, right: float, join: Join) -> list[Corner]:
    """The corner at the start of every segment, shifted by ``right`` mm to the right of travel."""
    ends = [_end_tangents(s) for s in path.segments]
    return [_corner(s.start, ends[i - 1][1], ends[i][0], right, join) for i, s in enumerate(path.segments)]


def _corner(vertex: Point, u: Point, v: Point, right: float, join: Join) -> Corner:
    before = Point(vertex.x + u.y * right, vertex.y - u.x * right)
    after = Point(vertex.x + v.y * right, vertex.y - v.x * right)
    if before.distance_to(after) <= JOINT:
        return Corner(before, before)
    turn = math.atan2(u.cross(v), u.dot(v))
    if turn * right < 0 and abs(turn) < math.pi - COINCIDENT:
        return Corner(before, after)
    if join is Join.SHARP:
        return Corner(before, after, kite=Kite(vertex, before, _tip(vertex, u, v, right), after))
    return Corner(before, after, arc=Segment(before, after, math.tan(math.copysign(turn, right) / 4)))


def _tip(vertex: Point, u: Point, v: Point, right: float) -> Point:
    """Where both shifted tangents meet."""
    spread = 1 + u.dot(v)
    if spread * LONGEST_MITRE**2 < 2:
        angle = 180 - math.degrees(math.acos(max(spread - 1, -1.0)))
        raise GeometryError(
            f"the corner of {angle:.3g} degrees at ({vertex.x:g}, {vertex.y:g}) is too sharp to be drawn on to a tip"
        )
    across = (u + v).perpendicular() * (-right / spread)
    return vertex + across


def _shifted(path: Path, corners: Sequence[Corner]) -> list[Curve]:
    """The shifted segments and the bridges between them, in order."""
    curves: list[Curve] = []
    for i, segment in enumerate(path.segments):
        here, following = corners[i], corners[(i + 1) % len(corners)]
        if here.arc:
            # A straight neighbour lies behind the corner for good; an arc may come round again.
            beside = ((i - 1) % len(corners), i)
            curves.append(Curve(here.arc, tuple(k for k in beside if not path.segments[k].is_arc)))
        curves.extend(
            _shifted_arc(segment, i, here, following) if segment.is_arc else _shifted_line(i, here, following)
        )
    return curves


def _shifted_line(i: int, here: Corner, following: Corner) -> list[Curve]:
    start = here.kite.tip if here.kite else here.after
    end = following.kite.tip if following.kite else following.before
    return [Curve(Segment(start, end), (i,))] if start.distance_to(end) > JOINT else []


def _shifted_arc(arc: Segment, i: int, here: Corner, following: Corner) -> list[Curve]:
    """The arc about the same centre, unless that turns it inside out, and the straight ways to sharp tips."""
    start, end = here.after, following.before
    curves = [Curve(Segment(here.kite.tip, start), ())] if here.kite else []
    grown = start.distance_to(end) * math.copysign(1.0, (end - start).dot(arc.end - arc.start))
    if grown > JOINT:
        curves.append(Curve(Segment(start, end, arc.bulge), (i,)))
    return curves + ([Curve(Segment(end, following.kite.tip), ())] if following.kite else [])


def _pieces(curves: Sequence[Curve]) -> list[Piece]:
    """The curves split wherever two of them meet."""
    segments = [curve.segment for curve in curves]
    cuts: list[list[tuple[float, Point]]] = [[] for _ in segments]
    for i, j in touching_pairs([loose_box(s) for s in segments]):
        a, b = segments[i], segments[j]
        # Curves that share an end touch there or are both straight: they meet nowhere else.
        if a.end is b.start or a.start is b.end:
            continue
        for p in intersections(a, b):
            cuts[i].append((a.nearest(p), p))
            cuts[j].append((b.nearest(p), p))
    return [piece for i, s in enumerate(segments) for piece in _split(i, s, cuts[i])]


def _split(curve: int, s: Segment, cuts: list[tuple[float, Point]]) -> list[Piece]:
    length = s.length
    if not cuts:
        return [Piece(curve, 0.0, length, s)]
    inner = sorted(((d, p) for d, p in cuts if JOINT < d < length - JOINT), key=lambda cut: cut[0])
    marks = [(0.0, s.start), *inner, (length, s.end)]
    return [
        Piece(curve, d0, d1, Segment(p, q, math.tan(s.sweep * ((d1 - d0) / length) / 4)))
        for (d0, p), (d1, q) in pairwise(marks)
        if d1 - d0 > JOINT
    ]


def _end_tangents(s: Segment) -> tuple[Point, Point]:
    along = (s.end - s.start) / s.chord
    if not s.is_arc:
        return along, along
    b = s.bulge
    cosine, sine = (1 - b * b) / (1 + b * b), 2 * b / (1 + b * b)
    aside = along.perpendicular() * sine
    return along * cosine - aside, along * cosine + aside
