"""What a design says of a gusset."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.wallet.features import Held, Opening
from patternforge.wallet.words import Edge, Lying, Side

__all__ = ["GussetPart"]


@dataclass(frozen=True, slots=True)
class GussetPart:
    """A strip on panel ``panel`` that stands between two walls, held by the two seams it ``joins``. Lengths in mm.

    Without ``pleats`` it is a channel that keeps the walls ``depth`` apart, its web ``turn`` inside the stitch line
    (None: as near as the bend lets it). With pleats it is a bellows of leaves ``leaf`` deep. It ends ``short`` of the
    walls' edges. ``holds`` lies between the walls with ``ease`` to spare along the mouth, goes in over ``opening``.
    """

    name: str
    leather: str
    panel: int
    joins: tuple[str, str]
    pleats: int = 0
    depth: float = 0.0
    leaf: float = 0.0
    turn: float | None = None
    short: float = 0.0
    holds: tuple[Held, ...] = ()
    opening: Edge = Edge.TOP
    lying: Lying = Lying.LYING
    ease: float = 2.5
    showing: Side = Side.OUTSIDE
    line: int = 0

    @property
    def panels(self) -> range:
        """The panel its walls close on."""
        return range(self.panel, self.panel + 1)

    @property
    def openings(self) -> tuple[Opening, ...]:
        """A strip is not opened."""
        return ()
