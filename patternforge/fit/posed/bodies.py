"""The bodies of a row of panels: what lies on the panels as prisms, what crosses the folds cut so that it bends."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.fit.layout import LaidHole, Layout, Ply
from patternforge.fit.posed.crossing import Crossed
from patternforge.fit.posed.ground import bent_grounds, ground
from patternforge.fit.posed.model import BentCell, Body, Corner, Crossing, FlatCell, Mark
from patternforge.fit.posed.piles import Lying
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.regions import Region, region
from patternforge.wallet.pattern import DraftedFold, Pocket
from patternforge.wallet.strip import StripPlacement

__all__ = ["Joined", "row_bodies"]

_SLIVER = 1e-3  # mm2 that cannot be seen
_COLUMN = 15.0  # degrees of a bend that one flat facet stands for


@dataclass(frozen=True, slots=True)
class Joined:
    """A layer in a fold, and the crossing it is in the model."""

    fold: DraftedFold
    layer: Crossed
    crossing: Crossing


def row_bodies(layout: Layout, lying: Sequence[Sequence[Lying]], joined: Sequence[Joined]) -> tuple[Body, ...]:
    """Every piece and every room's contents, from the outside in; what a piece has turned in belongs to it."""
    flat: dict[str, list[FlatCell]] = {}
    bent: dict[str, list[BentCell]] = {}
    for panel, on in enumerate(lying):
        for each in on:
            flat.setdefault(_name(layout, each.ply), []).extend(_flat_cells(layout, panel, each, joined))
    for each_joined in joined:
        bent.setdefault(_name(layout, each_joined.layer.ply), []).extend(_bent_cells(layout, each_joined))
    for name, cells in _within_channels(layout, lying):
        flat.setdefault(name, []).extend(cells)
    marks = {name: tuple(_marks(layout, lying, joined, name)) for name in layout.holes}
    roles = {piece.name: piece.leather for piece in layout.pattern.pieces}
    return tuple(
        Body(name, roles.get(name, ""), tuple(cells), tuple(bent.get(name, ())), marks.get(name, ()))
        for name, cells in flat.items()
        if cells
    )


def _name(layout: Layout, ply: Ply) -> str:
    """The piece that a ply is of, or what it is and the room it lies in."""
    if ply.of or any(piece.name == ply.name for piece in layout.pattern.pieces):
        return ply.of or ply.name
    return f"{ply.name} in {ply.part}"


def _flat_cells(layout: Layout, panel: int, lying: Lying, joined: Sequence[Joined]) -> Iterator[FlatCell]:
    area = _seen(layout, lying.ply, lying.area)
    if area.area > _SLIVER:
        track = _leading(joined, lying.ply, panel)
        yield FlatCell(panel, track, ground(area), lying.level, lying.level + lying.thickness)


def _leading(joined: Sequence[Joined], ply: Ply, panel: int) -> int:
    """A track that leads a ply onto a panel from the one to its left; -1 if none does."""
    here = (each for each in joined if each.fold.number == panel and each.layer.ply is ply)
    return next((each.crossing.tracks[0] for each in here), -1)


def _seen(layout: Layout, ply: Ply, area: Region) -> Region:
    """What is drawn of a ply: items that may slide where they lie pushed home, of a channel only its wall."""
    piece = next((piece for piece in layout.pattern.pieces if piece.name == ply.name), None)
    if piece is not None and isinstance(piece.placement, StripPlacement) and ply.outline is not None:
        return area.without(region(ply.outline).shrunk(layout.thickness(piece)))
    for pocket in layout.pattern.pockets:
        if not ply.of and (pocket.content, pocket.part) == (ply.name, ply.part) and len(pocket.panels) > 1:
            return area.common(_box(pocket))
    return area


def _box(pocket: Pocket) -> Region:
    x0, y0, x1, y1 = pocket.box
    return region(rounded_rectangle(x0, y0, x1, y1, 0.0))


def _bent_cells(layout: Layout, joined: Joined) -> Iterator[BentCell]:
    """Column by column of every band of a layer in a fold; its corners along the fibre and along the fold."""
    fold, layer = joined.fold, joined.layer
    width = fold.x1 - fold.x0
    columns = max(2, math.ceil(abs(fold.angle) / _COLUMN))

    def along(corner: Corner) -> Corner:
        return (corner[0] - fold.x0) * layer.length / width, corner[1]

    for track, band in zip(joined.crossing.tracks, layer.bands, strict=True):
        area = _seen(layout, layer.ply, band.area)
        for cut in bent_grounds(area, (fold.x0, fold.x1), columns, along):
            yield BentCell(track, cut, -band.raised, band.thickness - band.raised)


def _within_channels(layout: Layout, lying: Sequence[Sequence[Lying]]) -> Iterator[tuple[str, list[FlatCell]]]:
    """What lies in the channel of a gusset, which counts as one with it in every stack."""
    pieces = {piece.name: piece for piece in layout.pattern.pieces}
    for pocket in layout.pattern.pockets:
        placement = pieces[pocket.piece].placement
        on = [each for each in lying[pocket.panel] if each.ply.name == pocket.piece and not each.ply.of]
        if isinstance(placement, StripPlacement) and on:
            level = min(each.level for each in on)
            height = pocket.count * layout.pattern.design.load.cards * layout.items[pocket.content].thickness
            if height > 0:
                yield (
                    f"{pocket.content} in {pocket.part}",
                    [FlatCell(pocket.panel, -1, ground(_box(pocket)), level, level + height)],
                )


def _marks(layout: Layout, lying: Sequence[Sequence[Lying]], joined: Sequence[Joined], name: str) -> Iterator[Mark]:
    """The holes of a piece that lies flat, where it lies on a panel."""
    panels = layout.pattern.piece(name).placement.panels
    for panel in panels:
        drafted = layout.pattern.panels[panel]
        on = [each for each in lying[panel] if each.ply.name == name]
        for hole in layout.holes[name]:
            if drafted.x0 <= hole.at.x <= drafted.x1 and (under := _at(on, hole)):
                track = _leading(joined, under.ply, panel)
                yield Mark(panel, track, hole.at, under.level, under.level + under.thickness)


def _at(on: Sequence[Lying], hole: LaidHole) -> Lying | None:
    return next((each for each in on if each.holds(hole.at)), None)
