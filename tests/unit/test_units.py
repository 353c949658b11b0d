"""Text to mm and back."""

from __future__ import annotations

import math

import pytest

from patternforge.units import (
    MM_PER_FRENCH_INCH,
    MM_PER_INCH,
    MM_PER_OUNCE,
    MeasureError,
    angle,
    counted,
    inches,
    length_mm,
    mm,
    pitch_mm,
    quantity_at,
    thickness,
    untrapped,
)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("3.5", 3.5),
        ("3.5 mm", 3.5),
        ("3.5mm", 3.5),
        (" 3.5 mm ", 3.5),
        ("3,5 mm", 3.5),
        ("0,125 in", 3.175),
        ("0.35 cm", 3.5),
        ("1 in", 25.4),
        ('1"', 25.4),
        ("1/8 in", 3.175),
        ("1 / 8 in", 3.175),
        ('3/8"', 9.525),
        ("9 3/8 in", 238.125),
        ("1 1/2 in", 38.1),
        (".5 in", 12.7),
        ("-3 mm", -3.0),
        ("+3 mm", 3.0),
        ("2.5 oz", 0.9921875),
        ("0 mm", 0.0),
    ],
)
def test_a_length_is_the_nearest_number_to_what_is_written(text: str, expected: float) -> None:
    assert length_mm(text) == expected


@pytest.mark.parametrize(
    ("text", "wording"),
    [
        ("", "no number"),
        ("mm", "is not a length"),
        ("--3", "is not a length"),
        ("3 mm 4", "is not a length"),
        ("card.length", "is not a length"),
        ("3 inch", "'inch' is not a unit"),
        ("1,2", "one number or two"),
        ("1,200 mm", "1.200 or 1200"),
        ("012", "octal"),
        ("007 mm", "octal"),
        ("1:30", "clock time"),
        ("1:30:15", "clock time"),
        ("yes", "yes-or-no"),
        ("OFF", "yes-or-no"),
        ("n", "yes-or-no"),
        ("nan", "finite"),
        ("-.INF", "finite"),
        ("1e3", "plain decimal"),
        ("1E", "plain decimal"),
        ("0x10", "plain decimal"),
        ("1_000", "plain decimal"),
        ("３", "0 to 9"),
        ("1000000000", "far too large"),
        ("5/0 in", "divides by zero"),
        ("1" * 201, "201 characters"),
    ],
)
def test_what_is_no_length_is_refused_with_its_own_reason(text: str, wording: str) -> None:
    with pytest.raises(MeasureError, match=wording):
        length_mm(text)


def test_a_unit_may_not_run_into_a_longer_word() -> None:
    with pytest.raises(MeasureError, match="'1/8 inner' is not a length"):
        length_mm("1/8 inner")


def test_a_quantity_ends_behind_its_unit() -> None:
    quantity = quantity_at("2 * 3 mm + 1", 4)
    assert quantity is not None
    assert (quantity.value, quantity.unit, quantity.end) == (3.0, "mm", 8)


def test_no_quantity_stands_where_no_digit_does() -> None:
    assert quantity_at("margin") is None


# Bands of leather as a trade table prints them, in mm to one decimal: superglobalcalculator.com, leather thickness.
@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("1-2 oz", (0.4, 0.8)),
        ("2-3 oz", (0.8, 1.2)),
        ("3-4 oz", (1.2, 1.6)),
        ("4–5 oz", (1.6, 2.0)),
        ("5 to 6 oz", (2.0, 2.4)),
        ("6 oz - 7 oz", (2.4, 2.8)),
        ("7-8 oz", (2.8, 3.2)),
        ("8-10 oz", (3.2, 4.0)),
    ],
)
def test_bands_in_ounces_agree_with_the_printed_table(text: str, printed: tuple[float, float]) -> None:
    low, high = thickness(text)
    assert (round(low, 1), round(high, 1)) == printed


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1.2-1.6 mm", (1.2, 1.6)),
        ("1,2-1,4 mm", (1.2, 1.4)),
        ("1.2 mm", (1.2, 1.2)),
        ("1.2", (1.2, 1.2)),
        ("1 mm-0.2 cm", (1.0, 2.0)),
        ("2-2 oz", (0.79375, 0.79375)),
    ],
)
def test_a_thickness_is_a_value_or_a_range(text: str, expected: tuple[float, float]) -> None:
    assert thickness(text) == expected


