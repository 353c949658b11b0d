"""Fit: closes the drafted pieces with given leathers and judges what a maker would measure.

It takes the flat pieces as they are and shares no formula with drafting, so that each is the other's check.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from patternforge.fit.bulk import bulk_findings
from patternforge.fit.close import closed_wallet
from patternforge.fit.closures import closure_findings
from patternforge.fit.features import feature_findings
from patternforge.fit.findings import Finding, Verdict, at_least, at_most, is_worse
from patternforge.fit.finishing import finishing_findings
from patternforge.fit.folded import folded_findings, folded_findings_as_cut, folded_range_findings
from patternforge.fit.folds import fold_findings
from patternforge.fit.glued import glued_findings
from patternforge.fit.gusset_rooms import gusset_room_findings
from patternforge.fit.gussets import gusset_findings
from patternforge.fit.hidden import hidden_findings
from patternforge.fit.holes import crowding, hole_findings
from patternforge.fit.layout import Layout, layout
from patternforge.fit.letters import letter_findings
from patternforge.fit.loose import loose_findings
from patternforge.fit.order import order_findings
from patternforge.fit.other_side import other_side_findings
from patternforge.fit.pockets import pocket_findings
from patternforge.fit.stitches import stitch_findings
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import HoleShape

__all__ = ["AT_END", "fit", "fit_as_cut", "fit_as_cut_over_range", "fit_over_range", "worse_at_ends"]

AT_END = ", leather at its "
"""What stands between the place of a finding and the end of the leathers' thickness at which it was made."""


def fit(pattern: Pattern, leathers: Mapping[str, Leather] | None = None) -> tuple[Finding, ...]:
    """Every finding on a pattern cut from these leathers (by role; the design's own when not given)."""
    own = {leather.role: leather for leather in pattern.design.leathers}
    if pattern.folded:
        return folded_findings(pattern, pattern.folded, leathers or own)
    laid = layout(pattern, leathers or own)
    closed = closed_wallet(laid)
    return (
        *pocket_findings(laid),
        *loose_findings(laid),
        *hole_findings(laid),
        *stitch_findings(laid),
        *_crowding(laid),
        *fold_findings(laid, closed),
        *bulk_findings(laid, closed),
        *feature_findings(laid, closed),
        *closure_findings(laid),
        *other_side_findings(laid, closed),
        *order_findings(laid),
        *glued_findings(laid),
        *hidden_findings(laid, closed),
        *letter_findings(laid, closed),
        *finishing_findings(laid),
        *gusset_findings(laid),
        *gusset_room_findings(laid),
        *_trimmed(laid),
    )


def fit_as_cut(pattern: Pattern, leathers: Mapping[str, Leather]) -> tuple[Finding, ...]:
    """``fit`` for pieces that are cut already, or have their dies, made of these leathers (by role).

    It differs where leather gives: a drafted slit is to take its tab freely, through a cut one it may be pulled.
    """
    if pattern.folded:
        return folded_findings_as_cut(pattern, pattern.folded, leathers)
    return fit(pattern, leathers)


def fit_over_range(pattern: Pattern) -> tuple[Finding, ...]:
    """``fit`` for the leathers as drafted, and what is worse at the ends of their thickness, tolerance included."""
    findings = fit(pattern)
    return (*findings, *worse_at_ends(pattern, pattern.design.leathers, findings))


def fit_as_cut_over_range(pattern: Pattern, leathers: Sequence[Leather]) -> tuple[Finding, ...]:
    """``fit_as_cut`` for other leathers, and what is worse at the ends of their thickness, tolerance included."""
    findings = fit_as_cut(pattern, {leather.role: leather for leather in leathers})
    return (*findings, *worse_at_ends(pattern, leathers, findings))


def worse_at_ends(pattern: Pattern, leathers: Sequence[Leather], findings: Iterable[Finding]) -> Iterator[Finding]:
    """What is worse at the ends of these leathers' thickness, tolerance included, than ``findings`` say it is."""
    known = {(f.what, f.where): f.verdict for f in findings}
    for end, at_end in (("thinnest", _thinnest), ("thickest", _thickest)):
        taken = {leather.role: at_end(leather) for leather in leathers}
        if all(taken[leather.role].t == leather.t for leather in leathers):
            continue
        for found in _of_thickness(pattern, taken):
            if is_worse(found.verdict, known.get((found.what, found.where), Verdict.GOOD)):
                yield replace(found, where=f"{found.where}{AT_END}{end}")


def _of_thickness(pattern: Pattern, leathers: Mapping[str, Leather]) -> tuple[Finding, ...]:
    """What depends on how thick the leathers are."""
    if pattern.folded:
        return folded_range_findings(pattern, pattern.folded, leathers)
    laid = layout(pattern, leathers)
    closed = closed_wallet(laid)
    found = (*fold_findings(laid, closed), *bulk_findings(laid, closed))
    return (*found, *gusset_room_findings(laid), *finishing_findings(laid))


def _thinnest(leather: Leather) -> Leather:
    t = max(leather.thickness.low - leather.tolerance, 0.05)
    return replace(leather, thickness=Thickness(t, t), tolerance=0.0)


def _thickest(leather: Leather) -> Leather:
    t = leather.thickness.high + leather.tolerance
    return replace(leather, thickness=Thickness(t, t), tolerance=0.0)


def _crowding(laid: Layout) -> Iterator[Finding]:
    """Holes of different seams that come too near each other in one piece."""
    pitch = min((seam.stitching.pitch for seam in laid.pattern.seams), default=0.0)
    for piece in (p for p in laid.pattern.pieces if p.holes):
        nearest = crowding(piece.holes, within=0.6 * pitch)
        if nearest < 0.6 * pitch:
            limit = at_least(0.6 * pitch, 0.35 * pitch)
            yield Finding("nearest two holes", piece.name, nearest, limit, "end one seam a stitch sooner")


def _trimmed(laid: Layout) -> Iterator[Finding]:
    """Edges to be trimmed after gluing on pieces whose holes are cut before it."""
    cut = {s.name for s in laid.pattern.seams if s.stitching.hole.shape in (HoleShape.ROUND, HoleShape.SLIT)}
    for piece in laid.pattern.pieces:
        if piece.trims and any(hole.seam in cut for hole in piece.holes):
            most = max(amount for _, amount in piece.trims)
            yield Finding(
                "trimmed edge with holes cut beforehand",
                piece.name,
                most,
                at_most(0.0, math.inf),
                "trim to the holes, not to the edge, or mark the holes only",
            )
