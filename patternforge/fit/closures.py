"""Flaps and straps that close with hardware: whether the halves still meet when all is full and when all is empty.

The leather from one half to the other is as long as it was drafted; what it needs grows with what it goes round. What
lies loose, keys or a pad, stays in; notes and cards come and go.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from patternforge.fit.close import Bend, closed_wallet
from patternforge.fit.findings import Finding, Limit, at_most
from patternforge.fit.layout import Layout, layout
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import Load

__all__ = ["closure_findings"]

_GIVES, _STRAINS = 4.0, 8.0  # mm that leather and contents give when the halves are pulled together
_LIES, _HANGS = 10.0, 20.0  # mm of leather too much that a closed flap takes up; all common practice, no source


def closure_findings(layout: Layout) -> Iterator[Finding]:
    """What the way between the halves lacks when all is full and what it has too much when all is empty, mm."""
    closing = {name: halves for name, halves in _halves(layout).items() if len(halves) == 2}
    if not closing:
        return
    loose = layout.pattern.design.load.loose
    full, empty = (_bends(layout, Load(share, share, loose)) for share in (1.0, 0.0))
    for name, halves in closing.items():
        ways = [_way(bends, halves, layout) for bends in (full, empty)]
        if ways[0] - ways[1] > 0.5:
            has = sum(bend.has for bend in _on_the_way(full, halves, layout))
            yield _told("leather lacking at the closure, full", name, ways[0] - has, at_most(_GIVES, _STRAINS))
            yield _told("leather to spare at the closure, empty", name, has - ways[1], at_most(_LIES, _HANGS))


def _told(what: str, where: str, measured: float, limit: Limit) -> Finding:
    remedy = "" if limit.good.holds(measured) else "draft for a load between full and empty, or let it hold less"
    return Finding(what, where, measured, limit, remedy)


def _bends(laid: Layout, load: Load) -> tuple[Bend, ...]:
    """Every bend of the wallet closed on that load."""
    pattern = laid.pattern
    loaded = replace(pattern, design=replace(pattern.design, load=load))
    return tuple(bend for fold in closed_wallet(layout(loaded, laid.leathers)).bends for bend in fold)


def _halves(laid: Layout) -> dict[str, list[tuple[Piece, int]]]:
    """The piece and the panel of every half of a fitting, by the fitting's name."""
    found: dict[str, list[tuple[Piece, int]]] = {}
    for piece in laid.pattern.pieces:
        for half in piece.fittings:
            panel = _panel(laid, piece.placement.to_assembly(half.at))
            found.setdefault(half.fitting, []).append((piece, panel))
    return found


def _panel(laid: Layout, at: Point) -> int:
    return min(
        range(len(laid.pattern.panels)),
        key=lambda i: max(laid.pattern.panels[i].x0 - at.x, at.x - laid.pattern.panels[i].x1, 0.0),
    )


def _way(bends: tuple[Bend, ...], halves: list[tuple[Piece, int]], laid: Layout) -> float:
    return sum(bend.needs for bend in _on_the_way(bends, halves, laid))


def _on_the_way(bends: tuple[Bend, ...], halves: list[tuple[Piece, int]], laid: Layout) -> list[Bend]:
    """The bends between both halves: at each fold that of a piece that carries one of them."""
    panels = sorted(panel for _, panel in halves)
    carriers = {piece.name for piece, _ in halves}
    found = {bend.fold: bend for bend in bends if bend.piece in carriers and panels[0] < bend.fold <= panels[-1]}
    return [found[fold] for fold in sorted(found)]
