"""Folded wallets built without a file: an envelope of four flaps, and wallets of random faces."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from hypothesis import strategies as st

from patternforge.leather.catalogue import catalogue
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.features import EdgeShape, ThumbNotch
from patternforge.wallet.folded.spec import FaceOpening, FaceSpec, FoldedSpec, HingeSpec, RoomSpec, TabShape, TabSpec
from patternforge.wallet.spec import BodySpec, Content, Design, Edge, Load

__all__ = ["design_of", "dressed_envelope", "envelope", "flap", "folded_designs", "of_leather", "with_folded"]

_ENDS = {
    Edge.LEFT: (Edge.BOTTOM, Edge.TOP),
    Edge.RIGHT: (Edge.BOTTOM, Edge.TOP),
    Edge.BOTTOM: (Edge.LEFT, Edge.RIGHT),
    Edge.TOP: (Edge.LEFT, Edge.RIGHT),
}
_OPPOSITE = {Edge.LEFT: Edge.RIGHT, Edge.RIGHT: Edge.LEFT, Edge.TOP: Edge.BOTTOM, Edge.BOTTOM: Edge.TOP}


def flap(name: str, on: str, edge: str, reach: float | None, angle: float = 180.0, **changes: Any) -> FaceSpec:
    """A flap; ``inset`` in ``changes`` maps names of edges to mm, all others are fields of the face."""
    inset = tuple((Edge(end), size) for end, size in changes.pop("inset", {}).items())
    return FaceSpec(name, HingeSpec(on, Edge(edge), reach, angle, inset), **changes)


def design_of(folded: FoldedSpec, t: float = 1.0, **leather: Any) -> Design:
    """A design of one leather of ``t`` mm that holds ID-1 cards; ``leather`` are more of its fields."""
    return Design(
        name="folded",
        title="Folded",
        revision="A",
        notes="",
        file="folded.yaml",
        parameters=(),
        leathers=(Leather("main", Thickness(t, t), **leather),),
        contents=(Content("card", catalogue()["id1"]),),
        body=BodySpec((), (), ()),
        parts=(),
        seams=(),
        folded=folded,
    )


def envelope(t: float = 1.0, cards: int = 2, **changes: Any) -> Design:
    """Back of 90 x 60 mm, wings of 25 and a front of 40 mm on it, a lid with a tab into the front; closed in turn."""
    folded = FoldedSpec(
        "main",
        (
            FaceSpec("back", width=90.0, height=60.0),
            flap("left", "back", "left", 25.0, inset={"bottom": 2.0, "top": 2.0}),
            flap("right", "back", "right", 25.0, inset={"bottom": 2.0, "top": 2.0}),
            flap("front", "back", "bottom", 40.0, corner=5.0),
            flap("lid", "back", "top", 35.0, inset={"left": 1.5, "right": 1.5}),
        ),
        ("left", "right", "front", "lid"),
        (RoomSpec("cards", ("back", "front"), "card", cards),),
        (TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "front"),),
    )
    return design_of(replace(folded, **changes), t)


def dressed_envelope() -> Design:
    """The envelope with everything on it that a folded wallet can have."""
    design = envelope()
    back, left, right, front, lid = design.folded.faces if design.folded else ()
    hole = FaceOpening("hole", 8.0, 8.0, 4.0, border=6.0, beside=(Edge.LEFT, 12.0), above=(Edge.TOP, 20.0))
    faces = (
        replace(back, sides=((Edge.TOP, EdgeShape(slant=4.0)),)),
        replace(left, corner=3.0, corners=(((Edge.TOP, Edge.LEFT), 6.0),)),
        replace(right, sides=((Edge.RIGHT, EdgeShape(bow=2.0)),)),
        replace(front, thumb=ThumbNotch(20.0, 6.0), thumb_edge=Edge.BOTTOM, openings=(hole,)),
        lid,
    )
    tab = TabSpec("tongue", "lid", Edge.TOP, 16.0, 12.0, "front", TabShape.POINTED, 18.0, (Edge.RIGHT, 30.0))
    return with_folded(design, faces=faces, tabs=(tab,))


def with_folded(design: Design, **changes: Any) -> Design:
    """The design with fields of its folded wallet changed."""
    if design.folded is None:
        raise TypeError("the design is not folded from one piece")
    return replace(design, folded=replace(design.folded, **changes))


def of_leather(design: Design, t: float) -> Design:
    """The design of leather ``t`` mm thick."""
    return replace(design, leathers=tuple(replace(each, thickness=Thickness(t, t)) for each in design.leathers))


def _sizes(low: float, high: float) -> st.SearchStrategy[float]:
    return st.integers(round(low * 2), round(high * 2)).map(lambda halves: halves / 2)


@st.composite
def folded_designs(draw: st.DrawFn, most: int = 5, tabs: bool = False) -> Design:
    """Wallets of up to ``most`` flaps hung anywhere, folded either way in any order, often with cards in them."""
    faces = [FaceSpec("base", width=draw(_sizes(60, 110)), height=draw(_sizes(50, 110)), sides=draw(_slants(None)))]
    for number in range(draw(st.integers(1, most))):
        faces.append(draw(_flaps(faces, f"flap {number + 1}")))
    closing = draw(st.permutations([face.name for face in faces[1:]]))
    names = [face.name for face in faces]
    rooms: tuple[RoomSpec, ...] = ()
    if draw(st.booleans()):
        on, under = draw(st.permutations(names))[:2]
        rooms = (RoomSpec("cards", (on, under), "card", draw(st.integers(1, 6))),)
    spec = FoldedSpec("main", tuple(faces), tuple(closing), rooms, draw(_tabs(faces)) if tabs else (), relief=0.5)
    leather = {"neutral": draw(st.sampled_from((0.5, 0.4))), "min_radius": draw(st.sampled_from((0.5, 0.0, 1.0)))}
    design = design_of(spec, draw(_sizes(0.5, 2.0)), **leather)
    return replace(design, load=Load(cards=draw(st.sampled_from((1.0, 0.5, 0.0)))))


@st.composite
def _flaps(draw: st.DrawFn, faces: list[FaceSpec], name: str) -> FaceSpec:
    on = draw(st.sampled_from(faces))
    own = _OPPOSITE[on.hinge.edge] if on.hinge else None
    edge = draw(st.sampled_from([edge for edge in Edge if edge is not own]))
    inset = {end.value: draw(_sizes(0, 12)) for end in _ENDS[edge]}
    angle = draw(st.sampled_from((180.0, 180.0, 180.0, -180.0)))
    return flap(name, on.name, edge.value, draw(_sizes(12, 70)), angle, inset=inset, sides=draw(_slants(edge)))


@st.composite
def _slants(draw: st.DrawFn, hung_at: Edge | None) -> tuple[tuple[Edge, EdgeShape], ...]:
    """Slants of a few millimetres: of the base any, of a flap those that draw in away from its hinge."""
    if hung_at is None:
        return tuple(
            (edge, EdgeShape(slant=draw(_sizes(-6, 6))))
            for edge in draw(st.lists(st.sampled_from(Edge), unique=True, max_size=2))
        )
    sign = 1.0 if hung_at in (Edge.TOP, Edge.RIGHT) else -1.0
    return tuple((edge, EdgeShape(slant=sign * draw(_sizes(0, 4)))) for edge in _ENDS[hung_at])


@st.composite
def _tabs(draw: st.DrawFn, faces: list[FaceSpec]) -> tuple[TabSpec, ...]:
    """A tab on the edge opposite the hinge of a flap, into any other face."""
    on = draw(st.sampled_from(faces[1:]))
    edge = on.hinge.edge if on.hinge else Edge.TOP
    into = draw(st.sampled_from([face for face in faces if face is not on]))
    return (TabSpec("tab", on.name, edge, draw(_sizes(8, 16)), draw(_sizes(6, 14)), into.name),)
