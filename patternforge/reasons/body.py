"""Panels, folds and layers in folds: where they begin, how wide and how long they are."""

from __future__ import annotations

import math
from functools import partial

from patternforge.reasons.book import Book, Makes
from patternforge.reasons.reason import How, Reason, less, made, number, same
from patternforge.wallet.finishing import EdgeSkive, FoldSkive
from patternforge.wallet.pattern import DraftedFold, FoldLayer
from patternforge.wallet.spec import Edge, LayerPart

__all__ = ["body", "edge_thickness", "layer_named", "neutral_radius", "radians"]

_BEND = "bend allowance: NAVEDTRA 14119, p. 13-43, there with neutral 1/2"


def body(book: Book) -> Makes:
    """Panels, the height of the body, fold zones and every layer in every fold."""
    pattern = book.pattern
    if pattern.folded:
        return
    yield "body.height", lambda: book.total("body.height", pattern.height_sum, pattern.height)
    yield "body.width", lambda: _body_width(book)
    for index, panel in enumerate(pattern.panels):
        name = f"panel {panel.name}."
        yield f"{name}width", partial(book.total, f"{name}width", panel.width)
        yield f"{name}x0", partial(_begins, book, f"{name}x0", index, False, panel.x0)
        yield f"{name}x1", partial(_ends, book, f"{name}x1", f"{name}x0", f"{name}width", panel.x1)
    for fold in pattern.folds:
        yield from _fold(book, fold)


def layer_named(book: Book, name: str) -> LayerPart:
    """The layer of that name."""
    return next(part for part in book.design.parts if isinstance(part, LayerPart) and part.name == name)


def radians(book: Book, name: str, angle: float) -> Reason:
    """An angle of the book, whichever way it turns, as the length of arc of a radius of one."""
    part = math.pi / 180 if angle >= 0 else -math.pi / 180
    turned = (book.of(name), number(part, "pi / 180" if angle >= 0 else "- pi / 180"))
    return made("angle", How.PRODUCT, turned, unit="")


def neutral_radius(book: Book, role: str, radius: Reason, thickness: Reason) -> Reason:
    """From the middle of a bend to the fibre that keeps its length: inside radius + neutral x thickness."""
    fibre = made("to the unstretched fibre", How.PRODUCT, (book.of(f"leather {role}.neutral"), thickness))
    return made("radius of the unstretched fibre", How.SUM, (radius, fibre))


def edge_thickness(book: Book, part: LayerPart, edge: Edge) -> Reason:
    """The leather of a layer along an edge, skived as it is there."""
    skived = (
        book.of(f"part {part.name}.skive {number}.to")
        for number, skive in enumerate(part.skives, 1)
        if isinstance(skive, EdgeSkive) and edge in skive.edges
    )
    return _thinnest(book, part, f"thickness along the {edge.value}", tuple(skived))


def _thinnest(book: Book, part: LayerPart, name: str, skived: tuple[Reason, ...]) -> Reason:
    whole = book.of(f"leather {part.leather}.thickness")
    return made(name, How.SMALLEST, (whole, *skived)) if skived else same(name, whole)


def _body_width(book: Book) -> Reason:
    pattern = book.pattern
    parts = [book.of(f"panel {panel.name}.width") for panel in pattern.panels]
    zones = [book.of(f"fold {fold.number}.zone") for fold in pattern.folds]
    return made("body.width", How.SUM, (*parts, *zones), pattern.width)


def _begins(book: Book, name: str, panels: int, after: bool, value: float) -> Reason:
    """Where a panel, or the fold after it, begins: all that stands left of it."""
    before = book.pattern.panels[: panels + after]
    parts = [book.of(f"panel {panel.name}.width") for panel in before]
    zones = [book.of(f"fold {fold.number}.zone") for fold in book.pattern.folds[:panels]]
    return made(book.called(name), How.SUM, (*parts, *zones) or (number(0.0, "the left edge"),), value)


def _ends(book: Book, name: str, start: str, width: str, value: float) -> Reason:
    return made(book.called(name), How.SUM, (book.of(start), book.of(width)), value)


