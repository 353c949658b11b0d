"""Four-sided outlines with slanted or bowed sides: bodies and layers that are no rectangles."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from patternforge.errors import DraftError
from patternforge.geometry.corners import filleted
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.border import CCW
from patternforge.wallet.spec import Edge, EdgeShape

__all__ = ["Quad", "quad", "sides_of"]

_ON_SIDE = 1e-7

Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Quad:
    """Corners counter-clockwise from the lower left, each with its rounding and the bulge of the side leaving it.

    Sides in order: bottom, right, top, left.
    """

    corners: tuple[Point, Point, Point, Point]
    radii: tuple[float, float, float, float]
    bulges: tuple[float, float, float, float]

    @property
    def sharp(self) -> Path:
        """The outline without its roundings."""
        return from_vertices([(p.x, p.y, b) for p, b in zip(self.corners, self.bulges, strict=True)], closed=True)

    @property
    def path(self) -> Path:
        """The outline as cut."""
        return filleted(self.sharp, self.radii)


def quad(
    box: Box,
    shapes: Mapping[Edge, EdgeShape],
    radii: tuple[float, float, float, float],
    lowered: Mapping[Edge, float],
    laid: Mapping[Edge, Box] = MappingProxyType({}),
) -> Quad:
    """The outline inside a box whose sides slant or bow; ``lowered`` sides are moved in parallel by that many mm.

    A side may be a part of a longer one: ``laid`` gives the box that one runs along, else it is the outline's own.
    DraftError when the sides cross before they meet, or a part of a bowed side is asked for.
    """
    for edge, whole in laid.items():
        if shapes.get(edge, EdgeShape()).bow and whole != box:
            raise DraftError(f"the {edge.value} side bows from end to end and has no part of its own")
    lines = [_side(laid.get(edge, box), edge, shapes.get(edge, EdgeShape()), lowered.get(edge, 0.0)) for edge in CCW]
    corners = tuple(_meeting(lines[i - 1], lines[i]) for i in range(4))
    bows = tuple(
        _bulge(corners[i], corners[(i + 1) % 4], shapes.get(edge, EdgeShape()).bow) for i, edge in enumerate(CCW)
    )
    low_left, low_right, high_right, high_left = corners
    if (
        min(
            low_right.x - low_left.x, high_right.x - high_left.x, high_left.y - low_left.y, high_right.y - low_right.y
        )
        <= 0
    ):
        raise DraftError("its slanted sides cross each other: slant them less")
    return Quad((low_left, low_right, high_right, high_left), radii, (bows[0], bows[1], bows[2], bows[3]))


def sides_of(path: Path, figure: Quad) -> tuple[Edge | None, ...]:
    """Which side of the figure each segment of its rounded outline belongs to; None for the arcs of its corners."""
    return tuple(_side_of(segment, figure.sharp) for segment in path.segments)


def _side_of(segment: Segment, sharp: Path) -> Edge | None:
    middle = segment.point_at(segment.length / 2)
    for edge, side in zip(CCW, sharp.segments, strict=True):
        if side.distance_to(middle) < _ON_SIDE:
            return edge
    return None


def _side(box: Box, edge: Edge, form: EdgeShape, lowered: float) -> tuple[Point, Point]:
    """The straight line of a side, counter-clockwise, before it bows.

    A positive slant moves the upper or right end in, a negative one the lower or left end.
    """
    x0, y0, x1, y1 = box
    far, near = max(form.slant, 0.0) + lowered, max(-form.slant, 0.0) + lowered
    return {
        Edge.BOTTOM: (Point(x0, y0 + near), Point(x1, y0 + far)),
        Edge.RIGHT: (Point(x1 - near, y0), Point(x1 - far, y1)),
        Edge.TOP: (Point(x1, y1 - far), Point(x0, y1 - near)),
        Edge.LEFT: (Point(x0 + far, y1), Point(x0 + near, y0)),
    }[edge]


def _meeting(a: tuple[Point, Point], b: tuple[Point, Point]) -> Point:
    u, v = a[1] - a[0], b[1] - b[0]
    return a[0] + u * ((b[0] - a[0]).cross(v) / u.cross(v))


def _bulge(start: Point, end: Point, bow: float) -> float:
    """Bulge of a side that bows out by ``bow`` mm (in when negative); at most a half circle."""
    chord = start.distance_to(end)
    if abs(bow) > chord / 2 + 1e-9:
        raise DraftError(f"a side of {chord:.2f} mm cannot bow by {abs(bow):.2f} mm: at most half its length")
    return math.copysign(2 * abs(bow) / chord, bow) if bow else 0.0
