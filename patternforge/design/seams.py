"""Stitching, seams and the limits the finished wallet is checked against."""

from __future__ import annotations

from dataclasses import fields
from itertools import pairwise

from patternforge.design.arithmetic import Value, as_length
from patternforge.design.entries import Entries, entries, titled
from patternforge.design.forms import HoleForm, SeamForm, StitchingForm
from patternforge.design.located import At, Node
from patternforge.design.parts import PartNames
from patternforge.design.scope import Scope
from patternforge.design.values import POSITIVE, Bounds, number_of
from patternforge.design.words import word_advice
from patternforge.units import MeasureError, pitch_mm
from patternforge.wallet.spec import (
    Across,
    CornerStyle,
    Edge,
    HoleShape,
    HoleSpec,
    Limits,
    Mode,
    SeamSpec,
    Stitching,
)

__all__ = ["limits", "seams", "stitching"]

_SEAM = SeamSpec("", ())
_HOLE = HoleSpec()
_LIMITS = Limits()
_SHARES = ("pitch_look", "pitch_no")
_OPPOSITE = {Edge.LEFT: Edge.RIGHT, Edge.RIGHT: Edge.LEFT, Edge.TOP: Edge.BOTTOM, Edge.BOTTOM: Edge.TOP}
_HOLE_SIZES = {
    HoleShape.ROUND: ("diameter",),
    HoleShape.SLIT: ("length", "width", "slant"),
    HoleShape.MARK: (),
    HoleShape.NONE: (),
}


def stitching(table: Entries, basis: Stitching) -> Stitching:
    """``basis`` with what ``table`` says otherwise, key by key."""
    return Stitching(
        pitch=_pitch(table, basis.pitch),
        mode=table.choice("mode", Mode, basis.mode),
        hole=_hole(table.table("hole", HoleForm)) if "hole" in table.nodes else basis.hole,
        tails=table.length("tails", basis.tails),
        thread=table.length("thread", basis.thread, POSITIVE),
    )


def _pitch(table: Entries, basis: float) -> float:
    scalar = table.scalar("pitch")
    if scalar is None:
        return basis
    what = f"'pitch' of {table.what}"
    if " per " not in scalar.text:
        return number_of(scalar, what, table.scope, _length_with_unit, POSITIVE)
    try:
        return pitch_mm(scalar.text)
    except MeasureError as error:
        table.scope.faults.add_measure(scalar.at, what, error)
        return basis


def _length_with_unit(value: Value) -> float:
    if value.bare and not value.is_lost:
        number = f"{value.number:g}"
        remedy = f"write '{number} mm', '{number} per inch' or '{number} per French inch'"
        raise MeasureError(f"the pitch {number} has no unit", remedy)
    return as_length(value)


def _hole(table: Entries) -> HoleSpec:
    shape = table.choice("shape", HoleShape, _HOLE.shape)
    sizes = _HOLE_SIZES[shape]
    for key in table.nodes if not table.is_refused("shape") else ():
        if key not in ("shape", *sizes):
            what = f"a hole of shape '{shape}' has no '{key}'"
            table.add_fault(key, what, f"it has {' and '.join(sizes)}" if sizes else "leave it out")
    return HoleSpec(
        shape=shape,
        diameter=table.length("diameter", _HOLE.diameter, POSITIVE),
        length=table.length("length", _HOLE.length, POSITIVE),
        width=table.length("width", _HOLE.width, POSITIVE),
        slant=table.angle("slant", _HOLE.slant, Bounds(-90.0, 90.0)),
    )


def seams(nodes: tuple[Node, ...], basis: Stitching, names: PartNames, scope: Scope) -> tuple[SeamSpec, ...]:
    """The seams declared; a key of their stitching that is left out is that of ``basis``."""
    taken: dict[str, At] = {}
    return tuple(_seam(node, basis, names, taken, scope) for node in nodes)


def _seam(node: Node, basis: Stitching, names: PartNames, taken: dict[str, At], scope: Scope) -> SeamSpec:
    table = entries(node, SeamForm, titled(node, "seam"), scope)
    name = _name(table, taken)
    return SeamSpec(
        name=name,
        along=_along(table),
        margin=table.length("margin", _SEAM.margin, POSITIVE),
        end=table.optional_length("end"),
        corners=table.choice("corners", CornerStyle, _SEAM.corners),
        across=table.choice("across", Across, _SEAM.across),
        stop=table.optional_length("stop"),
        spread=table.length("spread", _SEAM.spread),
        through=_through(table, names),
        stitching=stitching(table.table("stitching", StitchingForm), basis),
        line=table.at.line,
    )


def _name(table: Entries, taken: dict[str, At]) -> str:
    name = table.text("seam")
    if not name:
        return ""
    if name in taken:
        what = f"the name '{name}' is taken by the seam on line {taken[name].line}"
        table.add_fault("seam", what, "give every seam a name of its own")
    taken.setdefault(name, table.at_of("seam"))
    return name


def _along(table: Entries) -> tuple[Edge, ...]:
    edges = table.choices("along", Edge)
    if not edges and not table.is_refused("along"):
        table.add_fault("along", f"{table.what} follows no edge", "name at least one of left, right, bottom, top")
    if table.is_refused("along"):
        return ()
    for (edge, _), (following, at) in pairwise(edges):
        if following is _OPPOSITE[edge]:
            what = f"{edge} and {following} do not meet at a corner"
            table.scope.faults.add(at, what, "name the edge between them, or make two seams")
    return tuple(edge for edge, _ in edges)


def _through(table: Entries, names: PartNames) -> tuple[str, ...]:
    found: list[str] = []
    for scalar in table.scalars("through"):
        if scalar.text in found:
            table.scope.faults.add(scalar.at, f"'{scalar.text}' stands twice in 'through'", "keep one of them")
        elif scalar.text not in names.taken and names.complete:
            advice = word_advice(scalar.text, names.taken)
            table.scope.faults.add(scalar.at, f"there is no part '{scalar.text[:40]}'", advice)
        else:
            found.append(scalar.text)
    return tuple(found)


def limits(table: Entries) -> Limits:
    """The limits declared, others as usual."""
    shares = {key: table.number(key, getattr(_LIMITS, key), Bounds(0.0, 1.0)) for key in _SHARES}
    lengths = [f.name for f in fields(Limits) if f.name not in _SHARES]
    found = Limits(**shares, **{key: table.length(key, getattr(_LIMITS, key)) for key in lengths})
    if found.pitch_look > found.pitch_no:
        key = "pitch_look" if "pitch_look" in table.nodes else "pitch_no"
        what = f"'pitch_look' is {found.pitch_look:g} and 'pitch_no' {found.pitch_no:g}"
        table.add_fault(key, what, "the look comes before the no: exchange them")
    return found
