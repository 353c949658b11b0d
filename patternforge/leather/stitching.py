"""Stitch pitch behind the numbers that tools are sold by.

The same number means two pitches: trade lists of pricking irons count in the old French inch, makers who speak of
stitches per inch mean the English one. So neither is a default.
"""

from __future__ import annotations

from math import isfinite

from patternforge.errors import DraftError
from patternforge.units import MM_PER_FRENCH_INCH, MM_PER_INCH

__all__ = ["pitch_of_french_number", "pitch_per_inch"]


def pitch_of_french_number(number: float) -> float:
    """Pitch of an iron numbered by the old French inch, mm, hole to hole: 27.07 / number.

    ``number`` is greater than 0 (irons run from about 5 to 14); DraftError otherwise.
    Source: the pouce of 27.07 mm (sizes.com, "pouce"); it agrees with the trade's printed list of irons.

    >>> round(pitch_of_french_number(8), 2)
    3.38
    """
    return MM_PER_FRENCH_INCH / _lawful(number)


def pitch_per_inch(number: float) -> float:
    """Pitch of ``number`` stitches per English inch, mm: 25.4 / number, number greater than 0, else DraftError.

    >>> pitch_per_inch(8)
    3.175
    """
    return MM_PER_INCH / _lawful(number)


def _lawful(number: float) -> float:
    if not (isfinite(number) and number > 0):
        raise DraftError(f"{number:g} stitches per inch are not lawful; give a number greater than 0")
    return number
