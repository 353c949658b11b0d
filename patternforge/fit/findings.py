"""Findings: what was measured on the pieces, where, against which limit, and what to do about it."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from patternforge.units import mm

__all__ = [
    "FORGIVEN",
    "Bound",
    "Finding",
    "Limit",
    "Stretch",
    "Verdict",
    "at_least",
    "at_most",
    "is_worse",
    "number",
    "reaches",
    "within",
    "worst",
]

FORGIVEN = 1e-3
"""What a measure may miss its limit by and still meet it, mm or what else it is in: finer than any tool."""


HUNDREDTHS = 2
"""Decimals of what is printed, unless a verdict needs more of them."""


class Verdict(StrEnum):
    """``good`` may be cut; ``look`` wants the maker's eye; ``no`` would spoil leather."""

    GOOD = "good"
    LOOK = "look"
    NO = "no"


_RANK = {Verdict.GOOD: 0, Verdict.LOOK: 1, Verdict.NO: 2}


class Bound(StrEnum):
    """Which way a limit binds."""

    AT_LEAST = "at least"
    AT_MOST = "at most"
    BETWEEN = "between"


@dataclass(frozen=True, slots=True)
class Stretch:
    """The measures from ``low`` to ``high``; an end that is infinite does not bind."""

    low: float = -math.inf
    high: float = math.inf

    def holds(self, measured: float) -> bool:
        """Whether a measure lies in it; a micrometre is forgiven.

        >>> Stretch(low=1.5).holds(1.4995), Stretch(-0.5, 0.5).holds(-0.6)
        (True, False)
        """
        return self.low - FORGIVEN <= measured <= self.high + FORGIVEN

    @property
    def bound(self) -> Bound:
        """Which of its ends bind; at most anything where neither does."""
        if math.isinf(self.low):
            return Bound.AT_MOST
        return Bound.AT_LEAST if math.isinf(self.high) else Bound.BETWEEN

    @property
    def ends(self) -> tuple[float, ...]:
        """The ends that bind, the low one first."""
        return tuple(end for end in (self.low, self.high) if math.isfinite(end))

    def rounded(self, decimals: int) -> Stretch:
        """It with its ends as they are printed."""
        return Stretch(round(self.low, decimals), round(self.high, decimals))

    def told(self, unit: str = "mm", decimals: int = HUNDREDTHS) -> str:
        """Which way it binds, and where.

        >>> Stretch(low=1.5).told(), Stretch(high=0.0).told(""), Stretch(-0.5, 0.5).told()
        ('at least 1.50 mm', 'at most 0', 'between -0.50 and 0.50 mm')
        """
        ends = " and ".join(number(end, unit, decimals) for end in self.ends)
        return f"{self.bound} {ends} {unit}".rstrip()


@dataclass(frozen=True, slots=True)
class Limit:
    """The measures that are ``good``, and the ``tolerable`` ones beyond them; all others read ``no``."""

    good: Stretch
    tolerable: Stretch

    def verdict(self, measured: float) -> Verdict:
        """What comes of a measure; a micrometre is forgiven.

        >>> at_least(1.5, 1.0).verdict(1.2).value
        'look'
        """
        if self.good.holds(measured):
            return Verdict.GOOD
        return Verdict.LOOK if self.tolerable.holds(measured) else Verdict.NO


@dataclass(frozen=True, slots=True)
class Finding:
    """One measurement against its limit, both in ``unit``; without a unit it is a count.

    What is good needs no remedy: whichever is given is left out.
    """

    what: str
    where: str
    measured: float
    limit: Limit
    remedy: str = ""
    unit: str = "mm"

    def __post_init__(self) -> None:
        if self.verdict is Verdict.GOOD:
            object.__setattr__(self, "remedy", "")

    @property
    def verdict(self) -> Verdict:
        """What comes of it."""
        return self.limit.verdict(self.measured)

    @property
    def size(self) -> str:
        """What was measured, with as many decimals as tell on which side of its limit it is.

        >>> [Finding("pitch", "rim", size, at_least(3.4, 3.0)).size for size in (3.384, 3.397)]
        ['3.38 mm', '3.397 mm']
        """
        return f"{number(self.measured, self.unit, self._decimals)} {self.unit}".rstrip()

    @property
    def asked(self) -> str:
        """What is good, with as many decimals as ``size``.

        >>> Finding("pitch", "rim", 2.0305, at_least(2.034, 1.0)).asked
        'at least 2.034 mm'
        """
        return self.limit.good.told(self.unit, self._decimals)

    @property
    def _decimals(self) -> int:
        """Hundredths, or thousandths where measure and limit as they are printed would tell another verdict."""
        printed = Limit(self.limit.good.rounded(HUNDREDTHS), self.limit.tolerable.rounded(HUNDREDTHS))
        agrees = printed.verdict(round(self.measured, HUNDREDTHS)) is self.verdict
        return HUNDREDTHS if agrees or not self.unit else HUNDREDTHS + 1

    @property
    def told(self) -> str:
        """What was measured, and the limit that it keeps to or has crossed, in words.

        >>> Finding("pitch", "rim", 3.384, at_least(3.4, 3.0)).told
        '3.38 mm, good at least 3.40 mm'
        >>> Finding("pitch", "rim", 2.9, at_least(3.4, 3.0)).told
        '2.90 mm, tolerable at least 3.00 mm'
        """
        if self.verdict is Verdict.NO:
            return f"{self.size}, tolerable {self.limit.tolerable.told(self.unit, self._decimals)}"
        return f"{self.size}, good {self.asked}"


def number(value: float, unit: str, decimals: int = HUNDREDTHS) -> str:
    """What was measured or its limit as a number with so many decimals; a count, which has no unit, whole.

    >>> number(3.384, "mm"), number(2, "")
    ('3.38', '2')
    """
    return mm(value, decimals) if unit else mm(value, 0)


def worst(findings: Iterable[Finding]) -> Verdict:
    """The worst verdict among the findings; good when there are none.

    >>> worst([Finding("pitch", "rim", 3.3, at_least(3.4, 3.0))]).value
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


def at_least(good: float, tolerable: float) -> Limit:
    """``good`` from ``good`` up, ``look`` from ``tolerable`` up, else ``no``."""
    return Limit(Stretch(low=good), Stretch(low=tolerable))


def at_most(good: float, tolerable: float) -> Limit:
    """``good`` up to ``good``, ``look`` up to ``tolerable``, else ``no``."""
    return Limit(Stretch(high=good), Stretch(high=tolerable))


def within(good: float, tolerable: float, of: float = 0.0) -> Limit:
    """``good`` up to ``good`` from a size on either side, ``look`` up to ``tolerable`` from it, else ``no``."""
    return Limit(Stretch(of - good, of + good), Stretch(of - tolerable, of + tolerable))
