"""Slabs: the plies of one panel along a cut, each resting on what lies outside it there."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.interior import Interior
from patternforge.geometry.transform import rotation

__all__ = ["Slab", "slabs_across", "slabs_along", "stack_height"]

_SAME = 1e-9
_APART = 1e-6  # mm; ends closer than this fall together but for rounding

Stretches = list[tuple[float, float]]
"""Where a ply lies along a cut, from and to, rising; mm."""


@dataclass(frozen=True, slots=True)
class Slab:
    """A stretch of a ply on one panel, resting ``level`` mm above the panel's outer face, as thick as it is there."""

    ply: Ply
    x0: float
    x1: float
    level: float
    thickness: float


def slabs_across(layout: Layout, panel: int, y: float) -> list[Slab]:
    """The plies on a panel along the cut, each from step to step of what it rests on."""
    drafted = layout.pattern.panels[panel]
    last = len(layout.pattern.panels) - 1
    low = -math.inf if panel == 0 else drafted.x0
    high = math.inf if panel == last else drafted.x1
    here = [ply for ply in layout.plies if panel in ply.panels]
    steps = [at for ply in here for box, _ in ply.thinned for at in (box.x0, box.x1) if box.y0 < y < box.y1]
    stretches = [_within(_edges_across(ply, y), low, high) for ply in here]
    return _resting(here, stretches, steps, lambda ply, x: ply.thickness_at(x, y))


def _resting(
    here: Sequence[Ply],
    stretches: Sequence[Stretches],
    steps: Sequence[float],
    thickness: Callable[[Ply, float], float],
) -> list[Slab]:
    """Plies from the outside in, each over the stretches it covers, at the heights of what lies outside it there.

    ``steps`` are where skives begin; ``thickness`` is that of a ply at a place along the cut.
    """
    ends = sorted([*(x for stretch in stretches for pair in stretch for x in pair), *steps])
    places = [x for i, x in enumerate(ends) if i == 0 or x - ends[i - 1] > _APART]
    slabs: list[Slab] = []
    for number, ply in enumerate(here):
        for x0, x1 in pairwise(places):
            middle = (x0 + x1) / 2
            if _covers(stretches[number], middle):
                under = [o for o, s in zip(here[:number], stretches, strict=False) if _covers(s, middle)]
                level = sum(thickness(each, middle) for each in under)
                _add(slabs, Slab(ply, x0, x1, level, thickness(ply, middle)))
    return slabs


def _edges_across(ply: Ply, y: float) -> list[float]:
    """x where a ply begins and ends along the cut, its openings left out."""
    openings = (Interior(opening).crossings(y) for opening in ply.openings)
    return sorted([*ply.edges_at(y), *(x for crossings in openings for x in crossings)])


def _within(edges: Sequence[float], low: float, high: float) -> Stretches:
    pairs = zip(edges[::2], edges[1::2], strict=True)
    cut = ((max(x0, low), min(x1, high)) for x0, x1 in pairs)
    return [(x0, x1) for x0, x1 in cut if x1 - x0 > _SAME]


def _covers(stretch: Stretches, x: float) -> bool:
    return any(x0 < x < x1 for x0, x1 in stretch)


def _add(slabs: list[Slab], new: Slab) -> None:
    """A slab that goes on where the last one of its ply ended, at the same level, is one with it."""
    last = slabs[-1] if slabs else None
    if last and last.ply is new.ply and abs(last.x1 - new.x0) < _SAME and _is_level(last, new):
        slabs[-1] = replace(last, x1=new.x1)
    else:
        slabs.append(new)


def _is_level(one: Slab, other: Slab) -> bool:
    return abs(one.level - other.level) < _SAME and abs(one.thickness - other.thickness) < _SAME


def slabs_along(layout: Layout, panel: int, x: float) -> list[Slab]:
    """The plies on a panel along an upright line; none where the line misses the panel."""
    drafted = layout.pattern.panels[panel]
    if not drafted.x0 < x < drafted.x1:
        return []
    here = [ply for ply in layout.plies if panel in ply.panels]
    steps = [at for ply in here for box, _ in ply.thinned for at in (box.y0, box.y1) if box.x0 < x < box.x1]
    stretches = [_within(_edges_along(ply, x), -math.inf, math.inf) for ply in here]
    return _resting(here, stretches, steps, lambda ply, y: ply.thickness_at(x, y))


def _edges_along(ply: Ply, x: float) -> list[float]:
    """y where a ply begins and ends along an upright line, its openings left out."""
    if ply.outline is None:
        return ply.ends_at(x)
    if not ply.bounds.x0 < x < ply.bounds.x1:
        return []
    # Outlines laid on their side, so that the line lies level.
    paths = (rotation(90).path(path) for path in (ply.outline, *ply.openings))
    bare = (ply.hollow.y0, ply.hollow.y1) if ply.hollow and ply.hollow.x0 < x < ply.hollow.x1 else ()
    return sorted([*(-at for path in paths for at in Interior(path).crossings(x)), *bare])


def stack_height(slabs: Sequence[Slab]) -> float:
    """How high the slabs of a panel stand, mm."""
    return max((slab.level + slab.thickness for slab in slabs), default=0.0)