@pytest.mark.parametrize(("text", "wording"), [("1.6-1.2 mm", "downwards"), ("3-4", "no unit"), ("3-4 x", "'x'")])
def test_what_is_no_thickness_is_refused(text: str, wording: str) -> None:
    with pytest.raises(MeasureError, match=wording):
        thickness(text)


@pytest.mark.parametrize(("text", "expected"), [("180", 180.0), ("-90 deg", -90.0), ("45°", 45.0), ("22.5deg", 22.5)])
def test_an_angle_may_say_degrees(text: str, expected: float) -> None:
    assert angle(text) == expected


def test_an_angle_is_not_a_length() -> None:
    with pytest.raises(MeasureError, match="not an angle"):
        angle("45 mm")


# Iron numbers and the pitch a community guide of 2016 to stitches per inch prints for them, in mm.
@pytest.mark.parametrize(
    ("number", "printed"), [(5, 5.4), (6, 4.5), (7, 3.9), (8, 3.4), (9, 3.0), (10, 2.7), (12, 2.3), (14, 1.9)]
)
def test_pitches_per_french_inch_agree_with_the_printed_list(number: int, printed: float) -> None:
    assert round(pitch_mm(f"{number} per French inch"), 1) == printed


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("3.38 mm", 3.38),
        ("8 per inch", 3.175),
        ("8 PER INCH", 3.175),
        ("1/8 in", 3.175),
        ("7,5 per inch", 25.4 / 7.5),
    ],
)
def test_a_pitch_is_a_length_or_a_count_in_an_inch(text: str, expected: float) -> None:
    assert pitch_mm(text) == expected


@pytest.mark.parametrize(
    ("text", "wording"), [("8", "no unit"), ("0 per inch", "no stitch"), ("8 per foot", "'per'")]
)
def test_a_pitch_that_could_mean_two_things_is_refused(text: str, wording: str) -> None:
    with pytest.raises(MeasureError, match=wording):
        pitch_mm(text)


def test_a_measure_error_says_what_and_what_to_do() -> None:
    with pytest.raises(MeasureError) as caught:
        untrapped("½")
    assert (caught.value.what, caught.value.remedy) == ("'½' cannot be read here", "write 1/2")


@pytest.mark.parametrize(
    ("value", "decimals", "expected"),
    [
        (3.14159, 2, "3.14"),
        (-0.001, 2, "0.00"),
        (-0.0, 1, "0.0"),
        (95.0, 0, "95"),
        (-1.005, 1, "-1.0"),
        (1e-9, 3, "0.000"),
    ],
)
def test_a_number_leaves_with_fixed_decimals_and_no_negative_zero(value: float, decimals: int, expected: str) -> None:
    assert mm(value, decimals) == expected


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_number_without_end_does_not_leave(value: float) -> None:
    with pytest.raises(ValueError, match="cannot be written"):
        mm(value)


# ISO/IEC 7810 gives both systems for ID-1: 85.60 x 53.98 mm and 3.370 x 2.125 in, each rounded by itself.
@pytest.mark.parametrize(("value", "printed"), [(85.60, "3.370"), (53.98, "2.125")])
def test_inches_of_a_card_agree_with_the_standard(value: float, printed: str) -> None:
    assert inches(value) == printed


def test_units_are_those_of_print() -> None:
    # Inch: exact by definition. Ounce of leather: 1/64 in, ASTM D1814 1.2. French inch: sizes.com, "pouce".
    assert (MM_PER_INCH, MM_PER_OUNCE, MM_PER_FRENCH_INCH) == (25.4, 0.396875, 27.07)


@pytest.mark.parametrize(
    ("number", "told"), [(0, "0 open lines"), (1, "1 open line"), (2, "2 open lines"), (300, "300 open lines")]
)
def test_so_many_of_a_thing(number: int, told: str) -> None:
    assert counted(number, "open line") == told
