"""Names beside a picture, each led to a place that can be seen of what it names."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from textwrap import wrap

from patternforge.drawing.model import Align, Area, Dot, Figure, Ink, Role, Stroke, Text
from patternforge.geometry.flatten import flattened
from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Bounds, Point, joined_bounds

__all__ = ["Beside", "Named", "named_places", "names_figure"]

_OFF = 6.0  # names beside the picture, mm
_PITCH = 4.0  # from line to line
_LETTERS = 2.2
_LONGEST = 22  # letters of a line
_INSIDE = 0.12  # of the way from the rim to the middle
_DOT = 0.7


@dataclass(frozen=True, slots=True)
class Named:
    """A name and the place it leads to; ``left``: it stands left of the picture."""

    name: str
    at: Point
    left: bool


class Beside(Enum):
    """Where names stand: all left of the picture, or each on the side it is nearer to."""

    LEFT = "left"
    BOTH = "both"


def named_places(figures: Sequence[Figure], names: Mapping[str, str], beside: Beside = Beside.BOTH) -> list[Named]:
    """For each figure that has a name, the place furthest to one side that no later figure covers.

    Figures lie over one another, the last nearest to the eye; each is known by the first area in it.
    """
    grounds = [_ground(figure) for figure in figures]
    box = joined_bounds([ground.bounds for ground in grounds])
    found = []
    for number, figure in enumerate(figures):
        if figure.name in names:
            over = [(ground.bounds, Interior(ground)) for ground in grounds[number + 1 :]]
            left = beside is Beside.LEFT or grounds[number].bounds.centre.x < box.centre.x - 1e-6
            found.append(_named(names[figure.name], grounds[number], over, left))
    return found


def _ground(figure: Figure) -> Path:
    return next(ink.paths[0] for ink in figure.inks if isinstance(ink, Area))


def _named(name: str, ground: Path, over: Sequence[tuple[Bounds, Interior]], left: bool) -> Named:
    places = list(_places(ground))
    free = [p for p in places if not any(_holds(each, p) for each in over)] or places
    at = min(free, key=lambda p: (round(p.x if left else -p.x, 3), round(p.y, 3)))
    return Named(name, at, left)


def _places(ground: Path) -> Iterator[Point]:
    """Places just inside the rim."""
    middle = ground.bounds.centre
    whole = Interior(ground)
    points = flattened(ground, 0.5)
    for a, b in zip(points, (*points[1:], points[0]), strict=True):
        for share in (0.1, 0.3, 0.5, 0.7, 0.9):
            rim = a + (b - a) * share
            place = rim + (middle - rim) * _INSIDE
            if whole.holds(place):
                yield place


def _holds(each: tuple[Bounds, Interior], p: Point) -> bool:
    box, inside = each
    return box.x0 <= p.x <= box.x1 and box.y0 <= p.y <= box.y1 and inside.holds(p)


def names_figure(named: Sequence[Named], box: Bounds) -> Figure:
    """The names left and right of a picture that takes up ``box``, no two on one another, with their leaders."""
    inks: list[Ink] = []
    for left in (True, False):
        some = sorted((each for each in named if each.left is left), key=lambda each: each.at.y)
        x = box.x0 - _OFF if left else box.x1 + _OFF
        lines = [wrap(each.name, _LONGEST) for each in some]
        for each, said, y in zip(some, lines, _apart(some, [len(each) for each in lines]), strict=True):
            inks += _leader(each, said, Point(x, y))
    return Figure("names", "", tuple(inks))


def _apart(some: Sequence[Named], lines: Sequence[int]) -> list[float]:
    """Heights for the middles of rising names, moved so that no two touch, about where they point to."""
    placed: list[float] = []
    for i, (each, rows) in enumerate(zip(some, lines, strict=True)):
        least = placed[-1] + _PITCH * (rows + lines[i - 1]) / 2 if placed else each.at.y
        placed.append(max(each.at.y, least))
    shift = sum(y - each.at.y for y, each in zip(placed, some, strict=True)) / max(len(some), 1)
    return [y - shift for y in placed]


def _leader(each: Named, said: Sequence[str], at: Point) -> Iterator[Ink]:
    """The line to the place and the words, their middle at ``at``."""
    toward = Point(1.0, 0.0) if each.left else Point(-1.0, 0.0)
    yield Stroke(Role.LABEL, polyline([at + toward, each.at]))
    yield Dot(Role.LABEL, each.at, _DOT)
    top = at.y + _PITCH * (len(said) - 1) / 2 - _LETTERS / 2
    for row, words in enumerate(said):
        align = Align.RIGHT if each.left else Align.LEFT
        yield Text(Role.LABEL, Point(at.x, top - _PITCH * row), _LETTERS, words, 0.0, align)
