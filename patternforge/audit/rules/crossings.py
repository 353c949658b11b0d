"""Does no cut cross itself or another?"""

from __future__ import annotations

from collections.abc import Iterator
from math import pi

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Ring
from patternforge.audit.rules.doubles import doubles
from patternforge.audit.scene import Scene, Stroke
from patternforge.fit.findings import Verdict
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment, intersections

__all__ = ["crossing_flaws"]

_JOINT = 0.01  # mm; what meets nearer to a joint than this meets there
_HUGGING = 0.005  # mm; neighbours this near each other up to where they meet again have not parted


def crossing_flaws(scene: Scene) -> Iterator[Flaw]:
    """Cuts that cross or touch other than end to end; an open line may begin or end on another cut.

    What is only scored may cross what is only scored.
    """
    told = set(doubles(scene))
    free = {(p.x, p.y) for run in scene.runs for p in run.loose_ends}
    found: dict[tuple[int, int], list[Point]] = {}
    for a, b in scene.pairs:
        pair = (min(a.cut, b.cut), max(a.cut, b.cut))
        if pair in told or (_is_scored(scene, a) and _is_scored(scene, b)):
            continue
        meetings = [p for p in _meetings(a, b) if not _is_lawful(scene, a, b, p, free)]
        if meetings:
            found.setdefault(pair, []).extend(meetings)
    for (i, j), places in found.items():
        yield _flaw(scene, i, j, places)


def _is_scored(scene: Scene, stroke: Stroke) -> bool:
    """Whether a line is only scored, as letters are, whose strokes cross: the word on its layer says so."""
    return "MARK" in scene.cuts[stroke.cut].look.layer.upper()


def _flaw(scene: Scene, i: int, j: int, places: list[Point]) -> Flaw:
    first, second = scene.cuts[i], scene.cuts[j]
    count = len({(round(p.x, 2), round(p.y, 2)) for p in places})
    times = "" if count == 1 else f" in {count} places"
    if i == j:
        what = f"crosses or touches itself{times}"
        return Flaw(Verdict.NO, "crossing", what, "part it where it crosses", places[0], first.name)
    what = f"crosses or touches {second.name}{times}"
    return Flaw(Verdict.NO, "crossing", what, "move them apart, or join them to one outline", places[0], first.name)


def _meetings(a: Stroke, b: Stroke) -> list[Point]:
    if isinstance(a.line, Ring) and isinstance(b.line, Ring):
        apart = a.line.centre.distance_to(b.line.centre)
        if not abs(a.line.radius - b.line.radius) <= apart <= a.line.radius + b.line.radius:
            return []
    return [p for one in _segments(a.line) for other in _segments(b.line) for p in intersections(one, other)]


def _segments(line: Segment | Ring) -> list[Segment]:
    if isinstance(line, Segment):
        return [line]
    return [arc_segment(line.centre, line.radius, turn, turn + pi) for turn in (0.0, pi)]


def _is_lawful(scene: Scene, a: Stroke, b: Stroke, p: Point, free: set[tuple[float, float]]) -> bool:
    ends = [*_ends(a.line), *_ends(b.line)]
    if any((end.x, end.y) in free and end.distance_to(p) <= _JOINT for end in ends):
        return True
    joints = [q for q in _ends(a.line) for other in _ends(b.line) if q.distance_to(other) <= _JOINT]
    if not joints or not _belong_together(scene, a, b):
        return False
    return any(q.distance_to(p) <= _JOINT or _hug(a.line, b.line, q, p) for q in joints)


def _ends(line: Segment | Ring) -> tuple[Point, ...]:
    return () if isinstance(line, Ring) else (line.start, line.end)


def _belong_together(scene: Scene, a: Stroke, b: Stroke) -> bool:
    """Whether one follows the other, in one entity or in one run of several."""
    if a.cut != b.cut:
        return a.run is not None and a.run == b.run
    shape = scene.cuts[a.cut].shape
    if shape is None or isinstance(shape, Ring):
        return False
    apart = abs(a.place - b.place)
    return apart == 1 or (shape.closed and apart == len(shape.segments) - 1)


def _hug(one: Segment | Ring, other: Segment | Ring, joint: Point, p: Point) -> bool:
    """Whether two neighbours still lie on one another between their joint and the point where they meet again."""
    middle = (joint + p) / 2
    return all(isinstance(line, Segment) and line.distance_to(middle) <= _HUGGING for line in (one, other))
