"""Names of panels, parts and openings: what parts, seams and fittings of a design may refer to."""

from __future__ import annotations

from dataclasses import dataclass, field

from patternforge.design.entries import Entries
from patternforge.design.located import At, Scalar
from patternforge.design.words import word_advice

__all__ = ["Covered", "Names"]

Covered = tuple[int, ...] | None
"""The panels of a part, 0-based; None where they could not be read, so that nothing can be said about them."""


@dataclass(slots=True)
class Names:
    """The names known so far; ``panels`` is empty if the body could not be read."""

    panels: tuple[str, ...] = ()
    parts: dict[str, At] = field(default_factory=dict)
    covered: dict[str, Covered] = field(default_factory=dict)
    layers: list[str] = field(default_factory=list)
    loose: set[str] = field(default_factory=set)
    """Parts that are no leather: what lies loose on a panel."""
    glued: set[str] = field(default_factory=set)
    """Layers that glue alone holds."""
    openings: dict[str, At] = field(default_factory=dict)
    films: dict[str, At] = field(default_factory=dict)
    """Openings with a film, for that film and its seam are named after them."""
    layers_named: list[Scalar] = field(default_factory=list)
    """Layers that pockets are said to be sewn to or edges to be turned over, wherever they are declared."""
    sewn_to: list[Scalar] = field(default_factory=list)
    """Those of them that pockets are said to be sewn to."""
    joins: dict[str, tuple[Scalar, ...]] = field(default_factory=dict)
    """The seams each gusset says it joins, as they stand in the file."""
    is_complete: bool = True
    """Unless a part could not be read at all."""

    def part(self, table: Entries, key: str) -> str:
        """The part that ``key`` names; a fault and an empty text if there is none."""
        name = table.text(key)
        if name and name not in self.parts and self.is_complete:
            table.add_fault(key, f"there is no part '{name[:40]}'", word_advice(name, self.parts))
        if name and name in self.loose:
            table.add_fault(key, f"'{name}' lies loose and has no leather", word_advice(name, self._of_leather()))
        return name if name in self._of_leather() else ""

    def _of_leather(self) -> tuple[str, ...]:
        return tuple(part for part in self.parts if part not in self.loose)

    def take(self, table: Entries, kind: str, what: str, taken: dict[str, At]) -> str:
        """The name that ``table`` gives itself under ``kind``, put in ``taken``; a fault if it stands there."""
        name = table.text(kind)
        if name in taken and name:
            said = f"the name '{name}' is taken by the {what} on line {taken[name].line}"
            table.add_fault(kind, said, f"give every {what} a name of its own")
        elif name:
            self._refuse_almost_taken(table, kind, name, taken)
            taken[name] = table.at_of(kind)
        return name

    def _refuse_almost_taken(self, table: Entries, kind: str, name: str, taken: dict[str, At]) -> None:
        """A fault for a name that capitals, blanks or hyphens alone tell apart from one that is taken."""
        alike = next((other for other in taken if _letters(other) == _letters(name) != ""), None)
        if alike is not None:
            what = f"'{name}' differs from '{alike}' on line {taken[alike].line} by capitals, blanks or hyphens alone"
            table.add_fault(kind, what, "choose a name that reads differently")


def _letters(name: str) -> str:
    return "".join(sign for sign in name.casefold() if sign not in "-_ ")
