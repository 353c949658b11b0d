"""Arrows on a piece: which way is up, and which way the hide must lie tight."""

from __future__ import annotations

from patternforge.drawing.model import Align, Ink, Role, Stroke, Text
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point
from patternforge.leather.material import Stretch

__all__ = ["SYMBOL", "symbol_inks", "symbol_ways"]

SYMBOL = 9.0  # side of the square that one arrow takes with its word, mm

_WORD = 2.0  # height of the word under an arrow, mm
_FOOT = 0.8  # what its letters may hang below their base line, mm
_REACH = 2.6  # half the length of an arrow, mm
_BARB = 1.2  # how far the barbs of an arrow head stand off its shaft, mm
_HEAD = 2.0  # length of an arrow head, mm

_UP = Point(0.0, 1.0)
_ACROSS = Point(1.0, 0.0)


def symbol_ways(stretch: Stretch) -> tuple[tuple[str, tuple[Point, ...]], ...]:
    """The arrows a piece bears: the word of each, and the directions of its heads.

    >>> [word for word, _ in symbol_ways(Stretch.UNKNOWN)]
    ['up']
    """
    tight = {Stretch.ACROSS: (_UP, -_UP), Stretch.ALONG: (_ACROSS, -_ACROSS)}
    up = ("up", (_UP,))
    return (up, ("tight", tight[stretch])) if stretch in tight else (up,)


def symbol_inks(word: str, heads: tuple[Point, ...], centre: Point) -> tuple[Ink, ...]:
    """An arrow with a head at each end that ``heads`` points to, over its word, in a square of ``SYMBOL`` mm."""
    middle = centre + Point(0.0, SYMBOL / 2 - _REACH - 0.4)
    shaft = Stroke(Role.LABEL, polyline([middle - heads[0] * _REACH, middle + heads[0] * _REACH]))
    barbs = tuple(_head(middle + way * _REACH, way) for way in heads)
    foot = centre - Point(0.0, SYMBOL / 2 - _FOOT)
    return (shaft, *barbs, Text(Role.LABEL, foot, _WORD, word, 0.0, Align.CENTRE))


def _head(tip: Point, way: Point) -> Stroke:
    back, aside = tip - way * _HEAD, way.perpendicular() * _BARB
    return Stroke(Role.LABEL, polyline([back + aside, tip, back - aside]))
