"""Pieces as they lie on each other in a picture: each covers what lies under it, stitches show on the uppermost."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

from patternforge.drafting.assembly_view import View, heavy, laid_openings, laid_outline
from patternforge.drawing.model import Area, Dot, Figure, Ink, Role, Stroke
from patternforge.fit.layout import Layout
from patternforge.geometry.path import polyline
from patternforge.wallet.pattern import Piece, Seam

__all__ = ["NEW", "Look", "Thread", "piece_figures"]

NEW = 0.32  # tone of what is newly laid on
_BOLD = 0.8  # width of stitches being sewn, mm of the picture
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
    """What is drawn upon a piece, by its name: glue, letters, places."""


def piece_figures(layout: Layout, view: View, look: Look) -> tuple[Figure, ...]:
    """A figure for each piece shown, the nearest to the eye last."""
    shown = [piece for piece in layout.pattern.pieces if piece.name in look.lifts]
    shown.sort(key=lambda piece: view.towards(piece.level))
    uppermost = _uppermost(shown)
    return tuple(
        Figure(piece.name, piece.leather, tuple(_inks(layout, view, look, piece, uppermost))) for piece in shown
    )


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
            yield from [Stroke(Role.SEAM, polyline(line))] if thread is Thread.SEWN else heavy(line, _BOLD)


def _nearest(layout: Layout, view: View, names: Sequence[str | None]) -> str | None:
    """Which of these pieces lies nearest to the eye."""
    level = {piece.name: view.towards(piece.level) for piece in layout.pattern.pieces}
    return max((name for name in names if name), key=lambda name: level[name])
