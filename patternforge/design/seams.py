"""Stitching, seams and the limits the finished wallet is checked against."""

from __future__ import annotations

import re
from dataclasses import fields
from itertools import pairwise

from patternforge.design.arithmetic import Value, as_length
from patternforge.design.entries import Entries, entries, titled
from patternforge.design.forms import HoleForm, SeamForm, StitchingForm
from patternforge.design.located import At, Node
from patternforge.design.names import Covered, Names
from patternforge.design.places import covered_panels, panel
from patternforge.design.scope import Scope
from patternforge.design.values import POSITIVE, Bounds, number_of
from patternforge.design.words import listed, word_advice
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
_PITCHES = Bounds(0.5, 30.0)
_SHORT_PITCH = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*(?:spi|/\s*in(?:ch)?|(?:stitches )?per in|an inch)", re.ASCII | re.IGNORECASE
)
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
    short = _SHORT_PITCH.fullmatch(scalar.text.strip())
    if short:
        table.add_fault("pitch", f"{what} is '{scalar.text}'", f"did you mean '{short.group(1)} per inch'?")
        return basis
    if " per " not in scalar.text:
        return number_of(scalar, what, table.scope, _length_with_unit, _PITCHES)
    try:
        pitch = pitch_mm(scalar.text)
    except MeasureError as error:
        table.scope.faults.add_measure(scalar.at, what, error)
        return basis
    fault = _PITCHES.fault(pitch, " mm")
    if fault:
        table.add_fault("pitch", f"{what} comes to {pitch:g} mm", fault)
    return pitch


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


def seams(nodes: tuple[Node, ...], basis: Stitching, names: Names, scope: Scope) -> tuple[SeamSpec, ...]:
    """The seams declared; a key of their stitching that is left out is that of ``basis``."""
    taken: dict[str, At] = {}
    found = tuple(_seam(node, basis, names, taken, scope) for node in nodes)
    _refuse_films_named_like_seams(names, taken, scope)
    return found


def _seam(node: Node, basis: Stitching, names: Names, taken: dict[str, At], scope: Scope) -> SeamSpec:
    table = entries(node, SeamForm, titled(node, "seam"), scope)
    name = names.take(table, "seam", "seam", taken)
    covered = covered_panels(table, names.panels) if "over" in table.nodes else None
    through = _through(table, names)
    return SeamSpec(
        name=name,
        along=_along(table),
        margin=table.length("margin", _SEAM.margin, POSITIVE),
        end=table.optional_length("end"),
        corners=table.choice("corners", CornerStyle, _SEAM.corners),
        across=table.choice("across", Across, _SEAM.across),
        stop=table.optional_length("stop"),
        spread=table.length("spread", _SEAM.spread),
        through=through,
        stitching=stitching(table.table("stitching", StitchingForm), basis),
        over=(covered[0], covered[-1]) if covered else None,
        of=_followed(table, names, through, covered),
        onto=_onto(table, names, covered),
        line=table.at.line,
    )


def _onto(table: Entries, names: Names, over: Covered) -> int | None:
    """The panel that lies on the one the seam runs over once the wallet is folded."""
    found = panel(table.scalar("onto"), table.scope, names.panels)
    if found is None:
        return None
    if "over" not in table.nodes or (over is not None and len(over) > 1):
        what = f"{table.what} is sewn onto panel '{names.panels[found]}' from more panels than one"
        table.add_fault("onto", what, "add 'over' with the one panel it runs over")
    elif over == (found,):
        what = f"{table.what} is sewn onto the panel it runs over"
        table.add_fault("onto", what, "name the panel that is folded over it")
    return found


def _refuse_films_named_like_seams(names: Names, taken: dict[str, At], scope: Scope) -> None:
    for opening, at in names.films.items():
        own = f"{opening} seam"
        if own in taken:
            what = f"the film of '{opening}' is sewn with '{own}', like the seam on line {taken[own].line}"
            scope.faults.add(at, what, "give one of them another name")


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


def _through(table: Entries, names: Names) -> tuple[str, ...]:
    found: list[str] = []
    for scalar in table.scalars("through"):
        if scalar.text in found:
            table.scope.faults.add(scalar.at, f"'{scalar.text}' stands twice in 'through'", "keep one of them")
        elif scalar.text not in names.parts and names.is_complete:
            advice = word_advice(scalar.text, names.parts)
            table.scope.faults.add(scalar.at, f"there is no part '{scalar.text[:40]}'", advice)
        elif scalar.text in names.loose:
            what = f"'{scalar.text}' lies loose, so no seam goes through it"
            table.scope.faults.add(scalar.at, what, "leave it out")
        elif scalar.text in names.glued:
            what = f"'{scalar.text}' is held by glue alone, so no seam goes through it"
            remedy = f"leave it out, or write 'fastened: sewn' under '{scalar.text}'"
            table.scope.faults.add(scalar.at, what, remedy)
        else:
            found.append(scalar.text)
    return tuple(found)


def _followed(table: Entries, names: Names, through: tuple[str, ...], over: Covered) -> str:
    """The layer whose edges the seam follows, an empty text if it follows the body's."""
    name = names.part(table, "of") if "of" in table.nodes else ""
    if not name:
        return ""
    if name not in names.layers:
        what = f"'{name}' is no layer, so {table.what} cannot follow its edges"
        table.add_fault("of", what, word_advice(name, names.layers))
        return ""
    if name in names.glued:
        what = f"'{name}' is held by glue alone, so {table.what} cannot follow its edges"
        table.add_fault("of", what, f"leave out 'of', or write 'fastened: sewn' under '{name}'")
        return ""
    if through and name not in through:
        table.add_fault("of", f"{table.what} follows '{name}' and does not go through it", "add it to 'through'")
    panels = names.covered.get(name)
    if over and panels and not set(over) & set(panels):
        what = f"{table.what} follows '{name}', which covers no panel it runs over"
        table.add_fault("over", what, f"name {listed(names.panels[each] for each in panels)}")
    return name


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
