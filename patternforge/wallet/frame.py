"""The frame of a pocket: its own axes on its panel, whichever way it opens.

In the frame a runs along the mouth and b from the floor towards the mouth; the panel spans 0..across by 0..along.
"""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, rotation, translation
from patternforge.wallet.body import Body
from patternforge.wallet.spec import BankPart, Design, Edge, LayerPart, Part, PocketPart, SeamSpec

__all__ = ["Border", "Frame", "opposite", "pocket_frame", "seam_along"]

_TURN = {Edge.TOP: 0, Edge.LEFT: 90, Edge.BOTTOM: 180, Edge.RIGHT: 270}
_CCW = (Edge.BOTTOM, Edge.RIGHT, Edge.TOP, Edge.LEFT)


@dataclass(frozen=True, slots=True)
class Border:
    """One side of a pocket's room: the panel edge it faces, how far it stays off it, the body seam along it if any.

    ``margin`` is the distance of the stitch line from the pocket's own edge; ``trim`` what is cut off after gluing.
    """

    edge: Edge
    inset: float
    seam: SeamSpec | None
    margin: float
    trim: float

    @property
    def stitch(self) -> float:
        """Stitch line from the panel's edge or fold tangent, mm."""
        return self.inset + self.margin


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


def opposite(edge: Edge) -> Edge:
    """The edge facing ``edge``.

    >>> opposite(Edge.TOP).value
    'bottom'
    """
    return _CCW[(_CCW.index(edge) + 2) % 4]


def seam_along(design: Design, edge: Edge, part: Part) -> SeamSpec | None:
    """The declared seam along this edge of the body, over a panel of the part, that takes the part with it."""
    panels = range(part.first, part.last + 1) if isinstance(part, LayerPart) else (part.panel,)
    for seam in design.seams:
        taken = not seam.through or part.name in seam.through
        if taken and not seam.of and edge in seam.along and any(seam.covers(panel) for panel in panels):
            return seam
    return None


def pocket_frame(design: Design, body: Body, part: BankPart | PocketPart) -> Frame:
    """The frame of a bank or pocket on its panel."""
    panel = body.panels[part.panel]
    width, height = panel.x1 - panel.x0, body.height
    borders = {edge: border(design, part, edge) for edge in Edge}
    floor = _CCW.index(opposite(part.opening))
    sides = [borders[_CCW[(floor + k) % 4]] for k in range(4)]
    sideways = part.opening in (Edge.LEFT, Edge.RIGHT)
    across, along = (height, width) if sideways else (width, height)
    return Frame(_onto(part.opening, panel.x0, width, height), across, along, *sides)


def border(design: Design, part: BankPart | PocketPart, edge: Edge) -> Border:
    """How the part borders on that edge of its panel."""
    last = len(design.body.panels) - 1
    trim = dict(part.trim).get(edge, 0.0)
    fold = {Edge.LEFT: part.panel - 1, Edge.RIGHT: part.panel}.get(edge)
    if fold is not None and 0 <= fold < last:
        return Border(edge, design.body.folds[fold].relief, None, inner_margin(design), trim)
    seam = seam_along(design, edge, part)
    return Border(edge, 0.0, seam, seam.margin if seam else inner_margin(design), trim)


def inner_margin(design: Design) -> float:
    """Margin of the seams a pocket brings with it: that of the first declared seam."""
    return design.seams[0].margin if design.seams else SeamSpec("", ()).margin


def host(design: Design, part: BankPart | PocketPart) -> LayerPart | None:
    """The layer a pocket is sewn to: the next layer behind it that covers its panel."""
    at = design.parts.index(part)
    behind = reversed(design.parts[:at]) if part.facing.value == "inside" else iter(design.parts[at + 1 :])
    layers = (p for p in behind if isinstance(p, LayerPart) and p.first <= part.panel <= p.last)
    return next(layers, None)


def _onto(opening: Edge, x0: float, width: float, height: float) -> Transform:
    turn = rotation(_TURN[opening])
    corner = {
        Edge.TOP: Point(x0, 0),
        Edge.LEFT: Point(x0 + width, 0),
        Edge.BOTTOM: Point(x0 + width, height),
        Edge.RIGHT: Point(x0, height),
    }[opening]
    return turn.then(translation(corner.x, corner.y))
