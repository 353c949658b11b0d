"""The faces of a folded wallet: where each hangs, its shape, what is cut into it."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from patternforge.design.body import corners_of, fit_or_length
from patternforge.design.entries import Entries, entries, kind_named, titled
from patternforge.design.folded_forms import (
    FaceForm,
    FacePlaceForm,
    FaceRoundForm,
    FaceSlotForm,
    FaceThumbForm,
    FaceWindowForm,
)
from patternforge.design.form import Form
from patternforge.design.located import At, Lost, Node, Scalar, Table
from patternforge.design.names import Names
from patternforge.design.openings import opening_sizes
from patternforge.design.part_forms import CornersForm, InsetForm
from patternforge.design.places import distance, sides
from patternforge.design.scope import Scope
from patternforge.design.values import POSITIVE, Bounds
from patternforge.design.words import word_advice
from patternforge.wallet.features import ThumbNotch
from patternforge.wallet.folded.spec import FaceOpening, FaceSpec, HingeSpec
from patternforge.wallet.spec import Edge, EdgeShape

__all__ = ["FaceNames", "faces"]

_MOST_FACES = 12
_FACE = FaceSpec("")
_HINGE = HingeSpec("", Edge.TOP)
_OPENING = FaceOpening("", 0.0, 0.0)
_OF_FLAPS = ("on", "edge", "reach", "angle", "inset")
_OF_BASE = ("width", "height")
_OPPOSITE = {Edge.LEFT: Edge.RIGHT, Edge.RIGHT: Edge.LEFT, Edge.TOP: Edge.BOTTOM, Edge.BOTTOM: Edge.TOP}
_KINDS: dict[str, type[Form]] = {"window": FaceWindowForm, "slot": FaceSlotForm, "hole": FaceRoundForm}


@dataclass(slots=True)
class FaceNames:
    """The faces known so far by name, and the names of rooms, tabs and openings."""

    faces: dict[str, At] = field(default_factory=dict)
    hung_by: dict[str, Edge] = field(default_factory=dict)
    """The edge of each flap that is its own hinge."""
    others: dict[str, dict[str, At]] = field(default_factory=dict)
    is_complete: bool = True
    """Unless a face could not be read."""

    def take(self, table: Entries, kind: str) -> str:
        """The name a table gives itself under its kind; a fault if another of that kind has it."""
        return Names().take(table, kind, kind, self.others.setdefault(kind, {}))

    def named(self, table: Entries, key: str) -> str:
        """The face that a key names; a fault and an empty text if there is none."""
        scalar = table.scalar(key)
        return "" if scalar is None else self.known(scalar, table.scope)

    def known(self, scalar: Scalar, scope: Scope) -> str:
        """The face that a value names; a fault and an empty text if there is none."""
        if scalar.text not in self.faces and self.is_complete:
            scope.faults.add(
                scalar.at, f"there is no face '{scalar.text[:40]}'", word_advice(scalar.text, self.faces)
            )
        return scalar.text if scalar.text in self.faces else ""

    def refuse_own_fold(self, table: Entries, key: str, face: str, edge: Edge, what: str) -> None:
        """A fault if ``edge``, named by ``key``, is the one that the face hangs by."""
        if self.hung_by.get(face) is edge and key in table.nodes and not table.is_refused(key):
            said = f"'{face}' hangs by its {edge} edge, so nothing can {what} there"
            table.add_fault(key, said, "name another edge")


def faces(table: Entries, names: FaceNames) -> tuple[FaceSpec, ...]:
    """The faces declared, the base first; their names are put in ``names``."""
    nodes = table.row("faces")
    names.is_complete = not table.is_refused("faces") and bool(nodes)
    if nodes and len(nodes) < 2:
        table.add_fault("faces", "the wallet has 1 face and nothing to fold", "hang a flap on it")
    if len(nodes) > _MOST_FACES:
        table.add_fault("faces", f"the wallet has {len(nodes)} faces", f"it may have at most {_MOST_FACES}")
    return tuple(_face(node, number == 0, table.scope, names) for number, node in enumerate(nodes))


def _face(node: Node, is_base: bool, scope: Scope, names: FaceNames) -> FaceSpec:
    table = entries(node, FaceForm, titled(node, "face"), scope)
    hinge = None if is_base else _hinge(table, names)
    _refuse_keys(table, _OF_FLAPS if is_base else _OF_BASE, is_base)
    known = len(names.faces)
    name = Names().take(table, "face", "face", names.faces)
    if len(names.faces) == known:
        names.is_complete = False
    if hinge:
        names.hung_by[name] = _OPPOSITE[hinge.edge]
    shaped = sides(table)
    _refuse_shaped_fold(table, name, shaped, names)
    thumb, thumb_edge = _thumb(table, name, names)
    return FaceSpec(
        name=name,
        hinge=hinge,
        width=fit_or_length(table, "width"),
        height=fit_or_length(table, "height"),
        corner=table.length("corner", _FACE.corner),
        corners=_corners(table, name, names),
        sides=shaped,
        thumb=thumb,
        thumb_edge=thumb_edge,
        openings=tuple(o for each in table.row("openings") if (o := _opening(each, table, names))),
        line=table.at.line,
    )


def _refuse_keys(table: Entries, keys: tuple[str, ...], is_base: bool) -> None:
    for key in keys:
        if key in table.nodes and not table.is_refused(key):
            what = f"{table.what} is the base and hangs on nothing" if is_base else f"{table.what} hangs on another"
            advice = "leave it out, or put another face first" if is_base else "leave it out and say its 'reach'"
            table.add_fault(key, f"{what}, so it has no '{key}'", advice)


def _hinge(table: Entries, names: FaceNames) -> HingeSpec:
    for key, example in (("on", "on: back"), ("edge", "edge: top")):
        if key not in table.nodes:
            table.scope.leave_open()
            what = f"{table.what} does not say where it hangs: it has no '{key}'"
            table.scope.faults.add(table.at, what, f"add '{key}: ...', such as '{example}'")
    on = names.named(table, "on")
    edge = table.choice("edge", Edge, _HINGE.edge)
    names.refuse_own_fold(table, "edge", on, edge, "hang")
    angle = table.angle("angle", _HINGE.angle, Bounds(-180.0, 180.0))
    if abs(angle) != 180 and not math.isnan(angle):
        table.add_fault("angle", f"{table.what} is folded by {angle:g} degrees", "write 180 or -180: it closes flat")
    return HingeSpec(on, edge, fit_or_length(table, "reach"), angle, _inset(table, edge))


def _inset(table: Entries, edge: Edge) -> tuple[tuple[Edge, float], ...]:
    inset = table.table("inset", InsetForm)
    ends = (Edge.LEFT, Edge.RIGHT) if edge in (Edge.TOP, Edge.BOTTOM) else (Edge.BOTTOM, Edge.TOP)
    for side in Edge:
        if side in inset.nodes and side not in ends and "edge" in table.nodes and not table.is_refused("edge"):
            what = f"a hinge on the {edge} edge has no {side} end"
            inset.add_fault(side, what, f"its ends are {ends[0]} and {ends[1]}")
    return tuple((side, inset.length(side)) for side in ends if side in inset.nodes)


def _refuse_shaped_fold(
    table: Entries, name: str, shaped: tuple[tuple[Edge, EdgeShape], ...], names: FaceNames
) -> None:
    """A hinge is straight and as long as its flap is wide there: the sides beside it may only draw in further off."""
    own = names.hung_by.get(name)
    if own is None or table.is_refused("sides"):
        return
    for edge, shape in shaped:
        draws_in = shape.slant if own in (Edge.TOP, Edge.RIGHT) else -shape.slant
        if edge is own:
            what = f"{table.what} hangs by its {edge} edge, which is straight"
            table.scope.faults.add(_side_at(table, edge), what, "shape the edge it hangs on instead")
        elif edge is not _OPPOSITE[own] and draws_in > 0:
            sign = "negative" if shape.slant > 0 else "positive"
            what = f"the {edge} edge of {table.what} slants in at its hinge"
            advice = f"give a {sign} slant, which draws the far end in, or inset the hinge"
            table.scope.faults.add(_side_at(table, edge), what, advice)


def _side_at(table: Entries, edge: Edge) -> At:
    sides_node = table.node("sides")
    side = sides_node.get(edge) if isinstance(sides_node, Table) else None
    return side.at if side else table.at


def _corners(table: Entries, name: str, names: FaceNames) -> tuple[tuple[tuple[Edge, Edge], float], ...]:
    place = table.table("corners", CornersForm)
    found = corners_of(place)
    own = names.hung_by.get(name)
    for ends, _ in found if not table.is_refused("corners") else ():
        if own in ends:
            key = " ".join(ends)
            place.add_fault(key, f"the {key} corner of {table.what} is at its hinge", "leave it out")
    return found


def _thumb(table: Entries, name: str, names: FaceNames) -> tuple[ThumbNotch | None, Edge]:
    if "thumb" not in table.nodes:
        return None, _FACE.thumb_edge
    thumb = table.table("thumb", FaceThumbForm)
    edge = thumb.choice("edge", Edge, _FACE.thumb_edge)
    names.refuse_own_fold(thumb, "edge", name, edge, "be cut")
    width, depth = thumb.length("width", bounds=POSITIVE), thumb.length("depth", bounds=POSITIVE)
    if depth > width / 2:
        thumb.add_fault("depth", f"a notch {depth:g} mm deep is deeper than round", f"use at most {width / 2:g} mm")
    return ThumbNotch(width, depth), edge


def _opening(node: Node, face: Entries, names: FaceNames) -> FaceOpening | None:
    kind = kind_named(node, _KINDS)
    if kind is None:
        face.scope.leave_open()
        if not isinstance(node, Lost):
            what = f"this opening of {face.what} does not say what kind it is"
            face.scope.faults.add(node.at, what, "begin it with 'window: name', 'slot: name' or 'hole: name'")
        return None
    table = entries(node, _KINDS[kind], titled(node, kind), face.scope)
    name = Names().take(table, kind, "opening", names.others.setdefault("opening", {}))
    width, height, corner = opening_sizes(table, kind)
    place = table.table("at", FacePlaceForm, f"'at' of {table.what}")
    return FaceOpening(
        name=name,
        width=width,
        height=height,
        corner=corner,
        border=table.length("border", _OPENING.border),
        beside=distance(place, Edge.LEFT, Edge.RIGHT),
        above=distance(place, Edge.BOTTOM, Edge.TOP),
    )
