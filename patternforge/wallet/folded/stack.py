"""What lies between the flanks of each fold of a folded wallet, and the flat length the fold needs for it.

A flap lies flat on whatever is under it beside its fold; what it meets further off it rises to by bending. So what
counts is the highest stack within ``BESIDE`` mm of the fold, the rims of what lies there left out. Items slide to
and fro, so they count wherever the face they lie on is; and they do not bend, so what lies between the items of two
rooms holds them apart wherever it lies.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from patternforge.errors import DraftError, GeometryError
from patternforge.geometry.heaviest import heaviest
from patternforge.geometry.path import polygon
from patternforge.geometry.point import Point
from patternforge.geometry.regions import Region, region
from patternforge.geometry.transform import Transform
from patternforge.leather.fold import arc_length, inside_radius
from patternforge.leather.material import Leather
from patternforge.wallet.folded.closing import Closed
from patternforge.wallet.folded.faces import Face, Root, item_size
from patternforge.wallet.folded.spec import FoldedSpec, RoomSpec
from patternforge.wallet.spec import Design, Edge
from patternforge.wallet.stacks import held_term
from patternforge.wallet.sums import Sum, Term

__all__ = ["Bend", "Ply", "bend", "item_box", "plies"]

BESIDE = 15.0  # mm from a fold; common practice, no source
_RIM = 1.0  # mm of a face or an item, at its rim, that holds nothing apart; common practice, no source
_SLIVER = 0.1  # mm


@dataclass(frozen=True, slots=True)
class Ply:
    """One thickness of the closed wallet, a face or stiff items, and what it covers there."""

    name: str
    term: Term
    ground: Region
    stiff: bool = False


@dataclass(frozen=True, slots=True)
class Bend:
    """A fold as it must be: what lies in it, its inside radius, its flat length; mm."""

    gap: Sum
    radius: float
    length: float


def plies(design: Design, folded: FoldedSpec, planned: Mapping[str, Face], closed: Closed) -> tuple[Ply, ...]:
    """Every face and the items of every room, from the lowest up, as loaded.

    Items lie all over the first face of their room, on the side of the second.
    """
    from patternforge.wallet.folded.outline import Blank, face_outline

    blank = Blank(folded, planned, {})
    t = design.leather(folded.leather).t
    stack: list[Ply] = []
    for name in closed.order:
        try:
            outline = closed.plan[name].path(face_outline(blank, planned[name])).ccw()
            stack.append(Ply(name, Term(name, t, (f"leather {folded.leather}.thickness",)), region(outline)))
        except (DraftError, GeometryError) as fault:
            line = folded.face(name).line
            raise DraftError(f"{design.file}:{line}: face '{name}': {fault}") from fault
    for room in folded.rooms:
        at = [ply.name for ply in stack].index(room.between[0])
        above = closed.up_to(*room.between) > 0
        stack.insert(at + 1 if above else at, Ply(room.name, _items(design, room), stack[at].ground, stiff=True))
    return tuple(stack)


def item_box(design: Design, planned: Mapping[str, Face], room: RoomSpec, ease: float) -> tuple[Point, ...]:
    """The corners of an item pushed home, in the frame of the first face of its room, counter-clockwise.

    It rests half the ease off the edge opposite its opening, in the middle of the face.
    """
    face = planned[room.between[0]]
    width, height = item_size(design, room)
    rest = ease / 2
    left, bottom = (face.width.value - width) / 2, (face.height.value - height) / 2
    place = {
        Edge.TOP: (left, rest),
        Edge.BOTTOM: (left, face.height.value - rest - height),
        Edge.RIGHT: (rest, bottom),
        Edge.LEFT: (face.width.value - rest - width, bottom),
    }
    x, y = place[room.opening]
    return Point(x, y), Point(x + width, y), Point(x + width, y + height), Point(x, y + height)


def bend(root: Root, flap: str, stack: Sequence[Ply], plan: Transform, leather: Leather) -> Bend:
    """The fold a flap hangs by: angle x (radius + neutral x thickness) with half the gap for a radius, or as sharp as
    the leather bends."""
    gap = Sum(f"gap of {flap}", _highest(_between(stack, root.on, flap), _beside(root, plan)))
    radius = inside_radius(gap.value, leather.t, leather.min_radius)
    return Bend(gap, radius, arc_length(math.pi, radius, leather.t, leather.neutral))


def _items(design: Design, room: RoomSpec) -> Term:
    count = room.count * design.load.cards
    return held_term(design, room.content, count, (f"room {room.name}.count", "load.cards"))


def _between(stack: Sequence[Ply], one: str, other: str) -> Sequence[Ply]:
    names = [ply.name for ply in stack]
    a, b = sorted((names.index(one), names.index(other)))
    return stack[a + 1 : b]


def _beside(root: Root, plan: Transform) -> Region:
    """The strip beside a hinge that a closed flap lies over."""
    inwards = root.outward * -BESIDE
    corners = (root.start, root.end, root.end + inwards, root.start + inwards)
    return region(plan.path(polygon(corners)).ccw())


def _highest(between: Sequence[Ply], strip: Region) -> tuple[Term, ...]:
    """The thicknesses that stand highest within a strip, and highest between the outermost items of all."""
    stiff = [at for at, ply in enumerate(between) if ply.stiff and ply.term.value > 0]
    if len(stiff) < 2:
        return _terms(between, strip)
    low, high = stiff[0], stiff[-1]
    pinched = between[low].ground.common(between[high].ground).united(strip)
    outer = [ply for at, ply in enumerate(between) if not low < at < high]
    return (*_terms(outer, strip), *_terms(between[low + 1 : high], pinched))


def _terms(plies_here: Sequence[Ply], within: Region) -> tuple[Term, ...]:
    grounds = [ply.ground.shrunk(_RIM).common(within) for ply in plies_here]
    here = [(ply, ground) for ply, ground in zip(plies_here, grounds, strict=True) if not ground.is_empty]
    highest = heaviest([ground for _, ground in here], [ply.term.value for ply, _ in here], _SLIVER)
    return tuple(here[i][0].term for i in sorted(highest) if here[i][0].term.value > 0)
