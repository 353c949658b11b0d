"""Lengths, thicknesses, angles and pitches between text and millimetres, and the one way numbers leave as text.

Lengths are kept in mm. Text may say ``mm``, ``cm``, ``in`` (or ``"``) and ``oz``, the ounce of leather thickness
(1/64 inch, ASTM D1814). Digits are 0-9 only, so that a file means the same everywhere.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

__all__ = [
    "MM2_PER",
    "MM_PER_FOOT",
    "MM_PER_FRENCH_INCH",
    "MM_PER_INCH",
    "MM_PER_M",
    "MM_PER_OUNCE",
    "RANGE",
    "UNITS",
    "MeasureError",
    "Quantity",
    "angle",
    "counted",
    "inches",
    "length_mm",
    "mm",
    "pitch_mm",
    "quantity_at",
    "thickness",
    "untrapped",
]

MM_PER_INCH = 25.4
MM_PER_FOOT = 304.8
MM_PER_M = 1000.0
MM2_PER: Mapping[str, float] = MappingProxyType(
    {"cm2": 100.0, "dm2": 10_000.0, "ft2": MM_PER_FOOT**2, "m2": MM_PER_M**2}
)
"""Square millimetres in the areas that leather is sold and reckoned by."""
MM_PER_OUNCE = MM_PER_INCH / 64
MM_PER_FRENCH_INCH = 27.07
"""Old French inch as the trade's iron numbers use it: 1/12 of the royal foot, rounded (sizes.com, "pouce")."""

_INCH = Fraction("25.4")
UNITS: Mapping[str, Fraction] = MappingProxyType(
    {"mm": Fraction(1), "cm": Fraction(10), "in": _INCH, '"': _INCH, "oz": _INCH / 64}
)
"""Millimetres in each unit, exact, so that a length is the float nearest to what was written."""

_LONGEST_TEXT = 200
_LARGEST_NUMERAL = 1e9
_UNIT_ADVICE = 'the units are mm, cm, in (or ") and oz'
_FRACTION = re.compile(r'(?:(\d+)[ ]+)?(\d+)[ ]*/[ ]*(\d+)[ ]*(?:(mm|cm|in|oz)\b|("))', re.ASCII)
_DECIMAL = re.compile(r'(\d+(?:[.,]\d+)?|\.\d+)(?:([ ]*)([A-Za-z_]\w*)|[ ]*("))?', re.ASCII)
_NUMERAL = r"(\d+(?:[.,]\d+)?|\.\d+)"
RANGE = re.compile(
    rf"{_NUMERAL}[ ]*([A-Za-z]*)[ ]*(?:[-–]|to(?=[ ]))[ ]*{_NUMERAL}[ ]*([A-Za-z]*)",
    re.ASCII,
)
_PITCH = re.compile(rf"{_NUMERAL}[ ]+per[ ]+(French[ ]+)?inch", re.ASCII | re.IGNORECASE)
_READ_AS_TRUTH = frozenset(("yes", "no", "on", "off", "true", "false", "y", "n"))
_LOOKALIKES = {
    "−": "-",
    "–": "-",
    "—": "-",
    "×": "*",
    "·": "*",
    "÷": "/",
    "⁄": "/",
    "″": "in",
    "”": "in",
    "“": "in",
    "¼": "1/4",
    "½": "1/2",
    "¾": "3/4",
    "°": "nothing; degrees are meant where an angle is asked for",
}


