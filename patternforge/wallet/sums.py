"""Derived sizes with the terms they are made of."""

from __future__ import annotations

from dataclasses import dataclass, replace

__all__ = ["COUNTED", "MEASURED", "Sum", "Term", "taken_off"]

COUNTED = "counted"
"""What a term is made of that is a whole number of stitches, or what whole stitches leave over."""

MEASURED = "measured"
"""What a term is made of that is measured on outlines and stacks as they are drawn."""


@dataclass(frozen=True, slots=True)
class Term:
    """One named share of a derived size, mm, and what it is made of.

    ``of`` are the names of sizes whose product it is, ``times`` a plain number; ``parts`` are terms it is the sum of
    in place of those. Names begin with what they are of: ``part left cards.ease``, ``content card.length``.
    """

    label: str
    value: float
    of: tuple[str, ...] = ()
    times: float = 1.0
    parts: tuple[Term, ...] = ()


def taken_off(term: Term) -> Term:
    """The term as it counts in a difference.

    >>> taken_off(Term("card", 85.6, ("content card.length",))).value
    -85.6
    """
    return replace(term, value=-term.value, times=-term.times, parts=tuple(map(taken_off, term.parts)))


@dataclass(frozen=True, slots=True)
class Sum:
    """A derived size with the terms it is the sum of.

    >>> Sum("width", (Term("card", 85.6), Term("ease", 2.5))).value
    88.1
    """

    name: str
    terms: tuple[Term, ...]

    @property
    def value(self) -> float:
        """The size itself, mm."""
        return sum(term.value for term in self.terms)
