"""Which dies a wallet takes: pieces that are the same cut share one, and mirror images may share one too."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from patternforge.drafting.purpose import Mirrors
from patternforge.drawing.model import Figure
from patternforge.drawing.same_cut import is_same_cut, is_same_cut_over, is_symmetric
from patternforge.wallet.pattern import Pattern, Piece

__all__ = ["SAME_CUT", "Die", "DieCut", "dies"]

SAME_CUT = 0.01  # mm that pieces of one die may differ by: far less than leather or a bent rule keeps; own choice


@dataclass(frozen=True, slots=True)
class DieCut:
    """A piece that a die cuts; ``over`` when it is the mirror image of what is drawn."""

    piece: Piece
    over: bool


@dataclass(frozen=True, slots=True)
class Die:
    """A die, drawn as the first of the pieces it cuts, in the order of the pattern.

    ``symmetric``: its shape is its own mirror image, so that it does not matter which side of the leather is up.
    """

    figure: Figure
    cuts: tuple[DieCut, ...]
    symmetric: bool

    @property
    def name(self) -> str:
        """That of the first piece."""
        return self.figure.name

    @property
    def count(self) -> int:
        """How many cuts it makes for one wallet."""
        return sum(cut.piece.quantity for cut in self.cuts)

    @property
    def hands(self) -> int:
        """How many dies it takes where no leather is turned over: 2 when a piece is the mirror image of another."""
        return 2 if any(cut.over for cut in self.cuts) else 1


def dies(pattern: Pattern, drawn: Sequence[Figure], mirrors: Mirrors) -> tuple[Die, ...]:
    """The dies for ``drawn``, which are the pieces of ``pattern`` in its order, each as it is to be cut.

    Pieces are of one die when every line of theirs lies on that of the first within ``SAME_CUT`` mm, turned in the
    plane, or turned over where ``mirrors`` are shared. The first piece of a die is never turned over.
    """
    found: list[Die] = []
    for figure, piece in zip(drawn, pattern.pieces, strict=True):
        at, over = _place(found, figure, mirrors)
        if at is None:
            symmetric = is_symmetric(figure, SAME_CUT)
            found.append(Die(figure, (DieCut(piece, over=False),), symmetric))
        else:
            found[at] = replace(found[at], cuts=(*found[at].cuts, DieCut(piece, over)))
    return tuple(found)


def _place(found: Sequence[Die], figure: Figure, mirrors: Mirrors) -> tuple[int | None, bool]:
    """The die that cuts a figure, and whether it does so turned over; one that need not be turned over goes first."""
    for number, die in enumerate(found):
        if is_same_cut(figure, die.figure, SAME_CUT):
            return number, False
    if mirrors is Mirrors.SHARED:
        for number, die in enumerate(found):
            if is_same_cut_over(figure, die.figure, SAME_CUT):
                return number, True
    return None, False
