"""Pieces as they lie on each other in a picture: each covers what lies under it, stitches show on the uppermost."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

from patternforge.drafting.assembly_view import View, heavy, laid_openings, laid_outline
from patternforge.drawing.model import Area, Dot, Figure, Ink, Role, Stroke
from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Piece, Seam

__all__ = ["NEW", "Look", "Thread", "piece_figures"]

NEW = 0.32  # tone of what is newly laid on
_BOLD = 0.8  # width of stitches being sewn, mm of the picture
_BETWEEN = 0.14  # of a stitch's length left free at either end
_HOLE = 0.5  # width of a hole, mm of the picture


class Thread(Enum):
    """How a seam shows: as holes, as a thin line once it is sewn, as bold stitches while it is."""

    OPEN = "open"
    SEWN = "sewn"
    NOW = "now"


@dataclass(frozen=True, slots=True)
class Look:
    """What a picture shows: which pieces, how far each is lifted (mm of the picture), its tone, how seams show."""

    lifts: Mapping[str, float]
    tones: Mapping[str, float]
    threads: Mapping[str, Thread]
    over: Mapping[str, tuple[Ink, ...]]
    """What is drawn upon a piece, by its name: glue."""
    turned: frozenset[str] = frozenset()
    """The pieces whose edges are turned in."""


def piece_figures(layout: Layout, view: View, look: Look) -> tuple[Figure, ...]:
    """A figure for each piece shown, the nearest to the eye last."""
    shown = [piece for piece in layout.pattern.pieces if piece.name in look.lifts]
    shown.sort(key=lambda piece: view.towards(piece.level))
    uppermost = _uppermost(shown)
    drawn = [
        (
            view.towards(piece.level),
            Figure(piece.name, piece.leather, tuple(_inks(layout, view, look, piece, uppermost))),
        )
        for piece in shown
    ]
    drawn += [
        (view.towards(ply.order), Figure(ply.name, "", tuple(_frame(view, look, ply))))
        for ply in layout.plies
        if ply.of in look.turned & look.lifts.keys() and ply.name != ply.of
    ]
    return tuple(figure for _, figure in sorted(drawn, key=lambda pair: pair[0]))


def _frame(view: View, look: Look, ply: Ply) -> Iterator[Ink]:
    """What a piece has turned in: the frame that its turned edges make."""
    if ply.outline is None or ply.hollow is None:
        return
    lift, box = look.lifts[ply.of], ply.hollow
    outline = view.path(ply.outline, lift)
    hollow = view.path(rounded_rectangle(box.x0, box.y0, box.x1, box.y1, 0.0), lift)
    yield Area(Role.TINT, (outline, hollow), look.tones.get(ply.of, 0.0))
    yield from (Stroke(Role.OUTLINE, path) for path in (outline, hollow))


def _uppermost(shown: Sequence[Piece]) -> Mapping[tuple[str, int], str]:
    """The piece nearest to the eye for every hole of every seam."""
    return {(hole.seam, hole.index): piece.name for piece in shown for hole in piece.holes}


def _inks(
    layout: Layout, view: View, look: Look, piece: Piece, uppermost: Mapping[tuple[str, int], str]
) -> Iterator[Ink]:
    lift = look.lifts[piece.name]
    outline = view.path(laid_outline(layout, piece), lift)
    openings = tuple(view.path(opening, lift) for opening in laid_openings(piece))
    yield Area(Role.TINT, (outline, *openings), look.tones.get(piece.name, 0.0))
    yield from look.over.get(piece.name, ())
    yield Stroke(Role.OUTLINE, outline)
    yield from (Stroke(Role.OUTLINE, opening) for opening in openings)
    for seam in layout.pattern.seams:
        thread = look.threads.get(seam.meets or seam.name, Thread.OPEN)
        yield from _thread(layout, view, piece, seam, thread, lift, uppermost)


def _thread(
    layout: Layout,
    view: View,
    piece: Piece,
    seam: Seam,
    thread: Thread,
    lift: float,
    uppermost: Mapping[tuple[str, int], str],
) -> Iterator[Ink]:
    """The stitches or holes of a seam that show on a piece."""
    if thread is Thread.OPEN:
        own = (hole for hole in layout.holes[piece.name] if hole.seam == seam.name)
        yield from (Dot(Role.HOLE, view.point(hole.at, lift), _HOLE) for hole in own)
        return
    for first, second in pairwise(seam.holes):
        ends = [uppermost.get((seam.name, hole.index)) for hole in (first, second)]
        if first.run == second.run and None not in ends and _nearest(layout, view, ends) == piece.name:
            line = [view.point(hole.at, lift) for hole in (first, second)]
            yield from (
                [Stroke(Role.SEAM, polyline(line))] if thread is Thread.SEWN else heavy(_shortened(line), _BOLD)
            )


def _nearest(layout: Layout, view: View, names: Sequence[str | None]) -> str | None:
    """Which of these pieces lies nearest to the eye."""
    level = {piece.name: view.towards(piece.level) for piece in layout.pattern.pieces}
    return max((name for name in names if name), key=lambda name: level[name])


def _shortened(line: Sequence[Point]) -> list[Point]:
    """A stitch as it is drawn, so that it can be told from the next."""
    first, second = line
    by = (second - first) * _BETWEEN
    return [first + by, second - by]
