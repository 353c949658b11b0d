"""Parts from the outside in: layers, banks, pockets and gussets."""

from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum

from patternforge.design.cuts import layer_mouth, layer_thumb, mouth, notches, thumb
from patternforge.design.entries import Entries, entries, kind_named, titled
from patternforge.design.finishing import followed, skives, turned
from patternforge.design.form import Form
from patternforge.design.gussets import gusset
from patternforge.design.held import MOST_HELD, held
from patternforge.design.located import Lost, Node
from patternforge.design.names import Names
from patternforge.design.openings import openings
from patternforge.design.part_forms import (
    BankForm,
    GussetForm,
    InsetForm,
    LayerForm,
    LooseForm,
    PocketForm,
    TrimForm,
)
from patternforge.design.places import covered_panels, panel, sides, spot
from patternforge.design.scope import Kind, Scope
from patternforge.design.values import POSITIVE
from patternforge.design.words import word_advice
from patternforge.wallet.spec import (
    BankPart,
    BankShape,
    Edge,
    Fastening,
    Held,
    LayerPart,
    LoosePart,
    Lying,
    Part,
    PocketPart,
    Side,
    Spot,
)

__all__ = ["parts"]

_LAYER = LayerPart("", "", 0, 0)
_BANK = BankPart("", "", 0, "", 1, 0.0, 0.0)
_POCKET = PocketPart("", "", 0, "", 0.0)
_LOOSE = LoosePart("", 0, "", Spot(0))


class _LayerSize(StrEnum):
    DROP = "drop"


class _BankSize(StrEnum):
    STEP = "step"
    SHOW = "show"
    OVERLAP = "overlap"


class _PocketSize(StrEnum):
    DEPTH = "depth"


def parts(nodes: tuple[Node, ...], names: Names, scope: Scope) -> tuple[Part, ...]:
    """The parts declared, their names and those of their openings put in ``names``."""
    found = [_part(node, names, scope) for node in nodes]
    _refuse_films_named_like_parts(names, scope)
    _refuse_what_is_no_layer(names, scope)
    _refuse_what_is_glued(names, scope)
    return tuple(part for part in found if part is not None)


def _part(node: Node, names: Names, scope: Scope) -> Part | None:
    kind = kind_named(node, {kind: form for kind, (form, _) in _KINDS.items()})
    if kind is None:
        names.is_complete = False
        scope.leave_open()
        if not isinstance(node, Lost):
            what = "this part does not say what kind it is"
            words = [f"'{kind}: name'" for kind in _KINDS]
            scope.faults.add(node.at, what, f"begin it with {', '.join(words[:-1])} or {words[-1]}")
        return None
    form, read = _KINDS[kind]
    table = entries(node, form, titled(node, kind), scope)
    name = names.take(table, kind, "part", names.parts)
    if not name:
        names.is_complete = False
    part = read(table, name, names)
    names.covered.pop("", None)
    return part


def _refuse_films_named_like_parts(names: Names, scope: Scope) -> None:
    for opening, at in names.films.items():
        piece = f"{opening} film"
        if piece in names.parts:
            what = f"the film of '{opening}' is called '{piece}', like the part on line {names.parts[piece].line}"
            scope.faults.add(at, what, "give one of them another name")


def _refuse_what_is_no_layer(names: Names, scope: Scope) -> None:
    for named in names.layers_named if names.is_complete else ():
        if named.text not in names.layers:
            advice = word_advice(named.text, names.layers)
            scope.faults.add(named.at, f"there is no layer '{named.text[:40]}'", advice)


def _refuse_what_is_glued(names: Names, scope: Scope) -> None:
    for named in names.sewn_to:
        if named.text in names.glued:
            what = f"'{named.text}' is held by glue alone, so nothing is sewn to it"
            scope.faults.add(named.at, what, f"leave it out, or write 'fastened: sewn' under '{named.text}'")


def _sewn_to(table: Entries, names: Names) -> tuple[str, ...]:
    """The layers named, once each; whether there are such layers is seen when all parts are read."""
    found: list[str] = []
    for scalar in table.scalars("sewn_to"):
        if scalar.text in found:
            table.scope.faults.add(scalar.at, f"'{scalar.text}' stands twice in 'sewn_to'", "keep one of them")
        else:
            names.layers_named.append(scalar)
            names.sewn_to.append(scalar)
            found.append(scalar.text)
    return tuple(found)


