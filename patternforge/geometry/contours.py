"""Closed contours traced from loose directed pieces of lines and arcs whose ends fall together."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

__all__ = ["JOINT", "Piece", "contours"]

JOINT = 1e-7  # mm; ends nearer than this are one node, pieces shorter than this are none


@dataclass(frozen=True, slots=True)
class Piece:
    """The part from ``low`` to ``high`` mm of a longer curve, known by its number."""

    curve: int
    low: float
    high: float
    segment: Segment


@dataclass(frozen=True, slots=True)
class Link:
    """A piece between two nodes."""

    piece: Piece
    tail: int
    head: int


def contours(pieces: Sequence[Piece], ccw: bool) -> tuple[Path, ...]:
    """The closed paths that the pieces form, each from its piece of the lowest curve, in that order.

    Pieces that lead nowhere or enclose no area are left out. No path passes a point twice: where the inside (left of
    travel if ``ccw``, else right) is pinched to a point, it is parted.

    >>> square = [Point(0, 0), Point(1, 0), Point(1, 1), Point(0, 1)]
    >>> sides = [Segment(p, q) for p, q in zip(square, square[1:] + square[:1])]
    >>> len(contours([Piece(i, 0, s.length, s) for i, s in enumerate(sides)], ccw=True))
    1
    """
    nodes: list[Point] = []
    links = _without_dead_ends(_links(pieces, nodes))
    ways: dict[int, list[Link]] = {}
    for link in links:
        ways.setdefault(link.tail, []).append(link)
    runs: list[list[Link]] = []
    for link in links:
        if link in ways[link.tail]:
            runs.extend(_traced(link, ways, 1.0 if ccw else -1.0))
    paths = [_closed_path(run, nodes) for run in sorted(map(_from_lowest, runs), key=lambda run: _order(run[0]))]
    return tuple(path for path in paths if path is not None)


def _links(pieces: Sequence[Piece], nodes: list[Point]) -> list[Link]:
    """The pieces between numbered nodes, which are written to ``nodes``."""
    cells: dict[tuple[int, int], int] = {}
    links = []
    for piece in pieces:
        tail = _node(piece.segment.start, cells, nodes)
        head = _node(piece.segment.end, cells, nodes)
        if tail != head:
            links.append(Link(piece, tail, head))
    return links


def _node(p: Point, cells: dict[tuple[int, int], int], nodes: list[Point]) -> int:
    """The number of the node at ``p``, a new one if there is none yet; a node fills its cell and those around it."""
    column, row = math.floor(p.x / JOINT), math.floor(p.y / JOINT)
    known = cells.get((column, row))
    if known is not None:
        return known
    nodes.append(p)
    for i in (column - 1, column, column + 1):
        for j in (row - 1, row, row + 1):
            cells.setdefault((i, j), len(nodes) - 1)
    return len(nodes) - 1


def _without_dead_ends(links: list[Link]) -> list[Link]:
    while True:
        tails, heads = {link.tail for link in links}, {link.head for link in links}
        kept = [link for link in links if link.head in tails and link.tail in heads]
        if len(kept) == len(links):
            return kept
        links = kept


def _traced(first: Link, ways: dict[int, list[Link]], side: float) -> list[list[Link]]:
    """The loops met on the way from ``first``, their links taken out of ``ways``; none passes a node twice."""
    ways[first.tail].remove(first)
    run, loops = [first], []
    while run:
        here = run[-1].head
        met = next((i for i, link in enumerate(run) if link.tail == here), None)
        if met is not None:
            loops.append(run[met:])
            del run[met:]
        elif onward := ways[here]:
            run.append(max(onward, key=lambda link: side * _turn(run[-1], link)) if len(onward) > 1 else onward[0])
            onward.remove(run[-1])
        else:
            run.pop()
    return loops


def _from_lowest(run: list[Link]) -> list[Link]:
    place = run.index(min(run, key=_order))
    return run[place:] + run[:place]


def _order(link: Link) -> tuple[int, float]:
    return link.piece.curve, link.piece.low


def _turn(a: Link, b: Link) -> float:
    u, v = a.piece.segment.tangent_at(a.piece.segment.length), b.piece.segment.tangent_at(0.0)
    return math.atan2(u.cross(v), u.dot(v))


def _closed_path(run: list[Link], nodes: list[Point]) -> Path | None:
    """The path of the links, parts of one curve put together again; None if it encloses nothing."""
    merged: list[Link] = []
    for link in run:
        last = merged[-1] if merged else None
        if last and last.piece.curve == link.piece.curve and abs(last.piece.high - link.piece.low) <= JOINT:
            merged[-1] = _put_together(last, link)
        else:
            merged.append(link)
    if len(merged) < 2:
        return None
    path = Path(tuple(Segment(nodes[k.tail], nodes[k.head], k.piece.segment.bulge) for k in merged), closed=True)
    return path if abs(path.area) > JOINT * path.length else None


def _put_together(a: Link, b: Link) -> Link:
    p, q = a.piece, b.piece
    sweep = p.segment.sweep + q.segment.sweep
    segment = Segment(p.segment.start, q.segment.end, math.tan(sweep / 4))
    return Link(Piece(p.curve, p.low, q.high, segment), a.tail, b.head)
