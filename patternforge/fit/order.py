"""In which order a wallet can be sewn: no seam may wait until a piece it does not go through covers its holes.

Sewing a seam joins all the pieces it goes through; what glue alone holds is joined before any seam is sewn. A seam
can be sewn as long as no piece that covers one of its holes without being sewn by it is joined to its own pieces, for
then the needle cannot pass. What is joined stays joined, so a seam that can be sewn at the very end can wait until
then without harm: the order is found from its end.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from patternforge.fit.findings import Finding, at_most
from patternforge.fit.glued import glued_pieces
from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.point import Bounds, Point, bounds_of
from patternforge.wallet.pattern import Seam
from patternforge.wallet.strip import StripPlacement

__all__ = ["Blocked", "SewingOrder", "SewingStep", "order_findings", "sewing_order"]

_CLOSED_OFF = "seams closed off before they can be sewn"

Cover = Mapping[str, frozenset[str]]
"""For each seam, the pieces that cover one of its holes without being sewn by it."""


@dataclass(frozen=True, slots=True)
class SewingStep:
    """One seam sewn: the groups of pieces it joins, each already joined before, from the outside in."""

    seam: str
    groups: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Blocked:
    """A seam that cannot be sewn whatever is sewn first, and a piece that would cover its holes."""

    seam: str
    piece: str


@dataclass(frozen=True, slots=True)
class SewingOrder:
    """The steps of sewing, first to last, and the seams for which no order can be found."""

    steps: tuple[SewingStep, ...]
    blocked: tuple[Blocked, ...]


@dataclass(frozen=True, slots=True)
class _Bench:
    """The pieces each seam goes through, those that cover it, and those that are glued on each other beforehand."""

    through: Mapping[str, tuple[str, ...]]
    covers: Cover
    glued: tuple[tuple[str, ...], ...]

    def blockers(self, seam: str, sewn: Iterable[str]) -> list[str]:
        """The pieces that cover the seam once all of ``sewn`` but itself are sewn, in alphabetical order."""
        joined = _joined((*self.glued, *(self.through[other] for other in sewn if other != seam)))
        own = set(self.through[seam])
        mine = {piece for group in joined for piece in group if set(group) & own} | own
        return sorted(self.covers[seam] & mine)


def sewing_order(layout: Layout) -> SewingOrder:
    """The order in which the seams are sewn; of seams that could change places, those that parts bring go first."""
    through, covers = dict[str, tuple[str, ...]](), dict[str, frozenset[str]]()
    for seam in layout.pattern.seams:
        # Both sides of a seam sewn after folding are sewn at once.
        name = seam.meets or seam.name
        through[name] = tuple(dict.fromkeys((*through.get(name, ()), *seam.pieces)))
        covers[name] = covers.get(name, frozenset()) | _covers(layout, seam)
    glued = tuple(glued_pieces(layout).items())
    bench = _Bench(through, covers, glued)
    left, order = _own_first(layout), list[str]()
    while left:
        last = next((name for name in reversed(left) if not bench.blockers(name, left)), None)
        if last is None:
            break
        left.remove(last)
        order.insert(0, last)
    blocked = tuple(Blocked(name, piece) for name in left for piece in bench.blockers(name, left)[:1])
    return SewingOrder(tuple(_steps(layout, order, through, glued)), blocked)


def order_findings(layout: Layout) -> Iterator[Finding]:
    """How many seams no order of sewing leaves open to the needle, and which piece closes each of them off."""
    blocked = sewing_order(layout).blocked
    if layout.pattern.seams and not blocked:
        yield Finding(_CLOSED_OFF, "whole wallet", 0, at_most(0, 0), unit="")
    for each in blocked:
        where = f"{each.seam}, covered by {each.piece}"
        remedy = f"let the seam go through {each.piece}, or make {each.piece} leave its holes free"
        yield Finding(_CLOSED_OFF, where, 1, at_most(0, 0), remedy, unit="")


def _own_first(layout: Layout) -> list[str]:
    """The seams with those that parts bring first, in the order of the pattern."""
    seams = [seam for seam in layout.pattern.seams if not seam.meets]
    return [seam.name for seam in seams if seam.inner] + [seam.name for seam in seams if not seam.inner]


def _covers(layout: Layout, seam: Seam) -> frozenset[str]:
    """The pieces that lie over a hole of the seam and are not sewn by it, nor held off by a gusset that is."""
    if not seam.holes:
        return frozenset()
    places = [hole.at for hole in seam.holes]
    box = bounds_of(places)
    low, high = _held_off(layout, seam)
    near = (ply for ply in layout.plies if not ply.hollow and low < ply.order < high)
    others = (ply for ply in near if ply.name not in seam.pieces and _touch(ply.bounds, box))
    return frozenset(ply.name for ply in others if any(_lies_over(ply, at) for at in places))


def _held_off(layout: Layout, seam: Seam) -> tuple[float, float]:
    """Between which places from the outside in a piece can lie on the seam: a gusset keeps its other wall away."""
    rows = [(p.level, p.placement.rows) for p in layout.pattern.pieces if isinstance(p.placement, StripPlacement)]
    low = max((level for level, (_, inner) in rows if inner.seam == seam.name), default=-math.inf)
    high = min((level for level, (outer, _) in rows if outer.seam == seam.name), default=math.inf)
    return low, high


def _touch(a: Bounds, b: Bounds) -> bool:
    return a.x0 <= b.x1 and b.x0 <= a.x1 and a.y0 <= b.y1 and b.y0 <= a.y1


def _lies_over(ply: Ply, at: Point) -> bool:
    """Whether a piece covers a place; contents do not, and an opening leaves it free."""
    if not ply.of or ply.interior is None or not ply.interior.holds(at):
        return False
    return not any(opening.contains(at) for opening in ply.openings)


def _joined(groups: Iterable[tuple[str, ...]]) -> list[tuple[str, ...]]:
    """Groups that share a piece made one, each without repeats."""
    found: list[tuple[str, ...]] = []
    for group in groups:
        touching = [each for each in found if set(each) & set(group)]
        rest = [each for each in found if each not in touching]
        found = [*rest, tuple(dict.fromkeys(piece for each in (*touching, group) for piece in each))]
    return found


def _steps(
    layout: Layout, order: Iterable[str], through: Mapping[str, tuple[str, ...]], glued: Iterable[tuple[str, ...]]
) -> Iterator[SewingStep]:
    pieces = [piece.name for piece in layout.pattern.pieces]
    place = {name: number for number, name in enumerate(pieces)}
    sewn = [*glued]
    for name in order:
        before = _joined(sewn)
        alone = [(piece,) for piece in through[name] if not any(piece in group for group in before)]
        groups = [group for group in before if set(group) & set(through[name])]
        numbers = sorted(sorted(place[piece] for piece in group) for group in (*groups, *alone))
        yield SewingStep(name, tuple(tuple(pieces[i] for i in group) for group in numbers))
        sewn.append(through[name])
