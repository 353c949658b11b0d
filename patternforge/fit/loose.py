"""Whether what lies loose on a panel keeps off its bends and inside the edges."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.fit.findings import Finding, at_least
from patternforge.fit.layout import Layout
from patternforge.wallet.pattern import Loose

__all__ = ["loose_findings"]

_OFF_BEND, _INSIDE = 1.0, 0.5  # mm; common practice, no source


def loose_findings(layout: Layout) -> Iterator[Finding]:
    """The room of everything that lies in no pocket."""
    for loose in layout.pattern.loose:
        yield from _rooms(layout, loose)


def _rooms(layout: Layout, loose: Loose) -> Iterator[Finding]:
    """How far what lies in no pocket keeps off the bends beside its panel and off the body's edges."""
    panel, last = layout.pattern.panels[loose.panel], len(layout.pattern.panels) - 1
    x0, y0, x1, y1 = loose.box
    where = f"{loose.part} on {panel.name}"
    bends = [room for room, at in ((x0 - panel.x0, 0), (panel.x1 - x1, last)) if loose.panel != at]
    if bends:
        remedy = "" if min(bends) >= _OFF_BEND else "the item reaches into the bend: move it, or widen the panel"
        yield Finding("item clear of the fold", where, min(bends), at_least(_OFF_BEND, 0.0), remedy)
    edges = [room for room, at in ((x0 - panel.x0, 0), (panel.x1 - x1, last)) if loose.panel == at]
    room = min(*edges, y0, layout.pattern.height - y1)
    remedy = "" if room >= _INSIDE else "the item would stand out of the closed wallet: move it, or give it more room"
    yield Finding("item inside the edges", where, room, at_least(_INSIDE, 0.0), remedy)
