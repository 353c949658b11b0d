"""The whole way from text to a resolved design, or to every fault of the file at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import PurePath
from types import MappingProxyType

from patternforge.design.body import body, load_share
from patternforge.design.entries import Entries, entries
from patternforge.design.fittings import fittings
from patternforge.design.folded import folded
from patternforge.design.folded_forms import FoldedForm
from patternforge.design.form import keys_of
from patternforge.design.forms import BodyForm, DesignForm, LimitsForm, StitchingForm
from patternforge.design.gussets import refuse_loose_gussets
from patternforge.design.initials import initials, with_initials
from patternforge.design.ledger import ledger
from patternforge.design.located import FaultList, Lost, Node
from patternforge.design.materials import contents, leathers, parameters
from patternforge.design.names import Names
from patternforge.design.parts import parts
from patternforge.design.scope import Kind, Scope
from patternforge.design.seams import limits, seams, stitching
from patternforge.design.settings import with_settings
from patternforge.design.source import located
from patternforge.leather.catalogue import catalogue
from patternforge.leather.hardware import hardware
from patternforge.wallet.spec import Design, Stitching

__all__ = ["load_design"]

_SEWN = ("body", "stitching", "parts", "seams", "fittings", "initials")
_DECLARING = {Kind.LEATHER: "leathers", Kind.CONTENT: "contents", Kind.PARAMETER: "parameters"}


_NOTHING: Mapping[str, str] = MappingProxyType({})


def load_design(
    text: str, file: str, settings: Mapping[str, str] = _NOTHING, texts: Mapping[str, str] = _NOTHING
) -> Design:
    """The design that ``text`` declares, lengths in mm; ``file`` is the name used in messages.

    ``settings`` replaces the value of a parameter, or the thickness or neutral of a leather, by its name, ``texts``
    the letters of initials by theirs. Raises DesignError with every fault of the text, each with its line and column.

    >>> text = '''
    ... design: Card sleeve
    ... leathers: {outer: {thickness: 3-4 oz}}
    ... contents: {card: id1}
    ... body: {panels: {front: card.length + 15 mm}}
    ... parts: [{layer: back, leather: outer}]
    ... '''
    >>> load_design(text, "sleeve.yaml").body.panels[0].width
    100.6
    >>> load_design(text.replace("card: id1", "card: id11"), "a.yaml")
    Traceback (most recent call last):
    patternforge.errors.DesignError: a.yaml:4:18: the catalogue has no item 'id11'; did you mean 'id1'?
    """
    faults = FaultList()
    root = located(text, file, faults)
    scope = Scope(faults)
    if faults.found:
        scope.leave_open()
    changed = with_initials(with_settings(root, settings, faults), texts, faults)
    top = entries(changed, DesignForm, "the design", scope)
    design = _design(top, scope, PurePath(file))
    scope.report_unused()
    faults.raise_if_any()
    return replace(design, entered=ledger(changed, scope))


def _design(top: Entries, scope: Scope, file: PurePath) -> Design:
    named = {kind: top.named(key) for kind, key in _DECLARING.items()}
    scope.unreadable.update(kind for kind, key in _DECLARING.items() if top.is_refused(key))
    if top.node("leathers") and not named[Kind.LEATHER]:
        scope.unreadable.add(Kind.LEATHER)
        _refuse_empty(top, "leathers", "declare at least one, such as {outer: {thickness: 1.2 mm}}")
    for kind, entries_of_kind in named.items():
        for key, _ in entries_of_kind:
            scope.declare(key.text, kind, key.at)
    leather = leathers(named[Kind.LEATHER], scope)
    content = contents(named[Kind.CONTENT], scope, catalogue())
    parameter = parameters(named[Kind.PARAMETER], scope)
    _refuse_mixture(top)
    is_folded = "folded" in top.nodes
    spec = body(top.table("body", BodyForm, "the body"))
    sewing = stitching(top.table("stitching", StitchingForm, "'stitching'"), Stitching())
    part_nodes = () if is_folded else _part_nodes(top)
    names = Names(panels=tuple(panel.name for panel in spec.panels), is_complete=bool(part_nodes))
    part = parts(part_nodes, names, scope)
    sewn = seams(top.row("seams"), sewing, names, scope)
    refuse_loose_gussets(part, sewn, names, scope)
    return Design(
        name=file.stem,
        title=top.text("design"),
        revision=top.text("revision"),
        notes=top.notes("notes"),
        file=file.name,
        parameters=parameter,
        leathers=leather,
        contents=content,
        body=spec,
        parts=part,
        seams=sewn,
        stitching=sewing,
        load=load_share(top.node("load"), scope),
        limits=limits(top.table("limits", LimitsForm, "'limits'")),
        fittings=fittings(top.row("fittings"), names, scope, hardware()),
        initials=initials(top.row("initials"), names, scope),
        folded=folded(top.table("folded", FoldedForm, "the folded wallet")) if is_folded else None,
    )


def _refuse_mixture(top: Entries) -> None:
    """Faults for what a wallet folded from one piece has no use for, or for what any other must have."""
    if "folded" in top.nodes:
        for key in _SEWN:
            if key in top.nodes and not top.is_refused(key):
                top.add_fault(
                    key, f"a wallet folded from one piece has no '{key}'", "leave it out, or leave out 'folded'"
                )
        return
    meanings = keys_of(DesignForm)
    for key in ("body", "parts"):
        if key not in top.nodes:
            top.scope.leave_open()
            top.scope.faults.add(top.at, f"the design has no '{key}'", f"add '{key}: ...' ({meanings[key]})")
            top.nodes[key] = Lost(top.at)


def _part_nodes(top: Entries) -> tuple[Node, ...]:
    nodes = top.row("parts")
    if not nodes and not top.is_refused("parts"):
        _refuse_empty(top, "parts", "begin with the outermost, such as - {layer: shell, leather: outer}")
    return nodes


def _refuse_empty(top: Entries, key: str, remedy: str) -> None:
    top.scope.leave_open()
    top.add_fault(key, f"the design has no {key}", remedy)
