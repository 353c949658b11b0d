"""Sections as a drawing at true size: leathers and contents in tones of their own, the thickness measured."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.drawing.model import Align, Area, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.drawing.stacked import room, stacked
from patternforge.fit.section import Section, Strip
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point
from patternforge.units import mm

__all__ = ["section_sheet"]

_LETTERS, _HEADING = 2.2, 3.5  # mm
_GAP = 9.0
_CONTENTS = 0.1
_LIGHTEST, _DARKEST = 0.3, 0.75  # tones of leathers
_FIELD = Point(8.0, 4.0)  # of the legend
_OFF, _ARM = 4.0, 1.5  # where a thickness is measured, beside the section; half the arm at its ends


def section_sheet(name: str, title: str, sections: Sequence[Section], leathers: Sequence[str]) -> Sheet:
    """The sections one below the other at true size, each with its thickness; ``leathers`` are the roles told."""
    tones = _tones(leathers)
    pictures = [_picture(section, tones) for section in sections]
    return stacked([_heading(title), _legend(tones), *pictures], _GAP, name)


def _heading(title: str) -> Figure:
    words = "True size. Air where nothing is drawn; what the leather needs in a fold is drawn as an arc."
    lines = (
        Text(Role.LABEL, Point(0.0, 0.0), _HEADING, f"{title}: sections"),
        Text(Role.LABEL, Point(0.0, -5.0), _LETTERS, words),
    )
    return Figure("heading", "", lines)


def _tones(leathers: Sequence[str]) -> dict[str, float]:
    step = (_DARKEST - _LIGHTEST) / max(len(leathers) - 1, 1)
    return {"": _CONTENTS, **{role: _LIGHTEST + i * step for i, role in enumerate(reversed(leathers))}}


def _legend(tones: dict[str, float]) -> Figure:
    inks: list[Ink] = []
    x = 0.0
    for role, tone in sorted(tones.items(), key=lambda pair: -pair[1]):
        field = rounded_rectangle(x, 0.0, x + _FIELD.x, _FIELD.y, 0.0)
        word = Text(Role.LABEL, Point(x + _FIELD.x + 2.0, 1.0), _LETTERS, role or "contents")
        inks += [Area(Role.TINT, (field,), tone), Stroke(Role.LABEL, field), word]
        x = room(inks).x1 + 6.0
    return Figure("legend", "", tuple(inks))


def _picture(section: Section, tones: dict[str, float]) -> Figure:
    inks: list[Ink] = [Area(Role.TINT, (strip.path,), tones[strip.leather]) for strip in section.strips]
    inks += [Stroke(Role.LABEL, strip.path) for strip in section.strips]
    box = room(inks)
    words = f"{section.name}, cut at {mm(section.at, 1)} mm"
    inks.append(Text(Role.LABEL, Point(box.x0, box.y1 + 3.0), _HEADING, words))
    inks += _measure(section.strips, box.x1 + _OFF)
    return Figure(section.name, "", tuple(inks))


def _measure(strips: Sequence[Strip], x: float) -> Iterator[Ink]:
    """The height from the lowest to the highest flat strip, as a dimension beside the section."""
    flat = [strip.path.bounds for strip in strips if not any(segment.is_arc for segment in strip.path.segments)]
    if not flat:
        return
    low, high = min(box.y0 for box in flat), max(box.y1 for box in flat)
    for z in (low, high):
        yield Stroke(Role.GUIDE, polyline([Point(x - _ARM, z), Point(x + _ARM, z)]))
    yield Stroke(Role.GUIDE, polyline([Point(x, low), Point(x, high)]))
    yield Text(
        Role.LABEL, Point(x + 3.0, (low + high - _LETTERS) / 2), _LETTERS, f"{mm(high - low)} mm", 0.0, Align.LEFT
    )
