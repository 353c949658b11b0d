"""Old over new as a picture at true size: the old edge dashed, the new unbroken, a grey band along what is new."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import wrap

from patternforge.comparison.distance import TOLERANCE, strays
from patternforge.comparison.made import MadeHole, MadePiece
from patternforge.comparison.pieces import PieceChange
from patternforge.comparison.sets import Comparison
from patternforge.comparison.telling import told
from patternforge.drawing.model import Area, Dot, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.drawing.stacked import room, stacked
from patternforge.errors import GeometryError
from patternforge.geometry.band import band
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import Transform, translation

__all__ = ["comparison_sheet"]

_OLD = Role.SEAM  # the role whose pen has short dashes
_BAND, _TONE = 0.8, 0.45  # half the width of the band along what is new, mm, and how dark it is
_HOLE = 1.0  # mm: stitch holes are drawn as rings of this width, whatever their shape
_HEADING, _LETTERS, _LINE = 3.5, 2.2, 4.0  # mm
_WORDS = 95  # letters of a line under a picture
_GAP = 10.0


def comparison_sheet(found: Comparison, name: str) -> Sheet:
    """Every piece that changes, is new or gone, one below the other, each with what changes in words.

    DraftError when nothing does.
    """
    changed = (*found.other_die, *found.other_template)
    pictures = [_changed(change) for change in changed]
    pictures += [_alone(piece, Role.OUTLINE, "new") for piece in found.added]
    pictures += [_alone(piece, _OLD, "gone") for piece in found.gone]
    return stacked([_heading(found), *pictures] if pictures else [], _GAP, name)


def _heading(found: Comparison) -> Figure:
    lines = (
        f"Old: {found.old.label}",
        f"New: {found.new.label}",
        "True size, showing face up. Dashed: old. Unbroken: new. Grey band: new edge off the old one.",
        "Rings: stitch holes; where one moved, the old one is dashed and a line leads from it to the new.",
    )
    words = [Text(Role.LABEL, Point(0.0, 0.0), _HEADING, f"{found.new.title}: old over new")]
    words += [Text(Role.LABEL, Point(0.0, -6.0 - i * _LINE), _LETTERS, line) for i, line in enumerate(lines)]
    return Figure("heading", "", tuple(words))


def _changed(change: PieceChange) -> Figure:
    onto = translation(change.offset.x, change.offset.y)
    old, new = change.old, change.new
    outline, openings = onto.path(new.outline), [onto.path(opening) for opening in new.openings]
    bands = [*_bands(outline, [old.outline]), *(b for cut in openings for b in _bands(cut, old.openings))]
    inks: list[Ink] = [
        *(Area(Role.TINT, (each,), _TONE) for each in bands),
        *(Stroke(_OLD, path) for path in (*old.openings, old.outline)),
        *_holes(old, new, onto),
        *(Stroke(Role.OPENING, path) for path in openings),
        Stroke(Role.OUTLINE, outline),
    ]
    return Figure(new.name, new.leather, (*inks, *_words(inks, new.name, told(change))))


def _alone(piece: MadePiece, role: Role, word: str) -> Figure:
    inks: list[Ink] = [Stroke(role, path) for path in (*piece.openings, piece.outline)]
    return Figure(piece.name, piece.leather, (*inks, *_words(inks, piece.name, [word])))


def _words(inks: Sequence[Ink], name: str, lines: Sequence[str]) -> Iterator[Text]:
    box = room(inks)
    yield Text(Role.LABEL, Point(box.x0, box.y1 + 3.0), _HEADING, name)
    rows = [row for line in lines for row in wrap(line, _WORDS)]
    for number, row in enumerate(rows, start=1):
        yield Text(Role.LABEL, Point(box.x0, box.y0 - number * _LINE), _LETTERS, row)


def _bands(path: Path, others: Sequence[Path]) -> Iterator[Path]:
    """Bands along the stretches of a path that lie on none of the others."""
    nearest = min(others, key=lambda other: other.distance_to(path.start), default=None)
    stretches = strays(path, nearest) if nearest else path.segments
    for segment in stretches:
        try:
            yield band(segment, _BAND, _BAND)
        except GeometryError:  # an arc too small to have a band on its inner side
            yield band(Segment(segment.start, segment.end), _BAND, _BAND)


def _holes(old: MadePiece, new: MadePiece, onto: Transform) -> Iterator[Ink]:
    """The new holes, the old ones that lie elsewhere, and from old to new where there are as many of them."""
    before = {_key(hole): hole.at for hole in old.holes}
    for hole in new.holes:
        at, was = onto.point(hole.at), before.get(_key(hole))
        yield Dot(Role.HOLE, at, _HOLE)
        if was is not None and was.distance_to(at) <= TOLERANCE:
            del before[_key(hole)]
        elif was is not None and len(old.holes) == len(new.holes):
            yield Stroke(Role.LABEL, polyline([was, at]))
    yield from (Dot(_OLD, at, _HOLE) for at in before.values())


def _key(hole: MadeHole) -> tuple[str, int, bool]:
    return hole.seam, hole.index, hole.turned
