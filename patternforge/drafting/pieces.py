"""Flat pieces as figures: what is cut, in cutting order, and for paper all that helps the maker besides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from patternforge.drafting.finishing import finishing_marks
from patternforge.drafting.holes import awl_inks, hole_inks, seam_strokes
from patternforge.drafting.kerf import opening_cut, outline_cut
from patternforge.drafting.letters import letter_inks, letter_notes
from patternforge.drafting.purpose import (
    AwlPoints,
    CutFace,
    DieHoles,
    DieOptions,
    DraftingOptions,
    Engraving,
    FoldTicks,
    LaserOptions,
    PaperOptions,
    Purpose,
)
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Figure, Ink, Role, Stroke
from patternforge.geometry.path import Path
from patternforge.geometry.transform import flipped_x
from patternforge.wallet.pattern import Pattern, Piece

__all__ = ["figures"]

_TICK = 2.0  # length of the line that marks a fold at the edge, mm
_CUTTING_ORDER = (Role.MARK, Role.HOLE, Role.OPENING, Role.OUTLINE)


def figures(pattern: Pattern, purpose: Purpose, options: DraftingOptions | None = None) -> tuple[Figure, ...]:
    """One figure for each piece, in the order of the pattern, showing face up unless it is cut from the back.

    Inks stand in cutting order: marks, holes, openings, outline (counter-clockwise); then, on paper alone, what is
    drawn only: fold lines, stitch lines, labels. The figure's group is the leather's role. Sizes are net but for the
    kerf of a laser. DraftError, naming the piece, when the kerf leaves nothing of a hole or an opening.
    """
    chosen = options or DraftingOptions()
    match purpose:
        case Purpose.LASER:
            return tuple(_laser_figure(pattern, piece, chosen.laser) for piece in pattern.pieces)
        case Purpose.DIE:
            return tuple(_die_figure(pattern, piece, chosen.die) for piece in pattern.pieces)
        case Purpose.PAPER:
            return tuple(_paper_figure(pattern, piece, chosen.paper) for piece in pattern.pieces)


def _laser_figure(pattern: Pattern, piece: Piece, options: LaserOptions) -> Figure:
    ticks = _fold_ticks(piece) if options.fold_ticks is FoldTicks.SCORED else ()
    letters = letter_inks(piece) if options.engraving is Engraving.INITIALS else ()
    holes = hole_inks(pattern, piece, options.kerf, options.holes)
    inks = (*ticks, *letters, *holes, *_edges(piece, options.kerf, options.allowance))
    figure = _figure(piece, inks)
    return _from_the_back(figure, piece) if options.cut_face is CutFace.BACK else figure


def _die_figure(pattern: Pattern, piece: Piece, options: DieOptions) -> Figure:
    holes = hole_inks(pattern, piece, 0.0) if options.holes is DieHoles.PUNCHED else ()
    return _figure(piece, (*holes, *_edges(piece, 0.0)))


def _paper_figure(pattern: Pattern, piece: Piece, options: PaperOptions) -> Figure:
    from patternforge.drafting.labels import label_inks

    marked = (*piece.marks, *finishing_marks(piece))
    marks = (*letter_inks(piece), *(Stroke(Role.MARK, mark.path) for mark in marked))
    cut = _figure(piece, (*marks, *hole_inks(pattern, piece, 0.0), *_edges(piece, 0.0)))
    folds = tuple(Stroke(Role.FOLD, line) for line in piece.fold_lines)
    drawn = (
        *(awl_inks(pattern, piece) if options.awl is AwlPoints.CROSSES else ()),
        *folds,
        *seam_strokes(pattern, piece),
        *letter_notes(piece),
        *label_inks(pattern, piece, options.letters),
    )
    return replace(cut, inks=cut.inks + drawn)


def _figure(piece: Piece, inks: tuple[Ink, ...]) -> Figure:
    return Figure(piece.name, piece.leather, tuple(sorted(inks, key=lambda ink: _CUTTING_ORDER.index(ink.role))))


def _edges(piece: Piece, kerf: float, allowance: float = 0.0) -> tuple[Ink, ...]:
    openings = (Stroke(Role.OPENING, opening_cut(opening, kerf, piece.name)) for opening in piece.openings)
    return (*openings, Stroke(Role.OUTLINE, outline_cut(piece.outline, kerf, piece.name, allowance)))


def _fold_ticks(piece: Piece) -> Iterator[Stroke]:
    """A short line inwards from the edge at both ends of a fold line; a line too short for two is scored whole."""
    for line in piece.fold_lines:
        if line.length <= 2 * _TICK:
            yield Stroke(Role.MARK, line)
        else:
            yield from (Stroke(Role.MARK, line.sub(*part)) for part in ((0.0, _TICK), _last(line)))


def _last(line: Path) -> tuple[float, float]:
    return line.length - _TICK, line.length


def _from_the_back(figure: Figure, piece: Piece) -> Figure:
    """The mirror image in the same place, outlines counter-clockwise and openings clockwise as before."""
    mirrored = moved(figure, flipped_x(at=piece.outline.bounds.centre.x))
    return replace(mirrored, inks=tuple(_turned_round(ink) for ink in mirrored.inks))


def _turned_round(ink: Ink) -> Ink:
    if isinstance(ink, Stroke) and ink.path.closed:
        return replace(ink, path=ink.path.reversed())
    return ink
