"""The smallest rectangle that takes a figure when it may be turned on the leather."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees, radians

from patternforge.geometry.flatten import flattened
from patternforge.geometry.hull import hull
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

__all__ = ["TurnedBox", "smallest_box"]

_SAME = 1e-6  # mm2: of two boxes as good as each other the one turned less is taken


@dataclass(frozen=True, slots=True)
class TurnedBox:
    """A rectangle ``width`` x ``height`` mm that takes a figure turned by ``turn`` degrees (above -45, to 45)."""

    width: float
    height: float
    turn: float

    @property
    def area(self) -> float:
        """The area in mm2."""
        return self.width * self.height


def smallest_box(outline: Path, tolerance: float = 0.01) -> TurnedBox:
    """The rectangle of least area that takes a closed outline, turned as it may be.

    Arcs are flattened to ``tolerance`` mm, so that a side may be short by twice that. One of its sides lies along a
    side of the convex outline (Freeman and Shapira, Communications of the ACM 18 (1975), 409-413).

    >>> from patternforge.geometry.path import polygon
    >>> box = smallest_box(polygon([Point(0, 0), Point(4, 4), Point(2, 6), Point(-2, 2)]))
    >>> round(box.width, 6), round(box.height, 6), round(box.turn, 6)
    (2.828427, 5.656854, 45.0)
    """
    corners = [segment.start for segment in hull(flattened(outline, tolerance)).segments]
    ways = [after - before for before, after in zip(corners, [*corners[1:], corners[0]], strict=True)]
    boxes = (_box(corners, _least_turn(way)) for way in ways)
    return min(boxes, key=lambda box: (round(box.area / _SAME), abs(box.turn), -box.turn))


def _least_turn(way: Point) -> float:
    """The turn, in degrees above -45 to 45, that lays a direction level or upright."""
    turn = -degrees(atan2(way.y, way.x)) % 90.0
    return turn if turn <= 45.0 else turn - 90.0


def _box(corners: list[Point], turn: float) -> TurnedBox:
    turned = [corner.rotated(radians(turn)) for corner in corners]
    xs, ys = [p.x for p in turned], [p.y for p in turned]
    return TurnedBox(max(xs) - min(xs), max(ys) - min(ys), turn)
