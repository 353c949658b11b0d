"""The part of the schema of ``pattern.json`` that says of a design what it is made of, holds, and may be changed."""

from __future__ import annotations

from patternforge.drafting.schema_words import NUMBER, SHARE, SIZE, TEXT, choice, maybe, record, said
from patternforge.leather.contents import Section
from patternforge.leather.material import MadeOf, Stretch, SurfaceFace, Tannage

__all__ = ["CONTENT", "LEATHER", "PARAMETER"]

PARAMETER = record(name=TEXT, value=NUMBER, unit=TEXT, low=maybe(NUMBER), high=maybe(NUMBER), meaning=TEXT)
LEATHER = record(
    role=TEXT,
    thickness=said("as measured or as sold, mm", record(low=SIZE, high=SIZE)),
    name=TEXT,
    tolerance=said("plus or minus, mm", SIZE),
    neutral=said("unstretched fibre from the inside of a bend, in thicknesses", SHARE),
    min_radius=said("smallest inside radius, in thicknesses", NUMBER),
    tannage=choice(Tannage),
    face=said("the face that shows", choice(SurfaceFace)),
    stretch=said("the loose way of the hide on a piece as drawn; the tight way lies across it", choice(Stretch)),
    price=maybe(NUMBER),
    price_area=said("what the price is for: ft2, dm2 or m2", TEXT),
    made_of=choice(MadeOf),
    drafted_thickness=said("the middle of the range, mm", SIZE),
)
CONTENT = record(
    **{"as": said("its name in the design", TEXT)},
    name=TEXT,
    length=SIZE,
    height=SIZE,
    thickness=SIZE,
    corner_radius=SIZE,
    title=TEXT,
    source=said("where its sizes stand in print", TEXT),
    section=said("what it is cut across its length", choice(Section)),
)
