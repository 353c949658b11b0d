"""Arithmetic with lengths and names."""

from __future__ import annotations

import math

import pytest

from patternforge.design.arithmetic import LOST, Value, as_length, as_number, evaluated, names_in
from patternforge.units import MeasureError

_NAMES = {
    "margin": Value(3.5, 1),
    "card.length": Value(85.6, 1),
    "slots": Value(3.0),
    "lost": LOST,
    "huge": Value(1e9),
}


def _length(text: str) -> float:
    return as_length(evaluated(text, _NAMES.__getitem__))


def _number(text: str) -> float:
    return as_number(evaluated(text, _NAMES.__getitem__))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("card.length + 2 * margin + 1.5 mm", 94.1),
        ("10 mm - 2 mm - 3 mm", 5.0),
        ("24 mm / 2 / 3", 4.0),
        ("2 + 3 * 4", 14.0),
        ("(2 + 3) * 4", 20.0),
        ("-margin", -3.5),
        ("-(margin - 10 mm)", 6.5),
        ("2 * -margin", -7.0),
        ("slots * margin", 10.5),
        ("margin * margin / margin", 3.5),
        ("1/8 in + 1 mm", 4.175),
        ("3/8 in * 2", 19.05),
        ("1 mm+1cm", 11.0),
        ("1 mm\n+ 1 mm", 2.0),
        ("12", 12.0),
    ],
)
def test_a_length_comes_to_what_is_written(text: str, expected: float) -> None:
    assert _length(text) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "expected"), [("slots - 1", 2.0), ("card.length / margin", 85.6 / 3.5), ("6 / 4", 1.5)]
)
def test_a_plain_number_comes_to_what_is_written(text: str, expected: float) -> None:
    assert _number(text) == expected


@pytest.mark.parametrize("text", ["slots", "margin * margin", "1 / margin", "margin / margin"])
def test_a_length_is_nothing_else(text: str) -> None:
    with pytest.raises(MeasureError, match="where a length is wanted"):
        _length(text)


@pytest.mark.parametrize("text", ["margin", "1 mm", "margin * slots", "1 / margin"])
def test_a_plain_number_is_nothing_else(text: str) -> None:
    with pytest.raises(MeasureError, match="where a plain number is wanted"):
        _number(text)


@pytest.mark.parametrize("text", ["lost", "lost + margin", "2 * lost", "lost / margin", "margin / lost", "-lost"])
def test_what_comes_of_a_lost_value_is_lost_and_no_second_fault(text: str) -> None:
    assert math.isnan(_length(text))


@pytest.mark.parametrize("text", ["huge * huge", "huge * huge * huge * huge - huge * huge * huge * huge"])
def test_nothing_grows_to_infinity(text: str) -> None:
    with pytest.raises(MeasureError, match="far too large"):
        _number(text)


def test_twenty_brackets_are_lawful_and_one_more_is_not() -> None:
    assert _length("(" * 20 + "1 mm" + ")" * 20) == 1.0
    with pytest.raises(MeasureError, match="20 levels"):
        _length("(" * 21 + "1 mm" + ")" * 21)


def test_words_are_names_by_their_first_part() -> None:
    assert names_in("2 * card.length + (margin) - 3 mm") == {"card", "margin", "mm"}
