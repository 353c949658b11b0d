"""Mouths, thumb notches and notches: what is cut into the edges of parts."""

from __future__ import annotations

from enum import StrEnum
from typing import TypeVar

from patternforge.design.entries import Entries, entries, titled
from patternforge.design.form import Form
from patternforge.design.located import Node, Scalar
from patternforge.design.names import Covered, Names
from patternforge.design.part_forms import LayerMouthForm, LayerThumbForm, MouthForm, NotchForm, ThumbForm
from patternforge.design.places import bend_spot, panel
from patternforge.design.values import POSITIVE
from patternforge.design.words import listed
from patternforge.wallet.spec import Edge, EdgeNotch, MouthShape, MouthSpec, NotchShape, ThumbNotch

__all__ = ["layer_mouth", "layer_thumb", "mouth", "notches", "thumb"]

_MOUTH = MouthSpec()
_Shape = TypeVar("_Shape", bound=StrEnum)


class _LayerMouth(StrEnum):
    STRAIGHT = "straight"
    DIPPED = "dipped"


def mouth(table: Entries) -> MouthSpec:
    """The mouth of a bank or pocket."""
    return _mouth(table, MouthForm, MouthShape)


def layer_mouth(table: Entries) -> MouthSpec:
    """The opening edge of a layer, which has no slanted mouth: its sides slant."""
    return _mouth(table, LayerMouthForm, _LayerMouth)


def _mouth(table: Entries, form: type[Form], shapes: type[_Shape]) -> MouthSpec:
    straight = shapes("straight")
    if isinstance(table.node("mouth"), Scalar):
        shape = table.choice("mouth", shapes, straight)
        if shape is not straight:
            table.add_fault("mouth", f"a {shape} mouth needs a depth", f"write {{shape: {shape}, depth: 3 mm}}")
        return _MOUTH
    if "mouth" not in table.nodes:
        return _MOUTH
    found = table.table("mouth", form)
    shape = found.choice("shape", shapes, straight)
    if shape is straight and "depth" in found.nodes and not found.is_refused("shape"):
        advice = f"leave it out, or make the mouth {' or '.join(word for word in shapes if word != straight)}"
        found.add_fault("depth", "a straight mouth has no depth", advice)
    if shape is not straight and "depth" not in found.nodes:
        found.scope.faults.add(found.at, f"a {shape} mouth needs a depth", "add 'depth: 3 mm'")
    return MouthSpec(MouthShape(shape), found.length("depth", _MOUTH.depth, POSITIVE))


def thumb(table: Entries) -> ThumbNotch | None:
    """The thumb notch of a bank or pocket."""
    if "thumb" not in table.nodes:
        return None
    return ThumbNotch(*_sizes(table.table("thumb", ThumbForm)))


def layer_thumb(table: Entries, names: Names, covered: Covered) -> ThumbNotch | None:
    """The thumb notch of a layer, on the panel it names."""
    if "thumb" not in table.nodes:
        return None
    found = table.table("thumb", LayerThumbForm)
    on = panel(found.scalar("panel"), found.scope, names.panels)
    if on is not None and covered is not None and on not in covered:
        what = f"{found.what} lies on panel '{names.panels[on]}', which {table.what} does not cover"
        found.add_fault("panel", what, f"it covers {listed(names.panels[each] for each in covered)}")
    return ThumbNotch(*_sizes(found), panel=on)


def notches(part: Entries, covered: Covered, names: Names) -> tuple[EdgeNotch, ...]:
    """The notches in the edges of a layer that covers the panels ``covered``."""
    return tuple(_notch(node, part, covered, names) for node in part.row("notches"))


def _notch(node: Node, part: Entries, covered: Covered, names: Names) -> EdgeNotch:
    table = entries(node, NotchForm, titled(node, "notch"), part.scope)
    shape = table.choice("shape", NotchShape, NotchShape.VEE)
    width, depth = (table.length(key, bounds=POSITIVE) for key in ("width", "depth"))
    if shape is NotchShape.ROUND:
        _refuse_deeper_than_round(table, width, depth)
    return EdgeNotch(
        name=table.text("notch"),
        edge=table.choice("edge", Edge, Edge.TOP),
        spot=bend_spot(table, names.panels, part.what, covered),
        width=width,
        depth=depth,
        shape=shape,
    )


def _sizes(table: Entries) -> tuple[float, float]:
    width, depth = table.length("width", bounds=POSITIVE), table.length("depth", bounds=POSITIVE)
    _refuse_deeper_than_round(table, width, depth)
    return width, depth


def _refuse_deeper_than_round(table: Entries, width: float, depth: float) -> None:
    if depth > width / 2:
        table.add_fault("depth", f"a notch {depth:g} mm deep is deeper than round", f"use at most {width / 2:g} mm")
