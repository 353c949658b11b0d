"""Wallets folded from one piece: faces, folds, slits, the blank, and how it lies closed."""

from __future__ import annotations

import math
from functools import partial

from patternforge.fit.folded import closed_as_loaded
from patternforge.fit.folded_close import Load
from patternforge.fit.folded_faces import highest_stack
from patternforge.reasons.body import neutral_radius
from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, made, measured, number, same
from patternforge.wallet.folded.pattern import DraftedFolded, DraftedHinge, DraftedTab
from patternforge.wallet.folded.spec import FoldedSpec
from patternforge.wallet.spec import Edge

__all__ = ["folded"]

_BEND = "bend allowance: NAVEDTRA 14119, p. 13-43, there with neutral 1/2"
_SAME = 1e-6  # mm
_ENDS = {"width": (Edge.LEFT, Edge.RIGHT), "height": (Edge.BOTTOM, Edge.TOP)}


def folded(book: Book) -> Makes:
    """Every size of a folded wallet that is not declared."""
    drafted, declared = book.pattern.folded, book.design.folded
    if drafted is None or declared is None:
        return
    for face in drafted.faces:
        for size, total in (("width", face.width), ("height", face.height)):
            name = f"face {face.name}.{size}"
            yield name, partial(book.total, name, total)
    for hinge in drafted.hinges:
        yield from _hinge(book, declared, hinge)
    for tab in drafted.tabs:
        yield f"tab {tab.name}.slit", partial(_slit, book, declared, tab)
    for size in _ENDS:
        yield f"open.{size}", partial(_open, book, declared, drafted, size)
        yield f"closed.{size}", partial(_closed, book, declared, drafted, size)
    yield "body.height", lambda: same("body.height", book.of("open.height"))
    yield "body.width", lambda: same("body.width", book.of("open.width"))
    yield "closed.thickness", partial(_thickness, book, drafted)


def _hinge(book: Book, declared: FoldedSpec, hinge: DraftedHinge) -> Makes:
    own = f"fold {hinge.number}.{hinge.face}"
    yield f"{own}.gap", partial(book.total, f"{own}.gap", hinge.gap)
    yield f"{own}.radius", lambda: _radius(book, declared, own, hinge)
    yield own, lambda: _flat(book, declared, own, hinge)


def _radius(book: Book, declared: FoldedSpec, own: str, hinge: DraftedHinge) -> Reason:
    half = made("half the gap", How.QUOTIENT, (book.of(f"{own}.gap"), number(2.0)))
    leather = f"leather {declared.leather}."
    sharpest = (book.of(f"{leather}min_radius"), book.of(f"{leather}thickness"))
    return made(
        f"{own}.radius", How.LARGEST, (half, made("as sharp as it bends", How.PRODUCT, sharpest)), hinge.radius
    )


def _flat(book: Book, declared: FoldedSpec, own: str, hinge: DraftedHinge) -> Reason:
    thickness = book.of(f"leather {declared.leather}.thickness")
    fibre = neutral_radius(book, declared.leather, book.of(f"{own}.radius"), thickness)
    return made(own, How.PRODUCT, (number(math.pi, "pi"), fibre), hinge.length, source=_BEND)


def _slit(book: Book, declared: FoldedSpec, tab: DraftedTab) -> Reason:
    """As long as the tab is wide and the leather thick, where nothing else is declared."""
    parts = (book.of(f"tab {tab.name}.width"), book.of(f"leather {declared.leather}.thickness"))
    a, b = tab.slit
    return made(book.called(f"tab {tab.name}.slit"), How.SUM, parts, a.distance_to(b))


def _open(book: Book, declared: FoldedSpec, drafted: DraftedFolded, size: str) -> Reason:
    """The blank: the base, and on either side each flap in line with it, with the fold it hangs by."""
    value = book.pattern.width if size == "width" else book.pattern.height
    base = declared.base.name
    sides = [part for edge in _ENDS[size] for part in _beyond(book, declared, drafted, base, edge, size)]
    parts = [book.of(f"face {base}.{size}"), *sides]
    return _if_so(f"open.{size}", parts, value, "blank as drawn, all faces, folds and tabs")


def _if_so(name: str, parts: list[Reason], value: float, otherwise: str) -> Reason:
    """The sum of parts where that is the size as drafted; else it is read off the drawing as a whole."""
    fits = abs(sum(part.value for part in parts) - value) < _SAME
    return made(name, How.SUM, parts if fits else [measured(otherwise, value)], value)


def _beyond(
    book: Book, declared: FoldedSpec, drafted: DraftedFolded, face: str, edge: Edge, size: str
) -> list[Reason]:
    """What stands beyond an edge of a face: the flap that hangs there and what is beyond it, or a tab."""
    ways: list[list[Reason]] = [
        [book.of(f"tab {t.name}.length")] for t in declared.tabs if (t.face, t.edge) == (face, edge)
    ]
    for spec in declared.faces:
        if spec.hinge and (spec.hinge.on, spec.hinge.edge) == (face, edge):
            number_ = next(hinge.number for hinge in drafted.hinges if hinge.face == spec.name)
            further = _beyond(book, declared, drafted, spec.name, edge, size)
            ways.append([book.of(f"fold {number_}.{spec.name}"), book.of(f"face {spec.name}.{size}"), *further])
    return max(ways, key=lambda way: sum(part.value for part in way), default=[])


def _closed(book: Book, declared: FoldedSpec, drafted: DraftedFolded, size: str) -> Reason:
    """The base, and the outside of every bend at its edges."""
    value = drafted.closed.width if size == "width" else drafted.closed.height
    base = declared.base.name
    bends = [part for edge in _ENDS[size] for part in _bends(book, declared, drafted, base, edge)]
    parts = [book.of(f"face {base}.{size}"), *bends]
    return _if_so(f"closed.{size}", parts, value, "faces where they lie closed, and the outside of every bend")


def _bends(book: Book, declared: FoldedSpec, drafted: DraftedFolded, face: str, edge: Edge) -> list[Reason]:
    thickness = book.of(f"leather {declared.leather}.thickness")
    hung = [each.name for each in declared.faces if each.hinge and (each.hinge.on, each.hinge.edge) == (face, edge)]
    found = [
        made(f"round fold {hinge.number}", How.SUM, (book.of(f"fold {hinge.number}.{hinge.face}.radius"), thickness))
        for hinge in drafted.hinges
        if hinge.face in hung
    ]
    return [made(f"bends at the {edge.value}", How.LARGEST, found)] if found else []


def _thickness(book: Book, drafted: DraftedFolded) -> Reason:
    """What lies over one another where the closed wallet is highest, as loaded."""
    leathers = {leather.role: leather for leather in book.design.leathers}
    wallet = closed_as_loaded(book.pattern, drafted, leathers)
    leather = book.of(f"leather {book.pattern.pieces[0].leather}.thickness")
    parts = [_load(book, ply) if isinstance(ply, Load) else same(ply, leather) for ply, _ in highest_stack(wallet)]
    return made("closed.thickness", How.SUM, parts)


def _load(book: Book, load: Load) -> Reason:
    room = load.room
    factors = (
        book.of(f"room {room.name}.count"),
        book.of("load.cards"),
        book.of(f"content {room.content}.thickness"),
    )
    return made(room.name, How.PRODUCT, factors)
