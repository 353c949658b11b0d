"""What is done to a flat piece before it is sewn: where it is skived, which edges it has turned in."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point
from patternforge.wallet.finishing import TurnedHoles
from patternforge.wallet.words import Edge, EdgeRole

__all__ = ["CornerTurn", "Skive", "TurnIn", "TurnedEdge"]


@dataclass(frozen=True, slots=True)
class Skive:
    """A box of a piece, in its own frame, pared down to ``left`` mm; ``lines`` show where the paring begins."""

    box: Bounds
    left: float
    lines: tuple[Path, ...]

    def holds(self, point: Point) -> bool:
        """Whether a point of the piece lies in it."""
        return self.box.x0 <= point.x <= self.box.x1 and self.box.y0 <= point.y <= self.box.y1


@dataclass(frozen=True, slots=True)
class TurnedEdge:
    """An edge turned in: over which parts and how thick a core, its own thickness, its bend, its flat overlap.

    ``edge`` is that of the assembly, ``drawn`` the side of the piece as drawn.
    ``radius`` is the inside radius of the bend and ``bend`` its flat length from tangent to tangent;
    ``allowance``: how far beyond the finished line the piece is cut; ``depth``: how far inside the finished edge the
    turned-in leather comes to lie. All mm.
    """

    edge: Edge
    drawn: Edge
    over: tuple[str, ...]
    core: float
    thickness: float
    radius: float
    bend: float
    overlap: float
    holes: TurnedHoles = TurnedHoles.PIERCED

    @property
    def allowance(self) -> float:
        """Finished line to cut edge, mm."""
        return self.bend + self.overlap - self.reach

    @property
    def depth(self) -> float:
        """Finished edge to the turned-in leather's own edge, mm."""
        return self.reach + self.overlap

    @property
    def reach(self) -> float:
        """Finished edge to where the bend ends, mm."""
        return self.radius + self.thickness


@dataclass(frozen=True, slots=True)
class CornerTurn:
    """How the allowance is cut at a corner where two turned edges meet, in the frame of the piece.

    ``at`` is where the finished edges would meet, ``radius`` the rounding there. A mitre (``notches`` 0) is cut
    straight, ``gap`` mm off the finished corner. Pleats have ``notches`` V notches, each ``notch`` mm wide along the
    cut edge, their tips ``gap`` mm off the finished edge; ``overlap`` lies flat at this corner. All mm.
    """

    at: Point
    radius: float
    gap: float
    overlap: float
    notches: int = 0
    notch: float = 0.0


@dataclass(frozen=True, slots=True)
class TurnIn:
    """The outline of a piece once its turned edges are turned in, the role of its edges, and how each is turned.

    ``lines``: the finished edges drawn on the flat piece; ``gathers``: by fold number, how much longer than needed
    the turned-in leather is where it crosses a fold, and how wide a notch takes that out, mm.
    """

    finished: Path
    edges: tuple[EdgeRole, ...]
    turned: tuple[TurnedEdge, ...]
    corners: tuple[CornerTurn, ...]
    lines: tuple[Path, ...]
    gathers: tuple[tuple[int, float, float], ...] = ()

    def over(self, point: Point) -> TurnedEdge | None:
        """The turned edge, the nearest of several, whose leather is turned in over a point of the finished piece.

        Mitres and notches are taken to close, so that the leather lies over a point but once.
        """
        reached = [edge for edge in self.turned if 0 <= self.off(point, edge.drawn) <= edge.depth]
        return min(reached, key=lambda edge: self.off(point, edge.drawn), default=None)

    def off(self, point: Point, drawn: Edge) -> float:
        """How far inside a side of the finished outline's bounds a point of the piece lies, mm."""
        box = self.finished.bounds
        return {
            Edge.LEFT: point.x - box.x0,
            Edge.RIGHT: box.x1 - point.x,
            Edge.BOTTOM: point.y - box.y0,
            Edge.TOP: box.y1 - point.y,
        }[drawn]

    def is_in_pleats(self, point: Point) -> bool:
        """Whether a point of the piece lies in the square of a corner that is notched for pleats."""
        return any(
            max(abs(point.x - corner.at.x), abs(point.y - corner.at.y)) < corner.radius
            for corner in self.corners
            if corner.notches
        )
