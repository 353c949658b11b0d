"""Runs: the paths a declared seam takes along the body, with the places where its holes are tied down."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from patternforge.errors import DraftError, GeometryError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.geometry.spacing import Anchor, AnchorKind
from patternforge.wallet.blank import InnerRun
from patternforge.wallet.body import Body, layer_extent
from patternforge.wallet.border import CCW
from patternforge.wallet.figure import body_figure, is_shaped, layer_figure
from patternforge.wallet.follow import followed
from patternforge.wallet.pattern import DraftedFold
from patternforge.wallet.quad import Box, Quad
from patternforge.wallet.spec import Across, CornerStyle, Design, Edge, LayerPart, Mode, SeamSpec

__all__ = ["Run", "declared_runs", "own_run"]

_QUARTER = math.tan(math.pi / 8)
_NARROW = 0.85  # of the pitch: a fold zone narrower than this would make its stitch too short


@dataclass(frozen=True, slots=True)
class Run:
    """An unbroken stretch of a seam; ``anchors`` tie its holes at ends, corners and folds (mm along it)."""

    path: Path
    anchors: tuple[Anchor, ...]
    pitch: float
    loop: bool = False


def declared_runs(design: Design, body: Body, seam: SeamSpec) -> tuple[Run, ...]:
    """The runs of a seam along the body's edges, broken at folds or eased across them.

    DraftError, with the seam's name, when its edges do not follow one another, or there is no room for it.
    """
    try:
        return _runs(design, body, seam)
    except (DraftError, GeometryError) as fault:
        raise DraftError(f"seam '{seam.name}' (line {seam.line}): {fault}") from fault


def _runs(design: Design, body: Body, seam: SeamSpec) -> tuple[Run, ...]:
    if seam.stitching.mode is Mode.IRON and seam.across is Across.EASED and _folds_inside(body, seam):
        raise DraftError(
            "under an iron every layer has the same pitch, so it cannot be eased across a fold; "
            "use mode even, or across open"
        )
    edges = _ordered(seam)
    path, corners = _seam_line(design, body, seam, edges)
    loop = len(edges) == 4
    ends = () if loop else (0.0, path.length)
    ties = sorted([*(Anchor(d, AnchorKind.ON) for d in (*ends, *corners)), *_tangents(body, seam, path)], key=_at)
    pieces = _broken(body, seam, path, ties, loop=loop)
    return tuple(run if run.loop or seam.stitching.mode is Mode.EVEN else _exact(run, seam) for run in pieces)


def own_run(seam: InnerRun) -> Run:
    """The run of a seam that a part brings with it; under an iron it is as long as whole pitches allow.

    A closed path is sewn all round from the middle of its first side, with a hole in the middle of every corner arc.
    """
    if seam.path.closed:
        return _ring(seam)
    length, pitch = seam.path.length, seam.stitching.pitch
    if seam.stitching.mode is Mode.IRON and length >= pitch:
        off = (length - _whole(length, pitch)) / 2
        path = seam.path.sub(off, length - off)
    else:
        path = seam.path
    return Run(path, (Anchor(0.0, AnchorKind.ON), Anchor(path.length, AnchorKind.ON)), pitch)


def _ring(seam: InnerRun) -> Run:
    whole = seam.path
    start = whole.segments[0].length / 2
    path = whole.sub(start, whole.length).joined(whole.sub(0.0, start))
    ties, walked = [0.0], 0.0
    for before, after in pairwise(path.segments):
        walked += before.length
        if after.is_arc:
            ties.append(walked + after.length / 2)
        elif not before.is_arc and abs(before.tangent_at(before.length).cross(after.tangent_at(0.0))) > 0.1:
            ties.append(walked)
    ends = [*ties, path.length]
    return Run(path, tuple(Anchor(d, AnchorKind.ON) for d in ends), seam.stitching.pitch, loop=True)


def _at(anchor: Anchor) -> float:
    return anchor.at


def _ordered(seam: SeamSpec) -> tuple[Edge, ...]:
    """The edges in counter-clockwise order of travel."""
    edges = seam.along
    steps = {(CCW.index(b) - CCW.index(a)) % 4 for a, b in pairwise(edges)}
    if steps <= {1}:
        return edges
    if steps <= {3}:
        return edges[::-1]
    raise DraftError("its edges must follow one another round the body")


def _seam_line(design: Design, body: Body, seam: SeamSpec, edges: tuple[Edge, ...]) -> tuple[Path, list[float]]:
    """The path of a seam and where along it the middles of its corners lie; a loop begins and ends at one."""
    (x0, y0, x1, y1), corner = _sewn_box(design, body, seam)
    layer = next((p for p in design.parts if isinstance(p, LayerPart) and p.name == seam.of), None)
    if is_shaped(design, layer):
        figure = _figure(design, body, seam, layer, (x0, y0, x1, y1))
        return followed(figure, seam.corners, seam.margin, edges, _asked_ends(body, seam, edges))
    m = seam.margin
    radius = max(corner - m, 0.0) if seam.corners is CornerStyle.ROUNDED else 0.0
    if 2 * m >= min(x1 - x0, y1 - y0):
        raise DraftError(f"a margin of {m:.2f} mm leaves no room for it")
    box = (x0 + m, y0 + m, x1 - m, y1 - m)
    return _loop(box, radius) if len(edges) == 4 else _rounded(_knots(body, box, seam, edges, corner), radius)


def _figure(design: Design, body: Body, seam: SeamSpec, layer: LayerPart | None, box: Box) -> Quad:
    if layer:
        return layer_figure(design, body, layer, box)
    first, last = seam.over or (0, len(body.panels) - 1)
    return body_figure(design, body, box, first, last)


def _asked_ends(body: Body, seam: SeamSpec, edges: tuple[Edge, ...]) -> tuple[float | None, float | None]:
    """Distances of the free ends from the sides they run out at, where the design or a fold asks for one."""
    first, last = seam.over or (0, len(body.panels) - 1)
    asked = []
    for side in (CCW[CCW.index(edges[0]) - 1], CCW[(CCW.index(edges[-1]) + 1) % 4]):
        at_fold = (side is Edge.LEFT and first > 0) or (side is Edge.RIGHT and last < len(body.folds))
        asked.append(_end(body, seam, side, 0.0) if at_fold else seam.end)
    return asked[0], asked[1]


def _sewn_box(design: Design, body: Body, seam: SeamSpec) -> tuple[tuple[float, float, float, float], float]:
    """The rectangle whose edges a seam follows, and the rounding of its corners."""
    first, last = seam.over or (0, len(body.panels) - 1)
    x0, x1 = body.panels[first].x0, body.panels[last].x1
    if not seam.of:
        return (x0, 0.0, x1, body.height), body.corner
    part = next(p for p in design.parts if p.name == seam.of and isinstance(p, LayerPart))
    left, right = layer_extent(body, part)
    inset = dict(part.inset)
    low, high = inset.get(Edge.BOTTOM, 0.0), body.height - inset.get(Edge.TOP, 0.0)
    return (max(x0, left), low, min(x1, right), high), part.corner or 0.0


def _corner_points(box: tuple[float, float, float, float]) -> dict[Edge, Point]:
    """The corner where each edge begins, going counter-clockwise."""
    x0, y0, x1, y1 = box
    return dict(zip(CCW, (Point(x0, y0), Point(x1, y0), Point(x1, y1), Point(x0, y1)), strict=True))


def _knots(
    body: Body, box: tuple[float, float, float, float], seam: SeamSpec, edges: tuple[Edge, ...], corner: float
) -> list[Point]:
    """Start, corners and end of an open seam line."""
    begins = _corner_points(box)
    at_start, at_end = CCW[CCW.index(edges[0]) - 1], CCW[(CCW.index(edges[-1]) + 1) % 4]
    start = begins[edges[0]] - _heading(edges[0]) * (seam.margin - _end(body, seam, at_start, corner))
    finish = begins[at_end] + _heading(edges[-1]) * (seam.margin - _end(body, seam, at_end, corner))
    return [start, *(begins[edge] for edge in edges[1:]), finish]


def _end(body: Body, seam: SeamSpec, edge: Edge, corner: float) -> float:
    """Last hole to the edge a seam runs out at: as asked, short of a fold, or where the corner's rounding begins."""
    first, last = seam.over or (0, len(body.panels) - 1)
    if edge is Edge.LEFT and first > 0:
        return _stop(seam, body.folds[first - 1].relief)
    if edge is Edge.RIGHT and last < len(body.folds):
        return _stop(seam, body.folds[last].relief)
    return max(seam.margin, corner) if seam.end is None else seam.end


