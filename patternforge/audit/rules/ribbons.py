"""Is every line one line, and not the two sides of what was a line?"""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Ring, Shape, box_of
from patternforge.audit.scene import Scene
from patternforge.fit.findings import Verdict
from patternforge.geometry.point import Point
from patternforge.units import mm

__all__ = ["ribbon_flaws"]

_WIDEST = 0.5  # mm; as wide as lines are drawn that are meant to be cut
_PLACES = 40  # along the inner contour, at most, at which the way to the outer one is measured


def ribbon_flaws(scene: Scene) -> Iterator[Flaw]:
    """Contours that follow another one inside it all the way, nearer than any line is wide."""
    for inner, outer in enumerate(scene.parents):
        if outer is not None and scene.runs[inner].closed:
            run, around = scene.runs[inner], scene.runs[outer]
            width = _width(run.shape, around.shape)
            if width is not None:
                what = (
                    f"two contours {mm(width)} mm apart all the way ({around.name}): a line turned into its outline"
                )
                remedy = "draw the line itself, with no width of its own"
                yield Flaw(Verdict.NO, "outlined line", what, remedy, run.start, run.name)


def _width(inner: Shape, outer: Shape) -> float | None:
    """How far apart two contours are at most, mm; None if they part anywhere by more than a line is wide."""
    sides = [abs(a - b) for a, b in zip(box_of(inner), box_of(outer), strict=True)]
    if max(sides) > 2 * _WIDEST:
        return None
    away = 0.0
    for place in _places(inner):
        away = max(away, _off(outer, place))
        if away > _WIDEST:
            return None
    return away


def _places(shape: Shape) -> Iterator[Point]:
    if isinstance(shape, Ring):
        yield shape.centre + Point(shape.radius, 0.0)
        return
    step = len(shape.segments) // _PLACES + 1
    for segment in shape.segments[::step]:
        yield segment.start
        yield segment.point_at(segment.length / 2)


def _off(shape: Shape, p: Point) -> float:
    return abs(p.distance_to(shape.centre) - shape.radius) if isinstance(shape, Ring) else shape.distance_to(p)
