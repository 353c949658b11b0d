"""Gussets: the flat width of a strip leaf by leaf and bend by bend, its length, the room it keeps."""

from __future__ import annotations

import math
from functools import partial

from patternforge.reasons.body import neutral_radius
from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, less, made, measured, number, same
from patternforge.wallet.parts.gusset import gusset_profile
from patternforge.wallet.parts.joins import insets, joins, mates
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import Edge, GussetPart, HoleShape
from patternforge.wallet.strip import StripPlacement

__all__ = ["gussets", "strip_length"]

_CHANNEL = "flats and bend allowance of a U-channel: FAA airframe handbook, vol. 1, ch. 4"


def gussets(book: Book) -> Makes:
    """The sizes of every gusset that are not declared."""
    for part in book.design.parts:
        if isinstance(part, GussetPart):
            own = f"part {part.name}."
            yield f"{own}bend radius", partial(_radius, book, part)
            yield f"{own}bend", partial(_bend, book, part)
            yield f"{own}reach of a bend", partial(_reach, book, part)
            yield f"{own}strip width", partial(_width, book, part)
            if part.pleats:
                yield f"{own}folded height", partial(_folded, book, part)
            else:
                yield f"{own}turn", partial(_turn, book, part)
            for edge in Edge:
                name = f"{own}room at the {edge.value}"
                yield name, partial(_inset, book, name, part, edge)


def _radius(book: Book, part: GussetPart) -> Reason:
    """Nothing lies in its bends: they are as sharp as the leather takes."""
    thickness = book.of(f"leather {part.leather}.thickness")
    name = book.called(f"part {part.name}.bend radius")
    return made(name, How.PRODUCT, (book.of(f"leather {part.leather}.min_radius"), thickness))


def _bend(book: Book, part: GussetPart) -> Reason:
    turn = number(math.pi, "pi") if part.pleats else number(math.pi / 2, "pi / 2")
    thickness = book.of(f"leather {part.leather}.thickness")
    fibre = neutral_radius(book, part.leather, book.of(f"part {part.name}.bend radius"), thickness)
    return made(book.called(f"part {part.name}.bend"), How.PRODUCT, (turn, fibre))


def _reach(book: Book, part: GussetPart) -> Reason:
    parts = (book.of(f"part {part.name}.bend radius"), book.of(f"leather {part.leather}.thickness"))
    return made(book.called(f"part {part.name}.reach of a bend"), How.SUM, parts)


def _folded(book: Book, part: GussetPart) -> Reason:
    factors = (book.of(f"part {part.name}.pleats"), number(2.0), book.of(f"part {part.name}.reach of a bend"))
    return made(book.called(f"part {part.name}.folded height"), How.PRODUCT, factors)


def _turn(book: Book, part: GussetPart) -> Reason:
    """From the stitch line to the outside of the web where nothing is declared: as near as bend and hole allow."""
    sewn = [join.seam for join in joins(book.design, part)]
    holes = [_hole(book, seam.name, seam.stitching.hole.shape) for seam in sewn]
    hole = made("half the larger hole", How.LARGEST, holes)
    parts = (book.of(f"part {part.name}.reach of a bend"), hole, book.of("limits.hole_to_fold"))
    return made(book.called(f"part {part.name}.turn"), How.SUM, parts)


def _hole(book: Book, seam: str, shape: HoleShape) -> Reason:
    size = {HoleShape.ROUND: "diameter", HoleShape.SLIT: "length"}.get(shape)
    if size is None:
        return number(0.0, "no hole")
    return made("half the hole", How.QUOTIENT, (book.of(f"seam {seam}.hole {size}"), number(2.0)))


def _width(book: Book, part: GussetPart) -> Reason:
    width = gusset_profile(book.design, part).width
    flats = [term for at, term in enumerate(width.terms) if at % 2 == 0]
    own = [_leaf(book, part, at, len(flats)) if part.pleats else _flat(book, part, at) for at in range(len(flats))]
    bend = book.of(f"part {part.name}.bend")
    parts = [
        same(term.label, own[at // 2] if at % 2 == 0 else bend, term.value) for at, term in enumerate(width.terms)
    ]
    source = "" if part.pleats else _CHANNEL
    return made(book.called(f"part {part.name}.strip width"), How.SUM, parts, width.value, source=source)


def _leaf(book: Book, part: GussetPart, at: int, count: int) -> Reason:
    whole = book.of(f"part {part.name}.leaf")
    if at in (0, count - 1):
        return whole
    return made("leaf between bends", How.SUM, (whole, less(book.of(f"part {part.name}.reach of a bend"))))


def _flat(book: Book, part: GussetPart, at: int) -> Reason:
    """A flange, or the web between them, without its bends."""
    reach = book.of(f"part {part.name}.reach of a bend")
    if at == 1:
        return made("web", How.SUM, (book.of(f"part {part.name}.depth"), less(reach), less(reach)))
    join = joins(book.design, part)[0 if at == 0 else 1]
    return made("flange", How.SUM, (*_web(book, part, join.seam.name), less(reach)))


def _web(book: Book, part: GussetPart, seam: str) -> tuple[Reason, Reason]:
    """From the edge of a wall to the outside of the web."""
    return book.of(f"seam {seam}.margin"), book.of(f"part {part.name}.turn")


def _inset(book: Book, name: str, part: GussetPart, edge: Edge) -> Reason:
    """How far inside an edge of the panel the room begins: at a web, a stitch line or a fold's relief."""
    design = book.design
    found: list[Reason] = []
    for fold, at in ((part.panel, Edge.LEFT), (part.panel + 1, Edge.RIGHT)):
        if at is edge and 1 <= fold <= len(design.body.folds):
            found.append(book.of(f"fold {fold}.relief"))
    for seam in design.seams:
        if edge in seam.along and seam.covers(part.panel):
            found.append(book.of(f"seam {seam.name}.margin"))
    for mate in (each for each in mates(design, part) if not each.pleats):
        for join in joins(design, mate):
            if edge in join.seam.along:
                found.append(made("to the web", How.SUM, _web(book, mate, join.seam.name)))
    value = insets(design, part)[edge]
    lawful = [reason for reason in found if reason.value <= value + 1e-9] or [number(0.0, "the edge itself")]
    return made(book.called(name), How.LARGEST, lawful, value)


def strip_length(book: Book, part: GussetPart, piece: Piece) -> list[Reason]:
    """What the length of a strip is made of: its seam, and from the last holes on to the ends of its walls."""
    placement = piece.placement
    if not isinstance(placement, StripPlacement):
        raise TypeError("only a strip has the length of a seam")
    line = book.of(f"seam {placement.rows[0].seam}.length")
    short = [book.of(f"part {part.name}.short")] * 2 if part.short else []
    beyond = piece.width - line.value + sum(size.value for size in short)
    return [line, measured("beyond the last holes, to the ends of its walls", beyond), *map(less, short)]