class MeasureError(ValueError):
    """A text that is no measure: ``what`` is wrong with it and the ``remedy``."""

    def __init__(self, what: str, remedy: str = "") -> None:
        self.what = what
        self.remedy = remedy
        super().__init__(f"{what}; {remedy}" if remedy else what)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number as written in a text: ``value`` in mm if ``unit`` is given, ``end`` the index behind it."""

    value: float
    unit: str
    end: int


def untrapped(text: str) -> str:
    """The text without outer blanks, once it is sure that it is not one of the well-known mishaps.

    Refused are an empty text, more than 200 characters, digits and signs other than ASCII, words that YAML programs
    read as true or false, clock times (1:30) and the words for infinity.

    >>> untrapped(" 3.5 mm ")
    '3.5 mm'
    >>> untrapped("1:30")
    Traceback (most recent call last):
    patternforge.units.MeasureError: '1:30' is a clock time to many programs; write a number with a decimal point
    """
    stripped = text.strip(" \n")
    if not stripped:
        raise MeasureError("there is no number here", "write one, such as 3.5 mm")
    if len(stripped) > _LONGEST_TEXT:
        raise MeasureError(f"the text is {len(stripped)} characters long", f"use at most {_LONGEST_TEXT}")
    _refuse_foreign_signs(stripped)
    word = stripped.lower()
    if word in _READ_AS_TRUTH:
        raise MeasureError(f"'{stripped}' is a yes-or-no word, not a number", "write a number")
    if word.lstrip("+-.") in ("nan", "inf", "infinity"):
        raise MeasureError(f"'{stripped}' is not a finite number", "write a number")
    if re.fullmatch(r"\d+(:\d+)+(\.\d*)?", stripped, re.ASCII):
        raise MeasureError(f"'{stripped}' is a clock time to many programs", "write a number with a decimal point")
    return stripped


def _refuse_foreign_signs(text: str) -> None:
    for sign in text:
        if sign.isascii() or sign.isalpha():
            continue
        if sign.isdecimal():
            raise MeasureError(f"'{sign}' is not one of the digits 0 to 9", "type the digit on its own key")
        if sign in _LOOKALIKES:
            raise MeasureError(f"'{sign}' cannot be read here", f"write {_LOOKALIKES[sign]}")
        raise MeasureError(f"the character {sign!r} cannot stand in a number", "use digits, units and + - * / ( )")


def quantity_at(text: str, start: int = 0) -> Quantity | None:
    """The number that begins at ``start``, with its unit if it has one; None if no digit stands there.

    Fractions need a unit right behind them (``9 3/8 in``); a decimal comma needs a unit as well (``3,5 mm``).

    >>> quantity_at('9 3/8 in').value
    238.125
    >>> quantity_at('3,5 mm + 1')
    Quantity(value=3.5, unit='mm', end=6)
    """
    fraction = _FRACTION.match(text, start)
    if fraction:
        return _fraction(fraction)
    match = _DECIMAL.match(text, start)
    if match is None:
        return None
    digits, gap, word, mark = match.groups()
    unit = word or mark or ""
    if word and not gap and re.match(r"[eE]\d|[eE]$|[xX_]", word):
        raise MeasureError(
            f"'{match.group()}' is not a plain decimal number", "write it with digits and a point only"
        )
    if unit and unit not in UNITS:
        raise MeasureError(f"'{unit}' is not a unit of length", _UNIT_ADVICE)
    return Quantity(float(_decimal(digits, unit) * UNITS.get(unit, 1)), unit, match.end())


def _fraction(match: re.Match[str]) -> Quantity:
    whole, over, under, word, mark = match.groups()
    unit = word or mark
    if int(under) == 0:
        raise MeasureError(f"'{match.group()}' divides by zero", "write a fraction such as 1/8 in")
    value = _decimal(whole or "0", unit) + _decimal(over, unit) / _decimal(under, unit)
    return Quantity(float(value * UNITS[unit]), unit, match.end())


def _decimal(digits: str, unit: str) -> Fraction:
    """The value of a numeral, with the three ways refused in which two readers may take it for two numbers."""
    if re.match(r"0\d", digits):
        raise MeasureError(f"'{digits}' begins with a zero, which some programs read as octal", "leave the zero out")
    if "," in digits and not unit:
        point = digits.replace(",", ".")
        raise MeasureError(f"'{digits}' may be one number or two", f"write {point}, or say the unit ('{digits} mm')")
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits):
        point, whole = digits.replace(",", "."), digits.replace(",", "")
        raise MeasureError(f"'{digits}' may mean {point} or {whole}", "write it with a point or without the comma")
    value = Fraction(digits.replace(",", "."))
    if value >= _LARGEST_NUMERAL:
        raise MeasureError(f"'{digits}' is far too large", "use a number below 1000000000")
    return value


def length_mm(text: str) -> float:
    """The length in mm that ``text`` says; a number without a unit is mm. MeasureError if it is no length.

    >>> length_mm("1/8 in"), length_mm("0.35 cm"), length_mm("12")
    (3.175, 3.5, 12.0)
    >>> length_mm("3.5 furlong")
    Traceback (most recent call last):
    patternforge.units.MeasureError: 'furlong' is not a unit of length; the units are mm, cm, in (or ") and oz
    """
    return _whole_quantity(text).value


def _whole_quantity(text: str) -> Quantity:
    plain = untrapped(text)
    sign = -1.0 if plain.startswith("-") else 1.0
    start = len(plain) - len(plain.lstrip("+-"))
    quantity = quantity_at(plain, start) if start <= 1 else None
    if quantity is None or quantity.end != len(plain):
        raise MeasureError(f"'{plain}' is not a length", "write a number and a unit, such as 3.5 mm or 1/8 in")
    return Quantity(sign * quantity.value, quantity.unit, quantity.end)


def thickness(text: str) -> tuple[float, float]:
    """The lowest and highest thickness in mm of a measured value (``1.2 mm``) or a range as sold (``3-4 oz``).

    >>> thickness("3-4 oz")
    (1.190625, 1.5875)
    >>> thickness("4-3 oz")
    Traceback (most recent call last):
    patternforge.units.MeasureError: the range '4-3 oz' runs downwards; write the thinner end first
    """
    match = RANGE.fullmatch(text.strip())
    if match is None:
        value = length_mm(text)
        return value, value
    first, first_unit, last, last_unit = match.groups()
    unit = last_unit or first_unit
    if not unit:
        raise MeasureError(f"the range '{text.strip()}' has no unit", "say mm or oz: '1.2-1.6 mm', '3-4 oz'")
    low, high = length_mm(f"{first} {first_unit or unit}"), length_mm(f"{last} {unit}")
    if low > high:
        raise MeasureError(f"the range '{text.strip()}' runs downwards", "write the thinner end first")
    return low, high


def angle(text: str) -> float:
    """The angle in degrees that ``text`` says: a number, with or without ``deg`` or a degree sign.

    >>> angle("-90"), angle("45 deg"), angle("180°")
    (-90.0, 45.0, 180.0)
    """
    plain = untrapped(text.strip().removesuffix("°").removesuffix("deg"))
    quantity = _whole_quantity(plain)
    if quantity.unit:
        raise MeasureError(f"'{text.strip()}' is not an angle", "write degrees, such as 180 or 90")
    return quantity.value


def pitch_mm(text: str) -> float:
    """Distance in mm between stitches: a length with its unit, ``8 per inch`` or ``8 per French inch``.

    A bare number is refused: to one maker it is mm, to the next it is the number on the iron.
    Iron numbers count stitches in the old French inch of 27.07 mm (common practice; not all irons keep to it).

    >>> pitch_mm("3.38 mm"), pitch_mm("8 per inch"), round(pitch_mm("8 per French inch"), 3)
    (3.38, 3.175, 3.384)
    """
    plain = untrapped(text)
    match = _PITCH.fullmatch(plain)
    if match is None:
        quantity = _whole_quantity(plain)
        if not quantity.unit:
            raise MeasureError(
                f"the pitch '{plain}' has no unit",
                f"write '{plain} mm', '{plain} per inch' or '{plain} per French inch'",
            )
        return quantity.value
    count = _decimal(match.group(1), "per inch")
    if count == 0:
        raise MeasureError(f"the pitch '{plain}' has no stitch in an inch", "write the number of stitches")
    return (MM_PER_FRENCH_INCH if match.group(2) else MM_PER_INCH) / float(count)


def counted(number: int, word: str) -> str:
    """So many of a thing: ``1 measure``, ``0 measures``, ``12 open lines``."""
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def mm(value: float, decimals: int = 2) -> str:
    """``value`` with a fixed number of decimals, a decimal point and no negative zero. ValueError if not finite.

    >>> mm(3.14159), mm(-0.001), mm(95, 1)
    ('3.14', '0.00', '95.0')
    """
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be written as a number")
    text = f"{value:.{decimals}f}"
    return text[1:] if text[0] == "-" and float(text) == 0 else text


def inches(value: float, decimals: int = 3) -> str:
    """``value`` given in mm, written in inches with a fixed number of decimals.

    >>> inches(85.60)
    '3.370'
    """
    return mm(value / MM_PER_INCH, decimals)
