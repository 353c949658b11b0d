"""The ``d`` of a path as runs of vertices with bulges (SVG 1.1, section 8.3; arcs: appendix F.6)."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from math import atan2, cos, isclose, radians, sin, sqrt, tan, tau

from patternforge.audit.model import Odd
from patternforge.audit.shapes import Vertex, bezier_points, ellipse_points
from patternforge.errors import ReadingError
from patternforge.geometry.point import Point

__all__ = ["Run", "path_runs"]

_TOKEN = re.compile(r"([MmZzLlHhVvCcSsQqTtAa])|([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)|([\s,]+)|(.)", re.DOTALL)
_TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
_CLOSE = 1e-9


@dataclass(slots=True)
class Run:
    """One part of a path, from a move to the next: vertices in its own units, and what is odd about it."""

    vertices: list[Vertex]
    closed: bool = False
    odd: set[Odd] = field(default_factory=set)

    @property
    def end(self) -> Point:
        """Where it has come to."""
        return Point(*self.vertices[-1][:2])


@dataclass(slots=True)
class _Pen:
    """Where the drawing stands: the runs so far, and the last control point for smooth curves."""

    factor: float
    runs: list[Run] = field(default_factory=list)
    at: Point = field(default_factory=lambda: Point(0.0, 0.0))
    control: Point | None = None
    drawn_by: str = ""

    def move(self, to: Point) -> None:
        """Begins a run."""
        self.runs.append(Run([(to.x, to.y, 0.0)]))
        self.at = to

    def through(self, points: list[Point], odd: Odd | None = None) -> None:
        """Goes on in straight lines."""
        run = self._run()
        run.vertices += [(p.x, p.y, 0.0) for p in points]
        run.odd |= {odd} if odd else set()
        self.at = points[-1]

    def turn(self, to: Point, bulge: float) -> None:
        """Goes on in an arc."""
        run = self._run()
        x, y, _ = run.vertices[-1]
        run.vertices[-1] = (x, y, bulge)
        run.vertices.append((to.x, to.y, 0.0))
        self.at = to

    def close(self) -> None:
        """Ends a run where it began; a last vertex that lies there already is the first one."""
        run = self._run()
        run.closed = True
        self.at = Point(*run.vertices[0][:2])
        if len(run.vertices) > 1 and run.end.distance_to(self.at) <= _CLOSE:
            run.vertices.pop()

    def _run(self) -> Run:
        if not self.runs or self.runs[-1].closed:
            self.move(self.at)
        return self.runs[-1]


def path_runs(words: str, factor: float = 1.0, line: int = 0) -> list[Run]:
    """The parts of a path; ``factor`` is mm to one of its units. ReadingError for what is no path data.

    >>> [run.vertices for run in path_runs("M0 0h4v3z m10 0 l1 0")]
    [[(0.0, 0.0, 0.0), (4.0, 0.0, 0.0), (4.0, 3.0, 0.0)], [(10.0, 0.0, 0.0), (11.0, 0.0, 0.0)]]
    """
    pen = _Pen(factor)
    for letter, given in _commands(words, line):
        start = pen.at if letter.islower() else Point(0.0, 0.0)
        _draw(pen, letter.upper(), given, start)
        pen.drawn_by = letter.upper()
    return [run for run in pen.runs if len(run.vertices) > 1 or run.closed]


def _commands(words: str, line: int) -> Iterator[tuple[str, list[float]]]:
    """Each command with as many numbers as it takes; a letter left out is the one before, L after M."""
    letter, given = "", list[float]()
    for token in _TOKEN.finditer(words):
        if token[4] or (not letter and (token[2] or (token[1] or "M") not in "Mm")):
            raise _no_path(words, token.start(), line)
        if token[1]:
            if given:
                raise _no_path(words, token.start(), line)
            letter = token[1]
            if letter in "Zz":
                yield letter, []
        elif token[2]:
            if letter in "Zz":
                raise _no_path(words, token.start(), line)
            yield from _filled(letter, given, token[2])
            if letter in "Mm" and not given:
                letter = "L" if letter == "M" else "l"
    if given:
        raise _no_path(words, len(words), line)


def _filled(letter: str, given: list[float], word: str) -> Iterator[tuple[str, list[float]]]:
    """Adds the number; the command once it has all. The flags of an arc may run together with what follows."""
    flags = letter in "Aa" and len(given) in (3, 4)
    while flags and len(word) > 1 and word[0] in "01":
        given.append(float(word[0]))
        word, flags = word[1:], len(given) == 4
    given.append(float(word))
    if len(given) == _TAKES[letter.upper()]:
        yield letter, given[:]
        given.clear()


def _no_path(words: str, at: int, line: int) -> ReadingError:
    return ReadingError(f"line {line}: the path breaks off at {words[at : at + 20]!r}; save the file again")


def _draw(pen: _Pen, letter: str, given: list[float], start: Point) -> None:
    points = [start + Point(x, y) for x, y in zip(given[::2], given[1::2], strict=False)]
    match letter:
        case "M":
            pen.move(points[0])
        case "Z":
            pen.close()
        case "L":
            pen.through(points)
        case "H":
            pen.through([Point(start.x + given[0], pen.at.y)])
        case "V":
            pen.through([Point(pen.at.x, start.y + given[0])])
        case "A":
            _arc(pen, given, start + Point(given[5], given[6]))
        case _:
            _curve(pen, letter, points)


def _curve(pen: _Pen, letter: str, points: list[Point]) -> None:
    kin = {"S": "CS", "T": "QT"}.get(letter, "")
    if kin:
        known = pen.control if pen.control is not None and pen.drawn_by and pen.drawn_by in kin else pen.at
        points = [2 * pen.at - known, *points]
    pen.control = points[-2]
    pen.through(bezier_points([pen.at, *points], pen.factor), Odd.CURVE)


def _arc(pen: _Pen, given: list[float], to: Point) -> None:
    rx, ry, tilt, large, swept = abs(given[0]), abs(given[1]), radians(given[2]), given[3] != 0, given[4] != 0
    chord = to - pen.at
    if chord.norm <= _CLOSE:
        return
    if not rx or not ry:
        pen.through([to])
        return
    # Half the chord on axes along the radii, in radii.
    half = chord.rotated(-tilt) / 2
    u = Point(half.x / rx, half.y / ry)
    grown = max(u.norm, 1.0)
    rx, ry, u = rx * grown, ry * grown, u / grown
    rise = sqrt(max(1 / u.dot(u) - 1, 0.0)) * (1 if large != swept else -1)
    middle = u + u.perpendicular() * rise
    first, last = -middle, 2 * u - middle
    sweep = (atan2(last.y, last.x) - atan2(first.y, first.x)) % tau - (0.0 if swept else tau)
    if isclose(rx, ry, rel_tol=1e-6):
        pen.turn(to, tan(sweep / 4))
        return
    major, minor = Point(cos(tilt), sin(tilt)) * rx, Point(-sin(tilt), cos(tilt)) * ry
    centre = pen.at - (major * first.x + minor * first.y)
    begin = atan2(first.y, first.x)
    points = ellipse_points(centre, major, minor, begin, begin + sweep, pen.factor)
    pen.through([*points[1:-1], to], Odd.ELLIPSE)
