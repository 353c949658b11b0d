"""The JSON Schema of ``pattern.json``: what each name in it means, in which unit, and what may stand there."""

from __future__ import annotations

from typing import Any

from patternforge.drafting.description import FORMAT, VERSION
from patternforge.drafting.schema_cutting import CUTTING
from patternforge.drafting.schema_finishing import SKIVES, turned_pieces
from patternforge.drafting.schema_folded import FOLDED
from patternforge.drafting.schema_inputs import INPUTS, TRIM
from patternforge.drafting.schema_words import (
    ANGLE,
    COUNT,
    FLAG,
    LENGTH,
    NUMBER,
    SIZE,
    TEXT,
    choice,
    lines_of,
    maybe,
    one_of,
    record,
    said,
)
from patternforge.fit.findings import Verdict
from patternforge.leather.material import MadeOf, SurfaceFace
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import Edge, HoleShape, Side

__all__ = ["pattern_schema"]

_TERMS = lines_of(record(label=TEXT, value=LENGTH))
_SUM = said("a size and the terms it is the sum of, mm", record(value=LENGTH, terms=_TERMS))
_VERTEX = {"type": "array", "items": NUMBER, "minItems": 3, "maxItems": 3}
_PATH = said(
    "vertices [x, y, bulge]; the bulge belongs to the edge that starts there: tan(sweep / 4), counter-clockwise"
    " positive, 0 straight",
    {"type": "array", "items": _VERTEX, "minItems": 2},
)
_PANEL_NAMES = said("panels by name, left to right", lines_of(TEXT))

