"""The bulk map against a raster of 0.1 mm: every piece and item filled line by line, none of them cut."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import numpy.typing as npt
from hypothesis import assume, given, settings

from patternforge.fit.bulk_map import open_map
from patternforge.fit.layout import Layout, layout
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.strip import StripPlacement
from tests.laws.designs import drafts

STEP = 0.1  # mm between the points of the raster
OFF = 0.0317, 0.0419  # mm by which it misses round sizes
ALONG = 0.4  # mm between the corners that an outline is given, so that it follows a stretched fold

Raster = npt.NDArray[np.float64]
Rings = list[npt.NDArray[np.float64]]


def filled(raster: Raster, rings: Rings, thickness: float) -> None:
    """Adds a thickness to the points inside an odd number of rings."""
    starts = np.vstack(rings)
    ends = np.vstack([np.roll(ring, -1, axis=0) for ring in rings])
    for row in range(raster.shape[0]):
        y = OFF[1] + row * STEP
        crosses = (starts[:, 1] > y) != (ends[:, 1] > y)
        a, b = starts[crosses], ends[crosses]
        xs = np.sort(a[:, 0] + (y - a[:, 1]) * (b[:, 0] - a[:, 0]) / (b[:, 1] - a[:, 1]))
        places = np.clip(np.ceil((xs - OFF[0]) / STEP), 0, raster.shape[1]).astype(int)
        for low, high in zip(places[::2], places[1::2], strict=True):
            raster[row, low:high] += thickness


def dense(path: Path) -> Iterable[tuple[float, float]]:
    points = flattened(path, 1e-4)
    for a, b in zip(points, (*points[1:], points[0]), strict=True):
        count = max(int(a.distance_to(b) / ALONG), 1)
        yield from ((a.x + (b.x - a.x) * i / count, a.y + (b.y - a.y) * i / count) for i in range(count))


def laid(piece: Piece, path: Path) -> npt.NDArray[np.float64]:
    return np.array([(p.x, p.y) for p in piece.placement.on_assembly([Point(x, y) for x, y in dense(path)])])


def reckoned(found: Layout, panels: Raster) -> Raster:
    """What pieces and items add up to over the panels."""
    total = np.zeros_like(panels)
    for piece in found.pattern.pieces:
        filled(total, [laid(piece, path) for path in (piece.made, *piece.openings)], found.thickness(piece))
    for ply in (each for each in found.plies if each.outline is None):
        b = ply.bounds
        filled(total, [np.array([(b.x0, b.y0), (b.x1, b.y0), (b.x1, b.y1), (b.x0, b.y1)])], ply.thickness)
    return total


def is_plain(pattern: Pattern) -> bool:
    """Whether nothing is skived, turned or stands on a strip, so that a piece has one thickness."""
    strips = any(isinstance(piece.placement, StripPlacement) for piece in pattern.pieces)
    return not strips and not any(piece.skives or piece.turned for piece in pattern.pieces)


@settings(max_examples=2)
@given(drafts())
def test_the_map_is_the_raster_everywhere_but_at_edges(pattern: Pattern) -> None:
    assume(is_plain(pattern))
    found = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    shape = int(pattern.height / STEP), int(pattern.panels[-1].x1 / STEP)
    panels = np.zeros(shape)
    for panel in pattern.panels:
        low, high = (int(np.ceil((x - OFF[0]) / STEP)) for x in (panel.x0, panel.x1))
        panels[:, low:high] = 1.0
    mapped = np.zeros(shape)
    for spot in open_map(found).spots:
        rings = [np.array([(x, y) for x, y, _ in path.vertices]) for path in spot.region.paths]
        filled(mapped, rings, spot.thickness)
    off = np.abs(mapped - reckoned(found, panels))[panels > 0] > 1e-6
    assert (mapped > 0).sum() > 100_000
    # Only points within rounding of an edge may fall on either side of it.
    assert off.mean() < 2e-5
