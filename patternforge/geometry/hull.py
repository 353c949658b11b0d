"""The smallest outline that turns one way only round points of the plane."""

from __future__ import annotations

from collections.abc import Iterable

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point

__all__ = ["hull"]


def hull(points: Iterable[Point]) -> Path:
    """The convex outline round the points, counter-clockwise; GeometryError when they lie on one line.

    Built from below and from above in the order of x, as by Andrew (1979).

    >>> square = [Point(0, 0), Point(4, 0), Point(4, 4), Point(0, 4)]
    >>> hull([*square, Point(2, 1)]).area
    16.0
    """
    rising = sorted(set(points), key=lambda p: (p.x, p.y))
    corners = [*_chain(rising), *_chain(rising[::-1])]
    if len(corners) < 3:
        raise GeometryError("points on one line have no outline round them")
    return polygon(corners)


def _chain(points: list[Point]) -> list[Point]:
    """The corners on one side, without the last, which begins the other."""
    kept: list[Point] = []
    for p in points:
        while len(kept) > 1 and (kept[-1] - kept[-2]).cross(p - kept[-2]) <= 0:
            kept.pop()
        kept.append(p)
    return kept[:-1]