_PANEL = record(
    name=TEXT,
    x0=said("left end on the assembly: fold tangent or body edge, mm", LENGTH),
    x1=said("right end on the assembly, mm", LENGTH),
    width=_SUM,
)
_FOLD_LAYER = record(
    part=said("the layer that crosses the fold", TEXT),
    gap=said("what lies between its two flanks once closed, mm", _SUM),
    inside_radius=SIZE,
    true_length=said("bent length: angle * (inside radius + neutral * thickness), mm", SIZE),
    flat_length=said("drafted length, after compensation, mm", SIZE),
)
_FOLD = record(
    number=COUNT,
    angle=said("180: insides meet, -180: outsides meet", ANGLE),
    compensation=said("0 lies flat open, 1 closes true", NUMBER),
    relief=said("how far pockets stop short of the tangent, mm", SIZE),
    x0=said("first tangent on the assembly, mm", LENGTH),
    x1=said("second tangent on the assembly, mm", LENGTH),
    layers=said("from the outside in", lines_of(_FOLD_LAYER)),
)
_HOLE = record(
    seam=TEXT,
    index=said("number of the hole in its seam; mating holes share it", COUNT),
    x=LENGTH,
    y=LENGTH,
    direction=said("long axis of a slit on the piece", ANGLE),
    shape=said("as made in the flat piece; none: not made, or pierced once the edge is turned in", choice(HoleShape)),
)
_FITTING = record(
    fitting=TEXT,
    half=said("1 or 2; both come to lie over each other once the wallet is closed", COUNT),
    x=LENGTH,
    y=LENGTH,
    diameter=said("of its hole, which stands among the openings too; 0: none, mm", SIZE),
    reach=said("how far its cap reaches from the middle of the hole, mm", SIZE),
)
_INSCRIPTION = record(
    initials=said("their name in the design", TEXT),
    text=TEXT,
    style={"type": "string", "enum": ["strokes", "stamps"]},
    x=said("middle of their box, mm", LENGTH),
    y=said("middle of their box, mm", LENGTH),
    up=said("direction their tops point to on the piece", ANGLE),
    width=said("of the box, along the line of letters, mm", SIZE),
    height=said("of the box, mm", SIZE),
    clear=said("what is to stay free round the box, mm", SIZE),
    letter_height=said("of capitals as drawn; null where no strokes are drawn, mm", maybe(SIZE)),
)
_MARK = record(name=said("what the place is marked for", TEXT), path=_PATH, closed=FLAG)
_FINEST = record(
    radius=said("smallest of the outline and the openings, round holes apart, mm", maybe(SIZE)),
    gap=said("least leather between two cut contours or two stretches of one, mm", maybe(SIZE)),
    slot=said("least width of an opening or of a cut into the outline, mm", maybe(SIZE)),
    hole_gap=said("least leather between the rim of a stitch hole and another cut, mm", maybe(SIZE)),
)
_MATRIX = {"type": "array", "items": NUMBER, "minItems": 6, "maxItems": 6}
_BREAK = {"type": "array", "items": LENGTH, "minItems": 2, "maxItems": 2}
_LEVEL = said("place of the piece counted from the outside in, from 0", COUNT)
_SIGN = {"enum": [-1, 1]}
_FLAT = said(
    "a piece that lies on panels: first x through breaks, then the matrix",
    record(
        panels=_PANEL_NAMES,
        level=_LEVEL,
        breaks=said(
            "[assembly x, flat x] at both ends of each fold zone; linear between, slope 1 beyond", lines_of(_BREAK)
        ),
        onto_piece=said("[a, b, c, d, e, f]: x' = a x + c y + e, y' = b x + d y + f", _MATRIX),
    ),
)
_ROW = record(
    seam=TEXT,
    line=said("the seam's line on the assembly, counter-clockwise, open", _PATH),
    y=said("of the row's holes on the piece, mm", LENGTH),
    inward=said("1 where the way into the wallet runs up the piece, -1 where it runs down", _SIGN),
)
_STRIP = said(
    "a gusset's strip, which lies along two seams: x = middle + forward * (s - half the line's length), s the way"
    " along the line",
    record(
        panels={"type": "array", "maxItems": 0},
        stands_on=said("the panel its walls close on", TEXT),
        level=_LEVEL,
        middle=said("x on the piece of the middle of both lines, mm", LENGTH),
        forward=said("1 where the way along the seams runs to the right on the piece, -1 to the left", _SIGN),
        rows=said("the outer wall's row first", {**lines_of(_ROW), "minItems": 2, "maxItems": 2}),
    ),
)
_PLACEMENT = said(
    "how the piece lies on the assembly (the wallet laid open, seen from the inside)", one_of(_FLAT, _STRIP)
)
_PIECE = record(
    name=TEXT,
    part=said("the part it belongs to", TEXT),
    leather=said("role of its leather", TEXT),
    thickness=said("thickness drafted for, mm", SIZE),
    quantity=said("how many to cut", COUNT),
    made_of=choice(MadeOf),
    showing_face=said("the face that is up as drawn; null for what is not leather", maybe(choice(SurfaceFace))),
    faces=said("the side of the wallet that face turns to", choice(Side)),
    visible=said("false when other leather hides it", FLAG),
    width=SIZE,
    height=SIZE,
    area=said("openings taken out, mm2", SIZE),
    finest=said("what a knife, a die or a beam must be able to cut; null where there is none", _FINEST),
    trim=TRIM,
    outline=said("as cut, closed, counter-clockwise, net size, lower left of its bounds at the origin", _PATH),
    edges=said("role of each edge of the outline, in its order", lines_of(choice(EdgeRole))),
    openings=said("closed, clockwise", lines_of(_PATH)),
    fold_lines=said("tangents of the folds it crosses, open; those of a strip's own bends", lines_of(_PATH)),
    holes=lines_of(_HOLE),
    turned_holes=said("holes in what is turned in that come to lie on holes", lines_of(_HOLE)),
    turned=turned_pieces(_PATH),
    skives=SKIVES,
    fittings=said("holes for hardware, and the places of what is hidden behind it", lines_of(_FITTING)),
    inscriptions=said("letters on its showing face, read with up upwards", lines_of(_INSCRIPTION)),
    marks=said("lines to be marked on it, not cut", lines_of(_MARK)),
    lines=said("the piece a clear sheet lies behind; null for any other", maybe(TEXT)),
    placement=_PLACEMENT,
)
_BOX = {**_BREAK, "minItems": 4, "maxItems": 4}
_POCKET = record(
    part=TEXT,
    piece=said("the wall that holds the item in", TEXT),
    content=TEXT,
    count=COUNT,
    panels=_PANEL_NAMES,
    opening=said("the edge of the assembly the item goes in over", choice(Edge)),
    box=said("[x0, y0, x1, y1] of the item pushed home, on the assembly", _BOX),
    show=said("how much of the item stands out of the mouth, mm", LENGTH),
    ease=said("what the pocket is wider than the taut path round its contents, mm", LENGTH),
    held=said("true for what lies behind a layer", FLAG),
)
_LOOSE = record(
    part=TEXT,
    content=TEXT,
    count=said("how many lie over each other", COUNT),
    panel=TEXT,
    box=said("[x0, y0, x1, y1] of the item on the assembly", _BOX),
    order=said("its place from the outside in, between the levels of the pieces", NUMBER),
)
_SEAM_HOLE = record(
    index=COUNT,
    run=said("unbroken stretch of the seam, from 1", COUNT),
    along=said("place along its run, mm", LENGTH),
    x=said("on the assembly, mm", LENGTH),
    y=said("on the assembly, mm", LENGTH),
    heading=said("direction of sewing on the assembly", ANGLE),
)
_HOLE_SPEC = INPUTS["properties"]["stitching"]["properties"]["hole"]
_SEAM = record(
    name=TEXT,
    pieces=said("pieces it goes through, from the outside in", lines_of(TEXT)),
    inner=said("true for a seam that a part brings with it", FLAG),
    meets=said("the seam whose holes these are on a panel folded over; sewn with it; null: none", maybe(TEXT)),
    margin=said("stitch line to edge, mm", SIZE),
    spread=said("how far beyond a fold zone its holes share in the stretch of that zone, mm", SIZE),
    hole=_HOLE_SPEC,
    hole_count=COUNT,
    pitch=said("nominal, centre to centre, mm", SIZE),
    spacing_min=said("smallest from hole to hole within a run, mm", maybe(SIZE)),
    spacing_max=said("largest, mm", maybe(SIZE)),
    length=said("sewn length, mm", SIZE),
    thread=said("thread for saddle stitch with two needles, tails included, mm", SIZE),
    holes=said("in sewing order", lines_of(_SEAM_HOLE)),
)
_ADJUSTMENT = said(
    "a nominal size that moved to meet the stitches",
    record(part=TEXT, size=TEXT, asked=LENGTH, drafted=LENGTH, reason=TEXT),
)
_LEATHERS = INPUTS["properties"]["leathers"]
_SET = {"type": "object", "additionalProperties": TEXT}
_SOURCE = record(
    text=said("of the design file", TEXT),
    settings=said("values set beside the file, by name, as they were written", _SET),
    initials=said("letters set beside the file, by name", _SET),
)
_STRETCH = record(low=maybe(NUMBER), high=maybe(NUMBER))
_FINDING = record(
    what=TEXT,
    where=TEXT,
    measured=NUMBER,
    unit=said("of what was measured and of its limits; empty for a count", TEXT),
    good=said("the measures that read good; null where nothing binds on that side", _STRETCH),
    tolerable=said("the others that read look; all beyond read no", _STRETCH),
    verdict=choice(Verdict),
    remedy=TEXT,
)


