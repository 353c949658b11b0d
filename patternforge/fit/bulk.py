"""How thick the wallet comes out: at its thickest, along each seam, at each spine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from patternforge.fit.close import ClosedWallet
from patternforge.fit.findings import Finding, at_most
from patternforge.fit.layout import Layout
from patternforge.fit.means import to_close_thinner
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Seam

__all__ = ["SeamStack", "bulk_findings", "seam_stacks"]


@dataclass(frozen=True, slots=True)
class SeamStack:
    """The thickest stack a seam sews through, mm, and where its hole lies on the wallet laid open."""

    seam: str
    thickness: float
    at: Point


def bulk_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Closed thickness as loaded, the thickest stack each seam sews through, the thickness over each spine."""
    limits = layout.pattern.design.limits
    remedy = to_close_thinner(layout.pattern) if closed.thickness > limits.closed_thickness else ""
    whole = at_most(limits.closed_thickness, 2 * limits.closed_thickness)
    yield Finding("thickness closed, as loaded", "whole wallet", closed.thickness, whole, remedy)
    for seam in seam_stacks(layout):
        stack = seam.thickness
        remedy = "skive the edges or use thinner leather inside" if stack > limits.seam_stack else ""
        sewn = at_most(limits.seam_stack, 1.5 * limits.seam_stack)
        yield Finding("thickest stack sewn through", seam.seam, stack, sewn, remedy)
    for fold, bends in zip(layout.pattern.folds, closed.bends, strict=True):
        if abs(fold.angle) != 180:
            continue
        outer = bends[-1]
        piece = layout.pattern.piece(outer.piece)
        outside = (1 - layout.leathers[piece.leather].neutral) * layout.bent_thickness(piece, fold)
        spine = 2 * (outer.fibre_radius + outside)
        yield Finding("thickness at the spine", f"fold {outer.fold}", spine, whole)


def seam_stacks(layout: Layout) -> tuple[SeamStack, ...]:
    """The thickest stack of every seam, in the order of the pattern; 0 for a seam that goes through nothing.

    Pieces count as skived, and with what is turned in over the hole; both sides of a seam sewn after folding count.
    """
    turned = {ply.name: ply for ply in layout.plies if ply.hollow}
    at: dict[tuple[str, int], float] = {}
    sewn_with = {seam.name: seam.meets or seam.name for seam in layout.pattern.seams}
    for piece in layout.pattern.pieces:
        t, over = layout.thickness(piece), turned.get(f"{piece.name} turned in")
        for hole, laid in zip(piece.holes, layout.holes[piece.name], strict=True):
            stack = piece.thickness_at(hole.at, t) + (over.thickness if over and over.holds(laid.at) else 0.0)
            key = sewn_with[hole.seam], hole.index
            at[key] = at.get(key, 0.0) + stack
    return tuple(_thickest(seam, at) for seam in layout.pattern.seams)


def _thickest(seam: Seam, at: Mapping[tuple[str, int], float]) -> SeamStack:
    stacks = [(at.get((seam.meets or seam.name, hole.index), 0.0), hole.at) for hole in seam.holes]
    thickness, place = max(stacks, key=lambda stack: stack[0], default=(0.0, Point(0.0, 0.0)))
    return SeamStack(seam.name, thickness, place)
