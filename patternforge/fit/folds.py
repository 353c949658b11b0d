"""What the folds do to the closed wallet: edges that miss each other, humps, bends too tight, panels folded in."""

from __future__ import annotations

import math
from collections.abc import Iterator

from patternforge.fit.close import Bend, ClosedWallet
from patternforge.fit.findings import Finding, Verdict, at_least, at_most
from patternforge.fit.layout import Layout
from patternforge.wallet.pattern import DraftedFold

__all__ = ["closed_spans", "fold_findings", "hump"]

_FLUSH, _SANDED = 0.5, 1.5  # mm of mismatch an edge hides, and can be sanded flush; common practice, no source


def fold_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Edge mismatch and hump of every layer at every fold, bends too tight, room for panels folded in."""
    for fold, bends in zip(layout.pattern.folds, closed.bends, strict=True):
        yield from _mismatches(fold, bends)
        yield from (_pinch(bend) for bend in bends if bend.room < bend.smallest - 1e-9)
    yield from _folded_in(layout, closed)
    yield from _outer_edges(layout)


def hump(length: float, chord: float) -> float:
    """Height in mm of the arc that a strip of ``length`` makes over a ``chord``; 0 when it is not longer.

    From sin(v) / v = chord / length with v half the arc's angle, found by bisection; height = R (1 - cos v).

    >>> round(hump(math.pi * 10, 20), 6)
    10.0
    """
    if length <= chord:
        return 0.0
    low, high = 0.0, math.pi
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if math.sin(middle) / middle > chord / length else (low, middle)
    return length / (2 * low) * (1 - math.cos(low)) if low else 0.0


def _mismatches(fold: DraftedFold, bends: tuple[Bend, ...]) -> Iterator[Finding]:
    """Each layer against the innermost: how far its edge stands off when closed, how high it humps laid open."""
    inner = bends[0]
    for bend in bends[1:]:
        off = (bend.has - bend.needs) - (inner.has - inner.needs)
        chosen = (fold.compensation - 1) * (bend.needs - inner.needs)
        where = f"{bend.piece} at fold {fold.number}"
        stray = at_most(abs(off - chosen), _FLUSH, _SANDED)
        verdict = Verdict.LOOK if stray is Verdict.GOOD and abs(off) > _FLUSH else stray
        yield Finding("edge mismatch, closed", where, off, _FLUSH, verdict, _mismatch_remedy(off, chosen))
        yield Finding("hump, laid open", where, hump(bend.has, inner.has), inner.has / 2, Verdict.GOOD)


def _mismatch_remedy(off: float, chosen: float) -> str:
    if abs(off) <= _FLUSH:
        return ""
    if abs(off - chosen) <= _FLUSH:
        return "follows from the fold's compensation: 1 closes true, 0 lies flat open"
    return "draft again for these leathers, or change the load"


def _pinch(bend: Bend) -> Finding:
    return Finding(
        "bend tighter than the leather's smallest radius",
        f"{bend.piece} at fold {bend.fold}",
        bend.room,
        bend.smallest,
        Verdict.LOOK,
        "the fold stays open a little when empty: skive it, or allow a smaller min_radius",
    )


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
                asked,
                at_least(room, min(asked, 1.0), 0.0),
                "" if room >= asked - 1e-3 else f"make panel '{name}' narrower or the one it lies on wider",
            )


def _outer_edges(layout: Layout) -> Iterator[Finding]:
    """Whether the outer edges of two panels that close on each other come to lie one over the other."""
    if len(layout.pattern.panels) == 2 and abs(layout.pattern.folds[0].angle) == 180:
        left, right = (panel.x1 - panel.x0 for panel in layout.pattern.panels)
        apart = abs(left - right)
        remedy = "make the panels equally wide, unless one is meant to stand out" if apart > _FLUSH else ""
        verdict = Verdict.LOOK if apart > _FLUSH else Verdict.GOOD
        yield Finding("outer edges apart, closed", "the two panels", apart, _FLUSH, verdict, remedy)


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


def _room(layout: Layout, spans: dict[int, tuple[float, float]], fold: DraftedFold, panel: int) -> float:
    """How far a panel ends short of a fold's tangents, towards the fold."""
    flank = fold.number - 1
    at = spans[flank][1]
    inwards = -1.0 if spans[flank][1] > spans[flank][0] else 1.0
    return min((end - at) * inwards for end in spans[panel])
