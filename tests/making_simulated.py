"""A wallet made up step by step by someone who knows nothing of how the order was found.

Pieces are sheets, holes are places in them. What is attached stays where it lies. A needle gets through a hole when
no attached sheet lies over or under it that the seam does not pierce.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely

from patternforge.fit.making import MakingStep, Work
from patternforge.geometry.flatten import flattened
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.strip import StripPlacement

__all__ = ["covered_holes"]


def covered_holes(pattern: Pattern, steps: Sequence[MakingStep]) -> Iterator[tuple[str, str]]:
    """Each seam that is closed off when its turn comes, with the piece that covers it."""
    attached: list[set[str]] = []
    for step in steps:
        if step.work in (Work.SEW, Work.TURN, Work.LAY):
            whole = set(step.pieces)
            for group in [each for each in attached if each & whole]:
                attached.remove(group)
                whole |= group
            attached.append(whole)
            if step.work is Work.SEW:
                yield from ((step.seam, name) for name in sorted(whole) if _is_in_the_way(pattern, name, step.seam))


def _is_in_the_way(pattern: Pattern, name: str, seam: str) -> bool:
    piece = pattern.piece(name)
    names = {seam, *(each.name for each in pattern.seams if each.meets == seam)}
    pierced = [each for each in pattern.pieces if any(hole.seam in names for hole in each.holes)]
    if piece in pierced or isinstance(piece.placement, StripPlacement) or _is_held_away(piece, pierced, seam):
        return False
    sheet = _sheet(piece)
    for other in pierced:
        places = [other.placement.to_assembly(hole.at) for hole in other.holes if hole.seam in names]
        here = [piece.placement.to_piece(at) for at in places if _stands_over(pattern, piece, at.x)]
        if here and shapely.contains_xy(sheet, [p.x for p in here], [p.y for p in here]).any():
            return True
    return False


def _is_held_away(piece: Piece, pierced: Sequence[Piece], seam: str) -> bool:
    """A gusset that the seam pierces keeps what lies beyond its other edge out of the needle's way."""
    for strip in pierced:
        if isinstance(strip.placement, StripPlacement):
            outer, inner = strip.placement.rows
            if inner.seam == seam and piece.level < strip.level:
                return True
            if outer.seam == seam and piece.level > strip.level:
                return True
    return False


def _sheet(piece: Piece) -> shapely.Polygon:
    rings = [[(p.x, p.y) for p in flattened(path, 0.01)] for path in (piece.made, *piece.openings)]
    return shapely.Polygon(rings[0], rings[1:])


def _stands_over(pattern: Pattern, piece: Piece, x: float) -> bool:
    """Whether a piece covers the panel, or the fold, at that place across the wallet."""
    panels = [pattern.panels[i] for i in piece.placement.panels]
    far = 1000.0
    low = panels[0].x0 - (far if piece.placement.panels[0] == 0 else 0.0)
    high = panels[-1].x1 + (far if piece.placement.panels[-1] == len(pattern.panels) - 1 else 0.0)
    return low <= x <= high
