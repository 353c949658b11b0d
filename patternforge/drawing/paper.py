"""The sizes of paper that home printers take."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from types import MappingProxyType

from patternforge.errors import DraftError

__all__ = ["A3", "A4", "LEGAL", "LETTER", "PAPERS", "Paper", "larger", "paper_named"]


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of ``width`` x ``height`` mm and where its size is laid down.

    >>> A4.turned().width
    297.0
    """

    name: str
    width: float
    height: float
    source: str

    def turned(self) -> Paper:
        """The same sheet with its sides exchanged."""
        return Paper(self.name, self.height, self.width, self.source)


A4 = Paper("A4", 210.0, 297.0, "ISO 216")
A3 = Paper("A3", 297.0, 420.0, "ISO 216")
LETTER = Paper("Letter", 215.9, 279.4, "8.5 x 11 in, ANSI/ASME Y14.1 size A")
LEGAL = Paper("Legal", 215.9, 355.6, "8.5 x 14 in, size of the North American trade, no standard known")

PAPERS: Mapping[str, Paper] = MappingProxyType({p.name.lower(): p for p in (A4, A3, LETTER, LEGAL)})


def paper_named(name: str) -> Paper:
    """The paper of that name, upright, in whatever case it is written; DraftError for an unknown one.

    >>> paper_named("letter").width
    215.9
    """
    paper = PAPERS.get(name.strip().lower())
    if paper is None:
        near = get_close_matches(name.strip().lower(), PAPERS, n=1)
        hint = f"; did you mean {PAPERS[near[0]].name}?" if near else ""
        raise DraftError(f"no paper is called {name!r}, only {', '.join(p.name for p in PAPERS.values())}{hint}")
    return paper


def larger(paper: Paper, times: int = 4) -> Iterator[Paper]:
    """``paper`` itself, and then each time one of twice the area: two of the last laid side by side.

    >>> [(sheet.width, sheet.height) for sheet in larger(A4, 1)]
    [(210.0, 297.0), (297.0, 420.0)]
    """
    yield paper
    for _ in range(times):
        short, long = sorted((paper.width, paper.height))
        # Sizes of ISO 216 are rounded down to whole mm, so that two of A4 are A3 and no more than that.
        paper = Paper(f"twice {paper.name}", long, 2 * short, "two sheets side by side")
        yield paper
