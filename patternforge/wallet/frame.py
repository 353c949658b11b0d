"""The frame of a pocket: its own axes on its panel, whichever way it opens.

In the frame a runs along the mouth and b from the floor towards the mouth; the panel spans 0..across by 0..along.
"""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, rotation, translation
from patternforge.wallet.body import Body
from patternforge.wallet.border import CCW, Border, border, opposite
from patternforge.wallet.spec import BankPart, Design, Edge, PocketPart

__all__ = ["Frame", "pocket_frame"]

_TURN = {Edge.TOP: 0, Edge.LEFT: 90, Edge.BOTTOM: 180, Edge.RIGHT: 270}


@dataclass(frozen=True, slots=True)
class Frame:
    """A pocket's axes and its four borders; ``onto`` leads from the frame to the assembly."""

    onto: Transform
    across: float
    along: float
    floor: Border
    right: Border
    mouth: Border
    left: Border

    @property
    def stitch_left(self) -> float:
        """a of the left stitch line."""
        return self.left.stitch

    @property
    def stitch_right(self) -> float:
        """a of the right stitch line."""
        return self.across - self.right.stitch


def pocket_frame(design: Design, body: Body, part: BankPart | PocketPart) -> Frame:
    """The frame of a bank or pocket on its panel."""
    panel = body.panels[part.panel]
    width, height = panel.x1 - panel.x0, body.height
    borders = {edge: border(design, part, edge) for edge in Edge}
    floor = CCW.index(opposite(part.opening))
    sides = [borders[CCW[(floor + k) % 4]] for k in range(4)]
    sideways = part.opening in (Edge.LEFT, Edge.RIGHT)
    across, along = (height, width) if sideways else (width, height)
    return Frame(_onto(part.opening, panel.x0, width, height), across, along, *sides)


def _onto(opening: Edge, x0: float, width: float, height: float) -> Transform:
    turn = rotation(_TURN[opening])
    corner = {
        Edge.TOP: Point(x0, 0),
        Edge.LEFT: Point(x0 + width, 0),
        Edge.BOTTOM: Point(x0 + width, height),
        Edge.RIGHT: Point(x0, height),
    }[opening]
    return turn.then(translation(corner.x, corner.y))