def _fold(book: Book, fold: DraftedFold) -> Makes:
    name = f"fold {fold.number}"
    yield f"{name}.zone", partial(_zone, book, fold)
    yield f"{name}.x0", partial(_begins, book, f"{name}.x0", fold.number - 1, True, fold.x0)
    yield f"{name}.x1", partial(_ends, book, f"{name}.x1", f"{name}.x0", f"{name}.zone", fold.x1)
    inner: FoldLayer | None = None
    for layer in sorted(fold.layers, key=lambda layer: layer.gap.value):
        own = f"{name}.{layer.part}"
        yield f"{own}.gap", partial(book.total, f"{own}.gap", layer.gap)
        yield f"part {layer.part}.thickness in {name}", partial(_bent_thickness, book, fold, layer.part)
        yield f"{own}.hollow", partial(_hollow, book, name, layer)
        yield f"{own}.radius", partial(_radius, book, name, layer, inner)
        yield f"{own}.true length", partial(_true, book, fold, layer)
        yield own, partial(_flat, book, fold, layer)
        inner = layer


def _zone(book: Book, fold: DraftedFold) -> Reason:
    innermost = _innermost(fold)
    return same(f"fold {fold.number}.zone", book.of(f"fold {fold.number}.{innermost.part}"), innermost.flat_length)


def _innermost(fold: DraftedFold) -> FoldLayer:
    return min(fold.layers, key=lambda layer: layer.gap.value)


def _bent_thickness(book: Book, fold: DraftedFold, name: str) -> Reason:
    part = layer_named(book, name)
    skived = (
        book.of(f"part {name}.skive {number}.to")
        for number, skive in enumerate(part.skives, 1)
        if isinstance(skive, FoldSkive) and skive.fold == fold.number - 1
    )
    return _thinnest(book, part, book.called(f"part {name}.thickness in fold {fold.number}"), tuple(skived))


def _hollow(book: Book, fold: str, layer: FoldLayer) -> Reason:
    """What a layer too stiff for its gap keeps inside it, besides half the gap."""
    own = f"{fold}.{layer.part}"
    half = made("half the gap", How.QUOTIENT, (book.of(f"{own}.gap"), number(2.0)))
    return made(f"{own}.hollow", How.SUM, (book.of(f"{own}.radius"), less(half)))


def _radius(book: Book, fold: str, layer: FoldLayer, inner: FoldLayer | None) -> Reason:
    """Half of what lies between the flanks and the hollow inside, or as sharp as the leather bends."""
    own = f"{fold}.{layer.part}"
    gap = made("half the gap", How.QUOTIENT, (book.of(f"{own}.gap"), number(2.0)))
    hollow = (book.of(f"{fold}.{inner.part}.hollow"),) if inner else ()
    role = layer_named(book, layer.part).leather
    thickness = book.of(f"part {layer.part}.thickness in {fold}")
    sharpest = made("as sharp as it bends", How.PRODUCT, (book.of(f"leather {role}.min_radius"), thickness))
    room = made("room inside", How.SUM, (gap, *hollow))
    return made(f"{own}.radius", How.LARGEST, (room, sharpest), layer.radius)


def _true(book: Book, fold: DraftedFold, layer: FoldLayer) -> Reason:
    name = f"fold {fold.number}"
    role = layer_named(book, layer.part).leather
    thickness = book.of(f"part {layer.part}.thickness in {name}")
    fibre = neutral_radius(book, role, book.of(f"{name}.{layer.part}.radius"), thickness)
    turn = radians(book, f"{name}.angle", fold.angle)
    return made(f"{name}.{layer.part}.true length", How.PRODUCT, (turn, fibre), layer.true_length, source=_BEND)


def _flat(book: Book, fold: DraftedFold, layer: FoldLayer) -> Reason:
    """The length a layer is given: as it closes true, eased by the fold's compensation towards the innermost."""
    name = f"fold {fold.number}"
    true, base = (book.of(f"{name}.{part}.true length") for part in (layer.part, _innermost(fold).part))
    if true is base:
        return same(f"{name}.{layer.part}", true, layer.flat_length)
    longer = made("longer than the innermost", How.SUM, (true, less(base)))
    eased = made("made up for", How.PRODUCT, (book.of(f"{name}.compensation"), longer))
    return made(f"{name}.{layer.part}", How.SUM, (base, eased), layer.flat_length)
