"""How thick the wallet comes out: at its thickest, along each seam, at each spine."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.fit.close import ClosedWallet
from patternforge.fit.findings import Finding, at_most
from patternforge.fit.layout import Layout

__all__ = ["bulk_findings"]


def bulk_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Closed thickness as loaded, the thickest stack each seam sews through, the thickness over each spine."""
    limits = layout.pattern.design.limits
    remedy = "thinner leather, fewer slots, or skive" if closed.thickness > limits.closed_thickness else ""
    verdict = at_most(closed.thickness, limits.closed_thickness, 2 * limits.closed_thickness)
    yield Finding(
        "thickness closed, as loaded", "whole wallet", closed.thickness, limits.closed_thickness, verdict, remedy
    )
    stacks = _seam_stacks(layout)
    for seam in layout.pattern.seams:
        stack = stacks.get(seam.name, 0.0)
        remedy = "skive the edges or use thinner leather inside" if stack > limits.seam_stack else ""
        verdict = at_most(stack, limits.seam_stack, 1.5 * limits.seam_stack)
        yield Finding("thickest stack sewn through", seam.name, stack, limits.seam_stack, verdict, remedy)
    for fold, bends in zip(layout.pattern.folds, closed.bends, strict=True):
        if abs(fold.angle) != 180:
            continue
        outer = bends[-1]
        leather = layout.leathers[layout.pattern.piece(outer.piece).leather]
        spine = 2 * (outer.fibre_radius + (1 - leather.neutral) * leather.t)
        limit = limits.closed_thickness
        yield Finding("thickness at the spine", f"fold {outer.fold}", spine, limit, at_most(spine, limit, 2 * limit))


def _seam_stacks(layout: Layout) -> dict[str, float]:
    """The thickest stack each seam sews through, by the seam's name."""
    at: dict[tuple[str, int], float] = {}
    for piece in layout.pattern.pieces:
        t = layout.thickness(piece)
        for hole in piece.holes:
            key = (hole.seam, hole.index)
            at[key] = at.get(key, 0.0) + t
    thickest: dict[str, float] = {}
    for (seam, _), stack in at.items():
        thickest[seam] = max(thickest.get(seam, 0.0), stack)
    return thickest
