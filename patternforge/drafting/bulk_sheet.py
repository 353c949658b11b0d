"""The bulk map as a drawing: tones by thickness, a scale, the highest spot and the thickest hole of each seam."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Area, Dot, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.drawing.stacked import stacked
from patternforge.fit.bulk import SeamStack
from patternforge.fit.bulk_map import BulkMap
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point, joined_bounds
from patternforge.units import mm

__all__ = ["bulk_sheet"]

_LETTERS, _HEADING = 2.2, 3.5  # mm
_GAP = 10.0
_FIELDS, _FIELD = 6, Point(16.0, 6.0)  # of the scale
_LIGHTEST, _DARKEST = 0.06, 0.8
_ROW = 4.0
_ARM = 3.0  # half the cross at the highest spot


def bulk_sheet(name: str, title: str, maps: Sequence[BulkMap], seams: Sequence[SeamStack]) -> Sheet:
    """The maps one below the other at true size under a common scale, each with its highest spot.

    The thickest hole of each seam is marked on the first map with its number in the table below.
    """
    most = max(found.highest.thickness for found in maps)
    first, *others = (Figure(found.name, "", tuple(_map_inks(found, most))) for found in maps)
    marked = Figure(first.name, "", (*first.inks, *_seam_marks(seams)))
    told = [Figure("seams", "", tuple(_table(seams)))] if seams else []
    return stacked([_heading(title), _scale(most), marked, *others, *told], _GAP, name)


def _heading(title: str) -> Figure:
    words = (
        Text(Role.LABEL, Point(0.0, 0.0), _HEADING, f"{title}: thickness"),
        Text(Role.LABEL, Point(0.0, -5.0), _LETTERS, "True size. Leather and contents as loaded; folds left out."),
    )
    return Figure("heading", "", words)


def _tone(thickness: float, most: float) -> float:
    return _LIGHTEST + (_DARKEST - _LIGHTEST) * thickness / most


def _scale(most: float) -> Figure:
    """Fields from nothing to the thickest, each with the thickness that its tone stands for."""
    inks: list[Ink] = []
    for i in range(_FIELDS):
        thickness = most * (i + 1) / _FIELDS
        x = i * _FIELD.x
        field = rounded_rectangle(x, 0.0, x + _FIELD.x, _FIELD.y, 0.0)
        inks += [Area(Role.TINT, (field,), _tone(thickness, most)), Stroke(Role.LABEL, field)]
        inks.append(Text(Role.LABEL, Point(x + _FIELD.x / 2, -3.5), _LETTERS, mm(thickness, 1), 0.0, Align.CENTRE))
    inks.append(Text(Role.LABEL, Point(_FIELDS * _FIELD.x + 3.0, -3.5), _LETTERS, "mm"))
    return Figure("scale", "", tuple(inks))


def _map_inks(found: BulkMap, most: float) -> Iterator[Ink]:
    for spot in found.spots:
        yield Area(Role.TINT, spot.region.paths, _tone(spot.thickness, most))
    for spot in found.spots:
        yield from (Stroke(Role.LABEL, path) for path in spot.region.paths)
    yield from _highest(found)
    box = joined_bounds([panel.bounds for panel in found.panels])
    yield Text(Role.LABEL, Point(box.x0, box.y1 + 3.0), _HEADING, found.name)


def _highest(found: BulkMap) -> Iterator[Ink]:
    """A cross on the thickest spot, with its thickness beside it on a light ground."""
    at, words = found.highest.at, f"{mm(found.highest.thickness)} mm"
    wide = text_width(words, _LETTERS)
    # In the role of the cross, so that it is drawn over all tones and lines.
    ground = rounded_rectangle(at.x + 1.2, at.y + 1.0, at.x + wide + 3.2, at.y + _LETTERS + 3.0, 0.0)
    yield Area(Role.CHECK, (ground,), 0.0)
    for arm in (Point(_ARM, 0.0), Point(0.0, _ARM)):
        yield Stroke(Role.CHECK, polyline([at - arm, at + arm]))
    yield Text(Role.CHECK, at + Point(2.2, 2.0), _LETTERS, words)


def _seam_marks(seams: Sequence[SeamStack]) -> Iterator[Ink]:
    for number, seam in enumerate(seams, start=1):
        yield Dot(Role.CHECK, seam.at, 2.4)
        yield Text(Role.CHECK, seam.at + Point(1.6, 1.0), _LETTERS, str(number))


def _table(seams: Sequence[SeamStack]) -> Iterator[Text]:
    yield Text(Role.LABEL, Point(0.0, 0.0), _HEADING, "Thickest stack sewn through")
    for number, seam in enumerate(seams, start=1):
        y = -2.0 - number * _ROW
        yield Text(Role.LABEL, Point(6.0, y), _LETTERS, str(number), 0.0, Align.RIGHT)
        yield Text(Role.LABEL, Point(9.0, y), _LETTERS, seam.seam)
        yield Text(Role.LABEL, Point(90.0, y), _LETTERS, f"{mm(seam.thickness)} mm", 0.0, Align.RIGHT)
