from __future__ import annotations

from math import inf, nan

import pytest

from patternforge.errors import GeometryError
from patternforge.export.numbers import decimal, rounded


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [
        (0.0, 4, "0"),
        (-0.0, 4, "0"),
        (-0.00004, 4, "0"),
        (-0.00006, 4, "-0.0001"),
        (100.0, 4, "100"),
        (100.0, 0, "100"),
        (1e-6, 6, "0.000001"),
        (1e16, 2, "10000000000000000"),
        (0.1 + 0.2, 12, "0.3"),
        (85.605, 1, "85.6"),
    ],
)
def test_a_number_is_written_without_exponent_idle_zeros_or_negative_zero(
    value: float, decimals: int, text: str
) -> None:
    assert decimal(value, decimals) == text


def test_rounding_leaves_no_negative_zero() -> None:
    assert [str(rounded(value)) for value in (-0.0, -4e-7, -6e-7)] == ["0.0", "0.0", "-1e-06"]


@pytest.mark.parametrize("value", [inf, -inf, nan])
def test_a_number_that_is_not_finite_is_refused(value: float) -> None:
    with pytest.raises(GeometryError, match="finite"):
        decimal(value, 4)
    with pytest.raises(GeometryError, match="finite"):
        rounded(value)
