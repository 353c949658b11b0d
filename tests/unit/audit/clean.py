"""A sheet with nothing wrong in it, as files of our own writers: two pieces with holes, slits and a window."""

from __future__ import annotations

from collections.abc import Iterable
from io import StringIO
from math import hypot

from ezdxf.document import Drawing
from ezdxf.filemanagement import new, read

from patternforge.audit.checks import checked
from patternforge.audit.flaws import Flaw
from patternforge.audit.reading import cut_file
from patternforge.drawing.model import Dot, Figure, Role, Sheet, Stroke
from patternforge.export.dxf import DxfOptions, DxfVersion, dxf_bytes
from patternforge.export.svg import SvgOptions, svg_bytes
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point

__all__ = ["HEIGHT", "SHEET", "clean_dxf", "clean_svg", "dxf_of", "flaws", "found_at", "opened", "written"]

WIDTH, HEIGHT = 210.0, 90.0
_CUT = (Role.MARK, Role.HOLE, Role.OPENING, Role.OUTLINE)


def _holes(x0: float, x1: float, y: float) -> Iterable[Dot]:
    count = round((x1 - x0) / 4)
    return (Dot(Role.HOLE, Point(x0 + 4.0 * i, y), 1.0) for i in range(count + 1))


_LEFT = Figure(
    "left",
    "outer",
    (
        *_holes(16, 104, 13),
        Stroke(Role.OPENING, rounded_rectangle(40, 35, 80, 60, 3).cw()),
        Stroke(Role.OUTLINE, rounded_rectangle(10, 10, 110, 80, 5)),
    ),
)
_SLITS = tuple(Stroke(Role.HOLE, polyline([Point(140 + 4 * i, 14), Point(141 + 4 * i, 15.5)])) for i in range(10))
_RIGHT = Figure("right", "inner", (*_SLITS, Stroke(Role.OUTLINE, rounded_rectangle(130, 10, 200, 60, 5))))
SHEET = Sheet("clean", WIDTH, HEIGHT, (_LEFT, _RIGHT))


def clean_dxf(version: DxfVersion = DxfVersion.R2010) -> str:
    """The sheet as DXF."""
    return dxf_bytes(SHEET, DxfOptions(version)).decode("utf-8")


def clean_svg() -> str:
    """The sheet as SVG, y running down from 90 mm."""
    return svg_bytes(SHEET, SvgOptions(_CUT)).decode("utf-8")


def opened(version: DxfVersion = DxfVersion.R2010) -> Drawing:
    """The clean DXF file in a library that can add to it."""
    return read(StringIO(clean_dxf(version)))


def written(document: Drawing) -> str:
    """A document as text."""
    stream = StringIO()
    document.write(stream)
    return stream.getvalue()


def dxf_of(version: str, unit: int = 4) -> Drawing:
    """An empty document in mm with a layer CUT."""
    document = new(version, units=unit)
    document.layers.add("CUT")
    return document


def flaws(text: str | bytes, name: str = "file") -> list[Flaw]:
    """All flaws that an audit finds."""
    data = text.encode("utf-8") if isinstance(text, str) else text
    return [flaw for each in checked(cut_file(data, name)) for flaw in each.flaws]


def found_at(found: Iterable[Flaw], kind: str, x: float, y: float) -> list[Flaw]:
    """The flaws of a kind within 0.1 mm of a place."""
    return [each for each in found if each.kind == kind and each.at and hypot(each.at.x - x, each.at.y - y) <= 0.1]
