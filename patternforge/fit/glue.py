"""Where pieces are glued before they are sewn: along the stitch lines that hold them together, and nowhere else.

Glue lies between the stitch line and the nearest edge of either piece, where no item can come; where no edge is near,
it keeps to the line itself, and to that side of it where nothing is held.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from patternforge.fit.layout import LaidHole, Layout
from patternforge.fit.making import MakingStep
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Bounds, Point
from patternforge.wallet.pattern import Piece, Pocket, Seam
from patternforge.wallet.words import Side

__all__ = ["Glue", "glue_of", "is_between"]

_NEAR = 9.0  # mm; an edge further off than this is not what a seam runs along
_CLEAR = 0.6  # mm kept free beside the stitches and at the edge; common practice, no source
_NARROW = 0.8  # mm to either side of stitches with no edge near
_LEAST = 0.2  # mm to either side where both are needed
_PAST = 0.3  # mm beyond an edge


@dataclass(frozen=True, slots=True)
class Glue:
    """Glue between two pieces along a seam: the ``outer`` one, the ``inner`` one, a patch for each stitch.

    The patches lie on the assembly.
    """

    outer: str
    inner: str
    seam: str
    patches: tuple[Path, ...]


def glue_of(layout: Layout, step: MakingStep) -> tuple[Glue, ...]:
    """The glue of a step: between pieces it brings together, along every seam that both will be sewn by."""
    group = {piece: number for number, pieces in enumerate(step.groups) for piece in pieces}
    found = []
    for seam in layout.pattern.seams:
        if seam.meets:
            continue
        for (outer, inner), places in _touching(layout, seam, group).items():
            if group[outer] != group[inner]:
                patches = tuple(_patches(layout, seam, (outer, inner), places))
                found += [Glue(outer, inner, seam.name, patches)] if patches else []
    return tuple(found)


def _touching(layout: Layout, seam: Seam, group: Iterable[str]) -> dict[tuple[str, str], set[int]]:
    """The pieces of a step that lie on each other at holes of a seam, outer and inner, with these holes."""
    found: dict[tuple[str, str], set[int]] = {}
    for pair, index in _neighbours(layout, seam, frozenset(group)):
        found.setdefault(pair, set()).add(index)
    return found


def _neighbours(layout: Layout, seam: Seam, known: frozenset[str]) -> Iterator[tuple[tuple[str, str], int]]:
    at: dict[int, list[str]] = {}
    for piece in sorted(layout.pattern.pieces, key=lambda piece: piece.level):
        for hole in _own(layout, piece.name, seam.name):
            if piece.name in known:
                at.setdefault(hole.index, []).append(piece.name)
    for index, names in at.items():
        yield from ((pair, index) for pair in pairwise(names))


def _own(layout: Layout, piece: str, seam: str) -> list[LaidHole]:
    return [hole for hole in layout.holes[piece] if hole.seam == seam]


def _patches(layout: Layout, seam: Seam, pair: tuple[str, str], places: set[int]) -> Iterator[Path]:
    """A patch beside every stitch between two holes of one run that the pieces share."""
    run = {hole.index: hole.run for hole in seam.holes}
    at = {hole.index: hole.at for hole in _own(layout, pair[1], seam.name)}
    for index in sorted(places):
        if index + 1 in places and run.get(index) == run.get(index + 1):
            patch = _patch(layout, pair, at[index], at[index + 1])
            if patch:
                yield patch


def _patch(layout: Layout, pair: tuple[str, str], start: Point, end: Point) -> Path | None:
    if start.distance_to(end) < _CLEAR:
        return None
    side = (end - start).unit().perpendicular()
    low, high = _between(layout, pair, (start + end) / 2, side)
    return polygon((start + side * low, end + side * low, end + side * high, start + side * high)).ccw()


def _between(layout: Layout, pair: tuple[str, str], middle: Point, side: Point) -> tuple[float, float]:
    """From where to where glue lies, to the left of a stitch and, negative, to its right; mm."""
    pieces = [layout.pattern.piece(name) for name in pair]
    off, piece = min(((_off(piece, middle), piece) for piece in pieces), key=lambda each: each[0])
    if off < _NEAR:
        for way in (1.0, -1.0):
            beyond = piece.placement.to_piece(middle + side * (way * (off + _PAST)))
            if not piece.made.contains(beyond):
                low, high = sorted((way * _CLEAR, way * max(off - _CLEAR, 2 * _CLEAR)))
                return low, high
    return _beside(*(_is_room(layout, pair, middle + side * off) for off in (-_NARROW, _NARROW)))


def _beside(right: bool, left: bool) -> tuple[float, float]:
    """From where to where glue lies beside stitches with no edge near, by the sides where an item has its room."""
    if right and left:
        return -_LEAST, _LEAST
    if right or left:
        return (0.0, 2 * _NARROW) if right else (-2 * _NARROW, 0.0)
    return -_NARROW, _NARROW


def _is_room(layout: Layout, pair: tuple[str, str], at: Point) -> bool:
    """Whether an item that lies between two pieces has its room at a place."""
    rooms = (Bounds(*pocket.box) for pocket in layout.pattern.pockets if is_between(layout, pocket, *pair))
    return any(room.x0 <= at.x <= room.x1 and room.y0 <= at.y <= room.y1 for room in rooms)


def is_between(layout: Layout, pocket: Pocket, outer: str, inner: str) -> bool:
    """Whether what a pocket holds lies between two pieces: one is its wall, or the film of a window in that."""
    wall = layout.pattern.piece(pocket.piece)
    walls = [wall.name, *(piece.name for piece in layout.pattern.pieces if piece.lines == wall.name)]
    is_outwards = wall.showing is Side.OUTSIDE and not pocket.held
    here, there = (outer, inner) if is_outwards else (inner, outer)
    return here in walls and there not in walls


def _off(piece: Piece, at: Point) -> float:
    """How far inside the edge of a piece a place of the assembly lies, mm."""
    return piece.made.distance_to(piece.placement.to_piece(at))
