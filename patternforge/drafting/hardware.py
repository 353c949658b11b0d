"""What is said of the holes for hardware: a word beside each, and a fact on the label."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.rooms import Floor, is_free
from patternforge.drafting.wording import OVER, UNDER
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Role, Text
from patternforge.geometry.point import Bounds, Point
from patternforge.leather.hardware import Setting, hardware
from patternforge.units import mm
from patternforge.wallet.pattern import FittingHole, Pattern, Piece
from patternforge.wallet.spec import Fitting

__all__ = ["fitting_facts", "fitting_words", "word_bounds"]

_HEIGHTS = (2.5, 2.0)  # of letters, mm
_OFF = 1.2  # rim of a hole to the words beside it, mm
_COUNTED = ("first half", "second half")


def fitting_facts(pattern: Pattern, piece: Piece) -> tuple[str, ...]:
    """What to punch for every half that a piece carries, or to hide behind it; one fact each."""
    declared = {fitting.name: fitting for fitting in pattern.design.fittings}
    own = [_fact(declared[hole.fitting], hole, _half(pattern, hole)) for hole in piece.fittings]
    held = {hole.fitting for hole in piece.fittings}
    covered = [name for name in dict.fromkeys(mark.name for mark in piece.marks) if name in declared.keys() - held]
    return (*own, *(f"{name} lies against it at its mark" for name in covered))


def _fact(fitting: Fitting, hole: FittingHole, half: str) -> str:
    if fitting.setting is Setting.COVERED:
        return f"hide {half} of {fitting.name}, {mm(2 * hole.reach)} x {mm(fitting.thickness)} mm, behind it"
    return f"punch {mm(hole.diameter)} mm for {fitting.name}: {half}"


def fitting_words(pattern: Pattern, piece: Piece, ground: Floor) -> tuple[Text, ...]:
    """A word beside each hole for hardware that says which half is set there, where there is room on ``ground``."""
    found: list[Text] = []
    for hole in piece.fittings:
        free = (
            text
            for text in _candidates(hole, _half(pattern, hole))
            if is_free(ground, word_bounds(text)) and not any(_touch(text, other) for other in found)
        )
        found += [text for text in [next(free, None)] if text]
    return tuple(found)


def word_bounds(text: Text) -> Bounds:
    """The box that level letters take, with what they may hang below and stand above their line."""
    width = text_width(text.content, text.height)
    low, high = text.at.y - UNDER * text.height, text.at.y + (1 + OVER) * text.height
    return Bounds(text.at.x, low, text.at.x + width, high)


def _half(pattern: Pattern, hole: FittingHole) -> str:
    """The word for a half of a kind in the catalogue, or which half it is."""
    kinds = {fitting.name: fitting.kind for fitting in pattern.design.fittings}
    known = hardware().get(kinds[hole.fitting])
    words = known.halves if known and len(known.halves) >= hole.half else _COUNTED
    return words[hole.half - 1]


def _candidates(hole: FittingHole, half: str) -> Iterator[Text]:
    """The longer wording before the shorter, larger letters before smaller, beside the hole before under and over."""
    for content in (f"{hole.fitting}: {half}", half):
        for height in _HEIGHTS:
            for at in _places(hole, text_width(content, height), height):
                yield Text(Role.LABEL, at, height, content)


def _places(hole: FittingHole, width: float, height: float) -> tuple[Point, ...]:
    """Where the words begin: right of the hole, left of it, below, above."""
    off, level = (hole.diameter / 2 or hole.reach) + _OFF, hole.at.y - height / 2
    middle = hole.at.x - width / 2
    return (
        Point(hole.at.x + off, level),
        Point(hole.at.x - off - width, level),
        Point(middle, hole.at.y - off - (1 + OVER) * height),
        Point(middle, hole.at.y + off + UNDER * height),
    )


def _touch(a: Text, b: Text) -> bool:
    p, q = word_bounds(a), word_bounds(b)
    return p.x0 < q.x1 and q.x0 < p.x1 and p.y0 < q.y1 and q.y0 < p.y1
