"""What a table says of each role's lines: layer, colour, line weight, pen, as far as the format knows them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from patternforge.design.entries import Entries
from patternforge.design.values import Bounds
from patternforge.drawing.model import Role
from patternforge.export.dxf import CUT_ROLES, WEIGHTS, DxfVersion
from patternforge.machines.forms import OperationForm
from patternforge.machines.table import Format, Operation

__all__ = ["operations"]

# What a name of a layer may hold in the oldest release of DXF, which every other format takes as well.
_LAYER = re.compile(r"[A-Za-z0-9_-]{1,31}", re.ASCII)
_RGB = re.compile(r"#?([0-9A-Fa-f]{6})", re.ASCII)
_PENS = 8
_WIDEST = 5.0  # of a line in a drawing, mm
_MM = 100  # hundredths of a mm


def operations(table: Entries, form: Format | None, release: DxfVersion) -> tuple[Operation, ...]:
    """An operation for each role that the table names, in the order of cutting; faults for what ``form`` has not.

    Where the format could not be read it is None, and nothing is said of what goes with it.
    """
    taken: dict[str, Role] = {}
    return tuple(_operation(table, role, form, release, taken) for role in CUT_ROLES if role.value in table.nodes)


def _operation(
    table: Entries, role: Role, form: Format | None, release: DxfVersion, taken: dict[str, Role]
) -> Operation:
    own = table.table(role.value, OperationForm, f"operation '{role.value}'")
    for key, why in _foreign(form, release):
        if own.node(key) is not None:
            own.add_fault(key, why, f"leave '{key}' out")
    return Operation(
        role,
        layer=_layer(own, role, taken) if own.node("layer") else None,
        colour=_colour(own, form) if own.node("colour") else None,
        weight=_weight(own, form) if own.node("weight") else None,
        pen=own.count("pen", low=1, high=_PENS) if own.node("pen") else None,
        written=own.flag("write", True),
    )


def _foreign(form: Format | None, release: DxfVersion) -> Iterator[tuple[str, str]]:
    """Keys that mean nothing in files of this format, each with the reason."""
    if form is None:
        return
    if form is Format.HPGL:
        for key in ("layer", "colour", "weight"):
            yield key, f"a plot has pens and no {key}"
        return
    yield "pen", f"a {form} file knows no pens"
    if form is Format.DXF and release is DxfVersion.R12:
        yield "weight", "release R12 knows no line weights"


def _layer(own: Entries, role: Role, taken: dict[str, Role]) -> str:
    """The name; a fault if two roles share it: what is scored and what is cut through could not be told apart."""
    name = own.text("layer")
    other = taken.setdefault(name.casefold(), role)
    if name and not _LAYER.fullmatch(name):
        advice = "use letters a to z, digits, - and _, 31 at most"
        own.add_fault("layer", f"'{name[:40]}' cannot be the name of a layer in every release", advice)
    elif name and other is not role:
        what = f"layer '{name}' is that of '{other.value}' already"
        own.add_fault("layer", what, "give every operation a layer of its own")
    return name


def _colour(own: Entries, form: Format | None) -> int | str | None:
    if form is Format.DXF:
        return own.count("colour", low=1, high=255)
    text = own.text("colour")
    match = _RGB.fullmatch(text)
    if text and match is None and form is Format.SVG:
        own.add_fault("colour", f"'{text[:40]}' is not a colour", "write six digits 0 to f, such as 00666e")
    return f"#{match[1].lower()}" if match else None


def _weight(own: Entries, form: Format | None) -> float:
    weight = own.length("weight", bounds=Bounds(0.0, _WIDEST))
    if form is Format.DXF and weight == weight and round(weight * _MM, 6) not in WEIGHTS:
        near = sorted(WEIGHTS, key=lambda known: abs(known - weight * _MM))[:2]
        advice = f"write {' or '.join(f'{known / _MM:g} mm' for known in sorted(near))}"
        own.add_fault("weight", f"a dxf file has no lines {weight:g} mm wide", advice)
    return weight
