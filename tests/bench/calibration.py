"""A loop of plain arithmetic that says how quick the machine is now."""

from __future__ import annotations

from collections.abc import Callable
from math import hypot
from statistics import median
from time import process_time
from typing import TypeVar

__all__ = ["ROUNDS", "calibration", "timed"]

_Given = TypeVar("_Given")
_Made = TypeVar("_Made")

# As many as take 20 ms on the machine that the goals were set for.
ROUNDS = 160_000


def calibration(times: int = 11) -> float:
    """The median time of ``ROUNDS`` rounds of the loop in ``_turned``, s of the processor."""
    return median(timed(_turned, ROUNDS)[1] for _ in range(times))


def timed(work: Callable[[_Given], _Made], given: _Given) -> tuple[_Made, float]:
    """What the work makes, and how long the processor was on it, s; whatever else runs meanwhile does not count."""
    began = process_time()
    made = work(given)
    return made, process_time() - began


def _turned(rounds: int) -> float:
    """A point turned again and again by a rational turn (3-4-5): two products, two sums and a root a round."""
    x, y, total = 1.0, 0.0, 0.0
    for _ in range(rounds):
        x, y = 0.8 * x - 0.6 * y, 0.6 * x + 0.8 * y
        total += hypot(x, y)
    return total
