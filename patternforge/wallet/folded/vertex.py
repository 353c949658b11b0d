"""A corner of an outline before it is rounded or relieved."""

from __future__ import annotations

from dataclasses import dataclass, replace

from patternforge.geometry.point import Point

__all__ = ["Vertex"]


@dataclass(frozen=True, slots=True)
class Vertex:
    """A corner, the bulge of the edge that leaves it, its rounding, and what it is relieved for where it turns in.

    An empty ``relief`` leaves it as it is.
    """

    at: Point
    bulge: float = 0.0
    radius: float = 0.0
    relief: str = ""

    def joined(self, other: Vertex) -> Vertex:
        """Two corners in one place as one: the edge that leaves is that of the second."""
        return replace(
            self, bulge=other.bulge, radius=max(self.radius, other.radius), relief=self.relief or other.relief
        )
