"""How the faces of a folded wallet close: in whose way, round what, how flush, held by what."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from patternforge.fit.findings import Finding, at_least, at_most, reaches, within
from patternforge.fit.folded_close import ClosedFold, ClosedFolded, Load
from patternforge.geometry.flatten import flattened
from patternforge.geometry.heaviest import heaviest
from patternforge.geometry.hull import hull
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.regions import region
from patternforge.geometry.segment import Segment

__all__ = ["face_findings", "fold_length_findings", "highest", "highest_stack"]

_FLAT = 0.01  # mm
_SLIVER = 0.1  # mm
_FLUSH, _SANDED = 0.5, 1.5  # mm a fold may be too long or short; common practice, no source
_HOLLOW = 2.0  # mm a stiff bend may hold its flanks apart; common practice, no source
_CLEAR = 1.0  # mm from a face folded in to the bend round it; common practice, no source
_PROUD, _FAR_OUT = 1.0, 3.0  # mm that a face may stand out over the base; common practice, no source


def face_findings(wallet: ClosedFolded) -> Iterator[Finding]:
    """What is in the way of every fold, faces folded in and clear of the bend, faces that stick out."""
    for closed in wallet.folds:
        yield _way(closed)
        yield from _folded_in(wallet, closed)
    yield _sticking_out(wallet)


def fold_length_findings(wallet: ClosedFolded) -> Iterator[Finding]:
    """Whether every fold is as long as what lies in it needs, and how hollow a stiff leather leaves it."""
    for closed in wallet.folds:
        over = closed.fold.has - closed.needs
        remedy = "" if abs(over) <= _FLUSH else "draft again for this leather, or change the load"
        yield Finding("fold longer than it needs", _named(closed), over, within(_FLUSH, _SANDED), remedy)
        hollow = closed.tightest - closed.gap
        if hollow > 0:
            limit = at_most(_HOLLOW, math.inf)
            told = "" if limit.good.holds(hollow) else "skive the fold, or allow a smaller min_radius"
            yield Finding("hollow left in the bend", _named(closed), hollow, limit, told)


def highest(wallet: ClosedFolded) -> float:
    """The thickness of the closed wallet where it is highest, as loaded, mm."""
    return sum(thickness for _, thickness in highest_stack(wallet))


def highest_stack(wallet: ClosedFolded) -> tuple[tuple[str | Load, float], ...]:
    """What lies over one another where the closed wallet is highest, as loaded: faces by name, loads, how thick."""
    plies: list[tuple[str | Load, Path, float]] = [
        *((face, wallet.ground(face), wallet.leather.t) for face in wallet.parts.faces),
        *((load, wallet.load_ground(load), load.thickness) for load in wallet.loads),
    ]
    some = heaviest([region(path) for _, path, _ in plies], [t for _, _, t in plies], _SLIVER)
    return tuple((plies[i][0], plies[i][2]) for i in sorted(some))


def _named(closed: ClosedFold) -> str:
    return f"fold {closed.fold.number}, {closed.fold.face}"


def _way(closed: ClosedFold) -> Finding:
    """What a flap would have to pass through, all together."""
    area = sum(blocked.area for blocked in closed.blocked)
    pairs = (f"'{blocked.moved}' runs into '{blocked.standing}'" for blocked in closed.blocked)
    remedy = f"{', '.join(pairs)}: change the order of closing, or make one of them smaller" if area else ""
    return Finding("leather in the way as it closes", _named(closed), area, at_most(0.0, 0.0), remedy, "mm2")


def _folded_in(wallet: ClosedFolded, closed: ClosedFold) -> Iterator[Finding]:
    """Faces between the flanks of a fold must end short of its bend."""
    fold = closed.fold
    low, high = sorted((wallet.end.level[fold.on], wallet.end.level[fold.face]))
    line = wallet.end.plan[fold.on].segment(fold.near)
    inward = wallet.end.plan[fold.on].direction(fold.inward)
    for face, level in sorted(wallet.end.level.items(), key=lambda pair: pair[1]):
        if not low < level < high:
            continue
        room = _short_of(wallet.ground(face), line, inward)
        if room is not None:
            remedy = "" if reaches(room, _CLEAR) else f"make '{face}' narrower there, or inset its hinge"
            where = f"{face} in {_named(closed)}"
            yield Finding("face folded in, clear of the bend", where, room, at_least(_CLEAR, 0.0), remedy)


def _short_of(ground: Path, line: Segment, inward: Point) -> float | None:
    """How far a face ends short of a fold, over the length of that fold; None where it lies beside it."""
    along = (line.end - line.start).unit()
    points = [(p - line.start) for p in flattened(ground, _FLAT)]
    places = [(p.dot(along), p.dot(inward)) for p in points]
    within = [y for x, y in places if -1e-9 <= x <= line.length + 1e-9]
    for (x0, y0), (x1, y1) in pairwise([*places, places[0]]):
        for x in (0.0, line.length):
            if (x0 - x) * (x1 - x) < 0:
                within.append(y0 + (y1 - y0) * (x - x0) / (x1 - x0))
    return min(within, default=None)


def _sticking_out(wallet: ClosedFolded) -> Finding:
    """How far any face stands out over the base, its notches and relief holes filled."""
    base = hull(flattened(wallet.ground(wallet.parts.base), _FLAT))
    worst, where = 0.0, wallet.parts.base
    for face in wallet.parts.faces:
        off = _beyond(wallet.ground(face), base)
        if off > worst + 1e-9:
            worst, where = off, face
    remedy = "" if worst <= _PROUD else f"make '{where}' shorter or the base larger"
    return Finding("face that stands out over the base", where, worst, at_most(_PROUD, _FAR_OUT), remedy)


def _beyond(ground: Path, base: Path) -> float:
    outside = (p for p in flattened(ground, _FLAT) if not base.contains(p))
    return max((base.distance_to(p) for p in outside), default=0.0)
