"""Derived sizes with the terms they are made of."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Sum", "Term"]


@dataclass(frozen=True, slots=True)
class Term:
    """One named share of a derived size, mm."""

    label: str
    value: float


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
