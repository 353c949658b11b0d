"""The lines of a sheet in an order that leaves a machine little way between them, within the rules of cutting.

Inside before outside: the roles of a piece stay in their order, its outline last. A piece, or an operation, once
begun is finished before the next. Within these rules pieces, lines and their directions are exchanged, and closed
lines are begun on a straight run of theirs.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from math import inf

from patternforge.drawing.course import Course
from patternforge.drawing.model import Dot, Figure, Ink, Sheet, Stroke
from patternforge.drawing.route import Leg, ordered, routed
from patternforge.drawing.starts import begun_at, starts
from patternforge.drawing.travel import ends, travel
from patternforge.errors import DraftError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

__all__ = ["shortest"]

_ROUNDS = 6  # of exchanging pieces, lines and beginnings in turn; most sheets come to rest after three
_GAIN = 1e-6  # mm that a round must save for another to be tried


@dataclass(slots=True)
class _Line:
    """An ink, where it is begun and left, whether it is turned round, and where else it may be begun."""

    ink: Stroke | Dot
    start: complex
    end: complex
    turned: bool = False
    along: float = 0.0
    choices: tuple[tuple[float, complex], ...] = ()

    def drawn(self) -> Ink:
        """The ink as it is to be followed."""
        if not isinstance(self.ink, Stroke):
            return self.ink
        path = begun_at(self.ink.path, self.along)
        return replace(self.ink, path=path.reversed() if self.turned else path)


@dataclass(slots=True)
class _Group:
    """Lines of one role, in any order, and what that was last settled for: the places beside, the beginnings."""

    lines: list[_Line]
    settled: tuple[complex | None, complex | None, tuple[float, ...]] | None = None

    @property
    def start(self) -> complex:
        return self.lines[0].start

    @property
    def end(self) -> complex:
        return self.lines[-1].end


_Beginnings = Callable[[Path], tuple[float, ...]]


@dataclass(slots=True)
class _Unit:
    """A figure as its groups, one after the other."""

    figure: Figure
    groups: list[_Group]

    @property
    def start(self) -> complex:
        return self.groups[0].start

    @property
    def end(self) -> complex:
        return self.groups[-1].end

    def drawn(self) -> Figure:
        """The figure with its inks in the order found."""
        return replace(self.figure, inks=tuple(line.drawn() for group in self.groups for line in group.lines))


def shortest(sheet: Sheet, course: Course = Course.PIECES) -> Sheet:
    """``sheet`` in an order whose travel is never longer than its own.

    The sheet comes as ``in_roles`` leaves it for the same ``course``. The same lines are on it, only in another
    order, direction or beginning; outlines and openings keep their direction. Where beginning them on straight runs
    would make the way longer than it was, they are begun where they were. DraftError for an ink that is no line.

    >>> from patternforge.drawing.model import Role
    >>> dots = tuple(Dot(Role.HOLE, Point(x, 1), 1.0) for x in (1, 9, 5))
    >>> piece = Figure("piece", "outer", dots)
    >>> [ink.centre.x for ink in shortest(Sheet("sheet", 20, 20, (piece,))).figures[0].inks]
    [1, 5, 9]
    """
    known = travel(sheet)
    found = _settled(sheet, course, starts)
    return found if travel(found) <= known + _GAIN else _settled(sheet, course, lambda path: (0.0,))


def _settled(sheet: Sheet, course: Course, beginnings: _Beginnings) -> Sheet:
    stages = _stages(sheet, course, beginnings)
    known = inf
    for _ in range(_ROUNDS):
        _exchange_units(stages)
        groups = [group for stage in stages for unit in stage for group in unit.groups]
        _exchange_lines(groups)
        _begin_elsewhere([line for group in groups for line in group.lines])
        found = replace(sheet, figures=tuple(unit.drawn() for stage in stages for unit in stage))
        if travel(found) > known - _GAIN:
            break
        known = travel(found)
    return found


def _stages(sheet: Sheet, course: Course, beginnings: _Beginnings) -> list[list[_Unit]]:
    """Units that may change places with one another: all pieces, or what one operation is done on of each."""
    units = [_unit(figure, beginnings) for figure in sheet.figures]
    if course is Course.PIECES:
        return [units]
    return [list(same) for _, same in groupby(units, key=lambda unit: unit.figure.inks[0].role)]


def _unit(figure: Figure, beginnings: _Beginnings) -> _Unit:
    by_role = groupby(figure.inks, key=lambda ink: ink.role)
    return _Unit(figure, [_Group([_line(ink, beginnings) for ink in same]) for _, same in by_role])


def _line(ink: Ink, beginnings: _Beginnings) -> _Line:
    if not isinstance(ink, Stroke | Dot):
        raise DraftError(f"a {ink.role.value} that is no line cannot be cut; draw it as strokes")
    start, end = map(_place, ends(ink))
    if not (isinstance(ink, Stroke) and ink.path.closed):
        return _Line(ink, start, end)
    choices = tuple((along, _place(ink.path.point_at(along))) for along in beginnings(ink.path))
    along, at = choices[0]
    return _Line(ink, at, at, along=along, choices=choices)


def _place(point: Point) -> complex:
    return complex(point.x, point.y)


def _exchange_units(stages: Sequence[list[_Unit]]) -> None:
    for i, stage in enumerate(stages):
        before = stages[i - 1][-1].end if i else None
        after = stages[i + 1][0].start if i + 1 < len(stages) else None
        legs = [Leg(number, unit.start, unit.end) for number, unit in enumerate(stage)]
        stage[:] = [stage[leg.index] for leg in ordered(legs, before, after)]


def _exchange_lines(groups: Sequence[_Group]) -> None:
    for i, group in enumerate(groups):
        before = groups[i - 1].end if i else None
        after = groups[i + 1].start if i + 1 < len(groups) else None
        beside = (before, after, tuple(line.along for line in group.lines))
        if group.settled != beside:
            legs = [Leg(number, line.start, line.end) for number, line in enumerate(group.lines)]
            group.lines = [_taken(group.lines[leg.index], leg) for leg in routed(legs, before, after)]
            group.settled = (before, after, tuple(line.along for line in group.lines))


def _taken(line: _Line, leg: Leg) -> _Line:
    """The line in the direction of the leg; what ends where it begins keeps its own."""
    if leg.turned and line.start != line.end:
        line.turned = not line.turned
        line.start, line.end = line.end, line.start
    return line


def _begin_elsewhere(lines: Sequence[_Line]) -> None:
    for i, line in enumerate(lines):
        if len(line.choices) > 1:
            beside = [lines[i - 1].end] if i else []
            beside += [lines[i + 1].start] if i + 1 < len(lines) else []
            line.along, line.start = min(line.choices, key=lambda choice: sum(abs(choice[1] - at) for at in beside))
            line.end = line.start
