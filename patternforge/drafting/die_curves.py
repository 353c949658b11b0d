"""The curves and sharp corners of a die: each radius with a letter that stands beside its arcs on the proof."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, radians, sqrt

from patternforge.drafting.smallest import across
from patternforge.drawing.model import Align, Dot, Figure, Role, Stroke, Text
from patternforge.geometry.congruent import stretches
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.units import mm

__all__ = ["Curve", "curve_letters", "curve_words", "curves", "sharp_words"]

_LETTERS = 2.0
_OFF = 2.6  # of the middle of a letter from its arc, mm
_OFF_HOLES = 7.0  # of the middle of a letter from the arc of an outline along which stitch holes stand, mm
_SHARP = radians(1.0)  # turn from which on a corner is one


@dataclass(frozen=True, slots=True)
class Curve:
    """Arcs of one radius and kind: ``kind`` in words, ``spots`` where their letters stand."""

    kind: str
    radius: float
    spots: tuple[Point, ...]


def curves(figure: Figure) -> tuple[Curve, ...]:
    """The arcs of a figure by kind and radius, round holes and openings as one curve each, in the order drawn."""
    found: dict[tuple[str, str], tuple[float, list[Point]]] = {}
    for kind, radius, spot in _arcs(figure):
        found.setdefault((kind, mm(radius)), (radius, []))[1].append(spot)
    return tuple(Curve(kind, radius, tuple(spots)) for (kind, _), (radius, spots) in found.items())


def curve_words(number: int, curve: Curve) -> str:
    """One line of the list of curves.

    >>> curve_words(0, Curve("outward arc", 6.0, (Point(0, 0), Point(9, 0))))
    'a: R 6.00 mm, 2 x outward arc'
    """
    size = f"{mm(2 * curve.radius)} mm across" if curve.kind == "round hole" else f"R {mm(curve.radius)} mm"
    return f"{_letter(number)}: {size}, {len(curve.spots)} x {curve.kind}"


def curve_letters(found: tuple[Curve, ...]) -> Iterator[Text]:
    """The letter of every curve beside each of its arcs, on the leather: dimension lines stand off it."""
    for number, curve in enumerate(found):
        for spot in curve.spots:
            at = spot - Point(0.0, _LETTERS / 2)
            yield Text(Role.SIZE, at, _LETTERS, _letter(number), 0.0, Align.CENTRE)


def sharp_words(figure: Figure) -> str:
    """How many corners of the outline are sharp, outwards and inwards; nothing where none is."""
    turns = [turn for path in _outlines(figure) for turn in _turns(path) if abs(turn) > _SHARP]
    outwards, inwards = sum(turn > 0 for turn in turns), sum(turn < 0 for turn in turns)
    words = [f"{count} {way}" for count, way in ((outwards, "outwards"), (inwards, "inwards")) if count]
    return f"sharp corners of the outline: {', '.join(words)}" if words else ""


def _outlines(figure: Figure) -> list[Path]:
    return [ink.path.ccw() for ink in figure.inks if isinstance(ink, Stroke) and ink.role is Role.OUTLINE]


def _turns(path: Path) -> Iterator[float]:
    """By how much the way turns from each stretch to the next, radians, left positive."""
    run = stretches(path)
    for i, segment in enumerate(run):
        before, after = run[i - 1].tangent_at(run[i - 1].length), segment.tangent_at(0.0)
        yield _angle(before, after)


def _angle(before: Point, after: Point) -> float:
    return atan2(before.cross(after), before.dot(after))


def _arcs(figure: Figure) -> Iterator[tuple[str, float, Point]]:
    """Kind, radius and place of the letter of every arc and round opening."""
    off = _OFF_HOLES if any(ink.role in (Role.HOLE, Role.MARK) for ink in figure.inks) else _OFF
    for ink in figure.inks:
        if isinstance(ink, Stroke) and ink.role is Role.OUTLINE:
            for arc in _bends(ink.path.ccw()):
                yield _kind(arc), arc.radius, _beside(arc, off)
        elif isinstance(ink, Stroke) and ink.role is Role.OPENING:
            yield from _opening_arcs(ink.path.cw())
        elif isinstance(ink, Dot) and ink.role is Role.OPENING:
            yield "round hole", ink.diameter / 2, _aslant(ink.centre, ink.diameter / 2)


def _opening_arcs(path: Path) -> Iterator[tuple[str, float, Point]]:
    diameter, box = across(path), path.bounds
    if diameter is not None:
        yield "round hole", diameter / 2, _aslant(box.centre, diameter / 2)
        return
    for arc in _bends(path):
        yield "curve of an opening", arc.radius, _beside(arc, _OFF)


def _bends(path: Path) -> list[Segment]:
    return [segment for segment in stretches(path) if segment.is_arc]


def _kind(arc: Segment) -> str:
    return "outward arc" if arc.sweep > 0 else "inward arc"


def _beside(arc: Segment, off: float) -> Point:
    """Left of the middle of an arc: the leather lies left of every contour."""
    middle = arc.length / 2
    return arc.point_at(middle) + arc.tangent_at(middle).perpendicular() * off


def _aslant(centre: Point, radius: float) -> Point:
    """Up and right of a round hole."""
    return centre + Point(1.0, 1.0) * ((radius + _OFF) / sqrt(2))


def _letter(number: int) -> str:
    """a, b, ... z, aa, ab ..."""
    first, last = divmod(number, 26)
    return (_letter(first - 1) if first else "") + chr(ord("a") + last)
