"""A piece with turned edges: cut larger, its finished line drawn, its holes pierced later or cut twice."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.interior import Interior
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform
from patternforge.leather.turn import Turn
from patternforge.wallet.blank import Blank, TurnedSide
from patternforge.wallet.body import Body
from patternforge.wallet.finishing import TurnedHoles
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import DraftedFold, FoldLayer, Hole
from patternforge.wallet.spec import Edge, HoleShape
from patternforge.wallet.turned import FoldNotch, TurnedCut, turned_cut
from patternforge.wallet.worked import TurnedEdge, TurnIn

__all__ = ["cut_shape", "mates_turned_in", "turn_in", "without_pierced"]

_GATHER = 1.0  # mm of leather a turned edge takes up in a fold without a notch; common practice, no source
_RIM = 2.0  # mm of leather kept round the middle of a hole in what is turned in; common practice, no source
_SHAPES = {TurnedHoles.PIERCED: HoleShape.NONE, TurnedHoles.MARKED: HoleShape.MARK, TurnedHoles.CUT: None}


def cut_shape(blank: Blank, finished: Shape, body: Body, part: str) -> TurnedCut:
    """What a blank is cut to: its finished outline, laid flat, with all that is turned in.

    DraftError, with the piece's name, when its edges cannot be turned in.
    """
    if not blank.turned:
        return TurnedCut(finished, (), ())
    try:
        return turned_cut(finished, blank.turned, _fold_notches(blank, body, part))
    except DraftError as fault:
        raise DraftError(f"piece '{blank.name}': {fault}") from fault


def turn_in(blank: Blank, finished: Shape, cut: TurnedCut, body: Body, part: str, onto: Transform) -> TurnIn | None:
    """How the edges of a piece are turned in, in its own frame; None where none is."""
    if not blank.turned:
        return None
    path, edges = onto.path(finished.path), finished.edges
    if not path.is_ccw:
        path, edges = path.reversed(), edges[::-1]
    folds = _crossed(blank, body)
    gathers = tuple(
        (fold.number, g, g if g >= _GATHER else 0.0) for fold in folds if (g := _gather(blank, fold, part))
    )
    return TurnIn(
        finished=path,
        edges=edges,
        turned=tuple(_turned(side, onto) for side in blank.turned),
        corners=tuple(replace(corner, at=onto.point(corner.at)) for corner in cut.corners),
        lines=tuple(onto.path(line) for line in cut.lines),
        gathers=gathers,
    )


def without_pierced(holes: Sequence[Hole], turned: TurnIn | None) -> tuple[Hole, ...]:
    """The holes of a piece, each told what is made of it before the edge it stands in is turned in."""
    if turned is None:
        return tuple(holes)
    told = ((hole, turned.over(hole.at)) for hole in holes)
    return tuple(replace(hole, shape=_SHAPES[edge.holes]) if edge else hole for hole, edge in told)


def mates_turned_in(blank: Blank, holes: Sequence[Hole], turned: TurnIn | None, cut: Path) -> tuple[Hole, ...]:
    """The holes in what is turned in that come to lie on holes cut in the piece.

    Each is unfolded about its edge by the length of the bend. None is cut where the mate would stand in the bend, at
    a rounded corner, in a notch or within two millimetres of the cut edge: there it is pierced once all is turned in.
    """
    if turned is None:
        return ()
    inside = Interior(cut)
    turns = {side.edge: side.turn for side in blank.turned}
    edges = [(edge, turns[edge.edge]) for edge in turned.turned if edge.holes is TurnedHoles.CUT]
    found = (_mate(hole, edge, turn, turned) for hole in holes for edge, turn in edges if hole.shape is None)
    return tuple(m for m in found if m and inside.holds(m.at) and cut.distance_to(m.at) >= _RIM)


def _mate(hole: Hole, edge: TurnedEdge, turn: Turn, turned: TurnIn) -> Hole | None:
    depth = turned.off(hole.at, edge.drawn)
    if not edge.reach <= depth <= edge.depth or turned.is_in_pleats(hole.at):
        return None
    out = _outward(edge.drawn)
    at = hole.at + out * (depth + turn.beyond(depth))
    direction = -hole.direction if out.x == 0 else 180.0 - hole.direction
    return replace(hole, at=at, direction=direction)


def _outward(edge: Edge) -> Point:
    return {
        Edge.LEFT: Point(-1.0, 0.0),
        Edge.RIGHT: Point(1.0, 0.0),
        Edge.BOTTOM: Point(0.0, -1.0),
        Edge.TOP: Point(0.0, 1.0),
    }[edge]


def _turned(side: TurnedSide, onto: Transform) -> TurnedEdge:
    way = onto.direction(_outward(side.edge))
    drawn = max(Edge, key=lambda edge: _outward(edge).dot(way))
    return TurnedEdge(
        edge=side.edge,
        drawn=drawn,
        over=side.spec.over,
        core=side.spec.core,
        thickness=side.turn.thickness,
        radius=side.turn.radius,
        bend=side.turn.arc,
        overlap=side.spec.overlap,
        holes=side.spec.holes,
    )


def _crossed(blank: Blank, body: Body) -> list[DraftedFold]:
    """The folds that what is turned in along the lower or upper edge goes across."""
    level = any(side.edge in (Edge.BOTTOM, Edge.TOP) for side in blank.turned)
    return [fold for fold in body.folds if level and {fold.number - 1, fold.number} <= set(blank.panels)]


def _fold_notches(blank: Blank, body: Body, part: str) -> list[FoldNotch]:
    notches = []
    for fold in _crossed(blank, body):
        width = _gather(blank, fold, part)
        if width >= _GATHER:
            notches.append(FoldNotch(blank.development.flat((fold.x0 + fold.x1) / 2), width))
    return notches


def _gather(blank: Blank, fold: DraftedFold, part: str) -> float:
    """How much longer than needed what is turned in is in a fold: it runs round inside the leather it hangs on.

    DraftError where a fold turns the other way, so that it would have to stretch.
    """
    if fold.angle < 0:
        raise DraftError(f"an edge turned in inside cannot go round fold {fold.number}, whose outsides meet")
    layer = next(each for each in fold.layers if each.part == part)
    needs = (_turned_in_length(side, fold, layer) for side in blank.turned if side.edge in (Edge.BOTTOM, Edge.TOP))
    return max(layer.flat_length - min(needs), 0.0)


def _turned_in_length(side: TurnedSide, fold: DraftedFold, layer: FoldLayer) -> float:
    t = side.turn.thickness
    enclosed = side.enclosed
    radius = max(layer.radius - enclosed - t, side.leather.min_radius * t)
    return math.radians(abs(fold.angle)) * (radius + side.leather.neutral * t)
