from __future__ import annotations

import pytest

from patternforge.reasons.reason import How, Reason, leaf, less, made, measured, number, same, walked

A, B = leaf("a", 6.0, How.ENTERED, source="a.yaml:3"), leaf("b", 1.5, How.DEFAULT)


@pytest.mark.parametrize(
    ("how", "value"),
    [(How.SUM, 7.5), (How.PRODUCT, 9.0), (How.QUOTIENT, 4.0), (How.LARGEST, 6.0), (How.SMALLEST, 1.5)],
)
def test_a_size_is_worth_what_its_parts_come_to(how: How, value: float) -> None:
    assert made("c", how, (A, B)).value == value


def test_a_drafted_value_stands_whatever_its_parts_come_to() -> None:
    assert made("c", How.SUM, (A, B), 7.6).value == 7.6


def test_what_is_taken_off_counts_against_a_sum() -> None:
    assert made("c", How.SUM, (A, less(B))).value == 4.5


def test_a_size_that_is_another_has_its_value_and_its_unit() -> None:
    area = leaf("hide", 5.0, How.MEASURED, "mm2")
    assert same("piece", area) == Reason("piece", 5.0, "mm2", How.SUM, (area,))


def test_a_reason_is_walked_from_the_top_and_what_stands_twice_is_met_once() -> None:
    twice = made("twice", How.SUM, (A, A))
    top = made("top", How.SUM, (twice, B, A))
    assert [each.name for each in walked(top)] == ["top", "twice", "a", "b"]


def test_numbers_have_no_unit_and_readings_have_words() -> None:
    assert number(2.0).unit == ""
    assert measured("slot", 0.0, words="none").words == "none"
