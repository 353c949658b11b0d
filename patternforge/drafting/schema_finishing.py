"""The part of the schema of ``pattern.json`` on skives and turned edges."""

from __future__ import annotations

from typing import Any

from patternforge.drafting.schema_words import (
    COUNT,
    LENGTH,
    SIZE,
    TEXT,
    choice,
    lines_of,
    maybe,
    one_of,
    record,
    said,
)
from patternforge.wallet.finishing import TurnedCorner, TurnedHoles
from patternforge.wallet.spec import Edge

__all__ = ["SKIVES", "TURNED_INPUTS", "skive_inputs", "turned_pieces"]

_BOX = {"type": "array", "items": LENGTH, "minItems": 4, "maxItems": 4}
_TO = said("thickness left, mm", SIZE)
_OVER = said("layers it is turned over", lines_of(TEXT))
_CORE = said("thickness of what else it is turned over, mm", SIZE)
_OVERLAP = said("how far it lies flat beyond the bend, mm", SIZE)

SKIVES = said(
    "where the piece is pared down",
    lines_of(
        record(box=said("[x0, y0, x1, y1], what lies beyond the outline left out of account, mm", _BOX), left=_TO)
    ),
)

TURNED_INPUTS = said(
    "edges turned in, in groups turned in alike",
    lines_of(
        record(
            edges=lines_of(choice(Edge)),
            overlap=_OVERLAP,
            over=_OVER,
            core=_CORE,
            corners=said("null: sharp corners mitred, rounded ones notched for pleats", maybe(choice(TurnedCorner))),
            corner_gap=said("between a mitre and the finished corner; null: 1.5 thicknesses, mm", maybe(SIZE)),
            corner_overlap=said("at rounded corners; null: the same, mm", maybe(SIZE)),
            notch_gap=said("between the tips of notches and the bend, mm", SIZE),
            holes=said("what of the stitch holes is made before turning", choice(TurnedHoles)),
        )
    ),
)


def skive_inputs(spot: dict[str, Any]) -> dict[str, Any]:
    """The skives a part asks for; ``spot`` is the schema of a place."""
    bands = record(along=lines_of(choice(Edge)), width=said("from the edge as cut, mm", SIZE), to=_TO)
    zones = record(
        fold=said("the fold, by number", COUNT), width=said("beyond the bend on either side, mm", SIZE), to=_TO
    )
    patches = record(at=spot, width=SIZE, height=SIZE, to=_TO)
    return said("where its pieces are pared down", lines_of(one_of(bands, zones, patches)))


def turned_pieces(path: dict[str, Any]) -> dict[str, Any]:
    """How the edges of a piece are turned in; ``path`` is the schema of a path."""
    edge = record(
        edge=said("of the assembly", choice(Edge)),
        over=_OVER,
        core=_CORE,
        thickness=said("of the leather there, as skived, mm", SIZE),
        inside_radius=SIZE,
        bend=said("length of the bend: pi * (inside radius + neutral * thickness), mm", SIZE),
        overlap=_OVERLAP,
        allowance=said("finished line to cut edge: bend + overlap - inside radius - thickness, mm", SIZE),
        holes=choice(TurnedHoles),
    )
    corner = record(
        x=said("where the finished edges would meet, mm", LENGTH),
        y=LENGTH,
        radius=said("of the finished corner, mm", SIZE),
        gap=said("mitre to finished corner, or tips of notches to finished edge, mm", SIZE),
        overlap=_OVERLAP,
        notches=said("0: mitred", COUNT),
        notch_width=said("along the cut edge, mm", SIZE),
    )
    fold = record(
        fold=said("the fold, by number", COUNT),
        excess=said("how much longer than needed what is turned in is there, mm", SIZE),
        notch=said("width of the notch that takes it out; 0: none, mm", SIZE),
    )
    turned = record(
        finished=said("the outline once all is turned in, on the flat piece", path),
        edges=lines_of(edge),
        corners=said("where two turned edges meet", lines_of(corner)),
        folds=said("folds that what is turned in goes across", lines_of(fold)),
    )
    return said("edges turned in; null: none", maybe(turned))
