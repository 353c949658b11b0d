"""Snaps, rivets and other hardware of a design."""

from __future__ import annotations

import math
from collections.abc import Mapping

from patternforge.design.arithmetic import as_length
from patternforge.design.entries import Entries, entries, titled
from patternforge.design.forms import FittingForm, MeetsForm
from patternforge.design.located import At, Node
from patternforge.design.names import Names
from patternforge.design.places import only_panel, spot
from patternforge.design.scope import Scope
from patternforge.design.values import POSITIVE, number_of
from patternforge.design.words import word_advice
from patternforge.leather.hardware import Hardware, Setting
from patternforge.wallet.spec import Fitting

__all__ = ["fittings"]


def fittings(
    nodes: tuple[Node, ...], names: Names, scope: Scope, kinds: Mapping[str, Hardware]
) -> tuple[Fitting, ...]:
    """The fittings declared, their holes and caps as in the catalogue ``kinds`` unless told otherwise."""
    taken: dict[str, At] = {}
    return tuple(
        _fitting(entries(node, FittingForm, titled(node, "fitting"), scope), names, taken, kinds) for node in nodes
    )


def _fitting(table: Entries, names: Names, taken: dict[str, At], kinds: Mapping[str, Hardware]) -> Fitting:
    name = names.take(table, "fitting", "fitting", taken)
    kind = _kind(table, kinds)
    part = names.part(table, "on")
    place = spot(table, names.panels, f"'{part}'", names.covered.get(part))
    meets, panel = _meets(table, names, kind)
    if meets and (meets, panel) == (part, place.panel):
        what = f"both halves of {table.what} lie on the same panel of '{part}', so they cannot meet"
        table.add_fault("meets", what, "name the panel that comes to lie on it")
    cap = table.length("cap", kind.cap if kind else math.nan, POSITIVE)
    holes = _holes(table, kind)
    if max(holes) >= cap:
        key = "holes" if "holes" in table.nodes else "cap"
        what = f"a cap of {cap:g} mm does not cover the hole of {max(holes):g} mm of {table.what}"
        table.add_fault(key, what, "give the width of the cap, not of its post")
    return Fitting(
        name=name,
        kind=kind.name if kind else "",
        part=part,
        spot=place,
        holes=holes,
        reach=cap / 2,
        meets=meets,
        meets_panel=panel,
        line=table.at.line,
        setting=kind.setting if kind else Setting.PUNCHED,
        thickness=_thickness(table, kind),
    )


def _thickness(table: Entries, kind: Hardware | None) -> float:
    """How thick each half of a covered kind is; a fault for any other kind, whose thickness is of no account."""
    if kind and kind.setting is Setting.PUNCHED and "thickness" in table.nodes:
        what = f"a kind '{kind.name}' is set in holes, so its thickness is not asked for"
        table.add_fault("thickness", what, "leave it out")
    return table.length("thickness", kind.thickness if kind else math.nan, POSITIVE)


def _kind(table: Entries, kinds: Mapping[str, Hardware]) -> Hardware | None:
    name = table.text("kind")
    if name and name not in kinds:
        table.add_fault("kind", f"the catalogue has no hardware '{name[:40]}'", word_advice(name, kinds))
    return kinds.get(name)


def _meets(table: Entries, names: Names, kind: Hardware | None) -> tuple[str, int]:
    """The part and panel that carry the second half; an empty text if nothing does."""
    if "meets" not in table.nodes:
        return "", 0
    if kind and len(kind.halves) == 1:
        table.add_fault("meets", f"{table.what} meets nothing: a kind '{kind.name}' has one half", "leave it out")
    meets = table.table("meets", MeetsForm)
    part = names.part(meets, "part")
    return part, only_panel(meets, names.panels, f"'{part}'", names.covered.get(part))


def _holes(table: Entries, kind: Hardware | None) -> tuple[float, float]:
    """Diameters for the first and the second half, 0 for a half that does not exist."""
    if "holes" not in table.nodes:
        known = kind.holes if kind else (math.nan,)
    else:
        what = f"a hole of {table.what}"
        scalars = table.scalars("holes")
        known = tuple(number_of(scalar, what, table.scope, as_length, POSITIVE) for scalar in scalars)
        wanted = len(kind.holes) if kind else len(known)
        if len(known) != wanted and not table.is_refused("holes"):
            said = f"{table.what} has {len(known)} holes, but its kind has {wanted or 'none'}"
            advice = "give one diameter for each half, the first half's first" if wanted else "leave them out"
            table.add_fault("holes", said, advice)
    first, second = (*known, 0.0, 0.0)[:2]
    return first, second
