"""Thickness standing over each panel, part by part from the outside in, as the wallet is loaded when it closes."""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternforge.leather.contents import Item, Section
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, SkiveSpec
from patternforge.wallet.pattern import Term
from patternforge.wallet.spec import BankPart, Content, Design, Edge, LayerPart, Lying, Part, PocketPart, Side

__all__ = [
    "Ply",
    "edge_thickness",
    "film_plies",
    "fold_thickness",
    "held_panels",
    "held_term",
    "inside_of",
    "item_intervals",
    "item_size",
    "most_over_each_other",
    "outside_of",
    "showing_side",
    "skives_asked",
    "standing",
    "standing_names",
    "standing_over",
    "taut_terms",
]


@dataclass(frozen=True, slots=True)
class Ply:
    """One thickness over a panel: the part it belongs to, and whether it is that part's leather or what it holds."""

    part: str
    leather: bool
    term: Term


def inside_of(plies: tuple[Ply, ...], part: str) -> tuple[Term, ...]:
    """What lies on the inner side of a layer's leather."""
    return tuple(ply.term for ply in plies[_leather_index(plies, part) + 1 :])


def outside_of(plies: tuple[Ply, ...], part: str) -> tuple[Term, ...]:
    """What lies on the outer side of a layer's leather."""
    return tuple(ply.term for ply in plies[: _leather_index(plies, part)])


def most_over_each_other(intervals: tuple[tuple[float, float], ...]) -> int:
    """The largest number of intervals that share a stretch of positive length.

    >>> most_over_each_other(((0, 54), (12, 66), (60, 114)))
    2
    """
    return max((standing_over(intervals, low) for low, _ in intervals), default=0)


def _leather_index(plies: tuple[Ply, ...], part: str) -> int:
    return next(i for i, ply in enumerate(plies) if ply.part == part and ply.leather)


def held_panels(part: LayerPart) -> tuple[int, ...]:
    """The panels a layer's held items lie on: all under a top or bottom opening, else the one at the opening."""
    if part.opening is Edge.LEFT:
        return (part.first,)
    if part.opening is Edge.RIGHT:
        return (part.last,)
    return tuple(range(part.first, part.last + 1))


def showing_side(design: Design, part: LayerPart) -> Side:
    """The side a layer's face turns to: as asked, else outwards where no other layer lies outside it."""
    outside = design.parts[: design.parts.index(part)]
    hidden = any(isinstance(other, LayerPart) and set(part.panels) & set(other.panels) for other in outside)
    return part.showing or (Side.INSIDE if hidden else Side.OUTSIDE)


def film_plies(design: Design, part: Part, panel: int) -> tuple[Ply, ...]:
    """The thickest of the clear sheets behind a part's windows on a panel, for they lie side by side."""
    sheets = [o.film.leather for o in part.openings if o.film and o.spot.panel == panel]
    if not sheets:
        return ()
    thickest = max(sheets, key=lambda sheet: design.leather(sheet).t)
    term = Term(f"film behind {part.name}", design.leather(thickest).t, (f"leather {thickest}.thickness",))
    return (Ply(part.name, False, term),)


def skives_asked(part: Part) -> tuple[SkiveSpec, ...]:
    """The skives a part asks for; what lies loose and strips have none."""
    return part.skives if isinstance(part, LayerPart | BankPart | PocketPart) else ()


def fold_thickness(design: Design, part: LayerPart, fold: int) -> float:
    """Thickness of a layer's leather in a fold (0-based), skived as it is there, mm."""
    skived = (skive.to for skive in part.skives if isinstance(skive, FoldSkive) and skive.fold == fold)
    return min((design.leather(part.leather).t, *skived))


def edge_thickness(design: Design, part: LayerPart, edge: Edge) -> float:
    """Thickness of a layer's leather along an edge, skived as it is there, mm."""
    skived = (skive.to for skive in part.skives if isinstance(skive, EdgeSkive) and edge in skive.edges)
    return min((design.leather(part.leather).t, *skived))


def held_term(design: Design, content: str, count: float, of: tuple[str, ...], times: float = 1.0) -> Term:
    """The thickness of ``count`` of a content lying over each other; the count is ``times`` the product of ``of``."""
    value = count * design.item(content).thickness
    return Term(f"{count:g} x {content}", value, (*of, f"content {content}.thickness"), times)


def standing_over(intervals: tuple[tuple[float, float], ...], at: float) -> int:
    """How many of the intervals, each open at its end, stand over a place."""
    return sum(low <= at < high for low, high in intervals)


def item_intervals(part: BankPart, design: Design) -> tuple[tuple[float, float], ...]:
    """Where the items of a bank stand along the way they go in, above the floor of slot 1, mm."""
    high = item_size(part, design)[1]
    return tuple((j * part.step, j * part.step + high) for j in range(part.slots))


def item_size(part: BankPart | PocketPart, design: Design) -> tuple[float, float]:
    """The item of a bank or pocket as (along the mouth, across it), mm."""
    return standing(design.item(part.content), part.lying)


def standing_names(content: str, lying: Lying) -> tuple[str, str]:
    """The names of the sizes that ``standing`` gives of a content."""
    length, height = f"content {content}.length", f"content {content}.height"
    return (length, height) if lying is Lying.LYING else (height, length)


def standing(item: Item, lying: Lying) -> tuple[float, float]:
    """An item's size along the mouth and across it as it lies or stands upright, mm."""
    return (item.length, item.height) if lying is Lying.LYING else (item.height, item.length)


def taut_terms(content: Content, lying: Lying, count: int) -> tuple[Term, ...]:
    """Half the girth of ``count`` items lying over each other: the taut path round them.

    Flat: width + thickness; round, one alone: pi d / 2.
    """
    item, name = content.item, content.name
    thickness = (f"content {name}.thickness",)
    if item.section is Section.ROUND:
        label = f"{name}: half the girth of {item.name}"
        return (Term(label, math.pi / 2 * item.thickness, thickness, math.pi / 2),)
    across = standing(item, lying)[0]
    return (
        Term(f"{name}: across the mouth", across, standing_names(name, lying)[:1]),
        Term(f"{name}: {count} x thickness", count * item.thickness, thickness, count),
    )
