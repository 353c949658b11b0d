"""Tabs of a folded wallet and their slits as cut: whether they meet, fit each other, lie free, and what they hold."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from patternforge.fit.findings import FORGIVEN, Finding, Verdict, at_least, at_most, reaches
from patternforge.fit.folded_close import ClosedFolded
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.regions import overlap_area, region
from patternforge.geometry.segment import Segment
from patternforge.wallet.folded.pattern import DraftedTab
from patternforge.wallet.pattern import Piece

__all__ = ["Slit", "fastened", "is_held", "range_tab_findings", "tab_findings"]

_MEET = 0.3  # mm a tab's root may miss its slit
_GIVES = 1.0  # mm it may in another leather, or the tab be too thick, where leather gives; common practice, no source
_LOOSE, _WIDE = 1.5, 4.0  # mm a slit may be longer than its tab and one thickness; common practice, no source
_UNDER = 2.0  # mm of a face that must lie beyond a tab's end; common practice, no source
_BORDER = 5.0  # mm of leather from a slit to any edge of its face; common practice, no source


@dataclass(frozen=True, slots=True)
class Slit:
    """A tab and its slit as cut, where they lie closed: root, the slit's middle line and outline, the tab's tip."""

    tab: DraftedTab
    root: Segment
    axis: Segment
    tip: Point
    cut: Path


def fastened(wallet: ClosedFolded, tabs: Sequence[DraftedTab], piece: Piece) -> tuple[Slit, ...]:
    """Every tab and its slit where they lie in the closed wallet."""
    back = piece.placement.onto_piece.inverse()
    found = []
    for tab in tabs:
        own, into = wallet.end.plan[tab.face], wallet.end.plan[tab.into]
        cut = into.path(back.path(piece.openings[tab.opening]))
        u = (tab.root[1] - tab.root[0]).unit()
        tip = (tab.root[0] + tab.root[1]) / 2 + Point(u.y, -u.x) * tab.length
        root = Segment(own.point(tab.root[0]), own.point(tab.root[1]))
        found.append(Slit(tab, root, _middle_line(cut), own.point(tip), cut))
    return tuple(found)


def tab_findings(wallet: ClosedFolded, slits: Sequence[Slit]) -> Iterator[Finding]:
    """Every tab against its slit, and what lies between or beside the two."""
    for slit in slits:
        yield _meeting(slit, _MEET, _MEET)
        yield _length(wallet, slit)
        yield _border(wallet, slit)
        yield _between(wallet, slit)
        yield _tip(wallet, slit)


def cut_tab_findings(wallet: ClosedFolded, slits: Sequence[Slit]) -> Iterator[Finding]:
    """``tab_findings`` for a blank that is cut already, in any leather: where leather gives, a little is made up."""
    for slit in slits:
        yield _meeting(slit, _GIVES, 2 * _GIVES)
        yield _pulled_through(wallet, slit)
        yield _border(wallet, slit)
        yield _between(wallet, slit)
        yield _tip(wallet, slit)


def range_tab_findings(slits: Sequence[Slit]) -> Iterator[Finding]:
    """Whether tabs still find their slits in another leather than the one drafted for."""
    for slit in slits:
        yield _meeting(slit, _GIVES, 2 * _GIVES)


def is_held(wallet: ClosedFolded, tabs: Sequence[DraftedTab], face: str) -> bool:
    """Whether a flap cannot spring open: it carries a tab or a slit, or a face that does lies over it."""
    tied = {name for tab in tabs for name in (tab.face, tab.into)}
    fold = next(fold for fold in wallet.parts.folds if fold.face == face)
    way = wallet.end.level[face] - wallet.end.level[fold.on]
    over = (other for other in sorted(tied) if (wallet.end.level[other] - wallet.end.level[face]) * way > 0)
    own = region(wallet.ground(face))
    return face in tied or any(overlap_area(own, region(wallet.ground(other))) > 1.0 for other in over)


def _middle_line(cut: Path) -> Segment:
    """The middle line of a slit with round ends, its ends included."""
    straight = max((s for s in cut.segments if not s.is_arc), key=lambda s: s.length)
    half = (straight.end - straight.start).unit() * ((straight.length + _width(cut)) / 2)
    middle = _middle(cut)
    return Segment(middle - half, middle + half)


def _width(cut: Path) -> float:
    return max((s.chord for s in cut.segments if s.is_arc), default=0.0)


def _middle(cut: Path) -> Point:
    points = [s.start for s in cut.segments]
    return Point(sum(p.x for p in points) / len(points), sum(p.y for p in points) / len(points))


def _meeting(slit: Slit, good: float, tolerable: float) -> Finding:
    """How far a tab's root lies off the middle line of its slit at either end, or its middle to one side."""
    along = (slit.axis.end - slit.axis.start).unit()
    off = max(abs(along.cross(end - slit.axis.start)) for end in (slit.root.start, slit.root.end))
    aside = abs(along.dot(slit.root.point_at(slit.root.length / 2) - slit.axis.point_at(slit.axis.length / 2)))
    miss = max(off, aside)
    remedy = (
        "" if miss <= good else f"'{slit.tab.face}' does not come to lie as drafted: draft again for this leather"
    )
    return Finding("tab misses its slit by", slit.tab.name, miss, good, at_most(miss, good, tolerable), remedy)


