"""The parts of the schema of ``pattern.json`` that tell of wallets folded from one piece."""

from __future__ import annotations

from typing import Any

from patternforge.drafting.schema_words import (
    ANGLE,
    COUNT,
    FLAG,
    LENGTH,
    NUMBER,
    SIZE,
    TEXT,
    by_edge,
    choice,
    lines_of,
    maybe,
    record,
    said,
)
from patternforge.wallet.folded.spec import TabShape
from patternforge.wallet.spec import Edge, Lying, Side

__all__ = ["FOLDED", "FOLDED_INPUTS"]


def _row(each: dict[str, Any], count: int) -> dict[str, Any]:
    return {"type": "array", "items": each, "minItems": count, "maxItems": count}


_FIT = maybe(said("null: as large as what lies on it needs, mm", SIZE))
_PLACE = said("how far its middle lies from these edges, mm; else in the middle", by_edge(SIZE))
_OPENING = record(
    **{
        "name": TEXT,
        "width": SIZE,
        "height": SIZE,
        "corner": said("radius of its corners, mm", SIZE),
        "border": said("leather that must stay round it, mm", SIZE),
        "from": _PLACE,
    }
)
_HINGE_ASKED = record(
    on=said("the face it hangs on", TEXT),
    edge=said("the edge of that face", choice(Edge)),
    reach=_FIT,
    angle=ANGLE,
    inset=said("how far the hinge stays short of the ends of that edge, mm", by_edge(SIZE)),
)
_FACE_ASKED = record(
    name=TEXT,
    hinge=said("null for the base", maybe(_HINGE_ASKED)),
    width=_FIT,
    height=_FIT,
    corner=said("radius of the corners between free edges, mm", SIZE),
    corners={"type": "object", "additionalProperties": SIZE, "maxProperties": 4},
    shapes=said("edges that slant or bow", by_edge(record(bow=LENGTH, slant=LENGTH))),
    thumb=maybe(record(width=SIZE, depth=SIZE, edge=choice(Edge))),
    openings=lines_of(_OPENING),
)
_ROOM_ASKED = record(
    name=TEXT,
    between=said("the face the items lie on, and the one over them", _row(TEXT, 2)),
    content=TEXT,
    count=COUNT,
    lying=choice(Lying),
    opening=said("the edge of the first face the items go in over", choice(Edge)),
)
_TAB_ASKED = record(
    **{
        "name": TEXT,
        "face": TEXT,
        "edge": choice(Edge),
        "width": SIZE,
        "length": SIZE,
        "into": said("the face it is tucked into", TEXT),
        "shape": choice(TabShape),
        "slit": said("length of its slit, mm; null: the tab's width and one thickness", maybe(SIZE)),
        "from": _PLACE,
    }
)
FOLDED_INPUTS = said(
    "a wallet folded from one piece; null for one of panels and parts",
    maybe(
        record(
            leather=TEXT,
            faces=said("the base first, then each flap after the face it hangs on", lines_of(_FACE_ASKED)),
            closing=said("flaps by name, first closed first", lines_of(TEXT)),
            rooms=lines_of(_ROOM_ASKED),
            tabs=lines_of(_TAB_ASKED),
            relief=said("radius of the hole cut where the outline turns in at a fold or a tab, mm", SIZE),
            ease=said("what a face is larger than the items on it, mm", SIZE),
            showing=choice(Side),
        )
    ),
)

_SUM = said(
    "a size and the terms it is the sum of, mm",
    record(value=LENGTH, terms=lines_of(record(label=TEXT, value=LENGTH))),
)
_POINT = _row(NUMBER, 2)
_LINE = _row(_POINT, 2)
_FACE = record(
    name=TEXT,
    outline=said(
        "closed, counter-clockwise, [x, y, bulge] in the blank, folds as straight edges", lines_of(_row(NUMBER, 3))
    ),
    width=_SUM,
    height=_SUM,
    closed=said("from the blank to the closed plan: x' = a x + c y + e, y' = b x + d y + f", _row(NUMBER, 6)),
    level=said("place in the closed stack, from the lowest up, the base inside up", COUNT),
    turned=said("true when its inside looks down", FLAG),
)
_HINGE = record(
    number=said("in the order of closing, from 1", COUNT),
    face=said("the flap", TEXT),
    on=said("the face it hangs on", TEXT),
    angle=ANGLE,
    gap=said("what lies between its flanks once closed, mm", _SUM),
    inside_radius=SIZE,
    flat_length=said("from one tangent to the other, mm", SIZE),
    near=said("tangent of the face it hangs on, in the blank", _LINE),
    far=said("tangent of the flap, in the blank", _LINE),
)
_TAB = record(
    name=TEXT,
    face=TEXT,
    into=TEXT,
    width=SIZE,
    length=SIZE,
    root=said("the line it stands on, in the blank", _LINE),
    slit=said("middle line of its slit, in the blank", _LINE),
    opening=said("place of the slit among the openings of the piece, from 0", COUNT),
)
_ROOM = record(
    name=TEXT,
    between=_row(TEXT, 2),
    content=TEXT,
    count=COUNT,
    box=said("corners of an item pushed home, on the first face, in the blank", _row(_POINT, 4)),
    opening=said("the way out, a unit vector in the blank", _POINT),
)
FOLDED = said(
    "a wallet folded from one piece, on the blank laid open and seen from the inside, the base's lower left at the"
    " origin; null for one of panels and parts",
    maybe(
        record(
            faces=lines_of(_FACE),
            hinges=said("in the order of closing", lines_of(_HINGE)),
            tabs=lines_of(_TAB),
            rooms=lines_of(_ROOM),
            closed=said("[x0, y0, x1, y1] of the closed wallet, bends included, mm", _row(LENGTH, 4)),
        )
    ),
)
