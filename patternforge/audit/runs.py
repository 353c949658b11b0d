"""Entities joined end to end to what is cut in one go: closed contours, and lines that stay open."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import floor

from patternforge.audit.model import Entity, Ring, Shape
from patternforge.audit.shapes import Vertex, drawn
from patternforge.geometry.nearby import Grid
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

__all__ = ["MEET", "Gap", "Run", "runs"]

MEET = 0.003  # mm; ends nearer than this are taken to meet
_REACH = 0.3  # mm; ends of two lines so near to each other were meant to meet
_NARROW = 0.05  # of its length: a line whose ends are nearer than this was meant to close
_LEAST = 1.0  # mm; or nearer than this


@dataclass(frozen=True, slots=True)
class Gap:
    """Two ends that were meant to meet and do not: how far apart, mm, and half-way between them."""

    width: float
    at: Point


@dataclass(frozen=True, slots=True)
class Run:
    """What is cut in one go: the entities along it, its shape with all gaps bridged, and the gaps.

    A run that has gaps is as good as closed when its shape is. ``loose_ends`` are the ends of an open run.
    """

    members: tuple[Entity, ...]
    shape: Shape
    gaps: tuple[Gap, ...] = ()

    @property
    def closed(self) -> bool:
        """Whether it closes, if need be over its gaps."""
        return isinstance(self.shape, Ring) or self.shape.closed

    @property
    def loose_ends(self) -> tuple[Point, ...]:
        """The ends of an open run."""
        return () if isinstance(self.shape, Ring) or self.shape.closed else (self.shape.start, self.shape.end)

    @property
    def start(self) -> Point:
        """A point on it."""
        if isinstance(self.shape, Ring):
            return self.shape.centre + Point(self.shape.radius, 0.0)
        return self.shape.start

    @property
    def first(self) -> int:
        """The place in the file of what is cut first of it."""
        return min(member.number for member in self.members)

    @property
    def last(self) -> int:
        """The place in the file of what is cut last of it."""
        return max(member.number for member in self.members)

    @property
    def name(self) -> str:
        """What a finding calls it."""
        more = len(self.members) - 1
        return f"{self.members[0].name}{f' and {more} more' if more else ''}"


@dataclass(frozen=True, slots=True)
class _Link:
    """An open entity travelled from its start, or from its end if turned."""

    entity: Entity
    path: Path

    @property
    def turned(self) -> _Link:
        return _Link(self.entity, self.path.reversed())


_Chain = list[_Link]


def runs(entities: Iterable[Entity]) -> tuple[Run, ...]:
    """The runs of what is cut, in the order of the file by their first entity; a line drawn twice counts once.

    >>> from patternforge.geometry.path import polyline
    >>> sides = [[Point(0, 0), Point(4, 0)], [Point(4, 0.1), Point(4, 3), Point(0, 0)]]
    >>> lines = [Entity("LINE", i, side[0], polyline(side)) for i, side in enumerate(sides, start=1)]
    >>> [(run.closed, [round(gap.width, 6) for gap in run.gaps]) for run in runs(lines)]
    [(True, [0.1])]
    """
    whole, links = [], list[_Link]()
    for each in entities:
        if isinstance(each.shape, Path) and not each.shape.closed:
            links.append(_Link(each, each.shape))
        elif each.shape is not None:
            whole.append(Run((each,), each.shape))
    chains = _bridged(_chains(_each_once(links)))
    return tuple(sorted([*whole, *filter(None, map(_run, chains))], key=lambda run: run.first))


def _each_once(links: Sequence[_Link]) -> Iterator[_Link]:
    seen = set()
    for link in links:
        middle = link.path.point_at(link.path.length / 2)
        key = (frozenset((_cell(link.path.start), _cell(link.path.end))), _cell(middle))
        if key not in seen:
            seen.add(key)
            yield link


def _cell(p: Point) -> tuple[int, int]:
    return floor(p.x / MEET + 0.5), floor(p.y / MEET + 0.5)


def _chains(links: Iterable[_Link]) -> list[_Chain]:
    """Links put end to end wherever just two of them meet."""
    nodes = _Nodes()
    at: dict[int, list[_Link]] = {}
    known = list(links)
    for link in known:
        at.setdefault(nodes.number(link.path.start), []).append(link)
        at.setdefault(nodes.number(link.path.end), []).append(link.turned)
    used: set[int] = set()
    forks = [leaving for leaving in at.values() if len(leaving) != 2]
    starts = [link for leaving in forks for link in leaving] + known
    chains = []
    for start in starts:
        if start.entity.number not in used:
            chains.append(_followed(start, at, nodes, used))
    return chains


def _followed(start: _Link, at: dict[int, list[_Link]], nodes: _Nodes, used: set[int]) -> _Chain:
    chain = [start]
    used.add(start.entity.number)
    while True:
        leaving = at[nodes.number(chain[-1].path.end)]
        onward = [link for link in leaving if link.entity.number not in used]
        if len(leaving) != 2 or not onward:
            return chain
        chain.append(onward[0])
        used.add(onward[0].entity.number)


class _Nodes:
    """Numbers for points, the same number for points that meet."""

    def __init__(self) -> None:
        self._known: dict[tuple[int, int], list[tuple[int, Point]]] = {}
        self._count = 0

    def number(self, p: Point) -> int:
        """The number of the node at ``p``, a new one if there is none yet."""
        column, row = _cell(p)
        for i in (column - 1, column, column + 1):
            for j in (row - 1, row, row + 1):
                for number, known in self._known.get((i, j), ()):
                    if known.distance_to(p) <= MEET:
                        return number
        self._known.setdefault((column, row), []).append((self._count, p))
        self._count += 1
        return self._count - 1


def _bridged(chains: list[_Chain]) -> list[_Chain]:
    """Chains put together over small gaps between their ends, the smallest gap first."""
    ends = [p for chain in chains for p in (chain[0].path.start, chain[-1].path.end)]
    near = Grid([(p.x, p.y, p.x, p.y) for p in ends], _REACH).pairs(_REACH)
    pairs = sorted((ends[i].distance_to(ends[j]), i, j) for i, j in near if i // 2 != j // 2)
    owner: dict[int, _Chain] = {i: chains[i // 2] for i in range(len(ends))}
    free = set(range(len(ends)))
    for distance, i, j in pairs:
        if distance > _REACH or i not in free or j not in free or owner[i] is owner[j] or distance <= MEET:
            continue
        free -= {i, j}
        merged = _merged(owner[i], ends[i], owner[j], ends[j])
        old = (owner[i], owner[j])
        for end, chain in owner.items():
            if chain is old[0] or chain is old[1]:
                owner[end] = merged
    return list({id(chain): chain for chain in owner.values()}.values())


def _merged(one: _Chain, at_one: Point, other: _Chain, at_other: Point) -> _Chain:
    first = one if one[-1].path.end == at_one else _turned(one)
    second = other if other[0].path.start == at_other else _turned(other)
    return [*first, *second]


def _turned(chain: _Chain) -> _Chain:
    return [link.turned for link in reversed(chain)]


def _run(chain: _Chain) -> Run | None:
    vertices: list[Vertex] = []
    gaps: list[Gap] = []
    for index, link in enumerate(chain):
        own = link.path.vertices
        vertices += own[:-1]
        onward = chain[(index + 1) % len(chain)].path.start
        width = link.path.end.distance_to(onward)
        if index < len(chain) - 1 and width > MEET:
            gaps.append(Gap(width, (link.path.end + onward) / 2))
            vertices.append(own[-1])
    end = chain[-1].path.end
    width = end.distance_to(chain[0].path.start)
    closed = (width <= MEET and len(vertices) > 1) or _was_meant_to_close(chain, width)
    if closed and width > MEET:
        gaps.append(Gap(width, (end + chain[0].path.start) / 2))
    if not closed or width > MEET:
        vertices.append((end.x, end.y, 0.0))
    shape = drawn(vertices, closed).shape
    return Run(tuple(link.entity for link in chain), shape, tuple(gaps)) if shape is not None else None


def _was_meant_to_close(chain: _Chain, width: float) -> bool:
    pieces = sum(len(link.path.segments) for link in chain)
    length = sum(link.path.length for link in chain)
    return pieces > 1 and 4 * width <= length and width <= max(_LEAST, _NARROW * length)
