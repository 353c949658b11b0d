"""How a wallet is looked at in pictures: in plan or at a slant, from the inside or the outside, at which scale."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import pairwise

from patternforge.drawing.model import Area, Ink, Role
from patternforge.fit.layout import Layout, laid_path
from patternforge.fit.strips import folded_strip
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Bounds, Point, bounds_of
from patternforge.geometry.transform import Transform, flipped_x, identity, rotation
from patternforge.wallet.pattern import Piece
from patternforge.wallet.strip import StripPlacement

__all__ = ["Seen", "View", "arrow", "heavy", "laid_openings", "laid_outline", "plan", "slanted"]

_FLAT = 0.1  # mm that a drawn arc may stray
_APART = 1e-6  # mm; points of a picture nearer to each other are one
_SHEAR, _DEPTH = 0.34, 0.5  # of what lies behind, in pictures at a slant: moved aside, and shortened


class Seen(Enum):
    """The side a wallet is looked at from."""

    INSIDE = "the inside"
    OUTSIDE = "the outside"


@dataclass(frozen=True, slots=True)
class View:
    """From the assembly to a picture: turned or mirrored, sheared by ``shear``, flattened by ``depth``, scaled."""

    seen: Seen
    onto: Transform
    shear: float
    depth: float
    scale: float = 1.0

    def point(self, p: Point, lift: float = 0.0) -> Point:
        """The place in the picture of a point of the assembly that is lifted by ``lift`` mm of the picture."""
        q = self.onto.point(p)
        return Point(self.scale * (q.x + self.shear * q.y), self.scale * self.depth * q.y + lift)

    def path(self, path: Path, lift: float = 0.0) -> Path:
        """A path of the assembly in the picture, its arcs as short lines."""
        points = [self.point(p, lift) for p in flattened(path, _FLAT / self.scale)]
        return polygon(points) if path.closed else polyline(points)

    def bounds(self, paths: Iterable[Path]) -> Bounds:
        """The box round paths in the picture."""
        return bounds_of([Point(x, y) for path in paths for x, y, _ in self.path(path).vertices])

    def scaled(self, scale: float) -> View:
        """The same view at another scale."""
        return replace(self, scale=scale)

    def towards(self, level: float) -> float:
        """A level from the outside in as seen: the higher, the nearer to the eye."""
        return level if self.seen is Seen.INSIDE else -level


def plan(layout: Layout, seen: Seen = Seen.INSIDE) -> View:
    """The wallet laid open as it lies on the bench, seen straight from above."""
    return View(seen, _onto(layout, seen), 0.0, 1.0)


def slanted(layout: Layout, seen: Seen = Seen.INSIDE) -> View:
    """The wallet laid open, seen at a slant, so that pieces can be lifted off each other."""
    return View(seen, _onto(layout, seen), _SHEAR, _DEPTH)


def _onto(layout: Layout, seen: Seen) -> Transform:
    upright = rotation(-90) if layout.pattern.design.body.turned else identity()
    return upright if seen is Seen.INSIDE else upright.then(flipped_x())


def laid_outline(layout: Layout, piece: Piece) -> Path:
    """The outline of a piece where it lies on the assembly; of a gusset the band it takes up along its seam."""
    placement = piece.placement
    if isinstance(placement, StripPlacement):
        depth = max(folded_strip(piece, layout.leathers[piece.leather]).depths)
        return _band(placement, depth)
    return laid_path(piece, piece.made)


def laid_openings(piece: Piece) -> tuple[Path, ...]:
    """The openings of a piece where they lie on the assembly."""
    if isinstance(piece.placement, StripPlacement):
        return ()
    return tuple(laid_path(piece, opening) for opening in piece.openings)


def _band(placement: StripPlacement, depth: float) -> Path:
    row = placement.rows[0]
    points = flattened(row.line, _FLAT)
    ways = [row.line.tangent_at(row.line.nearest(p)) for p in points]
    inward = [way.perpendicular() for way in ways]
    outer = [p + side * -row.y for p, side in zip(points, inward, strict=True)]
    inner = [p + side * (depth - row.y) for p, side in zip(points, inward, strict=True)]
    return polygon([*outer, *reversed(inner)])


def heavy(points: Sequence[Point], width: float) -> Iterator[Ink]:
    """A bold line through points of a picture, as solid bars: how wide a pen draws is the writer's to say."""
    for a, b in pairwise(points):
        if a.distance_to(b) > _APART:
            side = (b - a).unit().perpendicular() * (width / 2)
            yield Area(Role.OUTLINE, (polygon((a - side, b - side, b + side, a + side)),), 1.0)


def arrow(start: Point, end: Point, width: float) -> Iterator[Ink]:
    """A bold arrow from one point of a picture to another."""
    way = (end - start).unit()
    back, aside = end - way * (4 * width), way.perpendicular() * (2 * width)
    yield from heavy([start, back], width)
    yield Area(Role.OUTLINE, (polygon((end, back + aside, back - aside)),), 1.0)
