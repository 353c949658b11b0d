"""Numbers read are the numbers written."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.design.arithmetic import Value, as_length, evaluated
from patternforge.units import MeasureError, inches, length_mm, mm, thickness, untrapped

_LENGTHS = st.floats(-9_999, 9_999, allow_nan=False)
_NO_NAMES: dict[str, Value] = {}
_COUNTS = st.integers(1, 99)


@given(_LENGTHS, st.integers(0, 9))
@settings(max_examples=100)
def test_a_length_written_and_read_again_is_off_by_half_the_last_decimal_at_most(value: float, decimals: int) -> None:
    assert abs(length_mm(f"{mm(value, decimals)} mm") - value) <= 0.5 * 10.0**-decimals + 1e-9


@given(_LENGTHS, st.integers(0, 9))
@settings(max_examples=100)
def test_a_length_read_again_is_written_the_same(value: float, decimals: int) -> None:
    text = mm(value, decimals)
    assert mm(length_mm(text), decimals) == text


@given(_LENGTHS, st.integers(0, 9))
@settings(max_examples=100)
def test_a_written_number_has_its_decimals_and_no_negative_zero(value: float, decimals: int) -> None:
    whole, _, rest = mm(value, decimals).partition(".")
    assert len(rest) == decimals
    assert whole.startswith("-") == (float(f"{value:.{decimals}f}") < 0)


@given(st.integers(0, 20), _COUNTS, _COUNTS)
@settings(max_examples=100)
def test_a_fraction_of_an_inch_is_the_nearest_number_to_its_exact_value(whole: int, over: int, under: int) -> None:
    exact = float((whole + Fraction(over, under)) * Fraction(254, 10))
    assert length_mm(f"{whole} {over}/{under} in") == exact
    assert evaluated(f"{whole} {over}/{under} in", _NO_NAMES.__getitem__) == Value(exact, 1)


@given(st.integers(0, 999), st.integers(1, 99))
@settings(max_examples=100)
def test_a_decimal_comma_with_a_unit_is_a_decimal_point(whole: int, rest: int) -> None:
    assert length_mm(f"{whole},{rest:02} mm") == length_mm(f"{whole}.{rest:02} mm")


@given(st.integers(1, 8000))
@settings(max_examples=100)
def test_inches_and_mm_of_one_length_agree(sixty_fourths: int) -> None:
    value = sixty_fourths * 25.4 / 64
    assert length_mm(f"{inches(value, 6)} in") == pytest.approx(value, abs=2e-5)


@given(st.integers(1, 400), st.integers(1, 400), st.sampled_from(["mm", "oz", "in", "cm"]))
@settings(max_examples=100)
def test_a_range_holds_both_its_ends_or_is_refused(first: int, last: int, unit: str) -> None:
    text = f"{first / 10}-{last / 10} {unit}"
    if first > last:
        with pytest.raises(MeasureError, match="downwards"):
            thickness(text)
    else:
        assert thickness(text) == (length_mm(f"{first / 10} {unit}"), length_mm(f"{last / 10} {unit}"))


_SUMS = st.recursive(
    st.tuples(st.integers(1, 40).map(lambda n: n / 4), st.just(1)),
    lambda inner: st.tuples(inner, st.sampled_from("+-"), inner) | st.tuples(st.integers(2, 5), st.just("*"), inner),
    max_leaves=6,
)


def _text(tree: object) -> str:
    match tree:
        case (float(length), 1):
            return f"{length} mm"
        case (int(factor), "*", inner):
            return f"{factor} * ({_text(inner)})"
        case (first, str(sign), second):
            return f"({_text(first)}) {sign} ({_text(second)})"
    raise AssertionError(tree)


def _worth(tree: object) -> float:
    match tree:
        case (float(length), 1):
            return length
        case (int(factor), "*", inner):
            return factor * _worth(inner)
        case (first, str(sign), second):
            return _worth(first) + _worth(second) if sign == "+" else _worth(first) - _worth(second)
    raise AssertionError(tree)


@given(_SUMS.filter(lambda tree: len(_text(tree)) <= 200))
@settings(max_examples=100)
def test_a_sum_comes_to_what_it_says(tree: object) -> None:
    assert as_length(evaluated(_text(tree), _NO_NAMES.__getitem__)) == _worth(tree)


def _value_or_error(text: str) -> Value | MeasureError:
    try:
        return evaluated(text, lambda _: Value(2.0, 1))
    except MeasureError as error:
        return error


@given(st.text(max_size=40) | st.text("0123456789.,/+-*() minco", max_size=20))
@settings(max_examples=100)
def test_any_text_is_arithmetic_or_refused(text: str) -> None:
    value = _value_or_error(text)
    if isinstance(value, MeasureError):
        assert value.what
        assert value.remedy
    else:
        assert abs(value.number) <= 1e12
        assert untrapped(text)
