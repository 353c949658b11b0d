"""Plain arithmetic on numbers, lengths and names: + - * / and brackets, and nothing else.

Every value knows whether it is a length or a plain number, so that a sum of the two, an area or a bare ratio where a
length is wanted is refused and not guessed at. No calls, no powers, no look-ups beyond the names handed in.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from patternforge.units import MeasureError, quantity_at, untrapped

__all__ = ["LOST", "Value", "as_length", "as_number", "evaluated", "names_in"]

_DEEPEST = 20
_LARGEST = 1e12
_NAME = re.compile(r"[^\W\d]\w*(?:\.[^\W\d]\w*)*")


@dataclass(frozen=True, slots=True)
class Value:
    """A number of dimension mm ** ``power``; ``bare`` if it is made of numerals without a unit only."""

    number: float
    power: int = 0
    bare: bool = False

    @property
    def is_lost(self) -> bool:
        """True for what comes of a value that was refused already."""
        return math.isnan(self.number)


LOST = Value(math.nan, 0, True)
"""Stands for a value with a fault: whatever is reckoned from it is lost as well, without another fault."""

_Lookup = Callable[[str], Value]


def evaluated(text: str, value_of: _Lookup) -> Value:
    """What ``text`` comes to, in mm; ``value_of`` gives the value of a name. MeasureError if it is no arithmetic.

    >>> evaluated("card + 2 * 3,5 mm", {"card": Value(85.6, 1)}.__getitem__)
    Value(number=92.6, power=1, bare=False)
    >>> evaluated("card + 2", {"card": Value(85.6, 1)}.__getitem__)
    Traceback (most recent call last):
    patternforge.units.MeasureError: a length and the plain number 2 are added; say its unit ('2 mm' or '2 in')
    """
    parser = _Parser(untrapped(text), value_of)
    value = parser.sum(0)
    parser.refuse_rest()
    return value


def names_in(text: str) -> frozenset[str]:
    """Every word of ``text`` that could be a name, dotted names by their first part.

    >>> sorted(names_in("card.length + 2 * margin"))
    ['card', 'margin']
    """
    return frozenset(match.group().partition(".")[0] for match in _NAME.finditer(text))


def as_length(value: Value) -> float:
    """The length in mm that ``value`` is; a bare numeral counts as mm. MeasureError if it is no length.

    >>> as_length(Value(3.5, bare=True))
    3.5
    """
    if value.power == 1 or value.bare or value.is_lost:
        return value.number
    if value.power == 0:
        what = f"this comes to the plain number {value.number:g} where a length is wanted"
        raise MeasureError(what, "give the number a unit where it is declared, or multiply it by 1 mm")
    raise MeasureError(f"this comes to {_dimension(value)} where a length is wanted", "check the factors")


def as_number(value: Value) -> float:
    """The plain number that ``value`` is. MeasureError if it has a dimension.

    >>> as_number(Value(2.0))
    2.0
    """
    if value.power == 0 or value.is_lost:
        return value.number
    what = f"this comes to {_dimension(value)} where a plain number is wanted"
    raise MeasureError(what, "leave the unit out, or divide by a length")


def _dimension(value: Value) -> str:
    return f"{value.number:g} mm" if value.power == 1 else f"{value.number:g} mm to the power of {value.power}"


def _total(first: Value, second: Value) -> Value:
    if first.is_lost or second.is_lost:
        return LOST
    if first.power != second.power:
        raise _mixed(first, second)
    return _bounded(Value(first.number + second.number, first.power, first.bare and second.bare))


def _bounded(value: Value) -> Value:
    """Kept far from infinity, so that a lost value is the only one that is not a number."""
    if abs(value.number) > _LARGEST:
        raise MeasureError(f"this comes to {value.number:.3g}, far too large", "check the numbers")
    return value


def _mixed(first: Value, second: Value) -> MeasureError:
    plain = next((value for value in (first, second) if value.power == 0), None)
    if plain is None or 1 not in (first.power, second.power):
        return MeasureError("values of different dimension are added", "add lengths to lengths")
    number = f"{abs(plain.number):g}"
    remedy = f"say its unit ('{number} mm' or '{number} in')" if plain.bare else "add lengths to lengths"
    return MeasureError(f"a length and the plain number {number} are added", remedy)


def _product(first: Value, second: Value) -> Value:
    if first.is_lost or second.is_lost:
        return LOST
    return _bounded(Value(first.number * second.number, first.power + second.power, first.bare and second.bare))


def _quotient(first: Value, second: Value) -> Value:
    if first.is_lost or second.is_lost:
        return LOST
    if second.number == 0:
        raise MeasureError("this divides by zero", "check the number below the line")
    return _bounded(Value(first.number / second.number, first.power - second.power, first.bare and second.bare))


@dataclass(slots=True)
class _Parser:
    """Reads a sum of products of signed values from left to right."""

    text: str
    value_of: _Lookup
    at: int = 0

    def sum(self, depth: int) -> Value:
        """A sum of products."""
        value = self._product(depth)
        while (sign := self._next_of("+-")) is not None:
            term = self._product(depth)
            value = _total(value, term if sign == "+" else replace(term, number=-term.number))
        return value

    def _product(self, depth: int) -> Value:
        value = self._signed(depth)
        while (sign := self._next_of("*/")) is not None:
            factor = self._signed(depth)
            value = _product(value, factor) if sign == "*" else _quotient(value, factor)
        return value

    def _signed(self, depth: int) -> Value:
        sign = self._next_of("+-")
        value = self._single(depth)
        return replace(value, number=-value.number) if sign == "-" else value

    def _single(self, depth: int) -> Value:
        self._skip_blanks()
        if self._next_of("("):
            return self._bracketed(depth + 1)
        quantity = quantity_at(self.text, self.at)
        if quantity is not None:
            self.at = quantity.end
            return Value(quantity.value, 1 if quantity.unit else 0, not quantity.unit)
        name = _NAME.match(self.text, self.at)
        if name is None:
            raise self._unexpected()
        self.at = name.end()
        if self._next_of("("):
            raise MeasureError(f"'{name.group()}(...)' calls a function", "only + - * / and brackets are understood")
        return self.value_of(name.group())

    def _bracketed(self, depth: int) -> Value:
        if depth > _DEEPEST:
            raise MeasureError(f"brackets go more than {_DEEPEST} levels deep", "use a parameter for a part of it")
        value = self.sum(depth)
        if self._next_of(")") is None:
            raise MeasureError(f"a bracket is not closed in '{self.text}'", "close it")
        return value

    def refuse_rest(self) -> None:
        """Raise MeasureError unless the whole text has been read."""
        self._skip_blanks()
        if self.at < len(self.text):
            raise self._unexpected()

    def _unexpected(self) -> MeasureError:
        self._skip_blanks()
        rest = self.text[self.at :]
        if not rest:
            return MeasureError(f"'{self.text}' breaks off", "write the rest of the sum")
        if self.at and rest[0] == ".":
            return MeasureError(f"'{self.text}' has a point too many", "write one decimal point")
        if self.at and re.match(r"\w|\(", rest):
            remedy = "write + - * or / between, or the unit behind a fraction (9 3/8 in)"
            return MeasureError(f"'{rest[:20]}' follows without a sign in '{self.text}'", remedy)
        return MeasureError(
            f"'{rest[0]}' cannot stand here in '{self.text}'", "use numbers, units, names and + - * / ( )"
        )

    def _next_of(self, signs: str) -> str | None:
        self._skip_blanks()
        sign = self.text[self.at : self.at + 1]
        if not sign or sign not in signs:
            return None
        self.at += 1
        return sign

    def _skip_blanks(self) -> None:
        while self.text[self.at : self.at + 1] in (" ", "\n"):
            self.at += 1
