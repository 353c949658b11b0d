"""Line drawings of the finished wallet, laid open and closed, at a scale that is told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.drafting.making.facts import MakingFacts
from patternforge.drawing.document import Picture
from patternforge.drawing.extent import extent, moved
from patternforge.drawing.model import Align, Area, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.drawing.scaling import scaled_ink
from patternforge.drawing.stacked import room
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import layout
from patternforge.fit.seen import Seen, SeenPart, Shown, closed_seen, open_seen
from patternforge.fit.seen_folded import closed_folded_seen, open_folded_seen
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import translation
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern

__all__ = ["SCALES", "scale_told", "wallet_picture"]

SCALES = (1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 8.0, 10.0)  # mm of the wallet for a mm on paper
_GAP = 5.0  # between drawings, mm
_RIM = 1.0  # white round them, mm
_AROUND = Point(8.0, 13.0)  # what is written at the right, below and above, mm
_LETTERS = 2.0  # mm
_TONES = {Shown.LEATHER: 0.0, Shown.CLEAR: 0.0, Shown.ITEM: 0.12}
_ARM = 1.2  # half the stroke at the end of a dimension, mm
_SEWN = (0.12, 0.88)  # how much of the way from hole to hole a drawn stitch covers


@dataclass(frozen=True, slots=True)
class _Room:
    """What all drawings together may take, mm, and what heights of letters are multiplied by."""

    width: float
    height: float
    letters: float


@dataclass(frozen=True, slots=True)
class _Drawn:
    """One look at true size, and the finished size to be written on it."""

    look: Seen
    size: tuple[float, float]
    inks: tuple[Ink, ...]
    box: Bounds


def wallet_picture(facts: MakingFacts) -> Picture:
    """The wallet laid open and closed from both sides at one scale, in one row or two, as large as goes."""
    opened, *closed = _looks(facts.pattern)
    drawn = [
        _drawn(opened, facts.finished.open),
        *(_drawn(look, facts.finished.closed) for look in closed),
    ]
    room_for = _Room(facts.width, facts.height, facts.letters)
    scale, rows = _largest(drawn, room_for)
    sheet = _rows(rows, scale, facts.letters, f"{facts.pattern.design.name}-finished")
    lines = "folds" if facts.pattern.folded else "stitches"
    toned = "" if facts.pattern.folded else " What stands out of pockets is toned."
    caption = f"{scale_told(scale)} Broken lines: {lines}.{toned}"
    looks = "; ".join(each.look.name for each in drawn)
    return Picture(sheet, caption, f"{facts.pattern.design.title}: {looks}. {caption}")


def _drawn(look: Seen, size: tuple[float, float]) -> _Drawn:
    inks = tuple(_inks(look))
    return _Drawn(look, size, inks, extent(inks))


def _looks(pattern: Pattern) -> tuple[Seen, ...]:
    if pattern.folded:
        return open_folded_seen(pattern), *closed_folded_seen(pattern, pattern.folded)
    laid = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    return open_seen(laid), *closed_seen(laid, closed_wallet(laid))


def scale_told(scale: float) -> str:
    """The scale of a drawing in words.

    >>> scale_told(1.0), scale_told(2.5)
    ('True size.', 'Scale 1 : 2.5.')
    """
    return "True size." if scale == 1.0 else f"Scale 1 : {scale:g}."


def _largest(drawn: Sequence[_Drawn], most: _Room) -> tuple[float, list[list[_Drawn]]]:
    """The largest scale, and how many rows it takes, at which all goes into the room there is."""
    ways = ([list(drawn)], [list(drawn[:1]), list(drawn[1:])])
    for scale in SCALES:
        for rows in ways:
            if _goes(rows, scale, most):
                return scale, rows
    return SCALES[-1], ways[1]


def _goes(rows: Sequence[Sequence[_Drawn]], scale: float, most: _Room) -> bool:
    beside = _AROUND * most.letters
    widths = [sum(each.box.width / scale + beside.x for each in row) + (len(row) - 1) * _GAP for row in rows]
    heights = [max(each.box.height for each in row) / scale + beside.y for row in rows]
    wide, high = max(widths) + 2 * _RIM, sum(heights) + _GAP * (len(rows) - 1) + 2 * _RIM
    return wide <= most.width and high <= most.height


def _rows(rows: Sequence[Sequence[_Drawn]], scale: float, letters: float, name: str) -> Sheet:
    """The drawings in rows from the top, the tops of a row in line, with a little white round them."""
    placed: list[Figure] = []
    top, right = 0.0, 0.0
    for row in rows:
        figures = [_figure(each, scale, _LETTERS * letters) for each in row]
        boxes = [room(figure.inks) for figure in figures]
        x = 0.0
        for figure, box in zip(figures, boxes, strict=True):
            placed.append(moved(figure, translation(x - box.x0, top - box.y1)))
            x += box.width + _GAP
        top, right = top - max(box.height for box in boxes) - _GAP, max(right, x - _GAP)
    height = -top - _GAP
    shift = translation(_RIM, height + _RIM)
    return Sheet(name, right + 2 * _RIM, height + 2 * _RIM, tuple(moved(figure, shift) for figure in placed))


def _figure(each: _Drawn, scale: float, height: float) -> Figure:
    drawn = [scaled_ink(ink, 1 / scale) for ink in each.inks]
    box = extent(drawn)
    words = Text(Role.LABEL, Point(box.x0, box.y1 + height), height, each.look.name)
    return Figure(each.look.name, "", (*drawn, words, *_dimensions(box, each.size, height)))


def _inks(look: Seen) -> Iterator[Ink]:
    for part in look.parts:
        yield Area(Role.TINT, part.paths, _TONES[part.shown])
    for part in look.parts:
        yield from _edges(part)
    for part in look.parts:
        yield from (Stroke(Role.LABEL, _stitch(a, b)) for a, b in part.stitches)
    yield from (Stroke(Role.FOLD, path) for path in look.folds)


def _edges(part: SeenPart) -> Iterator[Ink]:
    role = Role.OUTLINE if part.shown is Shown.LEATHER else Role.TINT
    yield from (Stroke(role, path) for path in part.paths)


def _stitch(a: Point, b: Point) -> Path:
    way = b - a
    return polyline([a + way * _SEWN[0], a + way * _SEWN[1]])


def _dimensions(box: Bounds, size: tuple[float, float], letters: float) -> Iterator[Ink]:
    """The finished size below and at the right."""
    width, height = size
    low, right = box.y0 - 3.0, box.x1 + 3.0
    yield Stroke(Role.CHECK, polyline([Point(box.x0, low), Point(box.x1, low)]))
    yield Stroke(Role.CHECK, polyline([Point(right, box.y0), Point(right, box.y1)]))
    for x in (box.x0, box.x1):
        yield Stroke(Role.CHECK, polyline([Point(x, low - _ARM), Point(x, low + _ARM)]))
    for y in (box.y0, box.y1):
        yield Stroke(Role.CHECK, polyline([Point(right - _ARM, y), Point(right + _ARM, y)]))
    middle = box.centre
    yield Text(Role.LABEL, Point(middle.x, low - 1.6 * letters), letters, f"{mm(width, 1)} mm", 0.0, Align.CENTRE)
    yield Text(Role.LABEL, Point(right + 1.7 * letters, middle.y), letters, f"{mm(height, 1)} mm", 90.0, Align.CENTRE)
