"""How a gusset's straight strip lies on the assembly: along the seams that hold its long edges, by arc length.

A strip is joined to edges that turn corners while it stays straight, so no one isometry lays it on the assembly. Each
of its rows of holes goes along its own seam line: x on the strip is the way along that line, counted from the middle
of the line outwards, whatever corners it turns.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform
from patternforge.wallet.placement import Development

__all__ = ["StripPlacement", "StripRow"]


@dataclass(frozen=True, slots=True)
class StripRow:
    """One row of holes of a strip: the seam, its line on the assembly (counter-clockwise), the row's y on the piece.

    ``inward`` is 1 where the way from the line into the wallet runs up the piece, -1 where it runs down.
    """

    seam: str
    line: Path
    y: float
    inward: float


@dataclass(frozen=True, slots=True)
class StripPlacement:
    """How a strip lies along its seams; the outer wall's row comes first.

    ``middle`` is the piece's x of the middle of both seam lines; ``forward`` is 1 where the way along the seams runs
    to the right on the piece, -1 where it runs to the left. A strip stands on ``panel``, between its walls: it lies
    flat on none and crosses no fold of the wallet.

    >>> from patternforge.geometry.path import polyline
    >>> line = polyline([Point(4, 4), Point(96, 4)])
    >>> strip = StripPlacement((StripRow("back", line, 4.0, 1.0), StripRow("front", line, 30.0, -1.0)), 50.0, 1.0)
    >>> strip.to_piece(Point(96, 4)), strip.to_assembly(Point(96, 30))
    (Point(x=96.0, y=4.0), Point(x=96.0, y=4.0))
    """

    rows: tuple[StripRow, StripRow]
    middle: float
    forward: float
    panel: int = 0

    @property
    def panels(self) -> tuple[int, ...]:
        """None that it lies flat on."""
        return ()

    @property
    def development(self) -> Development:
        """The identity: a strip crosses no fold of the wallet."""
        return Development()

    @property
    def onto_piece(self) -> Transform:
        """The isometry that holds where the outer row passes the middle of its seam."""
        row = self.rows[0]
        at, way = row.line.point_at(row.line.length / 2), row.line.tangent_at(row.line.length / 2)
        x, y = way * self.forward, way.perpendicular() * row.inward
        return Transform(x.x, y.x, x.y, y.y, self.middle - x.dot(at), row.y - y.dot(at))

    def on_row(self, seam: str, along: float) -> Point:
        """The piece point of the place ``along`` mm along the line of that seam."""
        row = self._row(seam)
        return Point(self.middle + self.forward * (along - row.line.length / 2), row.y)

    def to_piece(self, point: Point) -> Point:
        """The piece point of an assembly point, by the outer row."""
        row = self.rows[0]
        d = row.line.nearest(point)
        way = row.line.tangent_at(d)
        off = point - row.line.point_at(d)
        along = d + off.dot(way)  # beyond an end of the line the strip runs straight on
        x = self.middle + self.forward * (along - row.line.length / 2)
        return Point(x, row.y + row.inward * off.dot(way.perpendicular()))

    def to_assembly(self, point: Point) -> Point:
        """The assembly point of a piece point, by the row it lies nearer to."""
        row, along = self._nearest(point)
        d = min(max(along, 0.0), row.line.length)
        way = row.line.tangent_at(d)
        beside = way.perpendicular() * (row.inward * (point.y - row.y))
        return row.line.point_at(d) + way * (along - d) + beside

    def on_assembly(self, points: Sequence[Point]) -> list[Point]:
        """The assembly points of piece points."""
        return [self.to_assembly(point) for point in points]

    def angle(self, at: Point, degrees: float) -> float:
        """The direction on the piece of a direction on the assembly, degrees; ``at`` is a piece point."""
        row, along = self._nearest(at)
        way = row.line.tangent_at(min(max(along, 0.0), row.line.length))
        return self.beside(row.seam, degrees - math.degrees(math.atan2(way.y, way.x)))

    def beside(self, seam: str, degrees: float) -> float:
        """The direction on the piece of what is turned by ``degrees`` against the way of that seam."""
        turn = math.radians(degrees)
        return math.degrees(math.atan2(self._row(seam).inward * math.sin(turn) + 0.0, self.forward * math.cos(turn)))

    def _row(self, seam: str) -> StripRow:
        return next(row for row in self.rows if row.seam == seam)

    def _nearest(self, point: Point) -> tuple[StripRow, float]:
        """The row a piece point lies nearer to, and the way along its line."""
        row = min(self.rows, key=lambda row: abs(point.y - row.y))
        return row, row.line.length / 2 + self.forward * (point.x - self.middle)
