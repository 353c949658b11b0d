"""Two sets of pieces: what of each piece stays, what is new, what is gone, and what the wallet takes in all."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.comparison.made import MadePiece, MadeSet
from patternforge.comparison.pieces import PieceChange, piece_change
from patternforge.errors import ReadingError

__all__ = ["Comparison", "compared"]


@dataclass(frozen=True, slots=True)
class Comparison:
    """Every piece of the old set that the new one has too, in the new order, and those that only one of them has."""

    old: MadeSet
    new: MadeSet
    changes: tuple[PieceChange, ...]
    added: tuple[MadePiece, ...]
    gone: tuple[MadePiece, ...]

    @property
    def same(self) -> tuple[PieceChange, ...]:
        """Pieces whose die and template both stay."""
        return tuple(change for change in self.changes if change.template_stays)

    @property
    def other_template(self) -> tuple[PieceChange, ...]:
        """Pieces whose die stays while their template does not."""
        return tuple(change for change in self.changes if change.die_stays and not change.template_stays)

    @property
    def other_die(self) -> tuple[PieceChange, ...]:
        """Pieces that need a new die and a new template."""
        return tuple(change for change in self.changes if not change.die_stays)


def compared(old: MadeSet, new: MadeSet) -> Comparison:
    """The old set against the new, piece by piece under the same name.

    ReadingError where no piece of the one has the name of a piece of the other: two wallets with nothing in common.
    """
    pairs = [(before, after) for after in new.pieces if (before := old.piece(after.name))]
    if not pairs:
        raise ReadingError(
            f"{old.label} and {new.label} have no piece of the same name ({_first(old)} ... and {_first(new)} ...);"
            " compare two states of one wallet"
        )
    return Comparison(
        old=old,
        new=new,
        changes=tuple(piece_change(before, after) for before, after in pairs),
        added=tuple(piece for piece in new.pieces if old.piece(piece.name) is None),
        gone=tuple(piece for piece in old.pieces if new.piece(piece.name) is None),
    )


def _first(made: MadeSet) -> str:
    return f"'{made.pieces[0].name}'"
