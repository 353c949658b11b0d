"""Panels by name, and places on them."""

from __future__ import annotations

from patternforge.design.entries import Entries
from patternforge.design.located import Scalar
from patternforge.design.names import Covered
from patternforge.design.part_forms import FoldPlaceForm, PlaceForm, SideForm, SidesForm
from patternforge.design.scope import Scope
from patternforge.design.values import ANY
from patternforge.design.words import listed, word_advice
from patternforge.wallet.spec import Edge, EdgeShape, Spot

__all__ = ["bend_spot", "covered_panels", "distance", "only_panel", "panel", "sides", "spot"]


def panel(scalar: Scalar | None, scope: Scope, panels: tuple[str, ...]) -> int | None:
    """The number of the panel that a value names, None if it names none or the panels could not be read."""
    if scalar is None or not panels:
        return None
    if scalar.text in panels:
        return panels.index(scalar.text)
    scope.faults.add(scalar.at, f"there is no panel '{scalar.text[:40]}'", word_advice(scalar.text, panels))
    return None


def covered_panels(table: Entries, panels: tuple[str, ...]) -> Covered:
    """The panels that ``over`` names by the first and the last one; all of them if it is left out."""
    node = table.node("over")
    if node is None:
        return tuple(range(len(panels))) if panels and not table.is_refused("over") else None
    if isinstance(node, Scalar):
        only = panel(node, table.scope, panels)
        return None if only is None else (only,)
    named = table.scalars("over")
    if table.is_refused("over"):
        return None
    if len(named) not in (1, 2):
        what = f"'over' of {table.what} names {len(named)} panels"
        table.add_fault("over", what, "name the first and the last one")
        return None
    first, last = (panel(scalar, table.scope, panels) for scalar in (named[0], named[-1]))
    if first is None or last is None:
        return None
    if first > last:
        table.add_fault("over", f"'over' of {table.what} runs from right to left", "name the left panel first")
        return None
    return tuple(range(first, last + 1))


def spot(table: Entries, panels: tuple[str, ...], part: str, covered: Covered) -> Spot:
    """The place that ``at`` names on a panel of a part, called ``part`` in messages, that covers ``covered``."""
    return _on_panel(table.table("at", PlaceForm, f"'at' of {table.what}"), panels, part, covered)


def _on_panel(place: Entries, panels: tuple[str, ...], part: str, covered: Covered) -> Spot:
    on = only_panel(place, panels, part, covered)
    return Spot(on, distance(place, Edge.LEFT, Edge.RIGHT), distance(place, Edge.BOTTOM, Edge.TOP))


def bend_spot(table: Entries, panels: tuple[str, ...], part: str, covered: Covered) -> Spot:
    """The place that ``at`` names on a panel of a part, or in a fold that the part crosses."""
    place = table.table("at", FoldPlaceForm, f"'at' of {table.what}")
    if "fold" not in place.nodes or place.is_refused("fold"):
        return _on_panel(place, panels, part, covered)
    for key in ("panel", "left", "right"):
        if key in place.nodes:
            place.add_fault(key, f"{place.what} names a fold and '{key}'", "keep one of them")
    number = place.count("fold", high=max(len(panels) - 1, 1))
    if covered is not None and not {number - 1, number} <= set(covered):
        place.add_fault("fold", f"{table.what} lies in fold {number}, which {part} does not cross", "name a panel")
    return Spot(number - 1, None, distance(place, Edge.BOTTOM, Edge.TOP), number)


def only_panel(table: Entries, panels: tuple[str, ...], part: str, covered: Covered) -> int:
    """The panel that ``panel`` names, one of those ``part`` covers, or the only one it covers."""
    if table.is_refused("panel"):
        return 0
    if "panel" in table.nodes:
        named = panel(table.scalar("panel"), table.scope, panels)
        if named is not None and covered is not None and named not in covered:
            what = f"{table.what} lies on panel '{panels[named]}', which {part} does not cover"
            table.add_fault("panel", what, f"it covers {listed(panels[each] for each in covered)}")
        return named or 0
    if covered is not None and len(covered) > 1:
        what = f"{table.what} does not say on which panel of {part} it lies"
        table.scope.faults.add(table.at, what, f"add 'panel: {panels[covered[0]]}'")
    return covered[0] if covered else 0


def sides(table: Entries) -> tuple[tuple[Edge, EdgeShape], ...]:
    """The sides that leave the straight."""
    named = table.table("sides", SidesForm)
    forms = [(edge, named.table(edge, SideForm)) for edge in Edge if edge in named.nodes]
    return tuple(
        (edge, EdgeShape(side.length("bow", 0.0, ANY), side.length("slant", 0.0, ANY))) for edge, side in forms
    )


def distance(place: Entries, *edges: Edge) -> tuple[Edge, float] | None:
    """How far from one of two edges; a fault if both are named."""
    named = [edge for edge in edges if edge in place.nodes and not place.is_refused(edge)]
    if len(named) > 1:
        place.add_fault(named[1], f"{place.what} counts from {named[0]} and from {named[1]}", "keep one of them")
    distances = [(edge, place.length(edge)) for edge in named]
    return distances[0] if distances else None
