"""Is nothing smaller than the tool can cut?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from patternforge.audit.flaws import Flaw, Limits
from patternforge.audit.scene import Scene
from patternforge.audit.smallest import Measure, holes, necks, radii, slots, smallest_gaps
from patternforge.fit.findings import Verdict, reaches
from patternforge.units import mm

__all__ = ["limit_flaws"]


def limit_flaws(scene: Scene, limits: Limits) -> Iterator[Flaw]:
    """What is smaller than ``limits`` say; limits of 0 are not looked at."""
    if limits.hole:
        yield from _below(holes(scene), limits.hole, "a hole", "make it larger, or leave it to an awl")
    if limits.radius:
        yield from _below(
            radii(scene), limits.radius, "an arc", "round the corner more, or leave it sharp", " radius"
        )
    if limits.gap:
        gaps = smallest_gaps(scene, limits.gap)
        yield from _below(gaps, limits.gap, "a gap between cuts", "move the cuts apart")
        yield from _below(necks(scene), limits.gap, "a piece narrows to a neck", "widen it")
    if limits.slot:
        yield from _below(slots(scene), limits.slot, "a slot", "widen it")


def _below(measures: Iterable[Measure], limit: float, thing: str, remedy: str, of: str = "") -> Iterator[Flaw]:
    for each in measures:
        if not reaches(each.value, limit):
            what = f"{thing} of {mm(each.value)} mm{of}; the limit is {mm(limit)} mm"
            yield Flaw(Verdict.NO, "below the limit", what, remedy, each.at, each.on)
