"""Hardware hidden between two layers: whether it is covered, and what it does to the closed wallet."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from patternforge.fit.close import ClosedWallet
from patternforge.fit.findings import Finding, at_least, at_most, reaches
from patternforge.fit.folds import closed_spans
from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.point import Point
from patternforge.leather.closing import Placed
from patternforge.leather.hardware import Setting
from patternforge.leather.material import MadeOf
from patternforge.wallet.pattern import FittingHole, Piece
from patternforge.wallet.spec import Fitting, Side

__all__ = ["hidden_findings"]

_RIM = 1.0  # mm of cover beyond the rim of what it hides; common practice, no source
_HOLDS = 2.0  # mm through which a small magnet still holds; common practice, no source
_PROUD = 2.0  # mm that hidden hardware may lift a closed wallet above its thickest place; common practice, no source
_MEET, _MEET_AT_ALL = 0.3, 1.0  # mm that its halves may be drawn apart by that

_Spans = Mapping[int, tuple[float, float]]


@dataclass(frozen=True, slots=True)
class _Half:
    """One half of covered hardware: the piece it lies behind, its place there and on the assembly, its panel."""

    fitting: Fitting
    piece: Piece
    hole: FittingHole
    at: Point
    panel: int

    @property
    def behind(self) -> int:
        """The way from its piece to it, in the order of plies: -1 outwards, 1 inwards."""
        return -1 if self.piece.showing is Side.INSIDE else 1

    @property
    def order(self) -> float:
        """Its place among the plies: next to the leather, before anything that lies loose there."""
        return self.piece.level + 0.25 * self.behind


def hidden_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """The cover of every half, and for each two that meet what lies between them and how far they stand proud."""
    found: dict[str, list[_Half]] = {}
    for half in _halves(layout):
        found.setdefault(half.fitting.name, []).append(half)
        yield from _covered(layout, half)
    for pair in found.values():
        if len(pair) == 2:
            yield from _met(layout, closed, pair[0], pair[1])


def _halves(layout: Layout) -> Iterator[_Half]:
    declared = {f.name: f for f in layout.pattern.design.fittings if f.setting is Setting.COVERED}
    panels = layout.pattern.panels
    for piece in layout.pattern.pieces:
        for hole in piece.fittings:
            if hole.fitting in declared:
                at = piece.placement.to_assembly(hole.at)
                panel = next(i for i in piece.placement.panels if panels[i].x0 <= at.x <= panels[i].x1)
                yield _Half(declared[hole.fitting], piece, hole, at, panel)


def _stands(ply: Ply, panel: int, at: Point) -> bool:
    """Whether a ply lies at a point of a panel."""
    if panel not in ply.panels:
        return False
    return ply.holds(at)


def _covered(layout: Layout, half: _Half) -> Iterator[Finding]:
    """How far the piece behind reaches beyond it, and whatever lies loose with it under that piece."""
    where = f"{half.fitting.name} behind {half.piece.name}, {layout.pattern.panels[half.panel].name}"
    behind = [
        ply
        for ply in sorted(layout.plies, key=lambda ply: half.behind * ply.order)
        if half.behind * (ply.order - half.order) > 0 and not ply.hollow and _stands(ply, half.panel, half.at)
    ]
    at = next((i for i, ply in enumerate(behind) if ply.of and _is_opaque(layout, ply.name)), None)
    if at is None:
        remedy = "lay another layer behind it, or it is seen and falls out"
        yield Finding("cover beyond hidden hardware", where, -half.hole.reach, at_least(_RIM, 0.0), remedy)
        return
    beyond = _beyond(layout.pattern.piece(behind[at].name), half)
    remedy = "" if reaches(beyond, _RIM) else f"let {behind[at].name} reach further round it, or move it in"
    yield Finding("cover beyond hidden hardware", where, beyond, at_least(_RIM, 0.0), remedy)
    for ply in behind[:at]:
        remedy = "line the pocket there, or it lies bare beside what the pocket holds"
        yield Finding(f"hidden hardware beside {ply.name}", where, ply.thickness, at_most(0.0, math.inf), remedy)


def _is_opaque(layout: Layout, piece: str) -> bool:
    return layout.leathers[layout.pattern.piece(piece).leather].made_of is not MadeOf.FILM


def _beyond(cover: Piece, half: _Half) -> float:
    at = cover.placement.to_piece(half.at)
    holes = [-path.distance_to(at) if path.contains(at) else path.distance_to(at) for path in cover.openings]
    return min([cover.made.distance_to(at), *holes]) - half.hole.reach


def _met(layout: Layout, closed: ClosedWallet, first: _Half, second: _Half) -> Iterator[Finding]:
    stack = next((s for s in (closed.order.stack, *closed.order.open_groups) if _holds_both(s, first, second)), ())
    if not stack:
        return
    spans = closed_spans(layout, closed)
    rows = list(_column(layout, spans, stack, first, second))
    low, high = (rows.index(0.0), len(rows) - 1 - rows[::-1].index(0.0))
    name, thickness = first.fitting.name, first.fitting.thickness
    between = sum(rows[low:high])
    holds = at_most(_HOLDS, math.inf)
    remedy = "" if holds.good.holds(between) else "thinner layers between them or stronger magnets: try them first"
    yield Finding("what lies between hidden halves, closed", name, between, holds, remedy)
    proud = max(sum(rows) + 2 * thickness - closed.thickness, 0.0)
    limit = at_most(_PROUD, math.inf)
    remedy = "" if limit.good.holds(proud) else "thinner magnets, or move them to where the wallet is thinner"
    yield Finding("hidden hardware stands proud, closed", name, proud, limit, remedy)
    yield _drawn(name, proud, min(_to_fold(layout, first), _to_fold(layout, second)))


def _holds_both(stack: tuple[Placed, ...], first: _Half, second: _Half) -> bool:
    return {first.panel, second.panel} <= {placed.panel for placed in stack}


def _column(layout: Layout, spans: _Spans, stack: tuple[Placed, ...], first: _Half, second: _Half) -> Iterator[float]:
    """Thicknesses over the place where the halves meet, bottom to top; 0 stands for each of the halves."""
    panels = layout.pattern.panels
    left, right = spans[first.panel]
    u = left + (first.at.x - panels[first.panel].x0) * (1 if right > left else -1)
    for placed in stack:
        left, right = spans[placed.panel]
        x = panels[placed.panel].x0 + (u - left) * (1 if right > left else -1)
        at = Point(x, first.at.y)
        plies = (ply for ply in layout.plies if _stands(ply, placed.panel, at))
        here = [(ply.order, ply.thickness_at(at.x, at.y)) for ply in plies]
        here += [(half.order, 0.0) for half in (first, second) if half.panel == placed.panel]
        yield from (thickness for _, thickness in sorted(here, reverse=placed.turned))


def _to_fold(layout: Layout, half: _Half) -> float:
    """From a half to the nearest fold of its panel, mm."""
    panel, last = layout.pattern.panels[half.panel], len(layout.pattern.panels) - 1
    rooms = [half.at.x - panel.x0] if half.panel > 0 else []
    rooms += [panel.x1 - half.at.x] if half.panel < last else []
    return min(rooms, default=math.inf)


def _drawn(name: str, proud: float, away: float) -> Finding:
    """How much leather it takes to rise over the halves on the way from the fold: the long side of a triangle."""
    lost = math.hypot(away, proud) - away if math.isfinite(away) else 0.0
    remedy = "" if lost <= _MEET else "thinner magnets, or further from the fold: they draw the leather short"
    return Finding("drawn short by hidden hardware", name, lost, at_most(_MEET, _MEET_AT_ALL), remedy)
