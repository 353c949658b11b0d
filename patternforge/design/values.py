"""Single values of a design: text, numbers, lengths and counts, each refused with one fault where it stands."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from patternforge.design.arithmetic import Value, as_number, evaluated, names_in
from patternforge.design.located import Lost, Node, Row, Scalar, Table
from patternforge.design.scope import Scope
from patternforge.units import MeasureError

__all__ = ["ANY", "NOT_NEGATIVE", "POSITIVE", "Bounds", "count_of", "kind_of", "number_of", "row_of", "text_of"]

_LONGEST_TEXT = 200
_LONGEST_MM = 10_000.0
_TRUTH_WORDS = frozenset(("yes", "no", "on", "off", "true", "false"))


@dataclass(frozen=True, slots=True)
class Bounds:
    """Lawful numbers: from ``low`` to ``high``, ``low`` itself only if ``has_low``."""

    low: float = -_LONGEST_MM
    high: float = _LONGEST_MM
    has_low: bool = True

    def fault(self, value: float, unit: str) -> str:
        """What must hold for ``value``, or an empty text if it does."""
        if value < self.low or (value == self.low and not self.has_low):
            return f"it must be {'at least' if self.has_low else 'more than'} {self.low:g}{unit}"
        return f"it must be at most {self.high:g}{unit}" if value > self.high else ""


ANY = Bounds()
NOT_NEGATIVE = Bounds(0.0)
POSITIVE = Bounds(0.0, has_low=False)


def row_of(node: Node, what: str, scope: Scope) -> tuple[Node, ...]:
    """The entries of the list ``node``; a fault and none if it is not a list."""
    if isinstance(node, Row):
        return node.items
    scope.leave_open()
    if not isinstance(node, Lost):
        scope.faults.add(
            node.at, f"{what} is a list, not {kind_of(node)}", "begin each entry with a dash, or write [a, b]"
        )
    return ()


def text_of(scalar: Scalar, what: str, scope: Scope) -> str:
    """The text of a single value on one line; a fault and an empty text if it is none."""
    text = scalar.text.strip()
    if scalar.plain and text.lower() in _TRUTH_WORDS:
        scope.faults.add(
            scalar.at, f"{what} is '{text}', which many programs read as a truth value", f"write '\"{text}\"'"
        )
    elif not text or scalar.is_blank:
        scope.faults.add(scalar.at, f"{what} is empty", "write a name")
    elif len(text) > _LONGEST_TEXT or "\n" in text:
        scope.faults.add(scalar.at, f"{what} is too long", f"use one line of at most {_LONGEST_TEXT} characters")
    else:
        return text
    return ""


def number_of(scalar: Scalar, what: str, scope: Scope, meaning: Callable[[Value], float], bounds: Bounds) -> float:
    """What a single value comes to as ``meaning`` takes it; a fault and not a number if that is not lawful."""
    try:
        value = meaning(evaluated(scalar.text, scope.value_of))
    except MeasureError as error:
        scope.mentioned(names_in(scalar.text))
        scope.faults.add_measure(scalar.at, what, error)
        return math.nan
    unit = "" if meaning is as_number else " mm"
    fault = bounds.fault(value, unit)
    if fault:
        scope.faults.add(scalar.at, f"{what} is {value:g}{unit}", fault)
        return math.nan
    return value


def count_of(scalar: Scalar, what: str, scope: Scope, bounds: Bounds) -> int:
    """The whole number a single value comes to; a fault and the lowest lawful one if it is none."""
    value = number_of(scalar, what, scope, as_number, bounds)
    if math.isnan(value):
        return int(bounds.low)
    if abs(value - round(value)) > 1e-9:
        scope.faults.add(scalar.at, f"{what} is {value:g}", "it must be a whole number")
    return round(value)


def kind_of(node: Node) -> str:
    """What a node is, in a word for messages."""
    return "a list" if isinstance(node, Row) else "a table" if isinstance(node, Table) else "a single value"
