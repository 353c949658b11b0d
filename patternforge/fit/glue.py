"""Where pieces are glued before they are sewn: along the stitch lines that hold them together, and nowhere else.

Glue lies between the stitch line and the nearest edge of the piece that is laid on, where no item can come; where no
edge is near, it keeps to the line itself.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from patternforge.fit.layout import LaidHole, Layout
from patternforge.fit.making import MakingStep
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Seam

__all__ = ["Glue", "glue_of"]

_NEAR = 9.0  # mm; an edge further off than this is not what a seam runs along
_CLEAR = 0.6  # mm kept free beside the stitches and at the edge; common practice, no source
_NARROW = 0.8  # mm to either side of stitches with no edge near
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
            patches = tuple(_patches(layout, seam, inner, places))
            if patches and group[outer] != group[inner]:
                found.append(Glue(outer, inner, seam.name, patches))
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


def _patches(layout: Layout, seam: Seam, inner: str, places: set[int]) -> Iterator[Path]:
    """A patch beside every stitch between two holes of one run that the pieces share."""
    run = {hole.index: hole.run for hole in seam.holes}
    at = {hole.index: hole.at for hole in _own(layout, inner, seam.name)}
    for index in sorted(places):
        if index + 1 in places and run.get(index) == run.get(index + 1):
            patch = _patch(layout, inner, at[index], at[index + 1])
            if patch:
                yield patch


def _patch(layout: Layout, inner: str, start: Point, end: Point) -> Path | None:
    if start.distance_to(end) < _CLEAR:
        return None
    side = (end - start).unit().perpendicular()
    low, high = _between(layout, inner, (start + end) / 2, side)
    return polygon((start + side * low, end + side * low, end + side * high, start + side * high)).ccw()


def _between(layout: Layout, inner: str, middle: Point, side: Point) -> tuple[float, float]:
    """From where to where glue lies, to the left of a stitch and, negative, to its right; mm."""
    piece = layout.pattern.piece(inner)
    off = piece.made.distance_to(piece.placement.to_piece(middle))
    if off < _NEAR:
        for way in (1.0, -1.0):
            beyond = piece.placement.to_piece(middle + side * (way * (off + _PAST)))
            if not piece.made.contains(beyond):
                low, high = sorted((way * _CLEAR, way * max(off - _CLEAR, 2 * _CLEAR)))
                return low, high
    return -_NARROW, _NARROW
