"""One piece against what became of it: placed over each other as well as they go, and measured."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from patternforge.comparison.distance import TOLERANCE, apart, is_same, on_other, sets_apart
from patternforge.comparison.made import MadeHole, MadePiece
from patternforge.comparison.moves import Move, moves
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation

__all__ = ["HolesChange", "PieceChange", "piece_change"]

_TIE = 0.5  # mm by which another placing must leave more of the outline unmoved to be better
_TURN = 0.1  # degrees that a slit may be turned and be the same


@dataclass(frozen=True, slots=True)
class HolesChange:
    """Stitch holes before and after: how many, how many of those in both moved or are made otherwise.

    Holes are the same by seam and number; ``farthest`` is the longest way that one moved, mm.
    """

    before: int
    after: int
    unmoved: int
    moved: int
    farthest: float
    other_shape: int

    @property
    def stay(self) -> bool:
        """Whether every hole is there, as it was and where it was."""
        return self.unmoved == self.before == self.after and not self.other_shape


@dataclass(frozen=True, slots=True)
class PieceChange:
    """A piece and what became of it. ``offset`` lays the new one over the old as well as it goes.

    ``outline``, ``openings`` and ``drawn`` (fold lines, marks, letters) are the largest distances in mm between old
    and new once placed so; infinite where there is nothing on one side to measure from.
    """

    old: MadePiece
    new: MadePiece
    offset: Point
    outline: float
    openings: float
    holes: HolesChange
    drawn: tuple[tuple[str, float], ...]
    moves: tuple[Move, ...]

    @property
    def die_stays(self) -> bool:
        """Whether a die of the old piece cuts the new one: a die has no stitch holes and no marks."""
        return max(self.outline, self.openings) <= TOLERANCE

    @property
    def template_stays(self) -> bool:
        """Whether a template of the old piece, with its holes and marks, serves for the new one."""
        return self.die_stays and self.holes.stay and all(off <= TOLERANCE for _, off in self.drawn)


def piece_change(old: MadePiece, new: MadePiece) -> PieceChange:
    """What became of a piece, the new one placed over the old.

    Both lie with their lower left corners on each other unless another placing leaves more of the outline unmoved.
    """
    offset = _best_offset(old.outline, new.outline)
    placed = translation(offset.x, offset.y)
    outline = placed.path(new.outline)
    openings = [placed.path(opening) for opening in new.openings]
    lines = {kind: [placed.path(path) for path in paths] for kind, paths in _by_kind(new).items()}
    return PieceChange(
        old=old,
        new=new,
        offset=offset,
        outline=0.0 if is_same(old.outline, outline) else apart(old.outline, outline),
        openings=sets_apart(old.openings, openings),
        holes=_holes_change(old, new, offset),
        drawn=tuple(_drawn(_by_kind(old), lines)),
        moves=_moves(old.outline, outline),
    )


def _moves(old: Path, new: Path) -> tuple[Move, ...]:
    if len(old.segments) != len(new.segments):
        return ()
    return moves([s.start for s in old.segments], [s.start for s in new.segments])


def _best_offset(old: Path, new: Path) -> Point:
    """The way the new outline is moved to leave most of the old one unmoved; none unless that leaves more."""
    best = Point(0.0, 0.0)
    if is_same(old, new):
        return best
    most = _unmoved(old, new, best)
    for offset in _offsets(old, new):
        length = _unmoved(old, new, offset)
        if length > most + _TIE:
            best, most = offset, length
    return best


def _unmoved(old: Path, new: Path, offset: Point) -> float:
    placed = translation(offset.x, offset.y).path(new)
    return on_other(old, placed) + on_other(placed, old)


def _offsets(old: Path, new: Path) -> Iterator[Point]:
    """Placings that lay other sides of the outlines over each other, then corners that have moved alike."""
    wide, high = old.bounds.width - new.bounds.width, old.bounds.height - new.bounds.height
    found = [Point(x, y) for y in (0.0, high) for x in (0.0, wide)]
    if len(old.segments) == len(new.segments):
        ways = [a.start - b.start for a, b in zip(old.segments, new.segments, strict=True)]
        alike = [(sum(way.distance_to(other) <= TOLERANCE for other in ways), way) for way in ways]
        found += [way for count, way in alike if count == max(many for many, _ in alike)][:1]
    yield from (offset for offset in found if offset.norm > TOLERANCE)


def _by_kind(piece: MadePiece) -> dict[str, list[Path]]:
    kinds: dict[str, list[Path]] = {}
    for kind, path in piece.drawn:
        kinds.setdefault(kind, []).append(path)
    return kinds


def _drawn(old: Mapping[str, list[Path]], new: Mapping[str, list[Path]]) -> Iterator[tuple[str, float]]:
    """How far each kind of drawn line moved, where it did."""
    for kind in (*old, *(kind for kind in new if kind not in old)):
        off = sets_apart(old.get(kind, []), new.get(kind, []))
        if off > TOLERANCE:
            yield kind, off


def _holes_change(old: MadePiece, new: MadePiece, offset: Point) -> HolesChange:
    before, after = _by_number(old), _by_number(new)
    pairs = [(hole, after[key]) for key, hole in before.items() if key in after]
    ways = [(b.at + offset).distance_to(a.at) for a, b in pairs]
    return HolesChange(
        before=len(before),
        after=len(after),
        unmoved=sum(way <= TOLERANCE for way in ways),
        moved=sum(way > TOLERANCE for way in ways),
        farthest=max(ways, default=0.0),
        other_shape=sum(_is_made_otherwise(a, b) for a, b in pairs),
    )


def _by_number(piece: MadePiece) -> dict[tuple[str, int, bool, int], MadeHole]:
    """Holes by seam, number, side, and which of several that share these."""
    found: dict[tuple[str, int, bool, int], MadeHole] = {}
    for hole in piece.holes:
        count = 0
        while (hole.seam, hole.index, hole.turned, count) in found:
            count += 1
        found[hole.seam, hole.index, hole.turned, count] = hole
    return found


def _is_made_otherwise(a: MadeHole, b: MadeHole) -> bool:
    turned = abs((a.direction - b.direction + 90.0) % 180.0 - 90.0)
    return a.shape != b.shape or (a.shape == "slit" and turned > _TURN)
