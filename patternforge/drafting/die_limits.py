"""What is finest in a die, held against what a shop can make."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace

from patternforge.drafting.dies import Die
from patternforge.drafting.smallest import across, smallest
from patternforge.drawing.model import Role
from patternforge.fit.findings import Verdict, reaches
from patternforge.fit.fineness import fineness
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern

__all__ = ["FINE", "GENERAL_SHOP", "LEATHER", "SLOT", "Fine", "ShopLimits", "fines"]

LEATHER, SLOT = "leather between two cuts", "slot or notch"
FINE = 10.0  # mm: leather or room no finer than this is nobody's limit


@dataclass(frozen=True, slots=True)
class ShopLimits:
    """The smallest hole across, room or leather between two cuts, and radius a shop can make, mm; 0: not given.

    ``whose`` says in words whose limits these are.
    """

    whose: str
    hole: float = 0.0
    gap: float = 0.0
    radius: float = 0.0


# Limits that one rule-die shop publishes: 2.4 mm (3/32 in) between rules, 0.8 mm for a punch with its outlet at the
# side. No radius: what is published on bends differs too much to be held against a drawing.
GENERAL_SHOP = ShopLimits("one rule-die shop, ask yours", hole=0.8, gap=2.4)


@dataclass(frozen=True, slots=True)
class Fine:
    """The smallest of its kind in a die, mm, the limit it is held against (0: not given), and what comes of it."""

    what: str
    size: float
    limit: float

    @property
    def verdict(self) -> Verdict:
        """Good at or above the limit, no below it; look, where the shop has to be asked."""
        if not self.limit:
            return Verdict.LOOK
        return Verdict.GOOD if reaches(self.size, self.limit) else Verdict.NO

    @property
    def is_below(self) -> bool:
        """Whether the shop cannot make it."""
        return self.verdict is Verdict.NO

    @property
    def told(self) -> str:
        """All of it in words.

        >>> Fine(SLOT, 2.0, 2.4).told
        'smallest slot or notch 2.00 mm, limit 2.40 mm: NO, the shop cannot make it'
        >>> Fine("radius", 2.0, 0.0).told
        "smallest radius 2.00 mm, the shop's limit is not given: ask"
        """
        match self.verdict:
            case Verdict.GOOD:
                return f"smallest {self.what} {mm(self.size)} mm, limit {mm(self.limit)} mm: good"
            case Verdict.LOOK:
                return f"smallest {self.what} {mm(self.size)} mm, the shop's limit is not given: ask"
            case Verdict.NO:
                return (
                    f"smallest {self.what} {mm(self.size)} mm, limit {mm(self.limit)} mm: NO, the shop cannot make it"
                )


def fines(pattern: Pattern, die: Die, limits: ShopLimits, roles: Collection[Role]) -> tuple[Fine, ...]:
    """The smallest radius, leather between cuts, slot and round hole of a die, net, as far as there are any.

    Leather and slots are told where they are finer than ``FINE``.

    ``roles`` are those whose lines are cut through. A round hole is punched by a tube: it is held against the limit
    for holes, and no slot.
    """
    return tuple(_found(pattern, die, limits, roles))


def _found(pattern: Pattern, die: Die, limits: ShopLimits, roles: Collection[Role]) -> Iterator[Fine]:
    piece = die.cuts[0].piece
    fine = fineness(pattern, piece)
    gaps = [gap for gap in (fine.gap, fine.hole_gap if Role.HOLE in roles else None) if gap is not None]
    ruled = replace(piece, openings=tuple(path for path in piece.openings if across(path) is None))
    slot = fineness(pattern, ruled).slot
    hole = smallest(replace(pattern, pieces=(piece,)), roles).hole
    if fine.radius is not None:
        yield Fine("radius", fine.radius, limits.radius)
    if gaps and min(gaps) < FINE:
        yield Fine(LEATHER, min(gaps), limits.gap)
    if slot is not None and slot < FINE:
        yield Fine(SLOT, slot, limits.gap)
    if hole is not None:
        yield Fine("round hole", hole.size, limits.hole)
