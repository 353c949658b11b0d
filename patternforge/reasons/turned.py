"""Turned edges: how far beyond its finished line a piece is cut, and what of it gathers in a fold."""

from __future__ import annotations

import math
from functools import partial

from patternforge.reasons.body import edge_thickness, layer_named, neutral_radius, radians
from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, less, made, number, same
from patternforge.wallet.pattern import DraftedFold, Piece
from patternforge.wallet.spec import Edge
from patternforge.wallet.worked import TurnedEdge, TurnIn

__all__ = ["turned"]

_LEVEL = (Edge.BOTTOM, Edge.TOP)


def turned(book: Book) -> Makes:
    """The bend, the allowance and the depth of every turned edge, and what gathers in folds."""
    for piece in book.pattern.pieces:
        if piece.turned:
            for edge in piece.turned.turned:
                yield from _edge(book, piece, edge)
            for number_, excess, notch in piece.turned.gathers:
                fold = book.pattern.folds[number_ - 1]
                name = f"fold {number_}.{piece.part}.gathers"
                yield name, partial(_gathers, book, name, piece, piece.turned, fold, excess)
                notch_name = f"fold {number_}.{piece.part}.notch in what is turned in"
                yield notch_name, partial(_notch, book, notch_name, name, notch)


def _edge(book: Book, piece: Piece, edge: TurnedEdge) -> Makes:
    own = f"part {piece.part}.turned {edge.edge.value}"
    layer = layer_named(book, piece.part)
    yield f"{own}.thickness", lambda: edge_thickness(book, layer, edge.edge)
    yield f"{own}.radius", lambda: _radius(book, own, layer.leather, edge)
    yield f"{own}.bend", lambda: _bend(book, own, layer.leather, edge)
    yield f"{own}.allowance", lambda: _allowance(book, own, edge)
    yield (
        f"{own}.depth",
        lambda: made(
            book.called(f"{own}.depth"), How.SUM, (*_reach(book, own), book.of(f"{own}.overlap")), edge.depth
        ),
    )


def _enclosed(book: Book, own: str, edge: TurnedEdge) -> Reason:
    over = (book.of(f"leather {layer_named(book, name).leather}.thickness") for name in edge.over)
    return made("enclosed", How.SUM, (book.of(f"{own}.core"), *over))


def _radius(book: Book, own: str, role: str, edge: TurnedEdge) -> Reason:
    half = made("half of what it encloses", How.QUOTIENT, (_enclosed(book, own, edge), number(2.0)))
    sharpest = _sharpest(book, role, book.of(f"{own}.thickness"))
    return made(book.called(f"{own}.radius"), How.LARGEST, (half, sharpest), edge.radius)


def _sharpest(book: Book, role: str, thickness: Reason) -> Reason:
    return made("as sharp as it bends", How.PRODUCT, (book.of(f"leather {role}.min_radius"), thickness))


def _bend(book: Book, own: str, role: str, edge: TurnedEdge) -> Reason:
    fibre = neutral_radius(book, role, book.of(f"{own}.radius"), book.of(f"{own}.thickness"))
    return made(book.called(f"{own}.bend"), How.PRODUCT, (number(math.pi, "pi"), fibre), edge.bend)


def _reach(book: Book, own: str) -> tuple[Reason, Reason]:
    """How far the finished edge stands beyond where the bend begins."""
    return book.of(f"{own}.radius"), book.of(f"{own}.thickness")


def _allowance(book: Book, own: str, edge: TurnedEdge) -> Reason:
    gone = (less(part) for part in _reach(book, own))
    parts = (book.of(f"{own}.bend"), book.of(f"{own}.overlap"), *gone)
    return made(book.called(f"{own}.allowance"), How.SUM, parts, edge.allowance)


def _gathers(book: Book, name: str, piece: Piece, turn: TurnIn, fold: DraftedFold, excess: float) -> Reason:
    """How much longer than needed what is turned in is in a fold: it runs round inside the leather it hangs on."""
    needs = [_needs(book, piece, edge, fold) for edge in turn.turned if edge.edge in _LEVEL]
    least = min(needs, key=lambda need: need.value)
    long = book.of(f"fold {fold.number}.{piece.part}")
    over = made("", How.SUM, (long, less(least)))
    return made(name, How.LARGEST, (over, number(0.0, "nothing")), excess)


def _notch(book: Book, name: str, gathers: str, width: float) -> Reason:
    """As wide as what gathers; little of it is taken up without a notch."""
    return same(name, book.of(gathers) if width else number(0.0, "none: so little is taken up without"), width)


def _needs(book: Book, piece: Piece, edge: TurnedEdge, fold: DraftedFold) -> Reason:
    own = f"part {piece.part}.turned {edge.edge.value}"
    role, thickness = layer_named(book, piece.part).leather, book.of(f"{own}.thickness")
    outer = book.of(f"fold {fold.number}.{piece.part}.radius")
    inside = made("", How.SUM, (outer, less(_enclosed(book, own, edge)), less(thickness)))
    radius = made("its inside radius", How.LARGEST, (inside, _sharpest(book, role, thickness)))
    fibre = neutral_radius(book, role, radius, thickness)
    turned_by = radians(book, f"fold {fold.number}.angle", fold.angle)
    return made("needed there", How.PRODUCT, (turned_by, fibre))
