"""Items in a folded wallet: whether they have room between the folds, stay in, are held, and can be got at."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.fit.findings import Finding, at_least, reaches
from patternforge.fit.folded_close import ClosedFolded, Load, State
from patternforge.fit.folded_parts import Fold
from patternforge.fit.folded_tabs import is_held
from patternforge.geometry.interior import Interior
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.folded.pattern import DraftedTab

__all__ = ["room_findings"]

_PLAY = 1.0  # mm an item may be moved to and fro; common practice, no source
_WALL = 8.0  # mm of fold that stops an item; common practice, no source
_GRIP = 8.0  # mm of an item that two fingers take hold of; common practice, no source
_STEP = 0.25  # mm


@dataclass(frozen=True, slots=True)
class _Wall:
    """A closed fold with an item between its flanks: its line, the way inwards."""

    line: Segment
    inward: Point


def room_findings(wallet: ClosedFolded, tabs: tuple[DraftedTab, ...]) -> Iterator[Finding]:
    """Play between the folds, walls on all sides but the opening, a way out and a grip, and what holds it closed."""
    for load in wallet.loads:
        box = [wallet.end.plan[load.on].point(p) for p in load.room.box]
        walls = [wall for fold in wallet.parts.folds if (wall := _wall(wallet, load, fold, wallet.end))]
        out = wallet.end.plan[load.on].direction(load.room.opening)
        yield from _plays(load, box, walls)
        yield from _sides(load, box, walls, out)
        yield _way_out(wallet, load, out)
        yield _held(wallet, load, tabs)


def _wall(wallet: ClosedFolded, load: Load, fold: Fold, state: State) -> _Wall | None:
    low, high = sorted((wallet.end.level[fold.on], wallet.end.level[fold.face]))
    if not low < wallet.load_level(load) < high:
        return None
    plan = state.plan[fold.on]
    return _Wall(plan.segment(fold.near), plan.direction(fold.inward))


def _plays(load: Load, box: list[Point], walls: list[_Wall]) -> Iterator[Finding]:
    """Across and along: how much further apart the folds are than the item is large; to one fold, its distance."""
    for name, u in (("across", (box[1] - box[0]).unit()), ("along", (box[3] - box[0]).unit())):
        rooms: dict[int, float] = {}
        for wall in walls:
            way = wall.inward.dot(u)
            if abs(way) > 0.5 and _faces(wall, box):
                sign = 1 if way > 0 else -1
                room = min((p - wall.line.start).dot(wall.inward) for p in box)
                rooms[sign] = min(room, rooms.get(sign, room))
        if rooms:
            play = sum(rooms.values())
            good = _PLAY if len(rooms) == 2 else 0.0
            remedy = "" if reaches(play, good) else f"make the face {good - play:.2f} mm larger"
            where = f"{load.room.content} in {load.room.name}, {name}"
            yield Finding("item to spare between folds", where, play, at_least(good, min(good, 0.3)), remedy)


def _faces(wall: _Wall, box: list[Point]) -> bool:
    return _stopped(wall, box) > 0


def _stopped(wall: _Wall, box: list[Point]) -> float:
    """The length of a fold that stands before an item, mm."""
    along = (wall.line.end - wall.line.start).unit()
    places = [(p - wall.line.start).dot(along) for p in box]
    return min(max(places), wall.line.length) - max(min(places), 0.0)


def _sides(load: Load, box: list[Point], walls: list[_Wall], out: Point) -> Iterator[Finding]:
    """Fold that stands before each side of an item but the one it goes in at."""
    for i in range(4):
        a, b = box[i], box[(i + 1) % 4]
        way = Point(b.y - a.y, a.x - b.x).unit()
        way = way if way.dot((a + b) / 2 - _centre(box)) > 0 else way * -1.0
        if way.dot(out) > 0.9:
            continue
        stops = [_stopped(wall, box) for wall in walls if wall.inward.dot(way) < -0.5]
        length = max(stops, default=0.0)
        remedy = "" if length >= _WALL else "the item slides out there: fold a flap over that side"
        where = f"{load.room.content} in {load.room.name}, {_side(way, out)}"
        yield Finding("fold that keeps an item in", where, length, at_least(_WALL, _WALL / 2), remedy)


def _centre(box: list[Point]) -> Point:
    return (box[0] + box[2]) / 2


def _side(way: Point, out: Point) -> str:
    if way.dot(out) < -0.9:
        return "at its floor"
    return "on one side" if way.cross(out) > 0 else "on the other side"


def _way_out(wallet: ClosedFolded, load: Load, out: Point) -> Finding:
    """How much of an item stands free to be gripped once the wallet is opened as far as its way out is free.

    The folds between its own two faces stay closed.
    """
    first = _closed_by(wallet, load)
    best, where = 0.0, f"{load.room.content} in {load.room.name}"
    for number in range(len(wallet.folds), first - 1, -1):
        state = wallet.states[number]
        if not _is_barred(wallet, load, state, number):
            best = max(best, _grip(wallet, load, state))
    remedy = "" if best >= _GRIP else "lower the face over it, cut a thumb notch, or let the item stand out"
    return Finding("item free to be gripped", where, best, at_least(_GRIP, _GRIP / 2), remedy)


def _closed_by(wallet: ClosedFolded, load: Load) -> int:
    """The number of folds closed when the faces of a room are both where they stay."""
    moved = [{load.on, load.under} & wallet.parts.hung_on(fold.face) for fold in wallet.parts.folds]
    return max((i for i, some in enumerate(moved, start=1) if len(some) == 1), default=0)


def _is_barred(wallet: ClosedFolded, load: Load, state: State, number: int) -> bool:
    """Whether a closed fold stands before the side of an item that it goes in at."""
    box = [state.plan[load.on].point(p) for p in load.room.box]
    way = state.plan[load.on].direction(load.room.opening)
    walls = (_wall(wallet, load, fold, state) for fold in wallet.parts.folds[:number])
    return any(_stopped(wall, box) > 0 and wall.inward.dot(way) < -0.5 for wall in walls if wall)


def _grip(wallet: ClosedFolded, load: Load, state: State) -> float:
    """From the edge of the item at its opening, along its middle: how deep nothing lies over it."""
    plan = state.plan[load.on]
    way = plan.direction(load.room.opening)
    box = [plan.point(p) for p in load.room.box]
    depth = max(p.dot(way) for p in box) - _centre(box).dot(way)
    here, there = state.level[load.on], state.level[load.under]
    over = [f for f, z in state.level.items() if (z - here) * (there - here) > 0]
    covers = [Interior(wallet.ground(face, state)) for face in over]
    edge = _centre(box) + way * depth
    free = 0.0
    while free < 2 * depth and not any(cover.holds(edge - way * (free + _STEP)) for cover in covers):
        free += _STEP
    return free


def _held(wallet: ClosedFolded, load: Load, tabs: tuple[DraftedTab, ...]) -> Finding:
    """Whether what closes a room is held closed."""
    closing = wallet.parts.folds[_closed_by(wallet, load) - 1].face
    held = is_held(wallet, tabs, closing)
    remedy = "" if held else f"give '{closing}' a tab, or fold a flap with a tab over it"
    return Finding("flap held closed", f"{closing} over {load.room.name}", int(held), at_least(1, 0), remedy, "")
