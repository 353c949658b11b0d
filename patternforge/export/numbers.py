"""Numbers as they stand in files: a set number of decimals, no exponent, no negative zero, no locale."""

from __future__ import annotations

from math import isfinite

from patternforge.errors import GeometryError
from patternforge.units import mm

__all__ = ["decimal", "rounded"]


def rounded(value: float, decimals: int = 6) -> float:
    """``value`` to ``decimals`` places (0 to 12), never a negative zero; GeometryError if it is not finite.

    >>> rounded(85.60000000049), str(rounded(-1e-9))
    (85.6, '0.0')
    """
    if not isfinite(value):
        raise _not_finite(value)
    # Adding zero turns the negative zero that rounding may leave into a plain one.
    return round(value, decimals) + 0.0


def decimal(value: float, decimals: int) -> str:
    """``value`` as text with at most ``decimals`` places (0 to 12), trailing zeros cut; GeometryError as in rounded.

    >>> decimal(85.60, 4), decimal(-0.00001, 4), decimal(1e-6, 6), decimal(210.0, 4)
    ('85.6', '0', '0.000001', '210')
    """
    try:
        text = mm(value, decimals)
    except ValueError:
        raise _not_finite(value) from None
    return text.rstrip("0").rstrip(".") if decimals else text


def _not_finite(value: float) -> GeometryError:
    return GeometryError(f"a drawing holds the number {value}; every size in it must be finite")
