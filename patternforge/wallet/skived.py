"""Skived leather: how thick it is left at edges and folds, and which boxes of a flat piece are pared down."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.geometry.chords import chords
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import Transform
from patternforge.wallet.blank import Blank
from patternforge.wallet.body import Body
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, PatchSkive, SkiveSpec
from patternforge.wallet.spec import Edge
from patternforge.wallet.spots import spot_point
from patternforge.wallet.worked import Skive

__all__ = ["skives_of"]

Line = tuple[Point, Point]


def skives_of(blank: Blank, body: Body, cut: Path, onto_piece: Transform) -> tuple[Skive, ...]:
    """The skived boxes of a piece in its own frame, with the lines where the paring begins.

    ``cut`` is the outline the piece is cut to, laid flat; bands along edges are measured from its bounds, and no box
    reaches beyond them. A patch lies on the pieces of its part that hold its middle.
    """
    return tuple(
        Skive(_moved(box, onto_piece), spec.to, tuple(_drawn(lines, cut, onto_piece)))
        for spec in blank.skives
        for box, lines in _boxes(spec, blank, body, cut)
    )


def _boxes(spec: SkiveSpec, blank: Blank, body: Body, cut: Path) -> Iterator[tuple[Bounds, list[Line]]]:
    bounds = cut.bounds
    match spec:
        case EdgeSkive():
            inner = _inner(bounds, spec)
            yield from ((_band(bounds, inner, edge), [_begin(inner, edge)]) for edge in spec.edges)
        case FoldSkive():
            fold = body.folds[spec.fold]
            ends = (blank.development.flat(fold.x0) - spec.width, blank.development.flat(fold.x1) + spec.width)
            box = _common(Bounds(ends[0], bounds.y0, ends[1], bounds.y1), bounds)
            yield box, [(Point(x, bounds.y0), Point(x, bounds.y1)) for x in ends]
        case PatchSkive():
            at = spot_point(body, spec.spot)
            middle = Point(blank.development.flat(at.x), at.y)
            if cut.contains(middle):
                box = _round(middle, spec.width, spec.height)
                yield _common(box, bounds), _sides(box)


def _inner(bounds: Bounds, spec: EdgeSkive) -> Bounds:
    """What the bands of a skive leave between them."""
    w = {edge: spec.width if edge in spec.edges else 0.0 for edge in Edge}
    return Bounds(
        bounds.x0 + w[Edge.LEFT], bounds.y0 + w[Edge.BOTTOM], bounds.x1 - w[Edge.RIGHT], bounds.y1 - w[Edge.TOP]
    )


def _band(outer: Bounds, inner: Bounds, edge: Edge) -> Bounds:
    return {
        Edge.LEFT: Bounds(outer.x0, outer.y0, min(inner.x0, outer.x1), outer.y1),
        Edge.RIGHT: Bounds(max(inner.x1, outer.x0), outer.y0, outer.x1, outer.y1),
        Edge.BOTTOM: Bounds(outer.x0, outer.y0, outer.x1, min(inner.y0, outer.y1)),
        Edge.TOP: Bounds(outer.x0, max(inner.y1, outer.y0), outer.x1, outer.y1),
    }[edge]


def _begin(inner: Bounds, edge: Edge) -> Line:
    """The side of the inner box where a band begins."""
    low_left, low_right = Point(inner.x0, inner.y0), Point(inner.x1, inner.y0)
    high_left, high_right = Point(inner.x0, inner.y1), Point(inner.x1, inner.y1)
    return {
        Edge.LEFT: (low_left, high_left),
        Edge.RIGHT: (low_right, high_right),
        Edge.BOTTOM: (low_left, low_right),
        Edge.TOP: (high_left, high_right),
    }[edge]


def _round(middle: Point, width: float, height: float) -> Bounds:
    return Bounds(middle.x - width / 2, middle.y - height / 2, middle.x + width / 2, middle.y + height / 2)


def _sides(box: Bounds) -> list[Line]:
    return [_begin(box, edge) for edge in Edge]


def _common(a: Bounds, b: Bounds) -> Bounds:
    return Bounds(max(a.x0, b.x0), max(a.y0, b.y0), min(a.x1, b.x1), min(a.y1, b.y1))


def _moved(box: Bounds, transform: Transform) -> Bounds:
    a, b = transform.point(Point(box.x0, box.y0)), transform.point(Point(box.x1, box.y1))
    return Bounds(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))


def _drawn(lines: list[Line], cut: Path, onto_piece: Transform) -> Iterator[Path]:
    for start, end in lines:
        if start.distance_to(end) > 1e-6:
            for stretch in chords(cut, start, end):
                yield onto_piece.path(polyline([stretch.start, stretch.end]))
