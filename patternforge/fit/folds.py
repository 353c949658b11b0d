"""What the folds do to the closed wallet: edges that miss each other, humps, bends too tight, panels folded in."""

from __future__ import annotations

import math
from collections.abc import Iterator

from patternforge.fit.close import Bend, ClosedWallet
from patternforge.fit.findings import Finding, Limit, Stretch, at_least, at_most, reaches
from patternforge.fit.layout import Layout
from patternforge.fit.means import is_loaded
from patternforge.geometry.band import half_angle
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import DraftedFold

__all__ = ["closed_point", "closed_spans", "fold_findings", "hump"]

_HOLLOW = 2.0  # mm a stiff bend may hold its panels apart; common practice, no source
_FLUSH, _SANDED = 0.5, 1.5  # mm of mismatch an edge hides, and can be sanded flush; common practice, no source
_SAME = 1e-6


def fold_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Edge mismatch and hump of every layer at every fold, bends too tight, room for panels folded in."""
    for fold, bends in zip(layout.pattern.folds, closed.bends, strict=True):
        yield from _mismatches(fold, bends, _again(layout))
        yield from (_pinch(bend) for bend in bends if bend.room < bend.smallest - 1e-9)
    yield from _corners(layout, closed)
    yield from _spines(layout, closed)
    yield from _folded_in(layout, closed)
    yield from _outer_edges(layout)


def hump(length: float, chord: float) -> float:
    """Height in mm of the arc that a strip of ``length`` makes over a ``chord``; 0 when it is not longer.

    Height = R (1 - cos v), v being half the arc's angle and R its radius.

    >>> round(hump(math.pi * 10, 20), 6)
    10.0
    """
    if length <= chord:
        return 0.0
    half = half_angle(chord, length)
    return length / (2 * half) * (1 - math.cos(half)) if half else 0.0


def _mismatches(fold: DraftedFold, bends: tuple[Bend, ...], again: str) -> Iterator[Finding]:
    """Each layer against the innermost: how far its edge stands off when closed, how high it humps laid open."""
    inner = bends[0]
    for bend in bends[1:]:
        off = (bend.has - bend.needs) - (inner.has - inner.needs)
        chosen = (fold.compensation - 1) * (bend.needs - inner.needs)
        where = f"{bend.piece} at fold {fold.number}"
        yield Finding("edge mismatch, closed", where, off, _mismatch(chosen), _mismatch_remedy(off, chosen, again))
        rise = hump(bend.has, inner.has)
        remedy = "" if rise <= inner.has else "less compensation lets it lie flatter open"
        yield Finding("hump, laid open", where, rise, at_most(inner.has, math.inf), remedy)


def _mismatch(chosen: float) -> Limit:
    """Flush is good; what the fold's compensation chose, and all between, is borne as far as it can be sanded."""
    flush = Stretch(-_FLUSH, _FLUSH)
    return Limit(flush, Stretch(min(chosen - _SANDED, flush.low), max(chosen + _SANDED, flush.high)))


def _mismatch_remedy(off: float, chosen: float, again: str) -> str:
    if abs(off) <= _FLUSH:
        return ""
    if abs(off - chosen) <= _FLUSH:
        return "follows from the fold's compensation: 1 closes true, 0 lies flat open"
    return again


def _again(layout: Layout) -> str:
    return f"draft again for these leathers{', or change the load' if is_loaded(layout.pattern) else ''}"


def _pinch(bend: Bend) -> Finding:
    """A layer too stiff to close on what lies inside it holds its panels that far apart."""
    apart = 2 * (bend.smallest - bend.room)
    limit = at_most(_HOLLOW, math.inf)
    remedy = "" if limit.good.holds(apart) else "skive the fold, or allow a smaller min_radius"
    return Finding("hollow left in the bend", f"{bend.piece} at fold {bend.fold}", apart, limit, remedy)


