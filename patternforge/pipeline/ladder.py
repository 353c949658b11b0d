"""The values a parameter may be given in place of its own, as rungs of a ladder that it stands on."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.units import mm
from patternforge.wallet.spec import Parameter

__all__ = ["Ladder"]

_COARSE, _FINE = 0.1, 0.01  # mm: what a maker sets a rule or a caliper to
_WIDE = 2.0  # mm of range from which on tenths are fine enough
_SLACK = 1e-6  # of a step
_DECIMALS = {1.0: 0, _COARSE: 1, _FINE: 2}


@dataclass(frozen=True, slots=True)
class Ladder:
    """The lawful values of a parameter at whole steps: rung 1 is the next one above its own value, -1 the next below.

    A count has steps of 1, a length of 0.1 mm, or of 0.01 mm if its range is narrower than 2 mm. A parameter without
    a range is taken to go from half to one and a half of its value.

    >>> ladder = Ladder(Parameter("step", 12.04, "mm", 8.0, 18.0))
    >>> ladder.value(1), ladder.value(-1), ladder.lowest, ladder.highest
    (12.1, 12.0, -41, 60)
    >>> ladder.text(-1)
    '12.0mm'
    """

    parameter: Parameter

    @property
    def low(self) -> float:
        """The lowest lawful value."""
        own = self.parameter
        return own.value - abs(own.value) / 2 if own.low is None else own.low

    @property
    def high(self) -> float:
        """The highest lawful value."""
        own = self.parameter
        return own.value + abs(own.value) / 2 if own.high is None else own.high

    @property
    def step(self) -> float:
        """From rung to rung, in the parameter's own unit."""
        own = self.parameter
        if not own.unit and all(each.is_integer() for each in (own.value, self.low, self.high)):
            return 1.0
        return _COARSE if self.high - self.low >= _WIDE else _FINE

    @property
    def decimals(self) -> int:
        """Decimals that a value on a rung needs."""
        return _DECIMALS[self.step]

    @property
    def lowest(self) -> int:
        """The rung of the lowest value, 0 if there is none below the parameter's own."""
        return min(math.ceil(self.low / self.step - _SLACK) - self._next_below() - 1, 0)

    @property
    def highest(self) -> int:
        """The rung of the highest value, 0 if there is none above the parameter's own."""
        return max(math.floor(self.high / self.step + _SLACK) - self._next_above() + 1, 0)

    def value(self, rung: int) -> float:
        """The value on a rung; the parameter's own on rung 0."""
        if rung == 0:
            return self.parameter.value
        steps = self._next_above() + rung - 1 if rung > 0 else self._next_below() + rung + 1
        return round(steps * self.step, self.decimals)

    def text(self, rung: int) -> str:
        """The value on a rung as ``--set`` takes it."""
        return f"{mm(self.value(rung), self.decimals)}{self.parameter.unit}"

    def share(self, rung: int) -> float:
        """How far a rung lies from the parameter's own value, as a share of its range."""
        return abs(self.value(rung) - self.parameter.value) / (self.high - self.low)

    def rungs(self, share: float) -> Iterator[int]:
        """The farthest rungs, up and down, that lie within a share of the range; none on a side without any."""
        reach = share * (self.high - self.low) * (1 + 1e-9)
        for way, last in ((1, self.highest), (-1, -self.lowest)):
            first = abs(self.value(way) - self.parameter.value)
            if last and first <= reach:
                yield way * min(1 + math.floor((reach - first) / self.step + _SLACK), last)

    def _next_above(self) -> int:
        return math.floor(self.parameter.value / self.step + _SLACK) + 1

    def _next_below(self) -> int:
        return math.ceil(self.parameter.value / self.step - _SLACK) - 1
