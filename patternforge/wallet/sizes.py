"""Sizes of the body: as declared, or as large as what the panels hold needs, each with its sum."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum

from patternforge.errors import DraftError
from patternforge.wallet.body import closed
from patternforge.wallet.border import Border, border, inner_margin, opposite, seam_along
from patternforge.wallet.parts.slots import clear_need
from patternforge.wallet.pattern import Sum, Term
from patternforge.wallet.spec import BankPart, Design, Edge, LayerPart, PocketPart
from patternforge.wallet.stacks import item_size, standing, taut_terms

__all__ = ["body_height", "panel_widths"]

_SIDEWAYS = (Edge.LEFT, Edge.RIGHT)


class Way(Enum):
    """A direction of the laid-open body."""

    ACROSS_FOLDS = "across the folds"
    ALONG_FOLDS = "along the folds"


def _mouth_runs(opening: Edge) -> Way:
    return Way.ALONG_FOLDS if opening in _SIDEWAYS else Way.ACROSS_FOLDS


def panel_widths(design: Design) -> tuple[Sum, ...]:
    """The width of each panel: as declared, or what its parts need; a panel that covers a folded-in one is longer.

    Two panels that close on each other are made equal. DraftError when nothing says how wide a panel is.
    """
    widths = [_panel_width(design, panel) for panel in range(len(design.body.panels))]
    if len(widths) == 2 and all(panel.width is None for panel in design.body.panels):
        widths = _matched(widths)
    order = closed(design)
    for fold, between in enumerate(order.between):
        for placed in between:
            flank = fold if placed.panel < fold else fold + 1
            need = widths[placed.panel].value + design.body.clearance
            if design.body.panels[flank].width is None and widths[flank].value < need:
                widths[flank] = Sum(
                    f"width of {design.body.panels[flank].name}",
                    (*widths[placed.panel].terms, Term("clearance of the panel folded in", design.body.clearance)),
                )
    return tuple(widths)


def _matched(widths: list[Sum]) -> list[Sum]:
    """Both panels as wide as the wider one."""
    widest = max(width.value for width in widths)
    gaps = (widest - width.value for width in widths)
    return [
        Sum(w.name, (*w.terms, Term("to match the other panel", gap)) if gap > 1e-9 else w.terms)
        for w, gap in zip(widths, gaps, strict=True)
    ]


def body_height(design: Design) -> Sum:
    """The height of the body: as declared, or the largest that any part needs.

    DraftError when nothing says how high it is.
    """
    if design.body.height is not None:
        return Sum("height", (Term("declared", design.body.height),))
    needs = [n for part in design.parts for n in _needs(design, part, Way.ALONG_FOLDS)]
    return _largest("height", needs, f"{design.file}: nothing in the wallet says how high it is: give body.height")


def _panel_width(design: Design, panel: int) -> Sum:
    spec = design.body.panels[panel]
    if spec.width is not None:
        return Sum(f"width of {spec.name}", (Term("declared", spec.width),))
    parts = (p for p in design.parts if _only_panel(p) == panel)
    needs = [n for part in parts for n in _needs(design, part, Way.ACROSS_FOLDS)]
    return _largest(
        f"width of {spec.name}",
        needs,
        f"{design.file}: nothing on panel '{spec.name}' says how wide it is: give it a width",
    )


def _only_panel(part: LayerPart | BankPart | PocketPart) -> int | None:
    if isinstance(part, LayerPart):
        return part.first if part.first == part.last else None
    return part.panel


def _largest(name: str, needs: list[tuple[Term, ...]], missing: str) -> Sum:
    if not needs:
        raise DraftError(missing)
    return Sum(name, max(needs, key=lambda terms: sum(t.value for t in terms)))


def _needs(design: Design, part: LayerPart | BankPart | PocketPart, way: Way) -> Iterable[tuple[Term, ...]]:
    """What a part needs that way."""
    if isinstance(part, LayerPart):
        return _held_needs(design, part, way)
    along_mouth = _mouth_runs(part.opening) is way
    return [_across_need(design, part)] if along_mouth else _along_need(design, part)


def _across_need(design: Design, part: BankPart | PocketPart) -> tuple[Term, ...]:
    columns = part.columns if isinstance(part, BankPart) else 1
    sides = _SIDEWAYS if part.opening not in _SIDEWAYS else (Edge.BOTTOM, Edge.TOP)
    clear = (Term(label, columns * value) for label, value in clear_need(design, part))
    borders = (term for edge in sides for term in _border_terms(border(design, part, edge)))
    return (*clear, *borders)


def _along_need(design: Design, part: BankPart | PocketPart) -> list[tuple[Term, ...]]:
    floor = border(design, part, opposite(part.opening))
    mouth = border(design, part, part.opening)
    steps = [Term("steps", (part.slots - 1) * part.step)] if isinstance(part, BankPart) else []
    item = item_size(part, design)[1]
    deep = item if isinstance(part, BankPart) else max(part.depth, item)
    head = Term("relief", mouth.inset) if mouth.inset else Term("headroom", design.body.headroom)
    return [(*_border_terms(floor), *steps, Term(f"{part.content} across", deep), head)]


def _border_terms(side: Border) -> tuple[Term, ...]:
    margin = Term(f"margin at the {side.edge.value}", side.margin)
    return (Term(f"relief at the {side.edge.value}", side.inset), margin) if side.inset else (margin,)


def _held_needs(design: Design, part: LayerPart, way: Way) -> list[tuple[Term, ...]]:
    return [_held_need(design, part, held.content, way) for held in part.holds]


def _held_need(design: Design, part: LayerPart, content: str, way: Way) -> tuple[Term, ...]:
    item = design.item(content)
    across, along = standing(item, part.lying)
    if _mouth_runs(part.opening) is way:
        margins = Term("two margins", 2 * inner_margin(design))
        count = next(held.count for held in part.holds if held.content == content)
        taut = (Term(f"{content}: {label}", value) for label, value in taut_terms(item, across, count))
        return (*taut, Term("ease", design.body.headroom), margins)
    seam = seam_along(design, opposite(part.opening), part)
    margin = Term("margin", seam.margin if seam else inner_margin(design))
    return (Term(f"{content}: towards the mouth", along), margin, Term("headroom", design.body.headroom))
