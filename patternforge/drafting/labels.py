"""The label of a piece: words and arrows set where they touch no line and no hole, or beside the piece."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from patternforge.drafting.face_words import face_words
from patternforge.drafting.finishing import finishing_marks
from patternforge.drafting.hardware import fitting_facts, fitting_words, word_bounds
from patternforge.drafting.holes import hole_reach, seam_strokes
from patternforge.drafting.letters import letter_facts
from patternforge.drafting.rooms import Barrier, Floor, disc_barrier, floor, path_barriers, room
from patternforge.drafting.symbols import SYMBOL, symbol_inks, symbol_ways
from patternforge.drafting.wording import Block, Wording, block, facts, wording
from patternforge.drawing.extent import placed
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Ink, Role, Text
from patternforge.drawing.printing import Letters
from patternforge.geometry.path import polygon
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import Transform, identity, rotation
from patternforge.wallet.marked import Inscription, PlaceMark
from patternforge.wallet.pattern import Pattern, Piece

__all__ = ["label_inks"]

_CLEAR = 1.0  # words to any line or hole, mm
_HEIGHTS = (3.0, 2.5, 2.0)  # of letters, mm; less than 2 mm cannot be read on paper
# Widths of lines in lengths of the longest fact (None: a line for each fact), and narrower ones that break facts.
_WHOLE = (None, 1.5, 2.0, 3.0, 4.5)
_BROKEN = (0.8, 0.65, 0.5)
_GAP = 2.0  # between arrows and words, mm
_BELOW = 3.0  # piece to the words below it, mm
_NARROWEST = 60.0  # of words below a piece, mm

Way = tuple[str, tuple[Point, ...]]


@dataclass(frozen=True, slots=True)
class _Ground:
    """The room on a piece for words that run up its page by ``turn``."""

    turn: Transform
    floor: Floor


@dataclass(frozen=True, slots=True)
class _Setting:
    """Words and arrows as one box of ``width`` x ``height`` mm: centres of the arrows, upper left of the words."""

    lines: Block
    width: float
    height: float
    arrows: tuple[Point, ...]
    top: Point


def label_inks(pattern: Pattern, piece: Piece, letters: Letters = Letters.USUAL) -> tuple[Ink, ...]:
    """Words and arrows for one piece in its own frame, all of role LABEL, no letter lower than 2 mm (large: 3 mm).

    The label keeps 1 mm away from the outline, openings, stitch holes, fold and stitch lines. It lies level, else
    upright; where nothing fits, a letter stands in the piece and the words that it stands for below it. Beside a hole
    for hardware stands which half is set there, on a flap when it is folded, if there is room. DraftError for a
    letter that cannot be drawn.
    """
    walls = _barriers(pattern, piece)
    level = _ground(walls, identity())
    beside = (*fitting_words(pattern, piece, level.floor), *face_words(pattern, piece))
    if beside:
        walls += tuple(wall for text in beside for wall in _word_barriers(text))
        level = _ground(walls, identity())
    heights = tuple(height * letters.factor for height in _HEIGHTS)
    return (*beside, *_label(pattern, piece, walls, level, heights))


def _label(
    pattern: Pattern, piece: Piece, walls: Sequence[Barrier], level: _Ground, heights: Sequence[float]
) -> tuple[Ink, ...]:
    told = (*facts(pattern, piece), *fitting_facts(pattern, piece), *letter_facts(piece))
    said = wording(piece.name, told)
    ways = symbol_ways(pattern.design.leather(piece.leather).stretch)
    found = _within(level, _blocks(said, _WHOLE, heights), ways)
    if found:
        return found
    upright = _ground(walls, rotation(90))
    return (
        _within(upright, _blocks(said, _WHOLE, heights), ways)
        or _within(level, _blocks(said, _BROKEN, heights), ways)
        or _within(upright, _blocks(said, _BROKEN, heights), ways)
        or _below(pattern, piece, said.facts, level, heights)
    )


def _ground(walls: Sequence[Barrier], turn: Transform) -> _Ground:
    back = turn.inverse()
    return _Ground(turn, floor([wall.moved(back) for wall in walls]))


def _barriers(pattern: Pattern, piece: Piece) -> tuple[Barrier, ...]:
    reaches = {seam.name: hole_reach(seam.stitching.hole) for seam in pattern.seams}
    rims = (piece.outline, *piece.openings)
    sewn = (stroke.path for stroke in seam_strokes(pattern, piece))
    lines = (*piece.fold_lines, *sewn, *(mark.path for mark in finishing_marks(piece)))
    return (
        *(wall for path in rims for wall in path_barriers(path, _CLEAR, bounds=True)),
        *(wall for path in lines for wall in path_barriers(path, _CLEAR, bounds=False)),
        *(disc_barrier(hole.at, reaches[hole.seam] + _CLEAR) for hole in piece.holes),
        *(wall for letters in piece.inscriptions for wall in _box_barriers(letters)),
        *(wall for mark in piece.marks for wall in _mark_barriers(mark)),
    )


def _box_barriers(letters: Inscription) -> tuple[Barrier, ...]:
    """A box and all that is in it."""
    spine = max(letters.width - letters.height, 0.0) / 2, max(letters.height - letters.width, 0.0) / 2
    a, b = (letters.from_text().point(Point(*spine) * way) for way in (-1.0, 1.0))
    inside = Barrier(a, b, min(letters.width, letters.height) / 2)
    return (inside, *path_barriers(letters.box, _CLEAR, bounds=False))


def _mark_barriers(mark: PlaceMark) -> tuple[Barrier, ...]:
    """A place that is marked, and within it if it is closed."""
    box = mark.path.bounds
    inside = (disc_barrier(box.centre, min(box.width, box.height) / 2),) if mark.path.closed else ()
    return (*inside, *path_barriers(mark.path, _CLEAR, bounds=False))


def _word_barriers(text: Text) -> tuple[Barrier, ...]:
    box = word_bounds(text)
    rim = polygon([Point(box.x0, box.y0), Point(box.x1, box.y0), Point(box.x1, box.y1), Point(box.x0, box.y1)])
    return path_barriers(rim, _CLEAR, bounds=False)


def _blocks(said: Wording, wraps: Sequence[float | None], heights: Sequence[float]) -> Iterator[Block]:
    """The words in ever smaller letters, in each height in every width."""
    for height, wrap in product(heights, wraps):
        lines = block(said, height, wrap and wrap * height * said.longest)
        if lines:
            yield lines


def _within(ground: _Ground, blocks: Iterable[Block], ways: Sequence[Way]) -> tuple[Ink, ...]:
    """Words and arrows of the first block that has room; nothing when none has."""
    settings = (setting(lines, len(ways)) for lines in blocks for setting in (_arrows_left, _arrows_under))
    rooms = ((each, room(ground.floor, each.width, each.height)) for each in settings)
    return next((_set_in(ground.turn, each, box, ways) for each, box in rooms if box), ())


def _arrows_left(lines: Block, count: int) -> _Setting:
    aside, height = count * SYMBOL + _GAP, max(lines.height, SYMBOL)
    arrows = tuple(Point((i + 0.5) * SYMBOL, height / 2) for i in range(count))
    return _Setting(lines, aside + lines.width, height, arrows, Point(aside, (height + lines.height) / 2))


def _arrows_under(lines: Block, count: int) -> _Setting:
    height = SYMBOL + _GAP + lines.height
    arrows = tuple(Point((i + 0.5) * SYMBOL, SYMBOL / 2) for i in range(count))
    return _Setting(lines, max(count * SYMBOL, lines.width), height, arrows, Point(0.0, height))


def _set_in(turn: Transform, setting: _Setting, box: Bounds, ways: Sequence[Way]) -> tuple[Ink, ...]:
    corner = Point(box.x0, box.y0)
    arrows = [
        ink
        for (word, heads), at in zip(ways, setting.arrows, strict=True)
        for ink in symbol_inks(word, heads, turn.point(corner + at))
    ]
    return (*arrows, *(placed(text, turn) for text in _texts(setting.lines, corner + setting.top)))


def _texts(lines: Block, top: Point) -> tuple[Text, ...]:
    return tuple(Text(Role.LABEL, top - Point(0.0, down), size, text) for text, size, down in lines.lines)


def _below(
    pattern: Pattern, piece: Piece, words: Sequence[str], ground: _Ground, heights: Sequence[float]
) -> tuple[Ink, ...]:
    """A letter in the piece, if one fits, and the words below its outline, which without arrows say what is up."""
    key = _letter(pattern.pieces.index(piece))
    mark = _key_inks(key, ground, heights)
    bounds = piece.outline.bounds
    said = wording(f"{key}: {piece.name}" if mark else piece.name, (*words, "up as drawn"))
    wide = block(said, heights[-1], max(bounds.width, _NARROWEST))
    lines = wide or block(said, heights[-1], None)
    return (*mark, *(_texts(lines, Point(bounds.x0, bounds.y0 - _BELOW)) if lines else ()))


def _key_inks(key: str, ground: _Ground, heights: Sequence[float]) -> tuple[Ink, ...]:
    for height in heights:
        box = room(ground.floor, text_width(key, height), height)
        if box:
            at = Point(box.centre.x, box.y0)
            return (Text(Role.LABEL, at, height, key, 0.0, Align.CENTRE),)
    return ()


def _letter(index: int) -> str:
    """A, B, ... Z, AA, AB ..."""
    first, last = divmod(index, 26)
    return (_letter(first - 1) if first else "") + chr(ord("A") + last)
