"""A row of panels as a model to be posed: its hinges, the layers that cross them, all that lies on its panels."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from patternforge.fit.close import ClosedWallet
from patternforge.fit.layout import Layout
from patternforge.fit.posed.bodies import Joined, row_bodies
from patternforge.fit.posed.crossing import Crossed, crossed, sharpest
from patternforge.fit.posed.model import Crossing, Hinge, Model, Plate, Track
from patternforge.fit.posed.piles import Pile, pile_on
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import DraftedFold

__all__ = ["row_model"]


def row_model(layout: Layout, closed: ClosedWallet) -> Model:
    """The wallet to be posed, closed in its order, folds that close as one in one go."""
    piles = [pile_on(layout, panel) for panel in range(len(layout.pattern.panels))]
    flanked = zip(layout.pattern.folds, pairwise(piles), strict=True)
    found = [crossed(layout, fold, left, right) for fold, (left, right) in flanked]
    shares = _shares(layout, closed)
    plates = [Plate(layout.pattern.panels[0].name, None)]
    for fold, layers in zip(layout.pattern.folds, found, strict=True):
        hinge = _hinge(fold, layers, _laid_over(closed, piles, fold), shares[fold.number])
        plates.append(Plate(layout.pattern.panels[fold.number].name, hinge))
    crossings, tracks = _numbered(found)
    across = [(fold, layer) for fold, each in zip(layout.pattern.folds, found, strict=True) for layer in each]
    joined = [Joined(fold, layer, crossing) for (fold, layer), crossing in zip(across, crossings, strict=True)]
    bodies = row_bodies(layout, [pile.lying for pile in piles], joined)
    steps = round(1 / min((end - start for start, end in shares.values()), default=1.0))
    return Model(tuple(plates), crossings, tracks, bodies, _heaviest(piles), layout.pattern.design.body.turned, steps)


def _shares(layout: Layout, closed: ClosedWallet) -> dict[int, tuple[float, float]]:
    """When each fold closes, from and to, as shares of the whole way: one after another, those of a spine at once."""
    order = layout.pattern.design.body.closing
    together = {number: spine.folds for spine in closed.order.spines for number in spine.folds}
    last = sorted(order, key=lambda fold: max(order.index(each) for each in together.get(fold, (fold,))))
    groups = list(dict.fromkeys(together.get(fold, (fold,)) for fold in last))
    return {
        fold: (number / len(groups), (number + 1) / len(groups))
        for number, group in enumerate(groups)
        for fold in group
    }


def _hinge(
    fold: DraftedFold,
    layers: Sequence[Crossed],
    closed: tuple[float, float] | None,
    share: tuple[float, float],
) -> Hinge:
    fibre = sharpest(layers, fold.angle).fibre
    return Hinge(
        parent=fold.number - 1,
        at=Point(fold.x0, 0.0),
        way=Point(1.0, 0.0),
        zone=fold.x1 - fold.x0,
        low=fibre[0],
        high=fibre[1],
        angle=fold.angle,
        closed=closed,
        start=share[0],
        end=share[1],
    )


def _laid_over(closed: ClosedWallet, piles: Sequence[Pile], fold: DraftedFold) -> tuple[float, float] | None:
    """Where the right panel's ground comes to lie over the left one's, outer face to outer face; None if ajar."""
    if abs(fold.angle) != 180:
        return None
    between = sum(closed.heights[placed.panel] for placed in closed.order.between[fold.number - 1])
    flanks = [piles[fold.number - 1], piles[fold.number]]
    if fold.angle > 0:
        return 0.0, between + sum(pile.above for pile in flanks)
    return 0.0, -between - sum(pile.below for pile in flanks)


def _numbered(found: Sequence[Sequence[Crossed]]) -> tuple[tuple[Crossing, ...], tuple[Track, ...]]:
    crossings: list[Crossing] = []
    tracks: list[Track] = []
    latest: dict[str, tuple[int, int]] = {}
    for plate, layers in enumerate(found, start=1):
        for layer in layers:
            at, before = latest.get(layer.ply.name, (-1, -1))
            numbers = tuple(range(len(tracks), len(tracks) + len(layer.bands)))
            levels = ((layer.low + band.raised, layer.high + band.raised) for band in layer.bands)
            tracks += (Track(len(crossings), low, high) for low, high in levels)
            latest[layer.ply.name] = (plate, len(crossings))
            crossings.append(Crossing(plate, layer.length, numbers, before if at == plate - 1 else -1))
    return tuple(crossings), tuple(tracks)


def _heaviest(piles: Sequence[Pile]) -> int:
    """The panel that most lies on; it stays where it is while the others close."""
    volumes = [round(pile.volume, 3) for pile in piles]
    return volumes.index(max(volumes))
