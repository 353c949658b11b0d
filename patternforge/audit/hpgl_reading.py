"""HPGL plots as cut files: what the pen does while it is down, in mm (HP-GL/2 Reference Guide, 1990, from memory).

A command is two letters and its numbers; IN and DF begin anew, PA and PR say whether numbers are places or steps, PU
and PD lift and lower the pen and move it, SP takes a pen, AA, AR and CI draw arcs and circles; the centre of AA is a
place and that of AR a step, whatever PA and PR say. A unit is 1/40 mm.
Whatever runs while the pen stays down is one entity; its layer is the pen. What scales, turns or writes is told.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from math import atan2, ceil, dist, pi, radians
from types import MappingProxyType

from patternforge.audit.affine import scaling
from patternforge.audit.model import CutFile, Entity, FileKind, Look, Odd, Oddity
from patternforge.audit.shapes import Vertex, arc_vertices, carried, carried_ring, drawn
from patternforge.errors import ReadingError
from patternforge.geometry.point import Point

__all__ = ["hpgl_file", "is_hpgl"]

_UNIT = 0.025  # mm
_MOST = 300_000
_FARTHEST = 2.0**30  # units; the largest number that plotters take
_BACK = 1e-6  # units; what rounding leaves between the ends of a full turn
# Degrees that an arc may go through; more is cut down to that, and nothing else (PCL 5 Printer Language Technical
# Reference Manual, part II, commands AA and AR: sweep angle, a clamped real number).
_SWEEPS = (-32768.0, 32767.0)
_BEGINNING = re.compile(
    rb"\s*(?:\x1b[^A-Za-z]*[A-Za-z]\s*)*(?:IN|DF|SP|PU|PD|PA|PR|PG|BP|VS|IP|SC|RO|PS)[\s;,\d-]", re.IGNORECASE
)
_ESCAPES = re.compile(r"\x1b[^A-Za-z]*[A-Za-z]")
_COMMAND = re.compile(r"\s*;?\s*(?:(LB)([^\x03]*)\x03?|([A-Za-z]{2})([^A-Za-z;]*);?)\s*", re.ASCII)
_NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)")
# Speeds, pens, pages and letters, by two letters each: none of them changes where the pen goes.
_QUIET = "IWVSFSPTLTPGNPPWBPPSWUACASMCLACOESDIDRSISRSLDTCSCASSSAVANR"
_STRANGE: Mapping[str, str] = MappingProxyType(
    {"SC": "it scales its units", "IP": "it moves the corners of its scale", "RO": "it turns the drawing round"}
)


def is_hpgl(data: bytes) -> bool:
    """Whether it begins as plots do.

    >>> is_hpgl(b"IN;SP1;PU0,0;"), is_hpgl(b"  0\\nSECTION\\n")
    (True, False)
    """
    return _BEGINNING.match(data) is not None


@dataclass(slots=True)
class _Plotter:
    """Where the pen is in units, which it is, whether it is down, and what it has drawn so far."""

    at: Point = field(default_factory=lambda: Point(0.0, 0.0))
    pen: int = 0
    down: bool = False
    absolute: bool = True
    course: list[Vertex] = field(default_factory=list)
    found: list[Entity] = field(default_factory=list)
    odd: list[Oddity] = field(default_factory=list)

    def obey(self, word: str, numbers: Sequence[float]) -> bool:
        """Does what a command says; whether it is known."""
        known = _COMMANDS.get(word)
        if known is not None:
            known(self, numbers)
        elif word in _STRANGE:
            self.odd += [Oddity(Odd.BROKEN, None, f"{_STRANGE[word]} ({word}): no size in it can be relied on")]
        return known is not None or word in _STRANGE or _QUIET.find(word) % 2 == 0

    def begin(self, _: Sequence[float] = ()) -> None:
        self.lift()
        self.at, self.pen, self.down, self.absolute = Point(0.0, 0.0), 0, False, True

    def take(self, numbers: Sequence[float]) -> None:
        self.lift()
        self.pen = int(numbers[0]) if numbers else 0

    def move(self, numbers: Sequence[float]) -> None:
        for x, y in zip(numbers[::2], numbers[1::2], strict=False):
            target = Point(x, y) if self.absolute else self.at + Point(x, y)
            if self.down:
                self._reach(target, 0.0)
            self.at = target

    def raised(self, numbers: Sequence[float]) -> None:
        self.lift()
        self.down = False
        self.move(numbers)

    def lowered(self, numbers: Sequence[float]) -> None:
        self.down = True
        self.move(numbers)

    def arc_absolute(self, numbers: Sequence[float]) -> None:
        if len(numbers) >= 3:
            self._arc(Point(*numbers[:2]), numbers[2])

    def arc_relative(self, numbers: Sequence[float]) -> None:
        if len(numbers) >= 3:
            self._arc(self.at + Point(*numbers[:2]), numbers[2])

    def _arc(self, centre: Point, degrees: float) -> None:
        """Round a centre through an angle; over a full turn the pen goes round again."""
        away, sweep = self.at - centre, radians(min(max(degrees, _SWEEPS[0]), _SWEEPS[1]))
        start, parts = atan2(away.y, away.x), max(ceil(abs(sweep) / pi), 2)
        for i in range(parts):
            (_, _, bulge), (x, y, _) = arc_vertices(centre, away.norm, start + sweep * i / parts, sweep / parts)
            if self.down:
                self._reach(Point(x, y), bulge)
            self.at = Point(x, y)

    def circle(self, numbers: Sequence[float]) -> None:
        self.lift()
        if numbers and numbers[0]:
            shape = carried_ring(self.at, abs(numbers[0]), scaling(_UNIT, _UNIT))
            self._add(Entity("CI", self._next, self.at * _UNIT, shape, self._look))

    def lift(self) -> None:
        """Ends what has been drawn since the pen came down."""
        course, self.course = self.course, []
        if not course:
            return
        closed = len(course) > 2 and dist(course[0][:2], course[-1][:2]) <= _BACK
        made = drawn(carried(course[:-1] if closed else course, closed, scaling(_UNIT, _UNIT)), closed)
        odd = tuple(Oddity(Odd.ZERO, at) for at in (made.empty if made.shape is None else ()))
        start = Point(*course[0][:2]) * _UNIT
        self._add(Entity("PD", self._next, start, made.shape, self._look, odd[:1]))

    def letters(self) -> None:
        self.odd.append(Oddity(Odd.TEXT, self.at * _UNIT, "LB"))

    def _reach(self, target: Point, bulge: float) -> None:
        if not self.course:
            self.course.append((self.at.x, self.at.y, 0.0))
        x, y, _ = self.course[-1]
        self.course[-1] = (x, y, bulge)
        self.course.append((target.x, target.y, 0.0))

    def _add(self, entity: Entity) -> None:
        if len(self.found) >= _MOST:
            raise ReadingError(f"the plot draws more than {_MOST} lines; take some out")
        self.found.append(entity)

    @property
    def _next(self) -> int:
        return len(self.found) + 1

    @property
    def _look(self) -> Look:
        return Look(f"pen {self.pen}")


def _absolute(plotter: _Plotter, numbers: Sequence[float]) -> None:
    plotter.absolute = True
    plotter.move(numbers)


def _relative(plotter: _Plotter, numbers: Sequence[float]) -> None:
    plotter.absolute = False
    plotter.move(numbers)


_COMMANDS: Mapping[str, Callable[[_Plotter, Sequence[float]], None]] = MappingProxyType(
    {
        "IN": _Plotter.begin,
        "DF": _Plotter.begin,
        "SP": _Plotter.take,
        "PU": _Plotter.raised,
        "PD": _Plotter.lowered,
        "PA": _absolute,
        "PR": _relative,
        "AA": _Plotter.arc_absolute,
        "AR": _Plotter.arc_relative,
        "CI": _Plotter.circle,
    }
)


def hpgl_file(data: bytes, name: str) -> CutFile:
    """The plot ``data`` as it is read; ReadingError, with the line, when it is broken or of an unknown kind.

    >>> file = hpgl_file(b"IN;SP1;PU0,0;PD400,0,400,400;PD0,400,0,0;PU;SP0;", "a.hpgl")
    >>> [(each.name, each.shape.length) for each in file.cuts]
    [('PD 1 (pen 1)', 40.0)]
    """
    text = _ESCAPES.sub("", data.decode("latin-1"))
    plotter = _Plotter()
    for word, numbers, at in _commands(text):
        if word == "LB":
            plotter.letters()
        elif not plotter.obey(word.upper(), numbers):
            line = text.count("\n", 0, at) + 1
            raise ReadingError(f"line {line}: the command {word} is not known; export the plot again as plain HPGL")
    plotter.lift()
    return CutFile(name, FileKind.HPGL, "", "1/40 mm", _UNIT, tuple(plotter.found), oddities=tuple(plotter.odd))


def _commands(text: str) -> Iterator[tuple[str, list[float], int]]:
    """Every command with its numbers and where in the text it stands."""
    at, end = 0, len(text.rstrip())
    while at < end:
        found = _COMMAND.match(text, at)
        words = (found[4] or "") if found else ""
        numbers = [float(each) for each in _NUMBER.findall(words)]
        if found is None or _NUMBER.sub("", words).strip(" ,\r\n\t") or any(abs(n) > _FARTHEST for n in numbers):
            line = text.count("\n", 0, at) + 1
            raise ReadingError(f"line {line}: {text[at : at + 20].strip()!r} is no command; export the plot again")
        yield found[1] or found[3], numbers, at
        at = found.end()
