"""Even positions along a line between fixed anchors, and runs of exact pitch; mm."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from patternforge.errors import GeometryError
from patternforge.geometry.point import COINCIDENT

__all__ = ["Anchor", "AnchorKind", "Spacing", "Span", "even_positions", "pitch_positions"]

TIE = 1e-9  # spaces; rounding must not decide between equal counts, or a row and its mirror image would differ


class AnchorKind(StrEnum):
    ON = "on"  # a position falls on the anchor
    BETWEEN = "between"  # the anchor falls midway between two positions


@dataclass(frozen=True, slots=True)
class Anchor:
    """A fixed place ``at`` mm along a line."""

    at: float
    kind: AnchorKind


@dataclass(frozen=True, slots=True)
class Span:
    """What lies between two anchors: ``count`` spaces (whole or and a half) of ``spacing`` mm."""

    start: float
    end: float
    count: float
    spacing: float


@dataclass(frozen=True, slots=True)
class Spacing:
    """Rising ``positions`` in mm, the spans they fill, and the pitch that was asked for."""

    positions: tuple[float, ...]
    spans: tuple[Span, ...]
    pitch: float

    @property
    def worst(self) -> float:
        """The largest deviation of a span's spacing from the pitch, as a share of the pitch; 0 without spans."""
        return max((abs(span.spacing / self.pitch - 1) for span in self.spans), default=0.0)


def even_positions(anchors: Sequence[Anchor], pitch: float) -> Spacing:
    """Positions evenly spaced between each two anchors, as near to ``pitch`` mm as a lawful count allows.

    From ON to ON lie whole spaces, at least one; from ON to BETWEEN a half more than whole ones, at least a half;
    from BETWEEN to BETWEEN whole spaces that begin with half of one, at least one. The count is the lawful one
    nearest to length / pitch, the greater of two equally near. GeometryError when fewer than two anchors are
    given, they do not rise, or the pitch is not positive.

    >>> even_positions([Anchor(0, AnchorKind.ON), Anchor(10, AnchorKind.BETWEEN)], 3.9).positions
    (0.0, 4.0, 8.0)
    """
    _refuse_pitch(pitch)
    if len(anchors) < 2:
        raise GeometryError("positions need two anchors to lie between")
    pairs = tuple(pairwise(anchors))
    spans = tuple(_span(a, b, pitch) for a, b in pairs)
    positions: list[float] = []
    for (a, b), span in zip(pairs, spans, strict=True):
        positions.extend(_new_positions(a, b, span))
    if anchors[-1].kind is AnchorKind.ON:
        positions.append(float(anchors[-1].at))
    return Spacing(tuple(positions), spans, pitch)


def pitch_positions(length: float, pitch: float) -> Spacing:
    """Positions at exactly ``pitch`` mm from 0, as many as ``length`` mm holds; what is left over lies at the end.

    GeometryError when the length is negative or the pitch is not positive.

    >>> pitch_positions(10, 3).positions
    (0.0, 3.0, 6.0, 9.0)
    """
    _refuse_pitch(pitch)
    if not 0 <= length < math.inf:
        raise GeometryError(f"{length:g} mm is not a length to space along")
    count = math.floor((length + COINCIDENT) / pitch)
    spans = (Span(0.0, count * pitch, float(count), pitch),) if count else ()
    return Spacing(tuple(float(i * pitch) for i in range(count + 1)), spans, pitch)


def _span(a: Anchor, b: Anchor, pitch: float) -> Span:
    length = b.at - a.at
    if not COINCIDENT < length < math.inf:
        raise GeometryError(f"the anchors at {a.at:g} and {b.at:g} mm do not rise")
    part = 0.5 if a.kind is not b.kind else 0.0
    least = part or 1.0
    count = max(math.floor(length / pitch - part + 0.5 + TIE) + part, least)
    return Span(a.at, b.at, count, length / count)


def _new_positions(a: Anchor, b: Anchor, span: Span) -> list[float]:
    """The positions of a span but for the one on its far anchor, which the next span gives."""
    first = 0.0 if a.kind is AnchorKind.ON else 0.5
    last = span.count - (1.0 if b.kind is AnchorKind.ON else 0.5)
    return [a.at + (first + i) * span.spacing for i in range(round(last - first) + 1)]


def _refuse_pitch(pitch: float) -> None:
    if not 0 < pitch < math.inf:
        raise GeometryError(f"{pitch:g} mm is not a pitch")