def _layer(table: Entries, name: str, names: Names) -> LayerPart:
    follows, inside = followed(table, names)
    covered = names.covered.get(follows) if "follows" in table.nodes else covered_panels(table, names.panels)
    names.covered.setdefault(name, covered)
    names.layers.append(name)
    inset = _inset(table)
    holds = held(table)
    return LayerPart(
        name=name,
        leather=table.use("leather", Kind.LEATHER),
        first=covered[0] if covered else 0,
        last=covered[-1] if covered else 0,
        drop=table.length("drop", _LAYER.drop),
        opening=table.choice("opening", Edge, _LAYER.opening),
        holds=holds,
        showing=table.optional_choice("showing", Side),
        notch=table.length("notch", _LAYER.notch),
        trim=_trim(table),
        exact=_words(table, "exact", _LayerSize),
        inset=inset,
        corner=_own_corner(table, inset),
        shapes=sides(table),
        lying=table.choice("stands", Lying, _LAYER.lying),
        mouth=layer_mouth(table),
        thumb=layer_thumb(table, names, covered),
        notches=notches(table, covered, names),
        openings=openings(table, covered, names),
        line=table.at.line,
        follows=follows,
        inside=inside,
        skives=skives(table, covered, names),
        turned=turned(table, name, names),
        fastened=_fastened(table, name, holds, names),
    )


def _fastened(table: Entries, name: str, holds: tuple[Held, ...], names: Names) -> Fastening:
    """What holds the layer; a fault if it is glued down and yet to hold something behind it."""
    fastened = table.choice("fastened", Fastening, _LAYER.fastened)
    if fastened is Fastening.GLUED:
        names.glued.add(name)
        if holds:
            what = f"{table.what} is held by glue alone, so nothing goes behind it"
            table.add_fault("holds", what, "leave out 'holds', or write 'fastened: sewn'")
    return fastened


def _bank(table: Entries, name: str, names: Names) -> BankPart:
    on = panel(table.scalar("on"), table.scope, names.panels)
    covered = names.covered.setdefault(name, None if on is None else (on,))
    return BankPart(
        name=name,
        leather=table.use("leather", Kind.LEATHER),
        panel=on or 0,
        content=table.use("item", Kind.CONTENT),
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
        mouth=mouth(table),
        thumb=thumb(table),
        trim=_trim(table),
        exact=_words(table, "exact", _BankSize),
        sewn_to=_sewn_to(table, names),
        openings=openings(table, covered, names),
        line=table.at.line,
        skives=skives(table, covered, names),
    )


def _pocket(table: Entries, name: str, names: Names) -> PocketPart:
    on = panel(table.scalar("on"), table.scope, names.panels)
    covered = names.covered.setdefault(name, None if on is None else (on,))
    return PocketPart(
        name=name,
        leather=table.use("leather", Kind.LEATHER),
        panel=on or 0,
        content=table.use("item", Kind.CONTENT),
        depth=table.length("depth", bounds=POSITIVE),
        count=table.count("count", _POCKET.count, high=MOST_HELD),
        lying=table.choice("stands", Lying, _POCKET.lying),
        opening=table.choice("opening", Edge, _POCKET.opening),
        ease=table.length("ease", _POCKET.ease),
        facing=table.choice("facing", Side, _POCKET.facing),
        mouth=mouth(table),
        thumb=thumb(table),
        trim=_trim(table),
        exact=_words(table, "exact", _PocketSize),
        sewn_to=_sewn_to(table, names),
        openings=openings(table, covered, names),
        line=table.at.line,
        skives=skives(table, covered, names),
    )


def _loose(table: Entries, name: str, names: Names) -> LoosePart:
    on = panel(table.scalar("on"), table.scope, names.panels)
    covered = None if on is None else (on,)
    names.covered.setdefault(name, covered)
    names.loose.add(name)
    return LoosePart(
        name=name,
        panel=on or 0,
        content=table.use("item", Kind.CONTENT),
        spot=spot(table, names.panels, table.what, covered),
        count=table.count("count", _LOOSE.count, high=MOST_HELD),
        lying=table.choice("stands", Lying, _LOOSE.lying),
        line=table.at.line,
    )


_Reader = Callable[[Entries, str, Names], Part]
_KINDS: dict[str, tuple[type[Form], _Reader]] = {
    "layer": (LayerForm, _layer),
    "bank": (BankForm, _bank),
    "pocket": (PocketForm, _pocket),
    "loose": (LooseForm, _loose),
    "gusset": (GussetForm, gusset),
}


def _trim(table: Entries) -> tuple[tuple[Edge, float], ...]:
    trim = table.table("trim", TrimForm)
    return tuple((edge, trim.length(edge)) for edge in Edge if edge in trim.nodes)


def _inset(table: Entries) -> tuple[tuple[Edge, float], ...]:
    inset = table.table("inset", InsetForm)
    return tuple((edge, inset.length(edge)) for edge in Edge if edge in inset.nodes)


def _own_corner(table: Entries, inset: tuple[tuple[Edge, float], ...]) -> float | None:
    corner = table.optional_length("corner")
    if corner is not None and not inset and "inset" not in table.nodes:
        what = f"{table.what} has no inset, so its corners are the body's"
        table.add_fault("corner", what, "leave it out, or give the layer an inset")
    return corner


def _words(table: Entries, key: str, words: type[StrEnum]) -> tuple[str, ...]:
    return tuple(str(word) for word, _ in table.choices(key, words))
