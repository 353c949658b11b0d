"""Findings: what was measured on the pieces, where, against which limit, and what to do about it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from patternforge.units import mm

__all__ = ["FORGIVEN", "Finding", "Verdict", "at_least", "at_most", "is_worse", "reaches", "worst"]

FORGIVEN = 1e-3
"""mm that a measure may miss its limit by and still meet it: what rounding takes, finer than any tool."""


class Verdict(StrEnum):
    """``good`` may be cut; ``look`` wants the maker's eye; ``no`` would spoil leather."""

    GOOD = "good"
    LOOK = "look"
    NO = "no"


_RANK = {Verdict.GOOD: 0, Verdict.LOOK: 1, Verdict.NO: 2}


@dataclass(frozen=True, slots=True)
class Finding:
    """One measurement with its verdict; ``measured`` and ``limit`` in ``unit``."""

    what: str
    where: str
    measured: float
    limit: float
    verdict: Verdict
    remedy: str = ""
    unit: str = "mm"

    @property
    def told(self) -> str:
        """What was measured and its limit in words.

        >>> Finding("pitch", "rim", 3.384, 3.4, Verdict.GOOD).told
        '3.38 mm, limit 3.40 mm'
        """
        return f"{mm(self.measured)} {self.unit}".rstrip() + f", limit {mm(self.limit)} {self.unit}".rstrip()


def worst(findings: Iterable[Finding]) -> Verdict:
    """The worst verdict among the findings; good when there are none.

    >>> worst([Finding("pitch", "rim", 3.4, 3.4, Verdict.LOOK)]).value
    'look'
    """
    return max((f.verdict for f in findings), key=lambda v: _RANK[v], default=Verdict.GOOD)


def is_worse(verdict: Verdict, than: Verdict) -> bool:
    """Whether a verdict is worse than another.

    >>> is_worse(Verdict.LOOK, than=Verdict.NO)
    False
    """
    return _RANK[verdict] > _RANK[than]


def reaches(measured: float, limit: float) -> bool:
    """Whether what was measured is as much as its limit; a micrometre is forgiven.

    >>> reaches(1.4995, 1.5), reaches(1.49, 1.5)
    (True, False)
    """
    return measured >= limit - FORGIVEN


def at_least(measured: float, good: float, tolerable: float) -> Verdict:
    """``good`` from ``good`` up, ``look`` from ``tolerable`` up, else ``no``; a micrometre is forgiven.

    >>> at_least(1.2, 1.5, 1.0).value
    'look'
    """
    if reaches(measured, good):
        return Verdict.GOOD
    return Verdict.LOOK if reaches(measured, tolerable) else Verdict.NO


def at_most(measured: float, good: float, tolerable: float) -> Verdict:
    """``good`` up to ``good``, ``look`` up to ``tolerable``, else ``no``; a micrometre is forgiven."""
    return at_least(-measured, -good, -tolerable)
