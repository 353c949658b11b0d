"""Facts for making sheets: drafted once, and wallets of one plain piece whose areas are known by heart."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from patternforge.drafting.making.facts import Finished, MakingFacts
from patternforge.drawing.document import Document, Table
from patternforge.fit.judge import fit_over_range
from patternforge.geometry.corners import rounded_rectangle
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.designs_built import sleeve, two_fold

__all__ = ["cells", "oblong", "plain_facts", "table", "two_fold_facts"]

FINISHED = Finished((223.9, 87.5), (108.7, 87.5), 14.7)


@cache
def _two_fold() -> MakingFacts:
    pattern = drafted(two_fold())
    return MakingFacts(pattern, tuple(fit_over_range(pattern)), FINISHED)


def two_fold_facts(**changes: Any) -> MakingFacts:
    """A two-fold wallet that fits; ``changes`` are fields of the facts."""
    return replace(_two_fold(), **changes)


@cache
def _sleeve() -> Pattern:
    return drafted(sleeve())


def oblong(width: float, height: float, thread: float = 1532.35) -> Pattern:
    """A pattern of one oblong piece of the outer leather, with one seam that takes ``thread`` mm."""
    pattern = _sleeve()
    back = replace(
        pattern.pieces[0], outline=rounded_rectangle(0.0, 0.0, width, height, 0.0), openings=(), holes=(), edges=()
    )
    return replace(pattern, pieces=(back,), seams=(replace(pattern.seams[0], thread=thread),))


def plain_facts(pattern: Pattern, **changes: Any) -> MakingFacts:
    """Facts of that pattern and nothing found."""
    return MakingFacts(pattern, (), FINISHED, **changes)


def table(document: Document, head: str) -> Table:
    """The first table with a column of that head."""
    tables = (block for block in document.blocks() if isinstance(block, Table))
    return next(each for each in tables if head in [column.head for column in each.columns])


def cells(found: Table, head: str) -> list[str]:
    """What stands in the column of that head, from the top."""
    column = [each.head for each in found.columns].index(head)
    return [str(row[column]) for row in found.rows]
