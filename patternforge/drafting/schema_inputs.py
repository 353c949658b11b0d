"""The part of the schema of ``pattern.json`` that says what a design asked for."""

from __future__ import annotations

from typing import Any

from patternforge.drafting.schema_finishing import TURNED_INPUTS, skive_inputs
from patternforge.drafting.schema_folded import FOLDED_INPUTS
from patternforge.drafting.schema_materials import CONTENT, LEATHER, PARAMETER
from patternforge.drafting.schema_words import (
    ANGLE,
    COUNT,
    FLAG,
    LENGTH,
    NUMBER,
    SHARE,
    SIZE,
    TEXT,
    by_edge,
    choice,
    lines_of,
    maybe,
    one_of,
    record,
    said,
)
from patternforge.leather.hardware import Setting
from patternforge.wallet.spec import (
    Across,
    BankShape,
    CornerStyle,
    Edge,
    Fastening,
    HoleShape,
    Lying,
    Mode,
    MouthShape,
    NotchShape,
    Side,
)

__all__ = ["INPUTS", "TRIM"]

_BY_EDGE = by_edge(SIZE)
TRIM = said("what is cut off after gluing, mm, by edge of the assembly", _BY_EDGE)
_EXACT = said("sizes that may not move to whole stitches", lines_of(TEXT))
_EDGE = choice(Edge)

