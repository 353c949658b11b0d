"""Windows and hardware on the pieces: borders, film behind windows, halves that meet, caps clear of stitches."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.fit.close import ClosedWallet
from patternforge.fit.findings import Finding, at_least, at_most, reaches
from patternforge.fit.folds import closed_point, closed_spans
from patternforge.fit.layout import Layout
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Piece

__all__ = ["feature_findings"]

_MEET = 0.3  # mm that the halves of a fitting may miss each other
_OVERLAP = 3.0  # mm a clear sheet must reach beyond its window; common practice, no source
_CAP_ROOM = 0.5  # mm between a cap's rim and a stitch hole's


def feature_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Every window's border and film, every fitting's meeting and room."""
    for piece in layout.pattern.pieces:
        yield from _windows(layout, piece)
        yield from _caps(layout, piece)
    yield from _meetings(layout, closed)


def _windows(layout: Layout, piece: Piece) -> Iterator[Finding]:
    openings = {part.name: part.openings for part in layout.pattern.design.parts}[piece.part]
    if not piece.openings or len(piece.openings) < len(openings):
        return
    for opening, path in zip(openings, piece.openings, strict=False):
        border = _apart(path, piece.made)
        remedy = "" if reaches(border, opening.border) else "make the opening smaller or move it in"
        limit, where = at_least(opening.border, opening.border / 2), f"{opening.name} in {piece.name}"
        yield Finding("border round an opening", where, border, limit, remedy)
        if opening.film:
            yield _film(layout, piece, path, f"{opening.name} film")


def _film(layout: Layout, piece: Piece, path: Path, name: str) -> Finding:
    """How far the clear sheet reaches beyond its window, at the least."""
    back = piece.placement.on_assembly([Point(x, y) for x, y, _ in path.vertices])
    sheet = next(ply.bounds for ply in layout.plies if ply.name == name)
    x = [p.x for p in back]
    y = [p.y for p in back]
    least = min(min(x) - sheet.x0, sheet.x1 - max(x), min(y) - sheet.y0, sheet.y1 - max(y))
    remedy = "" if least >= _OVERLAP else "make the film larger"
    return Finding("film beyond its window", name, least, at_least(_OVERLAP, 1.0), remedy)


def _apart(a: Path, b: Path) -> float:
    """Smallest distance between two outlines, one inside the other: at a corner of either or an arc's middle."""
    probes = [(a, b), (b, a)]
    return min(
        other.distance_to(p)
        for path, other in probes
        for s in path.segments
        for p in (s.start, s.point_at(s.length / 2))
    )


def _caps(layout: Layout, piece: Piece) -> Iterator[Finding]:
    """A cap must not sit on a stitch hole or hang over an edge."""
    for fitting in piece.fittings:
        where = f"{fitting.fitting} in {piece.name}"
        edge = piece.made.distance_to(fitting.at) - fitting.reach
        remedy = "" if edge >= 1.0 else "move the hardware in from the edge"
        yield Finding("cap clear of the edge", where, edge, at_least(1.0, 0.0), remedy)
        if piece.holes:
            near = min(hole.at.distance_to(fitting.at) for hole in piece.holes) - fitting.reach
            remedy = "" if near >= _CAP_ROOM else "move the hardware off the stitches"
            yield Finding("cap clear of stitches", where, near, at_least(_CAP_ROOM, 0.0), remedy)


def _meetings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """How far the two halves of each fitting lie apart once the wallet is closed."""
    spans = closed_spans(layout, closed)
    halves: dict[str, list[Point]] = {}
    for piece in layout.pattern.pieces:
        for fitting in piece.fittings:
            halves.setdefault(fitting.fitting, []).append(
                closed_point(layout, spans, piece.placement.to_assembly(fitting.at))
            )
    for name, places in halves.items():
        if len(places) == 2:
            apart = places[0].distance_to(places[1])
            limit = at_most(_MEET, 1.0)
            remedy = "" if limit.good.holds(apart) else "place the second half where the first comes to lie"
            yield Finding("halves meet within", name, apart, limit, remedy)
