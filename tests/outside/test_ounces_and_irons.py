"""Ounces of thickness and iron numbers against printed tables."""

from __future__ import annotations

import pytest

from patternforge.leather.stitching import pitch_of_french_number, pitch_per_inch
from patternforge.units import MM_PER_INCH, MM_PER_OUNCE, thickness

# Trade "Leather Thickness Conversion Chart": 0.4 mm to the ounce, one decimal.
PRINTED_OUNCES = {1: 0.4, 2: 0.8, 3: 1.2, 4: 1.6, 5: 2.0, 6: 2.4, 7: 2.8, 8: 3.2, 9: 3.6, 10: 4.0, 12: 4.8, 16: 6.4}

# Trade list of pricking irons in a leather workers' community "Guide to Thread Sizes and Stitches Per Inch (SPI) for
# Handsewing" (2016): iron number to pitch, one decimal.
PRINTED_IRONS = {5: 5.4, 6: 4.5, 7: 3.9, 8: 3.4, 9: 3.0, 10: 2.7, 12: 2.3, 14: 1.9}


def test_an_ounce_is_a_sixty_fourth_of_an_inch() -> None:
    # ASTM D1814, 1.2: 1 oz = 1/64 in = 0.0156 in = 0.396 mm (cut off, not rounded, in print).
    assert pytest.approx(1 / 64 * 25.4, abs=1e-12) == MM_PER_OUNCE
    assert pytest.approx(0.396, abs=0.001) == MM_PER_OUNCE


def test_sixteen_ounces_are_twelve_shoe_irons() -> None:
    # ASTM D1814, 1.2: the iron of sole leather is 1/48 in, so that an ounce is 0.75 iron and 16 oz are 12 irons,
    # 6.35 mm (re-enactors' page "Thickness and Weight Conversions").
    low, high = thickness("16 oz")
    assert low == high == pytest.approx(12 * MM_PER_INCH / 48)
    assert low == pytest.approx(6.35)


@pytest.mark.parametrize(("ounces", "printed"), PRINTED_OUNCES.items())
def test_an_ounce_table_rounds_up_by_less_than_one_percent(ounces: int, printed: float) -> None:
    low, high = thickness(f"{ounces} oz")
    assert low == high
    assert printed * 0.99 < low < printed


@pytest.mark.parametrize(
    ("band", "low", "high"),
    # Bands as printed by superglobalcalculator.com, leather thickness converter.
    [
        ("1-2 oz", 0.4, 0.8),
        ("2-3 oz", 0.8, 1.2),
        ("3-4 oz", 1.2, 1.6),
        ("4-5 oz", 1.6, 2.0),
        ("5-6 oz", 2.0, 2.4),
        ("6-7 oz", 2.4, 2.8),
        ("7-8 oz", 2.8, 3.2),
        ("8-10 oz", 3.2, 4.0),
    ],
)
def test_a_band_of_ounces_is_the_printed_band(band: str, low: float, high: float) -> None:
    assert thickness(band) == pytest.approx((low, high), rel=0.01)


@pytest.mark.parametrize(("number", "printed"), PRINTED_IRONS.items())
def test_an_iron_number_on_the_old_french_inch_gives_the_trades_pitch(number: int, printed: float) -> None:
    # French inch of 27.07 mm: sizes.com, "pouce". One decimal in print.
    assert pitch_of_french_number(number) == pytest.approx(printed, abs=0.05)


def test_an_iron_number_on_the_english_inch_does_not_give_the_trades_pitch() -> None:
    apart = [abs(pitch_per_inch(number) - printed) for number, printed in PRINTED_IRONS.items()]
    assert max(apart) > 0.3
    assert min(apart) > 0.05


@pytest.mark.parametrize(
    ("pitch", "stitches"),
    # Stitches per inch as printed by completecalculators.com, stitches-per-inch page, one decimal.
    [(2.7, 9.4), (3.0, 8.5), (3.38, 7.5), (3.85, 6.6), (5.0, 5.1)],
)
def test_stitches_per_english_inch_give_the_printed_pitch(pitch: float, stitches: float) -> None:
    # Half a unit of the last printed digit of the count, carried over to the pitch.
    assert pitch_per_inch(stitches) == pytest.approx(pitch, rel=0.05 / stitches)


def test_the_finest_millimetre_iron_is_number_eleven() -> None:
    # 2.45 mm irons are common practice, no source.
    assert pitch_of_french_number(11) == pytest.approx(2.45, abs=0.02)
