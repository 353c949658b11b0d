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
    for seam in layout.pattern.seams:
        stack = _seam_stack(layout, seam.name)
        remedy = "skive the edges or use thinner leather inside" if stack > limits.seam_stack else ""
        verdict = at_most(stack, limits.seam_stack, 1.5 * limits.seam_stack)
        yield Finding("thickest stack sewn through", seam.name, stack, limits.seam_stack, verdict, remedy)
    for bends in closed.bends:
        outer = bends[-1]
        leather = layout.leathers[layout.pattern.piece(outer.piece).leather]
        spine = 2 * (outer.fibre_radius + (1 - leather.neutral) * leather.t)
        limit = limits.closed_thickness
        yield Finding("thickness at the spine", f"fold {outer.fold}", spine, limit, at_most(spine, limit, 2 * limit))


def _seam_stack(layout: Layout, seam: str) -> float:
    stacks: dict[int, float] = {}
    for piece in layout.pattern.pieces:
        t = layout.thickness(piece)
        for hole in piece.holes:
            if hole.seam == seam:
                stacks[hole.index] = stacks.get(hole.index, 0.0) + t
    return max(stacks.values(), default=0.0)
