"""Seams: holes, spacings run by run, and thread."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from itertools import groupby, pairwise
from types import MappingProxyType

from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, leaf, made, measured, number, same
from patternforge.wallet.closed import other_side_name
from patternforge.wallet.pattern import Hole, Piece, Seam, SeamHole
from patternforge.wallet.spec import Edge

__all__ = ["left_of", "seams", "turned_in"]

_SAME = 1e-6
_EXTREMES: Mapping[str, Callable[[Sequence[float]], float]] = MappingProxyType(
    {"shortest spacing": min, "longest spacing": max}
)
_THREAD = "saddle stitch, two needles: both lie along every stitch and pass every hole; common practice, no source"


def seams(book: Book) -> Makes:
    """The sizes of every seam that are not declared."""
    declared = {seam.name for seam in book.design.seams}
    for seam in book.pattern.seams:
        own = f"seam {seam.name}."
        if seam.name not in declared:
            yield f"{own}margin", partial(_margin, book, seam)
            yield f"{own}tails", partial(_followed, book, seam, "tails")
            yield f"{own}pitch", partial(_followed, book, seam, "pitch")
        yield f"{own}stitch holes", partial(_count, book, f"{own}stitch holes", seam)
        yield f"{own}length", partial(_length, book, f"{own}length", seam)
        for size, extreme in _EXTREMES.items() if seam.spacings else ():
            yield f"{own}{size}", partial(_spacing, book, f"{own}{size}", seam, extreme(seam.spacings))
        if not seam.meets:
            yield f"{own}thread", partial(_thread, book, f"{own}thread", seam)
    yield "thread in all", partial(_thread_in_all, book)


def _thread_in_all(book: Book) -> Reason:
    own = [book.of(f"seam {seam.name}.thread") for seam in book.pattern.seams if not seam.meets]
    return made("thread in all", How.SUM, own or (number(0.0, "no seam"),))


def _count(book: Book, name: str, seam: Seam) -> Reason:
    runs = _runs(seam)
    counts = [leaf(f"in run {at}", float(len(run)), How.COUNTED, unit="") for at, run in enumerate(runs, 1)]
    if len(counts) < 2:
        return leaf(book.called(name), float(len(seam.holes)), How.COUNTED, unit="")
    return made(book.called(name), How.SUM, counts, float(len(seam.holes)), unit="")


def _margin(book: Book, seam: Seam) -> Reason:
    """The margin of a seam that a part brings with it, or that meets another."""
    called = book.called(f"seam {seam.name}.margin")
    if seam.meets:
        return same(called, book.of(f"seam {seam.meets}.margin"), seam.margin)
    films = (o.name for part in book.design.parts for o in part.openings if o.film and seam.name == f"{o.name} seam")
    film = next(films, None)
    if film:
        return same(called, book.of(f"opening {film}.film margin"), seam.margin)
    first = book.design.seams[0].name if book.design.seams else ""
    return same(called, book.of(f"seam {first}.margin" if first else "seam.margin"), seam.margin)


def _followed(book: Book, seam: Seam, size: str) -> Reason:
    called, value = book.called(f"seam {seam.name}.{size}"), getattr(seam.stitching, size)
    of = f"seam {seam.meets}.{size}" if seam.meets else f"stitching.{size}"
    return same(called, book.of(of), value)


def _runs(seam: Seam) -> list[list[SeamHole]]:
    return [list(holes) for _, holes in groupby(seam.holes, key=lambda hole: hole.run)]


def _is_closed(seam: Seam) -> bool:
    """Whether the last stitch leads back to the first hole."""
    return bool(seam.holes) and len(seam.spacings) == len(seam.holes)


def _length(book: Book, name: str, seam: Seam) -> Reason:
    """From the first hole to the last of every run, along its line."""
    runs = _runs(seam)
    steps = [sum(b.along - a.along for a, b in pairwise(run)) for run in runs]
    if _is_closed(seam):
        steps = [sum(seam.spacings)]
    parts = [
        measured(f"along run {at}" if len(runs) > 1 else "along its line", step) for at, step in enumerate(steps, 1)
    ]
    return made(book.called(name), How.SUM, parts or (number(0.0, "no hole"),), seam.length)


def _spacing(book: Book, name: str, seam: Seam, value: float) -> Reason:
    """A spacing: a stretch between two places that tie the holes down, shared out evenly."""
    stretches = [list(same_) for _, same_ in groupby(seam.spacings, key=lambda spacing: round(spacing, 6))]
    stretch = next(each for each in stretches if any(abs(spacing - value) < _SAME for spacing in each))
    along = measured("stretch of the seam with that spacing", sum(stretch))
    count = leaf("stitches", float(len(stretch)), How.COUNTED, "")
    return made(book.called(name), How.QUOTIENT, (along, count), value)


def _thread(book: Book, name: str, seam: Seam) -> Reason:
    """Twice all stitches and all that they go through, and what is left over at the ends of every run."""
    through = made("leather sewn through", How.SUM, _stacks(book, seam) or (number(0.0, "nothing"),))
    both = made("", How.SUM, (book.of(f"seam {seam.name}.length"), through))
    twice = made("both threads", How.PRODUCT, (number(2.0), both))
    runs = leaf("runs", float(len({hole.run for hole in seam.holes})), How.COUNTED, "")
    tails = made("tails", How.PRODUCT, (runs, book.of(f"seam {seam.name}.tails")))
    return made(book.called(name), How.SUM, (twice, tails), seam.thread, source=_THREAD)


def _stacks(book: Book, seam: Seam) -> list[Reason]:
    """What lies at the holes that stitches begin at, piece by piece: so many times so thick."""
    ends = {run[-1].index for run in _runs(seam)} if not _is_closed(seam) else set()
    begun = {hole.index for hole in seam.holes} - ends
    found = []
    for piece in book.pattern.pieces:
        names = (seam.name, other_side_name(seam.name))
        here = [hole for hole in piece.holes if hole.seam in names and hole.index in begun]
        found += _through(book, piece, here)
    return found


def _through(book: Book, piece: Piece, holes: Sequence[Hole]) -> list[Reason]:
    t = book.design.leather(piece.leather).t
    whole = Counter(piece.thickness_at(hole.at, t) for hole in holes)
    own = [_times(piece.name, count, left_of(book, piece, left)) for left, count in whole.items()]
    over = (piece.turned.over(hole.at) for hole in holes) if piece.turned else ()
    edges = Counter(edge.edge for edge in over if edge)
    return [*own, *(_times("turned in", count, turned_in(book, piece.part, edge)) for edge, count in edges.items())]


def turned_in(book: Book, part: str, edge: Edge) -> Reason:
    """What is turned in at an edge of a layer, its core included."""
    own = f"part {part}.turned {edge.value}"
    return made(
        f"{part} turned in at the {edge.value}", How.SUM, (book.of(f"{own}.core"), book.of(f"{own}.thickness"))
    )


def left_of(book: Book, piece: Piece, left: float) -> Reason:
    """The leather of a piece as thick as it is, or as it is left by a skive of its part."""
    if left == book.design.leather(piece.leather).t:
        return book.of(f"leather {piece.leather}.thickness")
    part = next(part for part in book.design.parts if part.name == piece.part)
    skives = enumerate(getattr(part, "skives", ()), 1)
    return next(book.of(f"part {part.name}.skive {at}.to") for at, skive in skives if skive.to == left)


def _times(name: str, count: int, part: Reason) -> Reason:
    return made(name, How.PRODUCT, (leaf("holes", float(count), How.COUNTED, ""), part))
