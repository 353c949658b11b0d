"""Which piece bears the letters that a design asks for, and which way up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from patternforge.errors import DraftError
from patternforge.wallet.blank import PartBlanks
from patternforge.wallet.body import Body, closed
from patternforge.wallet.fittings import showing_at
from patternforge.wallet.marked import Inscription
from patternforge.wallet.spec import Design, Edge, Initials, Side
from patternforge.wallet.spots import spot_point

__all__ = ["inscribed_parts", "upright"]

_DEGREES: Mapping[Edge, float] = MappingProxyType(
    {Edge.RIGHT: 0.0, Edge.TOP: 90.0, Edge.LEFT: 180.0, Edge.BOTTOM: 270.0}
)


def inscribed_parts(design: Design, body: Body, parts: Sequence[PartBlanks]) -> list[PartBlanks]:
    """The parts with every declared box of letters on the piece that shows at its middle.

    DraftError when that lies off the part.
    """
    made = dict(zip((part.name for part in design.parts), parts, strict=True))
    for initials in design.initials:
        made[initials.part] = _inscribed(design, body, initials, made[initials.part])
    return list(made.values())


def _inscribed(design: Design, body: Body, initials: Initials, made: PartBlanks) -> PartBlanks:
    middle = spot_point(body, initials.spot)
    index = showing_at(made.blanks, initials.spot.panel, middle)
    if index is None:
        what = f"initials '{initials.name}' (line {initials.line}): the middle of their box lies off"
        raise DraftError(f"{design.file}: {what} '{initials.part}'")
    blank = made.blanks[index]
    up = initials.up or upright(design, initials.spot.panel, blank.showing)
    inscription = Inscription(
        name=initials.name,
        text=initials.text,
        at=middle,
        up=_DEGREES[up],
        width=initials.width,
        height=initials.height,
        clear=initials.clear,
        stamp=initials.stamp,
    )
    inscribed = replace(blank, inscriptions=(*blank.inscriptions, inscription))
    return replace(made, blanks=(*made.blanks[:index], inscribed, *made.blanks[index + 1 :]))


def upright(design: Design, panel: int, showing: Side) -> Edge:
    """The edge of the laid-open body that the tops of upright letters on a panel point to.

    A row of panels beside each other stands as it lies open. A turned row hangs, closed, from the fold closed last,
    as a flap or a cover does: the panel below it stands as drawn, and so do those that close the same way up.
    """
    if not design.body.turned:
        return Edge.TOP
    ways = {placed.panel: placed.turned for placed in closed(design).stack}
    below = design.body.closing[-1] if design.body.closing else 0
    hangs = showing is Side.OUTSIDE and panel in ways and below in ways
    return Edge.RIGHT if hangs and ways[panel] is not ways[below] else Edge.LEFT
