"""A folded wallet closed fold after fold: where every face comes to lie, what a fold needs, what is in its way.

A neutral fibre runs a half circle between its two flanks, so a fold takes up half the circumference whose diameter
is the distance of the fibres: what lies between, and the fibre's depth on either side. What leather the fold has
over lets its flap slide on by as much.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from patternforge.fit.folded_parts import Fold, Parts
from patternforge.geometry.heaviest import heaviest
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point
from patternforge.geometry.regions import Region, region
from patternforge.geometry.transform import Transform, identity, translation
from patternforge.leather.material import Leather
from patternforge.wallet.folded.pattern import DraftedRoom

__all__ = ["Blocked", "ClosedFold", "ClosedFolded", "Load", "State", "closed_folded"]

_BESIDE = 15.0  # mm beside a fold that what lies there holds its flap up; common practice, no source
_RIM = 1.0  # mm at the rim of a face or an item that holds nothing up; common practice, no source
_TOUCH = 0.5  # mm that two faces may overlap before one is in the other's way
_SLIVER = 0.1  # mm
_FAR = 2000.0  # mm; larger than any blank


@dataclass(frozen=True, slots=True)
class Load:
    """The items of a room: the face they lie on, the face over them, their outline in the blank, how thick in all."""

    room: DraftedRoom
    on: str
    under: str
    outline: Path
    thickness: float


@dataclass(frozen=True, slots=True)
class _Ply:
    """A face or the items of a room where they lie: level, outline, thickness."""

    level: float
    ground: Path
    thickness: float


@dataclass(frozen=True, slots=True)
class State:
    """The wallet after some folds: from the blank to where each face lies, faces turned over, levels from below."""

    plan: Mapping[str, Transform]
    turned: frozenset[str]
    level: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Blocked:
    """A face that is in the way of another that a fold moves, and by how much they overlap, mm2."""

    moved: str
    standing: str
    area: float


@dataclass(frozen=True, slots=True)
class ClosedFold:
    """A fold closed: what lies between its flanks, the length it needs, the smallest gap it can close to; mm."""

    fold: Fold
    gap: float
    needs: float
    tightest: float
    blocked: tuple[Blocked, ...]


@dataclass(frozen=True, slots=True)
class ClosedFolded:
    """All folds in order and the wallet before the first of them and after each."""

    parts: Parts
    leather: Leather
    loads: tuple[Load, ...]
    folds: tuple[ClosedFold, ...]
    states: tuple[State, ...]

    @property
    def end(self) -> State:
        """The closed wallet."""
        return self.states[-1]

    def ground(self, face: str, state: State | None = None) -> Path:
        """The outline of a face where it lies, in the closed wallet or another state of it."""
        return (state or self.end).plan[face].path(self.parts.faces[face]).ccw()

    def load_ground(self, load: Load, state: State | None = None) -> Path:
        """The outline of the items of a room where they lie."""
        return (state or self.end).plan[load.on].path(load.outline).ccw()

    def load_level(self, load: Load) -> float:
        """The level of the items of a room: next to the face they lie on, on the side of the one over them."""
        here, there = self.end.level[load.on], self.end.level[load.under]
        return here + math.copysign(0.5, there - here)


def closed_folded(parts: Parts, leather: Leather, loads: tuple[Load, ...]) -> ClosedFolded:
    """The wallet folded in its order from this leather and loaded so."""
    states = [State(dict.fromkeys(parts.faces, identity()), frozenset(), dict.fromkeys(parts.faces, 0))]
    for fold in parts.folds:
        states.append(_levelled(states[-1], parts, fold))
    levels = ClosedFolded(parts, leather, loads, (), tuple(states))
    done: list[ClosedFold] = []
    for number, fold in enumerate(parts.folds):
        before = states[number]
        closed = _closed_fold(levels, fold, before)
        done.append(closed)
        for later in range(number + 1, len(states)):
            plan = _moved(parts, fold, before, closed.needs)
            states[later] = State(plan, states[later].turned, states[later].level)
    return ClosedFolded(parts, leather, loads, tuple(done), tuple(states))


def _levelled(before: State, parts: Parts, fold: Fold) -> State:
    """Which faces are turned over and on which level each lies once a fold is closed; places are as before."""
    moved = parts.hung_on(fold.face)
    still = [level for face, level in before.level.items() if face not in moved]
    own = [before.level[face] for face in moved]
    level = dict(before.level)
    for face in moved:
        if _is_upward(before, fold):
            level[face] = max(still) + 1 + max(own) - before.level[face]
        else:
            level[face] = min(still) - 1 + min(own) - before.level[face]
    return State(before.plan, before.turned ^ moved, level)


def _is_upward(state: State, fold: Fold) -> bool:
    """Whether the flap swings up: inwards from a face that lies inside up, or outwards from one that does not."""
    return (fold.angle > 0) is not (fold.on in state.turned)


def _moved(parts: Parts, fold: Fold, before: State, length: float) -> dict[str, Transform]:
    """Where every face lies once a fold that takes up ``length`` mm is closed."""
    moved, turn = parts.hung_on(fold.face), _turned_over(fold, before.plan[fold.on], length)
    return {face: plan.then(turn) if face in moved else plan for face, plan in before.plan.items()}


def _turned_over(fold: Fold, plan: Transform, length: float) -> Transform:
    """Draws the flap to its fold by the length that the bend takes up, then turns it over about the fold."""
    inward = plan.direction(fold.inward)
    at = plan.point(fold.near.start)
    shift = translation(inward.x * length, inward.y * length)
    # The mirror in the line through ``at`` across ``inward``: p - 2 ((p - at) . inward) inward.
    x, y = inward.x, inward.y
    d = 2 * at.dot(inward)
    return shift.then(Transform(1 - 2 * x * x, -2 * x * y, -2 * x * y, 1 - 2 * y * y, d * x, d * y))


def _closed_fold(wallet: ClosedFolded, fold: Fold, before: State) -> ClosedFold:
    gap = _between(wallet, fold, before)
    leather = wallet.leather
    tightest = 2 * leather.min_radius * leather.t
    apart = max(gap, tightest) + 2 * leather.neutral * leather.t
    return ClosedFold(fold, gap, math.pi * apart / 2, tightest, tuple(_blocks(wallet.parts, fold, before)))


def _between(wallet: ClosedFolded, fold: Fold, before: State) -> float:
    """What holds the flanks of a fold apart, mm: the highest stack beside it, more where stiff items are pressed on.

    Items may slide all over the face they lie on. Leather that lies between the items nearest to either flank holds
    them apart wherever it lies.
    """
    placed = State(_moved(wallet.parts, fold, before, fold.has), before.turned, before.level)
    low, high = sorted((wallet.end.level[fold.on], wallet.end.level[fold.face]))
    plies = [
        _Ply(z, wallet.ground(f, placed), wallet.leather.t) for f, z in wallet.end.level.items() if low < z < high
    ]
    items = [
        _Ply(wallet.load_level(load), wallet.ground(load.on, placed), load.thickness)
        for load in wallet.loads
        if load.thickness > 0 and low < wallet.load_level(load) < high
    ]
    strip = _strip(fold, before.plan[fold.on])
    if len(items) < 2:
        return _stack([*plies, *items], strip)
    first, last = min(items, key=lambda ply: ply.level), max(items, key=lambda ply: ply.level)
    inner = [ply for ply in (*plies, *items) if first.level < ply.level < last.level]
    outer = [ply for ply in (*plies, *items) if ply not in inner]
    return _stack(outer, strip) + _stack(inner, region(first.ground).common(region(last.ground)).united(strip))


def _stack(plies: Sequence[_Ply], within: Region) -> float:
    """The highest stack of some plies over any place within a region, their rims left out, mm."""
    grounds = [region(ply.ground).shrunk(_RIM).common(within) for ply in plies]
    some = [(g, ply.thickness) for g, ply in zip(grounds, plies, strict=True) if not g.is_empty]
    highest = heaviest([ground for ground, _ in some], [t for _, t in some], _SLIVER)
    return sum(some[i][1] for i in sorted(highest))


def _strip(fold: Fold, plan: Transform) -> Region:
    a, b, inward = plan.point(fold.near.start), plan.point(fold.near.end), plan.direction(fold.inward) * _BESIDE
    return region(polygon((a, b, b + inward, a + inward)).ccw())


def _blocks(parts: Parts, fold: Fold, before: State) -> list[Blocked]:
    """Faces that a flap would have to pass through as it swings over.

    On the flap's own side of the fold what lies before it in its swing stops it; beyond the fold, what of it
    reaches over there swings the other way.
    """
    moved = parts.hung_on(fold.face)
    ahead = 1 if _is_upward(before, fold) else -1
    own, beyond = _halves(fold, before.plan[fold.on])
    found = []
    for face in sorted(moved):
        for other in sorted(parts.faces.keys() - moved):
            way = before.level[other] - before.level[face]
            if way:
                side = own if way * ahead > 0 else beyond
                area = _overlap(parts, before, face, other, side)
                if area > 0:
                    found.append(Blocked(face, other, area))
    return found


def _halves(fold: Fold, plan: Transform) -> tuple[Region, Region]:
    """The plane on the flap's side of a fold and beyond."""
    at, inward = plan.point(fold.near.start), plan.direction(fold.inward)
    return _half(at, inward * -1.0), _half(at, inward)


def _half(at: Point, way: Point) -> Region:
    along, out = way.perpendicular() * _FAR, way * _FAR
    return region(polygon((at - along, at + along, at + along + out, at - along + out)).ccw())


def _overlap(parts: Parts, state: State, face: str, other: str, side: Region) -> float:
    here, there = (_leather(parts, state, name) for name in (face, other))
    common = here.common(there.shrunk(_TOUCH)).common(side)
    return 0.0 if common.shrunk(_TOUCH / 2).is_empty else common.area


def _leather(parts: Parts, state: State, face: str) -> Region:
    """A face where it lies, with the fold it hangs by as long as that is open."""
    plan = state.plan[face]
    ground = region(plan.path(parts.faces[face]).ccw())
    for fold in parts.folds:
        if fold.face == face and not _is_closed(state, fold):
            ground = ground.united(region(plan.path(fold.ground).ccw()))
    return ground


def _is_closed(state: State, fold: Fold) -> bool:
    return state.level[fold.face] != state.level[fold.on]
