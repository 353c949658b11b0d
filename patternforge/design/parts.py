"""Parts from the outside in: layers, banks and pockets."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum

from patternforge.design.entries import Entries, entries, titled
from patternforge.design.forms import BankForm, Form, LayerForm, MouthForm, PocketForm, ThumbForm, TrimForm, keys_of
from patternforge.design.located import At, Lost, Node, Scalar, Table
from patternforge.design.scope import Kind, Scope
from patternforge.design.values import POSITIVE, Bounds, count_of
from patternforge.design.words import nearest, word_advice
from patternforge.wallet.spec import (
    BankPart,
    BankShape,
    Edge,
    Held,
    LayerPart,
    Lying,
    MouthShape,
    MouthSpec,
    Part,
    PocketPart,
    Side,
    ThumbNotch,
)

__all__ = ["PartNames", "parts"]

_MOST_HELD = 200
_LAYER = LayerPart("", "", 0, 0)
_BANK = BankPart("", "", 0, "", 1, 0.0, 0.0)
_POCKET = PocketPart("", "", 0, "", 0.0)
_MOUTH = MouthSpec()


class _LayerSize(StrEnum):
    DROP = "drop"


class _BankSize(StrEnum):
    STEP = "step"
    SHOW = "show"
    OVERLAP = "overlap"


class _PocketSize(StrEnum):
    DEPTH = "depth"


@dataclass(slots=True)
class PartNames:
    """Names given to parts with their places; ``complete`` unless a part could not be read at all."""

    taken: dict[str, At] = field(default_factory=dict)
    complete: bool = True


def parts(nodes: tuple[Node, ...], panels: tuple[str, ...], names: PartNames, scope: Scope) -> tuple[Part, ...]:
    """The parts declared, their names put in ``names``; ``panels`` is empty if the body could not be read."""
    found = (_part(node, panels, names, scope) for node in nodes)
    return tuple(part for part in found if part is not None)


def _part(node: Node, panels: tuple[str, ...], names: PartNames, scope: Scope) -> Part | None:
    kind = _kind(node)
    if kind is None:
        names.complete = False
        scope.leave_open()
        if not isinstance(node, Lost):
            what = "this part does not say what kind it is"
            scope.faults.add(node.at, what, "begin it with 'layer: name', 'bank: name' or 'pocket: name'")
        return None
    form, read = _KINDS[kind]
    table = entries(node, form, titled(node, kind), scope)
    return read(table, _name(table, kind, names), panels)


def _kind(node: Node) -> str | None:
    """The kind a part names, spelt right or almost right."""
    if not isinstance(node, Table):
        return None
    keys = [entry.key.text for entry in node]
    known = next((key for key in keys if key in _KINDS), None)
    strange = [key for key in keys if not any(key in keys_of(form) for form, _ in _KINDS.values())]
    return known or next((near for key in strange if (near := nearest(key, _KINDS))), None)


def _name(table: Entries, kind: str, names: PartNames) -> str:
    name = table.text(kind)
    if not name:
        names.complete = False
    elif name in names.taken:
        what = f"the name '{name}' is taken by the part on line {names.taken[name].line}"
        table.add_fault(kind, what, "give every part a name of its own")
    else:
        names.taken[name] = table.at_of(kind)
    return name


def _layer(table: Entries, name: str, panels: tuple[str, ...]) -> LayerPart:
    first, last = _covered(table, panels)
    return LayerPart(
        name=name,
        leather=_used(table, "leather", Kind.LEATHER),
        first=first,
        last=last,
        drop=table.length("drop", _LAYER.drop),
        opening=table.choice("opening", Edge, _LAYER.opening),
        holds=_held(table),
        showing=table.optional_choice("showing", Side),
        notch=table.length("notch", _LAYER.notch),
        trim=_trim(table),
        exact=_words(table, "exact", _LayerSize),
        line=table.at.line,
    )


def _bank(table: Entries, name: str, panels: tuple[str, ...]) -> BankPart:
    return BankPart(
        name=name,
        leather=_used(table, "leather", Kind.LEATHER),
        panel=_panel(table.scalar("on"), table.scope, panels),
        content=_used(table, "item", Kind.CONTENT),
        slots=table.count("slots"),
        step=table.length("step", bounds=POSITIVE),
        show=table.length("show", bounds=POSITIVE),
        per_slot=table.count("per_slot", _BANK.per_slot, high=20),
        shape=table.choice("shape", BankShape, _BANK.shape),
        lying=table.choice("stands", Lying, _BANK.lying),
        opening=table.choice("opening", Edge, _BANK.opening),
        columns=table.count("columns", _BANK.columns, high=6),
        overlap=table.length("overlap", _BANK.overlap),
        ease=table.length("ease", _BANK.ease),
        facing=table.choice("facing", Side, _BANK.facing),
        mouth=_mouth(table),
        thumb=_thumb(table),
        trim=_trim(table),
        exact=_words(table, "exact", _BankSize),
        line=table.at.line,
    )


def _pocket(table: Entries, name: str, panels: tuple[str, ...]) -> PocketPart:
    return PocketPart(
        name=name,
        leather=_used(table, "leather", Kind.LEATHER),
        panel=_panel(table.scalar("on"), table.scope, panels),
        content=_used(table, "item", Kind.CONTENT),
        depth=table.length("depth", bounds=POSITIVE),
        count=table.count("count", _POCKET.count, high=_MOST_HELD),
        lying=table.choice("stands", Lying, _POCKET.lying),
        opening=table.choice("opening", Edge, _POCKET.opening),
        ease=table.length("ease", _POCKET.ease),
        facing=table.choice("facing", Side, _POCKET.facing),
        mouth=_mouth(table),
        thumb=_thumb(table),
        trim=_trim(table),
        exact=_words(table, "exact", _PocketSize),
        line=table.at.line,
    )


_Reader = Callable[[Entries, str, tuple[str, ...]], Part]
_KINDS: dict[str, tuple[type[Form], _Reader]] = {
    "layer": (LayerForm, _layer),
    "bank": (BankForm, _bank),
    "pocket": (PocketForm, _pocket),
}


def _used(table: Entries, key: str, kind: Kind) -> str:
    name = table.text(key)
    if not name:
        table.scope.leave_open()
        return ""
    return table.scope.use(name, kind, table.at_of(key)) or ""


def _panel(scalar: Scalar | None, scope: Scope, panels: tuple[str, ...]) -> int:
    if scalar is None or not panels:
        return 0
    if scalar.text in panels:
        return panels.index(scalar.text)
    scope.faults.add(scalar.at, f"there is no panel '{scalar.text[:40]}'", word_advice(scalar.text, panels))
    return 0


def _covered(table: Entries, panels: tuple[str, ...]) -> tuple[int, int]:
    """First and last panel of a layer, all of them if nothing is said."""
    node = table.node("over")
    if node is None:
        return 0, max(len(panels) - 1, 0)
    if isinstance(node, Scalar):
        only = _panel(node, table.scope, panels)
        return only, only
    named = table.scalars("over")
    if table.is_refused("over"):
        return 0, 0
    if len(named) not in (1, 2):
        table.add_fault(
            "over", f"'over' of {table.what} names {len(named)} panels", "name the first and the last one"
        )
        return 0, 0
    before = len(table.scope.faults.found)
    first, last = (_panel(scalar, table.scope, panels) for scalar in (named[0], named[-1]))
    if first > last and len(table.scope.faults.found) == before:
        table.add_fault("over", f"'over' of {table.what} runs from right to left", "name the left panel first")
    return first, last


def _held(table: Entries) -> tuple[Held, ...]:
    held = []
    for key, node in table.named("holds"):
        name = table.scope.use(key.text, Kind.CONTENT, key.at)
        what = f"the count of '{key.text}' in {table.what}"
        if not isinstance(node, Scalar) or node.is_blank:
            table.scope.faults.add(node.at, f"{what} is missing", "write how many")
        else:
            count = count_of(node, what, table.scope, Bounds(1, _MOST_HELD))
            held.append(Held(name or "", count))
    return tuple(held)


def _mouth(table: Entries) -> MouthSpec:
    if isinstance(table.node("mouth"), Scalar):
        shape = table.choice("mouth", MouthShape, _MOUTH.shape)
        if shape is not MouthShape.STRAIGHT:
            table.add_fault("mouth", f"a {shape} mouth needs a depth", f"write {{shape: {shape}, depth: 3 mm}}")
        return _MOUTH
    if "mouth" not in table.nodes:
        return _MOUTH
    mouth = table.table("mouth", MouthForm)
    shape = mouth.choice("shape", MouthShape, _MOUTH.shape)
    if shape is MouthShape.STRAIGHT and "depth" in mouth.nodes and not mouth.is_refused("shape"):
        mouth.add_fault("depth", "a straight mouth has no depth", "leave it out, or make the mouth dipped or slanted")
    if shape is not MouthShape.STRAIGHT and "depth" not in mouth.nodes:
        mouth.scope.faults.add(mouth.at, f"a {shape} mouth needs a depth", "add 'depth: 3 mm'")
    return MouthSpec(shape, mouth.length("depth", _MOUTH.depth, POSITIVE))


def _thumb(table: Entries) -> ThumbNotch | None:
    if "thumb" not in table.nodes:
        return None
    thumb = table.table("thumb", ThumbForm)
    width, depth = thumb.length("width", bounds=POSITIVE), thumb.length("depth", bounds=POSITIVE)
    if depth > width / 2:
        thumb.add_fault("depth", f"a notch {depth:g} mm deep is deeper than round", f"use at most {width / 2:g} mm")
    return ThumbNotch(width, depth)


def _trim(table: Entries) -> tuple[tuple[Edge, float], ...]:
    trim = table.table("trim", TrimForm)
    return tuple((edge, trim.length(edge)) for edge in Edge if edge in trim.nodes)


def _words(table: Entries, key: str, words: type[StrEnum]) -> tuple[str, ...]:
    return tuple(str(word) for word, _ in table.choices(key, words))