def pattern_schema() -> dict[str, Any]:
    """The schema, JSON Schema draft 2020-12, as plain data; every name is required and no other is allowed.

    >>> pattern_schema()["properties"]["version"]
    {'const': 1}
    """
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": FORMAT,
        "description": "A drafted leather wallet: what was asked for, its flat pieces, folds, seams and fit."
        " Lengths in mm, areas in mm2, angles in degrees counter-clockwise; x to the right, y up.",
        **_document(),
    }


def _document() -> dict[str, Any]:
    return record(
        format={"const": FORMAT},
        version={"const": VERSION},
        program=said("name and version of the program that wrote the file", TEXT),
        units=record(length={"const": "mm"}, angle={"const": "degrees"}, area={"const": "mm2"}),
        design=record(name=TEXT, title=TEXT, revision=TEXT, notes=TEXT, file=said("name of the design file", TEXT)),
        source=said("what the program drafts the same pieces from again; null where it was not told", maybe(_SOURCE)),
        inputs=INPUTS,
        kept_for=said("leathers that the findings are of; null where they are those of the inputs", maybe(_LEATHERS)),
        size=said("of the wallet laid open, as its assembly", record(width=SIZE, height=_SUM)),
        panels=said("left to right, seen from the inside", lines_of(_PANEL)),
        folds=lines_of(_FOLD),
        pieces=said("from the outside in", lines_of(_PIECE)),
        folded=FOLDED,
        pockets=lines_of(_POCKET),
        loose=said("what lies in no pocket", lines_of(_LOOSE)),
        seams=lines_of(_SEAM),
        adjustments=lines_of(_ADJUSTMENT),
        cutting=said("how much there is to cut, and what a machine was sent", CUTTING),
        findings=said("what was measured on the finished pieces", lines_of(_FINDING)),
        verdict=said("the worst of the findings; null when the fit was not measured", maybe(choice(Verdict))),
    )
