"""What changes of a piece, in words."""

from __future__ import annotations

from collections.abc import Iterator
from math import isinf

from patternforge.comparison.distance import TOLERANCE
from patternforge.comparison.pieces import PieceChange
from patternforge.units import mm

__all__ = ["told"]


def told(change: PieceChange) -> list[str]:
    """A line for each thing of a piece that changes: size, what moved, folds, openings, holes, marks, leather."""
    return [*_size(change), *_outline(change), *_folds(change), *_inside(change), *_holes(change), *_besides(change)]


def _size(change: PieceChange) -> Iterator[str]:
    old, new = change.old, change.new
    ways = [(new.width - old.width, "wider", "narrower"), (new.height - old.height, "higher", "lower")]
    words = [f"{mm(abs(by))} mm {more if by > 0 else less}" for by, more, less in ways if abs(by) > TOLERANCE]
    if words:
        yield f"{_by(old.width, old.height)} -> {_by(new.width, new.height)}: {', '.join(words)}"


def _by(width: float, height: float) -> str:
    return f"{mm(width)} x {mm(height)} mm"


def _outline(change: PieceChange) -> Iterator[str]:
    if change.offset.norm > TOLERANCE:
        yield f"laid over each other with the new one {_way(change.offset.x, change.offset.y)}"
    if change.outline > TOLERANCE and change.moves:
        yield "; ".join(str(move) for move in change.moves)
    elif change.outline > TOLERANCE:
        yield f"its edge changes shape, by {mm(change.outline)} mm at most"


def _way(x: float, y: float) -> str:
    ways = [(x, "right", "left"), (y, "up", "down")]
    return " and ".join(f"{mm(abs(by))} mm {to if by > 0 else back}" for by, to, back in ways if abs(by) > TOLERANCE)


def _folds(change: PieceChange) -> Iterator[str]:
    after = dict(change.new.folds)
    for number, length in change.old.folds:
        if number in after and abs(after[number] - length) > TOLERANCE:
            yield f"fold {number}: {mm(length)} -> {mm(after[number])} mm long"


def _inside(change: PieceChange) -> Iterator[str]:
    before, after = len(change.old.openings), len(change.new.openings)
    if before != after:
        yield f"{before} -> {after} openings"
    elif change.openings > TOLERANCE:
        yield f"openings move or change, by {mm(change.openings)} mm at most"


def _holes(change: PieceChange) -> Iterator[str]:
    holes = change.holes
    if holes.before != holes.after:
        yield f"{holes.before} -> {holes.after} stitch holes, {holes.unmoved} of them where they were"
        return
    if holes.moved:
        yield f"{holes.moved} of {holes.after} stitch holes move, the farthest by {mm(holes.farthest)} mm"
    if holes.other_shape:
        yield f"{holes.other_shape} stitch holes are turned or made otherwise"


def _besides(change: PieceChange) -> Iterator[str]:
    for kind, off in change.drawn:
        yield f"{kind}: there is another number of them" if isinf(off) else f"{kind} moves by {mm(off)} mm at most"
    if change.old.leather != change.new.leather:
        yield f"cut from {change.new.leather}, not from {change.old.leather}"
    if change.old.quantity != change.new.quantity:
        yield f"{change.old.quantity} -> {change.new.quantity} of them to cut"
