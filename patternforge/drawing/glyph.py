"""One stroke letter on the grid of its face: polylines, y up from the base line, and the room it takes in a line."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

__all__ = ["CAPITAL", "SMALL", "Glyph", "Line", "hull"]

CAPITAL = 21.0  # grid units from the base line to the top of a capital
SMALL = 14.0  # grid units from the base line to the top of a small x

Line = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Glyph:
    """Polylines in grid units; the glyph starts at x = 0 and the next one stands ``width`` further right.

    >>> stem = Glyph(8, (((4, 21), (4, 0)),))
    >>> stem.beside(stem, closer=2).width
    14.0
    """

    width: float
    lines: tuple[Line, ...]

    @property
    def left(self) -> float:
        return min((x for line in self.lines for x, _ in line), default=0.0)

    @property
    def right(self) -> float:
        return max((x for line in self.lines for x, _ in line), default=self.width)

    @property
    def top(self) -> float:
        return max((y for line in self.lines for _, y in line), default=0.0)

    @property
    def centre(self) -> float:
        return (self.left + self.right) / 2

    def moved(self, dx: float, dy: float) -> Glyph:
        """The same lines shifted on the grid, the width unchanged."""
        return Glyph(self.width, tuple(tuple((x + dx, y + dy) for x, y in line) for line in self.lines))

    def scaled(self, factor: float) -> Glyph:
        """Lines and width enlarged from the origin."""
        lines = tuple(tuple((x * factor, y * factor) for x, y in line) for line in self.lines)
        return Glyph(self.width * factor, lines)

    def turned_over(self, axis: float) -> Glyph:
        """Turned by half a turn about the middle of its width at height ``axis``."""
        return Glyph(self.width, tuple(tuple((self.width - x, 2 * axis - y) for x, y in line) for line in self.lines))

    def widened(self, width: float) -> Glyph:
        """The same lines with another width."""
        return Glyph(width, self.lines)

    def with_lines(self, *lines: Line) -> Glyph:
        """Further polylines drawn over the glyph."""
        return Glyph(self.width, self.lines + lines)

    def over(self, other: Glyph) -> Glyph:
        """Both drawn in the same place, as wide as the wider one."""
        return Glyph(max(self.width, other.width), self.lines + other.lines)

    def beside(self, right: Glyph, closer: float = 0.0) -> Glyph:
        """``right`` set after this glyph, ``closer`` grid units nearer than usual."""
        at = float(self.width - closer)
        return Glyph(at + right.width, self.lines + right.moved(at, 0.0).lines)

    def without_dot(self) -> Glyph:
        """Without any line that hangs wholly above the small letters: an i or a j that is to carry a mark."""
        return Glyph(self.width, tuple(line for line in self.lines if min(y for _, y in line) <= SMALL))


@cache
def hull(glyph: Glyph) -> Line:
    """The corners of the convex outline of all lines: whichever way the glyph is turned, they alone bound it.

    Method: the monotone chain of A. M. Andrew, Information Processing Letters 9 (1979), 216-219.

    >>> hull(Glyph(8, (((0, 0), (4, 0), (4, 4)), ((1, 1), (3, 1)))))
    ((0, 0), (4, 0), (4, 4))
    """
    points = sorted({point for line in glyph.lines for point in line})
    return tuple(points) if len(points) < 3 else (*_chain(points)[:-1], *_chain(reversed(points))[:-1])


def _chain(points: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    """Of ``points``, sorted along x, those that bound the rest on the right of the way through them."""
    kept: list[tuple[float, float]] = []
    for x, y in points:
        while len(kept) > 1 and _turn(kept[-2], kept[-1], (x, y)) <= 0:
            kept.pop()
        kept.append((x, y))
    return kept


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    """Positive where the way from ``a`` over ``b`` to ``c`` turns left."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
