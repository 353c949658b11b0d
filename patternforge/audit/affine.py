"""Maps of the plane that keep lines straight: what blocks, groups and pages do to what stands in them."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, hypot, isclose, sin

from patternforge.geometry.point import Point

__all__ = ["IDENTITY", "Affine", "rotation", "scaling", "translation"]

_EVEN = 1e-6  # relative; a map whose scales differ by less keeps circles round


@dataclass(frozen=True, slots=True)
class Affine:
    """x' = a x + c y + e, y' = b x + d y + f, in the order in which SVG writes a matrix.

    >>> Affine(2, 0, 0, 2, 5, 0).point(Point(1, 1))
    Point(x=7, y=2)
    """

    a: float
    b: float
    c: float
    d: float
    e: float
    f: float

    def point(self, p: Point) -> Point:
        """Where ``p`` comes to lie."""
        return Point(self.a * p.x + self.c * p.y + self.e, self.b * p.x + self.d * p.y + self.f)

    def vector(self, v: Point) -> Point:
        """What becomes of a vector, which no shift moves."""
        return Point(self.a * v.x + self.c * v.y, self.b * v.x + self.d * v.y)

    def after(self, first: Affine) -> Affine:
        """``first`` and then this map.

        >>> translation(5, 0).after(scaling(2, 2)).point(Point(1, 1))
        Point(x=7.0, y=2.0)
        """
        u, v = self.vector(Point(first.a, first.b)), self.vector(Point(first.c, first.d))
        o = self.point(Point(first.e, first.f))
        return Affine(u.x, u.y, v.x, v.y, o.x, o.y)

    @property
    def is_even(self) -> bool:
        """Whether circles stay circles."""
        size = hypot(self.a, self.b)
        turned = isclose(abs(self.a), abs(self.d), abs_tol=_EVEN * size)
        crossed = isclose(abs(self.b), abs(self.c), abs_tol=_EVEN * size)
        return size > 0 and turned and crossed and abs(self.a * self.c + self.b * self.d) <= _EVEN * size * size

    @property
    def is_mirror(self) -> bool:
        """Whether left and right change places."""
        return self.a * self.d - self.b * self.c < 0

    @property
    def factor(self) -> float:
        """By how much lengths grow along x; along every way when the map is even."""
        return hypot(self.a, self.b)

    @property
    def factors(self) -> tuple[float, float]:
        """By how much lengths grow along x and along y."""
        return hypot(self.a, self.b), hypot(self.c, self.d)


IDENTITY = Affine(1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def translation(dx: float, dy: float) -> Affine:
    """A shift."""
    return Affine(1.0, 0.0, 0.0, 1.0, dx, dy)


def scaling(x: float, y: float) -> Affine:
    """A scaling from the origin."""
    return Affine(x, 0.0, 0.0, y, 0.0, 0.0)


def rotation(angle: float) -> Affine:
    """A turn about the origin by ``angle`` radians from x towards y."""
    return Affine(cos(angle), sin(angle), -sin(angle), cos(angle), 0.0, 0.0)
