"""Does every contour close?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Entity, Odd
from patternforge.audit.runs import Run
from patternforge.audit.scene import NEAR, Scene
from patternforge.fit.findings import Verdict
from patternforge.geometry.path import Path
from patternforge.units import mm

__all__ = ["loose_flaws", "open_flaws", "pieced_flaws"]


def open_flaws(scene: Scene) -> Iterator[Flaw]:
    """Gaps between ends that were meant to meet."""
    for run in scene.runs:
        for gap in run.gaps:
            what = f"open by {_width(gap.width)} mm"
            yield Flaw(Verdict.NO, "open contour", what, "join the ends and close the contour", gap.at, run.name)


def loose_flaws(scene: Scene) -> Iterator[Flaw]:
    """Open lines that lie in no outline: a contour that lacks a side, or a stray line."""
    beside = _neighbours(scene)
    for index, run in enumerate(scene.runs):
        if not run.closed and scene.parents[index] is None and not _lies_on_a_contour(run, beside):
            start, end = run.loose_ends
            what = f"a line in no outline, its ends {mm(start.distance_to(end))} mm apart"
            remedy = "close it if it is an outline, else take it out"
            yield Flaw(Verdict.NO, "loose line", what, remedy, start, run.name)


def _neighbours(scene: Scene) -> dict[int, list[Entity]]:
    """What lies on or beside each cut, by its number."""
    beside: dict[int, list[Entity]] = {}
    for a, b in scene.pairs:
        if a.cut != b.cut:
            beside.setdefault(scene.cuts[a.cut].number, []).append(scene.cuts[b.cut])
            beside.setdefault(scene.cuts[b.cut].number, []).append(scene.cuts[a.cut])
    return beside


def _lies_on_a_contour(run: Run, beside: Mapping[int, Sequence[Entity]]) -> bool:
    """Whether it runs along another line, which is told as a line drawn twice."""
    assert isinstance(run.shape, Path)
    middle = run.shape.point_at(run.shape.length / 2)
    others = beside.get(run.members[0].number, ())
    return any(isinstance(each.shape, Path) and each.shape.distance_to(middle) <= NEAR for each in others)


def pieced_flaws(scene: Scene) -> Iterator[Flaw]:
    """Contours that close only because separate lines meet, or that end where they began without being closed."""
    for run in scene.runs:
        if not run.closed or run.gaps or run.members[0].has(Odd.SPLINE, Odd.ELLIPSE, Odd.CURVE):
            continue
        shape = run.members[0].shape
        if len(run.members) > 1:
            what = f"a contour of {len(run.members)} separate lines"
            yield Flaw(Verdict.LOOK, "contour in parts", what, "join them to one closed line", run.start, run.name)
        elif isinstance(shape, Path) and not shape.closed:
            what = "ends where it began, but is not marked as closed"
            yield Flaw(Verdict.LOOK, "contour in parts", what, "close it", shape.start, run.name)


def _width(width: float) -> str:
    return mm(width, 2 if width >= 0.1 else 3)
