"""The finished wallet: its size laid open and closed, and how thick it is closed."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import accumulate

from patternforge.fit.close import closed_wallet, highest_stacks
from patternforge.fit.layout import Ply, layout
from patternforge.reasons.body import layer_named
from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, less, made, measured, number, same
from patternforge.reasons.seams import left_of, turned_in
from patternforge.wallet.pattern import DraftedFold, Piece
from patternforge.wallet.spec import GussetPart

__all__ = ["finished"]

_CLOSED = "closed, as loaded"


def finished(book: Book) -> Makes:
    """Width and height open and closed, as the wallet is looked at, and its closed thickness."""
    if book.pattern.folded:
        return
    across, along = ("height", "width") if book.design.body.turned else ("width", "height")
    yield f"open.{across}", partial(_open, book, f"open.{across}")
    yield f"closed.{across}", partial(_closed, book, f"closed.{across}")
    for state in ("open", "closed"):
        yield f"{state}.{along}", partial(_along, book, f"{state}.{along}")
    yield "closed.thickness", partial(_thickness, book)
    for panel in book.pattern.panels:
        yield f"panel {panel.name}.stack", partial(_stack, book, panel.name)


def _along(book: Book, name: str) -> Reason:
    return same(name, book.of("body.height"))


def _panels(book: Book) -> list[Reason]:
    return [book.of(f"panel {panel.name}.width") for panel in book.pattern.panels]


def _open(book: Book, name: str) -> Reason:
    """Laid flat along its longest layer: all panels, and every fold at its longest."""
    folds = [_longest(book, fold) for fold in book.pattern.folds]
    return made(name, How.SUM, (*_panels(book), *folds))


def _longest(book: Book, fold: DraftedFold) -> Reason:
    lengths = [book.of(f"fold {fold.number}.{layer.part}") for layer in fold.layers]
    return made(f"longest layer in fold {fold.number}", How.LARGEST, lengths)


def _closed(book: Book, name: str) -> Reason:
    """Panels laid back and forth, and the outermost layer round the bends at either end."""
    ways = _ways(book)
    ends = _ends(book, ways)
    low, high = min(ends, key=lambda end: end.at), max(ends, key=lambda end: end.at)
    between = range(min(low.panels, high.panels), max(low.panels, high.panels))
    sign = 1.0 if high.panels >= low.panels else -1.0
    panels = [_laid(book, index, sign * ways[index]) for index in between]
    bends = [_bend(book, end.fold) for end in (low, high) if end.fold]
    return made(name, How.SUM, (*panels, *bends) or (number(0.0),))


@dataclass(frozen=True, slots=True)
class _End:
    """A place the closed wallet reaches to: how far along it, after how many panels, round which fold if any."""

    at: float
    panels: int
    fold: DraftedFold | None = None


def _ends(book: Book, ways: Sequence[float]) -> list[_End]:
    widths = zip(ways, _panels(book), strict=True)
    steps = list(accumulate((way * panel.value for way, panel in widths), initial=0.0))
    ends = [_End(at, count) for count, at in enumerate(steps)]
    for fold in book.pattern.folds:
        way = ways[fold.number - 1]
        if way:
            out = math.copysign(_bend(book, fold).value, way)
            ends.append(_End(steps[fold.number] + out, fold.number, fold))
    return ends


def _ways(book: Book) -> list[float]:
    """How much each panel leads on along the closed wallet: 1, back by -1, upright by 0."""
    headings = accumulate((fold.angle for fold in book.pattern.folds), initial=0.0)
    return [round(math.cos(math.radians(heading)), 12) for heading in headings]


def _laid(book: Book, index: int, way: float) -> Reason:
    panel = _panels(book)[index]
    if way == 1:
        return panel
    return less(panel) if way == -1 else made(panel.name, How.PRODUCT, (number(way, "as it stands"), panel))


def _bend(book: Book, fold: DraftedFold) -> Reason:
    """How far the outermost layer reaches beyond the fold's tangent: its outside radius as it closes true."""
    return made(f"round fold {fold.number}", How.LARGEST, [_outside(book, fold, each.part) for each in fold.layers])


