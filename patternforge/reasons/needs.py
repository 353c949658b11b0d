"""What each part asks of the body, term by term: the larger of these make panels and body as large as they are."""

from __future__ import annotations

from functools import partial

from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, made
from patternforge.wallet.parts import kind_of
from patternforge.wallet.parts.kind import Need, Way

__all__ = ["needs"]


def needs(book: Book) -> Makes:
    """The room that every part needs across the folds and along them, where it needs any."""
    for part in book.design.parts:
        for way in Way:
            asked = kind_of(part).needs(book.design, part, way)
            if asked:
                name = f"part {part.name}.needs {way.value}"
                yield name, partial(_largest, book, name, asked)


def _largest(book: Book, name: str, asked: list[Need]) -> Reason:
    sums = [made(need[0].label, How.SUM, [book.term(term) for term in need]) for need in asked]
    return made(book.called(name), How.LARGEST, sums)