def _folds_inside(body: Body, seam: SeamSpec) -> tuple[DraftedFold, ...]:
    """The folds between panels of the seam."""
    first, last = seam.over or (0, len(body.panels) - 1)
    return body.folds[first:last]


def _heading(edge: Edge) -> Point:
    return {
        Edge.BOTTOM: Point(1.0, 0.0),
        Edge.RIGHT: Point(0.0, 1.0),
        Edge.TOP: Point(-1.0, 0.0),
        Edge.LEFT: Point(0.0, -1.0),
    }[edge]


def _rounded(knots: list[Point], radius: float) -> tuple[Path, list[float]]:
    vertices = [(knots[0].x, knots[0].y, 0.0)]
    corners, length, last = [], 0.0, knots[0]
    for before, at, after in zip(knots, knots[1:], knots[2:], strict=False):
        a, b = at - (at - before).unit() * radius, at + (after - at).unit() * radius
        length += last.distance_to(a)
        corners.append(length + radius * math.pi / 4)
        length, last = length + radius * math.pi / 2, b
        vertices += [(a.x, a.y, _QUARTER), (b.x, b.y, 0.0)] if radius > 0 else [(at.x, at.y, 0.0)]
    return from_vertices([*vertices, (knots[-1].x, knots[-1].y, 0.0)], closed=False), corners


