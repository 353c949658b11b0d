"""Seam lines that follow the sides of any four-sided outline at a margin."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.offset import offset_one
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.border import CCW
from patternforge.wallet.quad import Quad, sides_of
from patternforge.wallet.spec import CornerStyle, Edge

__all__ = ["followed"]


def followed(
    figure: Quad, style: CornerStyle, margin: float, edges: tuple[Edge, ...], ends: tuple[float | None, float | None]
) -> tuple[Path, list[float]]:
    """The seam line ``margin`` inside the named sides (counter-clockwise), and where along it its corners lie.

    ``ends``: distance of the first and last hole from the side it runs out at; None where the corner's rounding
    begins. A loop begins and ends in the middle of its first side. DraftError when a side is lost at that margin.
    """
    outline = figure.path if style is CornerStyle.ROUNDED else figure.sharp
    inner = offset_one(outline, -margin).ccw()
    labels = _labels(inner, outline, figure)
    segments, marks = _begun(list(inner.segments), labels, edges[0])
    if len(edges) == 4:
        return _loop(segments, marks)
    stop = max((i for i, mark in enumerate(marks) if mark is edges[-1]), default=-1)
    if any(edge not in marks for edge in (edges[0], edges[-1])):
        raise DraftError(f"no straight or bowed side is left to follow at a margin of {margin:.2f} mm")
    segments, marks = segments[: stop + 1], marks[: stop + 1]
    corners = _corners(segments, marks)
    path = Path(tuple(segments), closed=False)
    return _ended(path, corners, figure, edges, ends)


def _labels(inner: Path, outline: Path, figure: Quad) -> list[Edge | None]:
    """The side each inner segment runs along: that of the outline segment nearest to its middle."""
    sides = sides_of(outline, figure)
    labels = []
    for segment in inner.segments:
        middle = segment.point_at(segment.length / 2)
        distances = [side.distance_to(middle) for side in outline.segments]
        labels.append(sides[distances.index(min(distances))])
    return labels


def _begun(
    segments: list[Segment], labels: list[Edge | None], first: Edge
) -> tuple[list[Segment], list[Edge | None]]:
    """The closed line begun with the first segment along ``first``."""
    at = next((i for i, mark in enumerate(labels) if mark is first and labels[i - 1] is not first), 0)
    return segments[at:] + segments[:at], labels[at:] + labels[:at]


def _corners(segments: Sequence[Segment], marks: Sequence[Edge | None]) -> list[float]:
    """Places where one side gives way to the next: the middle of the arcs between them, or the corner itself."""
    places, walked, left_at = [], 0.0, None
    for i, (before, after) in enumerate(pairwise(marks)):
        walked += segments[i].length
        if before is after:
            continue
        if after is None:
            left_at = walked
        else:
            places.append((walked + (walked if left_at is None else left_at)) / 2)
            left_at = None
    return places


def _loop(segments: list[Segment], marks: list[Edge | None]) -> tuple[Path, list[float]]:
    half = segments[0].length / 2
    first = [segments[0].sub(half, segments[0].length), *segments[1:], segments[0].sub(0.0, half)]
    path = Path(tuple(first), closed=False)
    return path, [0.0, *_corners(first, [*marks, marks[0]]), path.length]


def _ended(
    path: Path,
    corners: list[float],
    figure: Quad,
    edges: tuple[Edge, ...],
    ends: tuple[float | None, float | None],
) -> tuple[Path, list[float]]:
    """The line with its free ends moved to the distances asked."""
    before, after = CCW[CCW.index(edges[0]) - 1], CCW[(CCW.index(edges[-1]) + 1) % 4]
    start = _shortfall(path.start, ends[0], _straight(figure, before))
    stop = _shortfall(path.end, ends[1], _straight(figure, after))
    low, high = max(start, 0.0), path.length - max(stop, 0.0)
    trimmed = path.sub(low, high)
    if start < 0:
        trimmed = Path((_before(trimmed, -start), *trimmed.segments), closed=False)
    if stop < 0:
        trimmed = Path((*trimmed.segments, _after(trimmed, -stop)), closed=False)
    return trimmed, [d - start for d in corners]


def _straight(figure: Quad, edge: Edge) -> Segment:
    return figure.sharp.segments[CCW.index(edge)]


def _shortfall(at: Point, asked: float | None, side: Segment) -> float:
    """How much the line must be cut back to keep its end as far from the side as asked; negative to run on."""
    return 0.0 if asked is None else asked - side.distance_to(at)


def _before(path: Path, by: float) -> Segment:
    return Segment(path.start - path.tangent_at(0.0) * by, path.start)


def _after(path: Path, by: float) -> Segment:
    return Segment(path.end, path.end + path.tangent_at(path.length) * by)
