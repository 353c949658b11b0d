"""Pieces: width, height, leather, holes, and how fine they are cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from functools import cache, partial

from patternforge.fit.fineness import Fineness, fineness
from patternforge.leather.material import Leather
from patternforge.reasons.body import layer_named
from patternforge.reasons.book import Book, Makes
from patternforge.reasons.gussets import strip_length
from patternforge.reasons.pockets import pocket_across, pocket_along
from patternforge.reasons.reason import How, Reason, leaf, less, made, measured, number, same
from patternforge.units import MM2_PER
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import BankPart, Edge, GussetPart, LayerPart, Opening, Part, PocketPart

__all__ = ["pieces"]

_SIDEWAYS = (Edge.LEFT, Edge.RIGHT)
_LEVEL = (Edge.BOTTOM, Edge.TOP)
_SAME = 1e-7  # mm
_FINE = {"radius": "finest radius", "gap": "finest gap", "slot": "finest slot", "hole_gap": "beside a stitch hole"}


def pieces(book: Book) -> Makes:
    """Every size of every piece."""
    for piece in book.pattern.pieces:
        own = f"piece {piece.name}."
        for size in ("width", "height"):
            yield f"{own}{size}", partial(_size, book, f"{own}{size}", piece, size)
        yield f"{own}thickness", partial(_thickness, book, f"{own}thickness", piece)
        yield f"{own}quantity", partial(_quantity, book, f"{own}quantity", piece)
        yield f"{own}area", partial(_area, book, f"{own}area", piece)
        yield f"{own}holes", partial(_holes, book, f"{own}holes", piece)
        yield from _finest(book, own, piece)
    for leather in book.design.leathers:
        own = f"leather {leather.role}."
        cut = [piece for piece in book.pattern.pieces if piece.leather == leather.role]
        if cut:
            yield f"{own}area", partial(_leather_area, book, f"{own}area", cut)
            if leather.price is not None:
                yield f"{own}price of its pieces", partial(_cost, book, leather)


def _finest(book: Book, own: str, piece: Piece) -> Makes:
    finest = cache(partial(fineness, book.pattern, piece))  # slow, and all four at once
    for size, called in _FINE.items():
        yield f"{own}{called}", partial(_fine, book, f"{own}{called}", finest, size)


def _fine(book: Book, name: str, finest: Callable[[], Fineness], size: str) -> Reason:
    value: float | None = getattr(finest(), size)
    return measured(book.called(name), value or 0.0, words="" if value else "the piece has none")


def _quantity(book: Book, name: str, piece: Piece) -> Reason:
    return leaf(book.called(name), float(piece.quantity), How.COUNTED, unit="")


def _thickness(book: Book, name: str, piece: Piece) -> Reason:
    return same(book.called(name), book.of(f"leather {piece.leather}.thickness"))


def _size(book: Book, name: str, piece: Piece, size: str) -> Reason:
    """Width or height; what its shape takes off or adds to the sum of its parts is read off its outline."""
    value: float = getattr(piece, size)
    across = (size == "width") is not book.design.body.turned
    parts = _extent(book, piece, size, across, value)
    rest = value - sum(part.value for part in parts)
    shaped = [measured("as its outline is shaped", rest)] if abs(rest) > _SAME else []
    return made(book.called(name), How.SUM, (*parts, *shaped), value)


def _extent(book: Book, piece: Piece, size: str, across: bool, value: float) -> list[Reason]:
    """What a size of a piece is made of; ``across`` the folds or along them, for a strip along its seam or not."""
    if book.pattern.folded:
        return [measured("blank as drawn, all faces and folds", value)]
    opening = _film_opening(book, piece)
    if opening:
        return _film(book, opening, "width" if across else "height")
    part = next(part for part in book.design.parts if part.name == piece.part)
    if isinstance(part, GussetPart):
        return strip_length(book, part, piece) if size == "width" else [book.of(f"part {part.name}.strip width")]
    return _of_part(book, part, piece, across, value)


def _of_part(book: Book, part: Part, piece: Piece, across: bool, value: float) -> list[Reason]:
    if isinstance(part, LayerPart):
        return [*(_across(book, part) if across else _along(book, part)), *_allowances(book, piece, across)]
    if isinstance(part, BankPart | PocketPart):
        along_mouth = (part.opening in _LEVEL) is across
        return pocket_across(book, part) if along_mouth else pocket_along(book, part, piece, value)
    return []


def _film_opening(book: Book, piece: Piece) -> Opening | None:
    openings = (opening for part in book.design.parts for opening in part.openings if opening.film)
    return next((each for each in openings if piece.lines and piece.name == f"{each.name} film"), None)


def _film(book: Book, opening: Opening, size: str) -> list[Reason]:
    overlap = book.of(f"opening {opening.name}.film overlap")
    return [book.of(f"opening {opening.name}.{size}"), overlap, overlap]


def _across(book: Book, part: LayerPart) -> list[Reason]:
    """A layer across the folds: its panels, its own length in each fold between them, less what it stops short."""
    pattern = book.pattern
    panels = [book.of(f"panel {pattern.panels[at].name}.width") for at in part.panels]
    folds = [book.of(f"fold {number}.{part.name}") for number in range(part.first + 1, part.last + 1)]
    short = [part.first] if part.first > 0 else []
    short += [part.last + 1] if part.last < len(pattern.panels) - 1 else []
    reliefs = [less(book.of(f"fold {number}.relief")) for number in short]
    return [*panels, *folds, *reliefs, *_off(book, part, _SIDEWAYS)]


def _along(book: Book, part: LayerPart) -> list[Reason]:
    return [book.of("body.height"), *_off(book, part, _LEVEL)]


def _off(book: Book, part: LayerPart, edges: tuple[Edge, Edge]) -> list[Reason]:
    """What insets and a drop take off a layer at two edges, and what is left on to be trimmed."""
    found = [less(size) for edge in edges for size in _insets(book, part, edge)]
    root = _outline_of(book, part)
    if root.drop > 0 and root.opening in edges:
        found.append(less(book.of(f"part {root.name}.drop")))
    trims = dict(part.trim)
    return found + [book.of(f"part {part.name}.trim {edge.value}") for edge in edges if trims.get(edge)]


def _outline_of(book: Book, part: LayerPart) -> LayerPart:
    """The layer whose outline it is: its own, or that of the layer it copies."""
    return _outline_of(book, layer_named(book, part.follows)) if part.follows else part


def _insets(book: Book, part: LayerPart, edge: Edge) -> list[Reason]:
    if part.follows:
        return [*_insets(book, layer_named(book, part.follows), edge), book.of(f"part {part.name}.inside")]
    return [book.of(f"part {part.name}.inset {edge.value}")] if dict(part.inset).get(edge) else []


def _allowances(book: Book, piece: Piece, across: bool) -> list[Reason]:
    edges = piece.turned.turned if piece.turned else ()
    wanted = _SIDEWAYS if across else _LEVEL
    return [book.of(f"part {piece.part}.turned {each.edge.value}.allowance") for each in edges if each.edge in wanted]


def _area(book: Book, name: str, piece: Piece) -> Reason:
    """The leather inside its outline, less its openings."""
    outline = measured("inside its outline", abs(piece.outline.area), "mm2")
    gone = [measured("an opening", abs(opening.area), "mm2") for opening in piece.openings]
    return made(book.called(name), How.SUM, (outline, *map(less, gone)), piece.area, "mm2")


def _holes(book: Book, name: str, piece: Piece) -> Reason:
    seams = Counter(hole.seam for hole in piece.holes)
    counts = [leaf(seam, float(count), How.COUNTED, "") for seam, count in seams.items()]
    return made(book.called(name), How.SUM, counts or (number(0.0, "no seam"),), float(len(piece.holes)), "")


def _cost(book: Book, leather: Leather) -> Reason:
    """What the leather of all pieces costs, without waste."""
    own = f"leather {leather.role}."
    unit = number(MM2_PER[leather.price_area], f"mm2 in a {leather.price_area}")
    areas = made(f"area in {leather.price_area}", How.QUOTIENT, (book.of(f"{own}area"), unit), unit="")
    return made(book.called(f"{own}price of its pieces"), How.PRODUCT, (book.of(f"{own}price"), areas), unit="")


def _leather_area(book: Book, name: str, cut: list[Piece]) -> Reason:
    parts = [
        book.of(f"piece {piece.name}.area")
        if piece.quantity == 1
        else made(
            piece.name,
            How.PRODUCT,
            (book.of(f"piece {piece.name}.quantity"), book.of(f"piece {piece.name}.area")),
            unit="mm2",
        )
        for piece in cut
    ]
    return made(book.called(name), How.SUM, parts, unit="mm2")