def _loop(box: tuple[float, float, float, float], radius: float) -> tuple[Path, list[float]]:
    whole = rounded_rectangle(*box, radius)
    inwards = dict(zip(CCW, (Point(1, 1), Point(-1, 1), Point(-1, -1), Point(1, -1)), strict=True))
    off = radius * (1 - math.sqrt(0.5))
    middles = [whole.nearest(at + inwards[edge] * off) for edge, at in _corner_points(box).items()]
    start = middles[0] if middles[0] < whole.length - 1e-9 else 0.0
    path = whole.sub(start, whole.length).joined(whole.sub(0.0, start)) if start > 0 else whole.sub(0.0, whole.length)
    return path, [*sorted((d - start) % whole.length for d in middles), whole.length]


def _tangents(body: Body, seam: SeamSpec, path: Path) -> list[Anchor]:
    """Where an eased seam passes the tangents of folds, each midway in a stitch; one stitch spans a narrow fold."""
    if seam.across is Across.OPEN:
        return []
    narrow = _NARROW * seam.stitching.pitch
    ends = [
        x
        for fold in _folds_inside(body, seam)
        for x in ((fold.x0, fold.x1) if fold.x1 - fold.x0 > narrow else ((fold.x0 + fold.x1) / 2,))
    ]
    places = [d for x in ends for d in _crossings_of_x(path, x)]
    return [Anchor(d, AnchorKind.BETWEEN) for d in places]


def _crossings_of_x(path: Path, x: float) -> list[float]:
    """Where the level stretches of a path pass x, mm along it."""
    places, walked = [], 0.0
    for segment in path.segments:
        low, high = sorted((segment.start.x, segment.end.x))
        if not segment.is_arc and low < x < high:
            places.append(walked + segment.length * abs(x - segment.start.x) / (high - low))
        elif segment.is_arc and low < x < high:
            raise DraftError("one of its rounded corners stands in a fold")
        walked += segment.length
    return places


