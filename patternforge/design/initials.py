"""Initials of a design: letters on a part, their text changed for an order if asked."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from patternforge.design.entries import Entries, entries, titled
from patternforge.design.located import At, Entry, FaultList, Node, Row, Scalar, Table, beside
from patternforge.design.mark_forms import InitialsForm, LetterStyle, StampForm
from patternforge.design.names import Names
from patternforge.design.places import spot
from patternforge.design.scope import Scope
from patternforge.design.values import POSITIVE, text_of
from patternforge.design.words import word_advice
from patternforge.drawing.drawable import undrawable
from patternforge.wallet.spec import Edge, Initials, Spot, Stamp

__all__ = ["initials", "with_initials"]

_OPTION = "--initials"
_INITIALS = Initials("", "", "", Spot(0), 0.0, 0.0)
_STAMP = Stamp(0.0, 0.0)


def with_initials(root: Table, texts: Mapping[str, str], faults: FaultList) -> Table:
    """``root`` with the text of the initials of each name replaced; a name that the file does not declare is a fault.

    Whether the new text can be lettered is found out where it is read.
    """
    row = root.get("initials")
    nodes = row.items if isinstance(row, Row) else ()
    known = [_name(node) for node in nodes]
    for name in texts:
        if name not in known:
            what = f"there are no initials called '{name}'"
            faults.add(beside(_OPTION, name, texts[name]), what, word_advice(name, [each for each in known if each]))
    if not isinstance(row, Row):
        return root
    changed = replace(row, items=tuple(_lettered(node, texts) for node in nodes))
    return replace(root, entries=tuple(_instead(entry, row, changed) for entry in root))


def _instead(entry: Entry, old: Node, new: Node) -> Entry:
    return replace(entry, value=new) if entry.value is old else entry


def _name(node: Node) -> str:
    name = node.get("initials") if isinstance(node, Table) else None
    return name.text.strip() if isinstance(name, Scalar) else ""


def _lettered(node: Node, texts: Mapping[str, str]) -> Node:
    name = _name(node)
    if not isinstance(node, Table) or name not in texts:
        return node
    text = Scalar(texts[name], beside(_OPTION, name, texts[name]), plain=False)
    key = next((entry.key for entry in node if entry.key.text == "text"), Scalar("text", node.at))
    others = tuple(entry for entry in node if entry.key.text != "text")
    return replace(node, entries=(*others, Entry(key, text)))


def initials(nodes: tuple[Node, ...], names: Names, scope: Scope) -> tuple[Initials, ...]:
    """The initials declared; a fault for letters that cannot be drawn or stamps that do not fit their box."""
    taken: dict[str, At] = {}
    return tuple(
        _initials(entries(node, InitialsForm, titled(node, "initials"), scope), names, taken) for node in nodes
    )


def _initials(table: Entries, names: Names, taken: dict[str, At]) -> Initials:
    name = names.take(table, "initials", "initials", taken)
    part = names.part(table, "on")
    width, height = table.length("width", bounds=POSITIVE), table.length("height", bounds=POSITIVE)
    text = _text(table)
    stamp = _stamp(table)
    if stamp:
        _refuse_unfitting(table, text, stamp, (width, height))
    return Initials(
        name=name,
        text=text,
        part=part,
        spot=spot(table, names.panels, f"'{part}'", names.covered.get(part)),
        width=width,
        height=height,
        stamp=stamp,
        clear=table.length("clear", _INITIALS.clear),
        up=table.optional_choice("up", Edge),
        line=table.at.line,
    )


def _text(table: Entries) -> str:
    """The letters; an empty text in quotes or on the command line is lawful and keeps the box alone."""
    scalar = table.scalar("text")
    if scalar is None or (not scalar.plain and not scalar.text.strip()):
        return ""
    text = text_of(scalar, f"'text' of {table.what}", table.scope)
    fault = undrawable(text).partition(";")[0]
    if fault:
        table.add_fault("text", f"'text' of {table.what}: {fault}", "spell it with letters that can be drawn")
        return ""
    return text


def _stamp(table: Entries) -> Stamp | None:
    style = table.choice("style", LetterStyle, LetterStyle.STROKES)
    if style is LetterStyle.STROKES:
        if "stamp" in table.nodes and not table.is_refused("style"):
            what = f"{table.what} are drawn as strokes, which take no stamp"
            table.add_fault("stamp", what, "leave it out, or write 'style: stamps'")
        return None
    if "stamp" not in table.nodes:
        what = f"{table.what} are to be stamped, but the size of a stamp is not told"
        table.add_fault("style", what, "add 'stamp: {width: 6 mm, height: 8 mm}'")
        return None
    stamp = table.table("stamp", StampForm)
    return Stamp(
        stamp.length("width", bounds=POSITIVE),
        stamp.length("height", bounds=POSITIVE),
        stamp.length("spacing", _STAMP.spacing),
    )


def _refuse_unfitting(table: Entries, text: str, stamp: Stamp, box: tuple[float, float]) -> None:
    from patternforge.drawing.lettering import letters

    count = len(letters(text))
    row = count * stamp.width + max(count - 1, 0) * stamp.spacing
    width, height = box
    if not math.isnan(row) and row > width:
        what = f"{count} stamps in a row take {row:g} mm, but the box of {table.what} is {width:g} mm wide"
        table.add_fault("text", what, "make the box wider, the spacing less or the text shorter")
    if stamp.height > height:
        what = f"a stamp of {stamp.height:g} mm is higher than the box of {table.what}, which is {height:g} mm high"
        table.add_fault("stamp", what, "make the box higher")
