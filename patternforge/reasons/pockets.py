"""Banks and pockets: their clear width, what it must be, and the pieces they are made of."""

from __future__ import annotations

from functools import partial

from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, leaf, less, made, same
from patternforge.wallet.border import CCW, Border, border, opposite
from patternforge.wallet.parts.slots import clear_need
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import BankPart, BankShape, Edge, PocketPart
from patternforge.wallet.stacks import standing_names

__all__ = ["pocket_across", "pocket_along", "pockets", "sides_of_mouth"]

_SIDEWAYS = (Edge.LEFT, Edge.RIGHT)


def pockets(book: Book) -> Makes:
    """The clear width of every bank and pocket, what its contents need of it, and how deep an item goes in."""
    for part in book.design.parts:
        if isinstance(part, BankPart | PocketPart):
            own = f"part {part.name}."
            yield f"{own}clear width", partial(_clear, book, f"{own}clear width", part)
            yield f"{own}clear width needed", partial(_needed, book, f"{own}clear width needed", part)
            if isinstance(part, BankPart):
                yield f"{own}depth", partial(_depth, book, f"{own}depth", part)


def sides_of_mouth(opening: Edge) -> tuple[Edge, Edge]:
    """The edges at either end of a mouth."""
    at = CCW.index(opening)
    return CCW[(at + 1) % 4], CCW[(at + 3) % 4]


def _borders(book: Book, part: BankPart | PocketPart, *edges: Edge) -> list[Border]:
    return [border(book.design, part, edge) for edge in edges]


def _room(book: Book, part: BankPart | PocketPart) -> Reason:
    """The size of the panel along the mouth."""
    panel = book.pattern.panels[part.panel].name
    return book.of("body.height" if part.opening in _SIDEWAYS else f"panel {panel}.width")


def _stitch_line(book: Book, side: Border) -> list[Reason]:
    """From the panel's edge to the stitch line."""
    return [*_inset(book, side), book.of(side.margin_name)]


def _inset(book: Book, side: Border) -> list[Reason]:
    return [book.of(side.inset_name)] if side.inset else []


def _clear(book: Book, name: str, part: BankPart | PocketPart) -> Reason:
    sides = _borders(book, part, *sides_of_mouth(part.opening))
    off = (less(size) for side in sides for size in _stitch_line(book, side))
    between = made("between the outer stitch lines", How.SUM, (_room(book, part), *off))
    if isinstance(part, PocketPart) or part.columns == 1:
        return same(book.called(name), between)
    return made(book.called(name), How.QUOTIENT, (between, book.of(f"part {part.name}.columns")))


def _needed(book: Book, name: str, part: BankPart | PocketPart) -> Reason:
    terms = clear_need(book.design, part)
    return made(book.called(name), How.SUM, [book.term(term) for term in terms])


def _depth(book: Book, name: str, part: BankPart) -> Reason:
    """How far an item goes in: its size less what shows of it."""
    return made(book.called(name), How.SUM, _held(book, part))


def _held(book: Book, part: BankPart) -> tuple[Reason, Reason]:
    item = book.of(standing_names(part.content, part.lying)[1])
    return item, less(book.of(f"part {part.name}.show"))


def _trim(book: Book, part: BankPart | PocketPart, side: Border) -> list[Reason]:
    return [book.of(f"part {part.name}.trim {side.edge.value}")] if side.trim else []


def pocket_across(book: Book, part: BankPart | PocketPart) -> list[Reason]:
    """What the size of its pieces along the mouth is made of."""
    sides = _borders(book, part, *sides_of_mouth(part.opening))
    off = (less(size) for side in sides for size in _inset(book, side))
    on = (size for side in sides for size in _trim(book, part, side))
    return [_room(book, part), *off, *on]


def pocket_along(book: Book, part: BankPart | PocketPart, piece: Piece, value: float) -> list[Reason]:
    """What the size of one of its pieces from the floor to the mouth is made of; ``value`` is that size, mm."""
    floor = border(book.design, part, opposite(part.opening))
    margin = book.of(floor.margin_name)
    if isinstance(part, PocketPart):
        return [margin, *_trim(book, part, floor), book.of(f"part {part.name}.depth")]
    slot = 1 if piece.name == part.name else int(piece.name.removeprefix(f"{part.name} "))
    if part.shape is BankShape.TEE and slot > 1 and part.columns > 1:
        return _wrapped(book, part, slot, value)
    if part.shape is BankShape.TEE and slot > 1:
        return [margin, *_held(book, part)]
    return [margin, *_trim(book, part, floor), *_risen(book, part, slot), *_held(book, part)]


def _risen(book: Book, part: BankPart, slot: int) -> list[Reason]:
    """How far the floor of a slot lies above that of the first."""
    if slot == 1:
        return []
    steps = leaf("", slot - 1, How.COUNTED, unit="")
    return [made("steps", How.PRODUCT, (steps, book.of(f"part {part.name}.step")))]


def _wrapped(book: Book, part: BankPart, slot: int, value: float) -> list[Reason]:
    """A stem that a seam between columns crosses ends whole stitches below the first mouth."""
    risen = _risen(book, part, slot)
    rest = value - sum(size.value for size in risen)
    return [leaf("whole stitches below the first mouth", rest, How.COUNTED), *risen]