def _broken(body: Body, seam: SeamSpec, path: Path, ties: list[Anchor], *, loop: bool) -> list[Run]:
    """The stretches left of a seam that stops short of every fold; a loop is opened at its first gap."""
    if seam.across is Across.EASED or not _folds_inside(body, seam):
        return [Run(path, tuple(ties), seam.stitching.pitch, loop)]
    gaps = sorted(
        gap for fold in _folds_inside(body, seam) for gap in _gaps(path, fold.x0, fold.x1, _stop(seam, fold.relief))
    )
    if loop and not gaps:
        raise DraftError("it cannot stop short of a fold: no room between the fold and the corners of the seam")
    if loop:
        path, ties, gaps = _opened(path, ties, gaps)
    bounds = [0.0, *(d for gap in gaps for d in gap), path.length][: -2 if loop else None]
    runs = [
        _stretch(path, ties, d0, d1, seam.stitching.pitch)
        for d0, d1 in zip(bounds[::2], bounds[1::2], strict=True)
        if d1 - d0 >= seam.stitching.pitch
    ]
    if not runs:
        raise DraftError("no stretch of it is long enough for a stitch")
    return runs


def _opened(
    path: Path, ties: list[Anchor], gaps: list[tuple[float, float]]
) -> tuple[Path, list[Anchor], list[tuple[float, float]]]:
    """A loop begun at the end of its first gap, which so becomes its last; ties and gaps counted from there."""
    start, length = gaps[0][1], path.length
    begun = path.sub(start, length).joined(path.sub(0.0, start))
    moved = {round((tie.at - start) % length, 9): tie.kind for tie in ties}
    later = [(d0 - start, d1 - start) for d0, d1 in gaps[1:]]
    first = (gaps[0][0] - start + length, length)
    return begun, [Anchor(d, kind) for d, kind in sorted(moved.items())], [*later, first]


def _stretch(path: Path, ties: list[Anchor], d0: float, d1: float, pitch: float) -> Run:
    inner = [Anchor(t.at - d0, t.kind) for t in ties if d0 + 1e-9 < t.at < d1 - 1e-9]
    return Run(path.sub(d0, d1), (Anchor(0.0, AnchorKind.ON), *inner, Anchor(d1 - d0, AnchorKind.ON)), pitch)


def _stop(seam: SeamSpec, relief: float) -> float:
    """Last hole to fold tangent: as asked, else in line with the seams of pockets that stop at the relief."""
    return relief + seam.margin if seam.stop is None else seam.stop


def _gaps(path: Path, x0: float, x1: float, stop: float) -> list[tuple[float, float]]:
    low, high = _crossings_of_x(path, x0 - stop), _crossings_of_x(path, x1 + stop)
    if len(low) != len(high):
        raise DraftError("it begins or ends beside a fold and so cannot stop short of it")
    ends = sorted([*low, *high])
    return list(zip(ends[::2], ends[1::2], strict=True))


def _exact(run: Run, seam: SeamSpec) -> Run:
    """A run whose free ends are moved in to whole pitches from its outermost corners."""
    ons = [a.at for a in run.anchors if a.kind is AnchorKind.ON]
    if len(run.anchors) != len(ons) or len(ons) < 2:
        return run
    pitch = seam.stitching.pitch
    first, last = (ons[1], ons[-2]) if len(ons) > 2 else (ons[0], ons[0])
    start = first - _whole(first - ons[0], pitch)
    end = last + _whole(ons[-1] - last, pitch)
    kept: Sequence[float] = [start, *(d for d in ons[1:-1]), end]
    path = run.path.sub(start, end)
    return Run(path, tuple(Anchor(d - start, AnchorKind.ON) for d in dict.fromkeys(kept)), pitch)


def _whole(length: float, pitch: float) -> float:
    return math.floor(length / pitch + 1e-9) * pitch
