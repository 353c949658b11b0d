"""Pictures of single pieces on the bench, their showing face up: what is done to each before it is sewn."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from types import MappingProxyType

from patternforge.drafting.assembly_view import heavy
from patternforge.drafting.letters import letter_inks, letter_notes
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Align, Area, Dot, Figure, Ink, Role, Stroke, Text
from patternforge.drawing.scaling import PLAIN_SCALES, scaled
from patternforge.drawing.stacked import room
from patternforge.fit.layout import Layout
from patternforge.fit.making import MakingStep, Work
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.regions import region
from patternforge.geometry.transform import translation
from patternforge.units import mm
from patternforge.wallet.pattern import Piece
from patternforge.wallet.words import EdgeRole

__all__ = ["bench_figures", "is_on_bench", "name_under"]

_WIDEST, _HIGHEST = 170.0, 95.0  # mm of the whole picture
_GAP, _LETTERS = 6.0, 2.2  # mm of the picture
_TONE, _BOLD, _RING = 0.45, 1.6, 2.2  # bold lines and rings in mm of the piece


def is_on_bench(step: MakingStep) -> bool:
    """Whether a step is done to pieces that lie alone."""
    return step.work in _WORKED and not step.groups


def bench_figures(layout: Layout, step: MakingStep) -> tuple[Figure, ...]:
    """The pieces of a step in rows, each with its name and with what is to be done to it toned or bold."""
    pieces = [layout.pattern.piece(name) for name in step.pieces]
    drawn = [Figure(piece.name, piece.leather, tuple(_inks(piece, step))) for piece in pieces]
    for factor in PLAIN_SCALES:
        rows = _rows([name_under(scaled(figure, factor)) for figure in drawn])
        if -rows[-1][1] <= _HIGHEST or factor == PLAIN_SCALES[-1]:
            break
    return tuple(figure for figure, _ in rows)


def _rows(figures: Sequence[Figure]) -> list[tuple[Figure, float]]:
    """Figures in rows from the top, like lines of text, each with the foot of its row."""
    placed: list[tuple[Figure, float]] = []
    x, top, foot = 0.0, 0.0, 0.0
    for figure in figures:
        box = room(figure.inks)
        if x > 0 and x + box.width > _WIDEST:
            x, top = 0.0, foot - _GAP
        foot = min(foot, top - box.height)
        placed.append((moved(figure, translation(x - box.x0, top - box.y1)), foot))
        x += box.width + _GAP
    return placed


def name_under(figure: Figure) -> Figure:
    """The figure with its name in letters of one height below it."""
    box = room(figure.inks)
    name = Text(Role.LABEL, Point(box.centre.x, box.y0 - 1.6 * _LETTERS), _LETTERS, figure.name, 0.0, Align.CENTRE)
    return Figure(figure.name, figure.group, (*figure.inks, name))


def _inks(piece: Piece, step: MakingStep) -> Iterator[Ink]:
    yield Area(Role.TINT, (piece.outline, *piece.openings), 0.0)
    yield from _WORKED[step.work](piece, step)
    yield Stroke(Role.OUTLINE, piece.outline)
    yield from (Stroke(Role.OUTLINE, opening) for opening in piece.openings)
    yield from (Dot(Role.HOLE, hole.at, 1.0) for hole in piece.holes)


def _skived(piece: Piece, step: MakingStep) -> Iterator[Ink]:
    """The skived boxes as far as they lie on the piece, the thickness left written in the largest."""
    whole = region(piece.outline, piece.openings)
    for skive in piece.skives:
        box = rounded_rectangle(skive.box.x0, skive.box.y0, skive.box.x1, skive.box.y1, 0.0)
        yield Area(Role.TINT, whole.common(region(box)).paths, _TONE)
    lefts = dict.fromkeys(f"{mm(skive.left)} mm" for skive in piece.skives)
    yield Text(Role.LABEL, piece.outline.bounds.centre, 5.0, f"to {', '.join(lefts)}", 0.0, Align.CENTRE)


def _lettered(piece: Piece, step: MakingStep) -> Iterator[Ink]:
    yield from letter_inks(piece)
    yield from letter_notes(piece)
    yield from (Stroke(Role.GUIDE, inscription.box) for inscription in piece.inscriptions)


def _mouths(piece: Piece, step: MakingStep) -> Iterator[Ink]:
    for segment, role in zip(piece.made.segments, piece.made_edges, strict=True):
        if role is EdgeRole.MOUTH:
            yield from heavy(flattened(Path((segment,), closed=False), 0.1), _BOLD)


def _creased(piece: Piece, step: MakingStep) -> Iterator[Ink]:
    yield from (Stroke(Role.FOLD, line) for line in piece.fold_lines)


def _fitted(piece: Piece, step: MakingStep) -> Iterator[Ink]:
    """A bold ring round each place where hardware is set."""
    for name, half in step.fittings:
        if name == piece.name:
            radius = max(half.diameter / 2 + _RING, half.reach)
            ring = rounded_rectangle(
                half.at.x - radius, half.at.y - radius, half.at.x + radius, half.at.y + radius, radius
            )
            points = flattened(ring, 0.05)
            yield from heavy([*points, points[0]], _BOLD)


def _turned(piece: Piece, step: MakingStep) -> Iterator[Ink]:
    """What lies beyond the finished edge."""
    if piece.turned:
        yield Area(Role.TINT, (piece.outline, piece.turned.finished), _TONE)
        yield from (Stroke(Role.FOLD, line) for line in piece.turned.lines)


_WORKED: Mapping[Work, Callable[[Piece, MakingStep], Iterator[Ink]]] = MappingProxyType(
    {
        Work.SKIVE: _skived,
        Work.LETTER: _lettered,
        Work.MOUTHS: _mouths,
        Work.CREASE: _creased,
        Work.SET: _fitted,
        Work.TURN: _turned,
    }
)
