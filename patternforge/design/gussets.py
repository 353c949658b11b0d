"""Gussets, and whether the seams they join hold each of them to a wall of its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.design.entries import Entries
from patternforge.design.held import held
from patternforge.design.located import Scalar
from patternforge.design.names import Names
from patternforge.design.places import panel
from patternforge.design.scope import Kind, Scope
from patternforge.design.values import POSITIVE
from patternforge.design.words import word_advice
from patternforge.wallet.spec import Edge, GussetPart, LayerPart, LoosePart, Lying, Part, SeamSpec, Side

__all__ = ["gusset", "refuse_loose_gussets"]

_GUSSET = GussetPart("", "", 0, ("", ""))
_MOST_PLEATS = 12


def gusset(table: Entries, name: str, names: Names) -> GussetPart:
    """The gusset that ``table`` declares; its seams are looked at when they have been read."""
    on = panel(table.scalar("on"), table.scope, names.panels)
    names.covered.setdefault(name, None if on is None else (on,))
    before = len(table.scope.faults.found)
    pleats = table.count("pleats", _GUSSET.pleats, low=0, high=_MOST_PLEATS)
    if len(table.scope.faults.found) == before and not table.is_refused("pleats"):
        _refuse_other_section(table, pleats)
    return GussetPart(
        name=name,
        leather=table.use("leather", Kind.LEATHER),
        panel=on or 0,
        joins=_joins(table, name, names),
        pleats=pleats,
        depth=table.length("depth", _GUSSET.depth, POSITIVE),
        leaf=table.length("leaf", _GUSSET.leaf, POSITIVE),
        turn=table.optional_length("turn", POSITIVE),
        short=table.length("short", _GUSSET.short),
        holds=held(table),
        opening=table.choice("opening", Edge, _GUSSET.opening),
        lying=table.choice("stands", Lying, _GUSSET.lying),
        ease=table.length("ease", _GUSSET.ease),
        showing=table.choice("showing", Side, _GUSSET.showing),
        line=table.at.line,
    )


def _refuse_other_section(table: Entries, pleats: int) -> None:
    """Faults for sizes of the other section, and where the size that a section cannot do without is missing."""
    kind, needed, foreign = ("bellows", "leaf", ("depth", "turn")) if pleats else ("channel", "depth", ("leaf",))
    for key in foreign:
        if key in table.nodes:
            what = f"{table.what} is a {kind} of {pleats} pleats and has no '{key}'"
            table.add_fault(key, what, f"leave it out and give '{needed}', or change 'pleats'")
    if needed not in table.nodes:
        what = f"{table.what} is a {kind} and has no '{needed}'"
        table.scope.faults.add(table.at, what, f"add '{needed}: 20 mm'")


def _joins(table: Entries, name: str, names: Names) -> tuple[str, str]:
    scalars = table.scalars("joins")
    if table.is_refused("joins"):
        return _GUSSET.joins
    if len({scalar.text for scalar in scalars}) != 2 or len(scalars) != 2:
        what = f"'joins' of {table.what} names {len(scalars)} seams"
        said = what if len(scalars) != 2 else f"'joins' of {table.what} names one seam twice"
        table.add_fault("joins", said, "name the seam of the outer wall and that of the inner wall")
        return _GUSSET.joins
    if name:
        names.joins[name] = scalars
    return scalars[0].text, scalars[1].text


def refuse_loose_gussets(parts: Sequence[Part], seams: Sequence[SeamSpec], names: Names, scope: Scope) -> None:
    """Faults where a seam that a gusset joins is unknown, or does not sew it to a wall of its own on its panel."""
    known = {seam.name: seam for seam in seams}
    for part in parts:
        if isinstance(part, GussetPart) and part.name in names.joins:
            _refuse_loose(part, parts, known, names, scope)


def _refuse_loose(
    part: GussetPart, parts: Sequence[Part], known: dict[str, SeamSpec], names: Names, scope: Scope
) -> None:
    scalars = names.joins[part.name]
    found = [known.get(scalar.text) for scalar in scalars]
    for scalar, seam in zip(scalars, found, strict=True):
        if seam is None:
            scope.faults.add(scalar.at, f"there is no seam '{scalar.text[:40]}'", word_advice(scalar.text, known))
        else:
            for what, remedy in _faults_of(part, seam, names):
                scope.faults.add(scalar.at, what, remedy)
    if all(found):
        _refuse_walls(part, parts, [seam for seam in found if seam], names, scope)


def _refuse_walls(
    part: GussetPart, parts: Sequence[Part], seams: Sequence[SeamSpec], names: Names, scope: Scope
) -> None:
    """Faults unless one seam sews the gusset to walls outside of it and the other to walls inside of it."""
    sides = [_sides(part, parts, seam) for seam in seams]
    for scalar, seam, side in zip(names.joins[part.name], seams, sides, strict=True):
        if len(side) != 1 and part.name in seam.through:
            walls = "walls on either side of it" if side else "no wall"
            what = f"seam '{seam.name}' sews gusset '{part.name}' to {walls}"
            scope.faults.add(scalar.at, what, "name the one wall next to it in the seam's 'through'")
        if side == {"inside"}:
            _refuse_others_in_room(part, parts, seam, scalar, scope)
    if sides[0] == sides[1] and len(sides[0]) == 1:
        what = f"both seams of gusset '{part.name}' sew it to a wall {sides[0].pop()} of it"
        remedy = "list the gusset between its two walls, from the outside in"
        scope.faults.add(names.joins[part.name][1].at, what, remedy)


def _refuse_others_in_room(
    part: GussetPart, parts: Sequence[Part], seam: SeamSpec, scalar: Scalar, scope: Scope
) -> None:
    """Faults for what lies in the room of the gusset and is not its own: loose, or held by the wall inside of it."""
    for each in parts[parts.index(part) + 1 :]:
        told = f"what layer '{each.name}' holds" if isinstance(each, LayerPart) and each.holds else ""
        told = f"'{each.name}'" if isinstance(each, LoosePart) and each.panel == part.panel else told
        is_wall = each.name in seam.through and not isinstance(each, GussetPart)
        if told and (is_wall or isinstance(each, LoosePart)):
            what = f"{told} lies in the room that gusset '{part.name}' keeps"
            scope.faults.add(scalar.at, what, f"move it to 'holds' of gusset '{part.name}'")
        if is_wall:
            return


def _faults_of(part: GussetPart, seam: SeamSpec, names: Names) -> Iterator[tuple[str, str]]:
    """What keeps a seam from holding the gusset to its wall, and what to do."""
    if part.name not in seam.through:
        yield f"seam '{seam.name}' does not go through gusset '{part.name}'", "add it to the seam's 'through'"
    if part.opening in seam.along:
        yield (
            f"seam '{seam.name}' runs along the {part.opening}, where gusset '{part.name}' is open",
            "change 'opening', or the seam's 'along'",
        )
    panels = range(len(names.panels)) if seam.over is None else range(seam.over[0], seam.over[1] + 1)
    if names.panels and names.covered.get(part.name) and list(panels) != [part.panel]:
        on = names.panels[part.panel]
        yield f"seam '{seam.name}' does not keep to panel '{on}'", f"give the seam 'over: {on}'"


def _sides(part: GussetPart, parts: Sequence[Part], seam: SeamSpec) -> set[str]:
    """Where the walls of a seam stand in the order of parts as seen from the gusset: outside, inside."""
    order = [each.name for each in parts]
    flat = [each.name for each in parts if not isinstance(each, GussetPart)]
    at = order.index(part.name)
    return {"outside" if order.index(wall) < at else "inside" for wall in seam.through if wall in flat}
