"""Hardware: where the second half of a fitting must sit so that it meets the first once all folds are closed."""

from __future__ import annotations

from functools import partial

from patternforge.leather.closing import Placed, closing
from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, less, made, number
from patternforge.wallet.spec import Edge, Fitting, Spot

__all__ = ["hardware"]


def hardware(book: Book) -> Makes:
    """Where either half lies on its panel, from its left tangent and from the bottom; mm."""
    for fitting in book.design.fittings:
        own = f"fitting {fitting.name}."
        yield f"{own}from the left", partial(_beside, book, f"{own}from the left", fitting)
        yield f"{own}from the bottom", partial(_above, book, f"{own}from the bottom", fitting.spot)
        if fitting.meets:
            name = f"{own}second half from the left"
            yield name, partial(_opposite, book, name, fitting)
            yield (
                f"{own}second half from the bottom",
                partial(_above, book, f"{own}second half from the bottom", fitting.spot),
            )


def _width(book: Book, panel: int) -> Reason:
    return book.of(f"panel {book.pattern.panels[panel].name}.width")


def _measured_from(book: Book, name: str, size: Reason, place: tuple[Edge, float] | None, fitting: str) -> Reason:
    """A place on a panel: as declared from either of its ends, else its middle."""
    if place is None:
        return made(book.called(name), How.QUOTIENT, (size, number(2.0)))
    edge, _ = place
    off = book.of(f"{fitting}at {edge.value}")
    far = edge in (Edge.RIGHT, Edge.TOP)
    return made(book.called(name), How.SUM, (size, less(off)) if far else (off,))


def _beside(book: Book, name: str, fitting: Fitting) -> Reason:
    spot, width = fitting.spot, _width(book, fitting.spot.panel)
    if spot.fold:
        zone = made("middle of the bend", How.QUOTIENT, (book.of(f"fold {spot.fold}.zone"), number(2.0)))
        return made(book.called(name), How.SUM, (width, zone))
    return _measured_from(book, name, width, spot.beside, f"fitting {fitting.name}.")


def _above(book: Book, name: str, spot: Spot) -> Reason:
    fitting = f"{name.partition('.')[0]}."
    return _measured_from(book, name, book.of("body.height"), spot.above, fitting)


def _opposite(book: Book, name: str, fitting: Fitting) -> Reason:
    """Counted back and forth along the panels as they lie on each other in the closed wallet."""
    first = book.of(f"fitting {fitting.name}.from the left")
    stack = sorted(_stack(book), key=lambda placed: placed.panel)
    way = {placed.panel: -1 if placed.turned else 1 for placed in stack}
    here, there = fitting.spot.panel, fitting.meets_panel
    low, high = sorted((here, there))
    between = [placed.panel for placed in stack if low <= placed.panel < high]
    sign = way[there] * (1 if here > there else -1)
    panels = [_signed(_width(book, panel), sign * way[panel]) for panel in between]
    return made(book.called(name), How.SUM, (_signed(first, way[there] * way[here]), *panels))


def _signed(size: Reason, sign: int) -> Reason:
    return size if sign > 0 else less(size)


def _stack(book: Book) -> tuple[Placed, ...]:
    body = book.design.body
    return closing(len(body.panels), [fold.angle for fold in body.folds], body.closing).stack
