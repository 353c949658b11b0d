"""How a flat piece lies on the assembly: developed through its folds, then moved, turned or mirrored."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform

__all__ = ["Development", "Placement"]


@dataclass(frozen=True, slots=True)
class Development:
    """The piecewise linear map of one layer: assembly x to flat x, unit slope on panels, stretched in fold zones.

    ``breaks`` are (assembly x, flat x) pairs in rising order, two for each fold zone; beyond them the slope is 1.

    >>> Development(((10.0, 10.0), (12.0, 16.0))).flat(20.0)
    24.0
    """

    breaks: tuple[tuple[float, float], ...] = ()

    def flat(self, x: float) -> float:
        """Flat x of an assembly x, mm."""
        return _mapped(x, self.breaks)

    def assembly(self, x: float) -> float:
        """Assembly x of a flat x, mm; the inverse of ``flat``."""
        return self.inverse().flat(x)

    def inverse(self) -> Development:
        """The map from flat x back to assembly x."""
        return Development(tuple((flat, at) for at, flat in self.breaks))


def _mapped(x: float, breaks: tuple[tuple[float, float], ...]) -> float:
    if not breaks:
        return x
    index = bisect_right([source for source, _ in breaks], x)
    if index == 0 or index == len(breaks):
        source, target = breaks[min(index, len(breaks) - 1)]
        return target + (x - source)
    (s0, t0), (s1, t1) = breaks[index - 1], breaks[index]
    return t0 + (x - s0) * (t1 - t0) / (s1 - s0)


@dataclass(frozen=True, slots=True)
class Placement:
    """How a piece lies on the assembly: ``onto_piece`` after ``development`` leads from the assembly to the piece."""

    development: Development
    onto_piece: Transform
    panels: tuple[int, ...]

    def to_piece(self, point: Point) -> Point:
        """The piece point of an assembly point."""
        return self.onto_piece.point(Point(self.development.flat(point.x), point.y))

    def to_assembly(self, point: Point) -> Point:
        """The assembly point of a piece point."""
        return self.on_assembly([point])[0]

    def on_assembly(self, points: Sequence[Point]) -> list[Point]:
        """The assembly points of piece points."""
        back, development = self.onto_piece.inverse(), self.development.inverse()
        flat = (back.point(point) for point in points)
        return [Point(development.flat(p.x), p.y) for p in flat]

    def angle(self, at: Point, degrees: float) -> float:
        """The direction on the piece of a direction on the assembly, degrees; ``at`` is a piece point."""
        return self.onto_piece.angle(degrees)
