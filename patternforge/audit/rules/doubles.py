"""Is everything cut once only?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import inf

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Ring
from patternforge.audit.scene import NEAR, Scene, Stroke
from patternforge.fit.findings import Verdict
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.together import Shared, shared
from patternforge.units import mm

__all__ = ["Double", "double_flaws", "doubles"]

_SHORTEST = 0.05  # mm; two cuts that share less only touch


@dataclass(slots=True)
class Double:
    """Two entities that run along one another: over which length, and the middle of the longest part."""

    length: float = 0.0
    longest: float = 0.0
    middle: Point = field(default_factory=lambda: Point(0.0, 0.0))

    def add(self, part: Shared) -> None:
        """Counts one more part in."""
        self.length += part.length
        if part.length > self.longest:
            self.longest, self.middle = part.length, part.middle


def doubles(scene: Scene) -> dict[tuple[int, int], Double]:
    """The doubled parts by the numbers of the two cuts; one number twice where a cut goes back over itself."""
    found: dict[tuple[int, int], Double] = {}
    for a, b in scene.pairs:
        part = None if _goes_on(a, b) else _shared(a, b)
        if part is not None and part.length > min(_SHORTEST, _length(a) / 2, _length(b) / 2):
            pair = (min(a.cut, b.cut), max(a.cut, b.cut))
            found.setdefault(pair, Double()).add(part)
    return {pair: double for pair, double in found.items() if _counts(scene, pair, double)}


def _counts(scene: Scene, pair: tuple[int, int], double: Double) -> bool:
    shapes = [scene.cuts[index].shape for index in pair]
    shortest = min((shape.length for shape in shapes if shape is not None), default=inf)
    return double.length > min(_SHORTEST, shortest / 2)


def _goes_on(a: Stroke, b: Stroke) -> bool:
    """Whether one only goes on where the other ends, without turning back."""
    if a.cut != b.cut or isinstance(a.line, Ring) or isinstance(b.line, Ring):
        return False
    for one, other in ((a.line, b.line), (b.line, a.line)):
        if one.end == other.start:
            return one.tangent_at(one.length).dot(other.tangent_at(0.0)) > -0.99
    return False


def _shared(a: Stroke, b: Stroke) -> Shared | None:
    one, other = a.line, b.line
    if isinstance(one, Ring) and isinstance(other, Ring):
        apart = one.centre.distance_to(other.centre) + abs(one.radius - other.radius)
        return Shared(one.length, _top(one)) if apart <= NEAR else None
    if isinstance(one, Ring):
        one, other = other, one
    if isinstance(other, Ring):
        assert isinstance(one, Segment)
        places = [one.point_at(one.length * share) for share in (0.0, 0.25, 0.5, 0.75, 1.0)]
        along = all(abs(p.distance_to(other.centre) - other.radius) <= NEAR for p in places)
        return Shared(one.length, places[2]) if along else None
    assert isinstance(one, Segment)
    return shared(one, other, NEAR) if one.length <= other.length else shared(other, one, NEAR)


def _top(ring: Ring) -> Point:
    return ring.centre + Point(0.0, ring.radius)


def _length(stroke: Stroke) -> float:
    return stroke.line.length


def double_flaws(scene: Scene) -> Iterator[Flaw]:
    """Whatever is drawn twice, wholly or in part; whole pieces that lie on their own copies are told as such."""
    found = doubles(scene)
    copies = dict(_copies(scene, found))
    told = {cut for cuts in copies.values() for cut in cuts}
    for number, cuts in copies.items():
        run = scene.runs[number]
        what = f"a whole piece lies on its own copy: {len(cuts)} contours are drawn twice"
        yield Flaw(Verdict.NO, "drawn twice", what, "take one of the copies out", run.start, run.name)
    for (i, j), double in found.items():
        if not (i in told or j in told):
            yield _flaw(scene, i, j, double)


def _flaw(scene: Scene, i: int, j: int, double: Double) -> Flaw:
    first, second = scene.cuts[i], scene.cuts[j]
    if i == j:
        what = f"goes back over itself for {mm(double.length)} mm"
        return Flaw(Verdict.NO, "drawn twice", what, "take the line back out", double.middle, first.name)
    whole = _is_whole(scene, i, j, double)
    way = f"drawn twice{_way(first.shape, second.shape)}" if whole else f"{mm(double.length)} mm are drawn twice"
    remedy = "take one of them out" if whole else "cut one of the lines off where the other begins"
    return Flaw(Verdict.NO, "drawn twice", f"{way}, {_on(second.name)}", remedy, double.middle, first.name)


def _on(name: str) -> str:
    return f"again as {name}"


def _is_whole(scene: Scene, i: int, j: int, double: Double) -> bool:
    lengths = [shape.length for shape in (scene.cuts[i].shape, scene.cuts[j].shape) if shape is not None]
    return double.length >= 0.98 * max(lengths)


def _way(one: object, other: object) -> str:
    if isinstance(one, Path) and isinstance(other, Path):
        if one.closed and other.closed:
            return ", once each way" if one.is_ccw is not other.is_ccw else ""
        return ", once each way" if one.start.distance_to(other.end) <= NEAR else ""
    return ""


def _copies(scene: Scene, found: dict[tuple[int, int], Double]) -> Iterator[tuple[int, set[int]]]:
    """Outlines that are drawn twice with all that lies in them, by run: the cuts that are doubled."""
    run_of = {member.number: index for index, run in enumerate(scene.runs) for member in run.members}
    inside = scene.children()
    twice = {pair for pair, double in found.items() if pair[0] != pair[1] and _is_whole(scene, *pair, double)}
    doubled = {cut for pair in twice for cut in pair}
    for i, j in twice:
        first, second = run_of.get(scene.cuts[i].number), run_of.get(scene.cuts[j].number)
        if first is None or second is None:
            continue
        held = inside.get(first, []) + inside.get(second, [])
        cuts = {index for index, cut in enumerate(scene.cuts) if run_of.get(cut.number) in held}
        if cuts and cuts <= doubled:
            yield first, {i, j} | cuts
