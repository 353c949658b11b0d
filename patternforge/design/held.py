"""What parts hold besides the items of pockets: contents by name, with their count."""

from __future__ import annotations

from patternforge.design.entries import Entries
from patternforge.design.located import Scalar
from patternforge.design.scope import Kind
from patternforge.design.values import Bounds, count_of
from patternforge.wallet.spec import Held

__all__ = ["MOST_HELD", "held"]

MOST_HELD = 200


def held(table: Entries) -> tuple[Held, ...]:
    """The contents that ``holds`` names."""
    found = []
    for key, node in table.named("holds"):
        name = table.scope.use(key.text, Kind.CONTENT, key.at)
        what = f"the count of '{key.text}' in {table.what}"
        if not isinstance(node, Scalar) or node.is_blank:
            table.scope.faults.add(node.at, f"{what} is missing", "write how many")
        else:
            count = count_of(node, what, table.scope, Bounds(0, MOST_HELD))
            found.append(Held(name or "", count))
    return tuple(found)
