"""The label of a piece: words and arrows set where they touch no line and no hole, or beside the piece."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.drafting.holes import hole_reach, seam_strokes
from patternforge.drafting.rooms import Barrier, Floor, disc_barrier, floor, path_barriers, room
from patternforge.drafting.symbols import SYMBOL, symbol_inks, symbol_ways
from patternforge.drafting.wording import Block, block, facts
from patternforge.drawing.extent import placed
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Ink, Role, Text
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, identity, rotation
from patternforge.wallet.pattern import Pattern, Piece

__all__ = ["label_inks"]

_CLEAR = 1.0  # words to any line or hole, mm
_HEIGHTS = (3.0, 2.5, 2.0)  # of letters, mm; less than 2 mm cannot be read on paper
_WRAPS = (None, 120.0, 90.0, 70.0, 55.0, 40.0)  # None: a line for each fact
_GAP = 2.0  # between arrows and words, mm
_BELOW = 3.0  # piece to the words below it, mm
_NARROWEST = 60.0  # of words below a piece, mm


@dataclass(frozen=True, slots=True)
class _Ground:
    """The room on a piece for words that run up its page by ``turn``."""

    turn: Transform
    floor: Floor


def label_inks(pattern: Pattern, piece: Piece) -> tuple[Ink, ...]:
    """Words and arrows for one piece in its own frame, all of role LABEL, no letter lower than 2 mm.

    The label keeps 1 mm away from the outline, openings, stitch holes, fold and stitch lines. It lies level, else
    upright; where nothing fits, a letter stands in the piece and the words that it stands for below it.
    DraftError for a name with a letter that cannot be drawn.
    """
    walls = _barriers(pattern, piece)
    words = facts(pattern, piece)
    level = _ground(walls, identity())
    return (
        _within(pattern, piece, words, level)
        or _within(pattern, piece, words, _ground(walls, rotation(90)))
        or _beside(pattern, piece, words, level)
    )


def _ground(walls: Sequence[Barrier], turn: Transform) -> _Ground:
    back = turn.inverse()
    return _Ground(turn, floor([wall.moved(back) for wall in walls]))


def _barriers(pattern: Pattern, piece: Piece) -> tuple[Barrier, ...]:
    reaches = {seam.name: hole_reach(seam.stitching.hole) for seam in pattern.seams}
    rims = (piece.outline, *piece.openings)
    lines = (*piece.fold_lines, *(stroke.path for stroke in seam_strokes(pattern, piece)))
    return (
        *(wall for path in rims for wall in path_barriers(path, _CLEAR, bounds=True)),
        *(wall for path in lines for wall in path_barriers(path, _CLEAR, bounds=False)),
        *(disc_barrier(hole.at, reaches[hole.seam] + _CLEAR) for hole in piece.holes),
    )


def _within(pattern: Pattern, piece: Piece, words: Sequence[str], ground: _Ground) -> tuple[Ink, ...]:
    """The label in the largest letters that have room; nothing when none have."""
    ways = symbol_ways(pattern.design.leather(piece.leather).stretch)
    settings = (_set_in(ground, lines, ways) for lines in _blocks(piece.name, words))
    return next((inks for inks in settings if inks), ())


def _blocks(name: str, words: Sequence[str]) -> Iterator[Block]:
    for height in _HEIGHTS:
        for wrap in _WRAPS:
            lines = block(name, words, height, wrap)
            if lines:
                yield lines


def _set_in(ground: _Ground, lines: Block, ways: Sequence[tuple[str, tuple[Point, ...]]]) -> tuple[Ink, ...]:
    """Arrows and words side by side; nothing when there is no room for them."""
    cell = max(SYMBOL.width, SYMBOL.height) if ground.turn != identity() else SYMBOL.width
    aside = len(ways) * cell + _GAP
    box = room(ground.floor, aside + lines.width, max(lines.height, SYMBOL.height))
    if box is None:
        return ()
    centres = [Point(box.x0 + (i + 0.5) * cell, box.centre.y) for i in range(len(ways))]
    arrows = [
        ink
        for (word, heads), centre in zip(ways, centres, strict=True)
        for ink in symbol_inks(word, heads, ground.turn.point(centre))
    ]
    top = Point(box.x0 + aside, box.centre.y + lines.height / 2)
    return (*arrows, *(placed(text, ground.turn) for text in _texts(lines, top)))


def _texts(lines: Block, top: Point) -> tuple[Text, ...]:
    return tuple(Text(Role.LABEL, top - Point(0.0, down), size, text) for text, size, down in lines.lines)


def _beside(pattern: Pattern, piece: Piece, words: Sequence[str], ground: _Ground) -> tuple[Ink, ...]:
    """A letter in the piece, if one fits, and the words below its outline."""
    key = _letter(pattern.pieces.index(piece))
    mark = _key_inks(key, ground)
    bounds = piece.outline.bounds
    heading = f"{key}: {piece.name}" if mark else piece.name
    up = () if mark else ("up as drawn",)
    below = block(heading, (*words, *up), _HEIGHTS[-1], max(bounds.width, _NARROWEST))
    lines = below or block(heading, (*words, *up), _HEIGHTS[-1], None)
    return (*mark, *(_texts(lines, Point(bounds.x0, bounds.y0 - _BELOW)) if lines else ()))


def _key_inks(key: str, ground: _Ground) -> tuple[Ink, ...]:
    for height in _HEIGHTS:
        box = room(ground.floor, text_width(key, height), height)
        if box:
            at = Point(box.centre.x, box.y0)
            return (Text(Role.LABEL, at, height, key, 0.0, Align.CENTRE),)
    return ()


def _letter(index: int) -> str:
    """A, B, ... Z, AA, AB ..."""
    first, last = divmod(index, 26)
    return (_letter(first - 1) if first else "") + chr(ord("A") + last)
