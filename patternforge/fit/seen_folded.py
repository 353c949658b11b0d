"""What is seen of a finished wallet that is folded from one piece: laid open, and closed from both sides."""

from __future__ import annotations

from dataclasses import replace

from patternforge.fit.seen import Seen, SeenPart, Sheet, Shown, uncovered
from patternforge.geometry.path import polygon
from patternforge.geometry.regions import Region, region
from patternforge.geometry.transform import flipped_x
from patternforge.wallet.folded.pattern import DraftedFace, DraftedFolded, DraftedTab
from patternforge.wallet.pattern import Pattern

__all__ = ["closed_folded_seen", "open_folded_seen"]


def open_folded_seen(pattern: Pattern) -> Seen:
    """The blank seen from the inside, with both tangents of every fold."""
    piece = pattern.pieces[0]
    back = piece.placement.onto_piece.inverse()
    paths = tuple(back.path(path) for path in (piece.outline, *piece.openings))
    folds = tuple(back.path(line) for line in piece.fold_lines)
    return Seen("laid open, seen from the inside", (SeenPart(piece.name, Shown.LEATHER, paths),), folds)


def closed_folded_seen(pattern: Pattern, folded: DraftedFolded) -> tuple[Seen, Seen]:
    """The wallet closed, from above and turned over; bends left out, tabs pushed through their slits."""
    rising = sorted(folded.faces, key=lambda face: face.level)
    sheets = [Sheet(face.name, Shown.LEATHER, _closed(pattern, folded, face)) for face in rising]
    over = [replace(sheet, area=sheet.area.moved(flipped_x())) for sheet in reversed(sheets)]
    front, back = rising[-1].name, rising[0].name
    return (
        Seen(f"closed, '{front}' up", uncovered(sheets)),
        Seen(f"closed, '{back}' up", uncovered(over)),
    )


def _closed(pattern: Pattern, folded: DraftedFolded, face: DraftedFace) -> Region:
    area = _cut(pattern, region(face.outline))
    for tab in folded.tabs:
        if tab.face == face.name:
            area = area.without(_through(face, tab))
    return area.moved(face.closed)


def _cut(pattern: Pattern, area: Region) -> Region:
    """The area less what is cut out of it, slits and all."""
    piece = pattern.pieces[0]
    back = piece.placement.onto_piece.inverse()
    for opening in piece.openings:
        area = area.without(region(back.path(opening).ccw()))
    return area


def _through(face: DraftedFace, tab: DraftedTab) -> Region:
    """What of a face lies behind the face its tab goes through: all beyond the root of the tab."""
    a, b = tab.root
    out = (b - a).unit().perpendicular()
    # Behind the root the face is deeper than its tab is long: a step of that length and more tells them apart.
    if face.outline.contains((a + b) * 0.5 + out * (tab.length + 1.0)):
        out = -out
    beyond = out * (tab.length + 1.0)
    return region(polygon([a, b, b + beyond, a + beyond]).ccw())
