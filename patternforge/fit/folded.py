"""Fit of wallets folded from one piece: the flat blank closed fold after fold and judged as a maker would."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from patternforge.fit.findings import Finding, at_least, at_most, reaches
from patternforge.fit.folded_close import ClosedFolded, Load, closed_folded
from patternforge.fit.folded_faces import face_findings, fold_length_findings, highest
from patternforge.fit.folded_parts import parts
from patternforge.fit.folded_rooms import room_findings
from patternforge.fit.folded_tabs import cut_tab_findings, fastened, range_tab_findings, tab_findings
from patternforge.fit.means import is_loaded
from patternforge.geometry.path import polygon
from patternforge.leather.material import Leather
from patternforge.wallet.folded.pattern import DraftedFolded
from patternforge.wallet.pattern import Pattern

__all__ = ["closed_as_loaded", "folded_findings", "folded_findings_as_cut", "folded_range_findings"]


def folded_findings(pattern: Pattern, folded: DraftedFolded, leathers: Mapping[str, Leather]) -> tuple[Finding, ...]:
    """Every finding on a folded wallet cut from these leathers (by role)."""
    wallet = closed_as_loaded(pattern, folded, leathers)
    tabs = tab_findings(wallet, fastened(wallet, folded.tabs, pattern.pieces[0]))
    return _all_findings(pattern, folded, wallet, tabs)


def folded_findings_as_cut(
    pattern: Pattern, folded: DraftedFolded, leathers: Mapping[str, Leather]
) -> tuple[Finding, ...]:
    """``folded_findings`` on a blank that is cut already, where other leather than the drafted one gives a little."""
    wallet = closed_as_loaded(pattern, folded, leathers)
    tabs = cut_tab_findings(wallet, fastened(wallet, folded.tabs, pattern.pieces[0]))
    return _all_findings(pattern, folded, wallet, tabs)


def _all_findings(
    pattern: Pattern, folded: DraftedFolded, wallet: ClosedFolded, on_tabs: Iterable[Finding]
) -> tuple[Finding, ...]:
    return (
        *face_findings(wallet),
        *fold_length_findings(wallet),
        *on_tabs,
        *room_findings(wallet, folded.tabs),
        *_borders(pattern, folded),
        _thickness(wallet, pattern),
    )


def folded_range_findings(
    pattern: Pattern, folded: DraftedFolded, leathers: Mapping[str, Leather]
) -> tuple[Finding, ...]:
    """What other leathers than the drafted ones change for the worse: what closes, what meets, how thick it is."""
    wallet = closed_as_loaded(pattern, folded, leathers)
    slits = fastened(wallet, folded.tabs, pattern.pieces[0])
    return (*face_findings(wallet), *range_tab_findings(slits), _thickness(wallet, pattern))


def closed_as_loaded(pattern: Pattern, folded: DraftedFolded, leathers: Mapping[str, Leather]) -> ClosedFolded:
    """The wallet cut from these leathers (by role), closed on what the design loads it with."""
    items = {content.name: content.item for content in pattern.design.contents}
    share = pattern.design.load.cards
    loads = tuple(
        Load(
            room,
            *room.between,
            polygon(room.box),
            room.count * share * items[room.content].thickness,
        )
        for room in folded.rooms
    )
    return closed_folded(parts(pattern, folded), leathers[pattern.pieces[0].leather], loads)


def _borders(pattern: Pattern, folded: DraftedFolded) -> Iterator[Finding]:
    """The least leather round every opening but the slits: to the edges of the blank."""
    declared = pattern.design.folded
    piece = pattern.pieces[0]
    specs = [opening for face in declared.faces for opening in face.openings] if declared else []
    for spec, cut in zip(specs, piece.openings[len(folded.tabs) :], strict=True):
        border = min(piece.outline.distance_to(s.point_at(s.length / 2)) for s in cut.segments)
        border = min(border, *(piece.outline.distance_to(s.start) for s in cut.segments))
        remedy = "" if reaches(border, spec.border) else "make the opening smaller or move it in"
        limit = at_least(spec.border, spec.border / 2)
        yield Finding("border round an opening", spec.name, border, limit, remedy)


def _thickness(wallet: ClosedFolded, pattern: Pattern) -> Finding:
    thickness = highest(wallet)
    limit = pattern.design.limits.closed_thickness
    fewer = "fewer items, " if is_loaded(pattern) else ""
    remedy = f"thinner leather, {fewer}or less that overlaps" if thickness > limit else ""
    return Finding("thickness closed, as loaded", "whole wallet", thickness, at_most(limit, 2 * limit), remedy)
