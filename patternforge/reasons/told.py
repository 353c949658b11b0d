"""The reasons of all sizes of a pattern, by the names they are called."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from patternforge.reasons.body import body
from patternforge.reasons.book import Book
from patternforge.reasons.finished import finished
from patternforge.reasons.folded import folded
from patternforge.reasons.gussets import gussets
from patternforge.reasons.hardware import hardware
from patternforge.reasons.leaves import leaves
from patternforge.reasons.needs import needs
from patternforge.reasons.pieces import pieces
from patternforge.reasons.pockets import pockets
from patternforge.reasons.reason import Reason
from patternforge.reasons.seams import seams
from patternforge.reasons.turned import turned
from patternforge.wallet.pattern import Pattern

__all__ = ["Reasons", "reasons_of"]

_DERIVED = (body, finished, pieces, folded, pockets, needs, gussets, turned, seams, hardware)


@dataclass(frozen=True, slots=True)
class Reasons(Mapping[str, Reason]):
    """The reasons of a pattern's sizes by the names they are called; each is made when it is first asked for.

    ``own`` are the names of the book by those called, ``declared`` those of the book that the design declares.
    """

    book: Book
    own: Mapping[str, str]
    declared: frozenset[str]

    def __getitem__(self, name: str) -> Reason:
        return self.book.of(self.own[name])

    def __iter__(self) -> Iterator[str]:
        return iter(self.own)

    def __len__(self) -> int:
        return len(self.own)


def reasons_of(pattern: Pattern) -> Reasons:
    """The reason of every size of a pattern, under the name it is called.

    First what drafting derives, then what the design declares. Names are those of the design: ``left.width`` of a
    panel, ``shell.width`` of a piece, ``fold 1.shell`` of a layer in a fold, ``rim.thread`` of a seam. Where two
    sizes would be called the same, both bear the word for their kind (``panel back.width``, ``piece back.width``).
    """
    book = Book(pattern)
    declared = dict(leaves(book))
    for sizes in _DERIVED:
        book.enter((name, maker) for name, maker in sizes(book) if name not in declared)
    book.enter(iter(declared.items()))
    book.close()
    own = {book.called(name): name for name in book.makers}
    return Reasons(book, MappingProxyType(own), frozenset(declared))
