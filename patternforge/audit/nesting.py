"""What lies in what: outlines, what is cut inside them, and what lies outside all of them."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from patternforge.audit.model import Ring, box_of
from patternforge.audit.runs import Run
from patternforge.geometry.boxes import Box
from patternforge.geometry.interior import Interior
from patternforge.geometry.nearby import Grid
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

__all__ = ["parents"]

_SLACK = 0.01  # mm
_SAME = 0.04  # mm; contours drawn twice lie within half as much of one another


def parents(runs: Sequence[Run]) -> tuple[int | None, ...]:
    """For each run the number of the smallest closed run round it, None for one that lies in none."""
    boxes = [box_of(run.shape) for run in runs]
    closed = [index for index, run in enumerate(runs) if run.closed]
    closed.sort(key=lambda index: _area(boxes[index]))
    grid = Grid([boxes[index] for index in closed])
    holds = [_holder(runs[index]) for index in closed]
    found: list[int | None] = []
    for index, run in enumerate(runs):
        box, inside = boxes[index], _inner_point(run)
        rounds = (place for place in grid.near((inside.x, inside.y, inside.x, inside.y)) if closed[place] != index)
        larger = (place for place in rounds if _takes(boxes[closed[place]], box))
        found.append(next((closed[place] for place in larger if holds[place](inside)), None))
    return tuple(found)


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _takes(large: Box, small: Box) -> bool:
    """Whether one box holds the other and is not as good as the same, as that of a copy is."""
    held = large[0] <= small[0] + _SLACK and large[1] <= small[1] + _SLACK
    held = held and large[2] >= small[2] - _SLACK and large[3] >= small[3] - _SLACK
    wider, higher = (large[2] - large[0]) - (small[2] - small[0]), (large[3] - large[1]) - (small[3] - small[1])
    return held and max(wider, higher) > _SAME


def _inner_point(run: Run) -> Point:
    """A point of the run that no neighbour it only touches holds: its middle, or half-way along its first stretch."""
    if isinstance(run.shape, Ring):
        return run.shape.centre
    first = run.shape.segments[0]
    return first.point_at(first.length / 2)


def _holder(run: Run) -> Callable[[Point], bool]:
    if isinstance(run.shape, Path):
        return Interior(run.shape).holds
    ring = run.shape
    return lambda p: p.distance_to(ring.centre) <= ring.radius
