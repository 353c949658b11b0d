"""The bulk map: how thick the wallet is over every point of its panels, laid open and closed.

Pieces and contents are laid over one another exactly; what lies in the folds goes round them and is not on the map.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import reduce

from patternforge.fit.close import ClosedWallet
from patternforge.fit.folds import closed_spans
from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.regions import Region, patches, region
from patternforge.geometry.transform import Transform, flipped_x, translation
from patternforge.leather.closing import Placed

__all__ = ["BulkMap", "BulkSpot", "closed_map", "open_map", "ply_areas", "reach"]

_ARCS = 1e-4  # mm that the edge of an arc may stray


@dataclass(frozen=True, slots=True)
class BulkSpot:
    """A connected part of the map under one stack: its thickness, mm, what lies there, a point in it."""

    thickness: float
    names: tuple[str, ...]
    region: Region
    at: Point


@dataclass(frozen=True, slots=True)
class BulkMap:
    """The spots of the wallet ``laid open`` or ``closed``, with the outline of each panel as it lies there."""

    name: str
    spots: tuple[BulkSpot, ...]
    panels: tuple[Path, ...]

    @property
    def highest(self) -> BulkSpot:
        """The thickest spot; of several the largest."""
        return max(self.spots, key=lambda spot: (round(spot.thickness, 6), spot.region.area))

    @property
    def volume(self) -> float:
        """Thickness over area, mm3."""
        return sum(spot.thickness * spot.region.area for spot in self.spots)


@dataclass(frozen=True, slots=True)
class _Sheet:
    """The part of one ply that lies on one panel."""

    name: str
    thickness: float
    region: Region


def open_map(layout: Layout) -> BulkMap:
    """The wallet laid open, seen from the inside, on the assembly."""
    numbers = range(len(layout.pattern.panels))
    sheets = [sheet for panel in numbers for sheet in _sheets(layout, panel)]
    return BulkMap("laid open", _spots(sheets), tuple(_panel(layout, panel) for panel in numbers))


def closed_map(layout: Layout, closed: ClosedWallet) -> BulkMap:
    """The wallet closed, its first panel where it lies on the assembly and the others over it."""
    spans = closed_spans(layout, closed)
    sheets: list[_Sheet] = []
    panels: list[Path] = []
    for placed in closed.order.stack:
        onto = _onto(layout, spans[placed.panel], placed)
        panels.append(onto.path(_panel(layout, placed.panel)))
        sheets += (_moved(sheet, onto) for sheet in _sheets(layout, placed.panel))
    return BulkMap("closed", _spots(sheets), tuple(panels))


def _onto(layout: Layout, span: tuple[float, float], placed: Placed) -> Transform:
    """From the assembly to the closed stack."""
    x0 = layout.pattern.panels[placed.panel].x0
    start = span[0]
    return flipped_x(x0).then(translation(start - x0, 0.0)) if placed.turned else translation(start - x0, 0.0)


def _moved(sheet: _Sheet, onto: Transform) -> _Sheet:
    return _Sheet(sheet.name, sheet.thickness, sheet.region.moved(onto))


def _panel(layout: Layout, panel: int) -> Path:
    drafted = layout.pattern.panels[panel]
    return rounded_rectangle(drafted.x0, 0.0, drafted.x1, layout.pattern.height, 0.0)


def _sheets(layout: Layout, panel: int) -> Iterator[_Sheet]:
    """What lies on a panel, ply by ply, cut off at its folds; what reaches beyond an outer edge is kept."""
    beyond = reach(layout, panel)
    for ply in layout.plies:
        if panel in ply.panels:
            parts = ((thickness, part.common(beyond)) for thickness, part in ply_areas(ply))
            yield from (_Sheet(ply.name, thickness, part) for thickness, part in parts if not part.is_empty)


def reach(layout: Layout, panel: int) -> Region:
    """A panel, opened wide at the edges that are edges of the wallet."""
    drafted, last, wide = layout.pattern.panels[panel], len(layout.pattern.panels) - 1, 1000.0
    x0 = drafted.x0 - (wide if panel == 0 else 0.0)
    x1 = drafted.x1 + (wide if panel == last else 0.0)
    return region(rounded_rectangle(x0, -wide, x1, layout.pattern.height + wide, 0.0))


def ply_areas(ply: Ply, stray: float = _ARCS) -> Iterator[tuple[float, Region]]:
    """What a ply covers, parted by its thickness there, mm: the thinnest of the boxes it is skived in counts.

    The edges of arcs may ``stray`` so far, mm.
    """
    rest = _area(ply, stray)
    if ply.hollow:
        rest = rest.without(_box(ply.hollow))
    for box, left in sorted(ply.thinned, key=lambda each: each[1]):
        if left < ply.thickness:
            yield left, rest.common(_box(box))
            rest = rest.without(_box(box))
    yield ply.thickness, rest


def _box(box: Bounds) -> Region:
    return region(rounded_rectangle(box.x0, box.y0, box.x1, box.y1, 0.0))


def _area(ply: Ply, stray: float) -> Region:
    if ply.outline is None:
        return reduce(Region.united, (_box(box) for box in ply.boxes))
    return region(ply.outline, ply.openings, stray)


def _spots(sheets: Sequence[_Sheet]) -> tuple[BulkSpot, ...]:
    found = []
    for patch in patches([sheet.region for sheet in sheets]):
        over = [sheets[i] for i in sorted(patch.covers)]
        thickness = sum(sheet.thickness for sheet in over)
        found.append(BulkSpot(thickness, tuple(sheet.name for sheet in over), patch.region, patch.at))
    return tuple(found)
