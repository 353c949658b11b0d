"""Sheets as plots for knife and pen plotters: HPGL, which knows pens and straight moves in fortieths of a mm.

Arcs are written as chords. HPGL has a command for arcs, but it takes their centre in whole units too and starts
wherever the rounded point before it lies: an arc would stray by up to two units, chords stray by less than one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from types import MappingProxyType

from patternforge.drawing.chords import in_chords
from patternforge.drawing.model import Dot, Ink, Role, Sheet, Stroke
from patternforge.errors import DraftError
from patternforge.export.dxf import CUT_ROLES
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

__all__ = ["CHORDS", "PENS", "UNITS_PER_MM", "HpglOptions", "hpgl_bytes"]

UNITS_PER_MM = 40
# How far chords stray from their arcs, mm: with half a unit of rounding both ways no more than a unit in all.
CHORDS = 0.005
PENS: Mapping[Role, int] = MappingProxyType({Role.MARK: 2, Role.HOLE: 1, Role.OPENING: 1, Role.OUTLINE: 1})
_POINTS = 32  # in one command, since some plotters keep a short line only

Units = tuple[int, int]


@dataclass(frozen=True, slots=True)
class HpglOptions:
    """What a plot is to hold: the roles written, the pen (1 to 8) of each, how far chords may stray from arcs, mm."""

    roles: tuple[Role, ...] = CUT_ROLES
    pens: Mapping[Role, int] = field(default_factory=lambda: PENS)
    chords: float = CHORDS


def hpgl_bytes(sheet: Sheet, options: HpglOptions | None = None) -> bytes:
    """``sheet`` as an HPGL file, its lower left corner at the origin, y upwards, the same bytes on every day.

    Each ink is one run with the pen down, in ink order; a closed one ends on the unit it began on. A pen is selected
    where it changes, and put away at the end. DraftError when nothing would be written, or for a text or a filled
    area in a role to be written.

    Commands: IN initialises, SP selects a pen (0 puts it away), PA makes numbers absolute, PU and PD move with the
    pen up or down to each pair in turn; a unit is 0.025 mm (HP-GL/2 Reference Guide, 1990).

    >>> from patternforge.drawing.model import Figure
    >>> from patternforge.geometry.path import polyline
    >>> slit = Stroke(Role.HOLE, polyline([Point(1, 1), Point(2, 1)]))
    >>> hpgl_bytes(Sheet("sheet", 3, 2, (Figure("piece", "outer", (slit,)),))).decode()
    'IN;\\nPA;\\nSP1;\\nPU40,40;\\nPD80,40;\\nPU;\\nSP0;\\n'
    """
    chosen = options or HpglOptions()
    inks = [ink for figure in sheet.figures for ink in figure.inks if ink.role in chosen.roles]
    if not inks:
        raise DraftError(f"{sheet.name!r} holds nothing to write: no {', no '.join(chosen.roles)}")
    _refuse_others(inks)
    chorded = (ink for figure in in_chords(sheet, chosen.chords).figures for ink in figure.inks)
    strokes = [ink for ink in chorded if isinstance(ink, Stroke) and ink.role in chosen.roles]
    lines = ["IN;", "PA;", *_commands(strokes, chosen.pens), "PU;", "SP0;"]
    return "".join(f"{line}\n" for line in lines).encode("ascii")


def _refuse_others(inks: Sequence[Ink]) -> None:
    """DraftError for a text or an area, which would be left out without a word."""
    for ink in inks:
        if not isinstance(ink, Stroke | Dot):
            raise DraftError(f"a {ink.role.value} that is no line cannot go into a plot; draw it as strokes")


def _commands(strokes: Sequence[Stroke], pens: Mapping[Role, int]) -> Iterator[str]:
    pen = None
    for stroke in strokes:
        if pens[stroke.role] != pen:
            # Lifted first: a plotter may change pens where it stands.
            if pen is not None:
                yield "PU;"
            pen = pens[stroke.role]
            yield f"SP{pen};"
        yield from _run(stroke.path)


def _run(path: Path) -> Iterator[str]:
    first, *others = _units(path)
    yield f"PU{_pair(first)};"
    for start in range(0, len(others), _POINTS):
        yield f"PD{','.join(map(_pair, others[start : start + _POINTS]))};"


def _units(path: Path) -> list[Units]:
    """The points of a path in whole units, none twice in a row; what is shorter than a unit is drawn as a dot."""
    points = [_rounded(segment.start) for segment in path.segments]
    points.append(points[0] if path.closed else _rounded(path.end))
    kept = [points[0], *(after for before, after in pairwise(points) if after != before)]
    return kept if len(kept) > 1 else [kept[0], kept[0]]


def _rounded(point: Point) -> Units:
    return round(point.x * UNITS_PER_MM), round(point.y * UNITS_PER_MM)


def _pair(units: Units) -> str:
    return f"{units[0]},{units[1]}"
