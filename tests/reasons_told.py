"""The reasons of the ready designs, drafted once for all tests, and the arithmetic that holds them to account."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from patternforge.design.load import load_design
from patternforge.reasons.reason import LEAVES, How, Reason, walked
from patternforge.reasons.told import Reasons, reasons_of
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern

__all__ = ["DESIGNS", "Told", "come_to", "reckoned", "shortfalls", "told", "without_finest"]

DESIGNS = tuple(sorted((Path(__file__).parents[1] / "designs").glob("*.yaml")))

_MEASURE = re.compile(r"(\d+(?:\.\d+)?)\s*(mm|oz|deg)?")
_MM = {"": 1.0, "mm": 1.0, "oz": 25.4 / 64, "deg": 1.0}
_FINEST = ("finest radius", "finest gap", "finest slot", "beside a stitch hole")


@dataclass(frozen=True, slots=True)
class Told:
    """A pattern and the reasons of its sizes."""

    pattern: Pattern
    reasons: Reasons


@cache
def told(path: Path) -> Told:
    """A ready design."""
    pattern = drafted(load_design(path.read_text(encoding="utf-8"), path.name))
    return Told(pattern, reasons_of(pattern))


def without_finest(reasons: Reasons) -> Iterator[tuple[str, Reason]]:
    """All sizes but the finest cuts, which are readings of their own and slow to take."""
    return ((name, reasons[name]) for name in reasons if not name.endswith(_FINEST))


def come_to(reason: Reason) -> float:
    """What the parts of a size come to by the operation it states, each part taken at the value it states."""
    values = [part.value for part in reason.parts]
    if reason.how is How.WRITTEN:
        return reckoned(reason.words, {part.name: part.value for part in reason.parts})
    return _OPERATIONS[reason.how](values)


_OPERATIONS: Mapping[How, Callable[[list[float]], float]] = {
    How.SUM: sum,
    How.LESS: lambda values: -values[0],
    How.PRODUCT: math.prod,
    How.QUOTIENT: lambda values: values[0] / values[1],
    How.LARGEST: max,
    How.SMALLEST: min,
}


def reckoned(words: str, values: Mapping[str, float]) -> float:
    """What a piece of arithmetic in mm comes to, reckoned by Python instead of the program's own reader."""
    text = words
    for name in sorted(values, key=len, reverse=True):
        text = re.sub(rf"\b{re.escape(name)}\b", f"({values[name]!r})", text)
    text = _MEASURE.sub(lambda found: repr(float(found[1]) * _MM[found[2] or ""]), text)
    if not re.fullmatch(r"[-+*/() .\de]*", text):
        raise ValueError(f"'{words}' is more than arithmetic: '{text}'")
    return float(eval(text, {"__builtins__": {}}))


def shortfalls(reasons: Reasons) -> list[str]:
    """Every place where the parts of a size do not come to it within a millionth of a millimetre, in words."""
    found = []
    for name, reason in without_finest(reasons):
        for here in walked(reason):
            if here.how in LEAVES:
                if here.parts:
                    found.append(f"{name}: {here.name} is a leaf with parts")
            elif not here.parts or not abs(come_to(here) - here.value) <= 1e-6:
                found.append(f"{name}: {here.name} is {here.value}, its parts {[part.value for part in here.parts]}")
    return found
