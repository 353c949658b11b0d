"""JSON files: the same bytes for the same data, numbers that any reader takes for what they are."""

from __future__ import annotations

import json
from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternforge.errors import GeometryError
from patternforge.export.json import json_bytes

scalars = st.none() | st.booleans() | st.integers(-(10**9), 10**9) | st.floats(-1e6, 1e6) | st.text(max_size=20)
documents = st.dictionaries(
    st.text(max_size=8),
    st.recursive(scalars, lambda inner: st.lists(inner, max_size=6) | st.dictionaries(st.text(max_size=8), inner)),
)


def rounded(value: object) -> object:
    """What a reader is to find: every float to a billionth."""
    if isinstance(value, dict):
        return {key: rounded(each) for key, each in value.items()}
    if isinstance(value, list):
        return [rounded(each) for each in value]
    return round(value, 9) if isinstance(value, float) else value


@given(documents)
def test_any_plain_data_reads_back_as_it_was(document: dict[str, object]) -> None:
    assert json.loads(json_bytes(document)) == rounded(document)


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (85.60, "85.6"),
        (1e-9, "0.000000001"),
        (-1e-12, "0"),
        (-0.0, "0"),
        (0.1 + 0.2, "0.3"),
        (123456.0, "123456"),
        (7, "7"),
    ],
)
def test_numbers_have_no_exponent_no_negative_zero_and_no_rounding_dust(value: float, written: str) -> None:
    assert json_bytes({"n": value}) == f'{{"n": {written}}}\n'.encode()


@pytest.mark.parametrize("value", [nan, inf, -inf])
def test_a_number_that_is_not_finite_is_refused(value: float) -> None:
    with pytest.raises(GeometryError, match="must be finite"):
        json_bytes({"n": [1.0, value]})


@pytest.mark.parametrize("value", [(1, 2), {1: "a"}, {"a": {3}}, b"bytes"])
def test_what_json_does_not_know_is_refused(value: object) -> None:
    with pytest.raises(TypeError, match="JSON file"):
        json_bytes({"n": value})


def test_keys_keep_their_order_and_letters_stay_letters_in_utf_8() -> None:
    assert json_bytes({"z": "Köper", "a": 1}) == '{"z": "Köper", "a": 1}\n'.encode()


def test_long_lists_stand_one_row_to_a_line_and_no_short_row_is_broken() -> None:
    lines = json_bytes({"outline": [[float(i), 0.5, 0.0] for i in range(40)]}).decode().splitlines()
    assert lines[:3] == ["{", '  "outline": [', "    [0, 0.5, 0],"]
    assert len(lines) == 44
