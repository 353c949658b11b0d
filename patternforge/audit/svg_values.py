"""Values in SVG attributes: lengths, lists of numbers, maps (SVG 1.1, sections 4.2, 7.6 and 7.7)."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import isfinite, radians, tan
from types import MappingProxyType

from patternforge.audit.affine import IDENTITY, Affine, rotation, scaling, translation
from patternforge.errors import ReadingError

__all__ = ["Measure", "affine", "measure", "numbers", "user_length"]

MM_PER_PX = 25.4 / 96  # CSS 2.1, section 4.3.2: 96 px to the inch
_MM: Mapping[str, float] = MappingProxyType(
    {"mm": 1.0, "cm": 10.0, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6, "px": MM_PER_PX, "q": 0.25}
)
_NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
_LENGTH = re.compile(rf"\s*({_NUMBER.pattern})\s*(%|[a-zA-Z]*)\s*")
_CALL = re.compile(r"\s*,?\s*([a-zA-Z]+)\s*\(([^()]*)\)")


@dataclass(frozen=True, slots=True)
class Measure:
    """A length as written: its number and its unit, empty for none."""

    number: float
    unit: str

    @property
    def mm(self) -> float | None:
        """In mm; None for a unit that hangs on something else (none at all, %, em)."""
        factor = _MM.get(self.unit.lower())
        return None if factor is None else self.number * factor


def measure(word: str) -> Measure | None:
    """The length that ``word`` says, None when it says none.

    >>> measure("12.5 mm")
    Measure(number=12.5, unit='mm')
    """
    found = _LENGTH.fullmatch(word)
    return Measure(float(found[1]), found[2]) if found and isfinite(float(found[1])) else None


def user_length(word: str, default: float = 0.0) -> float:
    """A length in units of the drawing, one of which is a px; ``default`` when it says none that is known.

    >>> user_length("1in")
    96.0
    """
    found = measure(word)
    if found is None:
        return default
    if not found.unit:
        return found.number
    return default if found.mm is None else found.mm / MM_PER_PX


def numbers(words: str) -> list[float]:
    """The numbers in ``words``, parted by blanks, commas or nothing.

    >>> numbers("1,-2.5.5e1")
    [1.0, -2.5, 5.0]
    """
    return [float(word) for word in _NUMBER.findall(words)]


def affine(words: str, line: int = 0) -> Affine:
    """The map that a ``transform`` attribute says; ReadingError, naming the line, for one that says none.

    >>> from patternforge.geometry.point import Point
    >>> affine("translate(5) scale(2)").point(Point(1, 1))
    Point(x=7.0, y=2.0)
    """
    whole, at = IDENTITY, 0
    while at < len(words.rstrip()):
        call = _CALL.match(words, at)
        made = call and _made(call[1], numbers(call[2]))
        if not call or made is None:
            raise ReadingError(f"line {line}: {words!r} is no transform; ungroup and save again")
        whole, at = whole.after(made), call.end()
    return whole


def _made(name: str, given: Sequence[float]) -> Affine | None:
    maker = _MAKERS.get(name)
    if maker is None or len(given) not in maker[0]:
        return None
    return maker[1](*given)


def _turned(angle: float, x: float = 0.0, y: float = 0.0) -> Affine:
    return translation(x, y).after(rotation(radians(angle))).after(translation(-x, -y))


_MAKERS: Mapping[str, tuple[tuple[int, ...], Callable[..., Affine]]] = MappingProxyType(
    {
        "matrix": ((6,), Affine),
        "translate": ((1, 2), lambda x, y=0.0: translation(x, y)),
        "scale": ((1, 2), lambda x, y=None: scaling(x, x if y is None else y)),
        "rotate": ((1, 3), _turned),
        "skewX": ((1,), lambda angle: Affine(1.0, 0.0, tan(radians(angle)), 1.0, 0.0, 0.0)),
        "skewY": ((1,), lambda angle: Affine(1.0, tan(radians(angle)), 0.0, 1.0, 0.0, 0.0)),
    }
)
