"""What ``pattern.json`` says of cutting: how much there is, and what a machine was sent."""

from __future__ import annotations

from patternforge.drafting.purpose import CutFace, StitchHoles
from patternforge.drafting.schema_words import COUNT, FLAG, SIZE, TEXT, choice, lines_of, maybe, record, said
from patternforge.drawing.model import Role
from patternforge.fit.findings import Verdict

__all__ = ["CUTTING"]

_OPERATION = record(
    operation=choice(Role), count=said("lines, slits, circles and contours", COUNT), length=said("together, mm", SIZE)
)
_FOUND = maybe(
    record(size=SIZE, piece=TEXT, limit=said("the smallest the machine can cut, mm; 0 where nothing is known", SIZE))
)
_SHEET = record(
    file=said("path of the file in the folder of the design", TEXT),
    leather=said("role of the leather whose pieces it holds; null where it holds every piece", maybe(TEXT)),
    width=SIZE,
    height=SIZE,
    operations=said("as in the file: with kerf and allowance", lines_of(_OPERATION)),
    travel=said(
        "way between the lines: in the order they were drawn in, and in that of the file",
        record(as_drawn=SIZE, in_order=SIZE),
    ),
)
_MACHINE = record(
    name=said("of its table", TEXT),
    title=TEXT,
    tool=TEXT,
    format=TEXT,
    face=said("that lies up", choice(CutFace)),
    kerf=said("made up for: half of it on either side of a line, mm", SIZE),
    allowance=said("left on all round every outline, mm", SIZE),
    chords=said("how far chords stray from the arcs they stand for, mm; null for true arcs", maybe(SIZE)),
    holes=choice(StitchHoles),
    smallest=said("of what is cut, net", record(hole=_FOUND, gap=_FOUND, radius=_FOUND)),
    sheets=lines_of(_SHEET),
)
_DIE_CUT = record(
    piece=TEXT,
    quantity=said("cuts for one wallet", COUNT),
    mirrored=said("true for the mirror image of what the file holds: its leather is turned over", FLAG),
)
_FINE = record(
    what=TEXT,
    size=said("mm", SIZE),
    limit=said("the smallest the shop can make, mm; 0 where nothing is known", SIZE),
    verdict=choice(Verdict),
)
_DIE = record(
    file=said("path of the file in the folder of the design, drawn as the first of the pieces", TEXT),
    width=SIZE,
    height=SIZE,
    symmetric=said("whether it is its own mirror image", FLAG),
    cuts=said("the pieces it cuts", lines_of(_DIE_CUT)),
    finest=said("net, against the limits of the shop", lines_of(_FINE)),
)
_DIES = record(
    proof=said("path of the proof to be signed", TEXT),
    count_without_turning_over=said("how many dies it takes where no leather is turned over", COUNT),
    dies=lines_of(_DIE),
)
CUTTING = record(
    operations=said("of all pieces as often as they are wanted, net, every hole cut", lines_of(_OPERATION)),
    machine=said("the machine that files were made for; null where none was named", maybe(_MACHINE)),
    dies=said("what a die maker is sent; null where no dies were asked for", maybe(_DIES)),
)