def _outside(book: Book, fold: DraftedFold, part: str) -> Reason:
    leather = book.of(f"leather {layer_named(book, part).leather}.thickness")
    return made(f"outside of {part}", How.SUM, (book.of(f"fold {fold.number}.{part}.radius"), leather))


def _thickness(book: Book) -> Reason:
    """The highest stack over any point of every panel that lies in the closed wallet."""
    laid = layout(book.pattern, {leather.role: leather for leather in book.design.leathers})
    closed = closed_wallet(laid)
    names = [book.pattern.panels[placed.panel].name for placed in closed.order.stack]
    stacks = [book.of(f"panel {name}.stack") for name in names]
    return made("closed.thickness", How.SUM, stacks, closed.thickness)


def _stack(book: Book, panel: str) -> Reason:
    """What lies over one another on a panel where it is highest, from the outside in."""
    laid = layout(book.pattern, {leather.role: leather for leather in book.design.leathers})
    index = [each.name for each in book.pattern.panels].index(panel)
    parts = [part for ply, thick in highest_stacks(laid)[index] for part in _ply(book, ply, thick)]
    return made(book.called(f"panel {panel}.stack"), How.SUM, parts or (number(0.0, "nothing"),))


def _ply(book: Book, ply: Ply, thickness: float) -> Iterator[Reason]:
    piece = next((each for each in book.pattern.pieces if each.name in (ply.name, ply.of)), None)
    if piece is None:
        yield _items(book, ply, thickness)
    elif ply.name != piece.name:
        yield _thickest_turn(book, piece, thickness)
    else:
        yield same(piece.name, _own(book, piece, ply, thickness), thickness)


def _own(book: Book, piece: Piece, ply: Ply, thickness: float) -> Reason:
    part = next((each for each in book.design.parts if each.name == piece.part), None)
    if isinstance(part, GussetPart):
        return _gusset(book, part, thickness)
    return left_of(book, piece, thickness)


def _gusset(book: Book, part: GussetPart, thickness: float) -> Reason:
    """What a gusset keeps its walls apart: its depth or its leaves, or what it holds where that is thicker."""
    own = book.of(f"part {part.name}.{'folded height' if part.pleats else 'depth'}")
    held = [_held(book, f"part {part.name}.holds {each.content}", each.content) for each in part.holds]
    items = made("what it holds", How.SUM, held) if held else number(0.0, "nothing held")
    return made("", How.LARGEST, (own, items), thickness)


def _thickest_turn(book: Book, piece: Piece, thickness: float) -> Reason:
    edges = piece.turned.turned if piece.turned else ()
    turns = [turned_in(book, piece.part, edge.edge) for edge in edges]
    return made(f"{piece.name} turned in", How.LARGEST, turns, thickness)


def _held(book: Book, count: str, content: str, load: str = "load.cards") -> Reason:
    factors = (book.of(count), book.of(load), book.of(f"content {content}.thickness"))
    return made(content, How.PRODUCT, factors)


def _items(book: Book, ply: Ply, thickness: float) -> Reason:
    """Items as loaded: of a pocket, of what a layer holds, or loose."""
    own = f"part {ply.part}."
    known: Sequence[tuple[str, str]] = (
        (f"{own}holds {ply.name}", "load.notes"),
        (f"{own}holds {ply.name}", "load.cards"),
        (f"{own}per_slot", "load.cards"),
        (f"{own}count", "load.cards"),
        (f"{own}count", "load.loose"),
    )
    held = (_held(book, count, ply.name, load) for count, load in known if count in book.makers)
    found = next((each for each in held if abs(each.value - thickness) < 1e-9), None)
    return found or measured(ply.name, thickness)