def _corners(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """At a fold that stays open, what lies on either flank must keep off what lies on the other.

    Two stacks of height s meet at s / tan(half the angle between the panels) from where their faces would cross.
    """
    spined = {number for spine in closed.order.spines for number in spine.folds}
    for fold, bends in zip(layout.pattern.folds, closed.bends, strict=True):
        if abs(fold.angle) == 180 or fold.number in spined:
            continue
        turn = math.radians(abs(fold.angle)) / 2
        inner = bends[0]
        stack = max(_loose_stack(layout, closed, panel) for panel in (fold.number - 1, fold.number))
        needs = stack * math.tan(turn)
        has = fold.relief + max(inner.fibre_radius, 0.0) * math.tan(turn)
        means = "more relief at this fold, a smaller angle or a thinner load"
        if not is_loaded(layout.pattern):
            means = "more relief at this fold or a smaller angle"
        remedy = "" if has >= needs else means
        where = f"fold {fold.number}, which stays open"
        yield Finding("pockets clear of each other", where, has, at_least(needs, needs / 2), remedy)


def _spines(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Whether what lies between the panels on either side of a spine has room between them.

    The innermost layer stands the spine's width and an inside radius at either corner apart.
    """
    for spine in closed.order.spines:
        first, last = closed.bends[spine.folds[0] - 1][0], closed.bends[spine.folds[-1] - 1][0]
        width = sum(layout.pattern.panels[p].x1 - layout.pattern.panels[p].x0 for p in spine.panels)
        has = width + max(first.room, first.smallest) + max(last.room, last.smallest)
        flanks = (spine.panels[0] - 1, spine.panels[-1] + 1)
        between = sum(closed.heights[placed.panel] for placed in spine.between)
        needs = sum(_loose_stack(layout, closed, panel) for panel in flanks) + between
        names = " and ".join(layout.pattern.panels[p].name for p in spine.panels)
        means = " or the load thinner" if is_loaded(layout.pattern) else ""
        remedy = "" if has >= needs else f"make the spine {needs - has:.2f} mm wider{means}"
        yield Finding("room at the spine", names, has, at_least(needs, needs - 1.0), remedy)


def _loose_stack(layout: Layout, closed: ClosedWallet, panel: int) -> float:
    """Height on a panel of all that does not cross its folds."""
    crossing = [p for p in layout.pattern.pieces if panel in p.placement.panels and len(p.placement.panels) > 1]
    return closed.heights[panel] - sum(layout.thickness(piece) for piece in crossing)


def _folded_in(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Panels between the flanks of a fold must end short of its bend."""
    spans = closed_spans(layout, closed)
    for fold, between in zip(layout.pattern.folds, closed.order.between, strict=True):
        for placed in between:
            room = _room(layout, spans, fold, placed.panel)
            name = layout.pattern.panels[placed.panel].name
            asked = layout.pattern.design.body.clearance
            yield Finding(
                "panel folded in, clear of the bend",
                f"{name} in fold {fold.number}",
                room,
                at_least(min(asked, 1.0), 0.0),
                "" if reaches(room, asked) else f"make panel '{name}' narrower or the one it lies on wider",
            )


def _outer_edges(layout: Layout) -> Iterator[Finding]:
    """Whether the outer edges of two panels that close on each other come to lie one over the other.

    A bare panel that closes on a longer one which is not is a flap, and ends where it is meant to.
    """
    if len(layout.pattern.panels) == 2 and abs(layout.pattern.folds[0].angle) == 180:
        left, right = (panel.x1 - panel.x0 for panel in layout.pattern.panels)
        shorter, longer = (0, 1) if left < right else (1, 0)
        if _is_bare(layout, shorter) and not _is_bare(layout, longer):
            return
        apart = abs(left - right)
        remedy = "make the panels equally wide, unless one is meant to stand out" if apart > _FLUSH else ""
        yield Finding("outer edges apart, closed", "the two panels", apart, at_most(_FLUSH, math.inf), remedy)


def _is_bare(layout: Layout, panel: int) -> bool:
    """Whether nothing lies on a panel but what crosses its fold."""
    return all(len(ply.panels) > 1 for ply in layout.plies if panel in ply.panels)


def closed_spans(layout: Layout, closed: ClosedWallet) -> dict[int, tuple[float, float]]:
    """Where each panel lies along its closed stack, bends counted as points: (left end, right end), mm."""
    spans: dict[int, tuple[float, float]] = {}
    for stack in (closed.order.stack, *closed.order.open_groups):
        at = 0.0
        for placed in sorted(stack, key=lambda placed: placed.panel):
            panel = layout.pattern.panels[placed.panel]
            end = at + (panel.x0 - panel.x1 if placed.turned else panel.x1 - panel.x0)
            spans[placed.panel] = (at, end)
            at = end
    return spans


def closed_point(layout: Layout, spans: dict[int, tuple[float, float]], at: Point) -> Point:
    """Where a point of the assembly comes to lie along the closed stack whose panels have these ``spans``."""
    panel = next(i for i, p in enumerate(layout.pattern.panels) if p.x0 - _SAME <= at.x <= p.x1 + _SAME)
    left, right = spans[panel]
    way = 1.0 if right > left else -1.0
    return Point(left + way * (at.x - layout.pattern.panels[panel].x0), at.y)


def _room(layout: Layout, spans: dict[int, tuple[float, float]], fold: DraftedFold, panel: int) -> float:
    """How far a panel ends short of a fold's tangents, towards the fold."""
    flank = fold.number - 1
    at = spans[flank][1]
    inwards = -1.0 if spans[flank][1] > spans[flank][0] else 1.0
    return min((end - at) * inwards for end in spans[panel])
