"""What is seen of a finished wallet: laid open from the inside, and closed from both sides.

Every part is what of it no other part covers, straight from the pieces as they lie on the assembly. Items show in the
open wallet, where they stand out of their pockets; clear sheets cover nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import reduce
from itertools import pairwise

from patternforge.fit.close import ClosedWallet
from patternforge.fit.folds import closed_spans
from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point, joined_bounds
from patternforge.geometry.regions import Region, region
from patternforge.geometry.transform import Transform, flipped_x, flipped_y, identity, rotation, translation
from patternforge.leather.closing import Placed
from patternforge.leather.contents import Item
from patternforge.leather.material import MadeOf
from patternforge.wallet.pattern import DraftedFold

__all__ = ["Seen", "SeenPart", "Shown", "closed_seen", "open_seen", "uncovered"]

_WIDE = 1000.0  # mm beyond all there is
_SLIVER = 0.05  # mm2 of a part that is not worth drawing
_ARCS = 0.02  # mm that the edge of an arc may stray: a fraction of a line's width
_THIN = 0.02  # mm that is nothing seen between two edges

Stitch = tuple[Point, Point]


class Shown(StrEnum):
    """What a part is."""

    LEATHER = "leather"
    CLEAR = "clear"
    ITEM = "item"


@dataclass(frozen=True, slots=True)
class SeenPart:
    """What is seen of one part, as outlines, and its stitches from hole to hole."""

    name: str
    shown: Shown
    paths: tuple[Path, ...]
    stitches: tuple[Stitch, ...] = ()


@dataclass(frozen=True, slots=True)
class Seen:
    """One look at the wallet, from the lowest part to the highest; ``name`` says from where.

    ``folds`` are the tangents of folds where they are told.
    """

    name: str
    parts: tuple[SeenPart, ...]
    folds: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True)
class Sheet:
    """A part where it lies, whole, with all of its stitches."""

    name: str
    shown: Shown
    area: Region
    stitches: tuple[Stitch, ...] = ()


def open_seen(layout: Layout) -> Seen:
    """The wallet laid open and seen from the inside, upright as it is looked at; folds as on the assembly."""
    sheets = [_sheet(layout, ply, identity()) for ply in layout.plies]
    return _upright(layout, "laid open, seen from the inside", uncovered(sheets))


def closed_seen(layout: Layout, closed: ClosedWallet) -> tuple[Seen, Seen]:
    """The wallet closed, from both sides, upright as it is looked at; each look is named after the panel on top.

    What does not close with the first panel's stack is left out.
    """
    spans, stack = closed_spans(layout, closed), closed.order.stack
    sheets = [sheet for placed in stack for sheet in _placed(layout, closed, placed, spans[placed.panel])]
    front, back = _ways(layout, stack)
    names = [f"closed, panel '{layout.pattern.panels[at.panel].name}' up" for at in (stack[-1], stack[0])]
    return (
        _upright(layout, names[0], uncovered([_lifted(sheet, front) for sheet in sheets])),
        _upright(layout, names[1], uncovered([_lifted(sheet, back) for sheet in reversed(sheets)])),
    )


def _ways(layout: Layout, stack: Sequence[Placed]) -> tuple[Transform, Transform]:
    """From the stack to how it is looked at from above, and turned over.

    A row that is turned hangs from its folds: the panel below the fold closed last stands as it does laid open.
    """
    body = layout.pattern.design.body
    if not (body.turned and body.closing):
        return identity(), flipped_x()
    hangs = any(placed.turned for placed in stack if placed.panel == body.closing[-1])
    return (flipped_x().then(flipped_y()), flipped_x()) if hangs else (identity(), flipped_y())


def _lifted(sheet: Sheet, onto: Transform) -> Sheet:
    return replace(sheet, area=sheet.area.moved(onto), stitches=_carried(sheet.stitches, onto))


def uncovered(sheets: Sequence[Sheet]) -> tuple[SeenPart, ...]:
    """What is seen of sheets that lie over one another, the last on top."""
    found: list[SeenPart] = []
    cover: Region | None = None
    for sheet in reversed(sheets):
        free = sheet.area if cover is None else sheet.area.without(cover)
        # Slivers between edges that should fall together are no part of the picture.
        free = free.shrunk(_THIN).shrunk(-_THIN)
        if free.area > _SLIVER:
            found.append(_part(sheet, free))
        if sheet.shown is not Shown.CLEAR:
            cover = sheet.area if cover is None else cover.united(sheet.area)
    return tuple(reversed(found))


def _part(sheet: Sheet, free: Region) -> SeenPart:
    seen = tuple(stitch for stitch in sheet.stitches if free.contains((stitch[0] + stitch[1]) * 0.5))
    return SeenPart(sheet.name, sheet.shown, free.paths, seen)


def _upright(layout: Layout, name: str, parts: Iterable[SeenPart]) -> Seen:
    """A row that is turned runs downwards when it is looked at."""
    onto = rotation(-90.0) if layout.pattern.design.body.turned else identity()
    return Seen(name, tuple(_moved(part, onto) for part in parts))


def _moved(part: SeenPart, onto: Transform) -> SeenPart:
    return replace(part, paths=tuple(onto.path(path) for path in part.paths), stitches=_carried(part.stitches, onto))


def _carried(stitches: Iterable[Stitch], onto: Transform) -> tuple[Stitch, ...]:
    return tuple((onto.point(a), onto.point(b)) for a, b in stitches)


def _sheet(layout: Layout, ply: Ply, onto: Transform, within: Region | None = None) -> Sheet:
    """A ply carried to where it is looked at, cut off outside ``within``."""
    whole = reduce(Region.united, _areas(layout, ply))
    whole = whole if within is None else whole.common(within)
    stitches = [stitch for stitch in _stitches(layout, ply) if within is None or all(map(within.contains, stitch))]
    return Sheet(ply.name, _shown(layout, ply), whole.moved(onto), _carried(stitches, onto))


def _areas(layout: Layout, ply: Ply) -> Iterator[Region]:
    """What a ply covers; an item where it lies pushed home, not where it may slide to."""
    item = layout.items.get(ply.name) if _shown(layout, ply) is Shown.ITEM else None
    if item is None:
        yield from _own(ply)
        return
    held = (pocket.box for pocket in layout.pattern.pockets if (pocket.part, pocket.content) == (ply.part, ply.name))
    loose = (each.box for each in layout.pattern.loose if (each.part, each.content) == (ply.part, ply.name))
    own = [Bounds(*box) for box in (*held, *loose) if Bounds(*box).y0 == ply.bounds.y0] or list(ply.boxes)
    yield from (_box(box, _corner(item, box)) for box in own)


def _own(ply: Ply) -> Iterator[Region]:
    if ply.outline is None:
        yield from (_box(box) for box in ply.boxes)
        return
    area = region(ply.outline, ply.openings, _ARCS)
    yield area.without(_box(ply.hollow)) if ply.hollow else area


def _box(box: Bounds, corner: float = 0.0) -> Region:
    return region(rounded_rectangle(box.x0, box.y0, box.x1, box.y1, corner), (), _ARCS)


def _corner(item: Item, box: Bounds) -> float:
    return min(item.corner_radius, 0.49 * box.width, 0.49 * box.height)


def _shown(layout: Layout, ply: Ply) -> Shown:
    if not ply.of:
        return Shown.LEATHER if ply.name in layout.holes else Shown.ITEM
    made_of = layout.leathers[layout.pattern.piece(ply.of).leather].made_of
    return Shown.CLEAR if made_of is MadeOf.FILM else Shown.LEATHER


def _stitches(layout: Layout, ply: Ply) -> Iterator[Stitch]:
    """From hole to hole of one run; what is turned in shows the holes of its piece too."""
    runs = {(seam.name, hole.index): hole.run for seam in layout.pattern.seams for hole in seam.holes}
    holes = sorted(layout.holes.get(ply.of or ply.name, ()), key=lambda hole: (hole.seam, hole.index))
    for a, b in pairwise(holes):
        if a.seam == b.seam and b.index == a.index + 1 and runs[a.seam, a.index] == runs[b.seam, b.index]:
            yield a.at, b.at


def _placed(layout: Layout, closed: ClosedWallet, placed: Placed, span: tuple[float, float]) -> Iterator[Sheet]:
    """What lies on a panel of the closed stack from the lowest up, each outermost layer with its bends."""
    onto = _onto(layout, placed, span)
    within = _within(layout, placed.panel)
    here = (ply for ply in layout.plies if placed.panel in ply.panels)
    plies = [ply for ply in here if _shown(layout, ply) is not Shown.ITEM]
    for ply in reversed(plies) if placed.turned else plies:
        sheet = _sheet(layout, ply, onto, within)
        for bend in _bends(layout, closed, ply, placed.panel):
            sheet = replace(sheet, area=sheet.area.united(bend.moved(onto)))
        if not sheet.area.is_empty:
            yield sheet


def _onto(layout: Layout, placed: Placed, span: tuple[float, float]) -> Transform:
    """From the assembly to the closed stack."""
    begun = translation(-layout.pattern.panels[placed.panel].x0, 0.0)
    turned = flipped_x() if placed.turned else identity()
    return begun.then(turned).then(translation(span[0], 0.0))


def _within(layout: Layout, panel: int) -> Region:
    """A panel, opened wide at the edges that are edges of the wallet."""
    drafted, last = layout.pattern.panels[panel], len(layout.pattern.panels) - 1
    x0 = drafted.x0 - (_WIDE if panel == 0 else 0.0)
    x1 = drafted.x1 + (_WIDE if panel == last else 0.0)
    return region(rounded_rectangle(x0, -_WIDE, x1, layout.pattern.height + _WIDE, 0.0))


def _bends(layout: Layout, closed: ClosedWallet, ply: Ply, panel: int) -> Iterator[Region]:
    """How far a layer that is outermost in a fold stands out beyond the fold's tangent, on the assembly."""
    for fold in layout.pattern.folds:
        bends = closed.bends[fold.number - 1]
        if abs(fold.angle) == 180 and panel in (fold.number - 1, fold.number) and bends and bends[-1].piece == ply.of:
            outer = max(bends[-1].room, bends[-1].smallest) + ply.thickness
            yield from _beyond(ply, fold, panel, outer)


def _beyond(ply: Ply, fold: DraftedFold, panel: int, reach: float) -> Iterator[Region]:
    zone = region(rounded_rectangle(fold.x0, -_WIDE, fold.x1, _WIDE, 0.0))
    paths = [path for area in _own(ply) for path in area.common(zone).paths]
    if paths:
        box = joined_bounds([path.bounds for path in paths])
        x0, x1 = (fold.x0, fold.x0 + reach) if panel == fold.number - 1 else (fold.x1 - reach, fold.x1)
        yield region(rounded_rectangle(x0, box.y0, x1, box.y1, 0.0))
