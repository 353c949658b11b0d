"""Does the drawing lie where a machine will find it?"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Entity
from patternforge.audit.scene import Scene
from patternforge.fit.findings import Verdict
from patternforge.geometry.point import Bounds, Point
from patternforge.units import mm

__all__ = ["page_flaws", "place_flaws"]

_FAR = 2000.0  # mm; further than any bed reaches
_APART = 5.0  # times the size of all the rest: what lies so far off was lost there
_SLACK = 0.5  # mm; half of a wide line


def place_flaws(scene: Scene) -> Iterator[Flaw]:
    """A drawing far from the origin, and single things far from all the others."""
    extent = scene.file.extent
    if extent is None:
        return
    corner = Point(extent.x0, extent.y0)
    away = corner.norm
    if away > _FAR:
        what = f"the drawing begins {mm(away, 0)} mm from the origin"
        yield Flaw(Verdict.LOOK, "far off", what, "move its lower left corner to the origin", corner)
    yield from _lost(scene)


def _lost(scene: Scene) -> Iterator[Flaw]:
    """What lies far from the middle half of everything."""
    if len(scene.cuts) < 3:
        return
    xs, ys = sorted(cut.at.x for cut in scene.cuts), sorted(cut.at.y for cut in scene.cuts)
    middle = Point(xs[len(xs) // 2], ys[len(ys) // 2])
    spread = max(hypot(*_quartiles(xs, ys)), 100.0)
    for cut in scene.cuts:
        away = cut.at.distance_to(middle)
        if away > max(_APART * spread, _FAR):
            what = f"lies {mm(away, 0)} mm from the rest"
            yield Flaw(Verdict.LOOK, "far off", what, "move it to the rest, or take it out", cut.at, cut.name)


def _quartiles(xs: list[float], ys: list[float]) -> tuple[float, float]:
    low, high = len(xs) // 4, 3 * len(xs) // 4
    return xs[high] - xs[low], ys[high] - ys[low]


def page_flaws(scene: Scene) -> Iterator[Flaw]:
    """Cuts that lie off the page of an SVG file, where some programs do not see them."""
    page = scene.file.page
    if page is None:
        return
    off = [cut for cut in scene.cuts if not _is_on(page, cut)]
    for cut in off:
        what = f"lies off the page of {mm(page.width)} x {mm(page.height)} mm"
        yield Flaw(Verdict.LOOK, "off the page", what, "move it onto the page, or enlarge the page", cut.at, cut.name)


def _is_on(page: Bounds, cut: Entity) -> bool:
    assert cut.shape is not None
    box = cut.shape.bounds
    across = box.x0 >= page.x0 - _SLACK and box.x1 <= page.x1 + _SLACK
    return across and box.y0 >= page.y0 - _SLACK and box.y1 <= page.y1 + _SLACK
