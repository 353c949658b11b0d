"""Two dumped drawings compared as geometry: what is the same within a tolerance is the same."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, degrees, radians, sin

from patternforge.errors import GeometryError

__all__ = ["differences"]

_TOKEN = re.compile(r'"(?:[^"\\]|\\.)*"|\S+')
_NUMBER = re.compile(r"-?\d+(\.\d+)?")
# What is left over when decimal numbers are subtracted as floating ones.
_NOISE = 1e-9


@dataclass(frozen=True, slots=True)
class _Row:
    words: tuple[str, ...]
    numbers: tuple[float, ...]
    text: str


@dataclass(frozen=True, slots=True)
class _Ink:
    head: _Row
    segments: tuple[_Row, ...]


@dataclass(frozen=True, slots=True)
class _Figure:
    head: _Row
    inks: tuple[_Ink, ...]

    @property
    def name(self) -> str:
        return self.head.words[1]


def differences(before: str, after: str, tolerance: float) -> tuple[str, ...]:
    """What sets two dumps apart, in plain words; empty when they show the same drawing.

    Figures, inks and segments must follow in the same order with the same words; every length may differ by
    ``tolerance`` mm (>= 0; angles by as many degrees) and a closed stroke may begin at another of its corners.
    GeometryError when a text is no dump.

    >>> ring = 'figure "ring" group "outer" size {0} {0}\\n  outline dot at 0.0 0.0 diameter {0}\\n'
    >>> differences(ring.format("20.0000"), ring.format("20.0040"), 0.005)
    ()
    >>> for line in differences(ring.format("20.0000"), ring.format("20.1000"), 0.005):
    ...     print(line)
    figure "ring" group "outer" size 20.0000 20.0000 -> figure "ring" group "outer" size 20.1000 20.1000
    figure "ring", ink 1: outline dot at 0.0 0.0 diameter 20.0000 -> outline dot at 0.0 0.0 diameter 20.1000
    """
    old, new = _figures(before), _figures(after)
    return tuple(_name_differences(old, new)) + tuple(
        line for one, other in _pairs(old, new) for line in _figure_differences(one, other, tolerance)
    )


def _figures(text: str) -> list[_Figure]:
    figures: list[tuple[_Row, list[tuple[_Row, list[_Row]]]]] = []
    for number, line in enumerate(text.splitlines(), start=1):
        depth = len(line) - len(line.lstrip(" "))
        try:
            if depth == 0:
                figures.append((_row(line), []))
            elif depth == 2:
                figures[-1][1].append((_row(line), []))
            else:
                figures[-1][1][-1][1].append(_row(line))
        except IndexError:
            raise GeometryError(f"line {number} of a dumped drawing stands under no figure: {line!r}") from None
    return [_Figure(_title(head), tuple(_Ink(ink, tuple(rows)) for ink, rows in inks)) for head, inks in figures]


def _title(head: _Row) -> _Row:
    if len(head.words) < 2 or head.words[0] != "figure":
        raise GeometryError(f"a figure of a dumped drawing starts with its name, not with {head.text!r}")
    return head


def _row(line: str) -> _Row:
    tokens = _TOKEN.findall(line)
    if not tokens:
        raise GeometryError("a dumped drawing holds no empty lines")
    words = tuple(token for token in tokens if not _NUMBER.fullmatch(token))
    numbers = tuple(
        number
        for before, token in pairwise(("", *tokens))
        if _NUMBER.fullmatch(token)
        for number in (_direction(float(token)) if before == "angle" else (float(token),))
    )
    return _Row(words, numbers, line.strip())


def _direction(angle: float) -> tuple[float, float]:
    """The direction ``angle`` degrees as a vector that moves by one for each degree, so that 359.9 is next to 0."""
    return degrees(cos(radians(angle))), degrees(sin(radians(angle)))


def _names(figures: Sequence[_Figure]) -> list[str]:
    return [figure.name for figure in figures]


def _name_differences(old: Sequence[_Figure], new: Sequence[_Figure]) -> Iterator[str]:
    before, after = _names(old), _names(new)
    if before != after:
        yield f"figures {', '.join(before) or 'none'} -> {', '.join(after) or 'none'}"


def _pairs(old: Sequence[_Figure], new: Sequence[_Figure]) -> list[tuple[_Figure, _Figure]]:
    if _names(old) == _names(new):
        return list(zip(old, new, strict=True))
    named = {figure.name: figure for figure in new}
    return [(figure, named[figure.name]) for figure in old if figure.name in named]


def _figure_differences(old: _Figure, new: _Figure, tolerance: float) -> Iterator[str]:
    title = f"figure {old.name}"
    if not _same(old.head, new.head, tolerance):
        yield f"{old.head.text} -> {new.head.text}"
    if len(old.inks) != len(new.inks):
        yield f"{title}: {len(old.inks)} -> {len(new.inks)} inks"
    for number, (one, other) in enumerate(zip(old.inks, new.inks, strict=False), start=1):
        for line in _ink_differences(one, other, tolerance):
            yield f"{title}, ink {number}: {line}"


def _ink_differences(old: _Ink, new: _Ink, tolerance: float) -> Iterator[str]:
    if old.head.words != new.head.words or len(old.segments) != len(new.segments):
        yield f"{_summary(old)} -> {_summary(new)}"
    elif not _same_from_any_corner(old, new, tolerance):
        rows = zip((old.head, *old.segments), (new.head, *new.segments), strict=True)
        yield from (f"{one.text} -> {other.text}" for one, other in rows if not _same(one, other, tolerance))


def _summary(ink: _Ink) -> str:
    return f"{ink.head.text} ({len(ink.segments)} segments)" if ink.segments else ink.head.text


def _same_from_any_corner(old: _Ink, new: _Ink, tolerance: float) -> bool:
    if "closed" not in old.head.words:
        return False
    count = len(old.segments)
    return any(
        all(_same(old.segments[i - shift], new.segments[i], tolerance) for i in range(count))
        for shift in range(count)
    )


def _same(one: _Row, other: _Row, tolerance: float) -> bool:
    if one.words != other.words or len(one.numbers) != len(other.numbers):
        return False
    return all(abs(a - b) <= tolerance + _NOISE for a, b in zip(one.numbers, other.numbers, strict=True))
