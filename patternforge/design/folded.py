"""Wallets folded from one piece: the whole of what a design says of one."""

from __future__ import annotations

from patternforge.design.entries import Entries, entries, titled
from patternforge.design.folded_faces import FaceNames, faces
from patternforge.design.folded_forms import EndForm, RoomForm, TabForm
from patternforge.design.located import Node, Scalar
from patternforge.design.scope import Kind
from patternforge.design.values import POSITIVE
from patternforge.design.words import listed, word_advice
from patternforge.wallet.folded.spec import FaceSpec, FoldedSpec, RoomSpec, TabShape, TabSpec
from patternforge.wallet.spec import Edge, Lying, Side

__all__ = ["folded"]

_FOLDED = FoldedSpec("", (), ())
_TAB = TabSpec("", "", Edge.TOP, 1.0, 1.0, "")
_ROOM = RoomSpec("", ("", ""), "")
_MOST_HELD = 200
_ENDS = {
    Edge.LEFT: (Edge.BOTTOM, Edge.TOP),
    Edge.RIGHT: (Edge.BOTTOM, Edge.TOP),
    Edge.BOTTOM: (Edge.LEFT, Edge.RIGHT),
    Edge.TOP: (Edge.LEFT, Edge.RIGHT),
}


def folded(table: Entries) -> FoldedSpec:
    """The folded wallet that ``table`` declares."""
    names = FaceNames()
    found = faces(table, names)
    return FoldedSpec(
        leather=table.use("leather", Kind.LEATHER),
        faces=found,
        closing=_closing(table, found, names),
        rooms=tuple(_room(node, table, names) for node in table.row("rooms")),
        tabs=tuple(_tab(node, table, names) for node in table.row("tabs")),
        relief=table.length("relief", _FOLDED.relief),
        ease=table.length("ease", _FOLDED.ease),
        showing=table.choice("showing", Side, _FOLDED.showing),
    )


def _closing(table: Entries, found: tuple[FaceSpec, ...], names: FaceNames) -> tuple[str, ...]:
    """The flaps in the order they close in: as named, else as they stand."""
    flaps = tuple(face.name for face in found if face.hinge)
    if "closing" not in table.nodes:
        return flaps
    scalars = table.scalars("closing")
    before = len(table.scope.faults.found)
    order = tuple(_flap(scalar, flaps, table, names) for scalar in scalars)
    is_sound = len(table.scope.faults.found) == before and not table.is_refused("closing")
    if is_sound and names.is_complete and sorted(order) != sorted(flaps):
        said, wanted = listed(order) or "nothing", listed(flaps)
        table.add_fault("closing", f"'closing' names {said}", f"name each of {wanted} once")
    return order


def _flap(scalar: Scalar, flaps: tuple[str, ...], table: Entries, names: FaceNames) -> str:
    if scalar.text not in flaps and names.is_complete:
        what = f"there is no flap '{scalar.text[:40]}'"
        if scalar.text in names.faces:
            what = f"'{scalar.text[:40]}' is the base, which is not folded"
        table.scope.faults.add(scalar.at, what, word_advice(scalar.text, flaps))
    return scalar.text


def _room(node: Node, whole: Entries, names: FaceNames) -> RoomSpec:
    table = entries(node, RoomForm, titled(node, "room"), whole.scope)
    return RoomSpec(
        name=names.take(table, "room"),
        between=_between(table, names),
        content=table.use("item", Kind.CONTENT),
        count=table.count("count", _ROOM.count, high=_MOST_HELD),
        lying=table.choice("stands", Lying, _ROOM.lying),
        opening=table.choice("opening", Edge, _ROOM.opening),
        line=table.at.line,
    )


def _between(table: Entries, names: FaceNames) -> tuple[str, str]:
    scalars = table.scalars("between")
    if table.is_refused("between"):
        return "", ""
    if len(scalars) != 2:
        what = f"'between' of {table.what} names {len(scalars)} faces"
        table.add_fault("between", what, "name the face the items lie on and the one over them")
        return "", ""
    one, other = (names.known(scalar, table.scope) for scalar in scalars)
    if one == other != "":
        table.add_fault("between", f"{table.what} lies between '{one}' and itself", "name two faces")
    return one, other


def _tab(node: Node, whole: Entries, names: FaceNames) -> TabSpec:
    table = entries(node, TabForm, titled(node, "tab"), whole.scope)
    name = names.take(table, "tab")
    face, into = names.named(table, "on"), names.named(table, "into")
    edge = table.choice("edge", Edge, _TAB.edge)
    if face and face == into:
        table.add_fault("into", f"{table.what} is tucked into the face it stands on", "name the face it closes on")
    names.refuse_own_fold(table, "edge", face, edge, "stand")
    width = table.length("width", bounds=POSITIVE)
    return TabSpec(
        name=name,
        face=face,
        edge=edge,
        width=width,
        length=table.length("length", bounds=POSITIVE),
        into=into,
        shape=table.choice("shape", TabShape, _TAB.shape),
        slit=table.optional_length("slit", POSITIVE),
        beside=_beside(table, edge),
        line=table.at.line,
    )


def _beside(table: Entries, edge: Edge) -> tuple[Edge, float] | None:
    """How far the middle of a tab stands from one end of its edge; None for the middle."""
    place = table.table("at", EndForm, f"'at' of {table.what}")
    named = [end for end in Edge if end in place.nodes and not place.is_refused(end)]
    for end in named if not table.is_refused("edge") else ():
        if end not in _ENDS[edge]:
            what = f"the {edge} edge has no {end} end"
            place.add_fault(end, what, f"count from its {listed(_ENDS[edge])} end")
    if len(named) > 1:
        place.add_fault(named[1], f"{place.what} counts from {named[0]} and from {named[1]}", "keep one of them")
    distances = [(end, place.length(end)) for end in named]
    return distances[0] if distances else None
