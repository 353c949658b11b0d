"""The book of a pattern's sizes: each under one name, its reason made when it is first asked for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field

from patternforge.reasons.reason import How, Reason, leaf, less, made, number, same
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design
from patternforge.wallet.sums import COUNTED, MEASURED, Sum, Term, taken_off

__all__ = ["Book", "Makes", "spoken"]

Makes = Iterator[tuple[str, Callable[[], Reason]]]
"""Sizes by name with what makes their reasons."""

_KINDS = frozenset(
    ("parameter", "part", "piece", "panel", "seam", "leather", "content", "face", "room", "tab", "opening", "fitting")
)
_LEAF = {COUNTED: How.COUNTED, MEASURED: How.MEASURED}


def spoken(names: Iterable[str]) -> dict[str, str]:
    """What each name is called: without the word for its kind where no other size is called the same.

    >>> spoken(["panel back.width", "piece back.width", "part cards.step"])
    {'panel back.width': 'panel back.width', 'piece back.width': 'piece back.width', 'part cards.step': 'cards.step'}
    """
    short = {name: _short(name) for name in names}
    often = Counter(short.values())
    return {name: word if often[word] == 1 else name for name, word in short.items()}


def _short(name: str) -> str:
    kind, _, rest = name.partition(" ")
    return rest if kind in _KINDS and rest else name


@dataclass(slots=True)
class Book:
    """All sizes of a pattern; ``of`` gives the reason of one, ``called`` what it is called."""

    pattern: Pattern
    makers: dict[str, Callable[[], Reason]] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    known: dict[str, Reason] = field(default_factory=dict)

    @property
    def design(self) -> Design:
        """The design as drafted."""
        return self.pattern.design

    def enter(self, sizes: Makes) -> None:
        """Take down sizes; of two under one name the first stays."""
        for name, maker in sizes:
            self.makers.setdefault(name, maker)

    def close(self) -> None:
        """Give every size taken down the name it is called by."""
        self.names = spoken(self.makers)

    def called(self, name: str) -> str:
        """What a size is called."""
        return self.names.get(name, name)

    def of(self, name: str) -> Reason:
        """The reason of a size; KeyError for a name that is not in the book."""
        if name not in self.known:
            self.known[name] = self.makers[name]()
        return self.known[name]

    def total(self, name: str, size: Sum, value: float | None = None, source: str = "") -> Reason:
        """The reason of a sum whose terms say what they are made of."""
        parts = tuple(self.term(term) for term in size.terms) or (number(0.0, "nothing lies there"),)
        return made(self.called(name), How.SUM, parts, size.value if value is None else value, source=source)

    def term(self, term: Term) -> Reason:
        """The reason of one term."""
        if term.times < 0:
            return less(self.term(taken_off(term)))
        if term.parts:
            return made(term.label, How.SUM, tuple(self.term(part) for part in term.parts), term.value)
        if len(term.of) == 1 and term.of[0] in _LEAF:
            return leaf(term.label, term.value, _LEAF[term.of[0]])
        factors = tuple(self.of(name) for name in term.of)
        if term.times == 1 and len(factors) == 1:
            return same(term.label, factors[0], term.value)
        times = (_times(term.times),) if term.times != 1 else ()
        return made(term.label, How.PRODUCT, (*times, *factors), term.value)


def _times(times: float) -> Reason:
    return leaf("", times, How.COUNTED, unit="") if float(times).is_integer() else number(times)
