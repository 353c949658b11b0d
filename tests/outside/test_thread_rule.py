"""Thread of a saddle-stitched seam against the rules the trade goes by.

A rule of the trade names a factor for a leather and leaves the pitch open; the pitch then is the range in print for
such work (completecalculators.com, stitches per inch): 3.0 to 3.38 mm for small wallets, 3.85 to 4.0 mm in general,
4.5 to 5 mm for belts. Two layers of the leather are sewn.
"""

from __future__ import annotations

import pytest

from patternforge.leather.thread import thread_length
from patternforge.units import MM_PER_INCH, MM_PER_OUNCE

SMALL, GENERAL, BELTS = (3.0, 3.38), (3.85, 4.0), (4.5, 5.0)


def factor(pitch: float, stack: float) -> float:
    return thread_length([pitch] * 100, [stack] * 100, 0.0) / (100 * pitch)


@pytest.mark.parametrize(
    ("leather", "pitches", "printed"),
    # superglobalcalculator.com, leatherworking, thread length: factor by thickness of the leather.
    [
        ((0.8, 1.2), SMALL, 3.5),
        ((1.6, 2.0), GENERAL, 4.0),
        ((2.4, 2.8), GENERAL, 4.5),
        ((3.2, 3.6), BELTS, 5.0),
    ],
)
def test_the_factor_in_print_lies_within_its_leathers_and_pitches(
    leather: tuple[float, float], pitches: tuple[float, float], printed: float
) -> None:
    assert factor(max(pitches), 2 * min(leather)) < printed < factor(min(pitches), 2 * max(leather))


@pytest.mark.parametrize(
    ("seam_inches", "ounces", "pitches", "printed_inches"),
    # The same page's worked values: 12 in of 3 oz, 42 in and 6 in of tails; 24 in of 5 oz, 96 in and 6 in of tails.
    [(12, 3, SMALL, 48), (24, 5, GENERAL, 102)],
)
def test_the_worked_values_in_print_lie_within_their_pitches(
    seam_inches: float, ounces: float, pitches: tuple[float, float], printed_inches: float
) -> None:
    least, most = sorted(
        thread_length([pitch] * count, [2 * ounces * MM_PER_OUNCE] * count, 6 * MM_PER_INCH)
        for pitch in pitches
        for count in [round(seam_inches * MM_PER_INCH / pitch)]
    )
    assert least < printed_inches * MM_PER_INCH < most


def test_a_wallet_seam_takes_three_and_a_half_to_four_times_its_length() -> None:
    # Craft book on stitching leather (chestofbooks.com): 3.5 times the seam. Crafters' guide: 4 times. Wallet seams
    # of 2.5 to 3.4 mm on a 3.38 mm iron are common practice, no source; both rules are in halves, so to 0.1.
    assert factor(3.38, 2.5) == pytest.approx(3.5, abs=0.1)
    assert factor(3.38, 3.4) == pytest.approx(4.0, abs=0.1)


def test_two_threads_locked_in_the_middle_take_what_the_mill_reckons() -> None:
    # textilecalculations.com, lockstitch 301: 2 + 2 T S inches for each inch of seam, T the thickness in inches and
    # S stitches per inch; T 0.01, S 10 give 2.2 in. Either way two threads cover the seam and the stack once each.
    assert thread_length([0.1 * MM_PER_INCH] * 10, [0.01 * MM_PER_INCH] * 10, 0.0) == pytest.approx(2.2 * MM_PER_INCH)
