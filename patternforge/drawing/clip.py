"""Inks cut off at a window exactly: lines and arcs are cut where they cross its edge, and arcs stay arcs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import pi

from patternforge.drawing.extent import extent
from patternforge.drawing.lettering import letter_bounds, letter_strokes
from patternforge.drawing.model import Area, Dot, Ink, Stroke
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import COINCIDENT, Bounds, Point
from patternforge.geometry.segment import Segment, arc_segment, intersections

__all__ = ["clipped", "clipped_path"]

# Parts shorter than this, mm, are what rounding leaves of a touch; no pen can draw them.
_SHORTEST = 10 * COINCIDENT
_CHORDS = 0.01  # mm that the edge of an area may stray where it is cut off


def clipped(inks: Iterable[Ink], window: Bounds) -> tuple[Ink, ...]:
    """What ``window`` shows of ``inks``, its edge included, in the same order.

    An ink that lies wholly inside is returned as it is. A circle that is cut becomes strokes, a text that is cut
    becomes the strokes of its letters (DraftError as in ``letter_strokes``).

    >>> from patternforge.drawing.model import Role
    >>> clipped([Dot(Role.HOLE, Point(5, 5), 1.0), Dot(Role.HOLE, Point(50, 5), 1.0)], Bounds(0, 0, 10, 10))
    (Dot(role=<Role.HOLE: 'stitch hole'>, centre=Point(x=5, y=5), diameter=1.0),)
    """
    return tuple(part for ink in inks for part in _shown(ink, window))


def clipped_path(path: Path, window: Bounds) -> tuple[Path, ...]:
    """The parts of ``path`` inside ``window``, its edge included, as it runs; open unless nothing was cut off.

    >>> from patternforge.geometry.path import polyline
    >>> [part.length for part in clipped_path(polyline([Point(-5, 1), Point(25, 1)]), Bounds(0, 0, 10, 10))]
    [10.0]
    """
    if _holds(window, path.bounds):
        return (path,)
    runs = _runs(part for segment in path.segments for part in _parts(segment, window))
    if path.closed and len(runs) > 1 and _meet(runs[-1][-1], runs[0][0]):
        runs = [runs[-1] + runs[0], *runs[1:-1]]
    return tuple(Path(tuple(run), closed=False) for run in runs)


def _shown(ink: Ink, window: Bounds) -> Iterator[Ink]:
    if isinstance(ink, Stroke):
        yield from (Stroke(ink.role, part) for part in clipped_path(ink.path, window))
    elif isinstance(ink, Dot):
        inside = _holds(window, extent((ink,)))
        yield from (ink,) if inside else _shown(Stroke(ink.role, _circle(ink)), window)
    elif isinstance(ink, Area):
        inside = _holds(window, extent((ink,)))
        yield from (ink,) if inside else _shown_area(ink, window)
    else:
        box = letter_bounds(ink)
        inside = box is None or _holds(window, box)
        yield from (ink,) if inside else (part for letter in letter_strokes(ink) for part in _shown(letter, window))


def _shown_area(area: Area, window: Bounds) -> Iterator[Area]:
    """What the window shows of an area, its arcs in chords: an area is looked at, not measured."""
    cut = [_cut_polygon(list(flattened(path, _CHORDS)), window) for path in area.paths]
    paths = tuple(polygon(points) for points in cut if len(points) > 2)
    if paths:
        yield Area(area.role, paths, area.tone)


def _cut_polygon(points: list[Point], window: Bounds) -> list[Point]:
    """The points of a polygon cut off along each edge of the window in turn (the method of Sutherland and Hodgman).

    Parts of what is left may hang together along an edge of the window, which no fill shows.
    """
    for edge in _edges(window):
        along = (edge.end - edge.start).unit()
        off = [along.cross(point - edge.start) for point in points]
        kept: list[Point] = []
        for i, point in enumerate(points):
            before, depth_before, depth = points[i - 1], off[i - 1], off[i]
            if (depth_before < 0) is not (depth < 0):
                kept.append(before + (point - before) * (depth_before / (depth_before - depth)))
            if depth >= 0:
                kept.append(point)
        points = [p for i, p in enumerate(kept) if p.distance_to(kept[i - 1]) > _SHORTEST]
    return points


def _circle(dot: Dot) -> Path:
    halves = (arc_segment(dot.centre, dot.diameter / 2, turn, turn + pi) for turn in (0.0, pi))
    first, second = halves
    return Path((first, Segment(first.end, first.start, second.bulge)), closed=True)


def _holds(window: Bounds, box: Bounds) -> bool:
    return (
        window.x0 - COINCIDENT <= box.x0
        and window.y0 - COINCIDENT <= box.y0
        and box.x1 <= window.x1 + COINCIDENT
        and box.y1 <= window.y1 + COINCIDENT
    )


def _parts(segment: Segment, window: Bounds) -> Iterator[Segment]:
    """The parts of one segment inside the window, from its start to its end."""
    cuts = _cuts(segment, window)
    for d0, d1 in pairwise(cuts):
        middle = segment.point_at((d0 + d1) / 2)
        if _holds(window, Bounds(middle.x, middle.y, middle.x, middle.y)):
            yield segment.sub(d0, d1)


def _cuts(segment: Segment, window: Bounds) -> list[float]:
    """Where the segment starts, crosses an edge of the window, and ends, in mm along it."""
    crossings = {segment.nearest(p) for edge in _edges(window) for p in intersections(segment, edge)}
    cuts = [0.0]
    for d in sorted(crossings):
        if d - cuts[-1] > _SHORTEST and segment.length - d > _SHORTEST:
            cuts.append(d)
    return [*cuts, segment.length]


def _edges(window: Bounds) -> tuple[Segment, ...]:
    a, b = Point(window.x0, window.y0), Point(window.x1, window.y0)
    c, d = Point(window.x1, window.y1), Point(window.x0, window.y1)
    return Segment(a, b), Segment(b, c), Segment(c, d), Segment(d, a)


def _runs(parts: Iterable[Segment]) -> list[list[Segment]]:
    """Parts that follow each other without a gap, run by run."""
    runs: list[list[Segment]] = []
    for part in parts:
        if runs and _meet(runs[-1][-1], part):
            runs[-1].append(part)
        else:
            runs.append([part])
    return runs


def _meet(one: Segment, next_one: Segment) -> bool:
    return one.end.distance_to(next_one.start) <= COINCIDENT
