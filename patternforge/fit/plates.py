"""Where the panels of a closed wallet lie in its section: flat on each other, and round the corners of spines."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from patternforge.fit.close import ClosedWallet
from patternforge.fit.folds import closed_spans
from patternforge.fit.layout import Layout
from patternforge.geometry.point import Point
from patternforge.leather.closing import Spine

__all__ = ["Plate", "flat_plate", "plates", "with_spines"]

_RIGHT, _UP = Point(1.0, 0.0), Point(0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Plate:
    """A panel in a section: where its outer face has the place ``left`` of the assembly, which way it runs and looks.

    ``along`` points along the panel, ``up`` from its outer face inwards; both of length 1.
    """

    left: float
    origin: Point
    along: Point
    up: Point

    def point(self, x: float, level: float) -> Point:
        """The place of an assembly x at a level above the outer face."""
        return self.origin + self.along * (x - self.left) + self.up * level

    def moved(self, by: Point) -> Plate:
        """The plate shifted."""
        return Plate(self.left, self.origin + by, self.along, self.up)

    def bent(self, x0: float, x1: float, level: float, degrees: float) -> Plate:
        """The plate beyond a fold between two places: turned about the point over the first at that level."""
        cosine, sine = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        along = self.along * cosine + self.up * sine
        up = self.up * cosine - self.along * sine
        return Plate(x1, self.point(x0, level) - up * level, along, up)


def flat_plate(left: float, x: float, z: float, height: float, turned: bool) -> Plate:
    """A level panel ``height`` mm thick that stands on ``z``, its inside down if it is ``turned``."""
    if turned:
        return Plate(left, Point(x, z + height), -_RIGHT, -_UP)
    return Plate(left, Point(x, z), _RIGHT, _UP)


def plates(layout: Layout, closed: ClosedWallet, heights: Sequence[float]) -> dict[int, Plate]:
    """The panels of the closed stack from the bottom up, each as thick as its height says."""
    spans = closed_spans(layout, closed)
    found, z = {}, 0.0
    for placed in closed.order.stack:
        left, start = layout.pattern.panels[placed.panel].x0, spans[placed.panel][0]
        found[placed.panel] = flat_plate(left, start, z, heights[placed.panel], placed.turned)
        z += heights[placed.panel]
    return found


def with_spines(
    layout: Layout, closed: ClosedWallet, flat: Mapping[int, Plate], levels: Mapping[tuple[str, int], float]
) -> dict[int, Plate]:
    """The plates with those of square spines between their flanks, which stand as far apart as the spine is wide.

    ``levels`` are those of the outer face of each piece at the left tangent of each fold (by number) that it crosses
    where it is cut; a spine that nothing crosses there is left out.
    """
    found = dict(flat)
    for spine in closed.order.spines:
        if spine.folds[0] - 1 in found and all(
            _centre(layout, closed, levels, fold) is not None for fold in spine.folds
        ):
            found = _with_spine(layout, closed, found, levels, spine)
    return found


def _with_spine(
    layout: Layout,
    closed: ClosedWallet,
    flat: Mapping[int, Plate],
    levels: Mapping[tuple[str, int], float],
    spine: Spine,
) -> dict[int, Plate]:
    found = dict(flat)
    plate = found[spine.folds[0] - 1]
    for number in spine.folds:
        fold, centre = layout.pattern.folds[number - 1], _centre(layout, closed, levels, number) or 0.0
        plate = plate.bent(fold.x0, fold.x1, centre, fold.angle)
        if number in spine.panels:
            found[number] = plate
    right = spine.folds[-1]
    by = plate.point(plate.left, 0.0) - flat[right].point(plate.left, 0.0)
    # What hangs on the far side of the spine goes with it.
    return {panel: each.moved(by) if panel >= right else each for panel, each in found.items()}


def _centre(
    layout: Layout, closed: ClosedWallet, levels: Mapping[tuple[str, int], float], number: int
) -> float | None:
    """The level of the middle that the layers of a corner go round, by the innermost of them that is cut."""
    fold = layout.pattern.folds[number - 1]
    for bend in closed.bends[number - 1]:
        if (bend.piece, number) in levels:
            piece = layout.pattern.piece(bend.piece)
            leather, t = layout.leathers[piece.leather], layout.bent_thickness(piece, fold)
            raised = (1 - leather.neutral) * t if fold.angle > 0 else leather.neutral * t
            return levels[bend.piece, number] + raised + math.copysign(bend.fibre_radius, fold.angle)
    return None
