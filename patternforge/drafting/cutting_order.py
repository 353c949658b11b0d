"""The order in which the pieces of a wallet are cut by hand, as a note to be printed beside them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.drafting.purpose import AwlPoints, PaperOptions
from patternforge.drawing.model import Figure
from patternforge.drawing.prose import Note, notes_height, notes_inks
from patternforge.geometry.point import Bounds
from patternforge.leather.material import MadeOf
from patternforge.wallet.pattern import Pattern, Piece

__all__ = ["order_figure", "order_steps"]

_WIDE = 92.0  # mm: two of them beside each other on a page
_LETTERS = 2.0


def order_figure(pattern: Pattern, options: PaperOptions) -> Figure:
    """The numbered steps as a figure of words alone, to be laid out with the pieces; DraftError as for any text."""
    steps = tuple(f"{number}. {step}" for number, step in enumerate(order_steps(pattern, options), start=1))
    notes = (Note("Cut in this order", steps),)
    wide, size = _WIDE * options.letters.factor, _LETTERS * options.letters.factor
    box = Bounds(0.0, 0.0, wide, notes_height(notes, wide, 1, size))
    return Figure("order of cutting", "", notes_inks(notes, box, 1, size))


def order_steps(pattern: Pattern, options: PaperOptions) -> tuple[str, ...]:
    """What is done in which order: paper, marks and holes, openings, outlines, what is seen before what is hidden."""
    return tuple(_steps(pattern, options))


def _steps(pattern: Pattern, options: PaperOptions) -> Iterator[str]:
    yield "Glue the pages to card, let them dry, and measure the bars again: paper grows when damp."
    leather = [piece for piece in pattern.pieces if _is_leather(pattern, piece)]
    seen = _by_size(piece for piece in leather if piece.visible)
    hidden = _by_size(piece for piece in leather if not piece.visible)
    if seen:
        yield f"First what is seen, the largest first, from the best of the hide: {_listed(seen)}."
    if hidden:
        yield f"Then what is hidden; weaker parts of the hide will do: {_listed(hidden)}."
    other = _by_size(piece for piece in pattern.pieces if piece not in leather)
    if other:
        yield f"Last what is not of leather: {_listed(other)}."
    yield f"In each piece: {_pricked(pattern, options)}openings and slits, the outline last."
    if any(size for piece in pattern.pieces for _, size in piece.trims):
        yield "What is to be trimmed is cut off after gluing, not now."


def _is_leather(pattern: Pattern, piece: Piece) -> bool:
    return pattern.design.leather(piece.leather).made_of is MadeOf.LEATHER


def _by_size(pieces: Iterator[Piece]) -> list[Piece]:
    return sorted(pieces, key=lambda piece: -piece.area)


def _listed(pieces: Sequence[Piece]) -> str:
    """Names with how many and which leather, those of one leather together."""
    roles = list(dict.fromkeys(piece.leather for piece in pieces))
    return "; ".join(f"{', '.join(_named(p) for p in pieces if p.leather == role)} ({role})" for role in roles)


def _named(piece: Piece) -> str:
    return piece.name if piece.quantity == 1 else f"{piece.quantity} x {piece.name}"


def _pricked(pattern: Pattern, options: PaperOptions) -> str:
    """The step before the cuts: stitch holes on the crosses, where there are any."""
    if not any(piece.holes for piece in pattern.pieces):
        return "marks first, then "
    crosses = ", an awl on each small cross" if options.awl is AwlPoints.CROSSES else ""
    return f"prick marks and stitch holes first{crosses}, then "
