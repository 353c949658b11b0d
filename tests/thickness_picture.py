"""The pieces of one wallet for thin and for thick outer leather, drawn over each other with what moves told."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from patternforge.drawing.clip import clipped
from patternforge.drawing.model import Align, Dot, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.export.svg import Pen, SvgOptions
from patternforge.geometry.path import Path, from_vertices, polygon, polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.pipeline.stages import Judged
from patternforge.wallet.pattern import Piece
from tests.thickness_story import THICK, THIN, told, wallet

__all__ = ["OPTIONS", "thickness_sheet"]

# A drawing tells inks apart by role, and a picture of two wallets needs pens for either: thin leather takes those of
# outline and hole, thick leather those of mark and opening.
_THIN = (Role.OUTLINE, Role.HOLE)
_THICK = (Role.MARK, Role.OPENING)
_BLUE, _RED = "#1f4e8c", "#c03a1e"
_PENS: Mapping[Role, Pen] = MappingProxyType(
    {
        Role.OUTLINE: Pen(_BLUE, width=0.6),
        Role.HOLE: Pen(_BLUE, width=0.3),
        Role.MARK: Pen(_RED, (3.0, 1.0), 0.6),
        Role.OPENING: Pen(_RED, width=0.3),
        Role.LABEL: Pen("#222222", width=0.35),
        Role.GUIDE: Pen("#777777", width=0.3),
    }
)
OPTIONS = SvgOptions(tuple(_PENS), _PENS)
_WIDTH, _HEIGHT = 342.0, 226.0
_SHELL, _DIVIDER = Point(10.0, 118.0), Point(10.0, 14.0)
_LENS, _LENS_AT, _TIMES = 13.0, Point(246.0, 118.0), 5.0
_BESIDE = Point(246.0, 104.0)
_LETTERS = 4.2


def thickness_sheet() -> Sheet:
    """Shell and note divider of both wallets, each laid on its fellow from the left edge, and a corner enlarged."""
    thin, thick = wallet(THIN), wallet(THICK)
    inks = (*_shells(thin, thick), *_dividers(thin, thick), *_legend())
    return Sheet("thickness", _WIDTH, _HEIGHT, (Figure("thickness", "", inks),))


def _shells(thin: Judged, thick: Judged) -> Iterator[Ink]:
    one, other = _piece(thin, "shell"), _piece(thick, "shell")
    both = (*_inks(one, _THIN), *_inks(other, _THICK))
    yield from _set(both, Point(0.0, 0.0), _SHELL, 1.0)
    corner = Bounds(other.width - _LENS + 2.0, -2.0, other.width + 2.0, _LENS - 2.0)
    yield from _set(clipped(both, corner), Point(corner.x0, corner.y0), _LENS_AT, _TIMES)
    yield _frame(_LENS_AT, _TIMES * _LENS)
    yield _frame(_SHELL + Point(corner.x0, corner.y0), _LENS)
    yield _words(_LENS_AT + Point(0.0, _TIMES * _LENS + 3.0), f"corner, {_TIMES:g} times as large")
    yield _words(_SHELL + Point(0.0, one.height + 4.0), f"shell: {_both(one.width, other.width)}")
    yield from _fold(thin, thick, one.height)


def _fold(thin: Judged, thick: Judged, height: float) -> Iterator[Ink]:
    """Both fold zones from their common beginning."""
    bends = [drafted.pattern.folds[0].layers[0].flat_length for drafted in (thin, thick)]
    start = _SHELL + Point(thin.pattern.folds[0].x0, 0.0)
    for length in (0.0, *bends):
        foot = start + Point(length, 0.0)
        yield Stroke(Role.GUIDE, polyline([foot, foot + Point(0.0, height)]))
    yield _words(start + Point(bends[0] / 2, height / 2), "fold", Align.CENTRE)
    yield _words(_BESIDE, "length round the fold:")
    yield _words(_BESIDE - Point(0.0, 7.5), f"{told(bends[0])} and {told(bends[1])}")


def _dividers(thin: Judged, thick: Judged) -> Iterator[Ink]:
    one, other = _piece(thin, "note divider"), _piece(thick, "note divider")
    yield from _set((*_inks(one, _THIN), *_inks(other, _THICK)), Point(0.0, 0.0), _DIVIDER, 1.0)
    same = f"{told(one.width)} in both" if one.outline == other.outline else _both(one.width, other.width)
    yield _words(_DIVIDER + Point(0.0, one.height + 4.0), f"note divider: {same}")


def _both(thin: float, thick: float) -> str:
    return f"{told(thin)} in {THIN} leather, {told(thick)} in {THICK} leather"


def _legend() -> Iterator[Ink]:
    for row, (roles, thickness) in enumerate(((_THIN, THIN), (_THICK, THICK))):
        at = Point(_BESIDE.x, 70.0 - 9.0 * row)
        line = polyline([at + Point(0.0, _LETTERS / 2), at + Point(16.0, _LETTERS / 2)])
        yield Stroke(roles[0], line)
        yield _words(at + Point(20.0, 0.0), f"{thickness} outer leather")


def _piece(drafted: Judged, name: str) -> Piece:
    return next(piece for piece in drafted.pattern.pieces if piece.name == name)


def _inks(piece: Piece, roles: tuple[Role, Role]) -> tuple[Ink, ...]:
    holes = (Dot(roles[1], hole.at, 1.0) for hole in piece.holes)
    return (Stroke(roles[0], piece.outline), *holes)


def _set(inks: tuple[Ink, ...], origin: Point, to: Point, times: float) -> Iterator[Ink]:
    """The inks enlarged about ``origin``, which comes to lie on ``to``."""
    for ink in inks:
        if isinstance(ink, Dot):
            yield Dot(ink.role, to + (ink.centre - origin) * times, ink.diameter * times)
        elif isinstance(ink, Stroke):
            yield Stroke(ink.role, _enlarged(ink.path, origin, to, times))


def _enlarged(path: Path, origin: Point, to: Point, times: float) -> Path:
    places = ((to + (Point(x, y) - origin) * times, bulge) for x, y, bulge in path.vertices)
    return from_vertices([(p.x, p.y, bulge) for p, bulge in places], closed=path.closed)


def _frame(corner: Point, side: float) -> Stroke:
    sides = (Point(0, 0), Point(side, 0), Point(side, side), Point(0, side))
    return Stroke(Role.GUIDE, polygon([corner + each for each in sides]))


def _words(at: Point, content: str, align: Align = Align.LEFT) -> Text:
    return Text(Role.LABEL, at, _LETTERS, content, 0.0, align)
