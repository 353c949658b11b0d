"""Borders: what a part meets at each edge of its panel, known from the design alone."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.wallet.spec import BankPart, Design, Edge, LayerPart, Part, PocketPart, SeamSpec

__all__ = ["CCW", "Border", "border", "host", "inner_margin", "inner_margin_name", "opposite", "seam_along"]

CCW = (Edge.BOTTOM, Edge.RIGHT, Edge.TOP, Edge.LEFT)
"""The edges in counter-clockwise order."""


@dataclass(frozen=True, slots=True)
class Border:
    """One side of a pocket's room: the panel edge it faces, how far it stays off it, the body seam along it if any.

    ``margin`` is the distance of the stitch line from the pocket's own edge; ``trim`` what is cut off after gluing.
    ``inset_name`` and ``margin_name`` are the names of the sizes these are.
    """

    edge: Edge
    inset: float
    seam: SeamSpec | None
    margin: float
    trim: float
    inset_name: str = ""
    margin_name: str = ""

    @property
    def stitch(self) -> float:
        """Stitch line from the panel's edge or fold tangent, mm."""
        return self.inset + self.margin


def opposite(edge: Edge) -> Edge:
    """The edge facing ``edge``.

    >>> opposite(Edge.TOP).value
    'bottom'
    """
    return CCW[(CCW.index(edge) + 2) % 4]


def seam_along(design: Design, edge: Edge, part: Part) -> SeamSpec | None:
    """The declared seam along this edge of the body, over a panel of the part, that takes the part with it."""
    for seam in design.seams:
        taken = part.name in seam.through or not (seam.through or part.name in design.glued)
        if taken and not seam.of and edge in seam.along and any(seam.covers(panel) for panel in part.panels):
            return seam
    return None


def border(design: Design, part: BankPart | PocketPart, edge: Edge) -> Border:
    """How the part borders on that edge of its panel."""
    last = len(design.body.panels) - 1
    trim = dict(part.trim).get(edge, 0.0)
    fold = {Edge.LEFT: part.panel - 1, Edge.RIGHT: part.panel}.get(edge)
    if fold is not None and 0 <= fold < last:
        relief, name = design.body.folds[fold].relief, f"fold {fold + 1}.relief"
        return Border(edge, relief, None, inner_margin(design), trim, name, inner_margin_name(design))
    seam = seam_along(design, edge, part)
    name = f"seam {seam.name}.margin" if seam else inner_margin_name(design)
    return Border(edge, 0.0, seam, seam.margin if seam else inner_margin(design), trim, "", name)


def inner_margin(design: Design) -> float:
    """Margin of the seams a pocket brings with it: that of the first declared seam."""
    return design.seams[0].margin if design.seams else SeamSpec("", ()).margin


def inner_margin_name(design: Design) -> str:
    """The name of the size that ``inner_margin`` is."""
    return f"seam {design.seams[0].name}.margin" if design.seams else "seam.margin"


def host(design: Design, part: BankPart | PocketPart) -> LayerPart | None:
    """The layer a pocket is sewn to: the next layer behind it that covers its panel and is sewn itself."""
    at = design.parts.index(part)
    behind = reversed(design.parts[:at]) if part.facing.value == "inside" else iter(design.parts[at + 1 :])
    layers = (p for p in behind if isinstance(p, LayerPart) and part.panel in p.panels and p.name not in design.glued)
    return next(layers, None)
