"""An edge turned in: folded by 180 degrees over what lies inside it and stuck down.

The leather runs flat to a first tangent, half a circle round what it encloses, and flat again over the overlap. Its
outer face stands an inside radius and a thickness beyond both tangents: that is the finished edge. Flat lengths are
those of the neutral fibre, as in ``leather.fold``.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from patternforge.leather.fold import arc_length, inside_radius

__all__ = ["Turn", "turn_over"]


@dataclass(frozen=True, slots=True)
class Turn:
    """The bend of a turned edge: inside radius and own thickness, mm, and the neutral fibre in thicknesses."""

    radius: float
    thickness: float
    neutral: float

    @property
    def arc(self) -> float:
        """Flat length of the bend, tangent to tangent, mm: pi * (radius + neutral * thickness)."""
        return arc_length(pi, self.radius, self.thickness, self.neutral)

    @property
    def reach(self) -> float:
        """How far the finished edge stands beyond the tangents, mm."""
        return self.radius + self.thickness

    @property
    def bare(self) -> float:
        """How far beyond the finished line the bend reaches on the flat piece, mm: there the overlap begins."""
        return self.arc - self.reach

    def allowance(self, overlap: float) -> float:
        """What a piece is cut larger than finished, mm, for a flat overlap of ``overlap`` mm beyond the bend.

        >>> round(Turn(radius=0.2, thickness=0.4, neutral=0.5).allowance(8.0), 4)
        8.6566
        """
        return self.bare + overlap

    def depth(self, beyond: float) -> float:
        """How far inside the finished edge comes to lie what is cut ``beyond`` mm outside its line.

        True from ``bare`` mm beyond on; nearer to the line the leather is still in the bend.
        """
        return beyond + self.reach - self.bare

    def beyond(self, depth: float) -> float:
        """Where on the flat piece lies what comes to lie ``depth`` mm inside the finished edge; undoes ``depth``."""
        return depth + self.bare - self.reach


def turn_over(gap: float, thickness: float, min_radius: float, neutral: float) -> Turn:
    """The turn round ``gap`` mm of enclosed leather or core, 0 when the edge is turned onto itself.

    ``thickness`` is the leather's own at the edge, mm, as skived; no turn is sharper than ``min_radius`` thicknesses.
    DraftError for a negative size.

    >>> turn_over(gap=0.3, thickness=0.4, min_radius=0.5, neutral=0.5).radius
    0.2
    """
    return Turn(inside_radius(gap, thickness, min_radius), thickness, neutral)
