"""Moves that change no length: shifts, turns and mirrors of the plane, and what they do to lines and arcs."""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

__all__ = ["Transform", "flipped_x", "flipped_y", "identity", "rotation", "translation"]

RIGID = 1e-9  # how far a matrix may be from a pure turn or mirror
QUARTERS = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))


@dataclass(frozen=True, slots=True)
class Transform:
    """x' = a x + c y + e, y' = b x + d y + f; GeometryError unless it keeps every length (within 1e-9).

    >>> Transform(1, 0, 0, 1, 5, 7).point(Point(1, 2))
    Point(x=6, y=9)
    """

    a: float
    b: float
    c: float
    d: float
    e: float
    f: float

    def __post_init__(self) -> None:
        off = max(
            abs(self.a**2 + self.b**2 - 1), abs(self.c**2 + self.d**2 - 1), abs(self.a * self.c + self.b * self.d)
        )
        if not off <= RIGID or not math.isfinite(self.e + self.f):
            raise GeometryError("a transform may only shift, turn and mirror, never stretch")

    @property
    def is_mirror(self) -> bool:
        """Whether it turns the plane over."""
        return self.a * self.d - self.b * self.c < 0

    def then(self, following: Transform) -> Transform:
        """This transform followed by another.

        >>> translation(1, 0).then(rotation(90)).point(Point(0, 0))
        Point(x=0.0, y=1.0)
        """
        x, y = following.direction(Point(self.a, self.b)), following.direction(Point(self.c, self.d))
        o = following.point(Point(self.e, self.f))
        return Transform(x.x, x.y, y.x, y.y, o.x, o.y)

    def inverse(self) -> Transform:
        """The transform that undoes this one.

        >>> translation(3, 4).inverse() == translation(-3, -4)
        True
        """
        e, f = self.a * self.e + self.b * self.f, self.c * self.e + self.d * self.f
        return Transform(self.a, self.c, self.b, self.d, -e, -f)

    def point(self, p: Point) -> Point:
        """Where a point goes.

        >>> flipped_x(at=10).point(Point(1, 2))
        Point(x=19.0, y=2.0)
        """
        return Point(self.a * p.x + self.c * p.y + self.e, self.b * p.x + self.d * p.y + self.f)

    def direction(self, v: Point) -> Point:
        """What a vector becomes: turned and mirrored, never shifted.

        >>> translation(3, 4).direction(Point(1, 0))
        Point(x=1.0, y=0.0)
        """
        return Point(self.a * v.x + self.c * v.y, self.b * v.x + self.d * v.y)

    def angle(self, degrees: float) -> float:
        """The direction, in degrees above -180 up to 180, of what ran in direction ``degrees`` before.

        >>> flipped_x().angle(45)
        135.0
        """
        turn = math.degrees(math.atan2(self.b, self.a))
        turned = math.remainder(turn - degrees if self.is_mirror else turn + degrees, 360)
        return 180.0 if turned == -180 else turned

    def segment(self, s: Segment) -> Segment:
        """Where a segment goes; a mirror changes the sign of the bulge.

        >>> flipped_y().segment(Segment(Point(0, 0), Point(2, 0), 1.0)).bulge
        -1.0
        """
        return Segment(self.point(s.start), self.point(s.end), -s.bulge if self.is_mirror else s.bulge)

    def path(self, path: Path) -> Path:
        """Where a path goes, its vertices in the same order (so a mirror turns its direction round).

        >>> from patternforge.geometry.path import polygon
        >>> flipped_x().path(polygon([Point(0, 0), Point(4, 0), Point(4, 3)])).is_ccw
        False
        """
        return Path(tuple(self.segment(s) for s in path.segments), path.closed)


def identity() -> Transform:
    """The transform that moves nothing.

    >>> identity().point(Point(1, 2))
    Point(x=1.0, y=2.0)
    """
    return Transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def translation(dx: float, dy: float) -> Transform:
    """The shift by ``dx``, ``dy`` mm.

    >>> translation(3, 4).point(Point(1, 2))
    Point(x=4.0, y=6.0)
    """
    return Transform(1.0, 0.0, 0.0, 1.0, dx, dy)


def rotation(degrees: float, about: Point = Point(0.0, 0.0)) -> Transform:  # noqa: B008 - a frozen value
    """The turn by ``degrees`` counter-clockwise about a point; exact for multiples of 90.

    >>> rotation(90).point(Point(2, 1))
    Point(x=-1.0, y=2.0)
    """
    quarters, rest = divmod(degrees, 90)
    if rest == 0:
        cosine, sine = QUARTERS[int(quarters) % 4]
    else:
        cosine, sine = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    e = about.x - cosine * about.x + sine * about.y
    f = about.y - sine * about.x - cosine * about.y
    return Transform(cosine, sine, -sine, cosine, e, f)


def flipped_x(at: float = 0.0) -> Transform:
    """The mirror that turns x over about the upright line x = ``at``.

    >>> flipped_x(at=50).point(Point(0, 3))
    Point(x=100.0, y=3.0)
    """
    return Transform(-1.0, 0.0, 0.0, 1.0, 2 * at, 0.0)


def flipped_y(at: float = 0.0) -> Transform:
    """The mirror that turns y over about the level line y = ``at``.

    >>> flipped_y(at=50).point(Point(3, 0))
    Point(x=3.0, y=100.0)
    """
    return Transform(1.0, 0.0, 0.0, -1.0, 0.0, 2 * at)
