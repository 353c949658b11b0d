"""Whether letters can be seen, with the wallet open and closed, and whether the ground behind them is even."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping

from patternforge.fit.bulk_map import ply_areas
from patternforge.fit.close import ClosedWallet
from patternforge.fit.findings import Finding, at_most
from patternforge.fit.folds import closed_spans
from patternforge.fit.layout import Layout, Ply, laid_path
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.regions import Region, patches, region
from patternforge.geometry.transform import Transform, flipped_x, identity, translation
from patternforge.leather.material import MadeOf
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import Side

__all__ = ["sight_findings"]

_COUNTS = 0.005  # share of a box below which neither cover nor edge is worth a word

_Named = tuple[str, Region]
_Spans = Mapping[int, tuple[float, float]]


def sight_findings(layout: Layout, closed: ClosedWallet, piece: Piece, letters: Inscription) -> Iterator[Finding]:
    """How much of a box lies hidden, laid open and, on an outer face, closed; how uneven its ground is."""
    where = f"{letters.name} on {piece.name}"
    box = laid_path(piece, letters.box)
    side = 1 if piece.showing is Side.INSIDE else -1
    before = [ply for ply in layout.plies if side * (ply.order - piece.level) > 0]
    yield _hidden("letters hidden, laid open", where, box, _areas(layout, before, identity()))
    if piece.showing is Side.OUTSIDE:
        home = _panel(layout, piece, letters)
        yield _hidden("letters hidden, closed", where, box, _lying_over(layout, closed, home))
    yield _ground(where, box, [ply for ply in layout.plies if ply.of and side * (ply.order - piece.level) <= 0])


def _areas(layout: Layout, plies: Iterable[Ply], onto: Transform) -> Iterator[_Named]:
    """What hides a face, brought to it: leather and items, but no clear sheets."""
    for ply in plies:
        if not (ply.of and layout.leathers[layout.pattern.piece(ply.of).leather].made_of is MadeOf.FILM):
            yield from ((ply.name, area.moved(onto)) for _, area in ply_areas(ply))


def _panel(layout: Layout, piece: Piece, letters: Inscription) -> int:
    x = piece.placement.to_assembly(letters.at).x
    panels = layout.pattern.panels
    return min(piece.placement.panels, key=lambda i: max(panels[i].x0 - x, x - panels[i].x1))


def _lying_over(layout: Layout, closed: ClosedWallet, home: int) -> Iterator[_Named]:
    """What lies over the outer face of a panel once all is closed, brought to where that panel lies open."""
    spans = closed_spans(layout, closed)
    for panel in _over(closed, home):
        onto = _closed_onto(layout, spans, panel).then(_closed_onto(layout, spans, home).inverse())
        ends = layout.pattern.panels[panel]
        strip = region(onto.path(rounded_rectangle(ends.x0, 0.0, ends.x1, layout.pattern.height, 0.0)))
        plies = [ply for ply in layout.plies if ply.of and panel in ply.panels]
        yield from ((name, area.common(strip)) for name, area in _areas(layout, plies, onto))


def _over(closed: ClosedWallet, home: int) -> list[int]:
    """The panels beyond the outer face of one in its stack; none over a panel that stands as a spine."""
    for stack in (closed.order.stack, *closed.order.open_groups):
        panels = [placed.panel for placed in stack]
        if home in panels:
            at = panels.index(home)
            return panels[at + 1 :] if stack[at].turned else panels[:at]
    return []


def _closed_onto(layout: Layout, spans: _Spans, panel: int) -> Transform:
    """Leads from a panel laid open to where it lies along the closed wallet."""
    left, right = spans[panel]
    begun = translation(-layout.pattern.panels[panel].x0, 0.0)
    turned = flipped_x() if right < left else identity()
    return begun.then(turned).then(translation(left, 0.0))


def _hidden(what: str, where: str, box: Path, areas: Iterable[_Named]) -> Finding:
    """The share of a box that any of the areas cover, in per cent."""
    own = region(box)
    common = ((name, own.common(area)) for name, area in areas)
    covers = [(name, area) for name, area in common if area.area > _COUNTS * own.area]
    seen = own
    for _, area in covers:
        seen = seen.without(area)
    names = ", ".join(dict.fromkeys(name for name, _ in covers))
    remedy = f"{names} lies over them: move the box" if covers else ""
    return Finding(what, where, 100 * (1 - seen.area / own.area), at_most(0.0, math.inf), remedy, "%")


def _ground(where: str, box: Path, plies: Iterable[Ply]) -> Finding:
    """The step in the leather that bears a box and lies behind it: the thickest stack less the thinnest."""
    own = region(box)
    parts = [(ply.name, thickness, area.common(own)) for ply in plies for thickness, area in ply_areas(ply)]
    partly = [part for part in parts if _COUNTS < part[2].area / own.area < 1 - _COUNTS]
    fields = patches([own, *(area for _, _, area in partly)], _COUNTS * own.area)
    heights = [sum(partly[i - 1][1] for i in field.covers if i) for field in fields]
    step = max(heights) - min(heights)
    names = ", ".join(dict.fromkeys(name for name, _, _ in partly))
    even = at_most(0.0, math.inf)
    remedy = "" if even.good.holds(step) else f"{names} ends there: letter it before it is glued, or move the box"
    return Finding("step in the ground behind letters", where, step, even, remedy)
