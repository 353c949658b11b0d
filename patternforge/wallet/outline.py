"""Outlines with a role on every edge."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.geometry.corners import filleted
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import Transform
from patternforge.wallet.pattern import EdgeRole

__all__ = ["Corner", "Shape", "shape"]

_ON_EDGE = 1e-7


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of an outline with its rounding, and the edge that leaves it: its bulge and its role."""

    at: Point
    radius: float = 0.0
    bulge: float = 0.0
    role: EdgeRole = EdgeRole.RAW


@dataclass(frozen=True, slots=True)
class Shape:
    """A closed outline and the role of each of its segments."""

    path: Path
    edges: tuple[EdgeRole, ...]

    def moved(self, transform: Transform) -> Shape:
        """The same shape under a transform that does not mirror."""
        return Shape(transform.path(self.path), self.edges)


def shape(corners: Sequence[Corner]) -> Shape:
    """The outline through the corners in counter-clockwise order, rounded where asked; corner arcs are raw edges."""
    distinct = [c for i, c in enumerate(corners) if c.at.distance_to(corners[i - 1].at) > _ON_EDGE]
    sharp = from_vertices([(c.at.x, c.at.y, c.bulge) for c in distinct], closed=True)
    rounded = filleted(sharp, [c.radius for c in distinct])
    return Shape(rounded, tuple(_role(segment, sharp, distinct) for segment in rounded.segments))


def _role(segment: Segment, sharp: Path, corners: Sequence[Corner]) -> EdgeRole:
    middle = segment.point_at(segment.length / 2)
    for edge, corner in zip(sharp.segments, corners, strict=True):
        if edge.distance_to(middle) < _ON_EDGE:
            return corner.role
    return EdgeRole.RAW
