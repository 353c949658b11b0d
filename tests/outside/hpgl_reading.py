"""A small reader of HPGL plots by the published meaning of the commands, so that no code that wrote one judges it.

Two letters and numbers, ended by a semicolon; a unit is 0.025 mm; IN initialises: pen up at the origin, numbers
absolute. PA takes what follows as absolute, PR as relative; PU lifts the pen and moves to each pair in turn, PD
lowers it and moves to each pair in turn; SP selects a pen, 0 puts it away. (Using HPGL as a drawing interchange
media, 1992, paulbourke.net/dataformats/hpgl; HP-GL/2 Reference Guide, Hewlett-Packard 1990, from memory.) Points are
complex numbers: x + iy in mm.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

__all__ = ["UNIT", "Run", "runs", "runs_by_piece"]

UNIT = 0.025  # mm


@dataclass(frozen=True, slots=True)
class Run:
    """What one pen draws without being lifted."""

    pen: int
    points: tuple[complex, ...]

    @property
    def closed(self) -> bool:
        """Whether it ends where it began."""
        return len(self.points) > 2 and self.points[0] == self.points[-1]

    @property
    def box(self) -> tuple[float, float, float, float]:
        """x0, y0, x1, y1."""
        xs, ys = [at.real for at in self.points], [at.imag for at in self.points]
        return min(xs), min(ys), max(xs), max(ys)


@dataclass(slots=True)
class _Plotter:
    """Where the pen is, which it is, whether it is down, and what it has drawn."""

    pen: int = 0
    at: complex = 0j
    down: bool = False
    absolute: bool = True
    drawn: list[list[complex]] = field(default_factory=list)
    pens: list[int] = field(default_factory=list)

    def obey(self, command: str, numbers: list[int]) -> None:
        """Do what the command says; ValueError for one that is not among the six."""
        if command == "IN":
            self.pen, self.at, self.down, self.absolute = 0, 0j, False, True
        elif command == "SP":
            (self.pen,) = numbers
        elif command in ("PA", "PR"):
            self.absolute = command == "PA"
            self._move(numbers)
        elif command in ("PU", "PD"):
            self.down = command == "PD"
            self._move(numbers)
        else:
            raise ValueError(f"the command {command} is not known here")

    def _move(self, numbers: list[int]) -> None:
        for x, y in zip(numbers[::2], numbers[1::2], strict=True):
            target = complex(x, y) if self.absolute else self.at + complex(x, y)
            if self.down and self.pen:
                if not self.drawn or self.drawn[-1][-1] != self.at or self.pens[-1] != self.pen:
                    self._begin()
                self.drawn[-1].append(target)
            elif self.down:
                raise ValueError("something is drawn without a pen")
            self.at = target

    def _begin(self) -> None:
        self.drawn.append([self.at])
        self.pens.append(self.pen)


def runs(text: str) -> tuple[Run, ...]:
    """Every run with the pen down, in order. ValueError for what is no command, or a pen left down at the end."""
    plotter = _Plotter()
    rest = re.sub(r"\s", "", text)
    for command, words in re.findall(r"([A-Z]{2})([^;]*);", rest):
        plotter.obey(command, [int(word) for word in words.split(",")] if words else [])
    if re.sub(r"[A-Z]{2}[^;]*;", "", rest) or plotter.down or plotter.pen:
        raise ValueError("the plot does not end with the pen put away")
    found = zip(plotter.pens, plotter.drawn, strict=True)
    return tuple(Run(pen, tuple(point * UNIT for point in points)) for pen, points in found)


def runs_by_piece(found: Iterable[Run], outline_pen: int) -> Iterator[tuple[Run, ...]]:
    """The runs parted after each outline. ValueError when some are left."""
    waiting: list[Run] = []
    for run in found:
        waiting.append(run)
        if run.pen == outline_pen:
            yield tuple(waiting)
            waiting = []
    if waiting:
        raise ValueError(f"{len(waiting)} runs after the last outline")
