"""Everything a die maker is sent of one wallet: its dies, their files, and what the shop can make."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.drafting.die_limits import Fine, ShopLimits, fines
from patternforge.drafting.dies import Die, DieCut
from patternforge.drafting.purpose import CutFace
from patternforge.drawing.extent import extent
from patternforge.drawing.model import Role
from patternforge.leather.material import MadeOf, SurfaceFace
from patternforge.units import inches, mm
from patternforge.wallet.pattern import Pattern

__all__ = ["DiePack"]

_OTHER_SIDE = {SurfaceFace.GRAIN: SurfaceFace.FLESH, SurfaceFace.FLESH: SurfaceFace.GRAIN}


@dataclass(frozen=True, slots=True)
class DiePack:
    """The dies of a wallet and the name of the file of each, in the same order.

    ``roles`` are those whose lines are cut through; ``face`` is the face of the leather that lies up in the drawings;
    ``chords`` is how far chords in the files stray from the arcs they stand for, mm, None for true arcs.
    """

    pattern: Pattern
    dies: tuple[Die, ...]
    files: tuple[str, ...]
    limits: ShopLimits
    roles: tuple[Role, ...] = (Role.OPENING, Role.OUTLINE)
    face: CutFace = CutFace.FRONT
    chords: float | None = None

    @property
    def count_by_hand(self) -> int:
        """How many dies it takes where no leather is turned over."""
        return sum(die.hands for die in self.dies)

    def file(self, die: Die) -> str:
        """The file of a die."""
        return self.files[self.dies.index(die)]

    def fines(self, die: Die) -> tuple[Fine, ...]:
        """The finest of a die against the limits of the shop."""
        return fines(self.pattern, die, self.limits, self.roles)

    def side_up(self, cut: DieCut) -> str:
        """Which side of its leather lies up when a piece is cut with the die as it is drawn."""
        leather = self.pattern.design.leather(cut.piece.leather)
        is_back_up = (self.face is CutFace.BACK) is not cut.over
        if leather.made_of is not MadeOf.LEATHER:
            return "back up" if is_back_up else "front up"
        return f"{(_OTHER_SIDE[leather.face] if is_back_up else leather.face).value} side up"

    def size_words(self, die: Die) -> str:
        """The size of a die over all, in mm and in inches."""
        box = extent(die.figure.inks)
        return f"{mm(box.width)} x {mm(box.height)} mm = {inches(box.width)} x {inches(box.height)} in"

    def cut_words(self, die: Die) -> Iterator[str]:
        """A line for each piece of a die: how many of which leather, how thick, and which side lies up."""
        for cut in die.cuts:
            piece, leather = cut.piece, self.pattern.design.leather(cut.piece.leather)
            name = f" ({leather.name})" if leather.name else ""
            over = "; MIRROR IMAGE of what is drawn" if cut.over else ""
            yield (
                f"{piece.name}: {piece.quantity} of {leather.role}{name}, {mm(leather.t)} mm,"
                f" {self.side_up(cut)}{over}"
            )
