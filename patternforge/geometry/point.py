"""Points and vectors of the plane, and the upright boxes round them; all in mm."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from patternforge.errors import GeometryError

__all__ = ["COINCIDENT", "Bounds", "Point", "bounds_of", "joined_bounds"]

COINCIDENT = 1e-9  # mm; points nearer to each other than this are one point


@dataclass(frozen=True, slots=True)
class Point:
    """A point, or the vector to it from the origin, in mm.

    >>> Point(3, 4).norm
    5.0
    >>> Point(1, 2) + 2 * Point(1, 0)
    Point(x=3, y=2)
    """

    x: float
    y: float

    def __add__(self, other: Point) -> Point:
        return Point(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Point) -> Point:
        return Point(self.x - other.x, self.y - other.y)

    def __neg__(self) -> Point:
        return Point(-self.x, -self.y)

    def __mul__(self, factor: float) -> Point:
        return Point(self.x * factor, self.y * factor)

    __rmul__ = __mul__

    def __truediv__(self, divisor: float) -> Point:
        return Point(self.x / divisor, self.y / divisor)

    def dot(self, other: Point) -> float:
        """The scalar product, mm2.

        >>> Point(1, 2).dot(Point(3, 4))
        11
        """
        return self.x * other.x + self.y * other.y

    def cross(self, other: Point) -> float:
        """The area of the parallelogram of both vectors, mm2; positive when ``other`` lies counter-clockwise.

        >>> Point(1, 0).cross(Point(0, 1))
        1
        """
        return self.x * other.y - self.y * other.x

    @property
    def norm(self) -> float:
        """The length of the vector, mm."""
        return math.hypot(self.x, self.y)

    def distance_to(self, other: Point) -> float:
        """The distance to another point, mm.

        >>> Point(1, 1).distance_to(Point(4, 5))
        5.0
        """
        return math.hypot(other.x - self.x, other.y - self.y)

    def unit(self) -> Point:
        """The vector of length 1 in the same direction; GeometryError for a vector without one.

        >>> Point(0, 8).unit()
        Point(x=0.0, y=1.0)
        """
        norm = self.norm
        if not COINCIDENT <= norm < math.inf:
            raise GeometryError(f"a vector of length {norm:g} has no direction")
        return Point(self.x / norm, self.y / norm)

    def perpendicular(self) -> Point:
        """The vector turned by 90 degrees counter-clockwise.

        >>> Point(3, 1).perpendicular()
        Point(x=-1, y=3)
        """
        return Point(-self.y, self.x)

    def rotated(self, radians: float) -> Point:
        """The vector turned counter-clockwise by an angle in radians.

        >>> round(Point(1, 0).rotated(math.pi / 6).y, 12)
        0.5
        """
        cosine, sine = math.cos(radians), math.sin(radians)
        return Point(self.x * cosine - self.y * sine, self.x * sine + self.y * cosine)


@dataclass(frozen=True, slots=True)
class Bounds:
    """An upright box from its lower left (``x0``, ``y0``) to its upper right corner, mm.

    >>> Bounds(0, 0, 4, 2).centre
    Point(x=2.0, y=1.0)
    """

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def width(self) -> float:
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        return self.y1 - self.y0

    @property
    def centre(self) -> Point:
        return Point((self.x0 + self.x1) / 2, (self.y0 + self.y1) / 2)


def bounds_of(points: Iterable[Point]) -> Bounds:
    """The smallest box round the points; GeometryError if there are none.

    >>> bounds_of([Point(1, 5), Point(3, 2)])
    Bounds(x0=1, y0=2, x1=3, y1=5)
    """
    known = tuple(points)
    if not known:
        raise GeometryError("no points, so no bounds")
    xs, ys = [p.x for p in known], [p.y for p in known]
    return Bounds(min(xs), min(ys), max(xs), max(ys))


def joined_bounds(boxes: Sequence[Bounds]) -> Bounds:
    """The smallest box round all ``boxes``, of which there must be one.

    >>> joined_bounds([Bounds(0, 0, 1, 1), Bounds(2, -1, 3, 0)])
    Bounds(x0=0, y0=-1, x1=3, y1=1)
    """
    return Bounds(
        min([b.x0 for b in boxes]), min([b.y0 for b in boxes]), max([b.x1 for b in boxes]), max([b.y1 for b in boxes])
    )
