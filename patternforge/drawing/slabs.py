"""Slabs of a document from top to bottom, and how they are poured onto pages without breaking one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.drawing.model import Ink
from patternforge.errors import DraftError

__all__ = ["Slab", "poured"]


@dataclass(frozen=True, slots=True)
class Slab:
    """What is never parted: inks from its upper left corner (y from 0 down to -height), and its height, mm.

    ``above`` is left free over it unless it heads a page. ``keeps``: it stays with the slab that follows. ``head`` is
    set over it again where it heads a page.
    """

    height: float
    inks: tuple[Ink, ...] = ()
    above: float = 0.0
    keeps: bool = False
    head: Slab | None = None


def poured(slabs: Sequence[Slab], height: float) -> tuple[tuple[Slab, ...], ...]:
    """The slabs of each page of ``height`` mm, in order; a slab that keeps goes where the next one goes.

    DraftError when slabs that belong together are higher than a page.

    >>> [len(page) for page in poured([Slab(40), Slab(40), Slab(30)], 100)]
    [2, 1]
    >>> [len(page) for page in poured([Slab(40), Slab(40, keeps=True), Slab(30)], 100)]
    [1, 2]
    """
    pages: list[list[Slab]] = [[]]
    for group in _groups(slabs):
        if pages[-1] and _taken([*pages[-1], *group]) > height:
            pages.append([])
        if not pages[-1] and group[0].head:
            group = [group[0].head, *group]
        pages[-1] += group
        if _taken(pages[-1]) > height:
            raise DraftError(
                f"{_taken(pages[-1]):.0f} mm of words or pictures that belong together do not go on a page that"
                f" has {height:.0f} mm; print with less white at the edges, or on larger paper"
            )
    return tuple(tuple(page) for page in pages)


def _groups(slabs: Sequence[Slab]) -> Iterator[list[Slab]]:
    group: list[Slab] = []
    for slab in slabs:
        group.append(slab)
        if not slab.keeps:
            yield group
            group = []
    if group:
        yield group


def _taken(slabs: Sequence[Slab]) -> float:
    return sum(slab.height + (slab.above if number else 0.0) for number, slab in enumerate(slabs))