_SHAPES = said(
    "sides that leave the straight, by edge of the assembly",
    by_edge(
        record(
            bow=said("rise of the arc outwards, negative inwards, mm", LENGTH),
            slant=said("its upper or right end moves in by this, negative its lower or left end, mm", LENGTH),
        )
    ),
)
_CORNERS = {"type": "object", "additionalProperties": SIZE, "maxProperties": 4}
_FIT = maybe(said("null: as large as its contents need, mm", SIZE))
_BODY = record(
    panels=lines_of(record(name=TEXT, width=_FIT)),
    folds=lines_of(
        record(
            angle=ANGLE,
            compensation=NUMBER,
            relief=SIZE,
            around=said("thickness of what it goes round, a ring or a bar, mm", SIZE),
            core=said("the content it goes round; empty: none, or one without a name", TEXT),
        )
    ),
    closing=said("folds by number from 1, first closed first", lines_of(COUNT)),
    height=_FIT,
    corner=said("radius of the outer corners, mm", SIZE),
    turned=said("true when the folds lie level", FLAG),
    clearance=said("what a panel folded in is shorter than the one that covers it, mm", LENGTH),
    headroom=LENGTH,
    corners=said("radius of single corners, mm, by name such as bottom left", _CORNERS),
    shapes=_SHAPES,
)
_SPOT = said(
    "where its middle lies: the panel, and mm from its edges or fold tangents; else in the panel's middle",
    record(
        **{
            "panel": TEXT,
            "from": _BY_EDGE,
            "fold": said("the fold in whose bend it lies, by number, right of that panel; null: none", maybe(COUNT)),
        }
    ),
)
_OPENING = record(
    name=TEXT,
    at=_SPOT,
    width=SIZE,
    height=SIZE,
    corner=said("radius of its corners, mm", SIZE),
    border=said("leather that must stay round it, mm", SIZE),
    film=maybe(
        record(
            leather=TEXT,
            overlap=said("how far it reaches beyond the opening, mm", SIZE),
            margin=said("opening to stitch line, mm", SIZE),
        )
    ),
)
_OPENINGS = said("cut into its front piece", lines_of(_OPENING))
_MOUTH = record(shape=choice(MouthShape), depth=SIZE)
_THUMB = maybe(
    record(
        width=SIZE, depth=SIZE, panel=said("the panel of a layer it is cut on; null: each one it covers", maybe(TEXT))
    )
)
_NOTCH = record(
    name=TEXT,
    edge=_EDGE,
    at=_SPOT,
    width=said("along the edge, mm", SIZE),
    depth=said("into the leather, mm", SIZE),
    shape=choice(NotchShape),
)
_SKIVES = skive_inputs(_SPOT)
_INSETS = by_edge(said("negative: outside, as a copy may be, mm", LENGTH))
_LAYER = record(
    kind={"const": "layer"},
    name=TEXT,
    leather=TEXT,
    first=said("leftmost panel it covers", TEXT),
    last=said("rightmost panel it covers", TEXT),
    drop=said("how far its opening edge is lowered, as drafted, mm", LENGTH),
    opening=_EDGE,
    holds=lines_of(record(content=TEXT, count=COUNT)),
    showing=maybe(choice(Side)),
    notch=said("depth of the relief notches at folds, mm", SIZE),
    trim=TRIM,
    exact=_EXACT,
    inset=said("how far edges lie inside the body's or a panel's end, mm, by edge of the assembly", _INSETS),
    corner=said("radius of the corners an inset gives it; null: none of its own, mm", maybe(SIZE)),
    shapes=_SHAPES,
    openings=_OPENINGS,
    lying=choice(Lying),
    mouth=said("its opening edge", _MOUTH),
    thumb=_THUMB,
    notches=said("cut into its straight edges", lines_of(_NOTCH)),
    follows=said("the layer whose finished outline it copies; null: none", maybe(TEXT)),
    inside=said("how far inside that outline it ends, negative outside, mm", LENGTH),
    skives=_SKIVES,
    turned=TURNED_INPUTS,
    fastened=said("what holds it: seams, or glue alone", choice(Fastening)),
)
_OF_POCKETS: dict[str, Any] = {
    "name": TEXT,
    "leather": TEXT,
    "panel": TEXT,
    "content": TEXT,
    "lying": choice(Lying),
    "opening": _EDGE,
    "ease": LENGTH,
    "facing": choice(Side),
    "mouth": _MOUTH,
    "thumb": _THUMB,
    "trim": TRIM,
    "exact": _EXACT,
    "sewn_to": said("layers its own seams go through besides the one next to it", lines_of(TEXT)),
    "openings": _OPENINGS,
    "skives": _SKIVES,
}
_BANK = record(
    kind={"const": "bank"},
    slots=COUNT,
    step=said("rise from slot to slot, as drafted, mm", LENGTH),
    show=said("how much of an item stands out of its mouth, as drafted, mm", LENGTH),
    per_slot=COUNT,
    shape=choice(BankShape),
    columns=COUNT,
    overlap=said("how much deeper than the step a tab reaches, as drafted, mm", LENGTH),
    **_OF_POCKETS,
)
_POCKET = record(
    kind={"const": "pocket"},
    depth=said("mouth to the opposite seam, as drafted, mm", LENGTH),
    count=COUNT,
    **_OF_POCKETS,
)
_LOOSE = record(
    kind={"const": "loose"},
    name=TEXT,
    panel=TEXT,
    content=TEXT,
    spot=_SPOT,
    count=said("how many lie over each other", COUNT),
    lying=choice(Lying),
)
_GUSSET = record(
    kind={"const": "gusset"},
    name=TEXT,
    leather=TEXT,
    panel=said("the panel its walls close on", TEXT),
    joins=said("the seams along its long edges", {**lines_of(TEXT), "minItems": 2, "maxItems": 2}),
    pleats=said("folds inwards of a bellows; 0: a channel", COUNT),
    depth=said("what a channel keeps its walls apart; 0 for a bellows, mm", SIZE),
    leaf=said("of a bellows, from the edge to the tangent of a fold inwards; 0 for a channel, mm", SIZE),
    turn=said("stitch line to the outside of a channel's web; null: as near as the bend lets it, mm", maybe(SIZE)),
    short=said("how far its ends stop short of the walls' edges, mm", SIZE),
    holds=lines_of(record(content=TEXT, count=COUNT)),
    opening=_EDGE,
    lying=choice(Lying),
    ease=said("room along the mouth beyond what it holds, mm", SIZE),
    showing=choice(Side),
)
_HOLE = record(
    shape=choice(HoleShape),
    diameter=said("of a round hole, mm", SIZE),
    length=said("of a slit, mm", SIZE),
    width=said("of a slit, mm", SIZE),
    slant=said("of a slit against the direction of sewing, seen from the outside", ANGLE),
)
_STITCHING = record(
    pitch=said("centre to centre, mm", SIZE),
    mode=choice(Mode),
    hole=_HOLE,
    tails=said("thread left at the ends of a seam in all, mm", SIZE),
    thread=said("thickness of the thread, mm", SIZE),
)
_SEAM = record(
    name=TEXT,
    along=lines_of(_EDGE),
    margin=said("stitch line to edge, mm", SIZE),
    end=said("last hole to an open edge; null: as far as the margin, mm", maybe(SIZE)),
    corners=choice(CornerStyle),
    across=said("what it does at folds", choice(Across)),
    stop=said("how far it stops short of a fold tangent; null: in line with the pockets' seams, mm", maybe(SIZE)),
    spread=SIZE,
    through=said("parts it goes through; none named: every one it meets", lines_of(TEXT)),
    stitching=_STITCHING,
    over=said("first and last panel it runs over; null: all of them", maybe(lines_of(TEXT))),
    of=said("the layer whose own edges it follows; null: the body's", maybe(TEXT)),
    onto=said("the panel folded over the one it runs over, sewn through as well; null: none", maybe(TEXT)),
)
_FITTING = record(
    name=TEXT,
    kind=said("its name in the catalogue of hardware", TEXT),
    part=said("what carries its first half", TEXT),
    at=_SPOT,
    meets=said("what carries its second half", maybe(record(part=TEXT, panel=TEXT))),
    holes=said("diameters for its halves, the first one's first, mm", lines_of(SIZE)),
    reach=said("how far its larger cap reaches from the middle of its hole, mm", SIZE),
    setting=said("through a punched hole, or covered between two layers", choice(Setting)),
    thickness=said("of each half of what is covered; else 0, mm", SIZE),
)
_STAMP = record(width=SIZE, height=SIZE, spacing=said("from one stamp to the next, mm", SIZE))
_INITIALS = record(
    name=TEXT,
    text=said("the letters; none: the box alone is kept for them", TEXT),
    part=said("what bears them on its showing face", TEXT),
    at=_SPOT,
    width=said("of their box, along the line of letters, mm", SIZE),
    height=said("of their box, mm", SIZE),
    stamp=said("the stamp for one letter; null: they are drawn as strokes", maybe(_STAMP)),
    clear=said("box to edges, stitches, folds and hardware, at least, mm", SIZE),
    up=said("edge of the assembly their tops point to; null: upright", maybe(_EDGE)),
)
_LIMITS = record(
    hole_to_mouth=SIZE,
    hole_to_edge=SIZE,
    hole_to_fold=SIZE,
    seam_stack=SIZE,
    closed_thickness=SIZE,
    pitch_look=said("deviation from the pitch that wants a look, as a share", NUMBER),
    pitch_no=said("deviation from the pitch that is refused, as a share", NUMBER),
    max_ease=SIZE,
)

INPUTS = said(
    "what the design asked for, every size resolved to a number",
    record(
        parameters=lines_of(PARAMETER),
        leathers=lines_of(LEATHER),
        contents=lines_of(CONTENT),
        body=said("null for a wallet folded from one piece", maybe(_BODY)),
        parts=said("from the outside in", lines_of(one_of(_LAYER, _BANK, _POCKET, _LOOSE, _GUSSET))),
        seams=lines_of(_SEAM),
        fittings=said("snaps, rivets and other hardware", lines_of(_FITTING)),
        initials=said("letters on parts", lines_of(_INITIALS)),
        stitching=_STITCHING,
        folded=FOLDED_INPUTS,
        load=said(
            "what is in the wallet when it closes true, as shares", record(cards=SHARE, notes=SHARE, loose=SHARE)
        ),
        limits=_LIMITS,
    ),
)
