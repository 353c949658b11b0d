"""Thickness standing over each panel, part by part from the outside in, as the wallet is loaded when it closes."""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternforge.leather.contents import Item, Section
from patternforge.wallet.border import border, opposite
from patternforge.wallet.pattern import Term
from patternforge.wallet.spec import BankPart, BankShape, Design, Edge, LayerPart, Lying, Part, PocketPart, Side

__all__ = [
    "Ply",
    "held_panels",
    "inside_of",
    "item_intervals",
    "item_size",
    "most_over_each_other",
    "outside_of",
    "panel_plies",
    "standing",
    "taut_terms",
]


@dataclass(frozen=True, slots=True)
class Ply:
    """One thickness over a panel: the part it belongs to, and whether it is that part's leather or what it holds."""

    part: str
    leather: bool
    term: Term


def panel_plies(design: Design, panel: int) -> tuple[Ply, ...]:
    """Every thickness over ``panel`` (0-based) from the outside in, mm, contents as the load says."""
    covering = (part for part in design.parts if panel in _panels(part))
    return tuple(ply for part in covering for ply in _part_plies(design, part, panel))


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
    return max((_standing(intervals, low) for low, _ in intervals), default=0)


def _panels(part: Part) -> range:
    if isinstance(part, LayerPart):
        return range(part.first, part.last + 1)
    return range(part.panel, part.panel + 1)


def _leather_index(plies: tuple[Ply, ...], part: str) -> int:
    return next(i for i, ply in enumerate(plies) if ply.part == part and ply.leather)


def held_panels(part: LayerPart) -> tuple[int, ...]:
    """The panels a layer's held items lie on: all under a top or bottom opening, else the one at the opening."""
    if part.opening is Edge.LEFT:
        return (part.first,)
    if part.opening is Edge.RIGHT:
        return (part.last,)
    return tuple(range(part.first, part.last + 1))


def _part_plies(design: Design, part: Part, panel: int) -> tuple[Ply, ...]:
    films = _film_plies(design, part, panel)
    if isinstance(part, BankPart):
        return (*_bank_plies(design, part), *films)
    own = Ply(part.name, True, Term(f"{part.name} ({part.leather})", design.leather(part.leather).t))
    held = _held_plies(design, part, panel)
    facing_out = not isinstance(part, LayerPart) and part.facing is Side.OUTSIDE
    return (own, *films, *held) if facing_out else (*held, *films, own)


def _film_plies(design: Design, part: Part, panel: int) -> tuple[Ply, ...]:
    """The thickest of the clear sheets behind a part's windows on a panel, for they lie side by side."""
    sheets = [o.film.leather for o in part.openings if o.film and o.spot.panel == panel]
    if not sheets:
        return ()
    thickest = max(design.leather(sheet).t for sheet in sheets)
    return (Ply(part.name, False, Term(f"film behind {part.name}", thickest)),)


def _held_plies(design: Design, part: LayerPart | PocketPart, panel: int) -> tuple[Ply, ...]:
    load = design.load
    if isinstance(part, PocketPart):
        terms = [_contents(design, part.content, part.count * load.cards)]
    elif panel in held_panels(part):
        terms = [_contents(design, held.content, held.count * load.notes) for held in part.holds]
    else:
        terms = []
    return tuple(Ply(part.name, False, term) for term in terms if term.value > 0)


def _contents(design: Design, content: str, count: float) -> Term:
    return Term(f"{count:g} x {content}", count * design.item(content).thickness)


def _bank_plies(design: Design, part: BankPart) -> tuple[Ply, ...]:
    """The leather and the items of a bank where both together stand highest."""
    leathers, items = _bank_leather(design, part), item_intervals(part, design)
    t = design.leather(part.leather).t
    each = part.per_slot * design.load.cards
    thick = design.item(part.content).thickness
    starts = [low for low, _ in (*leathers, *items)]
    counts = ((_standing(leathers, b), _standing(items, b)) for b in starts)
    pieces, filled = max(counts, key=lambda count: count[0] * t + count[1] * each * thick)
    held = _contents(design, part.content, filled * each)
    own = Ply(part.name, True, Term(f"{pieces} x {part.name} ({part.leather})", pieces * t))
    return (own, Ply(part.name, False, held)) if held.value > 0 else (own,)


def _standing(intervals: tuple[tuple[float, float], ...], at: float) -> int:
    return sum(low <= at < high for low, high in intervals)


def item_intervals(part: BankPart, design: Design) -> tuple[tuple[float, float], ...]:
    """Where the items of a bank stand along the way they go in, above the floor of slot 1, mm."""
    high = item_size(part, design)[1]
    return tuple((j * part.step, j * part.step + high) for j in range(part.slots))


def item_size(part: Part, design: Design) -> tuple[float, float]:
    """The item of a bank or pocket as (along the mouth, across it), mm."""
    if isinstance(part, LayerPart):
        raise TypeError("a layer has no item of its own")
    return standing(design.item(part.content), part.lying)


def standing(item: Item, lying: Lying) -> tuple[float, float]:
    """An item's size along the mouth and across it as it lies or stands upright, mm."""
    return (item.length, item.height) if lying is Lying.LYING else (item.height, item.length)


def taut_terms(item: Item, across: float, count: int) -> tuple[tuple[str, float], ...]:
    """Half the girth of ``count`` items lying over each other, as named terms in mm: the taut path round them.

    Flat: width + thickness; round, one alone: pi d / 2.
    """
    if item.section is Section.ROUND:
        return ((f"half the girth of {item.name}", math.pi / 2 * item.thickness),)
    return (("across the mouth", across), (f"{count} x thickness", count * item.thickness))


def _bank_leather(design: Design, part: BankPart) -> tuple[tuple[float, float], ...]:
    """Where the pieces of a bank stand, above the floor of slot 1: a tee's stem from below its own floor."""
    high = item_size(part, design)[1]
    below = border(design, part, opposite(part.opening)).margin
    stems = part.shape is BankShape.TEE
    return tuple(
        ((j * part.step if stems else 0.0) - below, j * part.step + high - part.show) for j in range(part.slots)
    )
