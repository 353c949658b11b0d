"""Areas as the grounds of prisms, and the strips that an area in a fold is cut into so that it can bend."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from patternforge.fit.posed.model import Corner, Ground
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point
from patternforge.geometry.regions import Region, region

__all__ = ["bent_grounds", "box_between", "ground"]

_SLIVER = 1e-3  # mm2 that cannot be seen
_ON = 1e-6
_WIDE = 1e4  # mm; wider than any wallet


def ground(area: Region) -> Ground:
    """An area in triangles.

    >>> len(ground(region(rounded_rectangle(0, 0, 4, 2, 0))).rim)
    4
    """
    numbers: dict[Corner, int] = {}
    parted = [tuple(_number(numbers, corner) for corner in triangle) for triangle in area.triangles()]
    triangles = [(a, b, c) for a, b, c in parted if len({a, b, c}) == 3]
    edges = dict.fromkeys(edge for a, b, c in triangles for edge in ((a, b), (b, c), (c, a)))
    rim = tuple((a, b) for a, b in edges if (b, a) not in edges)
    return Ground(tuple(numbers), tuple(triangles), rim)


def _number(numbers: dict[Corner, int], corner: Point) -> int:
    return numbers.setdefault((round(corner.x, 6) + 0.0, round(corner.y, 6) + 0.0), len(numbers))


def bent_grounds(
    area: Region, zone: tuple[float, float], columns: int, flat: Callable[[Corner], Corner]
) -> Iterator[Ground]:
    """An area within a fold cut into columns across it, their corners carried by ``flat``.

    x of the area runs across the fold within ``zone``. Cuts between columns are no rim.
    """
    x0, x1 = zone
    cuts = [x0 + (x1 - x0) * i / columns for i in range(columns + 1)]
    for low, high in pairwise(cuts):
        part = area.common(box_between(low, high, -_WIDE, _WIDE))
        if part.area > _SLIVER:
            yield _carried(ground(part), [cut for cut in (low, high) if cut not in zone], flat)


def box_between(x0: float, x1: float, y0: float, y1: float) -> Region:
    """The area of an upright box."""
    return region(rounded_rectangle(x0, y0, x1, y1, 0.0))


def _carried(cut: Ground, cuts: Sequence[float], flat: Callable[[Corner], Corner]) -> Ground:
    rim = tuple(
        (a, b)
        for a, b in cut.rim
        if not any(abs(cut.corners[a][0] - x) < _ON and abs(cut.corners[b][0] - x) < _ON for x in cuts)
    )
    return Ground(tuple(map(flat, cut.corners)), cut.triangles, rim)
