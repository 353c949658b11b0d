"""Pieces that are the same cut: one die or template serves all of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.drafting.holes import made_hole
from patternforge.geometry.path import Path
from patternforge.geometry.transform import Transform
from patternforge.wallet.pattern import Hole, Pattern, Piece
from patternforge.wallet.spec import HoleShape, HoleSpec

__all__ = ["alike"]

_SAME = 1e-6  # mm: what is left of rounding in places that are the same

_Drilled = tuple[Hole, HoleSpec]


def alike(pattern: Pattern) -> tuple[tuple[str, ...], ...]:
    """The names of pieces with one outline, the same openings and the same holes, two or more together.

    They may be turned against each other in the plane, not turned over; places agree within a millionth of a mm.
    Groups and names stand in the order of the pattern.
    """
    groups: list[list[Piece]] = []
    for piece in pattern.pieces:
        own = next((group for group in groups if _same_cut(pattern, group[0], piece)), None)
        if own is None:
            groups.append([piece])
        else:
            own.append(piece)
    return tuple(tuple(piece.name for piece in group) for group in groups if len(group) > 1)


def _same_cut(pattern: Pattern, one: Piece, other: Piece) -> bool:
    holes, others = _drilled(pattern, one), _drilled(pattern, other)
    if len(holes) != len(others) or len(one.openings) != len(other.openings):
        return False
    return any(
        _same_openings(turn, one.openings, other.openings) and _same_holes(turn, holes, others)
        for turn in _turns(one.outline, other.outline)
    )


def _drilled(pattern: Pattern, piece: Piece) -> list[_Drilled]:
    specs = {seam.name: seam.stitching.hole for seam in pattern.seams}
    made = ((hole, made_hole(hole, specs[hole.seam])) for hole in (*piece.holes, *piece.turned_holes))
    return [(hole, spec) for hole, spec in made if spec.shape is not HoleShape.NONE]


def _turns(one: Path, other: Path) -> Iterator[Transform]:
    """Every shift and turn that lays the closed path ``one`` on ``other``."""
    count = len(one.segments)
    if count != len(other.segments):
        return
    first = one.segments[0]
    way = (first.end - first.start).unit()
    for k, segment in enumerate(other.segments):
        onto = (segment.end - segment.start).unit()
        cosine, sine = way.dot(onto), way.cross(onto)
        turn = Transform(cosine, sine, -sine, cosine, 0.0, 0.0)
        shift = segment.start - turn.point(first.start)
        turn = Transform(cosine, sine, -sine, cosine, shift.x, shift.y)
        pairs = zip(one.segments, other.segments[k:] + other.segments[:k], strict=True)
        if all(
            turn.point(a.start).distance_to(b.start) <= _SAME and abs(a.bulge - b.bulge) <= _SAME for a, b in pairs
        ):
            yield turn


def _same_openings(turn: Transform, one: Sequence[Path], other: Sequence[Path]) -> bool:
    return all(any(_lies_on(turn.path(a), b) for b in other) for a in one)


def _lies_on(one: Path, other: Path) -> bool:
    ends = one.segments[0].start, one.segments[0].end
    return any(all(turn.point(at).distance_to(at) <= _SAME for at in ends) for turn in _turns(one, other))


def _same_holes(turn: Transform, holes: Sequence[_Drilled], others: Sequence[_Drilled]) -> bool:
    return all(any(_same_hole(turn, one, other) for other in others) for one in holes)


def _same_hole(turn: Transform, one: _Drilled, other: _Drilled) -> bool:
    (hole, spec), (counterpart, wanted) = one, other
    if spec != wanted or turn.point(hole.at).distance_to(counterpart.at) > _SAME:
        return False
    off = (turn.angle(hole.direction) - counterpart.direction) % 180
    return spec.shape is not HoleShape.SLIT or min(off, 180 - off) <= _SAME
