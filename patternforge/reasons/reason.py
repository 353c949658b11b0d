"""A reason: a size with the parts it is made of, each of them a reason again, down to what nothing is behind."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

__all__ = ["LEAVES", "How", "Reason", "leaf", "less", "made", "measured", "number", "same", "walked"]


class How(StrEnum):
    """How a size follows from its parts, or, where it has none, where it comes from."""

    SUM = "sum"
    LESS = "less"
    PRODUCT = "product"
    QUOTIENT = "quotient"
    LARGEST = "largest"
    SMALLEST = "smallest"
    WRITTEN = "written"
    """Reckoned by the arithmetic that stands in the design, which is told in ``words``."""

    ENTERED = "entered"
    SET = "set"
    DEFAULT = "default"
    CATALOGUE = "catalogue"
    COUNTED = "counted"
    """A whole number of things, or what whole stitches leave over."""
    MEASURED = "measured"
    """Read off outlines, seam lines and stacks as they are drawn."""
    NUMBER = "number"
    """A plain number of geometry, such as half or pi."""


LEAVES = frozenset((How.ENTERED, How.SET, How.DEFAULT, How.CATALOGUE, How.COUNTED, How.MEASURED, How.NUMBER))
"""The kinds of what has no parts."""


@dataclass(frozen=True, slots=True)
class Reason:
    """A size, called ``name``, with its ``value`` in ``unit`` (mm, mm2, degrees, or nothing for a plain number).

    ``how`` says what is done with ``parts``, in their order. ``source`` says where a leaf stands in print or in the
    design, or which handbook a rule is from; ``words`` are the arithmetic as written, or what else is to be said.

    >>> card, ease = leaf("card.length", 85.6, How.CATALOGUE), leaf("ease", 2.5, How.ENTERED)
    >>> made("clear width", How.SUM, (card, ease)).value
    88.1
    """

    name: str
    value: float
    unit: str
    how: How
    parts: tuple[Reason, ...] = ()
    source: str = ""
    words: str = ""


def leaf(name: str, value: float, how: How, unit: str = "mm", source: str = "", words: str = "") -> Reason:
    """A size that has no parts."""
    return Reason(name, value, unit, how, (), source, words)


def number(value: float, name: str = "") -> Reason:
    """A plain number that a rule multiplies or divides by."""
    return leaf(name, value, How.NUMBER, unit="")


def measured(name: str, value: float, unit: str = "mm", words: str = "") -> Reason:
    """A size read off what is drawn."""
    return leaf(name, value, How.MEASURED, unit, words=words)


def less(part: Reason) -> Reason:
    """The size as it is taken off in a sum."""
    return Reason(part.name, -part.value, part.unit, How.LESS, (part,))


def same(name: str, part: Reason, value: float | None = None) -> Reason:
    """A size that is another one."""
    return Reason(name, part.value if value is None else value, part.unit, How.SUM, (part,))


def _product(values: Sequence[float]) -> float:
    return math.prod(values)


def _quotient(values: Sequence[float]) -> float:
    return values[0] / math.prod(values[1:])


def _taken_off(values: Sequence[float]) -> float:
    return -sum(values)


_RECKONED: Mapping[How, Callable[[Sequence[float]], float]] = MappingProxyType(
    {
        How.SUM: math.fsum,
        How.LESS: _taken_off,
        How.PRODUCT: _product,
        How.QUOTIENT: _quotient,
        How.LARGEST: max,
        How.SMALLEST: min,
    }
)


def made(
    name: str,
    how: How,
    parts: Sequence[Reason],
    value: float | None = None,
    unit: str = "mm",
    source: str = "",
) -> Reason:
    """A size made of parts; its ``value`` is what they come to, unless the one that was drafted is given.

    The largest and the smallest have at least one part, a quotient at least two.
    """
    reckoned = _RECKONED[how]([part.value for part in parts]) if value is None else value
    return Reason(name, reckoned, unit, how, tuple(parts), source)


def walked(reason: Reason) -> Iterator[Reason]:
    """The reason and all that is below it, the parts of each after it, whatever stands twice told once."""
    met: set[int] = set()
    waiting = [reason]
    while waiting:
        here = waiting.pop()
        if id(here) not in met:
            met.add(id(here))
            yield here
            waiting += reversed(here.parts)
