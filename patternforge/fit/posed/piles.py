"""What lies on a panel, field by field: how high each ply lies over every part of it.

The widest layer of a panel is its ground: what lies inside it is piled up on it, what lies outside hangs below.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.fit.bulk_map import ply_areas, reach
from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.point import Point
from patternforge.geometry.regions import Region, patches, united

__all__ = ["STRAY", "Lying", "Pile", "pile_on"]

STRAY = 0.02  # mm that the edge of an arc may stray in a picture
_SAME = 6  # decimals of a height that tell fields apart
_WIDE = 0.98  # of the widest layer's area that the ground has at least


@dataclass(frozen=True, slots=True)
class Lying:
    """The part of a ply that lies at one level above the outer face of the ground, as thick as it is there; mm."""

    ply: Ply
    level: float
    thickness: float
    area: Region

    def holds(self, point: Point) -> bool:
        """Whether it lies over a point of the assembly."""
        return self.area.contains(point)


@dataclass(frozen=True, slots=True)
class Pile:
    """All that lies on a panel, from the outside in; ``below`` and ``above`` are how far it reaches, mm."""

    lying: tuple[Lying, ...]

    @property
    def below(self) -> float:
        """How far what lies outside the ground stands out, mm."""
        return max((-each.level for each in self.lying), default=0.0)

    @property
    def above(self) -> float:
        """How high the ground and all inside it stand, mm."""
        return max((each.level + each.thickness for each in self.lying), default=0.0)

    @property
    def volume(self) -> float:
        """Thickness over area, mm3."""
        return sum(each.thickness * each.area.area for each in self.lying)


_Sheet = tuple[Ply, float, Region]


def pile_on(layout: Layout, panel: int) -> Pile:
    """All that lies on a panel; every ply rests on what lies between it and the ground at that place."""
    within = reach(layout, panel)
    sheets = [
        (ply, thickness, part)
        for ply in layout.plies
        if panel in ply.panels
        for thickness, part in ((t, area.common(within)) for t, area in ply_areas(ply, STRAY))
        if not part.is_empty
    ]
    ground = _ground(sheets)
    found: dict[tuple[int, float], list[Region]] = {}
    for patch in patches([part for _, _, part in sheets]):
        for number, level in _levels(sheets, sorted(patch.covers), ground):
            found.setdefault((number, round(level, _SAME)), []).append(patch.region)
    return Pile(tuple(_lying(sheets, found)))


def _ground(sheets: Sequence[_Sheet]) -> float:
    """The order of the outermost of the widest leathers."""
    areas: dict[float, float] = {}
    for ply, _, part in sheets:
        if ply.name == ply.of:
            areas[ply.order] = areas.get(ply.order, 0.0) + part.area
    widest = max(areas.values(), default=0.0)
    return min((order for order, area in areas.items() if area >= _WIDE * widest), default=0.0)


def _levels(sheets: Sequence[_Sheet], covers: Sequence[int], ground: float) -> Iterator[tuple[int, float]]:
    level = -sum(sheets[number][1] for number in covers if sheets[number][0].order < ground)
    for number in covers:
        yield number, level
        level += sheets[number][1]


def _lying(sheets: Sequence[_Sheet], found: dict[tuple[int, float], list[Region]]) -> Iterator[Lying]:
    for (number, level), regions in sorted(found.items(), key=lambda each: each[0]):
        ply, thickness, _ = sheets[number]
        yield Lying(ply, level, thickness, united(regions))
