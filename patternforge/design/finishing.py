"""Skived leather, turned edges, and layers that copy the outline of another."""

from __future__ import annotations

import math
from itertools import pairwise

from patternforge.design.entries import Entries, entries, kind_named
from patternforge.design.finishing_forms import EdgeSkiveForm, FoldSkiveForm, PatchSkiveForm, TurnedForm
from patternforge.design.form import Form
from patternforge.design.located import Lost, Node, Scalar, Table
from patternforge.design.names import Covered, Names
from patternforge.design.places import spot
from patternforge.design.values import ANY, POSITIVE
from patternforge.design.words import listed, word_advice
from patternforge.wallet.finishing import (
    EdgeSkive,
    FoldSkive,
    PatchSkive,
    SkiveSpec,
    TurnedCorner,
    TurnedHoles,
    TurnedSpec,
)
from patternforge.wallet.spec import Edge

__all__ = ["followed", "skives", "turned"]

_SKIVES: dict[str, type[Form]] = {"along": EdgeSkiveForm, "fold": FoldSkiveForm, "at": PatchSkiveForm}
_TURNED = TurnedSpec(())
_COPIED = ("over", "drop", "notch", "trim", "exact", "inset", "corner", "sides", "mouth", "thumb", "notches")


def followed(table: Entries, names: Names) -> tuple[str, float]:
    """The layer that a layer copies and how far inside it, mm; an empty text if it has an outline of its own."""
    if "follows" not in table.nodes:
        if "inside" in table.nodes:
            table.add_fault("inside", f"{table.what} follows no layer", "add 'follows: shell', or use 'inset'")
        return "", 0.0
    name = table.text("follows")
    if name and name not in names.layers:
        what = f"no layer '{name[:40]}' stands before {table.what}"
        table.add_fault("follows", what, word_advice(name, names.layers) if names.layers else "declare it first")
    for key in _COPIED:
        if key in table.nodes:
            what = f"{table.what} copies the outline of '{name}' and has no '{key}' of its own"
            table.add_fault(key, what, "leave it out")
    return name if name in names.layers else "", table.length("inside", 0.0, ANY)


def skives(part: Entries, covered: Covered, names: Names) -> tuple[SkiveSpec, ...]:
    """The skives of a part that covers the panels ``covered``."""
    found = (_skive(node, part, covered, names) for node in part.row("skives"))
    return tuple(skive for skive in found if skive is not None)


def _skive(node: Node, part: Entries, covered: Covered, names: Names) -> SkiveSpec | None:
    kind = kind_named(node, _SKIVES)
    what = f"this skive of {part.what}"
    if kind is None:
        part.scope.leave_open()
        if not isinstance(node, Lost):
            advice = "give it 'along: [left]', 'fold: 1' or 'at: {panel: left}'"
            part.scope.faults.add(node.at, f"{what} does not say where it is", advice)
        return None
    table = entries(node, _SKIVES[kind], what, part.scope)
    width, to = table.length("width", bounds=POSITIVE), _left(table, part)
    if kind == "along":
        return EdgeSkive(_edges(table, "along"), width, to)
    if kind == "fold":
        return FoldSkive(_fold(table, part, covered), width, to)
    return PatchSkive(
        spot(table, names.panels, part.what, covered), width, table.length("height", bounds=POSITIVE), to
    )


def _left(table: Entries, part: Entries) -> float:
    """The thickness a skive leaves; a fault if it is not less than the leather's."""
    to = table.length("to", bounds=POSITIVE)
    role = part.scalar("leather")
    known = part.scope.values.get(f"{role.text}.thickness") if role else None
    if known is not None and to >= known.number:
        what = f"{table.what} leaves {to:g} mm of leather {known.number:g} mm thick"
        table.add_fault("to", what, "leave less, or leave the skive out")
    return to


def _edges(table: Entries, key: str) -> tuple[Edge, ...]:
    found = table.choices(key, Edge)
    if not found and key in table.nodes and not table.is_refused(key):
        table.add_fault(key, f"'{key}' of {table.what} names no edge", "write [left, right] or the like")
    return tuple(edge for edge, _ in found)


def _fold(table: Entries, part: Entries, covered: Covered) -> int:
    """The fold, 0-based; a fault unless the part crosses it."""
    faults = len(table.scope.faults.found)
    number = table.count("fold", high=8)
    is_sound = len(table.scope.faults.found) == faults
    crossed = [b for a, b in pairwise(covered or ()) if b == a + 1]
    if covered is not None and number not in crossed and is_sound:
        advice = f"it crosses {listed(str(fold) for fold in crossed)}" if crossed else "it crosses none"
        table.add_fault("fold", f"{part.what} does not cross fold {number}", advice)
    return number - 1


def turned(part: Entries, name: str, names: Names) -> tuple[TurnedSpec, ...]:
    """The groups of edges of the layer ``name`` that are turned in."""
    taken: set[Edge] = set()
    return tuple(_turned(node, part, name, names, taken) for node in part.row("turned"))


def _turned(node: Node, part: Entries, name: str, names: Names, taken: set[Edge]) -> TurnedSpec:
    table = entries(node, TurnedForm, f"'turned' of {part.what}", part.scope)
    edges = _edges(table, "edges")
    _refuse_taken(table, part, edges, taken)
    overlap = table.length("overlap", _TURNED.overlap, POSITIVE)
    return TurnedSpec(
        edges=edges,
        overlap=overlap,
        over=_over(table, name, names),
        core=table.length("core", _TURNED.core),
        corners=table.optional_choice("corners", TurnedCorner),
        corner_gap=table.optional_length("corner_gap", POSITIVE),
        corner_overlap=_within_overlap(table, "corner_overlap", overlap),
        notch_gap=_within_overlap(table, "notch_gap", overlap) or _TURNED.notch_gap,
        holes=table.choice("holes", TurnedHoles, _TURNED.holes),
    )


def _refuse_taken(table: Entries, part: Entries, edges: tuple[Edge, ...], taken: set[Edge]) -> None:
    trims = part.node("trim")
    trimmed = {entry.key.text for entry in trims} if isinstance(trims, Table) else set()
    for edge in edges:
        if edge in taken:
            table.add_fault("edges", f"the {edge} edge of {part.what} is turned in twice", "name it once")
        elif edge in trimmed:
            table.add_fault("edges", f"the {edge} edge of {part.what} is trimmed and turned in", "do one of them")
        taken.add(edge)


def _over(table: Entries, name: str, names: Names) -> tuple[str, ...]:
    """The layers named; whether there are such layers is seen when all parts are read."""
    node = table.node("over")
    named = (node,) if isinstance(node, Scalar) else table.scalars("over")
    for scalar in named:
        if scalar.text == name:
            table.scope.faults.add(scalar.at, f"'{name}' cannot be turned in over itself", "leave it out")
        else:
            names.layers_named.append(scalar)
    return tuple(scalar.text for scalar in named)


def _within_overlap(table: Entries, key: str, overlap: float) -> float | None:
    length = table.optional_length(key, POSITIVE)
    if length is not None and length > overlap:
        what = f"'{key}' of {table.what} is {length:g} mm, wider than its overlap of {overlap:g} mm"
        table.add_fault(key, what, "make it narrower")
    return None if length is None or math.isnan(length) else length
