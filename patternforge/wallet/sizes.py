"""Sizes of the body: as declared, or as large as what the panels hold needs, each with its sum."""

from __future__ import annotations

from patternforge.errors import DraftError
from patternforge.wallet.body import closed
from patternforge.wallet.parts import kind_of
from patternforge.wallet.parts.kind import SIDEWAYS, Way
from patternforge.wallet.pattern import Sum, Term
from patternforge.wallet.spec import Design, LayerPart, Part
from patternforge.wallet.stacks import held_panels
from patternforge.wallet.sums import taken_off

__all__ = ["body_height", "panel_widths"]


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
                    (*widths[placed.panel].terms, _clearance(design)),
                )
    return tuple(widths)


def _matched(widths: list[Sum]) -> list[Sum]:
    """Both panels as wide as the wider one."""
    widest = max(widths, key=lambda width: width.value)
    gaps = (widest.value - width.value for width in widths)
    return [
        Sum(w.name, (*w.terms, _to_match(widest, w)) if gap > 1e-9 else w.terms)
        for w, gap in zip(widths, gaps, strict=True)
    ]


def _to_match(widest: Sum, width: Sum) -> Term:
    parts = (*widest.terms, *map(taken_off, width.terms))
    return Term("to match the other panel", widest.value - width.value, parts=parts)


def _clearance(design: Design) -> Term:
    return Term("clearance of the panel folded in", design.body.clearance, ("body.clearance",))


def body_height(design: Design) -> Sum:
    """The height of the body: as declared, or the largest that any part needs.

    DraftError when nothing says how high it is.
    """
    if design.body.height is not None:
        return Sum("height", (Term("declared", design.body.height, ("body.declared height",)),))
    needs = [n for part in design.parts for n in kind_of(part).needs(design, part, Way.ALONG_FOLDS)]
    return _largest("height", needs, f"{design.file}: nothing in the wallet says how high it is: give body.height")


def _panel_width(design: Design, panel: int) -> Sum:
    spec = design.body.panels[panel]
    if spec.width is not None:
        return Sum(f"width of {spec.name}", (Term("declared", spec.width, (f"panel {spec.name}.declared width",)),))
    parts = (part for part in design.parts if _widens(part, panel))
    needs = [need for part in parts for need in kind_of(part).needs(design, part, Way.ACROSS_FOLDS)]
    return _largest(
        f"width of {spec.name}",
        needs,
        f"{design.file}: nothing on panel '{spec.name}' says how wide it is: give it a width",
    )


def _widens(part: Part, panel: int) -> bool:
    """Whether a part lies on that panel alone, or is a layer whose items are pushed in sideways over it."""
    if isinstance(part, LayerPart) and part.opening in SIDEWAYS:
        return held_panels(part) == (panel,)
    return tuple(part.panels) == (panel,)


def _largest(name: str, needs: list[tuple[Term, ...]], missing: str) -> Sum:
    if not needs:
        raise DraftError(missing)
    return Sum(name, max(needs, key=lambda terms: sum(t.value for t in terms)))
