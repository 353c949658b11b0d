"""Is what lies inside a piece cut before the piece falls free, and does everything lie in a piece?"""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Ring
from patternforge.audit.scene import Scene
from patternforge.fit.findings import Verdict
from patternforge.units import counted, mm

__all__ = ["order_flaws", "stray_flaws"]

_SMALL = 10.0  # mm; a contour as small as this is a hole, if there are larger ones


def order_flaws(scene: Scene) -> Iterator[Flaw]:
    """Outlines that come before what lies in them."""
    for number, inside in scene.children().items():
        outline = scene.runs[number]
        late = [scene.runs[index] for index in inside if scene.runs[index].last > outline.last]
        if late and scene.parents[number] is None:
            what = f"the outline is cut before {counted(len(late), 'cut')} inside it: the piece may shift"
            remedy = "put what lies inside before the outline"
            yield Flaw(Verdict.LOOK, "order", what, remedy, outline.start, outline.name)


def stray_flaws(scene: Scene) -> Iterator[Flaw]:
    """Holes that lie in no outline, and contours in a hole, which fall out with it."""
    yield from _holes_outside(scene)
    for index, run in enumerate(scene.runs):
        parent = scene.parents[index]
        if parent is not None and scene.parents[parent] is not None and not _is_marked(scene, parent):
            what = f"lies in an opening ({scene.runs[parent].name}) and falls out with it"
            remedy = "take it out, or see whether it is meant"
            yield Flaw(Verdict.LOOK, "in an opening", what, remedy, run.start, run.name)


def _is_marked(scene: Scene, number: int) -> bool:
    """Whether what seems an opening is only scored, as letters are: the word on its layer says so."""
    return "MARK" in scene.runs[number].members[0].look.layer.upper()


def _holes_outside(scene: Scene) -> Iterator[Flaw]:
    boxes = {index: scene.runs[index].shape.bounds for index in scene.outlines}
    sizes = {index: max(box.width, box.height) for index, box in boxes.items()}
    if max(sizes.values(), default=0.0) <= 2 * _SMALL:
        return
    inside = [run for run, parent in zip(scene.runs, scene.parents, strict=True) if parent is not None]
    layers = {run.members[0].look.layer for run in inside}
    for index, size in sizes.items():
        run = scene.runs[index]
        is_like_holes = isinstance(run.shape, Ring) or run.members[0].look.layer in layers
        if size <= (_SMALL if is_like_holes else _SMALL / 2):
            what = f"a hole of {mm(size)} mm in no outline"
            remedy = "move it into its piece, or take it out"
            yield Flaw(Verdict.NO, "hole outside", what, remedy, run.start, run.name)