def _length(wallet: ClosedFolded, slit: Slit) -> Finding:
    """What a slit is longer than its tab is wide and thick."""
    over = slit.axis.length - slit.root.length - wallet.leather.t
    verdict = Verdict.NO if not reaches(over, 0.0) else at_most(over, _LOOSE, _WIDE)
    short, long = "lengthen the slit: the tab would not go through", "shorten the slit: the tab would slip out"
    remedy = "" if verdict is Verdict.GOOD else short if over < 0 else long
    return Finding("slit longer than tab and thickness by", slit.tab.name, over, _LOOSE, verdict, remedy)


def _pulled_through(wallet: ClosedFolded, slit: Slit) -> Finding:
    """``_length`` where the slit is cut: a tab a little too thick for it goes through bowed across its width."""
    found = _length(wallet, slit)
    if -_GIVES <= found.measured < -FORGIVEN:
        return replace(found, verdict=Verdict.LOOK, remedy="try it: the tab has to be pulled through")
    return found


def _border(wallet: ClosedFolded, slit: Slit) -> Finding:
    """The least leather between a slit and an edge or fold of its face."""
    ground = wallet.ground(slit.tab.into)
    inside = all(ground.contains(s.start) for s in slit.cut.segments)
    least = min(ground.distance_to(s.start) for s in slit.cut.segments) if inside else 0.0
    remedy = "" if least >= _BORDER else f"move the tab, or make '{slit.tab.into}' larger there"
    verdict = at_least(least, _BORDER, _BORDER / 2)
    return Finding(
        "leather from slit to edge", f"{slit.tab.name} in {slit.tab.into}", least, _BORDER, verdict, remedy
    )


def _between(wallet: ClosedFolded, slit: Slit) -> Finding:
    """Faces and items between a tab and its slit, which it would have to go through too."""
    levels = wallet.end.level
    low, high = sorted((levels[slit.tab.face], levels[slit.tab.into]))
    middle = _middle(slit.cut)
    faces = [f for f in wallet.parts.faces if low < levels[f] < high and wallet.ground(f).contains(middle)]
    items = [load.room.name for load in wallet.loads if low < wallet.load_level(load) < high]
    items = [
        load.room.name for load in wallet.loads if load.room.name in items and _covers(wallet, load.room.name, middle)
    ]
    verdict = Verdict.NO if faces or items else Verdict.GOOD
    remedy = f"{', '.join((*faces, *items))} lies between: close it in another order" if faces or items else ""
    return Finding(
        "layers between a tab and its slit", slit.tab.name, len(faces) + len(items), 0, verdict, remedy, ""
    )


def _covers(wallet: ClosedFolded, room: str, at: Point) -> bool:
    return any(wallet.load_ground(load).contains(at) for load in wallet.loads if load.room.name == room)


def _tip(wallet: ClosedFolded, slit: Slit) -> Finding:
    """How far the end of a tab stays under the face it is tucked into."""
    ground = wallet.ground(slit.tab.into)
    depth = ground.distance_to(slit.tip) * (1 if ground.contains(slit.tip) else -1)
    remedy = "" if depth >= _UNDER else "shorten the tab, or turn it the other way: its end would show"
    return Finding(
        "tab's end inside the face it holds", slit.tab.name, depth, _UNDER, at_least(depth, _UNDER, 0.0), remedy
    )
