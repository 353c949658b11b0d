"""The flat piece of a gusset: a straight strip with a row of holes for each of its seams, by arc length."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from patternforge.errors import DraftError
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, intersections
from patternforge.wallet.blank import Strip
from patternforge.wallet.flat import Lay, SewnThrough, slant_of
from patternforge.wallet.pattern import EdgeRole, Hole, Piece
from patternforge.wallet.run import Run
from patternforge.wallet.spec import Side
from patternforge.wallet.strip import StripPlacement, StripRow

__all__ = ["Around", "Joined", "strip_piece"]

_FAR = 1e4  # mm; beyond every wallet
_HERE = 1e-6


@dataclass(frozen=True, slots=True)
class Joined:
    """One long edge of a strip: the seam's runs and holes, and the outlines of the wall it is sewn to there."""

    runs: tuple[Run, ...]
    sewn: SewnThrough
    walls: tuple[Path, ...]


@dataclass(frozen=True, slots=True)
class Around:
    """What ends a strip besides its walls: the ends of its panel, x on the assembly, and holes to keep ``clear`` of.

    Those are the holes of seams that sew both walls to each other, where no strip can stand between them.
    """

    ends: tuple[float, float]
    holes: tuple[Point, ...]
    clear: float


def strip_piece(strip: Strip, lay: Lay, around: Around, joined: tuple[Joined, Joined]) -> Piece:
    """The piece of a strip, ``joined`` by its outer edge and its inner one.

    Its ends lie as far beyond the last holes as the walls' edges do, or ``short`` of that, and clear of seams that
    sew the walls to each other. DraftError when a seam is not one unbroken open run, or when the two have different
    numbers of holes.
    """
    _check(joined)
    lines = (joined[0].runs[0].path, joined[1].runs[0].path)
    before, after = _ends(strip, around, lines, joined)
    mirrored = strip.showing is Side.INSIDE
    rows = (
        StripRow(joined[0].sewn.name, lines[0], strip.margins[0], 1.0),
        StripRow(joined[1].sewn.name, lines[1], strip.width - strip.margins[1], -1.0),
    )
    length = before + after
    placement = StripPlacement(rows, after if mirrored else before, -1.0 if mirrored else 1.0, strip.panel)
    corners = [Point(0.0, 0.0), Point(length, 0.0), Point(length, strip.width), Point(0.0, strip.width)]
    return Piece(
        name=strip.name,
        part=lay.part,
        leather=strip.leather,
        showing=strip.showing,
        visible=True,
        level=lay.level,
        outline=polygon(corners),
        edges=(EdgeRole.SEWN, EdgeRole.RAW, EdgeRole.SEWN, EdgeRole.RAW),
        openings=(),
        holes=tuple(hole for side in joined for hole in _holes(side.sewn, placement)),
        fold_lines=tuple(polyline([Point(0.0, y), Point(length, y)]) for fold in strip.folds for y in fold),
        placement=placement,
    )


def _check(joined: tuple[Joined, Joined]) -> None:
    names = [side.sewn.name for side in joined]
    for name, side in zip(names, joined, strict=True):
        if len(side.runs) != 1 or side.runs[0].loop:
            raise DraftError(
                f"seam '{name}' is not one unbroken line with two ends: keep it to panel and edges"
                " without a fold between them"
            )
    counts = [len(side.sewn.holes) for side in joined]
    if counts[0] != counts[1]:
        raise DraftError(
            f"seam '{names[0]}' has {counts[0]} holes and seam '{names[1]}' has {counts[1]}: "
            "a strip joins them hole for hole, so give both the same edges, margins, ends and pitch"
        )


def _holes(sewn: SewnThrough, placement: StripPlacement) -> Iterable[Hole]:
    slant = slant_of(sewn.stitching)
    for hole in sewn.holes:
        yield Hole(
            sewn.name, hole.index, placement.on_row(sewn.name, hole.along), placement.beside(sewn.name, -slant)
        )


def _ends(
    strip: Strip, around: Around, lines: tuple[Path, Path], joined: tuple[Joined, Joined]
) -> tuple[float, float]:
    """From the middle of the strip to either end, mm: to the nearer of its walls' edges, less what it is short."""
    found = []
    for line, side in zip(lines, joined, strict=True):
        ways = ((line.start, line.tangent_at(0.0) * -1.0), (line.end, line.tangent_at(line.length)))
        found.append([line.length / 2 + _tail(strip, around, side.walls, at, way) for at, way in ways])
    before, after = (min(pair) - strip.short for pair in zip(*found, strict=True))
    return before, after


def _tail(strip: Strip, around: Around, walls: Sequence[Path], at: Point, way: Point) -> float:
    """From the last hole straight on to whatever comes first: the wall's edge, the panel's end, a seam across."""
    ray = Segment(at, at + way * _FAR)
    reached = [at.distance_to(p) for wall in walls for edge in wall.segments for p in intersections(ray, edge)]
    reached += [(x - at.x) / way.x for x in around.ends if abs(way.x) > _HERE]
    deep = strip.folds[0][1]
    off = [hole - at for hole in around.holes]
    reached += [each.dot(way) - around.clear for each in off if abs(each.dot(way.perpendicular())) < deep]
    return min((d for d in reached if d > _HERE), default=0.0)
