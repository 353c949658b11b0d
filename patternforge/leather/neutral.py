"""What folded test strips say of a leather: where its neutral fibre lies, and how far the readings can be trusted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi

from patternforge.errors import DraftError
from patternforge.leather.fold import neutral_from_strip

__all__ = ["READING", "Neutral", "StripFold", "neutral_of"]

READING = 0.1  # mm that a leg can be misread by with a good rule; common practice, no source


@dataclass(frozen=True, slots=True)
class StripFold:
    """How strips were folded: their length, the gauge inside the bend and the thickness of the leather, mm."""

    length: float
    gauge: float
    thickness: float


@dataclass(frozen=True, slots=True)
class Neutral:
    """The neutral value in thicknesses from the inside: the mean of the strips and what each of them says.

    ``sure`` is how far the mean may be off when every leg may be misread by ``READING``.
    """

    mean: float
    each: tuple[float, ...]
    sure: float

    @property
    def spread(self) -> float:
        """The largest less the smallest of what the strips say."""
        return max(self.each) - min(self.each)


def neutral_of(fold: StripFold, legs: Sequence[float]) -> Neutral:
    """The neutral value from the sum of both legs of each strip, mm.

    A bend is pi (gauge / 2 + k thickness) long, so both legs misread by 0.1 mm each the same way move k by
    0.2 / (pi thickness); of several strips the mean is surer by the root of their number. DraftError when there is no
    reading or one puts the fibre outside of the leather.

    >>> found = neutral_of(StripFold(100.0, 3.0, 1.2), [98.8, 98.6])
    >>> round(found.mean, 3), round(found.sure, 3)
    (0.527, 0.038)
    """
    if not legs:
        raise DraftError("no reading is given: fold a strip and read both of its legs")
    each = tuple(neutral_from_strip(fold.length, both, fold.gauge, fold.thickness) for both in legs)
    return Neutral(sum(each) / len(each), each, 2 * READING / (pi * fold.thickness) / len(each) ** 0.5)
